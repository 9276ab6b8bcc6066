package earthing.electrode.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each formula gives a value up to the end of its printed range and none beyond. */
class FormulaEdgesTest {

    private static final double RHO = 100;

    /** Holds from the least value on, and not just below it. */
    private static void from(double least, DoubleFunction<FormulaResult> formula) {
        assertThat(formula.apply(least).holds()).as("at %s", least).isTrue();
        assertThat(formula.apply(least * (1 - 1e-9)).holds())
                .as("below %s", least)
                .isFalse();
    }

    /** Holds up to the greatest value, and not just above it. */
    private static void upTo(double greatest, DoubleFunction<FormulaResult> formula) {
        assertThat(formula.apply(greatest).holds()).as("at %s", greatest).isTrue();
        assertThat(formula.apply(greatest * (1 + 1e-9)).holds())
                .as("above %s", greatest)
                .isFalse();
    }

    @Test
    void rodsAndPipesAreLong() {
        from(6 * 0.0625, length -> RodDwight.resistance(RHO, length, 0.0625));
        from(5 * 0.25, length -> PipeIs3043.resistance(RHO, length, 0.25));
        from(10 * 0.125, length -> TwoRodsDwight.resistance(RHO, length, 0.125, 4));
        from(10 * 0.125, distance -> TwoRodsDwight.resistance(RHO, 4, 0.125, distance));
        from(5 * 0.5, length -> ConcreteEncasedRod.resistance(RHO, 50, length, 0.0625, 0.5));
        assertThat(ConcreteEncasedRod.resistance(RHO, 50, 3, 0.5, 0.5).holds()).isFalse();
        upTo(3, length -> RulesOfThumb.rod(RHO, length));
        upTo(50, length -> RulesOfThumb.strip(RHO, length));
        double area = Math.pow(15 / 1.13, 2);
        assertThat(RulesOfThumb.ring(RHO, area * (1 - 1e-9)).holds()).isTrue();
        assertThat(RulesOfThumb.ring(RHO, area * (1 + 1e-9)).holds()).isFalse();
    }

    @Test
    void wiresAreThinAndNotTooDeep() {
        from(20 * 0.125, length -> HorizontalWireDwight.resistance(RHO, length, 0.125, 0.5));
        from(0.25, depth -> HorizontalWireDwight.resistance(RHO, 10, 0.125, depth));
        upTo(2.5, depth -> HorizontalWireDwight.resistance(RHO, 10, 0.125, depth));
        from(20 * 0.125, length -> HorizontalWireSunde.resistance(RHO, length, 0.125, 0.3));
        from(0.25, depth -> HorizontalWireSunde.resistance(RHO, 16, 0.125, depth));
        upTo(2, depth -> HorizontalWireSunde.resistance(RHO, 16, 0.125, depth));
        from(40 * 0.125, diameter -> RingDwight.resistance(RHO, diameter, 0.125, 0.5));
        from(0.25, depth -> RingDwight.resistance(RHO, 8, 0.125, depth));
        upTo(8, depth -> RingDwight.resistance(RHO, 8, 0.125, depth));
        StarDwight.Arms three = StarDwight.Arms.THREE;
        from(10 * 0.25, arm -> StarDwight.resistance(three, RHO, arm, 0.25, 0.5));
        from(0.25, depth -> StarDwight.resistance(three, RHO, 16, 0.125, depth));
        upTo(4, depth -> StarDwight.resistance(three, RHO, 16, 0.125, depth));
        from(20 * 0.5, length -> StripDwight.resistance(RHO, length, 0.5, 0.03125, 1));
        from(0.5, depth -> StripDwight.resistance(RHO, 16, 0.5, 0.03125, depth));
        upTo(4, depth -> StripDwight.resistance(RHO, 16, 0.5, 0.03125, depth));
        assertThat(StripDwight.resistance(RHO, 16, 0.5, 0.0625, 1).holds())
                .as("thinner than an eighth of its width")
                .isFalse();
        assertThat(StripDwight.resistance(RHO, 16, 0.5, 0.0624, 1).holds()).isTrue();
    }

    @Test
    void platesAndBodiesLieDeepEnough() {
        for (RoundPlateDwight.Lie lie : RoundPlateDwight.Lie.values()) {
            from(0.5, depth -> RoundPlateDwight.resistance(lie, RHO, 0.5, depth));
        }
        from(5, distance -> Sphere.betweenTwoDeep(RHO, 0.5, distance));
        from(2.5, distance -> Hemisphere.twoInParallel(RHO, 0.5, distance));
        from(2, depth -> FoundationHemisphere.resistance(RHO, 4, depth));
        upTo(6, depth -> FoundationHemisphere.resistance(RHO, 4, depth));
    }

