package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Buried horizontal wire, R = ρ/(πL)·(ln(2L/√(2ah)) − 1), the leading terms only.
 *
 * <p>ρ resistivity [Ω·m], L length [m], a radius [m], h depth [m].
 */
public final class HorizontalWireSunde {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Sunde, Earth Conduction Effects in Transmission Systems, 1949",
            "buried horizontal wire",
            Source.Status.FROM_MEMORY);

    private HorizontalWireSunde() {}

    /**
     * Resistance of the wire.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param depth h [m], &gt; 0
     * @return R [Ω]; none for L &lt; 20a, h &lt; 2a or h &gt; L/8
     */
    public static FormulaResult resistance(double resistivity, double length, double radius, double depth) {
        Positive.require("resistivity", resistivity);
        Positive.require("length", length);
        Positive.require("radius", radius);
        Positive.require("depth", depth);
        return FormulaResult.of(
                length >= 20 * radius && depth >= 2 * radius && depth <= length / 8,
                "L/a >= 20, h >= 2a, h <= L/8",
                "R = rho/(pi L) (ln(2L/sqrt(2ah)) - 1)",
                SOURCE,
                () -> resistivity / (Math.PI * length) * (Math.log(2 * length / Math.sqrt(2 * radius * depth)) - 1));
    }
}
