package earthing.fault.clearing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Time against current of one protective element. */
public sealed interface Characteristic {

    /**
     * Smallest current that makes the element act.
     *
     * @return pickup [A]
     */
    double pickup();

    /**
     * Operating time of the element alone, without its breaker.
     *
     * @param current r.m.s. current [A], ≥ 0
     * @return time [s], empty when it never acts
     */
    OptionalDouble operatingTime(double current);

    /**
     * Currents at which the curve begins, bends or jumps, for sweeps that must not step over them.
     *
     * @return currents [A], ascending
     */
    List<Double> breakpoints();

    /**
     * Fixed time at or above pickup.
     *
     * @param pickup setting [A], &gt; 0
     * @param delay time [s], ≥ 0
     */
    record DefiniteTime(double pickup, double delay) implements Characteristic {

        /**
         * Refuses settings out of range.
         *
         * @param pickup setting [A], &gt; 0
         * @param delay time [s], ≥ 0
         */
        public DefiniteTime {
            requirePickup(pickup);
            requireTime("delay", delay);
        }

        @Override
        public OptionalDouble operatingTime(double current) {
            requireCurrent(current);
            return current >= pickup ? OptionalDouble.of(delay) : OptionalDouble.empty();
        }

        @Override
        public List<Double> breakpoints() {
            return List.of(pickup);
        }
    }

    /**
     * Inverse-time curve above pickup.
     *
     * @param pickup setting [A], &gt; 0
     * @param multiplier time multiplier or time dial [1], &gt; 0
     * @param curve the curve
     * @param operatesFrom multiple of pickup from which the element is declared to act [1], ≥ 1; relays do not
     *     promise to act just above pickup
     * @param ceiling multiple of pickup above which the time falls no further [1], above {@code operatesFrom};
     *     infinity if the curve goes on
     * @param minimumTime time below which the element does not go [s], ≥ 0
     */
    record InverseTime(
            double pickup,
            double multiplier,
            InverseCurve curve,
            double operatesFrom,
            double ceiling,
            double minimumTime)
            implements Characteristic {

        /** Multiple above which IEC 60255-151 lets the curve go flat, unless the maker states another. */
        public static final double USUAL_CEILING = 20;

        /**
         * Refuses settings out of range.
         *
         * @param pickup setting [A], &gt; 0
         * @param multiplier time multiplier or time dial [1], &gt; 0
         * @param curve the curve
         * @param operatesFrom multiple of pickup from which the element is declared to act [1], ≥ 1; relays do not
         *     promise to act just above pickup
         * @param ceiling multiple of pickup above which the time falls no further [1], above {@code operatesFrom};
         *     infinity if the curve goes on
         * @param minimumTime time below which the element does not go [s], ≥ 0
         */
        public InverseTime {
            requirePickup(pickup);
            if (!(multiplier > 0) || !Double.isFinite(multiplier)) {
                throw new IllegalArgumentException("time multiplier must be > 0; have " + multiplier);
            }
            if (!(operatesFrom >= 1) || !(ceiling > operatesFrom)) {
                throw new IllegalArgumentException("an inverse curve needs 1 <= first multiple < ceiling; have "
                        + operatesFrom + " and " + ceiling);
            }
            requireTime("minimum time", minimumTime);
        }

        /**
         * A curve that acts from just above pickup and goes flat at {@link #USUAL_CEILING}.
         *
         * @param pickup setting [A], &gt; 0
         * @param multiplier time multiplier or time dial [1], &gt; 0
         * @param curve the curve
         */
        public InverseTime(double pickup, double multiplier, InverseCurve curve) {
            this(pickup, multiplier, curve, 1, USUAL_CEILING, 0);
        }

        @Override
        public OptionalDouble operatingTime(double current) {
            requireCurrent(current);
            double multiple = current / pickup;
            // at M = 1 exactly the curve itself is infinite
            if (!(multiple > 1 && multiple >= operatesFrom)) {
                return OptionalDouble.empty();
            }
            double seconds = multiplier * curve.seconds(Math.min(multiple, ceiling));
            return OptionalDouble.of(Math.max(minimumTime, seconds));
        }

        @Override
        public List<Double> breakpoints() {
            List<Double> points = new ArrayList<>();
            points.add(pickup * operatesFrom);
            if (Double.isFinite(ceiling)) {
                points.add(pickup * ceiling);
            }
            return List.copyOf(points);
        }
    }

