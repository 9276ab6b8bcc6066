package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Concrete foundation with reinforcement as the hemisphere of its volume, R = ρ/(πD), D = 1.57·∛V.
 *
 * <p>ρ resistivity of the soil [Ω·m], V volume of concrete in the soil [m³], D diameter of the hemisphere [m]. The concrete
 * counts as metal, so the value is low where it conducts worse than the soil.
 */
public final class FoundationHemisphere {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.standard(
            "HD 637 S1:1999 / DIN VDE 0101", "foundation earth electrode as hemisphere", Source.Status.FROM_MEMORY);

    private static final double DIAMETER = 1.57;

    private FoundationHemisphere() {}

    /**
     * Resistance of a round foundation that ends at the surface.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param diameter of the foundation [m], &gt; 0
     * @param depth of the foundation [m], &gt; 0
     * @return R [Ω]; none for a depth outside 0.5 to 1.5 diameters, where it is more than 10 % high
     */
    public static FormulaResult resistance(double resistivity, double diameter, double depth) {
        Positive.require("resistivity", resistivity);
        Positive.require("diameter", diameter);
        Positive.require("depth", depth);
        double volume = Math.PI / 4 * diameter * diameter * depth;
        return FormulaResult.of(
                depth >= 0.5 * diameter && depth <= 1.5 * diameter,
                "0.5 d <= h <= 1.5 d",
                "R = rho/(pi D), D = 1.57 V^(1/3)",
                SOURCE,
                () -> resistivity / (Math.PI * DIAMETER * Math.cbrt(volume)));
    }
}
