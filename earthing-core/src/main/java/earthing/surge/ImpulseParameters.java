package earthing.surge;

import earthing.quantity.Source;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * What a standard states of an impulse, computed from its shape. Times are from t = 0 of the shape, but for the tail,
 * which counts from the virtual origin.
 *
 * @param peak largest value [A] or [V]
 * @param peakTime when [s]
 * @param steepest largest rate of change [A/s] or [V/s]
 * @param steepestTime when [s]
 * @param currentFront front of a current, 1.25 (t90 − t10) [s]
 * @param currentOrigin virtual origin of a current, t10 − 0.1 front [s]
 * @param currentTail time to half value of a current from its virtual origin [s]
 * @param voltageFront front of a voltage, (t90 − t30)/0.6 [s]
 * @param voltageOrigin virtual origin of a voltage, t30 − 0.3 front [s]
 * @param voltageTail time to half value of a voltage from its virtual origin [s]
 * @param width time above half the peak [s]
 * @param charge ∫ i dt [A·s] or [V·s]
 * @param specificEnergy ∫ i² dt [A²·s] or [V²·s]
 */
public record ImpulseParameters(
        double peak,
        double peakTime,
        double steepest,
        double steepestTime,
        double currentFront,
        double currentOrigin,
        double currentTail,
        double voltageFront,
        double voltageOrigin,
        double voltageTail,
        double width,
        double charge,
        double specificEnergy) {

    /** Source of the definitions of front, origin and tail. */
    public static final Source SOURCE = Source.standard(
            "IEC 60060-1:2010 and IEC 62475:2010",
            "front, virtual origin and time to half value of impulse voltages and currents",
            Source.Status.FROM_MEMORY);

    private static final GaussIntegrator GAUSS = new GaussIntegratorFactory().legendre(16);

    static ImpulseParameters of(Impulse impulse) {
        if (impulse instanceof SampledImpulse sampled) {
            return ofSamples(sampled);
        }
        double peakTime = maximum(impulse::at, impulse, impulse.duration());
        double peak = impulse.at(peakTime);
        double steepestTime = maximum(impulse::rate, impulse, peakTime);
        Integrals integrals = integrals(impulse, peakTime);
        return assemble(impulse, peak, peakTime, steepestTime, integrals);
    }

    private record Integrals(double charge, double energy) {}

    private static ImpulseParameters ofSamples(SampledImpulse impulse) {
        double peak = Double.NEGATIVE_INFINITY;
        double peakTime = 0;
        double steepest = Double.NEGATIVE_INFINITY;
        double steepestTime = 0;
        double charge = 0;
        double energy = 0;
        for (int k = 0; k < impulse.size(); k++) {
            double value = impulse.at(impulse.time(k));
            if (value > peak) {
                peak = value;
                peakTime = impulse.time(k);
            }
            if (k + 1 < impulse.size()) {
                double next = impulse.at(impulse.time(k + 1));
                double step = impulse.time(k + 1) - impulse.time(k);
                charge += 0.5 * (value + next) * step;
                energy += (value * value + value * next + next * next) / 3 * step;
                if ((next - value) / step > steepest) {
                    steepest = (next - value) / step;
                    steepestTime = impulse.time(k);
                }
            }
        }
        return assemble(impulse, peak, peakTime, steepestTime, new Integrals(charge, energy));
    }

    private static ImpulseParameters assemble(
            Impulse impulse, double peak, double peakTime, double steepestTime, Integrals integrals) {
        double t10 = rise(impulse, 0.1 * peak, peakTime);
        double t30 = rise(impulse, 0.3 * peak, peakTime);
        double t50 = rise(impulse, 0.5 * peak, peakTime);
        double t90 = rise(impulse, 0.9 * peak, peakTime);
        double half = fall(impulse, 0.5 * peak, peakTime);
        double currentFront = 1.25 * (t90 - t10);
        double currentOrigin = t10 - 0.1 * currentFront;
        double voltageFront = (t90 - t30) / 0.6;
        double voltageOrigin = t30 - 0.3 * voltageFront;
        return new ImpulseParameters(
                peak,
                peakTime,
                impulse.rate(steepestTime),
                steepestTime,
                currentFront,
                currentOrigin,
                half - currentOrigin,
                voltageFront,
                voltageOrigin,
                half - voltageOrigin,
                half - t50,
                integrals.charge(),
                integrals.energy());
    }

    /** Best of a logarithmic grid from far below the front to the end, then Brent's method about it. */
    private static double maximum(DoubleUnaryOperator f, Impulse impulse, double end) {
        int steps = 400;
        double begin = Math.min(impulse.frontScale(), end) * 1e-3;
        double ratio = Math.pow(end / begin, 1.0 / steps);
        double best = 0;
        for (int k = 0; k <= steps; k++) {
            double t = begin * Math.pow(ratio, k);
            if (f.applyAsDouble(t) > f.applyAsDouble(best)) {
                best = t;
            }
        }
        if (best == 0) {
            return 0;
        }
        double low = best / ratio;
        double high = Math.min(end, best * ratio);
        BrentOptimizer brent = new BrentOptimizer(1e-12, 1e-300);
        return brent.optimize(
                        new MaxEval(500),
                        new UnivariateObjectiveFunction(f::applyAsDouble),
                        GoalType.MAXIMIZE,
                        new SearchInterval(low, high))
                .getPoint();
    }

    private static double rise(Impulse impulse, double level, double peakTime) {
        return crossing(impulse, level, 0, peakTime);
    }

    private static double fall(Impulse impulse, double level, double peakTime) {
        double end = impulse.duration();
        return impulse.at(end) >= level ? Double.NaN : crossing(impulse, level, peakTime, end);
    }

    private static double crossing(Impulse impulse, double level, double from, double to) {
        if (impulse.at(from) >= level && from == 0) {
            return 0;
        }
        return new BrentSolver(1e-14, 1e-14 * to, 1e-300).solve(500, t -> impulse.at(t) - level, from, to);
    }

    /** Gauss quadrature on pieces that grow geometrically from the start; the shapes are smooth but at the joins. */
    private static Integrals integrals(Impulse impulse, double peakTime) {
        double end = 2 * impulse.duration();
        double join = impulse instanceof ConcaveFront concave ? concave.joinTime() : peakTime;
        double charge = 0;
        double energy = 0;
        int pieces = 64;
        double from = 0;
        for (int k = 1; k <= pieces; k++) {
            double to = join * k / pieces;
            charge += piece(impulse::at, from, to);
            energy += piece(t -> impulse.at(t) * impulse.at(t), from, to);
            from = to;
        }
        double width = 0.02 * impulse.frontScale();
        while (from < end) {
            double to = Math.min(end, from + width);
            charge += piece(impulse::at, from, to);
            energy += piece(t -> impulse.at(t) * impulse.at(t), from, to);
            from = to;
            width *= 1.1;
        }
        return new Integrals(charge, energy);
    }

    private static double piece(DoubleUnaryOperator f, double from, double to) {
        double half = 0.5 * (to - from);
        double mid = 0.5 * (to + from);
        return half * GAUSS.integrate(x -> f.applyAsDouble(mid + half * x));
    }
}
