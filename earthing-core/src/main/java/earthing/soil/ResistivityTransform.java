package earthing.soil;

import earthing.quantity.Source;

/**
 * Resistivity transform of layered ground: the Hankel-domain surface impedance T(λ) [Ω·m] of a point source, so that
 * V(r) = I/(2π) ∫ T(λ) J0(λr) dλ.
 *
 * <p>Recursion upwards from the lowest layer: T_N = ρ_N, T_i = (T_{i+1} + ρ_i tanh λh_i) / (1 + T_{i+1} tanh λh_i /
 * ρ_i). Valid for any positive resistivities and thicknesses; λ from 0 to infinity.
 */
public final class ResistivityTransform {

    /** Where the recursion comes from. */
    public static final Source SOURCE = Source.publication(
            "Koefoed, Geosounding Principles 1, 1979",
            "recursion of the resistivity transform",
            Source.Status.FROM_MEMORY);

    private final double[] resistivity;
    private final double[] thickness;

    private ResistivityTransform(double[] resistivity, double[] thickness) {
        this.resistivity = resistivity;
        this.thickness = thickness;
    }

    /**
     * Prepares the recursion.
     *
     * @param soil the ground
     * @return its transform
     */
    public static ResistivityTransform of(SoilModel soil) {
        int n = soil.layerCount();
        double[] resistivity = new double[n];
        double[] thickness = new double[n];
        for (int i = 0; i < n; i++) {
            resistivity[i] = soil.resistivity(i);
            thickness[i] = soil.thickness(i);
        }
        return new ResistivityTransform(resistivity, thickness);
    }

    /**
     * The transform.
     *
     * @param lambda wave number [1/m], ≥ 0; &gt; 0 over a lowest layer that does not conduct
     * @return T(λ) [Ω·m]
     */
    public double at(double lambda) {
        return resistivity[0] * (1 + excess(lambda));
    }

    /**
     * What the layers below the first one add, free of cancellation at great λ.
     *
     * @param lambda wave number [1/m], ≥ 0
     * @return T(λ)/ρ1 − 1 [-]
     */
    double excess(double lambda) {
        int last = resistivity.length - 1;
        if (last == 0) {
            return 0;
        }
        // Reflection coefficients instead of tanh: exact for an infinite ratio and without overflow.
        double reflection = coefficient(last - 1);
        for (int i = last - 2; i >= 0; i--) {
            double k = coefficient(i);
            double returned = reflection * Math.exp(-2 * lambda * thickness[i + 1]);
            reflection = (k + returned) / (1 + k * returned);
        }
        double returned = reflection * Math.exp(-2 * lambda * thickness[0]);
        return 2 * returned / (1 - returned);
    }

    private double coefficient(int boundary) {
        double above = resistivity[boundary];
        double below = resistivity[boundary + 1];
        return Double.isInfinite(below) ? 1 : (below - above) / (below + above);
    }
}
