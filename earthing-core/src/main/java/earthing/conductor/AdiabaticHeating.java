package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/**
 * Heating without loss of heat: I²t = (K S)² ln((β + θf)/(β + θi)). Every joule stays in the metal, so the result is on
 * the cautious side for any duration; the standards use it up to 5 s. Skin effect is not in it: at power frequency it is
 * below 1 % up to about 12 mm radius in copper, but large in steel, whose printed constants contain the usual sizes.
 */
public final class AdiabaticHeating {

    /** The law in the form of the IEC. */
    public static final Source IEC = Source.standard(
            "IEC 60949:1988", "clause 3, eq. (1) and (2) (= IEC 60364-5-54 annex A)", Status.FROM_MEMORY);

    /** The law in the form of the IEEE, for symmetrical currents. */
    public static final Source IEEE =
            Source.standard("IEEE Std 80-2000", "clause 11.3.1, eq. 37 to 42", Status.FROM_MEMORY);

    /** Area of one thousand circular mils [m²]; one circular mil is the area of a circle of 0.001 in diameter. */
    public static final double KCMIL = Math.PI / 4 * 0.0254 * 0.0254 * 1e-3;

    private AdiabaticHeating() {}

    /**
     * The factor k between two temperatures.
     *
     * @param metal constants of the metal
     * @param initial initial temperature θi [°C], above −β
     * @param end final temperature θf [°C], above the initial one
     * @return k [A·√s/m²]; divide by 1e6 for the customary A·√s/mm²
     */
    public static double factor(ThermalConstants metal, double initial, double end) {
        checkTemperature(metal, initial);
        if (!(end > initial && end < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "final temperature must be above the initial " + initial + " °C; have " + end);
        }
        return metal.constant() * Math.sqrt(Math.log1p((end - initial) / (metal.beta() + initial)));
    }

    /**
     * The smallest area that stays at or below a final temperature.
     *
     * @param metal constants of the metal
     * @param jouleIntegral ∫i²dt of all shots together [A²·s], ≥ 0
     * @param initial initial temperature θi [°C]
     * @param end permissible final temperature θf [°C]
     * @return area [m²]
     */
    public static double requiredArea(ThermalConstants metal, double jouleIntegral, double initial, double end) {
        checkJouleIntegral(jouleIntegral);
        return Math.sqrt(jouleIntegral) / factor(metal, initial, end);
    }

    /**
     * The temperature after a given ∫i²dt.
     *
     * @param metal constants of the metal
     * @param area area S [m²], &gt; 0
     * @param jouleIntegral ∫i²dt of all shots together [A²·s], ≥ 0
     * @param initial initial temperature θi [°C]
     * @return final temperature [°C]; it may lie above the fusing temperature, where the law no longer holds and the
     *     conductor is lost; infinite if beyond any number
     */
    public static double finalTemperature(ThermalConstants metal, double area, double jouleIntegral, double initial) {
        checkArea(area);
        checkJouleIntegral(jouleIntegral);
        checkTemperature(metal, initial);
        double capacity = metal.constant() * area;
        return initial + (metal.beta() + initial) * Math.expm1(jouleIntegral / capacity / capacity);
    }

    /**
     * The largest r.m.s. current that an area bears.
     *
     * @param metal constants of the metal
     * @param area area S [m²], &gt; 0
     * @param duration duration of the current [s], &gt; 0
     * @param initial initial temperature θi [°C]
     * @param end permissible final temperature θf [°C]
     * @return current [A]
     */
    public static double permissibleCurrent(
            ThermalConstants metal, double area, double duration, double initial, double end) {
        checkArea(area);
        checkDuration(duration);
        return factor(metal, initial, end) * area / Math.sqrt(duration);
    }

    /**
     * The time that a current needs to reach a temperature.
     *
     * @param metal constants of the metal
     * @param area area S [m²], &gt; 0
     * @param current r.m.s. current [A], &gt; 0
     * @param initial initial temperature θi [°C]
     * @param end temperature to be reached [°C]
     * @return time [s]
     */
    public static double duration(ThermalConstants metal, double area, double current, double initial, double end) {
        checkArea(area);
        if (!(current > 0)) {
            throw new IllegalArgumentException("current must be > 0 A; have " + current);
        }
        double ratio = factor(metal, initial, end) * area / current;
        return ratio * ratio;
    }

    /**
     * The factor Kf of IEEE Std 80 eq. 42, by which area = current · Kf · √duration.
     *
     * @param metal constants of the metal
     * @param ambient initial temperature Ta [°C], 40 °C in the printed table 2
     * @param maximum maximum temperature Tm [°C]
     * @return Kf in the printed unit, kcmil/(kA·√s)
     */
    public static double ieeeFactor(ThermalConstants metal, double ambient, double maximum) {
        return 1e3 / (factor(metal, ambient, maximum) * KCMIL);
    }

    private static void checkTemperature(ThermalConstants metal, double initial) {
        if (!(initial > -metal.beta() && initial < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "initial temperature must be above " + -metal.beta() + " °C; have " + initial);
        }
    }

    private static void checkArea(double area) {
        if (!(area > 0 && area < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("conductor area must be > 0 m²; have " + area);
        }
    }

    private static void checkJouleIntegral(double jouleIntegral) {
        if (!(jouleIntegral >= 0 && jouleIntegral < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("joule integral must be >= 0 A²s and finite; have " + jouleIntegral);
        }
    }

    private static void checkDuration(double duration) {
        if (!(duration > 0 && duration < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("duration must be > 0 s and finite; have " + duration);
        }
    }
}
