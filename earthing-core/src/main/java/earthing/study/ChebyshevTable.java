package earthing.study;

import java.util.function.DoubleFunction;

/**
 * Numbers over one variable from a polynomial through the extrema of a Chebyshev polynomial, evaluated by the second
 * barycentric formula (Berrut, Trefethen, SIAM Review 46 (2004), equations 4.2 and 5.4, from memory). The points of each
 * degree are among those of twice the degree, so that the new ones test the old polynomial before they join it.
 */
final class ChebyshevTable {

    private static final int FIRST_DEGREE = 4;
    private static final int LAST_DEGREE = 32;
    /** Part of the width that a variable may lie beyond the ends by rounding. */
    private static final double ROUNDING = 1e-9;

    /** By what the error of a number is measured. */
    interface Scale {
        double of(int index, double[] exact);
    }

    private final double low;
    private final double high;
    private final double[] points;
    private final double[][] values;
    private final double error;

    private ChebyshevTable(double low, double high, double[][] values, double error) {
        this.low = low;
        this.high = high;
        this.values = values;
        this.points = points(low, high, values.length - 1);
        this.error = error;
    }

    /**
     * Tabulates a function.
     *
     * @param low least value of the variable
     * @param high greatest value; equal to the least where there is one value only
     * @param bound relative error that suffices
     * @param function the numbers at a value of the variable
     * @param scale what an error is measured by
     */
    static ChebyshevTable of(double low, double high, double bound, DoubleFunction<double[]> function, Scale scale) {
        if (!(high > low)) {
            return new ChebyshevTable(low, high, new double[][] {function.apply(low)}, 0);
        }
        double[] first = points(low, high, FIRST_DEGREE);
        double[][] values = new double[FIRST_DEGREE + 1][];
        for (int i = 0; i <= FIRST_DEGREE; i++) {
            values[i] = function.apply(first[i]);
        }
        ChebyshevTable table = new ChebyshevTable(low, high, values, Double.POSITIVE_INFINITY);
        for (int degree = 2 * FIRST_DEGREE; degree <= LAST_DEGREE && table.error > bound; degree *= 2) {
            double[] next = points(low, high, degree);
            double[][] all = new double[degree + 1][];
            double worst = 0;
            for (int i = 0; i <= degree; i++) {
                if (i % 2 == 0) {
                    all[i] = table.values[i / 2];
                } else {
                    all[i] = function.apply(next[i]);
                    double[] guess = table.at(next[i]);
                    for (int n = 0; n < guess.length; n++) {
                        double size = scale.of(n, all[i]);
                        worst = size > 0 ? Math.max(worst, Math.abs(guess[n] - all[i][n]) / size) : worst;
                    }
                }
            }
            table = new ChebyshevTable(low, high, all, worst);
        }
        return table;
    }

    private static double[] points(double low, double high, int degree) {
        double[] points = new double[degree + 1];
        for (int i = 0; i <= degree; i++) {
            points[i] = degree == 0 ? low : (low + high) / 2 - (high - low) / 2 * Math.cos(Math.PI * i / degree);
        }
        return points;
    }

    double low() {
        return low;
    }

    /** Greatest relative difference of the polynomial of half the degree from the function at the points between. */
    double error() {
        return error;
    }

    boolean covers(double variable) {
        double slack = ROUNDING * Math.max(1, high - low);
        return variable >= low - slack && variable <= high + slack;
    }

    /** The numbers at a value of the variable. */
    double[] at(double variable) {
        int degree = values.length - 1;
        double[] sum = new double[values[0].length];
        double weights = 0;
        for (int i = 0; i <= degree; i++) {
            double distance = variable - points[i];
            if (distance == 0 || degree == 0) {
                return values[i].clone();
            }
            double weight = (i % 2 == 0 ? 1 : -1) * (i == 0 || i == degree ? 0.5 : 1) / distance;
            weights += weight;
            for (int n = 0; n < sum.length; n++) {
                sum[n] += weight * values[i][n];
            }
        }
        for (int n = 0; n < sum.length; n++) {
            sum[n] /= weights;
        }
        return sum;
    }
}
