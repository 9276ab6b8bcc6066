package earthing.soil;

import java.util.function.Function;

/**
 * Readings by any computation, with derivatives by steps of 2 %: wide beside the jumps of a per mille that come of elements
 * which appear and vanish with the layers. Holds working space; one instance serves one thread.
 */
final class SteppedLogModel implements LogModel {

    private static final double STEP = 0.02;

    private final Function<SoilModel, double[]> readings;
    private final int layers;
    private final double[] value;
    private final double[][] derivative;

    SteppedLogModel(Function<SoilModel, double[]> readings, int count, int layers) {
        this.readings = readings;
        this.layers = layers;
        value = new double[count];
        derivative = new double[count][2 * layers - 1];
    }

    @Override
    public int parameters() {
        return 2 * layers - 1;
    }

    @Override
    public void evaluate(double[] logs) {
        double[] here = readings.apply(LogModel.soil(logs));
        for (int i = 0; i < value.length; i++) {
            value[i] = Math.log(here[i]);
            // All resistivities together scale the reading: the slopes of the lower ones give that of the first.
            derivative[i][0] = 1;
        }
        for (int p = 1; p < logs.length; p++) {
            double[] moved = logs.clone();
            moved[p] += STEP;
            double[] there = readings.apply(LogModel.soil(moved));
            for (int i = 0; i < value.length; i++) {
                derivative[i][p] = Math.log(there[i] / here[i]) / STEP;
                if (p < layers) {
                    derivative[i][0] -= derivative[i][p];
                }
            }
        }
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
