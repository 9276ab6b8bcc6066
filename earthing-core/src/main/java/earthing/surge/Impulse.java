package earthing.surge;

import earthing.network.Wave;

/**
 * A unidirectional impulse of current [A] or voltage [V] that starts at t = 0. The characteristic times follow the
 * standards' definitions, which differ for currents (10 % and 90 %) and voltages (30 % and 90 %).
 */
public sealed interface Impulse extends Wave
        permits PowerExponential, Heidler, DoubleExponential, ConcaveFront, SampledImpulse {

    /**
     * Rate of change.
     *
     * @param time time from the start [s]
     * @return di/dt [A/s] or dv/dt [V/s]; at a bend the value just after it
     */
    double rate(double time);

    /**
     * A time that is long enough for the tail to have died away to below 1e-6 of the peak, or the last sample.
     *
     * @return time [s]
     */
    double duration();

    /**
     * A time of the order of the front, from which searches start.
     *
     * @return time [s]
     */
    double frontScale();

    /**
     * The same shape multiplied.
     *
     * @param factor factor above 0
     * @return the impulse with its values multiplied
     */
    Impulse scaled(double factor);

    /**
     * The same shape brought to a peak.
     *
     * @param peak wanted peak [A] or [V], above 0
     * @return the scaled impulse
     */
    default Impulse withPeak(double peak) {
        if (!(peak > 0) || !Double.isFinite(peak)) {
            throw new IllegalArgumentException("peak must be > 0; have " + peak);
        }
        return scaled(peak / shape().peak());
    }

    /**
     * Peak, charge, specific energy and the virtual times.
     *
     * @return the parameters, computed from the shape
     */
    default ImpulseParameters shape() {
        return ImpulseParameters.of(this);
    }
}
