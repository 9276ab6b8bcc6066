package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/**
 * How likely a person is in contact while a fault stands: two intervals at random times overlap. This is information for
 * an owner who works with targets of risk; it replaces no permissible voltage.
 */
public final class Coincidence {

    /** The equation. */
    public static final Source SOURCE = Source.publication(
            "Energy Networks Association, EG-0 Power System Earthing Guide, 2010", "coincidence", Status.FROM_MEMORY);

    /** Target of the guide for one person [1/a], as printed. */
    public static final SourcedValue TARGET = new SourcedValue(
            1e-6,
            Source.publication(
                    "Energy Networks Association, EG-0 Power System Earthing Guide, 2010", "appendix C", Status.READ));

    private static final double SECONDS_A_YEAR = 365 * 24 * 3600.0;

    private Coincidence() {}

    /**
     * Expected coincidences a year: f p (tf + tp)/(seconds of a year).
     *
     * @param faults faults a year that raise the place [1/a], ≥ 0
     * @param contacts contacts a year [1/a], ≥ 0
     * @param faultDuration duration of a fault [s], ≥ 0
     * @param contactDuration duration of a contact [s], ≥ 0
     * @return coincidences a year [1/a]
     * @throws IllegalArgumentException if the contacts or the faults would fill more than the year
     */
    public static double perYear(double faults, double contacts, double faultDuration, double contactDuration) {
        if (!(faults >= 0 && contacts >= 0 && faultDuration >= 0 && contactDuration >= 0)) {
            throw new IllegalArgumentException("rates and durations must be >= 0; have " + faults + ", " + contacts
                    + ", " + faultDuration + ", " + contactDuration);
        }
        if (!(contacts * (faultDuration + contactDuration) <= SECONDS_A_YEAR)) {
            throw new IllegalArgumentException("contacts of " + contacts + " a year and durations of " + faultDuration
                    + " and " + contactDuration + " s fill more than the year");
        }
        return faults * contacts * (faultDuration + contactDuration) / SECONDS_A_YEAR;
    }

    /**
     * The chance of fibrillation at which a number of coincidences just meets a target.
     *
     * @param target individual risk [1/a], &gt; 0
     * @param coincidences coincidences a year [1/a], &gt; 0
     * @return chance, above 1 where any touch may be fatal
     */
    public static double permissibleChance(double target, double coincidences) {
        if (!(target > 0 && coincidences > 0)) {
            throw new IllegalArgumentException(
                    "target and coincidences must be > 0 a year; have " + target + " and " + coincidences);
        }
        return target / coincidences;
    }
}
