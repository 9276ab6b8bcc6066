package earthing.site;

/** Form of the earth return in the impedance of a line. */
public enum EarthReturnForm {
    /** Carson's series, summed to convergence. */
    CARSON_SERIES,
    /** Image at the complex depth. */
    COMPLEX_DEPTH
}
