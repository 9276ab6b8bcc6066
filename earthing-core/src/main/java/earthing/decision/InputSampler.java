package earthing.decision;

import earthing.site.InputCorrelation;
import earthing.site.Site;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Draws values of the bounded inputs. Each sample has a generator of its own, made from seed and number, so that it does not
 * depend on which thread draws it. Correlated inputs are joined by a normal copula: a rank correlation r_s belongs to normal
 * variables of correlation 2·sin(π·r_s/6) (Pearson 1907, exact for normal variables).
 */
final class InputSampler {

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final List<SpreadInput> inputs;
    private final long seed;
    private final RealMatrix factor;

    InputSampler(Site site, List<SpreadInput> inputs, long seed) {
        this.inputs = inputs;
        this.seed = seed;
        int n = inputs.size();
        double[][] correlation = new double[n][n];
        for (int i = 0; i < n; i++) {
            correlation[i][i] = 1;
        }
        if (site.uncertainty() != null) {
            for (InputCorrelation pair : site.uncertainty().correlations()) {
                int one = index(site, pair.one());
                int other = index(site, pair.other());
                double normal = 2 * Math.sin(Math.PI / 6 * pair.rank().nominal());
                correlation[one][other] = normal;
                correlation[other][one] = normal;
            }
        }
        try {
            factor = new CholeskyDecomposition(new Array2DRowRealMatrix(correlation, false)).getL();
        } catch (NonPositiveDefiniteMatrixException e) {
            throw new IllegalArgumentException(
                    "uncertainty.correlations: no inputs can go together like this; some pair"
                            + " contradicts the others, bring their ranks nearer to 0");
        }
    }

    private int index(Site site, String key) {
        for (SpreadInput input : inputs) {
            if (input.isNamed(site, key)) {
                return input.number();
            }
        }
        throw new IllegalArgumentException("uncertainty.correlations: no bounded input is named " + key);
    }

    private RandomGenerator generator(int sample, int stream) {
        return new Well19937c(new int[] {(int) (seed >>> 32), (int) seed, sample, stream});
    }

    /** Values of a sample from the distributions [SI]. */
    double[] sample(int sample) {
        RandomGenerator random = generator(sample, 0);
        double[] independent = new double[inputs.size()];
        for (int i = 0; i < independent.length; i++) {
            independent[i] = random.nextGaussian();
        }
        double[] joined = factor.operate(independent);
        double[] values = new double[joined.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = inputs.get(i).quantile(inside(NORMAL.cumulativeProbability(joined[i])));
        }
        return values;
    }

    /** Values of a point anywhere within low and high, whatever the distributions [SI]; on a logarithmic scale where it can be. */
    double[] within(int point) {
        RandomGenerator random = generator(point, 1);
        double[] values = new double[inputs.size()];
        for (int i = 0; i < values.length; i++) {
            SpreadInput input = inputs.get(i);
            double part = random.nextDouble();
            values[i] = input.low() > 0
                    ? Math.min(input.high(), input.low() * Math.pow(input.high() / input.low(), part))
                    : input.low() + part * (input.high() - input.low());
        }
        return values;
    }

    /** Low or high of each input at random [SI]. */
    double[] corner(int point) {
        RandomGenerator random = generator(point, 2);
        double[] values = new double[inputs.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] =
                    random.nextBoolean() ? inputs.get(i).high() : inputs.get(i).low();
        }
        return values;
    }

    /** A part that has a quantile even where the normal distribution ends for a double. */
    private static double inside(double part) {
        return Math.min(1 - 1e-16, Math.max(1e-300, part));
    }
}
