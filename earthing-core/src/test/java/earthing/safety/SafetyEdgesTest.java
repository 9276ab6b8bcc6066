package earthing.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Source;
import earthing.safety.BodyImpedance.Percentile;
import earthing.safety.SafetyCriteria.Assessed;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The least and the most that is taken, the next value beyond it, and what a value says of where it comes from. */
class SafetyEdgesTest {

    private static final Source NONE = Source.tool("test");
    private static final Standing BARE = Standing.bare(100);

    private static SurfaceCovering gravel(double thickness) {
        return new SurfaceCovering("gravel", 3000, thickness, NONE);
    }

    private static PermissibleVoltage voltage(VoltageCurve curve, Contact contact, double duration, Standing standing) {
        return CurvesTest.voltage(curve, contact, duration, standing);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void resistivitiesVoltagesAndCurrentsArePositiveAndFinite(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> Standing.bare(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new SurfaceCovering("x", bad, 0.1, NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> new SustainedLimit(bad, NONE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BodyImpedance.DRY_2005.voltage(BodyPath.HAND_TO_HAND, bad, Percentile.P50));
        assertThatIllegalArgumentException().isThrownBy(() -> Points.of(Interpolation.LINEAR, 0.1, 5, bad, 4));
        assertThatIllegalArgumentException().isThrownBy(() -> Points.of(Interpolation.LINEAR, 0.1, bad, 1, 4));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new PermissibleVoltage(
                        bad, Contact.HAND_TO_FEET, 1, false, "c", "e", "f", "s", 0, "r", List.of(), NONE));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, Double.NaN, Double.POSITIVE_INFINITY})
    void shoesRiseAndMergingMayBeNothingButNotLess(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> new Footwear("x", bad, NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> EprGate.of(bad, 100, 2, 4, Optional.empty()));
        assertThatIllegalArgumentException().isThrownBy(() -> Exposure.of(List.of(new Shock(1, 1)), bad));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.HAND_TO_HAND, bad));
    }

    @Test
    void nothingIsTakenWhereNothingIsAllowed() {
        assertThat(new Footwear("x", 0, NONE).resistance()).isZero();
        assertThat(EprGate.of(0, 100, 2, 2, Optional.empty()).ratio()).isZero();
        assertThat(EprGate.of(300, 100, 2, 4, Optional.empty()).ratio()).isEqualTo(3);
        assertThat(Exposure.of(List.of(new Shock(1, 0), new Shock(1, 0)), 0)).hasSize(2);
        assertThat(BodyPath.HAND_TO_HAND.referenceCurrent(0)).isZero();
        assertThat(BodyPath.HAND_TO_HAND.pathCurrent(0)).isZero();
        assertThat(BodyPath.HAND_TO_HAND.pathCurrent(0.08)).isCloseTo(0.2, within(1e-15));
        assertThat(Coincidence.perYear(0, 0, 0, 0)).isZero();
        assertThat(Coincidence.permissibleChance(1e-6, 1e-3)).isCloseTo(1e-3, within(1e-18));
        assertThat(BodyImpedance.DRY_2005.handToHand(0, Percentile.P50)).isEqualTo(3250);
        FibrillationChance bare = new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.LEFT_HAND_TO_FEET, 0);
        assertThat(bare.shareAbove(0, 0.05)).isZero();
        assertThat(bare.of(0, 1)).isZero();
        // Where the shoes take the whole voltage, nothing is left for the body.
        FibrillationChance shod = new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.LEFT_HAND_TO_FEET, 1000);
        assertThat(shod.shareAbove(50, 0.05)).isZero();
        assertThat(shod.shareAbove(2000, 0.05)).isGreaterThan(0.99);
    }

    @Test
    void gatesRatesAndCurrentsAreRefusedBelowTheirLeast() {
        for (double bad : new double[] {0, -1, Double.NaN}) {
            assertThatIllegalArgumentException().isThrownBy(() -> EprGate.of(100, bad, 2, 4, Optional.empty()));
            assertThatIllegalArgumentException().isThrownBy(() -> EprGate.of(100, 100, bad, 4, Optional.empty()));
            assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.permissibleChance(bad, 1));
            assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.permissibleChance(1, bad));
            assertThatIllegalArgumentException().isThrownBy(() -> new Shock(bad, 1));
            assertThatIllegalArgumentException().isThrownBy(() -> new SurfaceCovering("x", 100, bad, NONE));
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new BodyCurrent("x", BodyCurrent.C1.points(), Optional.of(bad), NONE));
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.HAND_TO_HAND, 0)
                            .shareAbove(100, bad));
            assertThatIllegalArgumentException().isThrownBy(() -> SurfaceLayerFactor.reflection(100, bad));
            assertThatIllegalArgumentException().isThrownBy(() -> SurfaceLayerFactor.series1986(0.5, bad));
        }
        for (double bad : new double[] {-1e-9, Double.NaN}) {
            assertThatIllegalArgumentException().isThrownBy(() -> new Shock(1, bad));
            assertThatIllegalArgumentException().isThrownBy(() -> BodyPath.FOOT_TO_FOOT.referenceCurrent(bad));
            assertThatIllegalArgumentException().isThrownBy(() -> BodyPath.FOOT_TO_FOOT.pathCurrent(bad));
            assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.perYear(bad, 1, 1, 1));
            assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.perYear(1, bad, 1, 1));
            assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.perYear(1, 1, bad, 1));
            assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.perYear(1, 1, 1, bad));
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> BodyImpedance.DRY_2005.handToHand(bad, Percentile.P50));
        }
        assertThatIllegalArgumentException().isThrownBy(() -> new SourcedValue(Double.NaN, NONE));
    }

    /** A year has 31,536,000 s: contacts and durations may fill it, not more. */
    @Test
    void theYearMayBeFilled() {
        double seconds = 365 * 24 * 3600.0;
        assertThat(Coincidence.perYear(0.5, 1, 0, seconds)).isEqualTo(0.5);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Coincidence.perYear(0.5, 1, 0, Math.nextUp(seconds)))
                .withMessageContaining("more than the year");
    }

    @Test
    void exposuresAreNumberedFromOne() {
        assertThat(new Exposure(1, 1, 0.2).isSustained()).isFalse();
        assertThatIllegalArgumentException().isThrownBy(() -> new Exposure(0, 1, 0.2));
        assertThatIllegalArgumentException().isThrownBy(() -> new Exposure(2, 1, 0.2));
        assertThatIllegalArgumentException().isThrownBy(() -> new Exposure(1, 1, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Exposure.of(List.of(Shock.neverCleared(), new Shock(1, 0)), 0.5))
                .withMessageContaining("shot 1 is never cleared");
    }

    @Test
    void pointsAreReadBetweenTheirEnds() {
        Points points = Points.of(Interpolation.LINEAR, 0.1, 400, 0.5, 200, 2, 200);
        assertThat(points.first()).isEqualTo(0.1);
        assertThat(points.last()).isEqualTo(2);
        assertThat(points.at(0.05)).isEqualTo(400);
        assertThat(points.at(0.1)).isEqualTo(400);
        assertThat(points.at(0.2)).isCloseTo(350, within(1e-9));
        assertThat(points.at(0.5)).isEqualTo(200);
        assertThat(points.at(2)).isEqualTo(200);
        assertThat(points.with(Interpolation.NEXT_LONGER).at(0.1)).isEqualTo(400);
        assertThat(points.with(Interpolation.NEXT_LONGER).at(Math.nextUp(0.1))).isEqualTo(200);
        for (double bad : new double[] {0, -1, Double.NaN, Math.nextUp(2.0)}) {
            assertThatIllegalArgumentException().isThrownBy(() -> points.at(bad));
        }
    }

    @Test
    void curvesOfPointsFallOrStay() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Points.of(Interpolation.LINEAR, 0.1, 400, 0.5))
                .withMessageContaining("in pairs; have 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Points.of(Interpolation.LINEAR, 0.1, 400))
                .withMessageContaining("at least two points");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Points(Interpolation.LINEAR, List.of(0.1, 0.2, 0.3), List.of(3.0, 2.0)))
                .withMessageContaining("3 durations and 2 values");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Points.of(Interpolation.LINEAR, 0.1, 400, 0.1, 300))
                .withMessageContaining("must rise; have 0.1 then 0.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Points.of(Interpolation.LINEAR, 0.1, 400, 0.2, Math.nextUp(400.0)))
                .withMessageContaining("must not rise");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Points.of(Interpolation.LINEAR, Double.POSITIVE_INFINITY, 400, 0.1, 300));
    }

    /** IEEE Std 80-2013 clause 6.1 (from memory): the formula for the body current holds from 0.03 s to 3 s. */
    @Test
    void tolerableCurrentHoldsFromThreeHundredthsToThreeSeconds() {
        assertThat(BodyWeight.KG_50.current(0.03)).isCloseTo(0.6697, within(0.00005));
        assertThat(BodyWeight.KG_50.current(3)).isCloseTo(0.06697, within(0.000005));
        assertThat(BodyWeight.KG_70.label()).isEqualTo("70 kg");
        for (double bad : new double[] {Math.nextDown(0.03), Math.nextUp(3.0), Double.NaN}) {
            assertThatIllegalArgumentException().isThrownBy(() -> BodyWeight.KG_50.current(bad));
        }
        Ieee80Curve curve = Ieee80Curve.of(BodyWeight.KG_50);
        PermissibleVoltage earliest = voltage(curve, Contact.HAND_TO_FEET, 0.03, BARE);
        assertThat(earliest.remarks()).isEmpty();
        PermissibleVoltage earlier = voltage(curve, Contact.HAND_TO_FEET, 0.02, BARE);
        assertThat(earlier.value()).isEqualTo(earliest.value());
        assertThat(earlier.remarks()).containsExactly("shorter than 0.03 s, whose value is used");
        assertThat(voltage(curve, Contact.HAND_TO_FEET, 3, BARE).sustained()).isFalse();
        assertThat(curve.at(Contact.HAND_TO_FEET, Math.nextUp(3.0), BARE))
                .isInstanceOf(NoPermissibleVoltage.class)
                .extracting("curve")
                .isEqualTo("IEEE Std 80, 50 kg");
    }

    /** IEEE Std 80-2013 eq. (29) to (33), from memory: 1.5 and 6 times the surface, by hand at 1 s and 100 Ω·m. */
    @Test
    void shoesAreCreditedOnceByHandAndFourTimesByFoot() {
        Ieee80Curve curve = Ieee80Curve.of(BodyWeight.KG_50);
        Standing shod = BARE.in(Footwear.OLD_WET_SHOES);
        PermissibleVoltage touch = voltage(curve, Contact.HAND_TO_FEET, 1, shod);
        assertThat(touch.value()).isCloseTo((1000 + 150 + 1000) * 0.116, within(1e-9));
        assertThat(touch.additionalResistance()).isEqualTo(1150);
        assertThat(touch.remarks()).containsExactly("footwear credited by declaration, the standard counts none");
        assertThat(touch.footwear()).isEqualTo("old and wet shoes");
        assertThat(touch.surface()).isEqualTo("bare soil");
        assertThat(touch.edition()).isEqualTo("IEEE Std 80-2000");
        assertThat(voltage(curve, Contact.FOOT_TO_FOOT, 1, shod).value())
                .isCloseTo((1000 + 600 + 4000) * 0.116, within(1e-9));
        PermissibleVoltage hands = voltage(curve, Contact.HAND_TO_HAND, 1, shod);
        assertThat(hands.value()).isCloseTo(116, within(1e-9));
        assertThat(hands.footwear()).isEqualTo("none credited");
        assertThat(hands.remarks()).containsExactly("metal to metal, nothing credited under the feet");
        assertThat(voltage(curve, Contact.FOOT_TO_FOOT, 1, BARE).remarks()).isEmpty();
    }

    @Test
    void theLayerIsReckonedByTheRuleThatWasChosen() {
        Standing standing = Standing.bare(100).on(gravel(0.1));
        double reflection = SurfaceLayerFactor.reflection(100, 3000);
        double series = factor(Ieee80Curve.LayerRule.SERIES, standing);
        assertThat(series).isEqualTo(SurfaceLayerFactor.series(reflection, 0.1));
        assertThat(factor(Ieee80Curve.LayerRule.SHORT_FORMULA, standing))
                .isEqualTo(SurfaceLayerFactor.shortFormula(100, 3000, 0.1))
                .isNotEqualTo(series);
        assertThat(factor(Ieee80Curve.LayerRule.DISC, standing))
                .isEqualTo(FootDisc.factor(reflection, 0.1))
                .isNotEqualTo(series);
        assertThat(factor(Ieee80Curve.LayerRule.DISC, BARE)).isEqualTo(1);
        assertThat(factor(Ieee80Curve.LayerRule.DISC, BARE.on(gravel(Double.POSITIVE_INFINITY))))
                .isEqualTo(1);
        assertThat(voltage(Ieee80Curve.of(BodyWeight.KG_50), Contact.HAND_TO_FEET, 1, standing)
                        .additionalResistance())
                .isCloseTo(1.5 * series * 3000, within(1e-9));
    }

    private static double factor(Ieee80Curve.LayerRule rule, Standing standing) {
        return new Ieee80Curve(BodyWeight.KG_50, rule, Optional.empty()).layerFactor(standing);
    }

    /** Summed anew, so that a remembered sum cannot stand in for it. */
    @Test
    void lowVoltageEquipmentBearsMoreForFiveSeconds() {
        // IEC 60364-4-44, table 44.A2, from memory; the first limit read in a paper to CIRED 2001.
        assertThat(LowVoltageStress.limit(0)).isEqualTo(1200);
        assertThat(LowVoltageStress.limit(5)).isEqualTo(1200);
        assertThat(LowVoltageStress.limit(Math.nextUp(5.0))).isEqualTo(250);
        assertThat(LowVoltageStress.brief(5)).isTrue();
        assertThat(LowVoltageStress.brief(Double.POSITIVE_INFINITY)).isFalse();
        assertThatIllegalArgumentException().isThrownBy(() -> LowVoltageStress.limit(Math.nextDown(0.0)));
        assertThatIllegalArgumentException().isThrownBy(() -> LowVoltageStress.limit(Double.NaN));
    }

    @Test
    void theSeriesIsTheSameNearAndFar() {
        // To first order in the reflection only the nearest image counts; a thick layer leaves the far field 4/(πd).
        double far = SurfaceLayerFactor.summed(1e-6, 4);
        assertThat((far - 1) / 1e-6).isCloseTo(4 / (Math.PI * 100), within(1e-5));
        // The two forms of the mutual resistance meet at eight radii.
        double below = SurfaceLayerFactor.summed(1e-6, 0.32 * (1 - 1e-9));
        double above = SurfaceLayerFactor.summed(1e-6, 0.32 * (1 + 1e-9));
        assertThat((above - 1) / (below - 1)).isCloseTo(1, within(1e-8));
        assertThat(SurfaceLayerFactor.summed(-0.9, 0.1)).isCloseTo(0.7048, within(5e-5));
        assertThat(SurfaceLayerFactor.summed(-0.98, 0.02)).isCloseTo(0.2524, within(5e-5));
        assertThat(SurfaceLayerFactor.summed(-0.9, 0.1)).isEqualTo(SurfaceLayerFactor.series(-0.9, 0.1));
    }

    @Test
    void reflectionsAndThicknessesAtTheirLimits() {
        assertThat(SurfaceLayerFactor.series1986(SurfaceLayerFactor.STRONGEST, 10))
                .isGreaterThan(1);
        assertThat(SurfaceLayerFactor.series1986(0, 0.1)).isCloseTo(1 / 0.96, within(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SurfaceLayerFactor.series1986(Math.nextUp(SurfaceLayerFactor.STRONGEST), 0.1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SurfaceLayerFactor.series1986(0.5, Double.POSITIVE_INFINITY));
        assertThatIllegalArgumentException().isThrownBy(() -> SurfaceLayerFactor.shortFormula(100, 1000, 0));
        assertThat(FootDisc.factor(0.5, 0.005, 8)).isPositive();
        assertThatIllegalArgumentException().isThrownBy(() -> FootDisc.factor(0.5, Math.nextDown(0.005)));
        assertThatIllegalArgumentException().isThrownBy(() -> FootDisc.factor(0.5, Double.POSITIVE_INFINITY));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FootDisc.factor(Math.nextUp(SurfaceLayerFactor.STRONGEST), 0.1));
    }

    @Test
    void tablesSayWhatTheyCreditAndWhatNot() {
        Standing shod = BARE.in(Footwear.OLD_WET_SHOES);
        TabulatedCurve en = TouchTables.EN_50522_2010;
        PermissibleVoltage credited = voltage(en, Contact.HAND_TO_FEET, 0.5, shod);
        assertThat(credited.value()).isCloseTo(220 + 1000 * 0.2, within(1e-9));
        assertThat(credited.additionalResistance()).isEqualTo(1000);
        assertThat(credited.remarks()).containsExactly("prospective voltage with the additional resistance credited");
        assertThat(voltage(en, Contact.HAND_TO_FEET, 0.5, BARE).remarks()).isEmpty();
        assertThat(voltage(TouchTables.HD_637, Contact.HAND_TO_FEET, 0.2, BARE).remarks())
                .isEmpty();
        // Beyond the table the last body current shrinks as the voltage does: 0.05 A by 80 V over 85 V.
        PermissibleVoltage sustained = voltage(en, Contact.HAND_TO_FEET, 20, shod);
        assertThat(sustained.value()).isCloseTo(80 + 1000 * 0.05 * 80 / 85, within(1e-9));
        assertThat(sustained.rule()).isEqualTo("value for sustained faults, beyond 10.0 s");
        assertThat(sustained.source().locus()).contains("80 V");
        assertThat(voltage(en, Contact.HAND_TO_FEET, 10, BARE).sustained()).isFalse();
        Standing layered = Standing.bare(100).on(gravel(0.1));
        double layer = 1.5 * SurfaceLayerFactor.series(SurfaceLayerFactor.reflection(100, 3000), 0.1) * 3000;
        assertThat(voltage(en, Contact.HAND_TO_FEET, 1, layered).additionalResistance())
                .isCloseTo(layer, within(1e-9));
        assertThat(voltage(en, Contact.HAND_TO_FEET, 1, layered.in(Footwear.OLD_WET_SHOES))
                        .value())
                .isCloseTo(117 + 0.08 * (layer + 1000), within(1e-9));
        assertThat(voltage(en, Contact.HAND_TO_FEET, 0.05, BARE).remarks()).isEmpty();
    }

    @Test
    void bodyCurveAddsItsSeriesResistanceToTheBodyVoltage() {
        BodyCurve curve = new BodyCurve(
                BodyImpedance.DRY_2005, Percentile.P50, BodyCurrent.EN_50522, BodyPath.RIGHT_HAND_TO_FEET);
        assertThat(curve.edition()).isEqualTo("IEC/TS 60479-1:2005");
        assertThat(curve.name()).endsWith("I_B of EN 50522, dry, large area, 50 %");
        Standing layered = Standing.bare(100).on(gravel(0.1)).in(Footwear.OLD_WET_SHOES);
        double surface = SurfaceLayerFactor.series(SurfaceLayerFactor.reflection(100, 3000), 0.1) * 3000;
        // The right hand has a heart-current factor of 0.8: a quarter more current passes the path.
        double bare = voltage(curve, Contact.HAND_TO_FEET, 1, BARE).value();
        PermissibleVoltage touch = voltage(curve, Contact.HAND_TO_FEET, 1, layered);
        assertThat(touch.value() - bare).isCloseTo(0.1 * (1.5 * surface + 1000), within(1e-6));
        assertThat(touch.additionalResistance()).isCloseTo(1.5 * surface + 1000, within(1e-9));
        double foot = voltage(curve, Contact.FOOT_TO_FOOT, 1, BARE).value();
        assertThat(voltage(curve, Contact.FOOT_TO_FOOT, 1, layered).value() - foot)
                .isCloseTo(2 * (6 * surface + 4000), within(1e-6));
        PermissibleVoltage hands = voltage(curve, Contact.HAND_TO_HAND, 1, layered);
        assertThat(hands.additionalResistance()).isZero();
        assertThat(hands.footwear()).isEqualTo("none credited");
        assertThat(touch.footwear()).isEqualTo("old and wet shoes");
        assertThat(touch.rule()).isEqualTo("log-log between the printed points");
        assertThat(touch.remarks()).containsExactly("path right hand to both feet, heart-current factor 0.8");
        assertThat(voltage(curve, Contact.HAND_TO_FEET, 0.05, BARE).remarks()).hasSize(1);
        assertThat(voltage(curve, Contact.HAND_TO_FEET, 0.04, BARE).remarks().get(0))
                .contains("shorter than the first point at 0.05 s");
        assertThat(voltage(curve, Contact.HAND_TO_FEET, 10, BARE).sustained()).isFalse();
    }

    @Test
    void theLowestExposureGovernsAndOfEqualsTheFirst() {
        Assessed first = assessed(1, 100);
        Assessed second = assessed(2, 90);
        Assessed third = assessed(3, 90);
        assertThat(SafetyCriteria.governing(List.of(first, second, third))).isEqualTo(second);
        assertThat(SafetyCriteria.governing(List.of(first))).isEqualTo(first);
    }

    private static Assessed assessed(int shot, double volts) {
        return new Assessed(
                new Exposure(shot, shot, 1),
                new PermissibleVoltage(
                        volts, Contact.HAND_TO_FEET, 1, false, "c", "e", "f", "s", 0, "r", List.of(), NONE));
    }

    @Test
    void criteriaAreAskedForByWhatTheyLack() {
        SafetyCriteria body = SafetyCriteria.body(
                new BodyCurve(BodyImpedance.DRY_2005, Percentile.P5, BodyCurrent.C1, BodyPath.LEFT_HAND_TO_FEET));
        assertThat(body.missing()).isEmpty();
        assertThat(body.name())
                .startsWith("IEC/TS 60479-1 body model, curve c1")
                .endsWith("5 %");
        assertThat(SafetyCriteria.EN_50522_2010.with(TouchTables.HD_637).curve())
                .contains(TouchTables.HD_637);
        SafetyCriteria lacking =
                new SafetyCriteria("works rule", Optional.empty(), Set.of(SafetyCriteria.Need.STEP_GATE), Map.of());
        assertThat(lacking.missing())
                .containsExactly("curve of permissible voltages", "gate of the earth potential rise for step voltages");
    }

    @Test
    void aPermissibleVoltageSaysWhatItRestsOn() {
        PermissibleVoltage value = new PermissibleVoltage(
                117, Contact.HAND_TO_FEET, 1, false, "curve", "e", "shoes", "gravel", 0, "rule", List.of("a"), NONE);
        assertThat(value.basis())
                .isEqualTo("curve, hand to feet, exposure 1.00 s; footwear: shoes; surface: gravel; rule; a");
    }

    @ParameterizedTest
    @EnumSource(BodyPath.class)
    void pathsAndCurrentsUndoEachOther(BodyPath path) {
        assertThat(path.label()).isNotBlank();
        assertThat(path.referenceCurrent(path.pathCurrent(0.05))).isCloseTo(0.05, within(1e-15));
    }

    @Test
    void labelsAreThere() {
        for (LocationClass place : LocationClass.values()) {
            assertThat(place.label()).isNotBlank();
            assertThat(place.footwear()).isNotNull();
        }
        assertThat(LocationClass.SHOES.footwear()).isEqualTo(Footwear.OLD_WET_SHOES);
        assertThat(Interpolation.LINEAR.label()).isEqualTo("linear between the printed points");
        assertThat(TouchTables.all()).hasSize(3);
    }
}
