package earthing.site;

/** How the ground moves with frequency. */
public enum SoilLaw {
    /** Mean of the causal law of Alipio and Visacro, 2014. */
    ALIPIO_VISACRO_2014,
    /** The same with its conservative constants, the weakest dispersion. */
    ALIPIO_VISACRO_2014_CONSERVATIVE,
    /** Fit of Visacro and Alipio, 2012. */
    VISACRO_ALIPIO_2012,
    /** Universal soil of Longmire and Smith, 1975. */
    LONGMIRE_SMITH_1975,
    /** Law of Messier, 1985. */
    MESSIER_1985,
    /** No dispersion, for comparison. */
    NONE
}
