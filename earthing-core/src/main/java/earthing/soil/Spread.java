package earthing.soil;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * How far the parameters of a fit may move for a reading error of 1: (JᵀJ)⁻¹ by singular values. Parameters that are
 * held at an end of the search do not move.
 */
final class Spread {

    /** Directions that the readings feel less than this, relative to the best felt one, are as good as unknown. */
    private static final double UNFELT = 1e-7;

    private final LogModel model;
    private final double[][] direction;
    private final double[] inverse;
    private final double condition;

    private Spread(LogModel model, double[][] direction, double[] inverse, double condition) {
        this.model = model;
        this.direction = direction;
        this.inverse = inverse;
        this.condition = condition;
    }

    /** Leaves the model evaluated at the point. */
    static Spread of(LogModel model, double[] logs, boolean[] kept, boolean[] held) {
        model.evaluate(logs);
        int parameters = logs.length;
        // Square or taller, so that every direction of the parameters has its singular value.
        double[][] jacobian = new double[Math.max(kept.length, parameters)][parameters];
        for (int i = 0; i < kept.length; i++) {
            for (int p = 0; p < parameters && kept[i]; p++) {
                jacobian[i][p] = held[p] ? 0 : model.derivative(i, p);
            }
        }
        SingularValueDecomposition svd = new SingularValueDecomposition(new Array2DRowRealMatrix(jacobian, false));
        double[] singular = svd.getSingularValues();
        int free = parameters;
        for (boolean one : held) {
            free -= one ? 1 : 0;
        }
        double[] inverse = new double[parameters];
        for (int i = 0; i < free; i++) {
            inverse[i] = 1 / Math.max(singular[i], UNFELT * singular[0]);
        }
        double condition = free == 0 ? 1 : inverse[free - 1] / inverse[0];
        return new Spread(model, svd.getVT().getData(), inverse, condition);
    }

    double condition() {
        return condition;
    }

    double[] gradient(int reading) {
        double[] gradient = new double[model.parameters()];
        for (int p = 0; p < gradient.length; p++) {
            gradient[p] = model.derivative(reading, p);
        }
        return gradient;
    }

    /** gᵀ (JᵀJ)⁻¹ g. */
    double variance(double[] g) {
        double sum = 0;
        for (int i = 0; i < direction.length; i++) {
            double along = 0;
            for (int p = 0; p < g.length; p++) {
                along += direction[i][p] * g[p];
            }
            sum += along * along * inverse[i] * inverse[i];
        }
        return sum;
    }
}
