package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The resistance of a conducting disc lying on two-layer ground, solved as the mixed boundary problem that it is, with
 * the current density free to find itself. It judges the surface-layer series, which fixes the density beforehand.
 *
 * <p>With the potential on the surface ∫ A(λ)(1 + N(λ)) J₀(λr) dλ, N = 2 K e^(−2λh)/(1 − K e^(−2λh)), and A(λ) = ∫₀ᵇ g(t)
 * cos(λt) dt, the disc at unit potential gives a Fredholm equation of the second kind, g(t) + ∫₀ᵇ L(s, t) g(s) ds = 2/π
 * with L = (2/π) ∑ Kⁿ [H/(H² + (t − s)²) + H/(H² + (t + s)²)], H = 2nh.
 */
public final class FootDisc {

    /** Reduction to a Fredholm equation. */
    public static final Source SOURCE = Source.publication(
            "Sneddon, Mixed Boundary Value Problems in Potential Theory, 1966",
            "electrified disc, dual integral equations",
            Status.FROM_MEMORY);

    private FootDisc() {}

    /**
     * Cs of the disc on two layers.
     *
     * @param reflection reflection factor K, |K| ≤ 0.999999
     * @param thickness thickness of the layer [m], at least 0.005 m, where the quadrature still resolves the kernel
     * @return resistance over that on ground of the layer's material throughout
     */
    public static double factor(double reflection, double thickness) {
        return factor(reflection, thickness, 64);
    }

    static double factor(double reflection, double thickness, int points) {
        double strongest = SurfaceLayerFactor.STRONGEST;
        if (!(Math.abs(reflection) <= strongest)) {
            throw new IllegalArgumentException(
                    "reflection factor must be within -" + strongest + " and " + strongest + "; have " + reflection);
        }
        if (!(thickness >= 0.005 && thickness < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("layer thickness must be >= 0.005 m; have " + thickness);
        }
        double h = 2 * thickness / SurfaceLayerFactor.FOOT_RADIUS;
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(points, 0, 1);
        RealMatrix matrix = new Array2DRowRealMatrix(points, points);
        for (int i = 0; i < points; i++) {
            for (int k = 0; k < points; k++) {
                double kernel = kernel(reflection, h, rule.getPoint(i), rule.getPoint(k));
                matrix.setEntry(i, k, (i == k ? 1 : 0) + rule.getWeight(k) * kernel);
            }
        }
        double[] density = new LUDecomposition(matrix)
                .getSolver()
                .solve(new ArrayRealVector(points, 2 / Math.PI))
                .toArray();
        double current = 0;
        for (int i = 0; i < points; i++) {
            current += rule.getWeight(i) * density[i];
        }
        return 2 / Math.PI / current;
    }

    private static double kernel(double reflection, double h, double t, double s) {
        double sum = 0;
        double power = 1;
        double enough = 1e-12 * (1 - Math.abs(reflection));
        for (int n = 1; Math.abs(power) > enough; n++) {
            power *= reflection;
            double depth = n * h;
            double square = depth * depth;
            sum += power * (depth / (square + (t - s) * (t - s)) + depth / (square + (t + s) * (t + s)));
        }
        return 2 / Math.PI * sum;
    }
}
