package earthing.electrode.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/** Sunde 1949 (from memory), against a ladder of many short pieces and against the depth of return after Carson. */
class LongWireSundeTest {

    /** A ladder of 4,000 pieces, reckoned from its far end, shares nothing with the closed form. */
    @Property(seed = "20261125", tries = 30)
    void theLineIsALadderOfManyPieces(
            @ForAll @DoubleRange(min = 0.05, max = 50) double resistance,
            @ForAll @DoubleRange(min = 0.1, max = 10) double ohmsAKilometre,
            @ForAll @DoubleRange(min = 0.1, max = 10) double reactance,
            @ForAll @DoubleRange(min = 1, max = 500) double length) {
        int pieces = 4000;
        Complex along = new Complex(ohmsAKilometre, reactance).divide(1000);
        Complex series = along.multiply(length / pieces);
        double shunt = resistance * pieces;
        Complex z = new Complex(1e30);
        for (int i = 0; i < pieces; i++) {
            Complex beyond = z.add(series.divide(2));
            z = beyond.multiply(shunt).divide(beyond.add(shunt)).add(series.divide(2));
        }
        Complex line = LongWireSunde.impedance(resistance, length, along);
        assertThat(line.subtract(z).abs()).isLessThan(1e-4 * z.abs());
    }

    /** Carson 1926: a return through the ground costs omega mu0 / 8 a metre, 0.0493 ohm/km at 50 Hz, in any ground. */
    @Test
    void theReturnCostsCarsonsResistance() {
        for (double rho : new double[] {10, 100, 1000}) {
            assertThat(LongWireSunde.outside(rho, 0.005, 50).getReal()).isCloseTo(4.93e-5, within(0.005e-5));
        }
    }

    @Test
    void refusesBetweenItsTwoFormsAndATooThickWire() {
        Complex copper = new Complex(2.2e-4, 1.6e-5);
        assertThat(LongWireSunde.wire(10, 0.0841, 300, 0.005, 0.6, copper, 50)).isEmpty();
        assertThat(LongWireSunde.wire(100, 1.1964, 200, 0.005, 0.6, copper, 50)).isPresent();
        assertThatThrownBy(() -> LongWireSunde.outside(1, 5, 1000)).hasMessageContaining("too thick");
        assertThatThrownBy(() -> LongWireSunde.impedance(Double.NaN, 1, copper)).hasMessageContaining("resistance");
        assertThat(LongWireSunde.impedance(30, 1, new Complex(1e-9)).getReal()).isCloseTo(30, within(1e-6));
    }
}
