package earthing.soil;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleSupplier;
import java.util.function.DoubleUnaryOperator;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.SingularValueDecomposition_F64;

/**
 * Spectral functions of a ground of three and more layers as sums of exponentials f(λ) ≈ f(∞) + Σ c e^(−λβ), with the
 * depths β fixed on a geometric grid and the coefficients by least squares (truncated singular values). The value at
 * λ = 0, which rules the far field, carries a heavy weight.
 */
final class ExponentialFit {

    private static final double RATIO = 1.3;
    private static final int SAMPLES_PER_OCTAVE = 8;
    private static final double CUTOFF = 1e-13;
    private static final double FAR_FIELD_WEIGHT = 1e3;

    private final double[] rho;
    private final double[] thickness;
    /** Least depth of an exponential [m], the unit of those of the basis. */
    private final double shortest;

    private final Basis basis;

    /**
     * One fitted function.
     *
     * @param terms coefficients [-] and shifts [m]
     * @param bound integral of the misfit over λ [1/m]; worked out when asked for, at more cost than the fit
     */
    record Fitted(List<GeometricImages.Term> terms, DoubleSupplier bound) {}

    /**
     * Exponentials and samples in units of the least depth. They depend on the number of exponentials alone, so that the
     * decomposition serves every ground that takes as many.
     */
    private static final class Basis {

        private static final Map<Integer, Basis> BY_COUNT = new ConcurrentHashMap<>();

        private final double[] beta;
        private final double[] lambda;
        private final DMatrixRMaj pseudoInverse;

        private Basis(int count) {
            beta = new double[count];
            for (int j = 0; j < count; j++) {
                beta[j] = Math.pow(RATIO, j);
            }
            double low = 0.02 / beta[count - 1];
            double high = 40 / beta[0];
            int samples = (int) Math.ceil(SAMPLES_PER_OCTAVE * Math.log(high / low) / Math.log(2)) + 1;
            lambda = new double[samples + 1];
            for (int i = 1; i <= samples; i++) {
                lambda[i] = low * Math.pow(high / low, (i - 1.0) / (samples - 1));
            }
            DMatrixRMaj design = new DMatrixRMaj(samples + 1, count);
            for (int i = 0; i <= samples; i++) {
                for (int j = 0; j < count; j++) {
                    design.set(i, j, weight(i) * Math.exp(-lambda[i] * beta[j]));
                }
            }
            pseudoInverse = invert(design);
        }

        static Basis of(int count) {
            return BY_COUNT.computeIfAbsent(count, Basis::new);
        }
    }

    private ExponentialFit(SoilModel soil) {
        int n = soil.layerCount();
        rho = new double[n];
        thickness = new double[n];
        double thinnest = Double.POSITIVE_INFINITY;
        double contrast = 1;
        for (int i = 0; i < n; i++) {
            rho[i] = soil.resistivity(i);
            thickness[i] = soil.thickness(i);
            thinnest = Math.min(thinnest, thickness[i]);
        }
        for (int i = 0; i < n; i++) {
            contrast = Math.max(contrast, Math.max(rho[i] / rho[n - 1], rho[n - 1] / rho[i]));
        }
        // No function decays less than over the thinnest layer; three steps below it hold the fit there.
        shortest = thinnest / (RATIO * RATIO * RATIO);
        double longest = 60 * soil.top(n - 1) * contrast;
        basis = Basis.of((int) Math.ceil(Math.log(longest / shortest) / Math.log(RATIO)) + 1);
    }

    static ExponentialFit of(SoilModel soil) {
        return new ExponentialFit(soil);
    }

    private static double weight(int sample) {
        return sample == 0 ? FAR_FIELD_WEIGHT : 1;
    }

