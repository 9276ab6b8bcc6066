package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.site.Site;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Earth faults of whole sites; the circuit itself is held to published values in the tests of the fault room. */
class FaultStudyTest {

    private static final String SOLID = "{method: solid, station-earth-resistance: 0.5 ohm}";
    private static final String RESISTOR = "{method: resistor, resistance: 40 ohm}";
    private static final String ISOLATED = "{method: isolated, capacitive-current: 30 A}";
    private static final String RESONANT = "{method: resonant, capacitive-current: 110 A, residual-current: 12 A}";

    private static final String TEXT = """
            file-version: 1
            site: {name: fault study, stage: design}
            system:
              voltage: 22 kV
              highest-voltage: 24 kV
              frequency: 50 Hz
              three-phase-fault-current: {low: 3 kA, nominal: 4 kA, high: 5 kA}
              %s
              neutral: %s
            protection: {relay: {pickup: 20 A, curve: definite-time, delay: 0.2 s, breaker-time: 50 ms}}
            soil: {resistivity: %s ohm.m}
            tank: {height: 9 m}
            pole: {material: wood, height: 10.5 m, diameter: 0.26 m}
            main-earth:
              conductor: {material: copper, area: 70 mm2}
              offset: 0.15 m
              guard-height: 2.5 m
              electrode: main
            electrodes:
              - {name: main, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}
              - {name: own, at: {x: 5 m, y: 0 m}, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}
            cubicle: {height: 3 m, earth: %s, tee-length: 0.3 m%s}
            control-cable:
              separation: 0.2 m
              screen: {bond: tank, area: 6 mm2}
            """;

    private static FaultStudy.Outcome study(String neutral, String resistivity, String earth) {
        String level = neutral.equals(SOLID) ? "earth-fault-current: 3 kA" : "";
        String own = earth.equals("separate") || earth.equals("both") ? ", electrode: own" : "";
        Site site = DeckSite.read(TEXT.formatted(level, neutral, resistivity, earth, own));
        return FaultStudy.of(site, new EarthCache());
    }

    private static double value(FaultStudy.Outcome outcome, String id, Case wanted) {
        return outcome.results().one(id, wanted, "nominal").orElseThrow().value();
    }

    private static final Case OWN_SHARED = Case.NONE.with("fault", "maximum").with("arrangement", "shared");

    @Test
    void riseGrowsWithResistivityForEveryNeutralMethodAndInProportionOnlyWhereTheNetworkIsStiffInCurrent() {
        for (String neutral : List.of(SOLID, RESISTOR, ISOLATED, RESONANT)) {
            double once = value(study(neutral, "100", "shared"), "epr.main", OWN_SHARED);
            double twice = value(study(neutral, "200", "shared"), "epr.main", OWN_SHARED);
            assertThat(twice).as(neutral).isGreaterThan(once);
            if (neutral.equals(RESONANT)) {
                assertThat(twice / once).isCloseTo(2, within(0.1));
            }
            if (neutral.equals(SOLID)) {
                assertThat(twice / once).isLessThan(1.2);
            }
        }
    }

    @Test
    void hundredOhmMetreRodOnASolidNetworkFollowsOhmsLawOfTheWholeLoop() {
        FaultStudy.Outcome outcome = study(SOLID, "100", "shared");
        double current = value(outcome, "fault.maximum.current", OWN_SHARED);
        double rise = value(outcome, "epr.main", OWN_SHARED);
        // E = 1.1 · 22 kV/√3; loop of the source E/3 kA at X/R = 10; station earth 0.5 ohm; leads are milliohms.
        double e = 1.1 * 22e3 / Math.sqrt(3);
        double r = rise / current;
        double source = e / 3000;
        double resistance = r + 0.5 + source * Math.cos(Math.atan(10));
        double expected = e / Math.hypot(resistance, source * Math.sin(Math.atan(10)));
        assertThat(current).isCloseTo(expected, Percentage.withPercentage(0.1));
    }

