package earthing.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Source;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class TemperatureHistoryTest {

    private static final ThermalConstants COPPER = ThermalTable.require(Metal.COPPER, ThermalEdition.IEC_60949);
    private static final Shape WIRE = SolidRound.ofArea(35e-6);
    private static final List<Shot> SHOTS =
            List.of(new Shot(4000, 0.15, 1, 0.33), new Shot(4000, 0.15, 1, 15), new Shot(4000, 1, 1, 45));

    @Test
    void withoutLossItIsTheAdiabaticSum() {
        TemperatureHistory history = TemperatureHistory.of(COPPER, WIRE, 40, 30, HeatTransfer.NONE, SHOTS, 5);
        double adiabatic = AdiabaticHeating.finalTemperature(COPPER, WIRE.area(), Shot.jouleIntegral(SHOTS), 40);
        assertThat(history.peak()).isCloseTo(adiabatic, within(1e-9 * adiabatic));
        assertThat(history.points()).hasSize(1 + 6 * 5);
    }

    @Test
    void coolsToTheAirWithTheTimeConstantOfNewtonsLaw() {
        HeatTransfer air = HeatTransfer.STILL_AIR;
        double constant = COPPER.heatCapacity() * WIRE.area() / (air.coefficient() * WIRE.perimeter());
        TemperatureHistory history =
                TemperatureHistory.of(COPPER, WIRE, 200, 30, air, List.of(new Shot(0, 1e-9, 1, constant)), 1);
        double end = history.points().get(history.points().size() - 1).temperature();
        assertThat(end).isCloseTo(30 + 170 * Math.exp(-1), within(1e-6));
    }

    @Test
    void aSteadyCurrentSettlesWhereHeatingAndLossBalance() {
        HeatTransfer air = new HeatTransfer(20, Source.tool("test"));
        double current = 150;
        TemperatureHistory history =
                TemperatureHistory.of(COPPER, WIRE, 30, 30, air, List.of(Shot.of(current, 1e6)), 3);
        double end = history.points().get(history.points().size() - 1).temperature();
        double heating = current * current * COPPER.resistivity(end) / WIRE.area();
        assertThat(heating).isCloseTo(20 * WIRE.perimeter() * (end - 30), within(heating * 1e-9));
    }

    @Property(seed = "20261125", tries = 50)
    void lossNeverRaisesThePeakAndStepsDoNotMatter(@ForAll @DoubleRange(min = 0, max = 100) double coefficient) {
        HeatTransfer air = new HeatTransfer(coefficient, Source.tool("test"));
        TemperatureHistory coarse = TemperatureHistory.of(COPPER, WIRE, 40, 40, air, SHOTS, 1);
        TemperatureHistory fine = TemperatureHistory.of(COPPER, WIRE, 40, 40, air, SHOTS, 37);
        double adiabatic = AdiabaticHeating.finalTemperature(COPPER, WIRE.area(), Shot.jouleIntegral(SHOTS), 40);
        assertThat(coarse.peak()).isLessThanOrEqualTo(adiabatic * (1 + 1e-12));
        assertThat(coarse.peak()).isGreaterThanOrEqualTo(40);
        assertThat(fine.points().get(fine.points().size() - 1).temperature())
                .isCloseTo(coarse.points().get(coarse.points().size() - 1).temperature(), within(1e-8));
    }

    @Test
    void refusesNonsense() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TemperatureHistory.of(COPPER, WIRE, -300, 30, HeatTransfer.NONE, SHOTS, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TemperatureHistory.of(COPPER, WIRE, 30, 30, HeatTransfer.NONE, SHOTS, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new HeatTransfer(-1, Source.tool("test")));
    }
}
