package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Effective length of a buried electrode under impulse and its impulse coefficient by Grcev: l_eff = (1 − β)/α, A = 1 up
 * to l_eff and α·l + β beyond, with α = 0.025 + exp(−0.82·(ρT₁)^0.257), β = 0.17 + exp(−0.22·(ρT₁)^0.555), ρ in Ω·m and
 * the front time T₁ in µs. Fitted to full-wave solutions without ionisation and without dispersion, current fed at one
 * end. Authors differ by a factor 2 … 6 on what "effective" means.
 */
public final class EffectiveLengthGrcev {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Grcev, Impulse efficiency of ground electrodes, IEEE Transactions on Power Delivery 24(1), 2009",
            "effective length and impulse coefficient",
            Source.Status.FROM_MEMORY);

    private static final String RANGE = "rho 10 to 3000 ohm.m, T1 0.2 to 10 us";

    private EffectiveLengthGrcev() {}

    /**
     * Effective length.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param front front time T₁ [s], &gt; 0
     * @return length [m]; none outside 10 … 3000 Ω·m and 0.2 … 10 µs
     */
    public static FormulaResult length(double resistivity, double front) {
        return FormulaResult.of(
                holds(resistivity, front),
                RANGE,
                "l_eff = (1 - beta) / alpha",
                SOURCE,
                () -> (1 - beta(resistivity, front)) / alpha(resistivity, front));
    }

    /**
     * Impulse coefficient, peak voltage over peak current and resistance.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param front front time T₁ [s], &gt; 0
     * @param length length of the electrode [m], &gt; 0
     * @return coefficient [-]; none outside the range
     */
    public static FormulaResult coefficient(double resistivity, double front, double length) {
        Positive.require("length", length);
        return FormulaResult.of(
                holds(resistivity, front),
                RANGE,
                "A = max(1, alpha l + beta)",
                SOURCE,
                () -> Math.max(1, alpha(resistivity, front) * length + beta(resistivity, front)));
    }

    private static boolean holds(double resistivity, double front) {
        Positive.require("resistivity", resistivity);
        Positive.require("front time", front);
        // A relative 1e-9 lets a front of 0.2 us written in seconds count as the end of the range.
        return resistivity >= 10 && resistivity <= 3000 && front >= 0.2e-6 * (1 - 1e-9) && front <= 10e-6 * (1 + 1e-9);
    }

    private static double alpha(double resistivity, double front) {
        return 0.025 + Math.exp(-0.82 * Math.pow(resistivity * front * 1e6, 0.257));
    }

    private static double beta(double resistivity, double front) {
        return 0.17 + Math.exp(-0.22 * Math.pow(resistivity * front * 1e6, 0.555));
    }
}
