package earthing.study;

import earthing.conductor.Metal;
import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
import earthing.electrode.formula.RodDwight;
import earthing.network.Circuit;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.Conductor;
import earthing.site.Line;
import earthing.site.LowVoltageTransformer;
import earthing.site.Pole;
import earthing.site.PoleMaterial;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.study.EarthPaths.Member;
import java.util.List;
import java.util.Optional;

/**
 * The members that lead a surge away beside the main earth, meant or not: metal of the pole, stays, wires of the line,
 * networks that end at the pole, the feeder of an antenna. What has a shape is a conductor at its true position, what
 * leads away from the pole is the resistance with which it answers.
 */
final class SecondPaths {

    /** Node of the pole's metal at the cubicle's height. */
    static final String POLE_AT_CUBICLE = "pole at the cubicle's height";
    /** Node of the upper end of a pole's metal that is not bonded. */
    static final String POLE_TOP = "pole at the tank";
    /** Bracket of a bonded antenna above the tank. */
    static final String BRACKET = "antenna bracket";
    /** Beginning of the branches from the foot of a stay to remote earth. */
    static final String ANCHOR_BRANCH = "anchor of ";
    /** Beginning of the branches of the pole's metal. */
    static final String POLE = "pole ";

    private static final Source LINE = Source.tool("a line of two directions, each 450 ohm");
    private static final Source FAR_EARTH = Source.tool("earths of a low-voltage network together are a few ohms");
    private static final Source STAY_WIRE = Source.commonPractice("a stay wire of 50 mm2 steel");
    private static final Source ANCHOR =
            Source.commonPractice("the anchor of a stay earths like a rod of 1.5 m and 16 mm in the top layer");

    /** Wires that stand for the wall of a conducting pole. */
    private static final int WALL_WIRES = 8;

    private static final double STAY_AREA = 50e-6;
    private static final double ANCHOR_LENGTH = 1.5;
    private static final double ANCHOR_RADIUS = 8e-3;
    /** Radius of an antenna feeder's screen [m]. */
    static final double FEEDER_RADIUS = 0.005;

    private final Site site;
    private final SiteEarth earth;
    private final PoleGeometry geometry;
    private final Inputs in;
    private final List<PoleCircuit.Piece> pieces;
    private final Circuit.Builder circuit;
    private final List<String> notes;

    SecondPaths(
            Site site,
            SiteEarth earth,
            PoleGeometry geometry,
            Inputs in,
            List<PoleCircuit.Piece> pieces,
            Circuit.Builder circuit,
            List<String> notes) {
        this.site = site;
        this.earth = earth;
        this.geometry = geometry;
        this.in = in;
        this.pieces = pieces;
        this.circuit = circuit;
        this.notes = notes;
    }

    /** A path that is meant to run beside the main earth. */
    void parallel(Member member) throws MissingInput {
        Optional<Stay> stay = StayAnchors.named(site, member.name());
        if (member.name().startsWith(POLE)) {
            wall(member.name());
        } else if (stay.isPresent()) {
            stay(stay.get());
        } else if (FaultSolver.isReturnWire(member.name())) {
            Line line = site.line();
            double spans = line == null || line.spans() == null ? 2 : line.spans();
            double each = in.orElse(
                    line == null ? null : line.surgeImpedance(),
                    "line.surge-impedance",
                    450,
                    Dimension.RESISTANCE,
                    LINE);
            circuit.resistor(member.name(), EarthPaths.TANK, Circuit.REFERENCE, each / spans);
        } else if (member.name().equals("low-voltage neutral")) {
            circuit.resistor(member.name(), EarthPaths.TANK, Circuit.REFERENCE, lowVoltageEarth());
        } else if (member.name().equals(CableRiser.SCREEN)) {
            new CableRiser(site, earth, geometry, in, pieces, circuit, notes).add();
        } else {
            notes.add(member.name() + " is not modelled as a path of the surge");
        }
    }

    private double lowVoltageEarth() throws MissingInput {
        LowVoltageTransformer transformer = site.lvTransformer();
        return in.orElse(
                transformer == null ? null : transformer.neutralEarthResistance(),
                "lv-transformer.neutral-earth-resistance",
                10,
                Dimension.RESISTANCE,
                FAR_EARTH);
    }

    /** A path that is not meant to be one. */
    void unintended(Member member) throws MissingInput {
        if (member.name().equals("antenna feeder screen")) {
            feeder(member);
        } else if (member.to().equals(EarthPaths.EARTH)) {
            circuit.resistor(
                    member.name(),
                    member.from(),
                    Circuit.REFERENCE,
                    in.orElse(null, "resistance of " + member.name(), 10, Dimension.RESISTANCE, FAR_EARTH));
        }
    }

    private void feeder(Member member) throws MissingInput {
        Measure distance = site.antenna() == null ? null : site.antenna().feederSeparation();
        double x = geometry.leadX() - in.need(distance, "antenna.feeder-separation");
        String bracket = EarthPaths.TANK;
        if (member.fromHeight() > geometry.tankHeight()) {
            bracket = BRACKET;
            piece(
                    "antenna bracket lead",
                    EarthPaths.TANK,
                    bracket,
                    new Point(geometry.leadX(), 0, geometry.tankHeight()),
                    new Point(geometry.leadX(), 0, member.fromHeight()),
                    FEEDER_RADIUS,
                    0);
        }
        piece(
                member.name(),
                bracket,
                EarthPaths.CUBICLE,
                new Point(x, 0, member.fromHeight()),
                new Point(x, 0, geometry.cubicleHeight()),
                FEEDER_RADIUS,
                0);
    }

