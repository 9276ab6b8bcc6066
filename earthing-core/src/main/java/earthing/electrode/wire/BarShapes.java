package earthing.electrode.wire;

import earthing.quantity.Source;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Ready shapes of electrodes, made of bars. Coordinates east and north, depths down, all in metres. */
public final class BarShapes {

    /** Radius of the round bar that stands for a flat tape. */
    public static final Source TAPE = Source.publication(
            "Sunde, Earth Conduction Effects in Transmission Systems, 1949",
            "thin strip: a quarter of the width",
            Source.Status.FROM_MEMORY);

    /** Radius of the wires of a grating that equals a sheet. */
    public static final Source GRATING = Source.publication(
            "Lamb, On the reflection and transmission of electric waves by a metallic grating, Proc. London Math. Soc., 1898;"
                    + " Wait 1954",
            "a grating of spacing w and radius w/(2 pi) is a sheet",
            Source.Status.FROM_MEMORY);

    private BarShapes() {}

    /**
     * A vertical rod.
     *
     * @param electrode name
     * @param x east [m]
     * @param y north [m]
     * @param top depth of its upper end [m]
     * @param length length [m]
     * @param radius radius [m]
     * @return one bar
     */
    public static List<Bar> rod(String electrode, double x, double y, double top, double length, double radius) {
        return List.of(new Bar(electrode, x, y, top, x, y, top + length, radius));
    }

    /**
     * A rod driven at an angle.
     *
     * @param electrode name
     * @param x east of its upper end [m]
     * @param y north of its upper end [m]
     * @param top depth of its upper end [m]
     * @param length length [m]
     * @param rake angle from the vertical [rad], 0 … π/2
     * @param azimuth direction in which it leans, from east to north [rad]
     * @param radius radius [m]
     * @return one bar
     */
    public static List<Bar> rakedRod(
            String electrode,
            double x,
            double y,
            double top,
            double length,
            double rake,
            double azimuth,
            double radius) {
        if (!(rake >= 0 && rake <= Math.PI / 2)) {
            throw new IllegalArgumentException("rake must be from 0 to a right angle; have " + rake + " rad");
        }
        double plan = length * Math.sin(rake);
        return List.of(new Bar(
                electrode,
                x,
                y,
                top,
                x + plan * Math.cos(azimuth),
                y + plan * Math.sin(azimuth),
                top + length * Math.cos(rake),
                radius));
    }

