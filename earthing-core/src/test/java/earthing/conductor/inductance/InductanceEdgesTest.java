package earthing.conductor.inductance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Filaments that are all but parallel, anywhere in space; magnetic metals; and the least that is taken. */
class InductanceEdgesTest {

    private static final double MU0 = 4e-7 * Math.PI;
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(60, 0, 1);

    /** Neumann's integral (1845) by a product rule; exact to rounding for filaments that are well apart. */
    private static double neumann(Filament a, Filament b) {
        double[] u = along(a);
        double[] v = along(b);
        double dot = u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
        return MU0
                / (4 * Math.PI)
                * dot
                * RULE.integrate(s -> RULE.integrate(t -> 1
                        / Math.sqrt(Math.pow(
                                        b.start().x() + t * v[0] - a.start().x() - s * u[0], 2)
                                + Math.pow(b.start().y() + t * v[1] - a.start().y() - s * u[1], 2)
                                + Math.pow(b.start().z() + t * v[2] - a.start().z() - s * u[2], 2))));
    }

    private static double[] along(Filament f) {
        return new double[] {
            f.end().x() - f.start().x(),
            f.end().y() - f.start().y(),
            f.end().z() - f.start().z()
        };
    }

    /** At a ten-thousandth of a radian the closed form for an angle loses its digits; whatever stands in must not. */
    @Property(seed = "20261127", tries = 40)
    void allButParallelFilamentsAgreeWithNeumannsIntegral(
            @ForAll @DoubleRange(min = -1, max = 1) double x,
            @ForAll @DoubleRange(min = -1, max = 1) double y,
            @ForAll @DoubleRange(min = 0.2, max = 1) double z,
            @ForAll @DoubleRange(min = -1, max = 1) double tenThousandths,
            @ForAll @DoubleRange(min = 1.5, max = 3) double apart) {
        double turn = 1e-4 * tenThousandths;
        double length = Math.sqrt(x * x + y * y + z * z);
        Filament a = new Filament(new Point(0, 0, 0), new Point(x, y, z));
        // Beside it at right angles to nothing in particular, and turned a little about no axis in particular.
        double[] start = {apart * z / length, apart * 0.6, -apart * x / length + 0.1};
        Filament b = new Filament(
                new Point(start[0], start[1], start[2]),
                new Point(
                        start[0] + 1.3 * (x + turn * z),
                        start[1] + 1.3 * (y - 0.7 * turn),
                        start[2] + 1.3 * (z + turn * y)));
        double expected = neumann(a, b);
        assertThat(FilamentInductance.mutual(a, b, 0)).isCloseTo(expected, within(1e-9 * Math.abs(expected)));
        assertThat(FilamentInductance.mutual(b, a, 0)).isCloseTo(expected, within(1e-9 * Math.abs(expected)));
        Point first = b.start();
        Point last = b.end();
        Filament back = new Filament(last, first);
        assertThat(FilamentInductance.mutual(a, back, 0)).isCloseTo(-expected, within(1e-9 * Math.abs(expected)));
    }

    @Test
    void filamentsAtRightAnglesDoNotSeeEachOther() {
        Filament a = new Filament(new Point(0, 0, 0), new Point(1, 0, 0));
        Filament b = new Filament(new Point(0.2, 0.1, 0), new Point(0.2, 0.1, 3));
        assertThat(FilamentInductance.mutual(a, b, 0)).isZero();
        assertThatIllegalArgumentException().isThrownBy(() -> FilamentInductance.mutual(a, b, -1e-9));
        assertThatIllegalArgumentException().isThrownBy(() -> new Filament(a.start(), a.start()));
        assertThatIllegalArgumentException().isThrownBy(() -> new RoundConductor(a, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new RoundConductor(a, 1));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void lengthsRadiiAndWidthsArePositive(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> FilamentInductance.sideBySide(bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> FilamentInductance.sideBySide(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.filamentAtRadius(bad, 0.01));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.filamentAtRadius(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.tube(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.solid(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.rosaSolid(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.rosaSkin(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.strip(1, bad, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.thinStrip(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.stripRadius(bad, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.depth(bad, 1e-7, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.depth(314, bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.depth(314, 1e-7, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.solid(314, bad, 1e-7, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.solid(bad, 0.01, 1e-7, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.tube(314, bad, 0.01, 1e-7, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.tube(bad, 0.005, 0.01, 1e-7, 1));
    }

    @Test
    void sectionsThickerThanLongAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.filamentAtRadius(1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.strip(1, 0.5, 0.5));
        assertThatIllegalArgumentException().isThrownBy(() -> SelfInductance.strip(1, 0.1, 0.2));
        assertThatIllegalArgumentException().isThrownBy(() -> SkinEffect.tube(314, 0.01, 0.01, 1e-7, 1));
        // Dwight 1936: a bar of no thickness acts as a wire of a quarter of its width, a square of half its side.
        assertThat(SelfInductance.stripRadius(0.04, 0)).isCloseTo(0.01, within(1e-15));
        assertThat(SelfInductance.stripRadius(0.04, 0.04)).isCloseTo(0.02, within(1e-15));
    }

    /**
     * Handbook value from memory: copper of 1.724e-8 Ω·m at 50 Hz has a skin depth of 9.35 mm. A metal of 200 times the
     * permeability has it at a two-hundredth of the frequency.
     */
    @Test
    void skinDepthOfCopperAndOfMagneticMetals() {
        double omega = 2 * Math.PI * 50;
        assertThat(SkinEffect.depth(omega, 1.724e-8, 1) * 1e3).isCloseTo(9.35, within(0.005));
        assertThat(SkinEffect.depth(omega, 1.4e-7, 200))
                .isCloseTo(SkinEffect.depth(200 * omega, 1.4e-7, 1), withinPercentage(1e-10));
        // A thick wire is a sheet of one skin depth round its girth: R = ρ/(2πr·δ), and X the same.
        double depth = SkinEffect.depth(omega, 1.4e-7, 2000);
        double sheet = 1.4e-7 / (2 * Math.PI * 0.1 * depth);
        assertThat(SkinEffect.solid(omega, 0.1, 1.4e-7, 2000).getReal()).isCloseTo(sheet, withinPercentage(1));
        assertThat(SkinEffect.solid(omega, 0.1, 1.4e-7, 2000).getImaginary()).isCloseTo(sheet, withinPercentage(1));
    }
}
