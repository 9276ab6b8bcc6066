package earthing.surge;

import earthing.quantity.Source;

/**
 * Margin of an insulation over the protective level of an arrester with its leads: (withstand / level − 1). Only leads
 * in series with the arrester and parallel with the insulation count; the down-lead below the tank bond does not.
 */
public final class ProtectiveMargin {

    /** Source of the two margins and the 20 % that is asked of them. */
    public static final Source SOURCE =
            Source.standard("IEEE C62.22-2009", "protective margins PM L1 and PM L2, 20 %", Source.Status.FROM_MEMORY);

    /** Source of the separation formula. */
    public static final Source SEPARATION_SOURCE = Source.standard(
            "IEC 60071-2:2018 and IEC 60099-5:2018", "effect of the separation distance", Source.Status.FROM_MEMORY);

    /** Lead inductance of the trade's rule, 0.4 µH/ft [H/m]. */
    public static final double LEAD_INDUCTANCE = 0.4e-6 / 0.3048;

    /** Steepness of the trade's rule [A/s]. */
    public static final double LEAD_STEEPNESS = 4e9;

    /** Smallest margin asked for [1]. */
    public static final double REQUIRED = 0.20;

    private ProtectiveMargin() {}

    /**
     * Voltage along leads.
     *
     * @param inductance inductance of the leads [H], at least 0
     * @param steepness di/dt [A/s], at least 0
     * @return voltage [V]
     */
    public static double leadVoltage(double inductance, double steepness) {
        if (!(inductance >= 0) || !(steepness >= 0)) {
            throw new IllegalArgumentException(
                    "inductance and steepness must be >= 0; have " + inductance + ", " + steepness);
        }
        return inductance * steepness;
    }

    /**
     * A margin.
     *
     * @param withstand withstand of the insulation [V]: chopped-wave for the front of the wave, BIL for the lightning
     *     level
     * @param protectiveLevel front-of-wave or lightning protective level of the arrester [V], above 0
     * @param leadVoltage voltage along its leads [V], at least 0
     * @return margin as a ratio, 0.2 for 20 %
     */
    public static double margin(double withstand, double protectiveLevel, double leadVoltage) {
        if (!(withstand > 0) || !(protectiveLevel > 0) || !(leadVoltage >= 0)) {
            throw new IllegalArgumentException("withstand and level must be > 0 V and the lead voltage >= 0 V; have "
                    + withstand + ", " + protectiveLevel + ", " + leadVoltage);
        }
        return withstand / (protectiveLevel + leadVoltage) - 1;
    }

    /**
     * Chopped-wave withstand where none is declared: 1.15 times the BIL, usual for oil-filled equipment with short leads
     * and not granted for dry-type equipment.
     *
     * @param bil basic insulation level [V], above 0
     * @return chopped-wave withstand [V]
     */
    public static double choppedWaveWithstand(double bil) {
        if (!(bil > 0)) {
            throw new IllegalArgumentException("BIL must be > 0 V; have " + bil);
        }
        return 1.15 * bil;
    }

    /**
     * Voltage at equipment some way from its arrester: U = Upl + 2 S L/v, at most 2 Upl.
     *
     * @param level protective level Upl [V], above 0
     * @param steepness S of the arriving voltage [V/s], at least 0
     * @param distance L [m], at least 0
     * @param speed v of the wave [m/s], above 0
     * @return voltage [V]
     */
    public static double atDistance(double level, double steepness, double distance, double speed) {
        if (!(level > 0) || !(steepness >= 0) || !(distance >= 0) || !(speed > 0)) {
            throw new IllegalArgumentException("level and speed must be > 0, steepness and distance >= 0; have " + level
                    + ", " + speed + ", " + steepness + ", " + distance);
        }
        return Math.min(2 * level, level + 2 * steepness * distance / speed);
    }

    /**
     * The distance at which {@link #atDistance} reaches a voltage.
     *
     * @param level protective level Upl [V], above 0
     * @param steepness S [V/s], above 0
     * @param admitted voltage that may be reached [V], from the level to below twice the level
     * @param speed v [m/s], above 0
     * @return distance [m]
     */
    public static double longestDistance(double level, double steepness, double admitted, double speed) {
        if (!(level > 0) || !(steepness > 0) || !(speed > 0) || !(admitted >= level && admitted < 2 * level)) {
            throw new IllegalArgumentException(
                    "admitted voltage must lie from the level to below twice the level; have " + admitted
                            + " V against " + level + " V");
        }
        return (admitted - level) * speed / (2 * steepness);
    }
}
