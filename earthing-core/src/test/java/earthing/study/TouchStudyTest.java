package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Site;
import earthing.study.PowerCase.FaultShot;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class TouchStudyTest {

    private static final double CURRENT = 10;

    private static final String TEXT = """
            file-version: 1
            site: {name: single rod, stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              neutral: {method: solid}
            soil: {resistivity: 100 ohm.m}
            pole: {material: wood, height: 11 m, burial: 1.8 m, diameter: 0.28 m}
            tank: {height: 9 m}
            main-earth:
              conductor: {material: copper, area: 70 mm2}
              offset: 0.15 m
              electrode: main
            electrodes:
              - {name: main, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}
              - {name: own, at: {x: -5 m, y: 0 m}, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}
            cubicle: {height: 3 m, earth: shared, reach: 1 m}
            criteria: {touch: en-50522-2022, shock-merging-time: 0.5 s}
            """;

    private static Site site(String... replacements) {
        String text = TEXT;
        for (int i = 0; i < replacements.length; i += 2) {
            assertThat(text).contains(replacements[i]);
            text = text.replace(replacements[i], replacements[i + 1]);
        }
        return DemoSite.parse(text);
    }

    private static HandBuiltFault fault(Site site) {
        HandBuiltFault fault = new HandBuiltFault(site).into("main", CURRENT);
        double volts = CURRENT * fault.earth().resistance("main", "main");
        return fault.rise(EarthPaths.TANK, volts).rise(EarthPaths.CUBICLE, volts);
    }

    private static StudyResults touch(HandBuiltFault fault, Site site) {
        return TouchStudy.of(List.of(fault.build()), site, new EarthCache());
    }

    private static double value(StudyResults results, String id) {
        assertThat(results.of(id)).as(id).hasSize(1);
        return results.of(id).get(0).value();
    }

    /** Potential of the ground at a distance from a rod that leaks evenly along its length. */
    private static double groundPotential(double distance) {
        // Sunde, Earth Conduction Effects in Transmission Systems, 1949, line source from the surface (from memory).
        double length = 3;
        return 100 * CURRENT / (2 * Math.PI * length) * Math.log((length + Math.hypot(length, distance)) / distance);
    }

    @Test
    void touchVoltageBesideASingleRodIsTheRiseLessThePotentialOfALineSource() {
        Site site = site();
        HandBuiltFault fault = fault(site);
        StudyResults results = touch(fault, site);
        double rise = CURRENT * fault.earth().resistance("main", "main");
        // The lead stands 0.15 m from the rod, the feet at most 1 m from the lead: 1.15 m is the worst place.
        // A rod leaks more at its lower end, a line source does not: 1 % of the rise.
        assertThat(value(results, "touch.cubicle.voltage"))
                .isCloseTo(rise - groundPotential(1.15), org.assertj.core.data.Offset.offset(0.01 * rise));
    }

    @Test
    void touchVoltageGrowsWithTheReach() {
        Site near = site("reach: 1 m", "reach: 0.5 m");
        double atHalf = value(touch(fault(near), near), "touch.cubicle.voltage");
        double atOne = value(touch(fault(site()), site()), "touch.cubicle.voltage");
        assertThat(atOne).isGreaterThan(atHalf);
    }

    @Test
    void touchVoltageIsProportionalToTheCurrent() {
        Site site = site();
        HandBuiltFault tenfold = new HandBuiltFault(site).into("main", 10 * CURRENT);
        double volts = 10 * CURRENT * tenfold.earth().resistance("main", "main");
        tenfold.rise(EarthPaths.TANK, volts).rise(EarthPaths.CUBICLE, volts);
        assertThat(value(touch(tenfold, site), "touch.cubicle.voltage"))
                .isCloseTo(
                        10 * value(touch(fault(site), site), "touch.cubicle.voltage"), Percentage.withPercentage(1e-3));
    }

    @Test
    void worstStepIsAtLeastTheRadialPaceAwayFromTheRod() {
        Site site = site();
        double step = value(touch(fault(site), site), "step.worst.voltage");
        assertThat(step).isGreaterThan(0.99 * (groundPotential(0.3) - groundPotential(1.3)));
        assertThat(step).isLessThan(CURRENT * fault(site).earth().resistance("main", "main"));
    }

    @Test
    void deadTimeBelowTheMergingTimeMakesOneExposure() {
        Site site = site();
        StudyResults results = touch(fault(site).shots(new FaultShot(0.2, 0.3), new FaultShot(0.2, 0)), site);
        // EN 50522:2022 table B.4: 525 V at 0.2 s, 225 V at 0.5 s; 0.4 s lies between them on log-log paper.
        double expected = 525 * Math.pow(225.0 / 525.0, Math.log(0.4 / 0.2) / Math.log(0.5 / 0.2));
        assertThat(value(results, "touch.cubicle.permissible")).isCloseTo(expected, Percentage.withPercentage(1e-6));
        assertThat(results.under("touch.cubicle.exposure.")).isEmpty();
    }

    @Test
    void deadTimeAboveTheMergingTimeMakesTwoExposuresAndTheLongerGoverns() {
        Site site = site();
        StudyResults results = touch(fault(site).shots(new FaultShot(0.2, 0.6), new FaultShot(1, 0)), site);
        // EN 50522:2022 table B.4: 525 V at 0.2 s, 115 V at 1 s.
        assertThat(value(results, "touch.cubicle.exposure.1.permissible"))
                .isCloseTo(525, Percentage.withPercentage(1e-6));
        assertThat(value(results, "touch.cubicle.exposure.2.permissible"))
                .isCloseTo(115, Percentage.withPercentage(1e-6));
        assertThat(value(results, "touch.cubicle.permissible")).isCloseTo(115, Percentage.withPercentage(1e-6));
    }

    @Test
    void theDeclaredMergingTimeDecidesAndAnAbsentOneIsToldAsAnAssumption() {
        Site longer = site("shock-merging-time: 0.5 s", "shock-merging-time: 1 s");
        FaultShot[] shots = {new FaultShot(0.2, 0.6), new FaultShot(0.3, 0)};
        // EN 50522:2022 table B.4 at 0.2 + 0.3 = 0.5 s.
        assertThat(value(touch(fault(longer).shots(shots), longer), "touch.cubicle.permissible"))
                .isCloseTo(225, Percentage.withPercentage(1e-6));
        Site silent = site(", shock-merging-time: 0.5 s", "");
        StudyResults results = touch(fault(silent).shots(shots), silent);
        assertThat(results.assumptions()).anySatisfy(a -> assertThat(a.key()).isEqualTo("criteria.shock-merging-time"));
        assertThat(results.under("touch.cubicle.exposure.")).hasSize(2);
    }

    @Test
    void aFaultThatIsNeverClearedHasTheSustainedLimit() {
        Site site = site();
        StudyResults results = touch(fault(site).shots(new FaultShot(Double.POSITIVE_INFINITY, 0)), site);
        // EN 50522 figure 4, note: 80 V where the current flows much longer than 10 s (from memory).
        assertThat(value(results, "touch.cubicle.permissible")).isEqualTo(80);
    }

    @Test
    void coveringAndFootwearRaiseThePermissibleVoltage() {
        Site bare = site();
        Site covered = site("0.5 s}", "0.5 s, covering: {resistivity: 5000 ohm.m, thickness: 0.1 m}}");
        Site shod = site("0.5 s}", "0.5 s, footwear-resistance: 1000 ohm}");
        double without = value(touch(fault(bare), bare), "touch.cubicle.permissible");
        assertThat(value(touch(fault(covered), covered), "touch.cubicle.permissible"))
                .isGreaterThan(without);
        assertThat(value(touch(fault(shod), shod), "touch.cubicle.permissible")).isGreaterThan(without);
    }

    @Test
    void aGuardCountsOnlyIfItIsHighEnoughAndItsVoltageIsDeclared() {
        assertThat(leadIsTouched("offset: 0.15 m")).isTrue();
        assertThat(leadIsTouched("offset: 0.15 m\n  guard-height: 2.5 m")).isTrue();
        assertThat(leadIsTouched("offset: 0.15 m\n  guard-height: 2.5 m\n  guard-voltage: unknown"))
                .isTrue();
        assertThat(leadIsTouched("offset: 0.15 m\n  guard-height: 2 m\n  guard-voltage: 20 kV"))
                .isTrue();
        assertThat(leadIsTouched("offset: 0.15 m\n  guard-height: 2.5 m\n  guard-voltage: 20 kV"))
                .isFalse();
    }

    private static boolean leadIsTouched(String lines) {
        Site site = site("offset: 0.15 m", lines);
        StudyResults results = touch(fault(site), site);
        return !results.of("touch.down-lead.voltage").isEmpty();
    }

    @Test
    void aBondedHandleIsTouchedAndAnUnbondedOneIsAGap() {
        Site bonded = site("tank: {height: 9 m}", "tank: {height: 9 m, handle-height: 2 m, handle-bonded: yes}");
        StudyResults results = touch(fault(bonded), bonded);
        assertThat(value(results, "touch.tank-handle.voltage")).isEqualTo(value(results, "touch.cubicle.voltage"));
        for (String word : List.of("no", "unknown")) {
            Site loose =
                    site("tank: {height: 9 m}", "tank: {height: 9 m, handle-height: 2 m, handle-bonded: " + word + "}");
            StudyResults without = touch(fault(loose), loose);
            assertThat(without.of("touch.tank-handle.voltage")).isEmpty();
            assertThat(without.gapsOf("touch.tank-handle"))
                    .anySatisfy(g -> assertThat(g.missingKeys()).containsExactly("tank.handle-bonded"));
        }
    }

    @Test
    void aBondedSteelPoleIsTouchedAtItsOwnPlace() {
        String wood = "pole: {material: wood, height: 11 m, burial: 1.8 m, diameter: 0.28 m}";
        String steel = "pole: {material: steel, height: 11 m, burial: 1.8 m, diameter: 0.28 m, butt-contact: coated,"
                + " bonded-to-main-earth: %s}";
        String aside = "{name: main, at: {x: 2 m, y: 0 m}, rod";
        Site bonded = site(wood, steel.formatted("yes"), "{name: main, rod", aside);
        StudyResults results = touch(fault(bonded), bonded);
        // The pole's axis is farther from the rod than the lead is, so the ground there is lower.
        assertThat(value(results, "touch.pole.voltage")).isGreaterThan(value(results, "touch.cubicle.voltage"));
        Site apart = site(wood, steel.formatted("no"), "{name: main, rod", aside);
        assertThat(touch(fault(apart), apart).of("touch.pole.voltage")).isEmpty();
    }

    @Test
    void aBondedStayIsTouchedAtItsAnchorAndAnInsulatedOneIsNot() {
        String stay = "stays:\n  - {name: stay east, top-height: 9 m, anchor-distance: 6 m, insulated: %s,"
                + " bonded-to-main-earth: yes}\ncriteria:";
        Site bonded = site("criteria:", stay.formatted("no"));
        StudyResults results = touch(fault(bonded), bonded);
        assertThat(value(results, "touch.stay-stay-east.voltage"))
                .isGreaterThan(value(results, "touch.cubicle.voltage"));
        Site insulated = site("criteria:", stay.formatted("yes"));
        assertThat(touch(fault(insulated), insulated).under("touch.stay")).isEmpty();
    }

    @Test
    void separateEarthsAreTouchedHandToHandAndSharedOnesAreNot() {
        Site separate = site("earth: shared", "earth: separate, electrode: own");
        HandBuiltFault fault = fault(separate);
        double mutual = CURRENT * fault.earth().resistance("main", "own");
        double main = CURRENT * fault.earth().resistance("main", "main");
        StudyResults results = touch(fault.rise(EarthPaths.CUBICLE, mutual), separate);
        assertThat(value(results, "touch.between-earths.voltage"))
                .isCloseTo(main - mutual, Percentage.withPercentage(1e-9));
        assertThat(results.of("touch.between-earths.permissible")).hasSize(1);
        assertThat(touch(fault(site()), site()).of("touch.between-earths.voltage"))
                .isEmpty();
    }

    @Test
    void aCubicleThatFloatsIsAGapAndNeverZeroVolt() {
        Site floating = site("earth: shared", "earth: unearthed");
        HandBuiltFault fault =
                new HandBuiltFault(floating).into("main", CURRENT).rise(EarthPaths.TANK, 300);
        StudyResults results = touch(fault, floating);
        assertThat(results.of("touch.cubicle.voltage")).isEmpty();
        assertThat(results.gapsOf("touch.cubicle"))
                .anySatisfy(g -> assertThat(g.missingKeys()).contains("cubicle.capacitance-to-earth"));
    }

    @Test
    void withoutACriterionOrAShapeThereIsAGapForTouchAndForStep() {
        Site silent = site("criteria: {touch: en-50522-2022, shock-merging-time: 0.5 s}\n", "");
        StudyResults none = touch(fault(silent), silent);
        assertThat(none.results()).isEmpty();
        assertThat(none.gaps()).extracting(Gap::id).containsExactlyInAnyOrder("touch", "step");
        Site declared = site(
                "{name: main, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}",
                "{name: main, resistance: 20 ohm}");
        StudyResults shapeless = touch(fault(declared), declared);
        assertThat(shapeless.results()).isEmpty();
        assertThat(shapeless.gaps()).extracting(Gap::id).containsExactlyInAnyOrder("touch", "step");
    }

    @Test
    void workedLineGivesTheTouchVoltage() {
        Site site = site();
        Result touch = touch(fault(site), site).of("touch.cubicle.voltage").get(0);
        assertThat(touch.worked().orElseThrow().value()).isEqualTo(touch.value());
        double metal = touch.worked().orElseThrow().terms().get(0).value();
        double ground = touch.worked().orElseThrow().terms().get(1).value();
        assertThat(metal - ground).isCloseTo(touch.value(), Percentage.withPercentage(1e-9));
    }
}
