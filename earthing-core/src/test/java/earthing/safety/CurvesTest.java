package earthing.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Source;
import earthing.safety.BodyImpedance.Percentile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurvesTest {

    private static final Standing BARE = Standing.bare(100);
    private static final SurfaceCovering GRAVEL =
            new SurfaceCovering("gravel", 3000, 0.1, Source.commonPractice("wet gravel 3000 ohm.m"));

    static PermissibleVoltage voltage(VoltageCurve curve, Contact contact, double duration, Standing standing) {
        Permissible permissible = curve.at(contact, duration, standing);
        assertThat(permissible).isInstanceOf(PermissibleVoltage.class);
        return (PermissibleVoltage) permissible;
    }

    static List<VoltageCurve> allCurves() {
        List<VoltageCurve> curves = new ArrayList<>(TouchTables.all());
        for (BodyWeight weight : BodyWeight.values()) {
            curves.add(Ieee80Curve.of(weight));
        }
        for (BodyCurrent current : List.of(BodyCurrent.C1, BodyCurrent.EN_50522)) {
            for (BodyImpedance impedance : BodyImpedance.values()) {
                curves.add(new BodyCurve(impedance, Percentile.P5, current, BodyPath.BOTH_HANDS_TO_FEET));
            }
        }
        return curves;
    }

    /** EN 50522:2010 table B.3 and EN 50522:2022 table B.4, read in a reprint. */
    @ParameterizedTest
    @CsvSource({
        "0.05, 716, 725",
        "0.1, 654, 655",
        "0.2, 537, 525",
        "0.5, 220, 225",
        "1, 117, 115",
        "2, 96, 95",
        "5, 86, 85",
        "10, 85, 85"
    })
    void pointsOfEn50522TablesB3AndB4(double duration, double in2010, double in2022) {
        PermissibleVoltage old = voltage(TouchTables.EN_50522_2010, Contact.HAND_TO_FEET, duration, BARE);
        assertThat(old.value()).isEqualTo(in2010);
        assertThat(old.edition()).isEqualTo("EN 50522:2010");
        assertThat(voltage(TouchTables.EN_50522_2022, Contact.HAND_TO_FEET, duration, BARE)
                        .value())
                .isEqualTo(in2022);
    }

    /** Log-log between 537 V and 220 V at 0.3 s is 361.9 V; a straight line would read 19 % more. */
    @Test
    void interpolationIsDeclaredAndMatters() {
        PermissibleVoltage curved = voltage(TouchTables.EN_50522_2010, Contact.HAND_TO_FEET, 0.3, BARE);
        double expected = 537 * Math.pow(220.0 / 537, Math.log(1.5) / Math.log(2.5));
        assertThat(curved.value()).isCloseTo(expected, within(1e-9));
        assertThat(curved.rule()).contains("log-log");
        PermissibleVoltage straight =
                voltage(TouchTables.EN_50522_2010.with(Interpolation.LINEAR), Contact.HAND_TO_FEET, 0.3, BARE);
        assertThat(straight.value() / curved.value() - 1).isCloseTo(0.19, within(0.005));
        assertThat(voltage(TouchTables.EN_50522_2010.with(Interpolation.NEXT_LONGER), Contact.HAND_TO_FEET, 0.3, BARE)
                        .value())
                .isEqualTo(220);
    }

    @Test
    void beyondTheTableTheSustainedValueHolds() {
        for (double duration : new double[] {10.001, 600, Double.POSITIVE_INFINITY}) {
            PermissibleVoltage sustained = voltage(TouchTables.EN_50522_2010, Contact.HAND_TO_FEET, duration, BARE);
            assertThat(sustained.sustained()).isTrue();
            assertThat(sustained.value()).isEqualTo(80);
        }
        assertThat(voltage(TouchTables.EN_50522_2010, Contact.HAND_TO_FEET, Double.POSITIVE_INFINITY, BARE)
                        .basis())
                .contains("never cleared");
        TabulatedCurve ending = new TabulatedCurve(
                "short", "test", TouchTables.HD_637.points(), Optional.empty(), Optional.empty(), Source.tool("test"));
        assertThat(ending.at(Contact.HAND_TO_FEET, 11, BARE)).isInstanceOf(NoPermissibleVoltage.class);
    }

    @Test
    void aShorterDurationThanTheTableUsesItsFirstValueAndSaysSo() {
        PermissibleVoltage early = voltage(TouchTables.EN_50522_2022, Contact.HAND_TO_FEET, 0.02, BARE);
        assertThat(early.value()).isEqualTo(725);
        assertThat(early.remarks()).anyMatch(r -> r.contains("shorter"));
    }

    @Test
    void handToHandUseOfAHandToFeetCurveIsDeclared() {
        Standing shod = BARE.in(Footwear.OLD_WET_SHOES);
        PermissibleVoltage hands = voltage(TouchTables.EN_50522_2010, Contact.HAND_TO_HAND, 0.5, shod);
        assertThat(hands.value()).isEqualTo(220);
        assertThat(hands.additionalResistance()).isZero();
        assertThat(hands.footwear()).isEqualTo(Footwear.NONE.name());
        assertThat(hands.remarks()).anyMatch(r -> r.contains("hand to hand"));
        assertThat(TouchTables.EN_50522_2010.at(Contact.FOOT_TO_FOOT, 0.5, BARE))
                .isInstanceOf(NoPermissibleVoltage.class);
    }

    /** EN 50522:2010 eq. B.2, from memory: U_vTp = U_Tp + I_B (R_F1 + R_F2) with 1750 Ω and 4000 Ω. */
    @ParameterizedTest
    @CsvSource({"0.2, 500, 1587", "0.5, 500, 570", "1, 2000, 437"})
    void prospectiveVoltagesOfEn50522EquationB2(double duration, double resistivity, double expected) {
        SurfaceCovering ground =
                new SurfaceCovering("ground", resistivity, Double.POSITIVE_INFINITY, Source.tool("test"));
        PermissibleVoltage prospective = voltage(
                TouchTables.EN_50522_2010,
                Contact.HAND_TO_FEET,
                duration,
                BARE.on(ground).in(Footwear.OLD_WET_SHOES));
        assertThat(prospective.value()).isCloseTo(expected, within(1e-9));
        assertThat(prospective.footwear()).isEqualTo("old and wet shoes");
    }

    @Test
    void nothingIsCreditedWithoutABodyCurrent() {
        PermissibleVoltage old =
                voltage(TouchTables.HD_637, Contact.HAND_TO_FEET, 0.2, BARE.in(Footwear.OLD_WET_SHOES));
        assertThat(old.value()).isEqualTo(500);
        assertThat(old.additionalResistance()).isZero();
        assertThat(old.remarks()).anyMatch(r -> r.contains("not credited"));
    }

    /** IEEE Std 80 eq. 8 and 9, from memory: 116 and 157 mA at 1 s, 367 and 496 mA at 0.1 s. */
    @ParameterizedTest
    @CsvSource({"1, 116, 157", "0.1, 367, 496"})
    void tolerableCurrentsOfIeee80(double duration, double light, double heavy) {
        assertThat(BodyWeight.KG_50.current(duration) * 1e3).isCloseTo(light, within(0.5));
        assertThat(BodyWeight.KG_70.current(duration) * 1e3).isCloseTo(heavy, within(0.5));
    }

    /** Gönen, Electric Power Transmission System Engineering, example 2.1, read: 0.49 s, 100 Ω·m. */
    @Test
    void gonenExample21() {
        Ieee80Curve light = Ieee80Curve.of(BodyWeight.KG_50);
        Ieee80Curve heavy = Ieee80Curve.of(BodyWeight.KG_70);
        assertThat(voltage(light, Contact.HAND_TO_FEET, 0.49, BARE).value()).isCloseTo(191, within(0.5));
        assertThat(voltage(light, Contact.FOOT_TO_FOOT, 0.49, BARE).value()).isCloseTo(265, within(0.5));
        assertThat(voltage(light, Contact.HAND_TO_HAND, 0.49, BARE).value()).isCloseTo(165.7, within(0.05));
        assertThat(voltage(heavy, Contact.HAND_TO_HAND, 0.49, BARE).value()).isCloseTo(224.3, within(0.05));
    }

    /** IEEE Std 80 annex B, from memory: 2686.6 V step and 838.2 V touch with Cs rounded to 0.74. */
    @Test
    void ieee80AnnexB() {
        SurfaceCovering rock = new SurfaceCovering("crushed rock", 2500, 0.102, Source.tool("test"));
        Ieee80Curve curve = new Ieee80Curve(BodyWeight.KG_70, Ieee80Curve.LayerRule.SHORT_FORMULA, Optional.empty());
        Standing standing = Standing.bare(400).on(rock);
        assertThat(curve.layerFactor(standing)).isCloseTo(0.74, within(0.005));
        assertThat(voltage(curve, Contact.HAND_TO_FEET, 0.5, standing).value()).isCloseTo(838.2, within(838.2 * 0.003));
        assertThat(voltage(curve, Contact.FOOT_TO_FOOT, 0.5, standing).value())
                .isCloseTo(2686.6, within(2686.6 * 0.004));
    }

    @Test
    void ieee80HasNoSustainedValueOfItsOwn() {
        Ieee80Curve printed = Ieee80Curve.of(BodyWeight.KG_50);
        assertThat(printed.at(Contact.HAND_TO_FEET, 3.5, BARE)).isInstanceOf(NoPermissibleVoltage.class);
        assertThat(printed.at(Contact.HAND_TO_FEET, Double.POSITIVE_INFINITY, BARE))
                .isInstanceOf(NoPermissibleVoltage.class);
        Ieee80Curve declared = new Ieee80Curve(
                BodyWeight.KG_50,
                Ieee80Curve.LayerRule.SERIES,
                Optional.of(new SustainedLimit(50, Source.owner("criteria.sustained"))));
        PermissibleVoltage sustained = voltage(declared, Contact.HAND_TO_FEET, Double.POSITIVE_INFINITY, BARE);
        assertThat(sustained.value()).isEqualTo(50);
        assertThat(sustained.source().kind()).isEqualTo(Source.Kind.OWNER);
        assertThat(declared.at(Contact.FOOT_TO_FOOT, 3.5, BARE)).isInstanceOf(NoPermissibleVoltage.class);
    }

    @Test
    void bodyCurveUsesTheHeartCurrentFactorOfThePath() {
        BodyCurve curve =
                new BodyCurve(BodyImpedance.DRY_2005, Percentile.P50, BodyCurrent.EN_50522, BodyPath.LEFT_HAND_TO_FEET);
        PermissibleVoltage feet = voltage(curve, Contact.HAND_TO_FEET, 0.5, BARE);
        PermissibleVoltage hands = voltage(curve, Contact.HAND_TO_HAND, 0.5, BARE);
        assertThat(feet.value()).isCloseTo(193.3, within(0.1));
        assertThat(hands.value()).isCloseTo(450.0, within(0.1));
        assertThat(curve.at(Contact.HAND_TO_FEET, 11, BARE)).isInstanceOf(NoPermissibleVoltage.class);
        assertThat(voltage(curve, Contact.FOOT_TO_FOOT, 0.5, BARE).remarks()).anyMatch(r -> r.contains("above 1000 V"));
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        new BodyCurve(BodyImpedance.DRY_2005, Percentile.P50, BodyCurrent.C1, BodyPath.HAND_TO_HAND));
    }

    @Test
    void sustainedBodyCurrentOfCurveC1Holds() {
        BodyCurve curve =
                new BodyCurve(BodyImpedance.DRY_2005, Percentile.P5, BodyCurrent.C1, BodyPath.LEFT_HAND_TO_FEET);
        PermissibleVoltage sustained = voltage(curve, Contact.HAND_TO_FEET, Double.POSITIVE_INFINITY, BARE);
        assertThat(sustained.sustained()).isTrue();
        double body = sustained.value();
        assertThat(body / BodyImpedance.DRY_2005.on(BodyPath.LEFT_HAND_TO_FEET, body, Percentile.P5))
                .isCloseTo(0.039, within(1e-9));
    }

    @Property(seed = "20261125", tries = 30)
    void noCurveAllowsMoreForLonger(
            @ForAll @DoubleRange(min = 0.01, max = 20) double duration,
            @ForAll @DoubleRange(min = 1, max = 3) double longer) {
        for (VoltageCurve curve : allCurves()) {
            for (Contact contact : Contact.values()) {
                if (curve.at(contact, duration, BARE.on(GRAVEL)) instanceof PermissibleVoltage early
                        && curve.at(contact, duration * longer, BARE.on(GRAVEL)) instanceof PermissibleVoltage late) {
                    assertThat(late.value()).isLessThanOrEqualTo(early.value() * (1 + 1e-9));
                }
            }
        }
    }

    @Property(seed = "20261125", tries = 50)
    void shoesAndCoveringsNeverLowerThePermissibleVoltage(
            @ForAll @DoubleRange(min = 0.05, max = 3) double duration,
            @ForAll @DoubleRange(min = 0, max = 5000) double ohms) {
        Footwear shoes = new Footwear("shoes", ohms, Source.tool("test"));
        for (VoltageCurve curve : allCurves()) {
            double bare = voltage(curve, Contact.HAND_TO_FEET, duration, BARE).value();
            assertThat(voltage(curve, Contact.HAND_TO_FEET, duration, BARE.in(shoes))
                            .value())
                    .isGreaterThanOrEqualTo(bare);
            assertThat(voltage(curve, Contact.HAND_TO_FEET, duration, BARE.on(GRAVEL))
                            .value())
                    .isGreaterThanOrEqualTo(bare);
        }
    }

    @Property(seed = "20261125", tries = 50)
    void ieee80ScalesWithTheRootOfTheDuration(@ForAll @DoubleRange(min = 0.03, max = 0.75) double duration) {
        for (Contact contact : Contact.values()) {
            Ieee80Curve curve = Ieee80Curve.of(BodyWeight.KG_70);
            double once = voltage(curve, contact, duration, BARE).value();
            assertThat(voltage(curve, contact, 4 * duration, BARE).value()).isCloseTo(once / 2, within(1e-9 * once));
        }
    }

    @Test
    void refusesDurationsThatAreNone() {
        for (VoltageCurve curve : allCurves()) {
            for (double duration : new double[] {0, -1, Double.NaN}) {
                assertThatIllegalArgumentException().isThrownBy(() -> curve.at(Contact.HAND_TO_FEET, duration, BARE));
            }
        }
        assertThatIllegalArgumentException().isThrownBy(() -> Standing.bare(Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> new Footwear("x", -1, Source.tool("test")));
    }

    @Test
    void ownerCurveIsReadLogLogAndCreditsNoFootwear() {
        TabulatedCurve curve =
                OwnerCurve.of(List.of(0.1, 1.0), List.of(500.0, 100.0), "works rule", "WR-7", Optional.empty());
        assertThat(voltage(curve, Contact.HAND_TO_FEET, 0.1, BARE).value()).isEqualTo(500);
        assertThat(voltage(curve, Contact.HAND_TO_FEET, Math.sqrt(0.1), BARE).value())
                .isCloseTo(Math.sqrt(50000), within(1e-9));
        assertThat(voltage(curve, Contact.HAND_TO_FEET, 0.1, BARE.in(Footwear.OLD_WET_SHOES))
                        .value())
                .isEqualTo(500);
        assertThat(curve.source().kind()).isEqualTo(Source.Kind.OWNER);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> OwnerCurve.of(List.of(0.1, 1.0), List.of(500.0, 600.0), "n", "r", Optional.empty()))
                .withMessageContaining("not rise");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> OwnerCurve.of(List.of(1.0, 0.1), List.of(500.0, 600.0), "n", "r", Optional.empty()));
    }
}
