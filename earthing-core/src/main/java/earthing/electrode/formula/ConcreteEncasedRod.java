package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Vertical rod in a shell of concrete or backfill, R = 1/(2πL)·(ρc·ln(Dc/d) + ρ·(ln(8L/Dc) − 1)).
 *
 * <p>ρ resistivity of the soil, ρc of the shell [Ω·m], L length [m], d diameter of the rod, Dc of the shell [m].
 */
public final class ConcreteEncasedRod {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Fagan & Lee, The Use of Concrete-Enclosed Reinforcing Rods as Grounding Electrodes, IEEE Trans. IGA-6, 1970;"
                    + " IEEE Std 80-2013, 14.6",
            "rod in a shell",
            Source.Status.FROM_MEMORY);

    private ConcreteEncasedRod() {}

    /**
     * Resistance of the encased rod.
     *
     * @param soil ρ [Ω·m], &gt; 0
     * @param shell ρc [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @param rodDiameter d [m], &gt; 0
     * @param shellDiameter Dc [m], &gt; 0
     * @return R [Ω]; none for Dc ≤ d or L &lt; 5Dc
     */
    public static FormulaResult resistance(
            double soil, double shell, double length, double rodDiameter, double shellDiameter) {
        Positive.require("soil resistivity", soil);
        Positive.require("shell resistivity", shell);
        Positive.require("length", length);
        Positive.require("rod diameter", rodDiameter);
        Positive.require("shell diameter", shellDiameter);
        return FormulaResult.of(
                shellDiameter > rodDiameter && length >= 5 * shellDiameter,
                "Dc > d, L >= 5 Dc",
                "R = 1/(2 pi L) (rho_c ln(Dc/d) + rho (ln(8L/Dc) - 1))",
                SOURCE,
                () -> (shell * Math.log(shellDiameter / rodDiameter)
                                + soil * (Math.log(8 * length / shellDiameter) - 1))
                        / (2 * Math.PI * length));
    }
}
