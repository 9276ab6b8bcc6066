package earthing.surge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class InducedVoltageTest {

    /** IEEE Std 1410 (from memory): 31 kA, 10 m, 100 m: 120.3 kV. */
    @Test
    void ieee1410SimplifiedPeak() {
        assertThat(InducedVoltage.simplifiedPeak(31e3, 10, 100)).isCloseTo(120.3e3, within(50.0));
    }

    /** The printed 38.8 is the full formula at 0.4 of the speed of light: 30·(1 + 0.4/√(2 − 0.16)) = 38.85. */
    @Test
    void ieee1410FactorIsTheFullFormulaAtTheUsualSpeed() {
        InducedVoltage unit = new InducedVoltage(1, 100, InducedVoltage.USUAL_SPEED_RATIO);
        assertThat(unit.peakPerAmpere() * 100).isCloseTo(38.8, within(0.05));
    }

    /** Darveniza 2007 (from memory): 1000 ohm.m adds 4.74 m. */
    @Test
    void darveniza2007EffectiveHeight() {
        assertThat(InducedVoltage.effectiveHeight(10, 1000)).isCloseTo(14.74, within(0.005));
    }

    @Property(seed = "20261125", tries = 200)
    void theGreatestValueInTimeIsThePeakOfTheFormula(
            @ForAll @DoubleRange(min = 5, max = 20) double height,
            @ForAll @DoubleRange(min = 40, max = 2000) double distance,
            @ForAll @DoubleRange(min = 0.1, max = 0.5) double ratio) {
        InducedVoltage u = new InducedVoltage(height, distance, ratio);
        double greatest = 0;
        for (int k = 1; k <= 4000; k++) {
            greatest = Math.max(greatest, u.stepResponse(k * 5 * u.peakTime() / 4000));
        }
        // The formula takes the value at its nominal time of peak; the true peak comes a little later.
        assertThat(greatest / u.peakPerAmpere()).isBetween(1.0, 1.01);
        assertThat(u.stepResponse(u.peakTime())).isCloseTo(u.peakPerAmpere(), within(1e-9 * greatest));
    }

    @Property(seed = "20261125", tries = 200)
    void unequalDistancesScalePeakAndTime(
            @ForAll @DoubleRange(min = 40, max = 1000) double distance,
            @ForAll @DoubleRange(min = 1.1, max = 5) double further,
            @ForAll @DoubleRange(min = 0.41, max = 5) double time) {
        InducedVoltage near = new InducedVoltage(10, distance, 0.4);
        InducedVoltage far = new InducedVoltage(10, distance * further, 0.4);
        assertThat(far.peakPerAmpere() * further).isCloseTo(near.peakPerAmpere(), within(1e-9));
        // Everything in the geometry but the height scales with the distance, so the wave is the same in scaled time.
        assertThat(far.stepResponse(time * far.peakTime()) * further)
                .isCloseTo(near.stepResponse(time * near.peakTime()), within(1e-9));
        assertThat(near.stepResponse(0.999 * distance / 299_792_458)).isZero();
    }

    @Test
    void refusesWhatIsOutsideItsRange() {
        assertThatThrownBy(() -> new InducedVoltage(10, 10, 0.4)).hasMessageContaining("distance");
        assertThatThrownBy(() -> new InducedVoltage(10, 100, 1)).hasMessageContaining("speed ratio");
        assertThatThrownBy(() -> InducedVoltage.simplifiedPeak(1, 10, 5)).hasMessageContaining("distance");
        assertThatThrownBy(() -> InducedVoltage.effectiveHeight(10, -1)).hasMessageContaining("resistivity");
    }
}
