package earthing.conductor.inductance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class SkinEffectTest {

    private static double omega(double frequency) {
        return 2 * Math.PI * frequency;
    }

    /** Skin-effect note, wire of 0.5 mm radius, skin depth 0.066006 m at 1 Hz (read now). */
    @Test
    void copperWireOfHalfAMillimetre() {
        double resistivity = 0.066006 * 0.066006 * Math.PI * 4e-7 * Math.PI;
        double direct = resistivity / (Math.PI * 0.25e-6);
        Complex z1k = SkinEffect.solid(omega(1e3), 0.5e-3, resistivity, 1);
        Complex z10k = SkinEffect.solid(omega(1e4), 0.5e-3, resistivity, 1);
        assertThat(z1k.getReal() / direct).isCloseTo(1.000069, within(1e-6));
        assertThat(z10k.getReal() / direct).isCloseTo(1.006822, within(1e-6));
        assertThat(z1k.getImaginary() / omega(1e3)).isCloseTo(4.999829e-8, within(0.6e-14));
        assertThat(z10k.getImaginary() / omega(1e4)).isCloseTo(4.982952e-8, within(0.6e-14));
        assertThat(SkinEffect.depth(omega(1), resistivity, 1)).isCloseTo(0.066006, within(1e-9));
    }

    /** Schelkunoff's formula for 70 mm² copper, independent Python computation. */
    @Test
    void copperDownLeadOf70SquareMillimetres() {
        double[][] table = {
            {50, 0.0002466556, 1.569733e-05},
            {1e3, 0.0003406769, 0.000256005},
            {1e4, 0.000944446, 0.0008759596},
            {1e5, 0.002844406, 0.002780736},
            {1e6, 0.008858743, 0.008796511}
        };
        for (double[] row : table) {
            Complex z = SkinEffect.solid(omega(row[0]), 4.72e-3, 1.724e-8, 1);
            assertThat(z.getReal()).isCloseTo(row[1], Percentage.withPercentage(1e-4));
            assertThat(z.getImaginary()).isCloseTo(row[2], Percentage.withPercentage(1e-4));
        }
    }

    /** Neher and McGrath 1957, table III: 10.05 % at xs = 2.14, xs² = 8πf·10⁻⁷/Rdc in SI. */
    @Test
    void neherMcGrath1957TableIII() {
        double frequency = 60;
        double direct = 8 * Math.PI * frequency * 1e-7 / (2.14 * 2.14);
        double radius = 5e-3;
        double resistivity = direct * Math.PI * radius * radius;
        Complex z = SkinEffect.solid(omega(frequency), radius, resistivity, 1);
        assertThat(z.getReal() / direct - 1).isCloseTo(0.1005, within(0.00005));
    }

    @Property(seed = "20261125", tries = 100)
    void tubeTendsToSolidAndToItsDirectResistance(@ForAll @DoubleRange(min = 1, max = 7) double lg) {
        double w = omega(Math.pow(10, lg));
        Complex solid = SkinEffect.solid(w, 5e-3, 1.724e-8, 1);
        Complex tube = SkinEffect.tube(w, 1e-6, 5e-3, 1.724e-8, 1);
        assertThat(tube.subtract(solid).abs()).isLessThan(1e-5 * solid.abs());
        double direct = 1.724e-8 / (Math.PI * (49e-6 - 36e-6));
        double slow = omega(1);
        assertThat(SkinEffect.tube(slow, 6e-3, 7e-3, 1.724e-8, 1).getReal())
                .isCloseTo(direct, Percentage.withPercentage(1e-3));
        assertThat(SkinEffect.tubeTransfer(slow, 6e-3, 7e-3, 1.724e-8, 1).abs())
                .isCloseTo(direct, Percentage.withPercentage(1e-3));
    }

    /** Plane sheet, |kt / sinh kt| of the direct resistance (Schelkunoff 1934, from memory). */
    @Property(seed = "20261125", tries = 100)
    void thinTubeTransfersAsThePlaneSheet(@ForAll @DoubleRange(min = 2, max = 6) double lg) {
        double w = omega(Math.pow(10, lg));
        double t = 0.2e-3;
        double a = 0.1;
        double u = t / SkinEffect.depth(w, 1.724e-8, 1);
        double direct = 1.724e-8 / (2 * Math.PI * (a + t / 2) * t);
        double sheet = direct * 2 * u / Math.sqrt(Math.cosh(2 * u) - Math.cos(2 * u));
        assertThat(SkinEffect.tubeTransfer(w, a, a + t, 1.724e-8, 1).abs())
                .isCloseTo(sheet, Percentage.withPercentage(0.5));
    }

    @Property(seed = "20261125", tries = 100)
    void magneticWireScalesWithTheSkinDepth(@ForAll @DoubleRange(min = 1, max = 500) double permeability) {
        Complex magnetic = SkinEffect.solid(omega(50), 5e-3, 1.4e-7, permeability);
        Complex plain = SkinEffect.solid(omega(50) * permeability, 5e-3, 1.4e-7, 1);
        assertThat(magnetic.subtract(plain).abs()).isLessThan(1e-10 * plain.abs());
    }

    @Property(seed = "20261125", tries = 100)
    void highFrequencyLimitIsTheSurfaceImpedance(@ForAll @DoubleRange(min = 6, max = 8) double lg) {
        double w = omega(Math.pow(10, lg));
        double depth = SkinEffect.depth(w, 1.724e-8, 1);
        double sheet = 1.724e-8 / (depth * 2 * Math.PI * 5e-3);
        Complex z = SkinEffect.solid(w, 5e-3, 1.724e-8, 1);
        assertThat(z.getImaginary()).isCloseTo(sheet, Percentage.withPercentage(1));
        assertThat(z.getReal()).isCloseTo(sheet, Percentage.withPercentage(1.5));
    }
}
