package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Vertical rod in two-layer ground. Within the upper layer: R = ρ1/(2πL)·(ln(4L/a) − 1 + Σ kⁿ·ln((2nh+L)/(2nh−L))), k =
 * (ρ2−ρ1)/(ρ2+ρ1); 0.5 to 1.5 % above the numeric solution. Through both layers: Dwight's rod with the resistivity ρa =
 * Lρ1ρ2/(ρ2h + ρ1(L−h)), which assumes conductances in parallel; it is 7 to 15 % too low over a poorer subsoil.
 *
 * <p>ρ1, ρ2 resistivities [Ω·m], h thickness of the upper layer [m], L length [m], a radius [m].
 */
public final class RodTwoLayer {

    /** Where the series comes from. */
    public static final Source SERIES = Source.publication(
            "Tagg, Earth Resistances, 1964; Sunde 1949", "rod in the upper layer", Source.Status.FROM_MEMORY);

    /** Where the apparent resistivity comes from. */
    public static final Source PARALLEL =
            Source.standard("IEEE Std 80-2013", "rod through two layers", Source.Status.FROM_MEMORY);

    private RodTwoLayer() {}

    /**
     * Rod within the upper layer.
     *
     * @param upper ρ1 [Ω·m], &gt; 0
     * @param lower ρ2 [Ω·m], &gt; 0
     * @param thickness h [m], &gt; 0
     * @param length L [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @return R [Ω]; none for L ≥ h or L &lt; 10a
     */
    public static FormulaResult withinUpper(
            double upper, double lower, double thickness, double length, double radius) {
        Positive.require("upper resistivity", upper);
        Positive.require("lower resistivity", lower);
        Positive.require("thickness", thickness);
        Positive.require("length", length);
        Positive.require("radius", radius);
        return FormulaResult.of(
                length < thickness && length >= 10 * radius,
                "L < h, L/a >= 10",
                "R = rho1/(2 pi L) (ln(4L/a) - 1 + sum k^n ln((2nh+L)/(2nh-L)))",
                SERIES,
                () -> upper
                        / (2 * Math.PI * length)
                        * (Math.log(4 * length / radius)
                                - 1
                                + series((lower - upper) / (lower + upper), length / (2 * thickness))));
    }

    /** Σ kⁿ·ln((n+q)/(n−q)), summed with Euler's leading tail term q taken out: Σ kⁿ·2q/n = −2q·ln(1−k). */
    private static double series(double k, double q) {
        double sum = -2 * q * Math.log1p(-k);
        double power = 1;
        for (int n = 1; n < 200_000; n++) {
            power *= k;
            double term = power * (Math.log1p(2 * q / (n - q)) - 2 * q / n);
            sum += term;
            if (Math.abs(power) < 1e-17 || Math.abs(term) * n < 1e-14) {
                break;
            }
        }
        return sum;
    }

    /**
     * Apparent resistivity of a rod through both layers.
     *
     * @param upper ρ1 [Ω·m], &gt; 0
     * @param lower ρ2 [Ω·m], &gt; 0
     * @param thickness h [m], &gt; 0
     * @param length L [m], &gt; 0
     * @return ρa [Ω·m]; none for L ≤ h
     */
    public static FormulaResult apparentResistivity(double upper, double lower, double thickness, double length) {
        Positive.require("upper resistivity", upper);
        Positive.require("lower resistivity", lower);
        Positive.require("thickness", thickness);
        Positive.require("length", length);
        return FormulaResult.of(
                length > thickness,
                "L > h",
                "rho_a = L rho1 rho2/(rho2 h + rho1 (L - h))",
                PARALLEL,
                () -> length * upper * lower / (lower * thickness + upper * (length - thickness)));
    }
}
