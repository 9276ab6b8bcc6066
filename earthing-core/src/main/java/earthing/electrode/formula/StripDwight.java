package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Buried horizontal strip of total length 2L and section a by b at depth s/2, R = ρ/(4πL)·(ln(4L/a) + (a² −
 * πab)/(2(a+b)²) + ln(4L/s) − 1 + s/(2L) − s²/(16L²) + s⁴/(512L⁴)).
 *
 * <p>ρ resistivity [Ω·m], a width [m], b thickness [m].
 */
public final class StripDwight {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Dwight, Calculation of Resistances to Ground, Electrical Engineering 55, 1936; IEEE Std 142-2007",
            "table 13, buried horizontal strip, b < a/8",
            Source.Status.FROM_MEMORY);

    private StripDwight() {}

    /**
     * Resistance of the strip.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param totalLength 2L [m], &gt; 0
     * @param width a [m], &gt; 0
     * @param thickness b [m], &gt; 0
     * @param depth s/2 [m], &gt; 0
     * @return R [Ω]; none for b ≥ a/8, L &lt; 10a, a depth below the width or above L/2
     */
    public static FormulaResult resistance(
            double resistivity, double totalLength, double width, double thickness, double depth) {
        Positive.require("resistivity", resistivity);
        double half = Positive.require("length", totalLength) / 2;
        Positive.require("width", width);
        Positive.require("thickness", thickness);
        Positive.require("depth", depth);
        double sum = width + thickness;
        double section = (width * width - Math.PI * width * thickness) / (2 * sum * sum);
        return FormulaResult.of(
                thickness < width / 8 && half >= 10 * width && depth >= width && 2 * depth <= half,
                "b < a/8, L/a >= 10, depth >= a, s <= L",
                "R = rho/(4 pi L) (ln(4L/a) + (a^2 - pi a b)/(2(a+b)^2) + ln(4L/s) - 1 + s/2L - s^2/16L^2 + s^4/512L^4)",
                SOURCE,
                () -> resistivity
                        / (4 * Math.PI * half)
                        * (Math.log(4 * half / width) + section + 1 + WireSeries.bracket(2 * depth / half)));
    }
}
