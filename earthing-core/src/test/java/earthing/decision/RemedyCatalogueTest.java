package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.ComplianceRun;
import earthing.compliance.ComplianceRun.Basis;
import earthing.compliance.Finding;
import earthing.decision.Remedy.Step;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SideFiles;
import earthing.site.file.SiteEdit;
import earthing.site.file.SiteFile;
import earthing.study.DemoSite;
import earthing.study.StudyResults;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class RemedyCatalogueTest {

    private static final SideFiles BESIDE = SideFiles.beside(Path.of("..", "earthing-cli", "sites", "any.yaml"));

    private static final List<Remedy> ALL = RemedyCatalogue.all();

    @Test
    void holdsWhatTheTradeWouldTry() {
        assertThat(ALL)
                .extracting(Remedy::id)
                .doesNotHaveDuplicates()
                .contains(
                        "longer-rods",
                        "more-rods",
                        "ring",
                        "buried-wire",
                        "operator-mat",
                        "covering",
                        "guarded-lead",
                        "insulated-lead",
                        "larger-conductor",
                        "other-joint",
                        "shorter-tee",
                        "no-second-lead",
                        "screen-bond",
                        "cable-moved",
                        "arrester-leads",
                        "cubicle-height",
                        "faster-clearing",
                        "fewer-shots",
                        "neutral-resistor");
    }

    @Test
    void eachChangeAppliesToSomeSiteAndItsKeysAreThoseOfTheSiteFile() {
        Set<String> idle = new TreeSet<>();
        ALL.forEach(remedy -> idle.add(remedy.id()));
        for (String name : DemoSite.names()) {
            Site site = DemoSite.read(name);
            for (Remedy remedy : ALL) {
                for (Step step : remedy.steps()) {
                    if (remedy.applied(site, step).isPresent()) {
                        idle.remove(remedy.id());
                    }
                }
            }
        }
        assertThat(idle).containsExactlyInAnyOrderElementsOf(Set.of("no-second-lead"));
        Site second = SiteEdit.set(
                DemoSite.read("ternhook-wood-separate.yaml"), "main-earth.second-lead-electrode", "cubicle");
        assertThat(remedy("no-second-lead")
                        .applied(second, remedy("no-second-lead").steps().get(0)))
                .contains(DemoSite.read("ternhook-wood-separate.yaml"));
    }

    @Property(tries = 60, seed = "20261125")
    void aChangedSiteReadsBackAsItWasWritten(@ForAll long seed) {
        Random random = new Random(seed);
        List<String> names = DemoSite.names();
        Site site = DemoSite.read(names.get(random.nextInt(names.size())));
        for (int i = 0; i < 4; i++) {
            Remedy remedy = ALL.get(random.nextInt(ALL.size()));
            Optional<Site> changed = remedy.applied(
                    site, remedy.steps().get(random.nextInt(remedy.steps().size())));
            site = changed.orElse(site);
        }
        ReadOutcome read = SiteFile.read(SiteFile.write(site).getBytes(StandardCharsets.UTF_8), "changed.yaml", BESIDE);
        assertThat(read).isInstanceOf(ReadOutcome.Valid.class);
        assertThat(((ReadOutcome.Valid) read).site()).isEqualTo(site);
    }

    @Test
    void goesOnlyTowardsWhatIsAChange() {
        Site site = DemoSite.read("ternhook-wood-separate.yaml");
        Remedy larger = remedy("larger-conductor");
        List<String> changes = larger.steps().stream()
                .filter(step -> larger.applied(site, step).isPresent())
                .map(Step::text)
                .toList();
        // Main earth 70 mm2, own lead 35 mm2.
        assertThat(changes).containsExactly("50 mm2", "70 mm2", "95 mm2", "120 mm2");
        Site changed = larger.applied(site, larger.steps().get(3)).orElseThrow();
        assertThat(value(changed, "main-earth.conductor.area")).isEqualTo("70 mm2");
        assertThat(value(changed, "cubicle.own-lead.area")).isEqualTo("50 mm2");
    }

    @Test
    void aHigherCubicleHasAShorterCable() {
        Site site = DemoSite.read("ternhook-wood-shared.yaml");
        Remedy higher = remedy("cubicle-height");
        Site changed = higher.applied(site, higher.steps().get(2)).orElseThrow();
        assertThat(value(changed, "cubicle.height")).isEqualTo("4 m");
        assertThat(value(changed, "control-cable.length")).isEqualTo("6.3 m");
        assertThat(value(changed, "control-cable.route-length")).isEqualTo("5.2 m");
    }

    /** Rods, rings and wires that are bonded to the main electrode are part of it; the rule of one main earth counts ways to it. */
    @Test
    void metalThatIsBondedBelowGroundIsNoSecondWayToEarth() {
        int compared = 0;
        for (String name : DemoSite.names()) {
            Site site = DemoSite.read(name);
            for (String id : List.of("more-rods", "ring", "buried-wire")) {
                for (Step step : remedy(id).steps()) {
                    Optional<Site> changed = remedy(id).applied(site, step);
                    if (changed.isPresent()) {
                        assertThat(waysToEarth(changed.get()))
                                .as(name + " " + id)
                                .isEqualTo(waysToEarth(site));
                        compared++;
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(50);
    }

    private static Finding waysToEarth(Site site) {
        return ComplianceRun.of(site, StudyResults.EMPTY, Set.of(Basis.DESCRIPTION)).stream()
                .filter(finding -> finding.id().equals("path.single-main-earth"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void neutralChangesNeedTheOwner() {
        Set<String> asked = new HashSet<>();
        ALL.forEach(remedy -> remedy.permission().ifPresent(asked::add));
        assertThat(asked).containsExactly("neutral");
        assertThat(remedy("neutral-resistor").permission()).contains("neutral");
    }

    private static String value(Site site, String key) {
        return SiteEdit.text(SiteEdit.values(site, key).get(0));
    }

    private static Remedy remedy(String id) {
        return ALL.stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
    }
}
