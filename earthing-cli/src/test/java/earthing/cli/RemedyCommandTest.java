package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RemedyCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private static String site(String name) {
        return DemoSites.named(name).toString();
    }

    /** What the search named for each failing site, written and checked: nothing is left that is not met. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ternhook-wood-separate|single-earth,screen-bond=3",
                "millgarth-two-wires|insulated-stays",
                "cobblers-mere-neutral|better-covering=2,fewer-shots=3",
                "fellmark-single-wire|covering=1,smaller-fuse=3"
            })
    void theWrittenSiteIsMetByCheck(String name, String set) throws IOException {
        Path mended = folder.resolve("mended.yaml");
        CommandRun run = CommandRun.of("remedy", site(name), "--set", set, "--write", mended.toString());
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("Smallest sets that meet every finding", "licensed", "permission to remove");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(Files.readString(mended)).startsWith("# Proposed by a search for remedies, from " + name);
        CommandRun before = CommandRun.of("check", site(name));
        CommandRun after = CommandRun.of("check", mended.toString());
        assertThat(before.code()).isEqualTo(1);
        assertThat(after.code()).isIn(0, 3);
        assertThat(after.out()).doesNotContain("not met");
    }

    @Test
    void aSetThatIsNotEnoughEndsWithOneAndIsWrittenAllTheSame() {
        Path mended = folder.resolve("mended.yaml");
        CommandRun run = CommandRun.of(
                "remedy", site("ternhook-wood-separate"), "--set", "guarded-lead=2", "--write", mended.toString());
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).contains("leaves 4 of them", "Only the named changes were tried");
        assertThat(mended).exists();
    }

    @Test
    void forMachines() {
        CommandRun run = CommandRun.of(
                "remedy", site("ternhook-wood-separate"), "--set", "single-earth,screen-bond=3", "--format", "json");
        JsonObject json = Json.parse(run.out()).asObject();
        assertThat(json.getString("format", "")).isEqualTo("earthing-remedies/1");
        assertThat(json.get("not-met").asArray()).hasSize(4);
        JsonObject set = json.get("sets").asArray().get(0).asObject();
        assertThat(set.getBoolean("meets-all", false)).isTrue();
        assertThat(set.get("changes").asArray()).hasSize(2);
        assertThat(set.get("effects").asArray().get(0).asObject().getString("direction", ""))
                .isEqualTo("worse");
        assertThat(json.get("cautions").asArray()).isNotEmpty();
    }

    @Test
    void anyNumberOfThreadsGivesTheSameBytes() {
        String[] set = {"remedy", site("ternhook-wood-separate"), "--set", "single-earth", "--threads", "1"};
        String one = CommandRun.of(set).out();
        assertThat(one).contains("single-earth");
        for (String threads : List.of("2", "4")) {
            set[5] = threads;
            assertThat(CommandRun.of(set).out()).isEqualTo(one);
        }
    }

    @Test
    void nothingToMend() {
        Path mended = folder.resolve("mended.yaml");
        CommandRun run = CommandRun.of("remedy", site("ternhook-wood-shared"));
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("No finding calls for a remedy", "(neutral-resistor, --allow");
        CommandRun write = CommandRun.of("remedy", site("ternhook-wood-shared"), "--write", mended.toString());
        assertThat(write.code()).isEqualTo(2);
        assertThat(write.err()).contains("nothing was written", "no finding calls for a remedy");
        assertThat(mended).doesNotExist();
    }

    @Test
    void theCatalogueNeedsNoSite() {
        CommandRun run = CommandRun.of("remedy", "--catalogue");
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("longer-rods: longer rods", "range: 2 m; 3 m", "caution:");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "longer-rod|there is no change longer-rod; the ids are longer-rods",
                "longer-rods=9|has the steps 1 to 6; have 9",
                "longer-rods=0|has the steps 1 to 6; have 0",
                "longer-rods=x|has the steps 1 to 6; have x",
                "ring,ring|ring is named twice",
                "neutral-resistor|needs --allow neutral",
                "insulated-stays|stays are described"
            })
    void aWrongSetIsRefused(String set, String message) {
        CommandRun run = CommandRun.of("remedy", site("ternhook-wood-separate"), "--set", set);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(message);
    }

    @Test
    void wrongOptionsAreRefused() throws IOException {
        assertThat(CommandRun.of("remedy").code()).isEqualTo(2);
        assertThat(CommandRun.of("remedy", site("lowgarth-short"), "--sets", "0")
                        .err())
                .contains("--sets takes 1 to 6");
        assertThat(CommandRun.of("remedy", site("lowgarth-short"), "--allow", "all")
                        .err())
                .contains("neutral");
        assertThat(CommandRun.of("remedy", "no-such.yaml").code()).isEqualTo(65);
        Path costs = folder.resolve("costs.csv");
        Files.writeString(costs, "change,cost in days\nrings,1\n");
        CommandRun run = CommandRun.of("remedy", site("lowgarth-short"), "--costs", costs.toString());
        assertThat(run.code()).isEqualTo(65);
        assertThat(run.err()).contains("costs.csv:2: \"rings\" is no change of the catalogue");
        assertThat(CommandRun.of("remedy", site("lowgarth-short"), "--costs", "no-such.csv")
                        .code())
                .isEqualTo(65);
    }

    @Test
    void aSiteWithTablesIsNotWrittenWhereTheyAreMissing() {
        Path mended = folder.resolve("mended.yaml");
        CommandRun run = CommandRun.of(
                "remedy", site("thornby-shield-wire"), "--set", "guarded-lead", "--write", mended.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("tables that the site names");
        assertThat(mended).doesNotExist();
    }
}
