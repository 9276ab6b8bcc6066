package earthing.electrode.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class FormulaPropertiesTest {

    @Property(seed = "20261125", tries = 100)
    void everyResistanceIsProportionalToResistivityAndFallsWithSize(
            @ForAll @DoubleRange(min = 1, max = 5000) double rho,
            @ForAll @DoubleRange(min = 1.5, max = 30) double length,
            @ForAll @DoubleRange(min = 2, max = 20) double millimetres) {
        double radius = millimetres / 1000;
        double rod = RodDwight.resistance(rho, length, radius).get();
        assertThat(RodDwight.resistance(2 * rho, length, radius).get()).isCloseTo(2 * rod, within(1e-9 * rod));
        assertThat(RodDwight.resistance(rho, 1.1 * length, radius).get()).isLessThan(rod);
        assertThat(RodDwight.resistance(rho, length, 1.1 * radius).get()).isLessThan(rod);
        assertThat(RodDwight.resistance(rho, 3 * length, 3 * radius).get()).isCloseTo(rod / 3, within(1e-9 * rod));
        double wire =
                HorizontalWireDwight.resistance(rho, 4 * length, radius, 0.5).get();
        assertThat(HorizontalWireDwight.resistance(rho, 4 * length, radius, 0.6).get())
                .isLessThan(wire);
        assertThat(HorizontalWireDwight.resistance(rho, 12 * length, 3 * radius, 1.5)
                        .get())
                .isCloseTo(wire / 3, within(1e-9 * wire));
        double pair = TwoRodsDwight.resistance(rho, length, radius, length).get();
        assertThat(pair).isBetween(rod / 2, rod);
    }

    @Property(seed = "20261125", tries = 100)
    void rodInTwoLayersWithoutContrastIsDwightsRod(
            @ForAll @DoubleRange(min = 1, max = 5000) double rho,
            @ForAll @DoubleRange(min = 1, max = 4) double length) {
        double rod = RodDwight.resistance(rho, length, 0.008).get();
        assertThat(RodTwoLayer.withinUpper(rho, rho, 5, length, 0.008).get()).isCloseTo(rod, within(1e-9 * rod));
        assertThat(RodTwoLayer.withinUpper(rho, 9 * rho, 5, length, 0.008).get())
                .isGreaterThan(rod);
        assertThat(RodTwoLayer.withinUpper(rho, rho / 9, 5, length, 0.008).get())
                .isLessThan(rod);
        assertThat(RodTwoLayer.apparentResistivity(rho, rho, 0.5, length).get()).isCloseTo(rho, within(1e-9 * rho));
    }

    @Property(seed = "20261125", tries = 50)
    void rodGroupsLieBetweenOneRodAndItsNth(@ForAll @DoubleRange(min = 3, max = 100) double spacing) {
        double rod = RodDwight.resistance(100, 3, 0.008).get();
        for (int n = 2; n <= 10; n++) {
            double line = RodsBs7430.resistance(100, rod, spacing, n, RodsBs7430.lambdaInLine(n))
                    .get();
            assertThat(line).isBetween(rod / n, rod);
            assertThat(RodsEqualCurrents.resistance(100, rod, n, spacing).get()).isCloseTo(line, within(1e-9));
        }
    }

    @Test
    void outsideItsRangeNoFormulaGivesANumber() {
        assertThat(RodDwight.resistance(100, 0.05, 0.01).holds()).isFalse();
        assertThat(PipeIs3043.resistance(100, 1, 0.5).holds()).isFalse();
        assertThat(TwoRodsDwight.resistance(100, 3, 0.01, 0.05).holds()).isFalse();
        assertThat(HorizontalWireDwight.resistance(100, 10, 0.005, 5).holds()).isFalse();
        assertThat(HorizontalWireSunde.resistance(100, 10, 0.005, 5).holds()).isFalse();
        assertThat(StarDwight.resistance(StarDwight.Arms.SIX, 100, 1, 0.005, 1).holds())
                .isFalse();
        assertThat(RingDwight.resistance(100, 0.1, 0.005, 0.5).holds()).isFalse();
        assertThat(StripDwight.resistance(100, 20, 0.04, 0.02, 0.5).holds()).isFalse();
        assertThat(RoundPlateDwight.resistance(RoundPlateDwight.Lie.VERTICAL, 100, 1, 0.5)
                        .holds())
                .isFalse();
        assertThat(GridSverak.resistance(400, 4900, 1540, 3).holds()).isFalse();
        assertThat(GridLaurent.resistance(400, 4900, 100).holds()).isFalse();
        assertThat(GridLaurent.resistance(400, 4900, 1540).get()).isCloseTo(2.7918, within(0.0002));
        assertThat(new GridIeee80(1, 0.5, 0.01, 1540, 280, 4900, 70, 70, 0, 0, false)
                        .meshVoltage(400, 1)
                        .holds())
                .isFalse();
        assertThat(ConcreteEncasedRod.resistance(100, 50, 3, 0.3, 0.2).holds()).isFalse();
        assertThat(RodTwoLayer.withinUpper(100, 50, 2, 3, 0.01).holds()).isFalse();
        assertThat(RodTwoLayer.apparentResistivity(100, 50, 4, 3).holds()).isFalse();
        assertThat(RodsBs7430.resistance(100, 10, 1, 4, 2).holds()).isFalse();
        assertThat(RodsEqualCurrents.resistance(100, 10, 4, 1).holds()).isFalse();
        assertThat(RodsFilledSquare.factor(3, 0.9).holds()).isFalse();
        assertThat(Hemisphere.twoInParallel(100, 1, 2).holds()).isFalse();
        assertThat(Sphere.betweenTwoDeep(100, 1, 2).holds()).isFalse();
        assertThat(RulesOfThumb.strip(100, 60).holds()).isFalse();
        assertThat(RulesOfThumb.ring(100, 400).holds()).isFalse();
        assertThatThrownBy(() -> RodDwight.resistance(Double.NaN, 3, 0.01)).hasMessageContaining("resistivity");
        assertThatThrownBy(() -> RodsBs7430.lambdaInLine(1)).hasMessageContaining("two rods");
        assertThatThrownBy(() -> RodsFilledSquare.constant(1)).hasMessageContaining("two rods");
    }

    @Test
    void filledSquareAfterTagg() {
        assertThat(RodsFilledSquare.constant(2)).isCloseTo(2.7071, within(5e-5));
        assertThat(RodsFilledSquare.constant(3)).isCloseTo(5.5426, within(5e-5));
        assertThat(RodsFilledSquare.constant(7)).isCloseTo(17.2135, within(5e-5));
    }

    /** MIL-HDBK-419A vol. I table 2-7: nearly the whole potential of a short rod stands over 3 ft, half that of a long one. */
    @Property(seed = "20261125", tries = 100)
    void voltageOverAPaceFallsWithTheLengthOfTheRodAndRisesWithThePace(
            @ForAll @DoubleRange(min = 1, max = 40) double length,
            @ForAll @DoubleRange(min = 0.05, max = 5) double distance) {
        double ratio = RodSurfacePotential.stepRatio(length, 0.0127, distance);
        assertThat(ratio).isBetween(-0.05, 1.0);
        assertThat(RodSurfacePotential.stepRatio(1.2 * length, 0.0127, distance))
                .isLessThan(ratio);
        assertThat(RodSurfacePotential.stepRatio(length, 0.0127, 1.2 * distance))
                .isGreaterThan(ratio);
    }
}
