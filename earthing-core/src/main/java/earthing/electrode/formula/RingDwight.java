package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Horizontal ring of wire, R = ρ/(2π²D)·(ln(8D/d) + ln(4D/s)).
 *
 * <p>ρ resistivity [Ω·m], D diameter of the ring [m], d diameter of the wire [m], s twice the depth [m].
 */
public final class RingDwight {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Dwight, Calculation of Resistances to Ground, Electrical Engineering 55, 1936; IEEE Std 142-2007",
            "table 13, ring of wire",
            Source.Status.FROM_MEMORY);

    private RingDwight() {}

    /**
     * Resistance of the ring.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param ringDiameter D [m], &gt; 0
     * @param radius radius of the wire [m], &gt; 0
     * @param depth s/2 [m], &gt; 0
     * @return R [Ω]; none for D &lt; 20 wire diameters, a depth below 2 radii or above D
     */
    public static FormulaResult resistance(double resistivity, double ringDiameter, double radius, double depth) {
        Positive.require("resistivity", resistivity);
        Positive.require("ring diameter", ringDiameter);
        Positive.require("radius", radius);
        Positive.require("depth", depth);
        return FormulaResult.of(
                ringDiameter >= 40 * radius && depth >= 2 * radius && depth <= ringDiameter,
                "D/d >= 20, depth >= d, depth <= D",
                "R = rho/(2 pi^2 D) (ln(8D/d) + ln(4D/s))",
                SOURCE,
                () -> resistivity
                        / (2 * Math.PI * Math.PI * ringDiameter)
                        * (Math.log(4 * ringDiameter / radius) + Math.log(2 * ringDiameter / depth)));
    }
}
