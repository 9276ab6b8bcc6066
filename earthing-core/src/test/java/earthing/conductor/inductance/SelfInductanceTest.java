package earthing.conductor.inductance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Rosa 1908 and Grover 1946 (from memory); exact values by double integration over the section (mpmath, 20 digits). */
class SelfInductanceTest {

    /** Length [m], radius [m]; exact solid, exact tube, Rosa −3/4, Rosa −1, filament at radius, Rosa with mean distance [µH]. */
    private static final double[][] ROUND = {
        {1, 0.5e-3, 1.508900457, 1.4589372, 1.5088099, 1.4588099, 1.4589099, 1.5089005},
        {10, 4e-3, 15.535110635, 15.035405, 15.534386, 15.034386, 15.035186, 15.535111},
        {12, 0.1, 11.371600046, 10.778915, 11.353533, 10.753533, 10.773492, 11.371642}
    };

    private static void sixDecimals(double henry, double micro, double unit) {
        assertThat(henry * 1e6).isCloseTo(micro, within(0.51 * unit));
    }

    @Test
    void rosa1908RoundWires() {
        for (double[] row : ROUND) {
            double unit = row[0] == 1 ? 1e-7 : 1e-6;
            sixDecimals(SelfInductance.tube(row[0], row[1]), row[3], unit);
            sixDecimals(SelfInductance.rosaSolid(row[0], row[1]), row[4], unit);
            sixDecimals(SelfInductance.rosaSkin(row[0], row[1]), row[5], unit);
            sixDecimals(SelfInductance.filamentAtRadius(row[0], row[1]), row[6], unit);
            sixDecimals(SelfInductance.rosaSolidWithMeanDistance(row[0], row[1]), row[7], unit);
            sixDecimals(SelfInductance.solid(row[0], row[1]), row[2], 1e-9);
        }
    }

    @Test
    void groverThinTape() {
        sixDecimals(SelfInductance.thinStrip(10, 25e-3), 14.3708896, 1e-7);
        sixDecimals(SelfInductance.strip(10, 25e-3, 0), 14.370341, 1e-6);
        sixDecimals(SelfInductance.strip(1, 25e-3, 3e-3), 0.954991, 1e-6);
    }

    /** Skin current on a thin tape has the external field of a round wire of a quarter of its width. */
    @Test
    void tapeRadius() {
        assertThat(SelfInductance.stripRadius(25e-3, 0)).isEqualTo(6.25e-3);
        double even = SelfInductance.thinStrip(10, 25e-3);
        double skin = SelfInductance.tube(10, SelfInductance.stripRadius(25e-3, 0));
        // Even current: geometric mean distance w e^(-3/2) = 0.223 w; skin current: w/4, so less inductance.
        assertThat(even - skin).isCloseTo(2e-6 * (Math.log(0.25) + 1.5), within(2e-8));
    }

    @Property(seed = "20261125", tries = 100)
    void orderOfTheConventionsAndInternalInductance(
            @ForAll @DoubleRange(min = 1e-4, max = 0.05) @Scale(6) double radius,
            @ForAll @DoubleRange(min = 1, max = 30) double length) {
        double filament = SelfInductance.filamentAtRadius(length, radius);
        double tube = SelfInductance.tube(length, radius);
        double solid = SelfInductance.solid(length, radius);
        assertThat(tube).isGreaterThan(filament);
        assertThat((tube - filament) / (2e-7 * radius)).isCloseTo(4 / Math.PI - 1, within(0.05));
        // The internal inductance of a long wire is 50 nH/m.
        assertThat(solid - tube).isCloseTo(5e-8 * length, Percentage.withPercentage(100 * radius / length * 10));
        assertThat(SelfInductance.tube(3 * length, 3 * radius)).isCloseTo(3 * tube, Percentage.withPercentage(1e-9));
    }

    @Test
    void refusesWhatIsNoWire() {
        for (double bad : new double[] {0, -1, Double.NaN, 2}) {
            assertThatThrownBy(() -> SelfInductance.tube(1, bad)).isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> SelfInductance.strip(1, 0.02, 0.03)).isInstanceOf(IllegalArgumentException.class);
    }
}
