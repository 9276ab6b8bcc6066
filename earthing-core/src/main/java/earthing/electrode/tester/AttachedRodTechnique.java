package earthing.electrode.tester;

import earthing.quantity.Source;

/**
 * Electrode measured while it stays connected: the voltage of the tester over the current that a clamp finds in the
 * electrode itself, not the current of the tester, which the other paths share.
 */
public final class AttachedRodTechnique {

    /** Source of the method. */
    public static final Source SOURCE = Source.publication(
            "Getting Down to Earth, handbook on earth testing", "attached rod technique, p. 55", Source.Status.READ);

    private AttachedRodTechnique() {}

    /**
     * Resistance of the electrode.
     *
     * @param voltage voltage between electrode and potential probe [V], &gt; 0
     * @param current current in the electrode [A], &gt; 0
     * @return resistance [Ω]
     */
    public static double resistance(double voltage, double current) {
        if (!(voltage > 0) || !(current > 0)) {
            throw new IllegalArgumentException(
                    "voltage and current in the electrode must be > 0; have " + voltage + " V, " + current + " A");
        }
        return voltage / current;
    }
}
