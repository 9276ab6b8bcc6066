package earthing.electrode.tester;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.soil.PointSource;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class EarthTesterTest {

    private static FallOfPotential rod(SoilModel soil, double length, double distance) {
        return FallOfPotential.of(
                PointSource.of(soil),
                BarShapes.rod("rod", 0, 0, 0, length, 0.008),
                "rod",
                new ProbeLine(0, 0, 0.3, distance));
    }

    /** Curdts 1958: 61.8 % for an electrode that is small against the distance; exact root of p² + Dp − D² = 0. */
    @Test
    void smallRodInUniformGroundIsReadAt618PerMille() {
        assertThat(rod(SoilModel.uniform(100), 0.5, 100).rightPlace().orElseThrow())
                .isCloseTo(61.803, within(0.01));
    }

    /** Two point electrodes in uniform ground: R − ρ/2π (1/D + 1/p − 1/(D−p)). */
    @Test
    void shortfallOfTwoPoints() {
        FallOfPotential test = rod(SoilModel.uniform(100), 0.5, 100);
        for (double p : new double[] {20, 40, 60, 80}) {
            double expected = 100 / (2 * Math.PI) * (1 / 100.0 + 1 / p - 1 / (100 - p));
            assertThat(test.resistance() - test.reading(p)).isCloseTo(expected, within(2e-3 * 0.16));
        }
    }

    /** A near current probe and an electrode of some extent: the rule of 62 % errs, and the test says by how much. */
    @Test
    void nearProbesReadAnExtendedElectrodeLow() {
        List<Bar> bars = BarShapes.mat("mat", -5, -5, 10, 10, 4, 4, 0.6, 0.005);
        PointSource ground = PointSource.of(SoilModel.uniform(100));
        double near = FallOfPotential.of(ground, bars, "mat", new ProbeLine(0, 0, 0, 20))
                .error(12.4);
        double far = FallOfPotential.of(ground, bars, "mat", new ProbeLine(0, 0, 0, 200))
                .error(124);
        assertThat(Math.abs(near)).isGreaterThan(0.01);
        assertThat(Math.abs(far)).isLessThan(0.002);
    }

    @Property(seed = "20261125", tries = 15)
    void readingScalesWithTheGroundAndRisesTowardsTheCurrentProbe(
            @ForAll @DoubleRange(min = 1, max = 5000) double resistivity,
            @ForAll @DoubleRange(min = 0.05, max = 0.9) double place) {
        FallOfPotential one = rod(SoilModel.twoLayer(1, 2, 3), 3, 40);
        FallOfPotential scaled = rod(SoilModel.twoLayer(resistivity, 2, 3 * resistivity), 3, 40);
        double p = 40 * place;
        assertThat(scaled.reading(p)).isCloseTo(resistivity * one.reading(p), within(1e-5 * scaled.resistance()));
        assertThat(one.reading(p + 1)).isGreaterThan(one.reading(p));
    }

    @Test
    void otherMetalFloats() {
        List<Bar> bars = new ArrayList<>(BarShapes.rod("rod", 0, 0, 0, 3, 0.008));
        bars.addAll(BarShapes.rod("other", 2, 0, 0, 3, 0.008));
        FallOfPotential test =
                FallOfPotential.of(PointSource.of(SoilModel.uniform(100)), bars, "rod", new ProbeLine(0, 0, 2, 40));
        assertThat(test.resistance())
                .isLessThan(rod(SoilModel.uniform(100), 3, 40).resistance());
        assertThatThrownBy(() -> test.reading(40)).hasMessageContaining("between");
        assertThatThrownBy(() -> FallOfPotential.of(
                        PointSource.of(SoilModel.uniform(100)), bars, "none", new ProbeLine(0, 0, 0, 40)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ProbeLine(0, 0, 0, Double.NaN)).hasMessageContaining("> 0 m");
    }

    /**
     * Tagg 1970, slope-method table (from memory): rows 0.40 to 0.51. The print runs in equal steps of 0.00144 between the
     * tenths of μ and is therefore 0.00013 below the curve in their middle.
     */
    @Test
    void taggSlopeTable() {
        double[][] rows = {{0.40, 0.6432}, {0.41, 0.6418}, {0.45, 0.6360}, {0.50, 0.6288}, {0.51, 0.6273}};
        for (double[] row : rows) {
            assertThat(SlopeMethod.place(row[0])).isCloseTo(row[1], within(1.5e-4));
        }
        assertThatThrownBy(() -> SlopeMethod.place(1.7)).hasMessageContaining("farther out");
    }

    /** Readings of a point electrode behind its terminal lead back to its resistance. */
    @Property(seed = "20261125", tries = 50)
    void slopeMethodFindsTheResistanceOfAPoint(
            @ForAll @DoubleRange(min = 0, max = 0.7) double behind,
            @ForAll @DoubleRange(min = 1, max = 100) double scale) {
        double resistance = 9 * scale;
        double slope = SlopeMethod.slope(
                read(0.2, behind, resistance, scale),
                read(0.4, behind, resistance, scale),
                read(0.6, behind, resistance, scale));
        double found = read(SlopeMethod.place(slope), behind, resistance, scale);
        assertThat(found).isCloseTo(resistance, within(1e-6 * resistance));
    }

    private static double read(double place, double behind, double resistance, double scale) {
        return resistance - scale * (1 / (1 + behind) + 1 / (place + behind) - 1 / (1 - place));
    }

    /** Getting Down to Earth, pp. 48-49: six electrodes of 10 ohm read 12 ohm, sixty 10.17 ohm. */
    @Test
    void clampOnLoops() {
        assertThat(ClampOnLoop.reading(10, java.util.Collections.nCopies(5, 10.0)))
                .isCloseTo(12, within(1e-9));
        assertThat(ClampOnLoop.reading(10, java.util.Collections.nCopies(59, 10.0)))
                .isCloseTo(10.17, within(0.005));
        assertThatThrownBy(() -> ClampOnLoop.reading(10, List.of())).hasMessageContaining("close the loop");
    }

    @Test
    void threePointsAndPairs() {
        assertThat(ThreePointMethod.of(42, 75, 57)).isEqualTo(new ThreePointMethod(12, 30, 45));
        assertThatThrownBy(() -> ThreePointMethod.of(10, 100, 10)).hasMessageContaining("contradict");
        assertThatThrownBy(() -> AttachedRodTechnique.resistance(1, 0)).hasMessageContaining("> 0");
        assertThatThrownBy(() -> SimplifiedTest.of(1, -1, 1)).hasMessageContaining("> 0");
        assertThatThrownBy(() -> SlopeMethod.slope(3, 2, 1)).hasMessageContaining("rise");
    }
}
