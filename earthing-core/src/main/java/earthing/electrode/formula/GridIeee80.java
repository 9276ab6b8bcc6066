package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Mesh and step voltage of a grid of equal meshes in uniform ground: Em = ρ·I·Km·Ki/LM, Es = ρ·I·Ks·Ki/LS with Ki =
 * 0.644 + 0.148n, Km = 1/(2π)·(ln(D²/(16hd) + (D+2h)²/(8Dd) − h/(4d)) + Kii/Kh·ln(8/(π(2n−1)))), Kh = √(1 + h/1 m), Ks =
 * 1/π·(1/(2h) + 1/(D+h) + (1 − 0.5^(n−2))/D).
 *
 * @param spacing D of parallel conductors [m], &gt; 0
 * @param depth h [m], &gt; 0
 * @param diameter d of the conductor [m], &gt; 0
 * @param gridLength LC, length of horizontal conductor [m], &gt; 0
 * @param perimeter Lp [m], &gt; 0
 * @param area A [m²], &gt; 0
 * @param extentX greatest extent Lx [m], &gt; 0
 * @param extentY greatest extent Ly [m], &gt; 0
 * @param rodLength Lr of each rod [m]; 0 without rods
 * @param rodTotal LR of all rods together [m]; 0 without rods
 * @param rodsOnPerimeter whether rods stand along the perimeter or at the corners
 */
public record GridIeee80(
        double spacing,
        double depth,
        double diameter,
        double gridLength,
        double perimeter,
        double area,
        double extentX,
        double extentY,
        double rodLength,
        double rodTotal,
        boolean rodsOnPerimeter) {

    /** Where the formulas come from. */
    public static final Source SOURCE =
            Source.standard("IEEE Std 80-2013", "eq. (85) to (99)", Source.Status.FROM_MEMORY);

    private static final String RANGE = "n <= 25, 0.25 m <= h <= 2.5 m, d < 0.25 h, D > 2.5 m";

    /**
     * Checks the dimensions.
     *
     * @param spacing D of parallel conductors [m], &gt; 0
     * @param depth h [m], &gt; 0
     * @param diameter d of the conductor [m], &gt; 0
     * @param gridLength LC, length of horizontal conductor [m], &gt; 0
     * @param perimeter Lp [m], &gt; 0
     * @param area A [m²], &gt; 0
     * @param extentX greatest extent Lx [m], &gt; 0
     * @param extentY greatest extent Ly [m], &gt; 0
     * @param rodLength Lr of each rod [m]; 0 without rods
     * @param rodTotal LR of all rods together [m]; 0 without rods
     * @param rodsOnPerimeter whether rods stand along the perimeter or at the corners
     */
    public GridIeee80 {
        Positive.require("spacing", spacing);
        Positive.require("depth", depth);
        Positive.require("diameter", diameter);
        Positive.require("grid length", gridLength);
        Positive.require("perimeter", perimeter);
        Positive.require("area", area);
        Positive.require("extent", extentX);
        Positive.require("extent", extentY);
        if (!(rodLength >= 0) || !(rodTotal >= rodLength)) {
            throw new IllegalArgumentException(
                    "rod lengths must be >= 0 m; have " + rodLength + " m each, " + rodTotal + " m in all");
        }
    }

    /**
     * Effective number of parallel conductors, n = na·nb·nc with nd = 1.
     *
     * @return n [-]
     */
    public double effectiveNumber() {
        double na = 2 * gridLength / perimeter;
        double nb = Math.sqrt(perimeter / (4 * Math.sqrt(area)));
        double box = extentX * extentY;
        double nc = Math.pow(box / area, 0.7 * area / box);
        return na * nb * nc;
    }

    /**
     * Irregularity factor.
     *
     * @return Ki [-]
     */
    public double irregularity() {
        return 0.644 + 0.148 * effectiveNumber();
    }

    /**
     * Weight of the inner conductors.
     *
     * @return Kii [-], 1 with rods along the perimeter
     */
    public double cornerWeight() {
        double n = effectiveNumber();
        return rodsOnPerimeter ? 1 : 1 / Math.pow(2 * n, 2 / n);
    }

    /**
     * Geometric factor of the mesh voltage.
     *
     * @return Km [-]
     */
    public double meshFactor() {
        double n = effectiveNumber();
        double wide = spacing + 2 * depth;
        double inner = spacing * spacing / (16 * depth * diameter)
                + wide * wide / (8 * spacing * diameter)
                - depth / (4 * diameter);
        return (Math.log(inner) + cornerWeight() / Math.sqrt(1 + depth) * Math.log(8 / (Math.PI * (2 * n - 1))))
                / (2 * Math.PI);
    }

    /**
     * Geometric factor of the step voltage.
     *
     * @return Ks [-]
     */
    public double stepFactor() {
        return (1 / (2 * depth) + 1 / (spacing + depth) + (1 - Math.pow(0.5, effectiveNumber() - 2)) / spacing)
                / Math.PI;
    }

    /**
     * Greatest touch voltage within a mesh.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param current current into the ground [A]
     * @return Em [V]
     */
    public FormulaResult meshVoltage(double resistivity, double current) {
        Positive.require("resistivity", resistivity);
        double length = rodsOnPerimeter
                ? gridLength + (1.55 + 1.22 * rodLength / Math.hypot(extentX, extentY)) * rodTotal
                : gridLength + rodTotal;
        return FormulaResult.of(
                holds(),
                RANGE,
                "Em = rho I Km Ki/LM",
                SOURCE,
                () -> resistivity * current * meshFactor() * irregularity() / length);
    }

    /**
     * Greatest step voltage.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param current current into the ground [A]
     * @return Es [V]
     */
    public FormulaResult stepVoltage(double resistivity, double current) {
        Positive.require("resistivity", resistivity);
        return FormulaResult.of(
                holds(),
                RANGE,
                "Es = rho I Ks Ki/LS",
                SOURCE,
                () -> resistivity * current * stepFactor() * irregularity() / (0.75 * gridLength + 0.85 * rodTotal));
    }

    private boolean holds() {
        return effectiveNumber() <= 25 && depth >= 0.25 && depth <= 2.5 && diameter < 0.25 * depth && spacing > 2.5;
    }
}
