package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Potential of the ground around a rod driven from the surface of uniform ground, V = ρI/(2πL)·ln((L + √(L² + p²))/p), for
 * a current that leaves the rod evenly over its length. The true current is denser at the lower end, so the form is
 * high near the rod: up to 1 % of the rod's potential for a rod of 3 m, 3 % for one of 30 m.
 */
public final class RodSurfacePotential {

    /** The form with its table. */
    public static final Source SOURCE = Source.publication(
            "MIL-HDBK-419A vol. I, 1987", "2.8.1.2.3, table 2-7: potential around a driven rod", Source.Status.READ);

    private RodSurfacePotential() {}

    /**
     * Potential for one ampere.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @param distance p from the axis of the rod [m], &gt; 0
     * @return V/I [Ω]
     */
    public static double perAmpere(double resistivity, double length, double distance) {
        Positive.require("distance", distance);
        Positive.require("length", length);
        return Positive.require("resistivity", resistivity)
                / (2 * Math.PI * length)
                * Math.log((length + Math.hypot(length, distance)) / distance);
    }

    /**
     * Voltage between the rod and the ground at a distance, over the potential of the rod by
     * {@link RodDwight}'s ln(4L/a) − 1.
     *
     * @param length L [m], &gt; 0
     * @param radius a [m], below a tenth of the length
     * @param distance p from the axis of the rod [m], above the radius
     * @return voltage over potential, 0 to 1
     */
    public static double stepRatio(double length, double radius, double distance) {
        if (!(Positive.require("radius", radius) < length / 10) || !(distance > radius)) {
            throw new IllegalArgumentException(
                    "a rod has radius < length/10 and the place lies outside it; have radius " + radius + " m, length "
                            + length + " m, distance " + distance + " m");
        }
        double rise = (Math.log(4 * length / radius) - 1) / (2 * Math.PI * length);
        return 1 - perAmpere(1, length, distance) / rise;
    }
}
