package earthing.soil;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * The geometric series of images Σ kⁿ e^(−2nhλ), n = 0, 1, 2 …, of a two-layer ground with few terms: the first ones as
 * they are, the others gathered in blocks [N, 2N) whose powers are replaced by the Gauss quadrature of the discrete
 * measure |k|ⁿ. An image at depth 2nh acts through 1/√(r² + (2nh+ζ)²), which is analytic in n right of n = 1/2, so that
 * m points a block leave a relative error of about 5.8^(−2m) of the block, whatever r and ζ.
 */
final class GeometricImages {

    private static final int DIRECT = 8;
    private static final int POINTS = 6;
    private static final double NEGLIGIBLE = 1e-12;

    /**
     * One term.
     *
     * @param coefficient weight [-]
     * @param shift extra depth β [m]
     */
    record Term(double coefficient, double shift) {}

    private GeometricImages() {}

    /**
     * The terms of 1/(1 − k e^(−2λh)).
     *
     * @param k reflection coefficient [-], |k| &lt; 1
     * @param h thickness [m]
     * @return terms, their coefficients summing up to 1/(1 − k)
     */
    static List<Term> of(double k, double h) {
        List<Term> terms = new ArrayList<>();
        double power = 1;
        for (int n = 0; n < DIRECT; n++) {
            terms.add(new Term(power, 2 * n * h));
            power *= k;
        }
        double q = Math.abs(k);
        for (int start = DIRECT; Math.pow(q, start) > NEGLIGIBLE * (1 - q); start *= 2) {
            if (k > 0) {
                block(terms, q, h, start, 1, 1);
            } else if (k < 0) {
                block(terms, q, h, start, 2, 1);
                block(terms, q, h, start + 1, 2, -1);
            }
        }
        return terms;
    }

    /**
     * Bound on what the gathering changes.
     *
     * @param k reflection coefficient [-], |k| &lt; 1
     * @param h thickness [m]
     * @return greatest error of Σ c/√(r² + (β+ζ)²) for ζ ≥ −h [1/m]
     */
    static double bound(double k, double h) {
        double q = Math.abs(k);
        double gathered = Math.pow(q, DIRECT) / (1 - q);
        return (2 * Math.pow(3 + 2 * Math.sqrt(2), -2.0 * POINTS) * gathered + NEGLIGIBLE) / ((2 * DIRECT - 1) * h);
    }

    /** Block of the powers start, start + step, …, below twice the block's own start. */
    private static void block(List<Term> terms, double q, double h, int start, int step, int sign) {
        int count = (start - start % step) / step;
        if (count <= POINTS) {
            for (int i = 0; i < count; i++) {
                int n = start + i * step;
                terms.add(new Term(sign * Math.pow(q, n), 2 * n * h));
            }
            return;
        }
        double[] node = new double[count];
        double[] weight = new double[count];
        double total = 0;
        for (int i = 0; i < count; i++) {
            node[i] = start + (double) i * step;
            weight[i] = Math.pow(q, node[i]);
            total += weight[i];
        }
        double[] diagonal = new double[POINTS];
        double[] beside = new double[POINTS - 1];
        double[] before = new double[count];
        double[] current = new double[count];
        double centre = start;
        for (int i = 0; i < count; i++) {
            current[i] = Math.sqrt(weight[i] / total);
        }
        // Lanczos on the diagonal matrix of the nodes: its tridiagonal form holds nodes and weights of the rule.
        for (int m = 0; m < POINTS; m++) {
            double mean = 0;
            for (int i = 0; i < count; i++) {
                mean += current[i] * current[i] * (node[i] - centre);
            }
            diagonal[m] = mean;
            if (m == POINTS - 1) {
                break;
            }
            double norm = 0;
            double[] next = new double[count];
            for (int i = 0; i < count; i++) {
                next[i] = (node[i] - centre - mean) * current[i] - (m == 0 ? 0 : beside[m - 1]) * before[i];
                norm += next[i] * next[i];
            }
            norm = Math.sqrt(norm);
            beside[m] = norm;
            before = current;
            for (int i = 0; i < count; i++) {
                next[i] /= norm;
            }
            current = next;
        }
        EigenDecomposition rule = new EigenDecomposition(diagonal, beside);
        for (int m = 0; m < POINTS; m++) {
            double first = rule.getEigenvector(m).getEntry(0);
            terms.add(new Term(sign * total * first * first, 2 * h * (centre + rule.getRealEigenvalue(m))));
        }
    }
}
