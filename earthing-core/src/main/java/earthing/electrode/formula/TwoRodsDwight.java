package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Two equal vertical rods in parallel. For a distance s above 2L: R = ρ/(4πL)·(ln(4L/a) − 1) + ρ/(4πs)·(1 − L²/(3s²) +
 * 2L⁴/(5s⁴)); nearer: R = ρ/(4πL)·(ln(4L/a) + ln(4L/s) − 2 + s/(2L) − s²/(16L²) + s⁴/(512L⁴)).
 * The source divides both at s = L; there the first is still 3.5 % high, the second good up to 2L, so it serves so far.
 *
 * <p>ρ resistivity [Ω·m], L length [m], a radius [m], s distance of the axes [m].
 */
public final class TwoRodsDwight {

    /** Where the formulas come from. */
    public static final Source SOURCE = Source.publication(
            "Dwight, Calculation of Resistances to Ground, Electrical Engineering 55, 1936; IEEE Std 142-2007",
            "table 13, two ground rods",
            Source.Status.FROM_MEMORY);

    private TwoRodsDwight() {}

    /**
     * Resistance of both rods joined.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param distance s [m], &gt; 0
     * @return R [Ω]; none for L/a &lt; 10 or s &lt; 10a
     */
    public static FormulaResult resistance(double resistivity, double length, double radius, double distance) {
        Positive.require("resistivity", resistivity);
        Positive.require("length", length);
        Positive.require("radius", radius);
        Positive.require("distance", distance);
        double q = distance / length;
        boolean holds = length >= 10 * radius && distance >= 10 * radius;
        String range = "L/a >= 10, s >= 10a";
        if (distance > 2 * length) {
            return FormulaResult.of(
                    holds,
                    range,
                    "R = rho/(4 pi L) (ln(4L/a) - 1) + rho/(4 pi s) (1 - L^2/3s^2 + 2L^4/5s^4)",
                    SOURCE,
                    () -> resistivity
                            / (4 * Math.PI)
                            * ((Math.log(4 * length / radius) - 1) / length
                                    + (1 - 1 / (3 * q * q) + 2 / (5 * q * q * q * q)) / distance));
        }
        return FormulaResult.of(
                holds,
                range,
                "R = rho/(4 pi L) (ln(4L/a) + ln(4L/s) - 2 + s/2L - s^2/16L^2 + s^4/512L^4)",
                SOURCE,
                () -> resistivity / (4 * Math.PI * length) * (Math.log(4 * length / radius) + WireSeries.bracket(q)));
    }
}
