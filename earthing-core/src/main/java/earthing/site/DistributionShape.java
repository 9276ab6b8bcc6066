package earthing.site;

/** Shapes of distributions. */
public enum DistributionShape {
    /** Every value between low and high alike. */
    UNIFORM,
    /** Rising from low to nominal, falling to high. */
    TRIANGULAR,
    /** About nominal, its width from low and high. */
    NORMAL,
    /** The logarithm is normal; nominal is the median. */
    LOGNORMAL
}