    /** HD 637 S1:1999, from memory: R = ρ/(πD) with D = 1.57·V^(1/3); a cylinder of 2 m by 2 m has 6.2832 m³. */
    @Test
    void foundationOfHd637() {
        double volume = Math.PI * 2;
        double byHand = 100 / (Math.PI * 1.57 * Math.cbrt(volume));
        assertThat(FoundationHemisphere.resistance(100, 2, 2).get()).isCloseTo(byHand, within(1e-12));
        assertThat(byHand).isCloseTo(10.99, within(0.005));
        assertThat(RulesOfThumb.foundation(100, volume).get()).isCloseTo(byHand, within(1e-12));
    }

    @Test
    void groupsAreWideEnough() {
        // α = ρ/(2π R s): one half at this resistance of one rod.
        double single = RHO / (2 * Math.PI * 0.5 * 4);
        assertThat(RodsBs7430.resistance(RHO, single * (1 + 1e-9), 4, 2, 1).holds())
                .isTrue();
        assertThat(RodsBs7430.resistance(RHO, single * (1 - 1e-9), 4, 2, 1).holds())
                .isFalse();
        assertThat(RodsBs7430.resistance(RHO, 50, 4, 2, 0).holds()).isFalse();
        assertThat(RodsBs7430.resistance(RHO, 50, 4, 2, -1).holds()).isFalse();
        double twice = 2 * RHO / (2 * Math.PI * 4);
        assertThat(RodsEqualCurrents.resistance(RHO, twice * (1 + 1e-9), 3, 4).holds())
                .isTrue();
        assertThat(RodsEqualCurrents.resistance(RHO, twice * (1 - 1e-9), 3, 4).holds())
                .isFalse();
        assertThat(RodsEqualCurrents.parallelingFactor(1)).isZero();
        assertThatIllegalArgumentException().isThrownBy(() -> RodsEqualCurrents.parallelingFactor(0));
        upTo(0.5, ratio -> RodsFilledSquare.factor(3, ratio));
        assertThat(RodsFilledSquare.factor(2, 0.1).get()).isCloseTo((1 + 0.1 * 2.70711) / 4, within(1e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> RodsFilledSquare.constant(1));
        assertThatIllegalArgumentException().isThrownBy(() -> RodsBs7430.lambdaHollowSquare(1));
        assertThatIllegalArgumentException().isThrownBy(() -> RodsBs7430.lambdaInLine(1));
        assertThatIllegalArgumentException().isThrownBy(() -> RodsBs7430.resistance(RHO, 50, 4, 1, 1));
    }

    /** IEEE Std 142-2007 table 14 (from memory): factors for 2 to 24 rods, no others. */
    @Test
    void everyRowOfIeee142Table14() {
        int[] rods = {2, 3, 4, 8, 12, 16, 20, 24};
        double[] printed = {1.16, 1.29, 1.36, 1.68, 1.80, 1.92, 2.00, 2.16};
        for (int i = 0; i < rods.length; i++) {
            assertThat(RodsIeee142.factor(rods[i]).get()).isEqualTo(printed[i]);
        }
        assertThat(RodsIeee142.factor(1).holds()).isFalse();
        assertThat(RodsIeee142.factor(25).holds()).isFalse();
    }

    @Test
    void gridsKeepToTheRangeOfIeee80() {
        from(4 * 10, conductor -> GridLaurent.resistance(RHO, 100, conductor));
        assertThat(GridLaurent.resistance(RHO, 100, 200).get())
                .isCloseTo(GridLaurent.plate(RHO, 100) + 0.5, within(1e-12));
        from(0.25, depth -> GridSverak.resistance(RHO, 100, 100, depth));
        upTo(2.5, depth -> GridSverak.resistance(RHO, 100, 100, depth));
        from(0.25, depth -> grid(7, depth, 0.01).meshVoltage(RHO, 100));
        upTo(2.5, depth -> grid(7, depth, 0.01).stepVoltage(RHO, 100));
        assertThat(grid(2.5, 0.5, 0.01).meshVoltage(RHO, 100).holds()).isFalse();
        assertThat(grid(2.51, 0.5, 0.01).meshVoltage(RHO, 100).holds()).isTrue();
        assertThat(grid(7, 0.5, 0.125).meshVoltage(RHO, 100).holds()).isFalse();
        assertThat(grid(7, 0.5, 0.124).meshVoltage(RHO, 100).holds()).isTrue();
        // 25 parallel wires each way on a square: n = 2·L/p.
        assertThat(new GridIeee80(3, 0.5, 0.01, 25 * 140, 280, 4900, 70, 70, 0, 0, false)
                        .meshVoltage(RHO, 100)
                        .holds())
                .isTrue();
        assertThat(new GridIeee80(3, 0.5, 0.01, 25.1 * 140, 280, 4900, 70, 70, 0, 0, false)
                        .meshVoltage(RHO, 100)
                        .holds())
                .isFalse();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new GridIeee80(7, 0.5, 0.01, 1540, 280, 4900, 70, 70, -1, 0, true));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new GridIeee80(7, 0.5, 0.01, 1540, 280, 4900, 70, 70, 7.5, 7, true));
    }

    private static GridIeee80 grid(double spacing, double depth, double diameter) {
        return new GridIeee80(spacing, depth, diameter, 1540, 280, 4900, 70, 70, 7.5, 7.5, true);
    }

    /** IEEE Std 80-2013 eq. (90) and (91), from memory: rods inside the grid count by their length alone. */
    @Test
    void rodsInsideTheGridCountByTheirLength() {
        GridIeee80 bare = new GridIeee80(7, 0.5, 0.01, 1540, 280, 4900, 70, 70, 0, 0, false);
        GridIeee80 inside = new GridIeee80(7, 0.5, 0.01, 1540, 280, 4900, 70, 70, 7.5, 75, false);
        assertThat(bare.meshVoltage(400, 1908).get()
                        / inside.meshVoltage(400, 1908).get())
                .isCloseTo(1615.0 / 1540, within(1e-12));
        assertThat(bare.stepVoltage(400, 1908).get()
                        / inside.stepVoltage(400, 1908).get())
                .isCloseTo((0.75 * 1540 + 0.85 * 75) / (0.75 * 1540), within(1e-12));
    }

    @Test
    void schwarzGridNeedsARodAndPartsThatFit() {
        assertThat(new GridSchwarz(100, 100, 120, 100, 0.01, 0.5, 1, 3, 0.02, 1.15, 4.75)
                        .joined()
                        .holds())
                .isTrue();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new GridSchwarz(100, 100, 120, 100, 0.01, 0.5, 0, 3, 0.02, 1.15, 4.75))
                .withMessageContaining("at least one rod");
        // Wires as thick as they are long leave no resistance of the grid to join.
        assertThat(new GridSchwarz(100, 100, 10, 100, 40, 0.5, 4, 3, 0.02, 1.15, 4.75)
                        .joined()
                        .holds())
                .isFalse();
    }

    @Test
    void twoLayersAreTakenOnTheRightSideOfTheBoundary() {
        assertThat(RodTwoLayer.withinUpper(100, 300, 3, 3, 0.01).holds()).isFalse();
        assertThat(RodTwoLayer.withinUpper(100, 300, 3, 2.99, 0.01).holds()).isTrue();
        from(10 * 0.125, length -> RodTwoLayer.withinUpper(100, 300, 3, length, 0.125));
        assertThat(RodTwoLayer.apparentResistivity(100, 300, 3, 3).holds()).isFalse();
        // By hand: 4 m of rod, 3 m in 100 Ω·m and 1 m in 300 Ω·m in parallel: 4/(3/100 + 1/300).
        assertThat(RodTwoLayer.apparentResistivity(100, 300, 3, 4).get()).isCloseTo(120, within(1e-12));
        // Alike layers are one soil.
        assertThat(RodTwoLayer.withinUpper(100, 100, 3, 2, 0.01).get())
                .isCloseTo(RodDwight.resistance(100, 2, 0.01).get(), within(1e-9));
        // Beneath lies metal, or air: the images lower or raise the resistance.
        double alike = RodTwoLayer.withinUpper(100, 100, 3, 2, 0.01).get();
        assertThat(RodTwoLayer.withinUpper(100, 1e-6, 3, 2, 0.01).get()).isLessThan(alike);
        assertThat(RodTwoLayer.withinUpper(100, 1e6, 3, 2, 0.01).get()).isGreaterThan(alike);
    }

    @Test
    void effectiveLengthsOfGuptaAndGrcev() {
        // Gupta and Thapar 1980, from memory: 1.40 and 1.55 times the root of ρ·T with T in µs; by hand at 100 Ω·m and
        // 1 µs.
        assertThat(EffectiveLengthGupta.fedAtEnd(100, 1e-6)).isCloseTo(14, within(1e-12));
        assertThat(EffectiveLengthGupta.fedInMiddle(100, 1e-6)).isCloseTo(15.5, within(1e-12));
        from(10, rho -> EffectiveLengthGrcev.length(rho, 1e-6));
        upTo(3000, rho -> EffectiveLengthGrcev.length(rho, 1e-6));
        assertThat(EffectiveLengthGrcev.length(100, 0.2e-6).holds()).isTrue();
        assertThat(EffectiveLengthGrcev.length(100, 0.199e-6).holds()).isFalse();
        assertThat(EffectiveLengthGrcev.length(100, 10e-6).holds()).isTrue();
        assertThat(EffectiveLengthGrcev.length(100, 10.01e-6).holds()).isFalse();
        // At its effective length the impulse coefficient begins to rise above 1.
        double length = EffectiveLengthGrcev.length(100, 1e-6).get();
        assertThat(EffectiveLengthGrcev.coefficient(100, 1e-6, length * 0.9).get())
                .isEqualTo(1);
        assertThat(EffectiveLengthGrcev.coefficient(100, 1e-6, length).get()).isCloseTo(1, within(1e-12));
        double twice = EffectiveLengthGrcev.coefficient(100, 1e-6, 2 * length).get();
        double thrice = EffectiveLengthGrcev.coefficient(100, 1e-6, 3 * length).get();
        assertThat(thrice - twice).isCloseTo(twice - 1, within(1e-9));
        assertThat(twice).isGreaterThan(1.1);
        assertThat(EffectiveLengthGrcev.coefficient(5, 1e-6, length).holds()).isFalse();
    }

    @Test
    void surfacePotentialBesideARod() {
        // Sunde 1949, from memory: asinh(L/x)/(2πL) per ampere and Ω·m; far away it is that of a point, 1/(2πx).
        assertThat(RodDwight.surfacePotential(RHO, 3, 3))
                .isCloseTo(RHO / (6 * Math.PI) * Math.log(1 + Math.sqrt(2)), within(1e-12));
        assertThat(RodDwight.surfacePotential(RHO, 1, 1000) * 2 * Math.PI * 1000 / RHO)
                .isCloseTo(1, within(1e-6));
        assertThat(RodSurfacePotential.perAmpere(RHO, 1, 1000) * 2 * Math.PI * 1000 / RHO)
                .isCloseTo(1, within(1e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> RodSurfacePotential.stepRatio(1, 0.1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> RodSurfacePotential.stepRatio(3, 0.1, 0.1));
    }

    @Test
    void exactBodiesFollowTheirRadius() {
        assertThat(Disc.deep(RHO, 0.5)).isCloseTo(25, within(1e-12));
        assertThat(Sphere.deep(RHO, 0.5)).isCloseTo(100 / (2 * Math.PI), within(1e-12));
        assertThat(Hemisphere.resistance(RHO, 0.5)).isCloseTo(100 / Math.PI, within(1e-12));
        assertThat(GridLaurent.plate(RHO, Math.PI)).isCloseTo(25, within(1e-12));
    }

    /** The two forms of Dwight's pair of rods meet where the rods stand two lengths apart. */
    @Test
    void twoRodsAtTwoLengths() {
        double near = TwoRodsDwight.resistance(RHO, 3, 0.01, 6).get();
        double far = TwoRodsDwight.resistance(RHO, 3, 0.01, Math.nextUp(6.0)).get();
        assertThat(far).isNotEqualTo(near).isCloseTo(near, within(0.002 * near));
        double alone = RodDwight.resistance(RHO, 3, 0.01).get();
        // Rods as points at 20 m: half of one and half the mutual resistance ρ/(2πs), less by 1/3 (L/s)² of it.
        double mutual = RHO / (2 * Math.PI * 20) * (1 - Math.pow(3.0 / 20, 2) / 3);
        assertThat(TwoRodsDwight.resistance(RHO, 3, 0.01, 20).get()).isCloseTo((alone + mutual) / 2, within(1e-3));
    }

    /** Sunde 1949 (from memory): the image series itself, summed term by term, over better and over poorer ground. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 60, 100, 250, 2000})
    void rodInTheUpperLayerIsItsImageSeries(double lower) {
        double k = (lower - 100) / (lower + 100);
        double length = 2.4;
        double depth = 3;
        double sum = 0;
        for (int n = 5000; n > 0; n--) {
            double twice = 2 * n * depth;
            sum += Math.pow(k, n) * Math.log((twice + length) / (twice - length));
        }
        double byHand = 100 / (2 * Math.PI * length) * (Math.log(4 * length / 0.01) - 1 + sum);
        assertThat(RodTwoLayer.withinUpper(100, lower, depth, length, 0.01).get())
                .isCloseTo(byHand, within(1e-9 * byHand));
    }

    /** Dwight 1936, IEEE Std 142 table 13 (from memory): by hand with the polynomial 1.0524746 of three arms at s/L = 0.1. */
    @Test
    void starOfThreeArmsByHand() {
        double byHand = 100 / (6 * Math.PI * 10) * (Math.log(2 * 10 / 0.005) + Math.log(2 * 10 / 1.0) + 1.0524746);
        assertThat(byHand).isCloseTo(6.548, within(0.0005));
        assertThat(StarDwight.resistance(StarDwight.Arms.THREE, 100, 10, 0.005, 0.5)
                        .get())
                .isCloseTo(byHand, within(1e-6));
        // An arm more always helps, and less than in proportion.
        double before = Double.NaN;
        for (StarDwight.Arms arms : StarDwight.Arms.values()) {
            double now = StarDwight.resistance(arms, 100, 10, 0.005, 0.5).get();
            assertThat(now * arms.count()).isGreaterThan(100 / (2 * Math.PI * 10) * Math.log(2 * 10 / 0.005));
            if (!Double.isNaN(before)) {
                assertThat(now).isLessThan(before);
            }
            before = now;
        }
    }

    /** Grcev 2009, closed form evaluated apart from the library (from memory): effective lengths of four soils and fronts. */
    @ParameterizedTest
    @CsvSource({"100, 0.25, 3.14638", "100, 1.0, 8.23094", "1000, 0.25, 13.9774", "1000, 8.0, 32.8596"})
    void effectiveLengthsOfGrcev(double resistivity, double microseconds, double metres) {
        assertThat(EffectiveLengthGrcev.length(resistivity, microseconds * 1e-6).get())
                .isCloseTo(metres, within(1e-5 * metres));
    }

    @Test
    void longWireIsGivenOnEitherSideOfItsGap() {
        Complex copper = new Complex(2.2e-4, 1.6e-5);
        // Long: the input impedance lies between the attenuated line's wave impedance and that of one without soil
        // inductance.
        Complex far = LongWireSunde.wire(100, 0.2, 3000, 0.005, 0.6, copper, 50).orElseThrow();
        Complex further =
                LongWireSunde.wire(100, 0.1, 6000, 0.005, 0.6, copper, 50).orElseThrow();
        // A wire that is long already gains nothing by its second half.
        assertThat(further.subtract(far).abs()).isLessThan(0.01 * far.abs());
        assertThat(far.getArgument()).isBetween(0.2, Math.PI / 4);
        // Ten times the resistivity: a longer way to run, more impedance.
        assertThat(LongWireSunde.wire(1000, 2, 30000, 0.005, 0.6, copper, 50)
                        .orElseThrow()
                        .abs())
                .isGreaterThan(2 * far.abs());
    }

    @Test
    void arms() {
        assertThat(StarDwight.Arms.values()).extracting(StarDwight.Arms::count).containsExactly(2, 3, 4, 6, 8);
    }

    @Test
    void aValueOutsideItsRangeIsNotGiven() {
        FormulaResult none = RulesOfThumb.rod(RHO, 20);
        assertThat(none.value()).isEmpty();
        assertThatIllegalStateException()
                .isThrownBy(none::get)
                .withMessageStartingWith("R = rho/L holds only for L <= 3 m (");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void everythingIsPositiveAndFinite(double bad) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Hemisphere.resistance(bad, 1))
                .withMessageContaining("resistivity must be > 0 and finite");
        assertThatIllegalArgumentException().isThrownBy(() -> Disc.onSurface(RHO, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> LongWireSunde.outside(RHO, 0.005, bad));
    }

    /** A short wire at 50 Hz is its resistance; a long one is the line's wave impedance. */
    @Test
    void longWiresBetweenTheirLimits() {
        Complex along = new Complex(1e-4, 3e-4);
        // 10 Ω and 1 m: along/3 is all that is added.
        Complex brief = LongWireSunde.impedance(10, 1e-3, along);
        assertThat(brief.getReal()).isCloseTo(10, within(1e-6));
        // Many times its spread: sqrt(z/y), z = along, y = 1/(R l).
        double length = 1e5;
        Complex endless = LongWireSunde.impedance(0.01, length, along);
        Complex wave = along.multiply(0.01 * length).sqrt();
        assertThat(endless.subtract(wave).abs()).isLessThan(1e-9 * wave.abs());
        // By hand: 2π·50·2e-7·(ln(200/0.005) − 1).
        assertThat(LongWireSunde.reactance(100, 0.005, 50)).isCloseTo(6.030e-4, within(5e-8));
    }
}
