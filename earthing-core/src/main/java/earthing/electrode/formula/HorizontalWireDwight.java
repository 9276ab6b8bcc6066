package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Buried horizontal wire of total length 2L at depth s/2, R = ρ/(4πL)·(ln(4L/a) + ln(4L/s) − 2 + s/(2L) − s²/(16L²) +
 * s⁴/(512L⁴)).
 *
 * <p>ρ resistivity [Ω·m], a radius [m].
 */
public final class HorizontalWireDwight {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Dwight, Calculation of Resistances to Ground, Electrical Engineering 55, 1936; IEEE Std 142-2007",
            "table 13, buried horizontal wire",
            Source.Status.FROM_MEMORY);

    private HorizontalWireDwight() {}

    /**
     * Resistance of the wire.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param totalLength 2L [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param depth s/2 [m], &gt; 0
     * @return R [Ω]; none for a total length below 20a, a depth below 2a or above a quarter of the length
     */
    public static FormulaResult resistance(double resistivity, double totalLength, double radius, double depth) {
        Positive.require("resistivity", resistivity);
        double half = Positive.require("length", totalLength) / 2;
        Positive.require("radius", radius);
        Positive.require("depth", depth);
        return FormulaResult.of(
                half >= 10 * radius && depth >= 2 * radius && 2 * depth <= half,
                "L/a >= 10, depth >= 2a, s <= L",
                "R = rho/(4 pi L) (ln(4L/a) + ln(4L/s) - 2 + s/2L - s^2/16L^2 + s^4/512L^4)",
                SOURCE,
                () -> resistivity
                        / (4 * Math.PI * half)
                        * (Math.log(4 * half / radius) + WireSeries.bracket(2 * depth / half)));
    }
}
