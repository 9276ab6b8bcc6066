package earthing.soil;

/** All readings of one sounding over a model of the ground, for arrangements that have no linear filter. */
public interface SoundingForward {

    /**
     * The readings as exactly as the library knows them.
     *
     * @param soil the ground; its lowest layer must conduct
     * @return apparent resistivity of every reading in their order [Ω·m]
     */
    double[] apparentResistivities(SoilModel soil);

    /**
     * The thinnest layer that is looked for.
     *
     * @return thickness [m], &gt; 0
     */
    double thinnest();

    /**
     * How many layers such readings can tell apart.
     *
     * @return most layers of a fit [-], ≥ 1
     */
    int mostLayers();
}