    /**
     * Equal vertical rods in a line going east. The wire between them is not part of it.
     *
     * @param electrode name
     * @param x east of the first [m]
     * @param y north of all [m]
     * @param count number of rods, ≥ 1
     * @param spacing distance from rod to rod [m]
     * @param top depth of the upper ends [m]
     * @param length length of each [m]
     * @param radius radius [m]
     * @return one bar a rod
     */
    public static List<Bar> rodsInLine(
            String electrode, double x, double y, int count, double spacing, double top, double length, double radius) {
        requireCount(count, 1, "rods");
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            bars.addAll(rod(electrode, x + i * spacing, y, top, length, radius));
        }
        return List.copyOf(bars);
    }

    /**
     * Equal vertical rods on a circle. The wire between them is not part of it.
     *
     * @param electrode name
     * @param x east of the centre [m]
     * @param y north of the centre [m]
     * @param count number of rods, ≥ 2
     * @param ringRadius radius of the circle [m]
     * @param top depth of the upper ends [m]
     * @param length length of each [m]
     * @param radius radius of each [m]
     * @return one bar a rod
     */
    public static List<Bar> rodsInRing(
            String electrode,
            double x,
            double y,
            int count,
            double ringRadius,
            double top,
            double length,
            double radius) {
        requireCount(count, 2, "rods");
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double angle = 2 * Math.PI * i / count;
            bars.addAll(rod(
                    electrode,
                    x + ringRadius * Math.cos(angle),
                    y + ringRadius * Math.sin(angle),
                    top,
                    length,
                    radius));
        }
        return List.copyOf(bars);
    }

    /**
     * A straight horizontal wire, or a tape with the radius from {@link #radiusOfTape}.
     *
     * @param electrode name
     * @param x1 east of one end [m]
     * @param y1 north of one end [m]
     * @param x2 east of the other end [m]
     * @param y2 north of the other end [m]
     * @param depth depth [m]
     * @param radius radius [m]
     * @return one bar
     */
    public static List<Bar> wire(
            String electrode, double x1, double y1, double x2, double y2, double depth, double radius) {
        return List.of(new Bar(electrode, x1, y1, depth, x2, y2, depth, radius));
    }

    /**
     * Horizontal arms of equal length and angle from one point.
     *
     * @param electrode name
     * @param x east of the centre [m]
     * @param y north of the centre [m]
     * @param arms number of arms, ≥ 2
     * @param armLength length of each arm [m]
     * @param depth depth [m]
     * @param radius radius [m]
     * @return one bar an arm
     */
    public static List<Bar> star(
            String electrode, double x, double y, int arms, double armLength, double depth, double radius) {
        requireCount(arms, 2, "arms");
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < arms; i++) {
            double angle = 2 * Math.PI * i / arms;
            bars.addAll(wire(
                    electrode, x, y, x + armLength * Math.cos(angle), y + armLength * Math.sin(angle), depth, radius));
        }
        return List.copyOf(bars);
    }

    /**
     * A horizontal ring as a regular polygon through the circle.
     *
     * @param electrode name
     * @param x east of the centre [m]
     * @param y north of the centre [m]
     * @param ringRadius radius of the circle on which the corners lie [m]
     * @param sides number of sides, ≥ 3
     * @param depth depth [m]
     * @param radius radius of the wire [m]
     * @return one bar a side
     */
    public static List<Bar> ring(
            String electrode, double x, double y, double ringRadius, int sides, double depth, double radius) {
        requireCount(sides, 3, "sides");
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < sides; i++) {
            double from = 2 * Math.PI * i / sides;
            double to = 2 * Math.PI * ((i + 1) % sides) / sides;
            bars.addAll(wire(
                    electrode,
                    x + ringRadius * Math.cos(from),
                    y + ringRadius * Math.sin(from),
                    x + ringRadius * Math.cos(to),
                    y + ringRadius * Math.sin(to),
                    depth,
                    radius));
        }
        return List.copyOf(bars);
    }

    /**
     * A rectangular horizontal mat of equal meshes, its south-west corner given. Each mesh side is one bar.
     *
     * @param electrode name
     * @param x east of the corner [m]
     * @param y north of the corner [m]
     * @param width extent to the east [m]
     * @param length extent to the north [m]
     * @param meshesEast meshes side by side to the east, ≥ 1
     * @param meshesNorth meshes side by side to the north, ≥ 1
     * @param depth depth [m]
     * @param radius radius of the wire [m]
     * @return one bar a mesh side
     */
    public static List<Bar> mat(
            String electrode,
            double x,
            double y,
            double width,
            double length,
            int meshesEast,
            int meshesNorth,
            double depth,
            double radius) {
        requireCount(meshesEast, 1, "meshes to the east");
        requireCount(meshesNorth, 1, "meshes to the north");
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i <= meshesEast; i++) {
            for (int j = 0; j <= meshesNorth; j++) {
                double east = x + width * i / meshesEast;
                double north = y + length * j / meshesNorth;
                if (i < meshesEast) {
                    bars.addAll(wire(electrode, east, north, x + width * (i + 1) / meshesEast, north, depth, radius));
                }
                if (j < meshesNorth) {
                    bars.addAll(wire(electrode, east, north, east, y + length * (j + 1) / meshesNorth, depth, radius));
                }
            }
        }
        return List.copyOf(bars);
    }

    /** Strips that stand for a plate. */
    private static final int STRIPS = 8;

    /**
     * A thin rectangular plate as parallel strips along its longer side. A grating of round wires a distance w apart
     * equals a sheet when their radius is w/(2π) (see {@link #GRATING}); the two outermost strips, each with one free
     * edge, take the w/4 of a lone strip. On the square plate this is within 0.4 % of its known resistance.
     *
     * @param electrode name
     * @param x east of the centre [m]
     * @param y north of the centre [m]
     * @param depth depth of the centre [m]
     * @param width extent to the east [m]
     * @param length extent to the north, or down for an upright plate [m]
     * @param upright whether the plate stands
     * @return one bar a strip
     */
    public static List<Bar> plate(
            String electrode, double x, double y, double depth, double width, double length, boolean upright) {
        if (!(width > 0) || !(length > 0)) {
            throw new IllegalArgumentException("sides of a plate must be > 0 m; have " + width + ", " + length);
        }
        boolean alongEast = width >= length;
        double[] toEast = {1, 0, 0};
        double[] other = upright ? new double[] {0, 0, 1} : new double[] {0, 1, 0};
        double[] halves = new double[STRIPS];
        Arrays.fill(halves, (alongEast ? width : length) / 2);
        return strips(
                electrode,
                new double[] {x, y, depth},
                alongEast ? toEast : other,
                alongEast ? other : toEast,
                (alongEast ? length : width) / STRIPS,
                halves);
    }

    /**
     * A thin round plate at right angles to a rod, such as the one of a stay's anchor, as level strips of the areas of its
     * slices; radii as of {@link #plate}. Deep in the ground this is within 0.1 % of the disc, ρ/(8r).
     *
     * @param electrode name
     * @param x east of the centre [m]
     * @param y north of the centre [m]
     * @param depth depth of the centre [m]
     * @param radius radius of the plate [m], &gt; 0
     * @param rake angle of the rod from the vertical [rad], 0 … π/2
     * @param azimuth direction in which the rod leans, from east to north [rad]
     * @return one bar a strip
     */
    public static List<Bar> roundPlate(
            String electrode, double x, double y, double depth, double radius, double rake, double azimuth) {
        if (!(radius > 0)) {
            throw new IllegalArgumentException("radius of a plate must be > 0 m; have " + radius);
        }
        double across = 2 * radius / STRIPS;
        double[] halves = new double[STRIPS];
        for (int i = 0; i < STRIPS; i++) {
            double inner = Math.abs(i + 0.5 - STRIPS / 2.0) - 0.5;
            halves[i] = (segment(radius, (inner + 1) * across) - segment(radius, inner * across)) / (2 * across);
        }
        return strips(
                electrode,
                new double[] {x, y, depth},
                new double[] {-Math.sin(azimuth), Math.cos(azimuth), 0},
                new double[] {Math.cos(rake) * Math.cos(azimuth), Math.cos(rake) * Math.sin(azimuth), -Math.sin(rake)},
                across,
                halves);
    }

    /** Area of a disc between its middle line and a chord at a distance [m²]. */
    private static double segment(double radius, double distance) {
        double d = Math.min(distance, radius);
        return d * Math.sqrt(radius * radius - d * d) + radius * radius * Math.asin(d / radius);
    }

    /** Strips of half the given lengths along one direction, side by side in the other one. */
    private static List<Bar> strips(
            String electrode, double[] centre, double[] along, double[] aside, double across, double[] halves) {
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < halves.length; i++) {
            double move = (i + 0.5 - halves.length / 2.0) * across;
            double[] from = new double[3];
            double[] to = new double[3];
            for (int c = 0; c < 3; c++) {
                from[c] = centre[c] + move * aside[c] - halves[i] * along[c];
                to[c] = centre[c] + move * aside[c] + halves[i] * along[c];
            }
            boolean edge = i == 0 || i == halves.length - 1;
            bars.add(new Bar(
                    electrode,
                    from[0],
                    from[1],
                    from[2],
                    to[0],
                    to[1],
                    to[2],
                    edge ? radiusOfTape(across) : across / (2 * Math.PI)));
        }
        return List.copyOf(bars);
    }

    /**
     * The buried butt of a conducting pole as one thick bar from the surface down, bare all over. A coated butt is no
     * bar at all; where the coating is unknown, both are to be computed.
     *
     * @param electrode name
     * @param x east [m]
     * @param y north [m]
     * @param buried length below ground [m]
     * @param diameter outer diameter [m]
     * @return one bar
     */
    public static List<Bar> poleButt(String electrode, double x, double y, double buried, double diameter) {
        return rod(electrode, x, y, 0, buried, diameter / 2);
    }

    /**
     * Radius of the round bar equivalent to a thin flat tape, a quarter of its width. See {@link #TAPE}.
     *
     * @param width width of the tape [m], &gt; 0
     * @return radius [m]
     */
    public static double radiusOfTape(double width) {
        if (!(width > 0)) {
            throw new IllegalArgumentException("width of a tape must be > 0 m; have " + width);
        }
        return width / 4;
    }

    private static void requireCount(int count, int least, String what) {
        if (count < least) {
            throw new IllegalArgumentException("need at least " + least + " " + what + "; have " + count);
        }
    }
}
