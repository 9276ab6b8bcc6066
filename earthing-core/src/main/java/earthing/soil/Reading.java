package earthing.soil;

/**
 * One reading of a sounding.
 *
 * @param array where the probes stood
 * @param apparentResistivity apparent resistivity ρa [Ω·m], &gt; 0, finite
 */
public record Reading(ElectrodeArray array, double apparentResistivity) {

    /**
     * Refuses a reading that is not positive and finite.
     *
     * @param array where the probes stood
     * @param apparentResistivity apparent resistivity ρa [Ω·m], &gt; 0, finite
     */
    public Reading {
        if (!(apparentResistivity > 0) || Double.isInfinite(apparentResistivity)) {
            throw new IllegalArgumentException(
                    "apparent resistivity must be > 0 ohm.m and finite; have " + apparentResistivity);
        }
    }

    /**
     * A reading as the instrument shows it.
     *
     * @param array where the probes stood
     * @param resistance resistance read [Ω], &gt; 0
     * @return the reading, by the geometric factor of the array
     */
    public static Reading ofResistance(ElectrodeArray array, double resistance) {
        return new Reading(array, array.geometricFactor() * resistance);
    }

    /**
     * The spacing of a Wenner array of the same reach.
     *
     * @return a third of the distance between the current probes [m]
     */
    public double spacing() {
        return array.spread() / 3;
    }
}
