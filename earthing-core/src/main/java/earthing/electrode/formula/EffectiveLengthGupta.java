package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Effective length of a buried wire under impulse by Gupta and Thapar: l_eff = K·√(ρ·T), K = 1.40 fed at an end and 1.55
 * in the middle, ρ in Ω·m and the front time T in µs. Two to six times what {@link EffectiveLengthGrcev} gives.
 */
public final class EffectiveLengthGupta {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Gupta, Thapar, Impulse impedance of grounding grids, IEEE Transactions PAS-99, 1980",
            "effective length",
            Source.Status.FROM_MEMORY);

    private EffectiveLengthGupta() {}

    /**
     * Effective length of a wire fed at an end.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param front front time T [s], &gt; 0
     * @return length [m]
     */
    public static double fedAtEnd(double resistivity, double front) {
        return 1.40 * root(resistivity, front);
    }

    /**
     * Effective length of a wire fed in the middle, over both arms.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param front front time T [s], &gt; 0
     * @return length [m]
     */
    public static double fedInMiddle(double resistivity, double front) {
        return 1.55 * root(resistivity, front);
    }

    private static double root(double resistivity, double front) {
        return Math.sqrt(Positive.require("resistivity", resistivity) * Positive.require("front time", front) * 1e6);
    }
}
