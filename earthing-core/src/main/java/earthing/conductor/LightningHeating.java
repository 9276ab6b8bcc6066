package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/**
 * Temperature rise of a conductor that carries a lightning current of given specific energy W/R = ∫i²dt: Δθ = (1/α)
 * (exp(α ρ₀ (W/R)/(q² γ c)) − 1). Adiabatic and without skin effect, which on fast fronts heats the skin more.
 */
public final class LightningHeating {

    /** Formula and materials. */
    public static final Source SOURCE =
            Source.standard("IEC 62305-1:2010", "annex D, eq. (D.7), tables D.2 and D.3", Status.FROM_MEMORY);

    private LightningHeating() {}

    /** Materials of table D.2. */
    public enum Material {
        /** Copper. */
        COPPER(3.92e-3, 17.8e-9, 8920, 385),
        /** Aluminium. */
        ALUMINIUM(4.0e-3, 29e-9, 2700, 908),
        /** Mild steel. */
        MILD_STEEL(6.5e-3, 120e-9, 7700, 469),
        /** Austenitic stainless steel. */
        STAINLESS_STEEL(0.8e-3, 700e-9, 8000, 500);

        private final double alpha;
        private final double resistivity;
        private final double density;
        private final double specificHeat;

        Material(double alpha, double resistivity, double density, double specificHeat) {
            this.alpha = alpha;
            this.resistivity = resistivity;
            this.density = density;
            this.specificHeat = specificHeat;
        }
    }

    /**
     * The temperature rise.
     *
     * @param material a material of table D.2
     * @param area area q [m²], &gt; 0
     * @param specificEnergy W/R of the current in this conductor [J/Ω = A²·s], ≥ 0
     * @return Δθ [K]; infinite beyond any number
     */
    public static double rise(Material material, double area, double specificEnergy) {
        if (!(area > 0)) {
            throw new IllegalArgumentException("conductor area must be > 0 m²; have " + area);
        }
        if (!(specificEnergy >= 0 && specificEnergy < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("specific energy must be >= 0 J/ohm; have " + specificEnergy);
        }
        double exponent = material.alpha
                * material.resistivity
                * specificEnergy
                / (area * area * material.density * material.specificHeat);
        return Math.expm1(exponent) / material.alpha;
    }
}
