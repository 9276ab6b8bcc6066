package earthing.soil;

import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Linear digital filter for the readings of one survey: ρa = ρ1 (1 + Σ w_m E(λ_m)) with E = T/ρ1 − 1 sampled at wave
 * numbers common to all readings, so that a change of the ground costs one sweep of the recursion.
 *
 * <p>E is a sum of exponentials exp(−λz), z ≥ 2 h1, whose readings are known in closed form; the weights are the least
 * squares that bring these back. Error below 1e-4 for resistivities within 1000:1 and a first layer not thinner than
 * {@link #thinnest}, found by comparison with the quadrature of {@link SurfacePotential}. Buried points give the
 * further factor cosh²(λb), and are right while the first layer reaches below them.
 */
final class SoundingFilter {

    /** Ten samples a decade: an exponential over ln λ has no spectrum left beyond the Nyquist limit. */
    private static final int SAMPLES_A_DECADE = 10;

    private static final int EXPONENTS_A_DECADE = 12;
    private static final double FIRST_SAMPLE = 0.03;
    private static final double LAST_SAMPLE = 20;
    private static final double LONGEST_EXPONENT = 300;
    private static final double THINNEST = 0.1;
    /** Keeps the weights of the ill-conditioned fit near 1 in size. */
    private static final double DAMPING = 1e-10;

    private final double[] lambda;
    private final double[][] weight;
    private final double thinnest;

    private SoundingFilter(double[] lambda, double[][] weight, double thinnest) {
        this.lambda = lambda;
        this.weight = weight;
        this.thinnest = thinnest;
    }

    static SoundingFilter of(List<Reading> readings) {
        double shortest = Double.POSITIVE_INFINITY;
        double longest = 0;
        double deepest = 0;
        for (Reading reading : readings) {
            if (!(reading.array() instanceof Wenner) && !(reading.array() instanceof Schlumberger)) {
                throw new IllegalArgumentException("readings of one sounding must be of one kind of array");
            }
            shortest = Math.min(shortest, innerDistance(reading.array()));
            longest = Math.max(longest, outerDistance(reading.array()));
            deepest = Math.max(deepest, depth(reading.array()));
        }
        double thinnest = Math.max(THINNEST * shortest, deepest);
        double[] lambda = progression(FIRST_SAMPLE / longest, LAST_SAMPLE / shortest, SAMPLES_A_DECADE);
        double[] exponent = progression(2 * thinnest, LONGEST_EXPONENT * longest, EXPONENTS_A_DECADE);
        DMatrixRMaj a = new DMatrixRMaj(exponent.length + lambda.length, lambda.length);
        DMatrixRMaj b = new DMatrixRMaj(exponent.length + lambda.length, readings.size());
        for (int k = 0; k < exponent.length; k++) {
            for (int m = 0; m < lambda.length; m++) {
                a.set(k, m, Math.exp(-exponent[k] * lambda[m]));
            }
            for (int i = 0; i < readings.size(); i++) {
                b.set(k, i, reading(readings.get(i).array(), exponent[k]));
            }
        }
        for (int m = 0; m < lambda.length; m++) {
            a.set(exponent.length + m, m, DAMPING);
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.leastSquares(a.numRows, a.numCols);
        if (!solver.setA(a)) {
            throw new IllegalStateException("the filter of a survey has no solution");
        }
        DMatrixRMaj x = new DMatrixRMaj(lambda.length, readings.size());
        solver.solve(b, x);
        double[][] weight = new double[readings.size()][lambda.length];
        for (int i = 0; i < readings.size(); i++) {
            for (int m = 0; m < lambda.length; m++) {
                weight[i][m] = x.get(m, i);
            }
        }
        return new SoundingFilter(lambda, weight, thinnest);
    }

    private static double[] progression(double from, double to, int aDecade) {
        int count = (int) Math.ceil(Math.log10(to / from) * aDecade) + 1;
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = from * Math.pow(10, (double) i / aDecade);
        }
        return values;
    }

    private static double innerDistance(ElectrodeArray array) {
        if (array instanceof Schlumberger s) {
            return s.halfCurrent() - s.halfPotential();
        }
        return array.spread() / 3;
    }

    private static double outerDistance(ElectrodeArray array) {
        if (array instanceof Schlumberger s) {
            return s.halfCurrent() + s.halfPotential();
        }
        return array.spread() * 2 / 3;
    }

    private static double depth(ElectrodeArray array) {
        return array instanceof Wenner wenner ? wenner.probeDepth() : 0;
    }

    /** What an array reads of E = exp(−λz), over ρ1. */
    private static double reading(ElectrodeArray array, double z) {
        double b = depth(array);
        return array.geometricFactor()
                / Math.PI
                * (potential(innerDistance(array), z, b) - potential(outerDistance(array), z, b));
    }

    private static double potential(double r, double z, double b) {
        double middle = 1 / Math.hypot(r, z);
        return b == 0 ? middle : 0.5 * middle + 0.25 * (1 / Math.hypot(r, z - 2 * b) + 1 / Math.hypot(r, z + 2 * b));
    }

    int samples() {
        return lambda.length;
    }

    double lambda(int sample) {
        return lambda[sample];
    }

    double weight(int reading, int sample) {
        return weight[reading][sample];
    }

    /** The thinnest first layer for which the filter was made [m]. */
    double thinnest() {
        return thinnest;
    }

    /** Apparent resistivity of every reading over a model [Ω·m]. */
    double[] apparentResistivities(SoilModel soil) {
        ResistivityTransform transform = ResistivityTransform.of(soil);
        double[] rho = new double[weight.length];
        for (int m = 0; m < lambda.length; m++) {
            double excess = transform.excess(lambda[m]);
            for (int i = 0; i < rho.length; i++) {
                rho[i] += weight[i][m] * excess;
            }
        }
        for (int i = 0; i < rho.length; i++) {
            rho[i] = soil.resistivity(0) * (1 + rho[i]);
        }
        return rho;
    }
}
