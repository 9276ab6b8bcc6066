package earthing.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

class ImpulseParametersTest {

    @Test
    void threeMetreRodTaperingAndThroughCurrent() {
        assertThat(ImpulseParameters.taperedInductance(3, 0.008)).isCloseTo(1.06e-6, within(0.005e-6));
        assertThat(ImpulseParameters.throughInductance(3, 0.008)).isCloseTo(3.37e-6, within(0.005e-6));
    }

    @Test
    void closedFormAgreesWithNeumannsIntegralByQuadrature() {
        double l = 2.4;
        double a = 0.05;
        IterativeLegendreGaussIntegrator inner = new IterativeLegendreGaussIntegrator(20, 1e-9, 1e-12);
        IterativeLegendreGaussIntegrator whole = new IterativeLegendreGaussIntegrator(20, 1e-8, 1e-12);
        double outer = whole.integrate(
                100_000,
                u -> inner.integrate(100_000, v -> taper(u, v, l, a), 0, u)
                        + inner.integrate(100_000, v -> taper(u, v, l, a), u, l),
                0,
                l);
        assertThat(ImpulseParameters.taperedInductance(l, a)).isCloseTo(1e-7 * outer, within(1e-6 * 1e-7 * outer));
    }

    private static double taper(double u, double v, double l, double a) {
        return (1 - u / l) * (1 - v / l) / Math.hypot(u - v, a);
    }

    @Property(seed = "20261125", tries = 50)
    void resistanceTimesCapacitanceIsResistivityTimesPermittivity(
            @ForAll @DoubleRange(min = 1, max = 5000) double rho,
            @ForAll @DoubleRange(min = 1, max = 80) double epsilon) {
        ImpulseParameters p = ImpulseParameters.of(37, 3, 0.008, rho, epsilon);
        double product = p.resistance() * p.capacitance();
        assertThat(product).isCloseTo(rho * epsilon * 8.8541878128e-12, within(1e-9 * product));
    }

    @Test
    void refusesWhatIsNotSlenderOrNotPositive() {
        assertThatThrownBy(() -> ImpulseParameters.taperedInductance(1, 2)).hasMessageContaining("as long as thick");
        assertThatThrownBy(() -> ImpulseParameters.of(10, 3, 0.008, 100, 0.5)).hasMessageContaining("permittivity");
        assertThatThrownBy(() -> ImpulseParameters.of(Double.NaN, 3, 0.008, 100, 9))
                .hasMessageContaining("> 0");
    }
}
