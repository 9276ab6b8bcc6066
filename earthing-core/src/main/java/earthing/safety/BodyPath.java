package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/**
 * Path of current through the body: the heart-current factor F, by which a current on this path does as much harm as F
 * times as much from left hand to feet, and the share of the hand-to-hand impedance on the path.
 */
public enum BodyPath {
    /** Left hand to both feet, the reference. */
    LEFT_HAND_TO_FEET("left hand to both feet", 1.0, 0.75),
    /** Right hand to both feet. */
    RIGHT_HAND_TO_FEET("right hand to both feet", 0.8, 0.75),
    /** Both hands to both feet. */
    BOTH_HANDS_TO_FEET("both hands to both feet", 1.0, 0.5),
    /** Left hand to one foot. */
    LEFT_HAND_TO_FOOT("left hand to one foot", 1.0, 0.8),
    /** Right hand to one foot. */
    RIGHT_HAND_TO_FOOT("right hand to one foot", 0.8, 0.8),
    /** Hand to hand. */
    HAND_TO_HAND("left hand to right hand", 0.4, 1.0),
    /** Foot to foot; the share is twice that from trunk to foot. */
    FOOT_TO_FOOT("left foot to right foot", 0.04, 0.6),
    /** Left hand to chest. */
    LEFT_HAND_TO_CHEST("left hand to chest", 1.5, 0.5),
    /** Right hand to chest. */
    RIGHT_HAND_TO_CHEST("right hand to chest", 1.3, 0.5),
    /** Left hand to back. */
    LEFT_HAND_TO_BACK("left hand to back", 0.7, 0.5),
    /** Right hand to back. */
    RIGHT_HAND_TO_BACK("right hand to back", 0.3, 0.5),
    /** Hand or hands to seat, one hand reckoned. */
    HAND_TO_SEAT("hand to seat", 0.7, 0.5);

    /** Where the heart-current factors stand. */
    public static final Source HEART_CURRENT = Source.standard(
            "IEC 60479-1",
            "table 12, as printed in Mitolo, Electrical Safety of Low-Voltage Systems, 2009, table 5.1",
            Status.READ);

    /** Where the shares of impedance stand. */
    public static final Source IMPEDANCE_SHARE = Source.publication(
            "Mitolo, Electrical Safety of Low-Voltage Systems, 2009",
            "example 5.2: hand to foot 0.8, hand to trunk 0.5, trunk to foot 0.3; to both feet by EN 50522 annex B"
                    + " (from memory)",
            Status.READ);

    private final String label;
    private final double heart;
    private final double share;

    BodyPath(String label, double heart, double share) {
        this.label = label;
        this.heart = heart;
        this.share = share;
    }

    /**
     * Words for the report.
     *
     * @return readable name
     */
    public String label() {
        return label;
    }

    /**
     * The heart-current factor F.
     *
     * @return factor, 1 for left hand to feet
     */
    public double heartCurrentFactor() {
        return heart;
    }

    /**
     * The share of the hand-to-hand impedance.
     *
     * @return share, 1 for hand to hand
     */
    public double impedanceShare() {
        return share;
    }

    /**
     * The current from left hand to feet that does the same harm.
     *
     * @param current current on this path [A], ≥ 0
     * @return F times the current [A]
     */
    public double referenceCurrent(double current) {
        if (!(current >= 0)) {
            throw new IllegalArgumentException("body current must be >= 0 A; have " + current);
        }
        return heart * current;
    }

    /**
     * The current on this path that does the same harm as a current from left hand to feet.
     *
     * @param reference current from left hand to feet [A], ≥ 0
     * @return current on this path [A]
     */
    public double pathCurrent(double reference) {
        if (!(reference >= 0)) {
            throw new IllegalArgumentException("body current must be >= 0 A; have " + reference);
        }
        return reference / heart;
    }
}
