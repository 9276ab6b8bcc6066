package earthing.electrode.formula;

/** The series that Dwight uses for a wire and its image, and for two rods side by side. */
final class WireSeries {

    private WireSeries() {}

    /** ln(4/q) − 2 + q/2 − q²/16 + q⁴/512 with q = s/L. */
    static double bracket(double q) {
        return Math.log(4 / q) - 2 + q / 2 - q * q / 16 + q * q * q * q / 512;
    }
}
