package earthing.site;

/** What the surge circuit of the pole holds for the buried electrodes. */
public enum ElectrodeModel {
    /** Their resistances, own and mutual. */
    RESISTANCE,
    /** The same with the inductance of the tapering current and a capacitance. */
    LUMPED,
    /** The thin-wire solution over frequency in ground that disperses, as passive rational functions. */
    FREQUENCY,
    /** Resistances that fall with the current while the ground around them breaks down. An option, never for touch or step. */
    IONISED
}
