package earthing.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Source;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class SequenceHeatingTest {

    private static final ThermalConstants COPPER = ThermalTable.require(Metal.COPPER, ThermalEdition.IEC_60949);
    private static final TemperatureLimit BOLTED = JointType.PRESSURE.limit().orElseThrow();
    private static final List<Shot> FOUR_SHOTS = List.of(
            new Shot(4000, 0.15, 1, 0.33), new Shot(4000, 0.15, 1, 15), new Shot(4000, 1, 1, 45), Shot.of(4000, 1));

    /** Identity of IEC 60949: shots chain to the sum of their I²t; with K rounded to 226 the figure is 259.78 °C. */
    @Test
    void fourShotsPassWhereTheyMustNot() {
        SequenceHeating sequence = SequenceHeating.of(COPPER, 35e-6, 40, FOUR_SHOTS, List.of(BOLTED));
        assertThat(274.5 * Math.exp(2.3 * 16e6 / Math.pow(226 * 35, 2)) - 234.5).isCloseTo(259.78, within(0.005));
        double closed = 274.5 * Math.exp(2.3 * 16e6 / Math.pow(225.66916 * 35, 2)) - 234.5;
        assertThat(sequence.finalTemperature()).isCloseTo(closed, within(1e-3));
        assertThat(sequence.keepsLimit()).isFalse();
        assertThat(sequence.utilisation()).isGreaterThan(1);
        assertThat(sequence.afterShot()).hasSize(4).isSorted();

        SequenceHeating single = SequenceHeating.of(COPPER, 35e-6, 40, List.of(Shot.of(4000, 1)), List.of(BOLTED));
        assertThat(single.finalTemperature()).isCloseTo(119.99, within(0.5));
        assertThat(single.keepsLimit()).isTrue();
    }

    /** IEC 60909-0:2001 clause 4.8, from memory: 12.2 kA²s, 1.2 s, 3.18852 kA. */
    @Test
    void equivalentThermalCurrentOfASequence() {
        List<Shot> shots = List.of(Shot.of(4000, 0.1), Shot.of(4000, 0.1), Shot.of(3000, 1));
        assertThat(Shot.jouleIntegral(shots)).isCloseTo(12.2e6, within(1.0));
        assertThat(Shot.totalDuration(shots)).isCloseTo(1.2, within(1e-12));
        assertThat(Shot.equivalentCurrent(shots)).isCloseTo(3188.52, within(0.005));
    }

    @Test
    void theLowestLimitGoverns() {
        TemperatureLimit conductor = new TemperatureLimit("conductor", 300, Source.tool("test"));
        SequenceHeating sequence = SequenceHeating.of(COPPER, 35e-6, 40, FOUR_SHOTS, List.of(conductor, BOLTED));
        assertThat(sequence.limit()).isEqualTo(BOLTED);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SequenceHeating.of(COPPER, 35e-6, 40, FOUR_SHOTS, List.of()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SequenceHeating.of(COPPER, 35e-6, 40, List.of(), List.of(BOLTED)));
    }

    @Test
    void anEndlessFaultHasNoHeatingResult() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Shot.of(400, Double.POSITIVE_INFINITY))
                .withMessageContaining("never cleared");
        assertThatIllegalArgumentException().isThrownBy(() -> new Shot(400, 1, 0.9, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> Shot.of(Double.NaN, 1));
    }

    @Test
    void fusingIsTold() {
        ThermalConstants ieee = ThermalTable.require(Metal.COPPER, ThermalEdition.IEEE_80_2000);
        assertThat(SequenceHeating.of(ieee, 5e-6, 40, FOUR_SHOTS, List.of(BOLTED))
                        .fuses())
                .isTrue();
        assertThat(SequenceHeating.of(ieee, 50e-6, 40, FOUR_SHOTS, List.of(BOLTED))
                        .fuses())
                .isFalse();
    }

    @Provide
    Arbitrary<List<Shot>> sequences() {
        Arbitrary<Double> current = Arbitraries.doubles().between(0, 12e3);
        Arbitrary<Double> duration = Arbitraries.doubles().between(0.02, 2);
        Arbitrary<Double> decrement = Arbitraries.doubles().between(1, 1.6);
        Arbitrary<Double> dead = Arbitraries.doubles().between(0.1, 60);
        return Combinators.combine(current, duration, decrement, dead)
                .as(Shot::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(5);
    }

    @Property(seed = "20261125", tries = 100)
    void theOrderOfTheShotsDoesNotMatter(@ForAll("sequences") List<Shot> shots) {
        List<Shot> shuffled = new ArrayList<>(shots);
        Collections.shuffle(shuffled, new Random(7));
        SequenceHeating one = SequenceHeating.of(COPPER, 70e-6, 40, shots, List.of(BOLTED));
        SequenceHeating other = SequenceHeating.of(COPPER, 70e-6, 40, shuffled, List.of(BOLTED));
        assertThat(other.jouleIntegral()).isCloseTo(one.jouleIntegral(), within(1e-12 * one.jouleIntegral() + 1e-9));
        assertThat(other.finalTemperature())
                .isCloseTo(one.finalTemperature(), within(1e-9 * (1 + one.finalTemperature())));
    }

    @Property(seed = "20261125", tries = 100)
    void chainOfFinalTemperaturesIsTheSum(@ForAll("sequences") List<Shot> shots) {
        double temperature = 40;
        for (Shot shot : shots) {
            temperature = AdiabaticHeating.finalTemperature(COPPER, 70e-6, shot.jouleIntegral(), temperature);
        }
        SequenceHeating sequence = SequenceHeating.of(COPPER, 70e-6, 40, shots, List.of(BOLTED));
        assertThat(sequence.finalTemperature()).isCloseTo(temperature, within(1e-9 * (1 + temperature)));
    }

    @Property(seed = "20261125", tries = 100)
    void requiredAreaJustKeepsTheLimit(@ForAll("sequences") List<Shot> shots) {
        SequenceHeating sequence = SequenceHeating.of(COPPER, 70e-6, 40, shots, List.of(BOLTED));
        if (sequence.jouleIntegral() > 0) {
            double area = sequence.requiredArea() * 1.000001;
            assertThat(SequenceHeating.of(COPPER, area, 40, shots, List.of(BOLTED))
                            .keepsLimit())
                    .isTrue();
            assertThat(SequenceHeating.of(COPPER, area * 0.99999, 40, shots, List.of(BOLTED))
                            .keepsLimit())
                    .isFalse();
        }
        assertThat(sequence.utilisation() <= 1).isEqualTo(sequence.keepsLimit());
    }
}
