package earthing.surge;

import earthing.quantity.Source;

/**
 * The concave-front current of a stroke: {@code A t + B t^n} up to 90 % of the peak, where it is steepest, then a sum of
 * two exponentials. Value and slope are continuous there.
 *
 * @param peak nominal peak I [A], above 0; the true peak lies up to about 1 % below
 * @param front virtual front time t_f = (t90 − t30)/0.6 [s], above 0
 * @param steepness largest steepness S_m [A/s]; S_m t_f / I must be at least 1
 * @param half time to half value t_h [s], longer than the front
 */
public record ConcaveFront(double peak, double front, double steepness, double half) implements Impulse {

    /** Source of the equations. */
    public static final Source SOURCE = Source.publication(
            "CIGRE TB 63, Guide to procedures for estimating the lightning performance of transmission lines, 1991",
            "appendix, concave-front current",
            Source.Status.FROM_MEMORY);

    /**
     * Refuses values outside the stated ranges.
     *
     * @param peak nominal peak I [A], above 0; the true peak lies up to about 1 % below
     * @param front virtual front time t_f = (t90 − t30)/0.6 [s], above 0
     * @param steepness largest steepness S_m [A/s]; S_m t_f / I must be at least 1
     * @param half time to half value t_h [s], longer than the front
     */
    public ConcaveFront {
        if (!(peak > 0) || !(front > 0) || !(steepness > 0) || !(half > front) || !Double.isFinite(half)) {
            throw new IllegalArgumentException("peak, front, steepness must be > 0 and the half-value time longer than"
                    + " the front; have " + peak + ", " + front + ", " + steepness + ", " + half);
        }
        if (!(steepness * front / peak >= 1) || !(steepness * front / peak < 100)) {
            throw new IllegalArgumentException("steepness × front / peak must be in [1, 100) for a concave front; have "
                    + steepness * front / peak);
        }
    }

    /**
     * Median first negative stroke: 31.1 kA, 3.83 µs, 24.3 kA/µs, 77.5 µs.
     *
     * @return the impulse
     */
    public static ConcaveFront medianFirst() {
        return new ConcaveFront(31.1e3, 3.83e-6, 24.3e9, 77.5e-6);
    }

    /**
     * Median subsequent negative stroke: 12.3 kA, 0.67 µs, 39.9 kA/µs, 30.2 µs.
     *
     * @return the impulse
     */
    public static ConcaveFront medianSubsequent() {
        return new ConcaveFront(12.3e3, 0.67e-6, 39.9e9, 30.2e-6);
    }

    /**
     * S_N = S_m t_f / I.
     *
     * @return normalised steepness
     */
    public double normalisedSteepness() {
        return steepness * front / peak;
    }

    /**
     * n = 1 + 2 (S_N − 1)(2 + 1/S_N).
     *
     * @return exponent of the front
     */
    public double exponent() {
        double s = normalisedSteepness();
        return 1 + 2 * (s - 1) * (2 + 1 / s);
    }

    /**
     * t_n = 0.6 t_f · 3 S_N²/(1 + S_N²), when 90 % of the peak is reached.
     *
     * @return time [s]
     */
    public double joinTime() {
        double s2 = normalisedSteepness() * normalisedSteepness();
        return 0.6 * front * 3 * s2 / (1 + s2);
    }

    /**
     * A = (0.9 I n/t_n − S_m)/(n − 1).
     *
     * @return linear coefficient of the front [A/s]
     */
    public double linearCoefficient() {
        double n = exponent();
        return n == 1 ? steepness : (0.9 * peak * n / joinTime() - steepness) / (n - 1);
    }

    /** B t_n^n, the power part at the join; B itself may lie far outside the range of numbers. */
    private double powerPart() {
        return 0.9 * peak - linearCoefficient() * joinTime();
    }

    /**
     * t_1 = (t_h − t_n)/ln 2.
     *
     * @return time constant of the tail [s]
     */
    public double slowTail() {
        return (half - joinTime()) / Math.log(2);
    }

    /**
     * t_2 = 0.1 I/S_m.
     *
     * @return time constant of the rounding at the peak [s]
     */
    public double fastTail() {
        return 0.1 * peak / steepness;
    }

    private double slowAmplitude() {
        double t1 = slowTail();
        double t2 = fastTail();
        return t1 * t2 / (t1 - t2) * (steepness + 0.9 * peak / t2);
    }

    private double fastAmplitude() {
        double t1 = slowTail();
        double t2 = fastTail();
        return t1 * t2 / (t1 - t2) * (steepness + 0.9 * peak / t1);
    }

    @Override
    public double at(double time) {
        if (!(time > 0)) {
            return 0;
        }
        double tn = joinTime();
        if (time <= tn) {
            return linearCoefficient() * time + powerPart() * Math.pow(time / tn, exponent());
        }
        double after = time - tn;
        return slowAmplitude() * Math.exp(-after / slowTail()) - fastAmplitude() * Math.exp(-after / fastTail());
    }

    @Override
    public double rate(double time) {
        if (!(time >= 0)) {
            return 0;
        }
        double tn = joinTime();
        if (time <= tn) {
            return linearCoefficient() + exponent() * powerPart() / tn * Math.pow(time / tn, exponent() - 1);
        }
        double after = time - tn;
        return -slowAmplitude() / slowTail() * Math.exp(-after / slowTail())
                + fastAmplitude() / fastTail() * Math.exp(-after / fastTail());
    }

    @Override
    public double duration() {
        return joinTime() + 20 * slowTail();
    }

    @Override
    public double frontScale() {
        return joinTime();
    }

    @Override
    public ConcaveFront scaled(double factor) {
        return new ConcaveFront(peak * factor, front, steepness * factor, half);
    }
}
