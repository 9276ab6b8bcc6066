package earthing.electrode;

import earthing.quantity.Source;

/**
 * Resistance of a concentrated electrode while the ground around it breaks down: R_i = R₀/√(1 + I/I_g), I_g =
 * E₀·ρ/(2π·R₀²). An option with a constant that is fitted to the site: published E₀ differ by a factor of three, and the
 * law has no time lag. For electrodes that are small against R₀ in extent; never for touch or step, because the earth
 * potential rise may be without ionisation.
 */
public final class SoilIonisation {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Weck, in CIGRE Technical Brochure 63, Guide to procedures for estimating the lightning performance of"
                    + " transmission lines, 1991; IEC 60071-2 annex",
            "ionisation of soil",
            Source.Status.FROM_MEMORY);

    private SoilIonisation() {}

    /**
     * Current from which the ground around the electrode breaks down noticeably.
     *
     * @param resistance R₀ at low current [Ω], &gt; 0
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param field E₀ [V/m], &gt; 0
     * @return I_g [A]
     */
    public static double limitCurrent(double resistance, double resistivity, double field) {
        require("resistance", resistance);
        require("resistivity", resistivity);
        require("breakdown field", field);
        return field * resistivity / (2 * Math.PI * resistance * resistance);
    }

    /**
     * Resistance at a current.
     *
     * @param resistance R₀ at low current [Ω], &gt; 0
     * @param current I into the electrode [A], ≥ 0
     * @param limitCurrent I_g [A], &gt; 0
     * @return R_i [Ω]
     */
    public static double resistance(double resistance, double current, double limitCurrent) {
        require("resistance", resistance);
        require("limit current", limitCurrent);
        if (!(current >= 0)) {
            throw new IllegalArgumentException("current must be >= 0 A; have " + current);
        }
        return resistance / Math.sqrt(1 + current / limitCurrent);
    }

    private static void require(String what, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " must be > 0 and finite; have " + value);
        }
    }
}
