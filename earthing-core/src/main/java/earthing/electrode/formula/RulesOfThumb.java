package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Rules of thumb of handbooks and instrument manuals. Each is a rough figure within a narrow range only: outside it the
 * rule can be too low by a quarter, and there is no value.
 */
public final class RulesOfThumb {

    /** Where the rules come from. */
    public static final Source SOURCE = Source.publication(
            "Lightning Protection Guide, 2014, table 5.5.1", "formulae for earth electrodes", Source.Status.READ);

    private RulesOfThumb() {}

    /**
     * Rod, R = ρ/L.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @return R [Ω]; none beyond 3 m, where the rule is too low
     */
    public static FormulaResult rod(double resistivity, double length) {
        Positive.require("resistivity", resistivity);
        Positive.require("length", length);
        return FormulaResult.of(length <= 3, "L <= 3 m", "R = rho/L", SOURCE, () -> resistivity / length);
    }

    /**
     * Buried strip or wire, R = 2ρ/L.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @return R [Ω]; none beyond 50 m, where the rule is too low
     */
    public static FormulaResult strip(double resistivity, double length) {
        Positive.require("resistivity", resistivity);
        Positive.require("length", length);
        return FormulaResult.of(length <= 50, "L <= 50 m", "R = 2 rho/L", SOURCE, () -> 2 * resistivity / length);
    }

    /**
     * Ring, R = 2ρ/(3D) with D = 1.13·√A.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param area A enclosed [m²], &gt; 0
     * @return R [Ω]; none beyond a diameter of 15 m, where the rule is too low
     */
    public static FormulaResult ring(double resistivity, double area) {
        Positive.require("resistivity", resistivity);
        double diameter = 1.13 * Math.sqrt(Positive.require("area", area));
        return FormulaResult.of(
                diameter <= 15,
                "D <= 15 m",
                "R = 2 rho/(3 D), D = 1.13 sqrt(A)",
                SOURCE,
                () -> 2 * resistivity / (3 * diameter));
    }

    /**
     * Foundation as a hemisphere, R = ρ/(πD) with D = 1.57·∛V.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param volume V [m³], &gt; 0
     * @return R [Ω]
     */
    public static FormulaResult foundation(double resistivity, double volume) {
        Positive.require("resistivity", resistivity);
        double diameter = 1.57 * Math.cbrt(Positive.require("volume", volume));
        return FormulaResult.of(
                true, "any", "R = rho/(pi D), D = 1.57 cbrt(V)", SOURCE, () -> resistivity / (Math.PI * diameter));
    }
}
