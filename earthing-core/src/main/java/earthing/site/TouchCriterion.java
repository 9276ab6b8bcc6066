package earthing.site;

/** Which permissible touch voltage applies. */
public enum TouchCriterion {
    /** EN 50522:2010. */
    EN_50522_2010,
    /** EN 50522:2022. */
    EN_50522_2022,
    /** IEEE Std 80, body weight 50 kg. */
    IEEE_80_50KG,
    /** IEEE Std 80, body weight 70 kg. */
    IEEE_80_70KG,
    /** Body current through the body impedance of IEC/TS 60479-1; the block {@code body} says whose. */
    IEC_60479_1,
    /** The owner's own set, in the block {@code owner}. */
    OWNER
}
