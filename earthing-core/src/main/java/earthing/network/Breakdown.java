package earthing.network;

/** The voltage at which a gap breaks down, as a function of the time since the surge began. */
public sealed interface Breakdown {

    /**
     * The strength of the gap.
     *
     * @param time time since the beginning of the solution [s], not negative
     * @return the voltage, of either sign, that closes the gap at that time [V], above 0, may be infinite
     */
    double strength(double time);

    /**
     * The shortest time for which the law is established.
     *
     * @return time [s]
     */
    double shortestTime();

    /**
     * The longest time for which the law is established.
     *
     * @return time [s]; infinite if there is no such bound
     */
    double longestTime();

    /**
     * The strength as an expression of a general-purpose circuit simulator in the variable {@code time}.
     *
     * @return the expression [V]
     */
    String expression();

    /**
     * The same strength at any time: the gap has no time lag.
     *
     * @param voltage strength [V], above 0
     */
    record Level(double voltage) implements Breakdown {

        /**
         * Refuses a strength that is not above 0.
         *
         * @param voltage strength [V], above 0
         */
        public Level {
            requireAboveZero(voltage, "strength of a gap");
        }

        @Override
        public double strength(double time) {
            return voltage;
        }

        @Override
        public String expression() {
            return Double.toString(voltage);
        }

        @Override
        public double shortestTime() {
            return 0;
        }

        @Override
        public double longestTime() {
            return Double.POSITIVE_INFINITY;
        }
    }

    /**
     * A volt–time curve {@code U = s (K1 + K2 / t^0.75)} with s the distance: the shorter the time, the more the gap
     * bears. Source: M. Darveniza, F. Popolansky, E. R. Whitehead, Lightning protection of UHV lines, Electra 41 (1975)
     * 39-69, also in IEEE Std 1243, from memory: K1 = 400 kV/m, K2 = 710 kV/m·µs^0.75, for full standard impulses,
     * 0.5 µs to 16 µs.
     *
     * @param distance length of the gap [m], above 0
     */
    record VoltTime(double distance) implements Breakdown {

        private static final double LASTING = 400e3;
        private static final double SHORT_TIME = 710e3;
        private static final double MICROSECOND = 1e-6;
        private static final double EXPONENT = 0.75;

        /**
         * Refuses a distance that is not above 0.
         *
         * @param distance length of the gap [m], above 0
         */
        public VoltTime {
            requireAboveZero(distance, "length of a gap");
        }

        @Override
        public double strength(double time) {
            return time > 0
                    ? distance * (LASTING + SHORT_TIME / Math.pow(time / MICROSECOND, EXPONENT))
                    : Double.POSITIVE_INFINITY;
        }

        @Override
        public String expression() {
            // At time 0 the power would be infinite; by a femtosecond later no gap of the pole has struck.
            return distance + "*(" + LASTING + "+" + SHORT_TIME + "*pow(max(time,1e-15)/" + MICROSECOND + ",-"
                    + EXPONENT + "))";
        }

        @Override
        public double shortestTime() {
            return 0.5 * MICROSECOND;
        }

        @Override
        public double longestTime() {
            return 16 * MICROSECOND;
        }
    }

    private static void requireAboveZero(double value, String what) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be > 0 and finite; have " + value);
        }
    }
}
