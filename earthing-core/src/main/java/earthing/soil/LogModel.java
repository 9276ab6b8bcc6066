package earthing.soil;

import java.util.ArrayList;
import java.util.List;

/**
 * Readings over a model of given layer count as a function of its logarithms: ln ρ1 … ln ρN, ln h1 … ln h(N−1), with
 * derivatives.
 */
interface LogModel {

    /** Number of logarithms. */
    int parameters();

    /** Computes what {@link #value} and {@link #derivative} then tell. */
    void evaluate(double[] logs);

    /** ln ρa of a reading after {@link #evaluate}. */
    double value(int reading);

    /** d ln ρa / d parameter after {@link #evaluate}. */
    double derivative(int reading, int parameter);

    /** The ground of given logarithms. */
    static SoilModel soil(double[] logs) {
        int layers = (logs.length + 1) / 2;
        List<Layer> list = new ArrayList<>();
        for (int i = 0; i < layers; i++) {
            double rho = Math.exp(logs[i]);
            list.add(i == layers - 1 ? Layer.below(rho) : new Layer(rho, Math.exp(logs[layers + i])));
        }
        return SoilModel.of(list);
    }
}
