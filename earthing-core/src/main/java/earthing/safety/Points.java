package earthing.safety;

import java.util.List;

/**
 * Printed points over duration, durations rising, values never rising.
 *
 * @param rule how values between points are found
 * @param durations durations [s], rising, &gt; 0
 * @param values values, &gt; 0, not rising
 */
public record Points(Interpolation rule, List<Double> durations, List<Double> values) {

    /**
     * Refuses points out of order.
     *
     * @param rule how values between points are found
     * @param durations durations [s], rising, &gt; 0
     * @param values values, &gt; 0, not rising
     */
    public Points {
        durations = List.copyOf(durations);
        values = List.copyOf(values);
        if (durations.size() != values.size() || durations.size() < 2) {
            throw new IllegalArgumentException("a curve needs at least two points, each with duration and value; have "
                    + durations.size() + " durations and " + values.size() + " values");
        }
        for (int i = 0; i < durations.size(); i++) {
            if (!(durations.get(i) > 0 && durations.get(i) < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("durations of a curve must be > 0 s; have " + durations.get(i));
            }
            if (!(values.get(i) > 0 && values.get(i) < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("values of a curve must be > 0; have " + values.get(i));
            }
            if (i > 0 && !(durations.get(i) > durations.get(i - 1))) {
                throw new IllegalArgumentException(
                        "durations of a curve must rise; have " + durations.get(i - 1) + " then " + durations.get(i));
            }
            if (i > 0 && !(values.get(i) <= values.get(i - 1))) {
                throw new IllegalArgumentException("values of a curve must not rise with duration; have "
                        + values.get(i - 1) + " then " + values.get(i));
            }
        }
    }

    /**
     * Points given as pairs.
     *
     * @param rule how values between points are found
     * @param pairs duration, value, duration, value, …
     * @return the points
     */
    public static Points of(Interpolation rule, double... pairs) {
        if (pairs.length % 2 != 0) {
            throw new IllegalArgumentException("points come in pairs; have " + pairs.length + " numbers");
        }
        List<Double> durations = new java.util.ArrayList<>();
        List<Double> values = new java.util.ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            durations.add(pairs[i]);
            values.add(pairs[i + 1]);
        }
        return new Points(rule, durations, values);
    }

    /**
     * Shortest printed duration.
     *
     * @return duration [s]
     */
    public double first() {
        return durations.get(0);
    }

    /**
     * Longest printed duration.
     *
     * @return duration [s]
     */
    public double last() {
        return durations.get(durations.size() - 1);
    }

    /**
     * Value at a duration; before the first point the first value holds.
     *
     * @param duration duration [s], up to the last point
     * @return the value
     * @throws IllegalArgumentException beyond the last point
     */
    public double at(double duration) {
        if (!(duration > 0 && duration <= last())) {
            throw new IllegalArgumentException(
                    "duration must be > 0 s and within the curve, up to " + last() + " s; have " + duration);
        }
        if (duration <= first()) {
            return values.get(0);
        }
        int i = 1;
        while (durations.get(i) < duration) {
            i++;
        }
        if (durations.get(i) == duration) {
            return values.get(i);
        }
        return rule.between(duration, durations.get(i - 1), values.get(i - 1), durations.get(i), values.get(i));
    }

    /**
     * The same points read by another rule.
     *
     * @param other the rule
     * @return the points
     */
    public Points with(Interpolation other) {
        return new Points(other, durations, values);
    }
}
