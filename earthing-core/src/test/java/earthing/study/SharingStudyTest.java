package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Source;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SharingStudyTest {

    private static final Source BY_HAND = Source.tool("made by hand for a test");
    private static final Site PLAIN = DemoSite.read("ternhook-wood-separate.yaml");
    private static final Case SURGE =
            Case.NONE.with("wave", "8/20").with("entry", "current-into-tank").with("screen-bond", "tank");
    private static final Case FAULT = Case.NONE.with("fault", "maximum");
    private static final String CORE = "surge.cable-end.trip-coil.cubicle.";

    private final List<Result> given = new ArrayList<>();

    private SharingStudyTest with(String id, Case rest, String arrangement, double value) {
        given.add(Result.of(id, rest.with("arrangement", arrangement), "nominal", value, "V", "by hand", BY_HAND));
        return this;
    }

    private StudyResults compared() {
        return SharingStudy.of(PLAIN, new StudyResults(given, List.of(), List.of(), List.of(), List.of()));
    }

    private static Result one(StudyResults results, String id, Case rest) {
        return results.one(id, rest, "nominal").orElseThrow();
    }

    @Test
    void gainCostAndReliefAreQuotientAndDifferencesOfTheArrangements() {
        with(CORE + "open-voltage", SURGE, "shared", 6450)
                .with(CORE + "open-voltage", SURGE, "separate", -25800)
                .with("surge.cable-end.trip-coil.tank.open-voltage", SURGE, "separate", 20000)
                .with(CORE + "short-circuit-current", SURGE, "shared", 3900)
                .with("touch.cubicle.voltage", FAULT, "shared", 240)
                .with("touch.cubicle.voltage", FAULT, "separate", 90)
                .with("touch.cubicle.permissible", FAULT, "shared", 200)
                .with("cable.power-frequency.voltage", FAULT, "shared", 0.4)
                .with("cable.power-frequency.voltage", FAULT, "separate", 310);
        StudyResults results = compared();
        Result gain = one(results, "sharing.surge-gain", SURGE);
        assertThat(gain.value()).isEqualTo(4);
        assertThat(gain.model()).contains("lowers", "25.8 kV separate", "6.45 kV shared");
        Result cost = one(results, "sharing.touch-cost", FAULT);
        assertThat(cost.value()).isEqualTo(150);
        assertThat(cost.model()).contains("raises", "90.0 V separate", "240 V shared", "exceeded when shared");
        assertThat(one(results, "sharing.touch-utilisation", FAULT.with("arrangement", "shared"))
                        .value())
                .isEqualTo(1.2);
        Result relief = one(results, "sharing.cable-relief", FAULT);
        assertThat(relief.value()).isCloseTo(309.6, Percentage.withPercentage(1e-9));
        assertThat(relief.model()).contains("310 V separate", "400 mV shared");
        Case apart = SURGE.with("arrangement", "separate");
        assertThat(one(results, "sharing.cable-end.open-voltage", apart).value())
                .isEqualTo(25800);
        assertThat(results.results())
                .filteredOn(r -> r.worked().isPresent())
                .allSatisfy(r -> assertThat(r.worked().orElseThrow().value()).isEqualTo(r.value()));
    }

    @Test
    void whereSharingGainsNothingTheSentenceSaysSoAndNamesTheScreenCurrent() {
        Case both = SURGE.with("screen-bond", "both");
        with(CORE + "open-voltage", both, "shared", 92)
                .with(CORE + "open-voltage", both, "separate", 80)
                .with("surge.screen.current.peak", both, "separate", 5020)
                .with("touch.cubicle.voltage", FAULT, "shared", 10)
                .with("touch.cubicle.voltage", FAULT, "separate", 20);
        StudyResults results = compared();
        assertThat(one(results, "sharing.surge-gain", both).value()).isLessThan(1);
        assertThat(one(results, "sharing.surge-gain", both).model()).contains("gains nothing", "5.02 kA");
        assertThat(one(results, "sharing.touch-cost", FAULT).value()).isEqualTo(-10);
        assertThat(one(results, "sharing.touch-cost", FAULT).model()).contains("does not raise");
    }

    @Test
    void withoutACubicleOrWithoutResultsNothingIsCompared() {
        assertThat(compared().results()).isEmpty();
        assertThat(compared().curves()).isEmpty();
        Site bare = DemoSite.parse("""
                file-version: 1
                site: {name: bare, stage: design}
                system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
                """);
        assertThat(SharingStudy.of(bare, StudyResults.EMPTY).results()).isEmpty();
    }

    /** On a plain cable the whole potential rise less the mutual part moves from the hand to the cable. */
    @ParameterizedTest
    @ValueSource(strings = {"ternhook-wood-separate.yaml", "harrowfell-steel-rock.yaml", "skarrowen-antenna.yaml"})
    void everyNumberOfTheComparisonIsOneOfTheStudies(String name) {
        StudyResults all = SiteStudy.of(DemoSite.read(name));
        List<Result> own =
                all.under("sharing.").filter(r -> r.worked().isPresent()).toList();
        assertThat(own).isNotEmpty();
        for (Result result : own) {
            assertThat(result.worked().orElseThrow().terms())
                    .as(result.id() + " " + result.circumstances().text())
                    .allSatisfy(term -> assertThat(all.results())
                            .anyMatch(r -> !r.id().startsWith("sharing.")
                                    && r.at().equals("nominal")
                                    && Math.abs(r.value()) == term.value()));
        }
    }
}
