package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/** Cross-section of a conductor. */
public sealed interface Shape permits SolidRound, Stranded, Tape, Tube {

    /** The radius of a round bar that is as good an electrode as a thin flat one is a quarter of its width. */
    Source EQUIVALENT_RADIUS = Source.publication(
            "Dwight, Calculation of resistances to ground, 1936",
            "buried strip: equivalent radius of width a and thickness b by (a + b)/4",
            Status.FROM_MEMORY);

    /** Geometric mean distances of plain sections. */
    Source GEOMETRIC_MEAN = Source.publication(
            "Rosa and Grover, Formulas and tables for the calculation of mutual and self-inductance, 1912",
            "geometric mean distances of areas",
            Status.FROM_MEMORY);

    /**
     * Area of metal.
     *
     * @return area [m²]
     */
    double area();

    /**
     * Radius of the round bar that replaces the section in the electric field: the outer radius of a round section, a
     * quarter of width plus thickness of a tape.
     *
     * @return radius [m]
     */
    double equivalentRadius();

    /**
     * Geometric mean distance of the section from itself, for uniform current.
     *
     * @return radius [m]
     */
    double geometricMeanRadius();

    /**
     * Length of the outline, through which heat leaves.
     *
     * @return perimeter [m]
     */
    double perimeter();
}
