package earthing.conductor.inductance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.conductor.inductance.InductanceMatrix.Ground;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class InductanceMatrixTest {

    private static final double R = 5.35e-3;

    private static RoundConductor vertical(double x, double from, double to, double radius) {
        return RoundConductor.between(new Point(x, 0, from), new Point(x, 0, to), radius);
    }

    /**
     * The circuits solved with ngspice: tank at 9 m, cubicle at 3 m, core 0.2 m from the down-lead, the cubicle's own
     * lead 0.3 m on its other side, screen round the core. Element values of this project's decks to 1e-9.
     */
    @Test
    void pole() {
        List<RoundConductor> conductors = List.of(
                vertical(0, 9, 3, R),
                vertical(0, 3, 0, R),
                vertical(-0.3, 3, 0, R),
                vertical(0.2, 9, 3, 0.75e-3),
                vertical(0.2, 9, 3, 7e-3));
        InductanceMatrix m = InductanceMatrix.of(conductors, Ground.NONE);
        double[][] expected = {
            {8.059748202913859, 0.5723280297395335, 0.5437367346951754, 3.7528801876123463, 3.7528801876123463},
            {0, 3.614520435339889, 1.2559412329115285, 0.5532514391608153, 0.5532514391608153},
            {0, 0, 3.614520435339889, 0.525285504850323, 0.525285504850323},
            {0, 0, 0, 10.4165627967788, 7.737501727324526},
            {0, 0, 0, 0, 7.737501727324526}
        };
        for (int i = 0; i < 5; i++) {
            for (int j = i; j < 5; j++) {
                assertThat(1e6 * m.get(i, j))
                        .as(i + "," + j)
                        .isCloseTo(expected[i][j], Percentage.withPercentage(1e-7));
            }
        }
    }

    /** Handbook formula for a rectangular loop of thin wire (Grover, from memory), 23.761691 µH for 1 m by 10 m, r 4 mm. */
    @Test
    void rectangularLoopFromItsFourSides() {
        double r = 4e-3;
        Point a = new Point(0, 0, 0);
        Point b = new Point(1, 0, 0);
        Point c = new Point(1, 0, 10);
        Point d = new Point(0, 0, 10);
        InductanceMatrix m = InductanceMatrix.of(
                List.of(
                        RoundConductor.between(a, b, r),
                        RoundConductor.between(b, c, r),
                        RoundConductor.between(c, d, r),
                        RoundConductor.between(d, a, r)),
                Ground.NONE);
        double tubes = m.series()
                + 2 * (SelfInductance.tube(1, r) - SelfInductance.filamentAtRadius(1, r))
                + 2 * (SelfInductance.tube(10, r) - SelfInductance.filamentAtRadius(10, r));
        assertThat(tubes).isCloseTo(23.765762e-6, within(0.5e-12));
        double s = Math.hypot(1, 10);
        double formula = 4e-7
                * (-2 * (1 + 10)
                        + 2 * s
                        - 10 * Math.log((10 + s) / 1)
                        - Math.log((1 + s) / 10)
                        + 10 * Math.log(20 / r)
                        + Math.log(2 / r));
        assertThat(formula).isCloseTo(23.761691e-6, within(0.5e-12));
        // The formula leaves out terms of the order of the radius.
        assertThat(m.series()).isCloseTo(formula, Percentage.withPercentage(0.02));
    }

    /** Image theory: the image of a vertical conductor on the ground adds 0.2 H ln 2 µH. */
    @Test
    void verticalConductorAboveAPerfectGround() {
        InductanceMatrix thin = InductanceMatrix.of(List.of(vertical(0, 10, 0, 4e-3)), Ground.PERFECT_IMAGE);
        // By the convention of the surface filament the conductor and its image are one conductor of twice the length.
        assertThat(thin.get(0, 0))
                .isCloseTo(SelfInductance.filamentAtRadius(20, 4e-3) / 2, Percentage.withPercentage(1e-10));
        double self = SelfInductance.tube(10, 4e-3);
        double image = FilamentInductance.mutual(
                vertical(0, 10, 0, 4e-3).axis(), vertical(0, 10, 0, 4e-3).axis().image(), 0);
        assertThat(image).isCloseTo(1.3862944e-6, within(0.5e-13));
        assertThat(self + image).isCloseTo(16.421699e-6, within(0.5e-12));
    }

    /** A horizontal wire over a perfect ground: 0.2 µH/m ln(2h/r) far from its ends. */
    @Test
    void horizontalConductorAboveAPerfectGround() {
        RoundConductor wire = RoundConductor.between(new Point(0, 0, 8), new Point(2000, 0, 8), 5e-3);
        double value = InductanceMatrix.of(List.of(wire), Ground.PERFECT_IMAGE).get(0, 0);
        assertThat(value / 2000).isCloseTo(2e-7 * Math.log(16 / 5e-3), Percentage.withPercentage(0.2));
    }

    @Test
    void pairOfParallelDownLeads() {
        InductanceMatrix m = InductanceMatrix.of(List.of(vertical(0, 9, 0, R), vertical(0.3, 9, 0, R)), Ground.NONE);
        assertThat(m.get(0, 0)).isCloseTo(12.818925e-6, within(0.5e-12));
        assertThat((m.get(0, 0) + m.get(0, 1)) / 2).isCloseTo(9.2241225e-6, within(0.5e-13));
        assertThat(2 * (m.get(0, 0) - m.get(0, 1)) * 1e6)
                .isCloseTo(2 * (12.818925 - (2 * 9.2241225 - 12.818925)), within(2e-6));
    }

    @Property(seed = "20261125", tries = 200)
    void piecesOfOneConductorAddUpExactly(
            @ForAll @DoubleRange(min = 0.05, max = 0.95) double cut,
            @ForAll @DoubleRange(min = 1e-3, max = 0.02) @Scale(6) double radius) {
        InductanceMatrix pieces = InductanceMatrix.of(
                List.of(vertical(0, 9, 9 * cut, radius), vertical(0, 9 * cut, 0, radius)), Ground.NONE);
        assertThat(pieces.series())
                .isCloseTo(SelfInductance.filamentAtRadius(9, radius), Percentage.withPercentage(1e-10));
    }

    @Property(seed = "20261125", tries = 100)
    void aWireInATubeCouplesWithTheTubesSelfInductance(
            @ForAll @DoubleRange(min = 0, max = 5e-3) @Scale(6) double offCentre) {
        RoundConductor core = vertical(offCentre, 9, 3, 0.7e-3);
        RoundConductor screen = vertical(0, 9, 3, 7e-3);
        InductanceMatrix m = InductanceMatrix.of(List.of(core, screen), Ground.NONE);
        assertThat(m.get(0, 1)).isEqualTo(m.get(1, 1));
    }

    /** A long wire low above perfect earth: 0.2 µH/m·ln(2h/r), in every textbook. */
    @Property(seed = "20261125", tries = 100)
    void aLongLowWireWithItsImageIsTheTextbooksLineAboveEarth(
            @ForAll @DoubleRange(min = 0.5, max = 10) double height,
            @ForAll @DoubleRange(min = 1e-3, max = 0.02) @Scale(6) double radius) {
        double length = 2000 * height;
        RoundConductor wire = RoundConductor.between(new Point(0, 0, height), new Point(length, 0, height), radius);
        double value = InductanceMatrix.of(List.of(wire), Ground.PERFECT_IMAGE).get(0, 0);
        // What the ends leave out is of the order of height over length.
        assertThat(value / length).isCloseTo(2e-7 * Math.log(2 * height / radius), Percentage.withPercentage(0.05));
    }

    @Test
    void refusesWhatDipsBelowTheGroundPlane() {
        assertThatThrownBy(() -> InductanceMatrix.of(List.of(vertical(0, 1, -1, R)), Ground.PERFECT_IMAGE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ground plane");
        assertThatThrownBy(() -> vertical(0, 1, 0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