    @Test
    void currentsOfAllElectrodesAddUpToTheFaultCurrent() {
        for (PowerCase power : study(SOLID, "100", "both").cases()) {
            double sum = power.electrodeCurrents().values().stream()
                    .mapToDouble(Double::doubleValue)
                    .sum();
            assertThat(sum).isCloseTo(power.current(), within(1e-3 * power.current() + 1e-6));
        }
    }

    @Test
    void separateEarthPutsTheRiseLessItsMutualPartAcrossTheCable() {
        FaultStudy.Outcome outcome = study(SOLID, "100", "shared");
        Case separate = Case.NONE.with("fault", "maximum").with("arrangement", "separate");
        double across = value(outcome, "cable.power-frequency.voltage", separate);
        double rise = value(outcome, "epr.main", separate);
        assertThat(across).isBetween(0.7 * rise, rise);
        assertThat(value(outcome, "cable.power-frequency.voltage", OWN_SHARED)).isLessThan(0.01 * rise);
        assertThat(value(outcome, "epr.cubicle", OWN_SHARED)).isGreaterThan(value(outcome, "epr.cubicle", separate));
    }

    @Test
    void theNameOfAnElectrodeChangesNoPotential() {
        Case unearthed = Case.NONE.with("fault", "maximum").with("arrangement", "unearthed");
        for (String earth : List.of("separate", "both")) {
            FaultStudy.Outcome plain = study(SOLID, "100", earth);
            Site same = DeckSite.read(
                    TEXT.formatted("earth-fault-current: 3 kA", SOLID, "100", earth, ", electrode: cubicle")
                            .replace("name: own", "name: cubicle"));
            FaultStudy.Outcome named = FaultStudy.of(same, new EarthCache());
            for (String id : List.of("epr.cubicle", "epr.main", "cable.power-frequency.voltage")) {
                for (Arrangement arrangement : List.of(Arrangement.SHARED, Arrangement.SEPARATE, Arrangement.BOTH)) {
                    Case wanted = Case.NONE.with("fault", "maximum").with("arrangement", arrangement.word());
                    double value = value(plain, id, wanted);
                    assertThat(value(named, id, wanted))
                            .as(id + ", " + wanted.text())
                            .isCloseTo(value, within(1e-9 * value));
                }
            }
            assertThat(value(named, "epr.cubicle", OWN_SHARED))
                    .isCloseTo(value(named, "epr.tank", OWN_SHARED), Percentage.withPercentage(1));
            // The cubicle is joined to nothing: no number, although an electrode bears its name.
            assertThat(named.results().one("epr.cubicle", unearthed, "nominal")).isEmpty();
        }
    }

    @Test
    void theCableIsLookedAtInEveryFaultAndArrangementAndWithItsScreenBondedAtBothEnds() {
        FaultStudy.Outcome outcome = study(ISOLATED, "100", "shared");
        for (String fault : List.of("minimum", "maximum", "double-earth-fault")) {
            for (Arrangement arrangement : List.of(Arrangement.SHARED, Arrangement.SEPARATE, Arrangement.BOTH)) {
                Case wanted = Case.NONE.with("fault", fault).with("arrangement", arrangement.word());
                assertThat(value(outcome, "cable.power-frequency.voltage", wanted))
                        .as(wanted.text())
                        .isPositive();
            }
        }
        Case single = Case.NONE.with("fault", "maximum").with("arrangement", "separate");
        double apart = value(outcome, "cable.power-frequency.voltage", single);
        assertThat(value(outcome, "cable.power-frequency.voltage", single.with("fault", "double-earth-fault")))
                .isGreaterThan(10 * apart);
        // A screen bonded at both ends joins the two earths: it takes current and leaves the cable its own drop.
        Case joined = single.with("screen-bond", "both");
        double screen = value(outcome, "cable.power-frequency.screen-current", joined);
        assertThat(screen).isBetween(1.0, value(outcome, "fault.maximum.current", OWN_SHARED));
        assertThat(value(outcome, "cable.power-frequency.voltage", joined)).isLessThan(0.05 * apart);
    }