    private static DMatrixRMaj invert(DMatrixRMaj design) {
        SingularValueDecomposition_F64<DMatrixRMaj> svd =
                DecompositionFactory_DDRM.svd(design.numRows, design.numCols, true, true, true);
        if (!svd.decompose(design.copy())) {
            throw new IllegalStateException("singular values of the exponential fit did not converge");
        }
        DMatrixRMaj u = svd.getU(null, false);
        DMatrixRMaj v = svd.getV(null, false);
        double[] values = svd.getSingularValues();
        double largest = 0;
        for (int j = 0; j < design.numCols; j++) {
            largest = Math.max(largest, values[j]);
        }
        DMatrixRMaj scaled = new DMatrixRMaj(v.numRows, design.numCols);
        for (int j = 0; j < design.numCols; j++) {
            double factor = values[j] > CUTOFF * largest ? 1 / values[j] : 0;
            for (int i = 0; i < v.numRows; i++) {
                scaled.set(i, j, v.get(i, j) * factor);
            }
        }
        DMatrixRMaj inverse = new DMatrixRMaj(design.numCols, design.numRows);
        CommonOps_DDRM.multTransB(scaled, u, inverse);
        return inverse;
    }

    /** Reflection of what lies above a layer, seen at its top. */
    double up(int layer, double l) {
        double reflection = 1;
        for (int i = 0; i < layer; i++) {
            double k = coefficient(i);
            double returned = reflection * Math.exp(-2 * l * thickness[i]);
            reflection = (returned - k) / (1 - k * returned);
        }
        return reflection;
    }

    /** Reflection of what lies below a layer, seen at its bottom. */
    double down(int layer, double l) {
        int last = rho.length - 1;
        if (layer == last) {
            return 0;
        }
        double reflection = coefficient(last - 1);
        for (int i = last - 2; i >= layer; i--) {
            double k = coefficient(i);
            double returned = reflection * Math.exp(-2 * l * thickness[i + 1]);
            reflection = (k + returned) / (1 + k * returned);
        }
        return reflection;
    }

    /** There and back through a layer. */
    double decay(int layer, double l) {
        return layer == rho.length - 1 ? 0 : Math.exp(-2 * l * thickness[layer]);
    }

    /** 1 − ΥΓe^(−2λh) of a layer. */
    double bounce(int layer, double l) {
        return 1 - up(layer, l) * down(layer, l) * decay(layer, l);
    }

    /** Transmission from a layer to one below it, without the plain exponentials; within one layer 1/bounce. */
    double through(int source, int observed, double l) {
        double product = 1 / bounce(source, l);
        if (source == observed) {
            return product;
        }
        product *= 1 + down(source, l);
        for (int i = source + 1; i < observed; i++) {
            double reflection = down(i, l);
            product *= (1 + reflection) / (1 + reflection * decay(i, l));
        }
        return product / (1 + down(observed, l) * decay(observed, l));
    }

    private double coefficient(int boundary) {
        return (rho[boundary + 1] - rho[boundary]) / (rho[boundary + 1] + rho[boundary]);
    }

    Fitted terms(DoubleUnaryOperator function) {
        double limit = function.applyAsDouble(1e3 / shortest);
        DMatrixRMaj wanted = new DMatrixRMaj(basis.lambda.length, 1);
        for (int i = 0; i < basis.lambda.length; i++) {
            wanted.set(i, 0, weight(i) * (function.applyAsDouble(basis.lambda[i] / shortest) - limit));
        }
        DMatrixRMaj found = new DMatrixRMaj(basis.beta.length, 1);
        CommonOps_DDRM.mult(basis.pseudoInverse, wanted, found);
        List<GeometricImages.Term> terms = new ArrayList<>();
        terms.add(new GeometricImages.Term(limit, 0));
        for (int j = 0; j < basis.beta.length; j++) {
            terms.add(new GeometricImages.Term(found.get(j, 0), shortest * basis.beta[j]));
        }
        return new Fitted(terms, () -> misfit(function, terms));
    }

    /** ∫|misfit|dλ by the trapezoidal rule on a grid four times as dense as the samples. */
    private double misfit(DoubleUnaryOperator function, List<GeometricImages.Term> terms) {
        double low = basis.lambda[1] / shortest;
        double high = basis.lambda[basis.lambda.length - 1] / shortest;
        int steps = 4 * (basis.lambda.length - 2);
        double sum = 0;
        double before = 0;
        double at = 0;
        for (int i = 0; i <= steps; i++) {
            double l = low * Math.pow(high / low, (double) i / steps);
            double difference = function.applyAsDouble(l);
            for (GeometricImages.Term term : terms) {
                difference -= term.coefficient() * Math.exp(-l * term.shift());
            }
            sum += (l - at) * (Math.abs(difference) + before) / 2;
            before = Math.abs(difference);
            at = l;
        }
        return sum;
    }
}
