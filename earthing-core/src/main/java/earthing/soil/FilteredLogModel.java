package earthing.soil;

import java.util.Arrays;

/**
 * Readings by the filter of a survey, with derivatives by one backward sweep of the recursion. Holds working space; one
 * instance serves one thread.
 */
final class FilteredLogModel implements LogModel {

    private final SoundingFilter filter;
    private final int layers;
    private final int readings;
    private final double[] k;
    private final double[] thickness;
    private final double[] returned;
    private final double[] reflection;
    private final double[] slope;
    private final double[] value;
    private final double[][] derivative;

    FilteredLogModel(SoundingFilter filter, int readings, int layers) {
        this.filter = filter;
        this.layers = layers;
        this.readings = readings;
        k = new double[layers];
        thickness = new double[layers];
        returned = new double[layers];
        reflection = new double[layers];
        slope = new double[parameters()];
        value = new double[readings];
        derivative = new double[readings][parameters()];
    }

    @Override
    public int parameters() {
        return 2 * layers - 1;
    }

    @Override
    public void evaluate(double[] logs) {
        for (int i = 0; i < layers - 1; i++) {
            k[i] = Math.tanh(0.5 * (logs[i + 1] - logs[i]));
            thickness[i] = Math.exp(logs[layers + i]);
        }
        for (int i = 0; i < readings; i++) {
            value[i] = 1;
            Arrays.fill(derivative[i], 0);
        }
        if (layers > 1) {
            for (int m = 0; m < filter.samples(); m++) {
                double excess = sweep(filter.lambda(m));
                for (int i = 0; i < readings; i++) {
                    double w = filter.weight(i, m);
                    value[i] += w * excess;
                    double[] row = derivative[i];
                    for (int p = 0; p < slope.length; p++) {
                        row[p] += w * slope[p];
                    }
                }
            }
        }
        for (int i = 0; i < readings; i++) {
            // The sum is positive in exact arithmetic; the guard keeps the logarithm defined at absurd contrasts.
            double sum = Math.max(value[i], 1e-9);
            for (int p = 0; p < slope.length; p++) {
                derivative[i][p] /= sum;
            }
            derivative[i][0] += 1;
            value[i] = logs[0] + Math.log(sum);
        }
    }

    /** E at one wave number, its slopes into {@link #slope}. */
    private double sweep(double lambda) {
        int last = layers - 2;
        for (int i = last; i >= 0; i--) {
            double q = i == last ? 0 : returned[i + 1];
            reflection[i] = (k[i] + q) / (1 + k[i] * q);
            returned[i] = reflection[i] * Math.exp(-2 * lambda * thickness[i]);
        }
        double top = returned[0];
        double back = 2 / ((1 - top) * (1 - top));
        Arrays.fill(slope, 0);
        for (int i = 0; i <= last; i++) {
            slope[layers + i] = back * returned[i] * -2 * lambda * thickness[i];
            double toReflection = reflection[i] == 0
                    ? back * Math.exp(-2 * lambda * thickness[i])
                    : back * returned[i] / reflection[i];
            double q = i == last ? 0 : returned[i + 1];
            double below = 1 / ((1 + k[i] * q) * (1 + k[i] * q));
            double toK = toReflection * (1 - q * q) * below * 0.5 * (1 - k[i] * k[i]);
            slope[i + 1] += toK;
            slope[i] -= toK;
            back = toReflection * (1 - k[i] * k[i]) * below;
        }
        return 2 * top / (1 - top);
    }

    @Override
    public double value(int reading) {
        return value[reading];
    }

    @Override
    public double derivative(int reading, int parameter) {
        return derivative[reading][parameter];
    }
}