    @Test
    void currentBelowPickupIsNeverCleared() {
        FaultStudy.Outcome outcome = study(RESONANT, "100", "shared");
        assertThat(outcome.results().gapsOf("fault.maximum.clearing-time"))
                .isNotEmpty()
                .allSatisfy(gap -> assertThat(gap.reason()).startsWith("never"));
        assertThat(outcome.cases().stream().filter(c -> c.circumstances().within(OWN_SHARED)))
                .allSatisfy(c -> assertThat(c.neverCleared()).isTrue());
        assertThat(PowerStudy.forHeating(outcome.cases()))
                .isNotEmpty()
                .allSatisfy(
                        c -> assertThat(c.circumstances().keys().get("fault")).startsWith("double-earth-fault"));
    }

    @Test
    void brokenLowerLeadLeavesTankAndCubicleAtThePhaseVoltageBehindTheGuard() {
        FaultStudy.Outcome outcome = study(SOLID, "100", "shared");
        Case broken = OWN_SHARED.with("broken", "lower lead");
        assertThat(value(outcome, "epr.cubicle", broken))
                .isCloseTo(1.1 * 22e3 / Math.sqrt(3), Percentage.withPercentage(0.01));
        Result visible =
                outcome.results().one("contingency.visible", broken, "nominal").orElseThrow();
        assertThat(visible.value()).isZero();
        assertThat(visible.model()).contains("no way to earth");
        assertThat(value(outcome, "contingency.cleared", broken)).isZero();
        assertThat(outcome.results().one("contingency.clearing-time", broken, "nominal"))
                .isEmpty();
        assertThat(value(outcome, "contingency.cleared", OWN_SHARED.with("broken", "tee")))
                .isEqualTo(1);
        // 0.2 s and 50 ms of the breaker.
        assertThat(value(outcome, "contingency.clearing-time", OWN_SHARED.with("broken", "tee")))
                .isCloseTo(0.25, within(1e-12));
        Case tee = OWN_SHARED.with("broken", "tee");
        assertThat(value(outcome, "contingency.visible", tee)).isEqualTo(1);
    }

    @Test
    void everyPathIsBrokenInTurnTheSecondLeadAndTheScreenToo() {
        Site site = DeckSite.read(TEXT.formatted("earth-fault-current: 3 kA", SOLID, "100", "shared", "")
                .replace("  electrode: main\n", "  electrode: main\n  second-lead-electrode: own\n")
                .replace("screen: {bond: tank,", "screen: {bond: both,"));
        FaultStudy.Outcome outcome = FaultStudy.of(site, new EarthCache());
        for (String path : List.of("upper lead", "lower lead", "tee", "second lead", "cable screen")) {
            Case broken = OWN_SHARED.with("broken", path);
            // Another way is left each time.
            assertThat(value(outcome, "contingency.cleared", broken)).as(path).isEqualTo(1);
            assertThat(value(outcome, "epr.cubicle", broken)).as(path).isPositive();
        }
        assertThat(value(outcome, "contingency.visible", OWN_SHARED.with("broken", "cable screen")))
                .isZero();
        double whole = value(outcome, "epr.tank", OWN_SHARED);
        assertThat(value(outcome, "epr.tank", OWN_SHARED.with("broken", "second lead")))
                .isGreaterThan(whole);
    }

    @Test
    void withoutTheEarthFaultCurrentEveryAnswerIsAGapWithItsKey() {
        FaultStudy.Outcome outcome = study(SOLID, "100", "shared");
        assertThat(outcome.cases()).isNotEmpty();
        Site unknown = DeckSite.read(TEXT.formatted("", SOLID, "100", "shared", ""));
        FaultStudy.Outcome missing = FaultStudy.of(unknown, new EarthCache());
        assertThat(missing.cases()).isEmpty();
        assertThat(missing.results().gapsOf("epr.main"))
                .anySatisfy(gap -> assertThat(gap.missingKeys()).contains("system.earth-fault-current"));
    }
}
