package earthing.safety;

/** Body weights for which IEEE Std 80 prints tolerable currents. */
public enum BodyWeight {
    /** 50 kg: 0.116 A·√s. */
    KG_50("50 kg", 0.116),
    /** 70 kg: 0.157 A·√s. */
    KG_70("70 kg", 0.157);

    private final String label;
    private final double constant;

    BodyWeight(String label, double constant) {
        this.label = label;
        this.constant = constant;
    }

    /**
     * Words for the report.
     *
     * @return for example {@code 50 kg}
     */
    public String label() {
        return label;
    }

    /**
     * Tolerable body current, IEEE Std 80-2000 eq. 8 and 9 (from memory): constant/√t.
     *
     * @param duration duration of the shock [s], 0.03 to 3 s
     * @return current [A]
     */
    public double current(double duration) {
        if (!(duration >= Ieee80Curve.SHORTEST && duration <= Ieee80Curve.LONGEST)) {
            throw new IllegalArgumentException("the tolerable body current holds from " + Ieee80Curve.SHORTEST + " to "
                    + Ieee80Curve.LONGEST + " s; have " + duration);
        }
        return constant / Math.sqrt(duration);
    }
}
