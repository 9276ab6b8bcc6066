package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Grid with vertical rods from the resistances of the grid R11, of the rods R22 and between both R12: R = (R11·R22 −
 * R12²)/(R11 + R22 − 2R12), with R11 = ρ/(πLg)·(ln(2Lg/√(d·h)) + K1·Lg/√A − K2), R22 = ρa/(2πnlr)·(ln(8lr/dr) − 1 +
 * 2K1·lr/√A·(√n − 1)²), R12 = ρa/(πLg)·(ln(2Lg/lr) + K1·Lg/√A − K2 + 1).
 *
 * <p>ρ resistivity at the grid, ρa along the rods [Ω·m]; Lg length of grid conductor [m], d its diameter [m], h depth
 * [m], A area [m²]; n number of rods, lr length of each [m], dr diameter [m]. n is the number of rods, not of nodes.
 *
 * @param gridResistivity ρ [Ω·m], &gt; 0
 * @param rodResistivity ρa [Ω·m], &gt; 0
 * @param gridLength Lg [m], &gt; 0
 * @param area A [m²], &gt; 0
 * @param gridDiameter d [m], &gt; 0
 * @param depth h [m], &gt; 0
 * @param rods n, ≥ 1
 * @param rodLength lr [m], &gt; 0
 * @param rodDiameter dr [m], &gt; 0
 * @param k1 K1 [-]
 * @param k2 K2 [-]
 */
public record GridSchwarz(
        double gridResistivity,
        double rodResistivity,
        double gridLength,
        double area,
        double gridDiameter,
        double depth,
        int rods,
        double rodLength,
        double rodDiameter,
        double k1,
        double k2) {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Schwarz, Analytical Expressions for the Resistance of Grounding Systems, Trans. AIEE 73, 1954;"
                    + " IEEE Std 80-2013 eq. (58) to (61)",
            "R11, R22, R12",
            Source.Status.FROM_MEMORY);

    /**
     * Checks the dimensions.
     *
     * @param gridResistivity ρ [Ω·m], &gt; 0
     * @param rodResistivity ρa [Ω·m], &gt; 0
     * @param gridLength Lg [m], &gt; 0
     * @param area A [m²], &gt; 0
     * @param gridDiameter d [m], &gt; 0
     * @param depth h [m], &gt; 0
     * @param rods n, ≥ 1
     * @param rodLength lr [m], &gt; 0
     * @param rodDiameter dr [m], &gt; 0
     * @param k1 K1 [-]
     * @param k2 K2 [-]
     */
    public GridSchwarz {
        Positive.require("resistivity at the grid", gridResistivity);
        Positive.require("resistivity along the rods", rodResistivity);
        Positive.require("grid length", gridLength);
        Positive.require("area", area);
        Positive.require("grid diameter", gridDiameter);
        Positive.require("depth", depth);
        Positive.require("rod length", rodLength);
        Positive.require("rod diameter", rodDiameter);
        if (rods < 1) {
            throw new IllegalArgumentException("need at least one rod; have " + rods);
        }
    }

    private double shape() {
        return k1 * gridLength / Math.sqrt(area) - k2;
    }

    /**
     * Resistance of the grid alone.
     *
     * @return R11 [Ω]
     */
    public double grid() {
        return gridResistivity
                / (Math.PI * gridLength)
                * (Math.log(2 * gridLength / Math.sqrt(gridDiameter * depth)) + shape());
    }

    /**
     * Resistance of all rods alone.
     *
     * @return R22 [Ω]
     */
    public double rodBed() {
        double root = Math.sqrt(rods) - 1;
        return rodResistivity
                / (2 * Math.PI * rods * rodLength)
                * (Math.log(8 * rodLength / rodDiameter) - 1 + 2 * k1 * rodLength / Math.sqrt(area) * root * root);
    }

    /**
     * Mutual resistance.
     *
     * @return R12 [Ω]
     */
    public double mutual() {
        return rodResistivity / (Math.PI * gridLength) * (Math.log(2 * gridLength / rodLength) + shape() + 1);
    }

    /**
     * Resistance of grid and rods joined.
     *
     * @return R [Ω]; none where the mutual resistance is not below both others
     */
    public FormulaResult joined() {
        double r11 = grid();
        double r22 = rodBed();
        double r12 = mutual();
        return FormulaResult.of(
                r12 * r12 < r11 * r22 && r11 > 0 && r22 > 0,
                "R12^2 < R11 R22",
                "R = (R11 R22 - R12^2)/(R11 + R22 - 2 R12)",
                SOURCE,
                () -> (r11 * r22 - r12 * r12) / (r11 + r22 - 2 * r12));
    }
}
