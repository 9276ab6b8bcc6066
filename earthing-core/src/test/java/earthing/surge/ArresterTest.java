package earthing.surge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class ArresterTest {

    private static double residual(TwoSectionArrester arrester, Impulse impulse, double end) {
        Circuit.Builder builder = new Circuit.Builder().currentSource("s", "0", "t", impulse);
        Circuit circuit = arrester.addTo(builder, "arrester", "t", "0").build();
        return TransientSolution.solve(circuit, TimeGrid.adaptive(end, 2e-9))
                .potential("t")
                .maximum()
                .value();
    }

    /** IEEE WG 3.4.11 (1992), table 1 and the worked example of 248 kV, 1.45 m (from memory). */
    @Test
    void ieeeWg3411Table1() {
        TwoSectionArrester a = TwoSectionArrester.ofHeight(248e3, 1.45, 1);
        assertThat(a.outerCurve().voltage(10)).isCloseTo(217e3, withinPercentage(1e-9));
        assertThat(a.outerCurve().voltage(10e3)).isCloseTo(294.5e3, withinPercentage(1e-9));
        assertThat(a.innerCurve().voltage(10e3)).isCloseTo(240.25e3, withinPercentage(1e-9));
        assertThat(a.betweenInductance()).isCloseTo(21.75e-6, withinPercentage(1e-9));
        assertThat(a.seriesInductance()).isCloseTo(0.29e-6, withinPercentage(1e-9));
        assertThat(a.betweenDamping().orElseThrow()).isCloseTo(94.25, within(1e-9));
        assertThat(a.shuntCapacitance().orElseThrow()).isCloseTo(68.96551724e-12, withinPercentage(1e-6));
    }

    /** Pinceti and Giannettoni 1999 (from memory); ngspice gives 64.09 kV for the arrester alone at 10 kA 8/20. */
    @Test
    void pincetiGiannettoni1999() {
        TwoSectionArrester a = TwoSectionArrester.ofResidualVoltages(66e3, 73e3, 24e3);
        assertThat(a.betweenInductance()).isCloseTo(0.636364e-6, within(0.6e-12));
        assertThat(a.seriesInductance()).isCloseTo(0.212121e-6, within(0.6e-12));
        double found = residual(a, PowerExponential.impulse820(10e3), 40e-6);
        assertThat(found).isCloseTo(64.09e3, withinPercentage(0.1));
    }

    @Test
    void steeperFrontRaisesTheVoltage() {
        TwoSectionArrester a = TwoSectionArrester.ofResidualVoltages(66e3, 73e3, 24e3);
        double slow = residual(a, PowerExponential.impulse820(10e3), 30e-6);
        double fast = residual(a, DoubleExponential.impulse1250(10e3), 10e-6);
        assertThat(fast).isGreaterThan(1.03 * slow);
        assertThat(TwoSectionArrester.validFor(0.25e-6)).isFalse();
        assertThat(TwoSectionArrester.validFor(8e-6)).isTrue();
    }

    /** IEEE C62.22 margins and the lead rule of 0.4 µH/ft at 4 kA/µs (from memory). */
    @Test
    void ieeeC62Margins() {
        double lead = ProtectiveMargin.leadVoltage(ProtectiveMargin.LEAD_INDUCTANCE, ProtectiveMargin.LEAD_STEEPNESS);
        assertThat(lead).isCloseTo(5249.34, within(0.01));
        double[][] table = {
            {75, 36, 70.94},
            {95, 36, 116.52},
            {110, 45, 108.04},
            {125, 66, 69.205},
            {145, 66, 96.277},
            {150, 66, 103.05},
            {170, 66, 130.12}
        };
        for (double[] row : table) {
            assertThat(100 * ProtectiveMargin.margin(row[0] * 1e3, row[1] * 1e3, 1.5 * 5250))
                    .isCloseTo(row[2], within(0.005));
        }
    }

    /** IEC 60099-5 and 60071-2 (from memory): 66 kV, 1000 kV/µs, 3 m: 86 kV. */
    @Test
    void iec60071Separation() {
        assertThat(ProtectiveMargin.atDistance(66e3, 1e12, 3, 3e8)).isCloseTo(86e3, within(1e-6));
        assertThat(ProtectiveMargin.longestDistance(66e3, 1e12, 125e3 / 1.2, 3e8))
                .isCloseTo(5.725, within(1e-9));
        assertThat(ProtectiveMargin.atDistance(66e3, 1e12, 300, 3e8)).isEqualTo(132e3);
    }

    @Property(seed = "20261125", tries = 100)
    void residualCurveRisesAndMeetsItsPoints(@ForAll @DoubleRange(min = 1.5, max = 39) double kiloampere) {
        ResidualCurve curve = new ResidualCurve(
                new double[] {1.5e3, 3e3, 5e3, 10e3, 20e3, 40e3}, new double[] {54e3, 57e3, 60e3, 65e3, 72e3, 82e3});
        assertThat(curve.at(10e3)).isCloseTo(65e3, within(1e-6));
        assertThat(curve.at(1.02 * kiloampere * 1e3)).isGreaterThan(curve.at(kiloampere * 1e3));
        double d = 1e-6 * kiloampere * 1e3;
        double i = kiloampere * 1e3;
        double slope = (curve.resistance().voltage(i + d) - curve.resistance().voltage(i - d)) / (2 * d);
        assertThat(curve.resistance().slope(i)).isCloseTo(slope, withinPercentage(30));
        assertThat(curve.resistance().voltage(-i)).isEqualTo(-curve.resistance().voltage(i));
        assertThatThrownBy(() -> curve.at(1e3)).hasMessageContaining("the data cover");
    }
}
