package earthing.electrode.wire;

/**
 * One straight buried bar of round section at one potential along its length, bare or in a sleeve of other material.
 *
 * @param electrode name of the electrode it belongs to; bars of one name are bonded together
 * @param x1 first end, east [m]
 * @param y1 first end, north [m]
 * @param depth1 depth of the first end [m], ≥ 0
 * @param x2 second end, east [m]
 * @param y2 second end, north [m]
 * @param depth2 depth of the second end [m], ≥ 0
 * @param radius radius where the soil begins [m], &gt; 0 and at most half the length; of a sleeve its outer radius
 * @param sleeve resistance from the metal through the sleeve to the soil, of one metre of length [Ω·m], ≥ 0; 0 for bare
 * @param metal radius of the metal [m], &gt; 0 and at most {@code radius}
 */
public record Bar(
        String electrode,
        double x1,
        double y1,
        double depth1,
        double x2,
        double y2,
        double depth2,
        double radius,
        double sleeve,
        double metal) {

    /**
     * A bare bar.
     *
     * @param electrode name of the electrode it belongs to; bars of one name are bonded together
     * @param x1 first end, east [m]
     * @param y1 first end, north [m]
     * @param depth1 depth of the first end [m], ≥ 0
     * @param x2 second end, east [m]
     * @param y2 second end, north [m]
     * @param depth2 depth of the second end [m], ≥ 0
     * @param radius radius [m], &gt; 0 and at most half the length
     */
    public Bar(
            String electrode, double x1, double y1, double depth1, double x2, double y2, double depth2, double radius) {
        this(electrode, x1, y1, depth1, x2, y2, depth2, radius, 0, radius);
    }

    /**
     * Refuses bars without length, too thick ones, and ones that lie partly above ground.
     *
     * @param electrode name of the electrode it belongs to; bars of one name are bonded together
     * @param x1 first end, east [m]
     * @param y1 first end, north [m]
     * @param depth1 depth of the first end [m], ≥ 0
     * @param x2 second end, east [m]
     * @param y2 second end, north [m]
     * @param depth2 depth of the second end [m], ≥ 0
     * @param radius radius where the soil begins [m], &gt; 0 and at most half the length
     * @param sleeve resistance of the sleeve of one metre of length [Ω·m], ≥ 0
     * @param metal radius of the metal [m], &gt; 0 and at most {@code radius}
     */
    public Bar {
        if (electrode.isBlank()) {
            throw new IllegalArgumentException("a bar needs the name of its electrode");
        }
        if (!(depth1 >= 0) || !(depth2 >= 0)) {
            throw new IllegalArgumentException("a bar must lie below ground; have depths " + depth1 + " and " + depth2);
        }
        if (!(radius > 0)) {
            throw new IllegalArgumentException("radius of a bar must be > 0 m; have " + radius);
        }
        if (!(sleeve >= 0) || Double.isInfinite(sleeve)) {
            throw new IllegalArgumentException("resistance of a sleeve must be >= 0 ohm.m; have " + sleeve);
        }
        if (!(metal > 0) || !(metal <= radius)) {
            throw new IllegalArgumentException(
                    "radius of the metal must be > 0 m and at most " + radius + " m; have " + metal);
        }
        double length = length(x1, y1, depth1, x2, y2, depth2);
        if (!(length >= 2 * radius) || Double.isInfinite(length)) {
            throw new IllegalArgumentException(
                    "a bar must be at least as long as thick; have length " + length + " m, radius " + radius + " m");
        }
        if (!((depth1 + depth2) / 2 >= radius)) {
            throw new IllegalArgumentException("a bar must be covered by soil; have mean depth " + (depth1 + depth2) / 2
                    + " m, radius " + radius + " m");
        }
    }

    private static double length(double x1, double y1, double z1, double x2, double y2, double z2) {
        return Math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1) + (z2 - z1) * (z2 - z1));
    }

    /**
     * Distance between the axes.
     *
     * @param other another bar
     * @return least distance [m]
     */
    public double distance(Bar other) {
        double[] place = nearest(other);
        double s = place[0];
        double t = place[1];
        return length(
                x1 + s * (x2 - x1),
                y1 + s * (y2 - y1),
                depth1 + s * (depth2 - depth1),
                other.x1 + t * (other.x2 - other.x1),
                other.y1 + t * (other.y2 - other.y1),
                other.depth1 + t * (other.depth2 - other.depth1));
    }

    /** Place 0 … 1 on this bar that is nearest to another one. */
    double nearestTo(Bar other) {
        return nearest(other)[0];
    }

    /** The nearest places of both axes, 0 … 1 each. */
    private double[] nearest(Bar other) {
        double[] d = {x2 - x1, y2 - y1, depth2 - depth1};
        double[] e = {other.x2 - other.x1, other.y2 - other.y1, other.depth2 - other.depth1};
        double[] r = {x1 - other.x1, y1 - other.y1, depth1 - other.depth1};
        double dd = dot(d, d);
        double ee = dot(e, e);
        double de = dot(d, e);
        double slant = dd * ee - de * de;
        double s = slant > 1e-12 * dd * ee ? clamp((de * dot(e, r) - dot(d, r) * ee) / slant) : 0;
        double t = clamp((de * s + dot(e, r)) / ee);
        return new double[] {clamp((de * t - dot(d, r)) / dd), t};
    }

    /** Whether an end of this bar touches an end of another one. */
    boolean meetsEndToEnd(Bar other) {
        double near = radius + other.radius;
        return length(x1, y1, depth1, other.x1, other.y1, other.depth1) < near
                || length(x1, y1, depth1, other.x2, other.y2, other.depth2) < near
                || length(x2, y2, depth2, other.x1, other.y1, other.depth1) < near
                || length(x2, y2, depth2, other.x2, other.y2, other.depth2) < near;
    }

    /** Potential at a place, as of a tube of a radius there, while this bar leaks evenly: ∫ dl/R along it [-]. */
    double evenPotential(double x, double y, double depth, double tube) {
        double a2 = radius * radius + tube * tube;
        double first = Math.sqrt(square(x - x1) + square(y - y1) + square(depth - depth1) + a2);
        double second = Math.sqrt(square(x - x2) + square(y - y2) + square(depth - depth2) + a2);
        double sum = first + second;
        return Math.log((sum + length()) / (sum - length()));
    }

    private static double square(double v) {
        return v * v;
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double clamp(double share) {
        return Math.max(0, Math.min(1, share));
    }

    /**
     * Length of the bar.
     *
     * @return length [m]
     */
    public double length() {
        return length(x1, y1, depth1, x2, y2, depth2);
    }

    /**
     * The same bar in a sleeve of concrete or backfill, through which the current flows radially: ρc·ln(D/d)/(2π) ohm for
     * one metre. The ends of the sleeve are those of the bar.
     *
     * @param outer outer radius of the sleeve [m], above the radius of the bar
     * @param resistivity resistivity of the sleeve ρc [Ω·m], &gt; 0
     * @return the bar with the sleeve's radius and resistance
     */
    public Bar in(double outer, double resistivity) {
        if (!(outer > radius) || !(resistivity > 0)) {
            throw new IllegalArgumentException("a sleeve needs a radius above " + radius
                    + " m and a resistivity above 0; have " + outer + " m, " + resistivity + " ohm.m");
        }
        return new Bar(
                electrode,
                x1,
                y1,
                depth1,
                x2,
                y2,
                depth2,
                outer,
                sleeve + resistivity * Math.log(outer / radius) / (2 * Math.PI),
                metal);
    }

    /**
     * What the soil sees of the bar.
     *
     * @return a bare bar whose metal begins where the soil does; the bar itself if it is bare
     */
    public Bar outside() {
        return sleeve > 0 ? new Bar(electrode, x1, y1, depth1, x2, y2, depth2, radius) : this;
    }
}