    /**
     * A curve given by points, as of a fuse or a maker's relay curve; straight between points on logarithmic axes of both
     * current and time. Below the first point it never acts; above the last the last time stands, up to the breaking
     * current, above which it does not clear.
     *
     * @param points points in order of rising current, times not rising, at least two
     * @param breakingCurrent largest current that it clears [A], not below the last point; infinite where none is stated
     */
    record Points(List<Point> points, double breakingCurrent) implements Characteristic {

        /**
         * One point of the curve.
         *
         * @param current current [A], &gt; 0
         * @param time total clearing time [s], &gt; 0
         */
        public record Point(double current, double time) {

            /**
             * Refuses points that have no place on logarithmic axes.
             *
             * @param current current [A], &gt; 0
             * @param time total clearing time [s], &gt; 0
             */
            public Point {
                if (!(current > 0 && time > 0) || !Double.isFinite(current) || !Double.isFinite(time)) {
                    throw new IllegalArgumentException(
                            "a curve point needs current and time > 0; have " + current + " A, " + time + " s");
                }
            }
        }

        /**
         * A curve without a breaking current.
         *
         * @param points points in order of rising current, times not rising, at least two
         */
        public Points(List<Point> points) {
            this(points, Double.POSITIVE_INFINITY);
        }

        /**
         * Refuses curves out of order.
         *
         * @param points points in order of rising current, times not rising, at least two
         * @param breakingCurrent largest current that it clears [A], not below the last point; infinite where none is
         *     stated
         */
        public Points {
            points = List.copyOf(points);
            if (points.size() < 2) {
                throw new IllegalArgumentException("a curve needs at least two points; have " + points.size());
            }
            for (int i = 1; i < points.size(); i++) {
                Point left = points.get(i - 1);
                Point right = points.get(i);
                if (!(right.current() > left.current() && right.time() <= left.time())) {
                    throw new IllegalArgumentException(
                            "curve points must rise in current and not in time; have " + left + " before " + right);
                }
            }
            if (!(breakingCurrent >= points.get(points.size() - 1).current())) {
                throw new IllegalArgumentException(
                        "the breaking current must not be below the last point; have " + breakingCurrent + " A");
            }
        }

        @Override
        public double pickup() {
            return points.get(0).current();
        }

        @Override
        public OptionalDouble operatingTime(double current) {
            requireCurrent(current);
            if (current < pickup() || current > breakingCurrent) {
                return OptionalDouble.empty();
            }
            for (int i = 1; i < points.size(); i++) {
                Point left = points.get(i - 1);
                Point right = points.get(i);
                if (current <= right.current()) {
                    double along = Math.log(current / left.current()) / Math.log(right.current() / left.current());
                    return OptionalDouble.of(left.time() * Math.pow(right.time() / left.time(), along));
                }
            }
            return OptionalDouble.of(points.get(points.size() - 1).time());
        }

        @Override
        public List<Double> breakpoints() {
            List<Double> bends =
                    new ArrayList<>(points.stream().map(Point::current).toList());
            if (Double.isFinite(breakingCurrent) && breakingCurrent > bends.get(bends.size() - 1)) {
                bends.add(breakingCurrent);
            }
            return List.copyOf(bends);
        }
    }

    private static void requireCurrent(double current) {
        if (!(current >= 0)) {
            throw new IllegalArgumentException("current must be >= 0 A; have " + current);
        }
    }

    private static void requirePickup(double pickup) {
        if (!(pickup > 0) || !Double.isFinite(pickup)) {
            throw new IllegalArgumentException("pickup must be > 0 A; have " + pickup);
        }
    }

    private static void requireTime(String what, double time) {
        if (!(time >= 0) || !Double.isFinite(time)) {
            throw new IllegalArgumentException(what + " must be >= 0 s; have " + time);
        }
    }
}
