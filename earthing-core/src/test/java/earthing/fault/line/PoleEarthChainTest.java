package earthing.fault.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PoleEarthChainTest {

    /** Span impedance solved from the row of IEEE Std 80-2000 table C.1 for 15 ohm towers (from memory). */
    private static final Complex SPAN = new Complex(0.380362, 0.166654);

    @Test
    void ieee80TableC1SingleLineRowsAreOneLadder() {
        Complex at15 = PoleEarthChain.infinite(SPAN, new Complex(15, 0));
        assertThat(at15.getReal()).isCloseTo(2.64, within(0.005));
        assertThat(at15.getImaginary()).isCloseTo(0.60, within(0.005));
        Complex at100 = PoleEarthChain.infinite(SPAN, new Complex(100, 0));
        // the span is known to 2 digits only
        assertThat(at100.getReal()).isCloseTo(6.44, within(0.07));
        assertThat(at100.getImaginary()).isCloseTo(1.37, within(0.04));
    }

    @ParameterizedTest
    @CsvSource({"5, 3.8326", "10, 2.8601", "100, 2.7073"})
    void finiteLadderByHandRecursion(int spans, double ohms) {
        assertThat(PoleEarthChain.finite(SPAN, new Complex(15, 0), spans).abs()).isCloseTo(ohms, within(0.0005));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1, 0.91, 0.485, 3.27, 0.652",
        "1, 2, 0.54, 0.33, 2.18, 0.412",
        "1, 4, 0.295, 0.2, 1.32, 0.244",
        "1, 8, 0.15, 0.11, 0.732, 0.133",
        "1, 12, 0.1, 0.076, 0.507, 0.091",
        "1, 16, 0.079, 0.057, 0.387, 0.069",
        "2, 2, 0.455, 0.241, 1.63, 0.324",
        "2, 4, 0.27, 0.165, 1.09, 0.208",
        "4, 4, 0.23, 0.12, 0.817, 0.16",
        "0, 2, 0.643, 0.484, 3.29, 0.585",
        "0, 4, 0.322, 0.242, 1.65, 0.293"
    })
    void ieee80TableC1LinesAndNeutralsInParallel(
            int lines, int neutrals, double r15, double x15, double r100, double x100) {
        assertRow(lines, neutrals, new Complex(2.64, 0.60), new Complex(1.29, 0.967), r15, x15);
        assertRow(lines, neutrals, new Complex(6.44, 1.37), new Complex(6.57, 1.17), r100, x100);
    }

    private static void assertRow(int lines, int neutrals, Complex line, Complex neutral, double r, double x) {
        Complex z = lines == 0
                ? neutral.divide(neutrals)
                : PoleEarthChain.parallel(line.divide(lines), neutral.divide(neutrals));
        // recalled rows, printed from inputs of 3 digits: 5 % of each part
        assertThat(z.getReal()).isCloseTo(r, within(0.05 * r));
        assertThat(z.getImaginary()).isCloseTo(x, within(0.05 * x));
    }

    @Test
    void ieee80AnnexCSplitFactor() {
        assertThat(PoleEarthChain.splitFactor(Complex.ONE, new Complex(0.91, 0.485)))
                .isCloseTo(0.5233, within(0.00005));
    }

    @ParameterizedTest
    @CsvSource({
        "0.25, 0.0683, 0.9692", "0.5, 0.0777, 0.9647", "0.75, 0.0870, 0.9601", "1, 0.0962, 0.9555",
        "1.25, 0.1053, 0.9509", "1.5, 0.1143, 0.9463", "1.75, 0.1233, 0.9416", "2, 0.1321, 0.9370",
        "4, 0.1992, 0.8993", "6, 0.2603, 0.8617", "8, 0.3156, 0.8248", "10, 0.3654, 0.7890",
        "15, 0.4695, 0.7065", "20, 0.5496, 0.6347", "25, 0.6120, 0.5734", "30, 0.6611, 0.5211"
    })
    void sheldrakeTableH1aSplitBetweenWireAndPole(double pole, double wireShare, double poleShare) {
        Complex wire = new Complex(10.5, 22.5);
        Complex earth = new Complex(1.5 + pole, 0);
        assertThat(PoleEarthChain.splitFactor(earth, wire)).isCloseTo(poleShare, within(0.00006));
        assertThat(PoleEarthChain.splitFactor(wire, earth)).isCloseTo(wireShare, within(0.00006));
    }

    @Test
    void sheldrakeTableH1aPrintedPoleShareAt35OhmIsAMisprint() {
        double share = PoleEarthChain.splitFactor(new Complex(36.5, 0), new Complex(10.5, 22.5));
        assertThat(share).isCloseTo(0.4765, within(0.00005));
        assertThat(Math.abs(share - 0.4754)).isGreaterThan(0.001);
    }

    @Property(seed = "20261125", tries = 100)
    void manySpansTendToTheInfiniteChain(
            @ForAll @DoubleRange(min = 0.01, max = 1) double r,
            @ForAll @DoubleRange(min = 0, max = 1) double x,
            @ForAll @DoubleRange(min = 1, max = 50) double earth) {
        Complex span = new Complex(r, x);
        Complex infinite = PoleEarthChain.infinite(span, new Complex(earth, 0));
        Complex finite = PoleEarthChain.finite(span, new Complex(earth, 0), 2000);
        assertThat(finite.subtract(infinite).abs()).isLessThan(1e-9 * infinite.abs());
        // an endless chain does not change when a span and a pole are put before it
        Complex extended = span.add(PoleEarthChain.parallel(new Complex(earth, 0), infinite));
        assertThat(extended.subtract(infinite).abs()).isLessThan(1e-12 * infinite.abs());
    }

    @Test
    void refusesActiveImpedances() {
        assertThatThrownBy(() -> PoleEarthChain.infinite(new Complex(-1, 0), Complex.ONE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> PoleEarthChain.finite(Complex.ONE, Complex.ONE, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> PoleEarthChain.reductionFactor(Complex.ONE, Complex.ZERO))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
