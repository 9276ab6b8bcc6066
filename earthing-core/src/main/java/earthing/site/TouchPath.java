package earthing.site;

/** Way of the current through a person who touches something. */
public enum TouchPath {
    /** Left hand to both feet. */
    LEFT_HAND_TO_FEET,
    /** Right hand to both feet. */
    RIGHT_HAND_TO_FEET,
    /** Both hands to both feet. */
    BOTH_HANDS_TO_FEET,
    /** Left hand to one foot. */
    LEFT_HAND_TO_FOOT,
    /** Right hand to one foot. */
    RIGHT_HAND_TO_FOOT
}
