package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SpreadCommandTest {

    @TempDir
    private Path folder;

    private static String demo(String name) {
        return DemoSites.named(name).toString();
    }

    @Test
    void thePageFitsATerminalAndTellsTheThreeAnswers() {
        CommandRun run = CommandRun.of("spread", demo("brackenmire-mistakes"), "--samples", "10", "--seed", "7");
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).as("no point is worse than reported").isEqualTo(0);
        assertThat(run.out())
                .contains("How likely each requirement is not met")
                .contains("10 samples of the bounded inputs, seed 7")
                .contains("All 8 corners")
                .contains("What to measure next")
                .contains("soil.resistivity");
    }

    @Test
    void theSameSeedGivesTheSameBytesAndAnotherDoesNot() {
        String[] json = {"spread", demo("brackenmire-mistakes"), "--samples", "3", "--format", "json", "--seed", "7"};
        CommandRun first = CommandRun.of(json);
        assertThat(first.out()).startsWith("{\n  \"format\": \"earthing-spread/1\"");
        assertThat(CommandRun.of(json).out()).isEqualTo(first.out());
        json[7] = "8";
        assertThat(CommandRun.of(json).out()).isNotEqualTo(first.out());
    }

    @Test
    void anyNumberOfThreadsGivesTheSameBytes() {
        String[] json = {"spread", demo("brackenmire-mistakes"), "--samples", "8", "--format", "json", "--threads", "1"
        };
        String one = CommandRun.of(json).out();
        assertThat(one).contains("\"probability");
        for (String threads : new String[] {"2", "4"}) {
            json[7] = threads;
            assertThat(CommandRun.of(json).out()).isEqualTo(one);
        }
        json[7] = "0";
        assertThat(CommandRun.of(json).err()).contains("--threads takes 1 to 1024; have 0");
    }

    @Test
    void aReportTakesTheSpreadAndAllCriteriaAlong() {
        String[] text = {
            "report", demo("brackenmire-mistakes"), "--spread", "3", "--seed", "7", "--all-criteria", "--format", "text"
        };
        CommandRun run = CommandRun.of(text);
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("Inputs spread within their bounds")
                .contains("3 samples of the bounded inputs, seed 7")
                .contains("sets of criteria");
        text[8] = "json";
        assertThat(CommandRun.of(text).out())
                .contains("\"spread\": {")
                .contains("\"all-criteria\": {")
                .contains("\"table-difference\"");
        assertThat(CommandRun.of("report", demo("lowgarth-short"), "--spread", "0")
                        .code())
                .isEqualTo(2);
    }

    @Test
    void aSiteWithoutBoundsSaysSoAndWhatIsMissing() {
        CommandRun run = CommandRun.of("spread", demo("lowgarth-short"));
        assertThat(run.code()).isEqualTo(0);
        assertThat(run.out()).contains("nothing to spread").contains("soil.resistivity");
    }

    @Test
    void wrongNumbersAndImpossibleCorrelationsAreRefused() throws IOException {
        assertThat(CommandRun.of("spread", demo("lowgarth-short"), "--samples", "0")
                        .code())
                .isEqualTo(2);
        Path site = folder.resolve("site.yaml");
        Files.writeString(site, Files.readString(DemoSites.named("ternhook-wood-shared")) + """

                        uncertainty:
                          correlations:
                            - {one: "soil.layers[1].resistivity", other: "soil.layers[2].resistivity", rank: "0.9"}
                            - {one: system.earth-fault-current, other: "soil.layers[2].resistivity", rank: "0.9"}
                            - {one: system.earth-fault-current, other: "soil.layers[1].resistivity", rank: "-0.9"}
                        """);
        CommandRun run = CommandRun.of("spread", site.toString(), "--samples", "5");
        assertThat(run.code()).isEqualTo(65);
        assertThat(run.err()).contains("uncertainty.correlations");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void theCriteriaStandSideBySideIn80Columns() {
        CommandRun run = CommandRun.of("compare", demo("ternhook-wood-shared"), "--criteria");
        assertThat(run.code()).isEqualTo(0);
        assertThat(run.out())
                .contains("touch.cubicle")
                .contains("en-50522-2010")
                .contains("ieee-80-50kg")
                .contains("governs")
                .contains("iec-60479-1: not used, the file does not give criteria.body");
        assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
        assertThat(CommandRun.of("compare", demo("ternhook-wood-shared"), "--criteria", "--format", "json")
                        .out())
                .startsWith("{\n  \"format\": \"earthing-criteria/1\"");
        assertThat(CommandRun.of("compare", demo("ternhook-wood-shared"), demo("lowgarth-short"), "--criteria")
                        .code())
                .isEqualTo(2);
    }
}
