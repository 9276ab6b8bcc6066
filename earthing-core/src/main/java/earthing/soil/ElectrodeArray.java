package earthing.soil;

/** Arrangement of the four probes of a sounding, with the reading it would give over a model of the ground. */
public sealed interface ElectrodeArray permits Wenner, Schlumberger {

    /**
     * The transfer resistance that an ideal instrument reads.
     *
     * @param soil the ground
     * @return voltage between the potential probes over current [Ω]
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
     * Distance between the two current probes, the reach of the arrangement.
     *
     * @return AB [m]
     */
    double spread();
}
