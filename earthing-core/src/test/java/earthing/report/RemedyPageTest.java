package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.JsonValue;
import earthing.decision.Remedies;
import earthing.decision.Remedy;
import earthing.decision.RemedyCatalogue;
import earthing.decision.RemedyCosts;
import earthing.decision.RemedySearch;
import earthing.decision.RemedySearch.Plan;
import earthing.decision.RemedyTrial;
import earthing.report.document.Block;
import earthing.site.Site;
import earthing.study.DemoSite;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The command, the section of a report and the page for machines tell the same search. */
class RemedyPageTest {

    private static final RemedyCosts COSTS = new RemedyCosts("days", Map.of("single-earth", 2.0));

    private static Remedies found(String site, Plan plan, String... ids) {
        List<Remedy> some = RemedyCatalogue.all().stream()
                .filter(remedy -> List.of(ids).contains(remedy.id()))
                .toList();
        return RemedySearch.of(DemoSite.read(site), some, plan, step -> {});
    }

    private static Plan sets(int largest) {
        return new Plan(Set.of(), largest, 100, false, COSTS);
    }

    private static ReportInput input(String name, Remedies remedies) {
        Site site = DemoSite.read(name);
        return new ReportInput(site, name, DemoSite.text(name), "0", StudyResults.EMPTY, remedies.before(), "1.2.3");
    }

    private static Stream<Block> within(List<Block> blocks) {
        return blocks.stream()
                .flatMap(block -> block instanceof Block.Section section ? within(section.blocks()) : Stream.of(block));
    }

    /** Every word of a block, without the breaks of lines. */
    private static List<String> said(List<Block> blocks) {
        List<String> said = new ArrayList<>();
        within(blocks).forEach(block -> {
            if (block instanceof Block.Paragraph paragraph) {
                said.add(paragraph.text());
            } else if (block instanceof Block.Bullets bullets) {
                said.addAll(bullets.items());
            } else if (block instanceof Block.Caution caution) {
                said.addAll(caution.lines());
            } else if (block instanceof Block.Table table) {
                said.add(table.caption());
            }
        });
        return said;
    }

    private static String flat(String text) {
        return text.replaceAll("[\\s\\u00a0\\u202f]+", " ");
    }

    @Test
    void theSectionOfAReportTellsWhatTheCommandTells() {
        Remedies remedies = found("ternhook-wood-separate.yaml", sets(1), "single-earth", "guarded-lead");
        ReportInput input = input("ternhook-wood-separate.yaml", remedies);
        Block section = RemedyBlocks.section(input.with(remedies));
        List<String> told = said(List.of(section));
        String page = flat(RemedyPage.text("Ternhook", remedies));
        assertThat(told)
                .hasSizeGreaterThan(20)
                .allSatisfy(words -> assertThat(page).contains(flat(words)));
        assertThat(told).containsAll(RemedyBlocks.CAUTIONS).contains("Set 1, cost 2.00 days");
        assertThat(((Block.Section) section).id()).isEqualTo("remedies");

        JsonObject json = Json.parse(RemedyPage.json(input, remedies)).asObject();
        List<String> sets = new ArrayList<>();
        for (JsonValue set : json.get("sets").asArray()) {
            sets.add(set.asObject().get("changes").asArray().get(0).asObject().getString("id", ""));
        }
        assertThat(sets).containsExactly("single-earth");
        assertThat(json.get("not-met").asArray()).hasSize(remedies.notMet().size());
        assertThat(json.get("single-changes").asArray())
                .hasSize(remedies.singles().size());
        assertThat(json.get("larger-set")).isNull();
    }

    @Test
    void withoutASearchTheSectionSaysHowToGetOne() {
        Remedies remedies = found("ternhook-wood-shared.yaml", sets(1));
        assertThat(said(List.of(RemedyBlocks.section(input("ternhook-wood-shared.yaml", remedies)))))
                .singleElement()
                .asString()
                .contains("Not asked for", "--remedies");
        assertThat(said(RemedyBlocks.of(remedies))).contains("No finding calls for a remedy.");
    }

    @Test
    void worsenedFindingsStandFirstAndEveryChangeHasItsCaution() {
        Remedies remedies = found("ternhook-wood-separate.yaml", sets(1), "single-earth");
        List<String> order = within(RemedyBlocks.of(remedies))
                .filter(block -> block instanceof Block.Bullets)
                .map(block -> ((Block.Bullets) block)
                        .items().stream()
                                .map(item -> item.replaceAll("[:,].*", ""))
                                .toList())
                .filter(items -> items.contains("worse"))
                .findFirst()
                .orElseThrow();
        List<String> ranked = List.of("worse", "other", "better", "caution");
        assertThat(order.stream().map(ranked::indexOf)).isSorted().doesNotContain(-1);
        assertThat(order).endsWith("caution").contains("better");
    }

    /** Neither change alone is enough, and sets of two are not searched, so that a larger one is grown. */
    @Test
    void aLargerSetThatMeetsEverythingSaysThatItWasGrown() {
        Remedies remedies = found("fellmark-single-wire.yaml", sets(1), "covering", "smaller-fuse");
        RemedyTrial larger = remedies.further().orElseThrow();
        assertThat(larger.meetsAll()).isTrue();
        assertThat(remedies.best()).contains(larger);
        assertThat(said(RemedyBlocks.of(remedies)))
                .anySatisfy(words -> assertThat(words)
                        .contains("A larger set meets every finding", "Larger sets were not all tried"));
        JsonObject json = Json.parse(RemedyPage.json(input("fellmark-single-wire.yaml", remedies), remedies))
                .asObject();
        assertThat(json.get("larger-set").asObject().getBoolean("meets-all", false))
                .isTrue();
        assertThat(json.get("larger-set").asObject().get("changes").asArray()).hasSize(2);
    }

    @Test
    void aSetThatIsNotEnoughNamesWhatIsLeft() {
        Remedies remedies = found("fellmark-single-wire.yaml", sets(1), "smaller-fuse");
        List<String> told = said(RemedyBlocks.of(remedies));
        assertThat(told).contains("No set that was tried meets every finding.");
        assertThat(told)
                .anySatisfy(words ->
                        assertThat(words).contains("The larger set below leaves", "cubicle", "It is no solution"));
        assertThat(told).contains("Met by no change of the catalogue alone, nor by the larger set:");
    }

    @Test
    void theCatalogueHasEveryChangeWithItsCaution() {
        List<Remedy> all = RemedyCatalogue.all();
        String page = RemedyPage.catalogue(all);
        assertThat(page.lines()).allMatch(line -> line.length() <= 80);
        for (Remedy remedy : all) {
            assertThat(flat(page)).contains(remedy.id() + ": " + remedy.title(), "caution: " + flat(remedy.caution()));
        }
    }
}
