package earthing.safety;

/** Between which parts of the body the voltage stands. */
public enum Contact {
    /** Touch: one hand or both, to the feet. */
    HAND_TO_FEET("hand to feet"),
    /** Touch between two earth systems within reach. */
    HAND_TO_HAND("hand to hand"),
    /** Step. */
    FOOT_TO_FOOT("foot to foot");

    private final String label;

    Contact(String label) {
        this.label = label;
    }

    /**
     * Words for the report.
     *
     * @return readable name
     */
    public String label() {
        return label;
    }
}