    /**
     * A bonded stay leaves the pole's surface beside the main earth and runs straight to its anchor; where it starts above
     * or below the tank a bond runs up or down the pole.
     */
    private void stay(Stay stay) throws MissingInput {
        double top = in.need(stay.topHeight(), "stays.top-height");
        double out = in.need(stay.anchorDistance(), "stays.anchor-distance");
        // Clear of the main earth, which runs at +x.
        double x = out < 0 ? -geometry.leadX() : 0;
        double y = out < 0 ? 0 : -geometry.leadX();
        Conductor wire = stay.conductor();
        double area = STAY_AREA;
        Metal metal = Metal.STEEL_GALVANISED;
        if (wire == null) {
            in.choice("stays.conductor", stay.name() + ": 50 mm2 of galvanised steel under a surge", STAY_WIRE);
        } else {
            area = PoleGeometry.area(wire, "stays.conductor", in);
            metal = PoleGeometry.metal(wire.material());
        }
        double radius = PoleGeometry.radius(area);
        double perLength = PoleGeometry.resistancePerLength(metal, area);
        String head = EarthPaths.TANK;
        double rise = Math.abs(top - geometry.tankHeight());
        if (rise > 20 * radius) {
            head = "head of " + stay.name();
            piece(
                    "bond of " + stay.name(),
                    EarthPaths.TANK,
                    head,
                    new Point(x, y, geometry.tankHeight()),
                    new Point(x, y, top),
                    radius,
                    perLength * rise);
        }
        boolean shaped = earth.names().contains(StayAnchors.electrode(stay));
        String foot = shaped ? EarthPaths.electrodeNode(StayAnchors.electrode(stay)) : "foot of " + stay.name();
        piece(
                stay.name(),
                head,
                foot,
                new Point(x, y, top),
                new Point(out, 0, 0),
                radius,
                perLength * StayAnchors.length(stay));
        if (!shaped) {
            circuit.resistor(ANCHOR_BRANCH + stay.name(), foot, Circuit.REFERENCE, anchorResistance(stay));
            notes.add(stay.name() + ": the mutual resistance of its anchor and the electrodes is left out");
        }
    }

    private double anchorResistance(Stay stay) throws MissingInput {
        double rod = RodDwight.resistance(earth.soil().resistivity(0), ANCHOR_LENGTH, ANCHOR_RADIUS)
                .value()
                .orElseThrow();
        Measure given = stay.anchorResistance();
        return given == null
                ? in.orElse(null, "stays.anchor-resistance", rod, Dimension.RESISTANCE, ANCHOR)
                : in.need(given, "stays.anchor-resistance", earth.bound());
    }

    /**
     * The metal of a conducting pole that is not bonded carries nothing until an arc strikes to it: one wire of the pole's
     * radius, open above. A bonded one is added with the members.
     */
    void metalOfPole(EarthPaths paths) throws MissingInput {
        Pole pole = site.pole();
        if (pole != null && pole.material() == PoleMaterial.STEEL && pole.mountingClearance() == null) {
            notes.add("what is bolted to a steel pole is joined to its metal; the results hold for insulated mountings,"
                    + " whose strength is told once pole.mounting-clearance is given");
        }
        boolean there = paths.members().stream().anyMatch(m -> m.name().startsWith(POLE));
        if (pole == null || !pole.conducts() || there || !earth.names().contains(ElectrodeBars.POLE_BUTT)) {
            return;
        }
        double radius = ElectrodeBars.radius(pole, in);
        double cut = geometry.cubicleHeight();
        piece(
                POLE + "metal",
                POLE_TOP,
                POLE_AT_CUBICLE,
                new Point(0, 0, geometry.tankHeight()),
                new Point(0, 0, cut),
                radius,
                0);
        piece(
                POLE + "metal below cubicle",
                POLE_AT_CUBICLE,
                ElectrodeBars.POLE_BUTT,
                new Point(0, 0, cut),
                new Point(0, 0, 0),
                radius,
                0);
    }

    /** A conducting pole is a cage of wires on its wall: a wire inside it then carries almost nothing. */
    private void wall(String name) throws MissingInput {
        if (!earth.names().contains(ElectrodeBars.POLE_BUTT)) {
            notes.add("the pole's metal has no contact with the soil at this bound and carries no surge current");
            return;
        }
        Pole pole = site.pole();
        if (pole == null) {
            return;
        }
        double radius = ElectrodeBars.radius(pole, in);
        double cut = geometry.cubicleHeight();
        // N wires of radius R/N on a circle of radius R have the tube's inductance.
        double wire = radius / WALL_WIRES;
        for (int i = 0; i < WALL_WIRES; i++) {
            double angle = 2 * Math.PI * (i + 0.5) / WALL_WIRES;
            double x = radius * Math.cos(angle);
            double y = radius * Math.sin(angle);
            piece(
                    name + " " + (i + 1),
                    EarthPaths.TANK,
                    POLE_AT_CUBICLE,
                    new Point(x, y, geometry.tankHeight()),
                    new Point(x, y, cut),
                    wire,
                    0);
            piece(
                    name + " below cubicle " + (i + 1),
                    POLE_AT_CUBICLE,
                    ElectrodeBars.POLE_BUTT,
                    new Point(x, y, cut),
                    new Point(x, y, 0),
                    wire,
                    0);
        }
    }

    private void piece(String name, String from, String to, Point start, Point end, double radius, double resistance) {
        pieces.add(new PoleCircuit.Piece(name, from, to, RoundConductor.between(start, end, radius), resistance));
    }
}
