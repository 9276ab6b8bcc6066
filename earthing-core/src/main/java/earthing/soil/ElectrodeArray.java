package earthing.soil;

import java.util.List;
import java.util.Optional;

/** How a reading of a sounding is taken, with what it would be over a model of the ground. */
public interface ElectrodeArray {

    /**
     * The resistance that an ideal instrument reads.
     *
     * @param soil the ground
     * @return voltage over current [Ω]
     */
    double resistance(SoilModel soil);

    /**
     * Factor from reading to apparent resistivity: ρa = K·R.
     *
     * @return geometric factor K [m]
     */
    double geometricFactor();

    /**
     * Apparent resistivity over a model of the ground.
     *
     * @param soil the ground
     * @return ρa [Ω·m]
     */
    default double apparentResistivity(SoilModel soil) {
        return geometricFactor() * resistance(soil);
    }

    /**
     * Distance between the two current probes, the reach of the arrangement; three times the depth for what has one probe.
     *
     * @return AB [m]
     */
    double spread();

    /**
     * How an inversion computes readings of this kind, where they are not those of points in a line.
     *
     * @param readings all readings of the sounding, this one among them
     * @return the computation; empty for Wenner and Schlumberger arrays, whose readings are linear in the transform
     * @throws IllegalArgumentException if one of the readings is of another kind
     */
    default Optional<SoundingForward> forward(List<Reading> readings) {
        return Optional.empty();
    }
}
