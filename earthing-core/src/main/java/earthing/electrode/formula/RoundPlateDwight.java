package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Buried thin round plate of radius a, centre at depth s/2. Horizontal: R = ρ/(8a) + ρ/(4πs)·(1 − 7a²/(12s²) +
 * 33a⁴/(40s⁴)); vertical: R = ρ/(8a) + ρ/(4πs)·(1 + 7a²/(24s²) + 99a⁴/(320s⁴)).
 *
 * <p>ρ resistivity [Ω·m].
 */
public final class RoundPlateDwight {

    /** Where the formulas come from. */
    public static final Source SOURCE = Source.publication(
            "Dwight, Calculation of Resistances to Ground, Electrical Engineering 55, 1936; IEEE Std 142-2007",
            "table 13, buried round plate",
            Source.Status.FROM_MEMORY);

    /** How the plate lies. */
    public enum Lie {
        /** Flat, parallel to the surface. */
        HORIZONTAL(-7.0 / 12, 33.0 / 40),
        /** Upright. */
        VERTICAL(7.0 / 24, 99.0 / 320);

        private final double second;
        private final double fourth;

        Lie(double second, double fourth) {
            this.second = second;
            this.fourth = fourth;
        }
    }

    private RoundPlateDwight() {}

    /**
     * Resistance of the plate.
     *
     * @param lie how it lies
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param depth s/2 of its centre [m], &gt; 0
     * @return R [Ω]; none for s &lt; 2a
     */
    public static FormulaResult resistance(Lie lie, double resistivity, double radius, double depth) {
        Positive.require("resistivity", resistivity);
        Positive.require("radius", radius);
        double s = 2 * Positive.require("depth", depth);
        double q = radius * radius / (s * s);
        return FormulaResult.of(
                s >= 2 * radius,
                "s >= 2a",
                "R = rho/(8a) + rho/(4 pi s) (1 + k2 a^2/s^2 + k4 a^4/s^4)",
                SOURCE,
                () -> resistivity / (8 * radius)
                        + resistivity / (4 * Math.PI * s) * (1 + lie.second * q + lie.fourth * q * q));
    }
}
