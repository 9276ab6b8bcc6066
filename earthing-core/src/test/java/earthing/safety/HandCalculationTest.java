package earthing.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.conductor.AdiabaticHeating;
import earthing.conductor.AreaComparison;
import earthing.conductor.JointType;
import earthing.conductor.Metal;
import earthing.conductor.SequenceHeating;
import earthing.conductor.Shot;
import earthing.conductor.SizeSeries;
import earthing.conductor.ThermalConstants;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The figures of docs/theory/safety.md. */
class HandCalculationTest {

    @Test
    void conductorOverFourShots() {
        ThermalConstants copper = ThermalTable.require(Metal.COPPER, ThermalEdition.IEC_60949);
        List<Shot> shots = List.of(
                new Shot(4000, 0.15, 1, 0.33), new Shot(4000, 0.15, 1, 15), new Shot(4000, 1, 1, 45), Shot.of(4000, 1));
        SequenceHeating heating = SequenceHeating.of(
                copper, 35e-6, 40, shots, List.of(JointType.PRESSURE.limit().orElseThrow()));
        assertThat(heating.jouleIntegral()).isCloseTo(36.8e6, within(1.0));
        assertThat(heating.finalTemperature()).isCloseTo(260.6, within(0.05));
        assertThat(heating.requiredArea() * 1e6).isCloseTo(35.66, within(0.005));
        assertThat(SizeSeries.IEC_60228
                        .atLeast(heating.requiredArea())
                        .orElseThrow()
                        .name())
                .isEqualTo("50 mm2");
        AreaComparison both =
                AreaComparison.of(Metal.COPPER, ThermalEdition.IEEE_80_2000, heating.jouleIntegral(), 40, 250);
        assertThat(both.ieee() * 1e6).isCloseTo(35.75, within(0.005));
        assertThat(both.difference()).isCloseTo(0.003, within(0.0005));
        assertThat(AdiabaticHeating.finalTemperature(copper, 35e-6, 16e6, 40)).isCloseTo(120, within(0.5));
    }

    @Test
    void personOverFourShots() {
        List<Shock> shocks = List.of(new Shock(0.15, 0.33), new Shock(0.15, 15), new Shock(1, 45), new Shock(1, 0));
        List<SafetyCriteria.Assessed> assessed =
                SafetyCriteria.EN_50522_2022.assess(shocks, Contact.HAND_TO_FEET, Standing.bare(100));
        assertThat(assessed).hasSize(3);
        assertThat(((PermissibleVoltage) assessed.get(0).permissible()).value()).isCloseTo(360.9, within(0.05));
        PermissibleVoltage governing =
                (PermissibleVoltage) SafetyCriteria.governing(assessed).permissible();
        assertThat(governing.value()).isEqualTo(115);
        assertThat(SafetyCriteria.EN_50522_2022.gate(231, governing.value()).demand())
                .isEqualTo(EprGate.Demand.MEASURES_OR_TOUCH);
        assertThat(SafetyCriteria.EN_50522_2022.gate(461, governing.value()).demand())
                .isEqualTo(EprGate.Demand.TOUCH);
        assertThat(SafetyCriteria.EN_50522_2022.gate(2301, governing.value()).assessStep())
                .isTrue();
    }

    /** Figures of the table of surface layers, and how far the printed ways lie from the disc on two layers. */
    @Test
    void surfaceLayersThreeWays() {
        assertThat(SurfaceLayerFactor.series(-0.9, 0.1)).isCloseTo(0.7048, within(5e-5));
        assertThat(SurfaceLayerFactor.series(-0.98, 0.02)).isCloseTo(0.2524, within(5e-5));
        assertThat(SurfaceLayerFactor.shortFormula(0.1, 1.9, 0.1)).isCloseTo(0.7060, within(5e-5));
        assertThat(SurfaceLayerFactor.shortFormula(0.02, 1.98, 0.02)).isCloseTo(0.3147, within(5e-5));
        assertThat(FootDisc.factor(-0.9, 0.1)).isCloseTo(0.7083, within(5e-5));
        assertThat(FootDisc.factor(-0.98, 0.02)).isCloseTo(0.2676, within(5e-5));
    }
}
