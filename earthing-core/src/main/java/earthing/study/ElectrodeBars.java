package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.ButtContact;
import earthing.site.ConcreteShell;
import earthing.site.Electrode;
import earthing.site.MatShape;
import earthing.site.OperatorMat;
import earthing.site.PlateLie;
import earthing.site.PlateShape;
import earthing.site.Pole;
import earthing.site.PoleMaterial;
import earthing.site.Position;
import earthing.site.RingShape;
import earthing.site.RodShape;
import earthing.site.RodsInLine;
import earthing.site.RodsInRing;
import earthing.site.StarShape;
import earthing.site.WireShape;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The bars of an electrode, from the shape in the site file. */
final class ElectrodeBars {

    /** Name of the electrode that the buried metal of a pole forms. */
    static final String POLE_BUTT = "pole butt";

    private static final Source TOP = Source.tool("a driven rod whose top depth is not given starts at the surface");
    private static final Source BUTT = Source.tool(
            "a conducting butt is a thick bar; concrete around reinforcement is taken as soil, docs/theory/electrode.md");

    private static final Source SHELL = Source.tool("current crosses a shell radially, docs/theory/electrode.md");
    private static final Source COATING = Source.tool("a coating may be damaged; both bounds are computed");

    /** Sides of the polygon that stands for a ring. */
    private static final int RING_SIDES = 16;
    /** Clearance between the butt of a conducting pole and an electrode at its foot [m]. */
    private static final double CLEARANCE = 0.3;
    /** Reinforcement lies on this part of the radius of a concrete pole [1]. */
    private static final double CAGE = 0.8;

    private ElectrodeBars() {}

    /** The bars at one bound of what is around them. */
    static List<Bar> of(Electrode electrode, @Nullable Pole pole, Bound bound, Inputs in) throws MissingInput {
        List<Bar> bars = of(electrode, pole, in);
        ConcreteShell shell = electrode.concrete();
        if (shell == null) {
            return bars;
        }
        double outer = in.need(shell.diameter(), "electrodes.concrete.diameter") / 2;
        double resistivity = in.need(shell.resistivity(), "electrodes.concrete.resistivity", bound);
        in.choice("", "concrete around the metal of " + electrode.name() + " ends where the metal ends", SHELL);
        List<Bar> encased = new ArrayList<>();
        for (Bar bar : bars) {
            encased.add(sleeved(bar, outer, resistivity, "electrodes.concrete.diameter"));
        }
        return encased;
    }

    private static Bar sleeved(Bar bar, double outer, double resistivity, String key) throws MissingInput {
        try {
            return bar.in(outer, resistivity);
        } catch (IllegalArgumentException impossible) {
            throw new MissingInput("the concrete as described has no solution: " + impossible.getMessage(), key);
        }
    }

    /** The bars of the metal alone, without what is around them. */
    static List<Bar> of(Electrode electrode, @Nullable Pole pole, Inputs in) throws MissingInput {
        String name = electrode.name();
        double[] place = position(electrode, pole, in);
        double x = place[0];
        double y = place[1];
        List<Bar> bars = new ArrayList<>();
        RodShape rod = electrode.rod();
        RodsInLine line = electrode.rodsInLine();
        RodsInRing circle = electrode.rodsInRing();
        WireShape wire = electrode.wire();
        StarShape star = electrode.star();
        RingShape ring = electrode.ring();
        MatShape mat = electrode.mat();
        if (rod != null) {
            bars.addAll(BarShapes.rod(
                    name,
                    x,
                    y,
                    top(rod.topDepth(), in),
                    in.need(rod.length(), "electrodes.rod.length"),
                    in.need(rod.diameter(), "electrodes.rod.diameter") / 2));
        }
        if (line != null) {
            double top = top(line.topDepth(), in);
            double spacing = in.need(line.spacing(), "electrodes.rods-in-line.spacing");
            bars.addAll(BarShapes.rodsInLine(
                    name,
                    x,
                    y,
                    line.count(),
                    spacing,
                    top,
                    in.need(line.length(), "electrodes.rods-in-line.length"),
                    in.need(line.diameter(), "electrodes.rods-in-line.diameter") / 2));
            if (line.wireDiameter() != null && line.count() > 1 && top > 0) {
                double radius = in.need(line.wireDiameter(), "electrodes.rods-in-line.wire-diameter") / 2;
                for (int i = 0; i < line.count() - 1; i++) {
                    bars.addAll(BarShapes.wire(name, x + i * spacing, y, x + (i + 1) * spacing, y, top, radius));
                }
            }
        }
        if (circle != null) {
            double top = top(circle.topDepth(), in);
            double radius = in.need(circle.radius(), "electrodes.rods-in-ring.radius");
            bars.addAll(BarShapes.rodsInRing(
                    name,
                    x,
                    y,
                    circle.count(),
                    radius,
                    top,
                    in.need(circle.length(), "electrodes.rods-in-ring.length"),
                    in.need(circle.diameter(), "electrodes.rods-in-ring.diameter") / 2));
            if (circle.wireDiameter() != null && top > 0) {
                bars.addAll(BarShapes.ring(
                        name,
                        x,
                        y,
                        radius,
                        Math.max(circle.count(), 3) * (circle.count() < 8 ? 3 : 1),
                        top,
                        in.need(circle.wireDiameter(), "electrodes.rods-in-ring.wire-diameter") / 2));
            }
        }
        if (wire != null) {
            double length = in.need(wire.length(), "electrodes.wire.length");
            bars.addAll(BarShapes.wire(
                    name,
                    x,
                    y,
                    x + length,
                    y,
                    in.need(wire.depth(), "electrodes.wire.depth"),
                    in.need(wire.diameter(), "electrodes.wire.diameter") / 2));
        }
        if (star != null) {
            bars.addAll(BarShapes.star(
                    name,
                    x,
                    y,
                    star.arms(),
                    in.need(star.length(), "electrodes.star.length"),
                    in.need(star.depth(), "electrodes.star.depth"),
                    in.need(star.diameter(), "electrodes.star.diameter") / 2));
        }
        if (ring != null) {
            bars.addAll(BarShapes.ring(
                    name,
                    x,
                    y,
                    in.need(ring.radius(), "electrodes.ring.radius"),
                    RING_SIDES,
                    in.need(ring.depth(), "electrodes.ring.depth"),
                    in.need(ring.diameter(), "electrodes.ring.diameter") / 2));
        }
        if (mat != null) {
            bars.addAll(mat(name, x, y, mat, in));
        }
        PlateShape plate = electrode.plate();
        if (plate != null) {
            bars.addAll(plate(name, x, y, plate, in));
        }
        for (earthing.site.Bar bar : electrode.bars()) {
            bars.add(new Bar(
                    name,
                    x + in.need(bar.x1(), "electrodes.bars.x1"),
                    y + in.need(bar.y1(), "electrodes.bars.y1"),
                    in.need(bar.depth1(), "electrodes.bars.depth1"),
                    x + in.need(bar.x2(), "electrodes.bars.x2"),
                    y + in.need(bar.y2(), "electrodes.bars.y2"),
                    in.need(bar.depth2(), "electrodes.bars.depth2"),
                    in.need(bar.diameter(), "electrodes.bars.diameter") / 2));
        }
        return bars;
    }

    /** The bars of the operator's mat, as a part of the electrode that it is bonded to. */
    static List<Bar> operatorMat(OperatorMat mat, String bondedTo, Inputs in) throws MissingInput {
        return mat(
                bondedTo,
                in.need(mat.at().x(), "cubicle.operator-mat.at.x"),
                in.need(mat.at().y(), "cubicle.operator-mat.at.y"),
                mat.shape(),
                in);
    }

    private static List<Bar> mat(String name, double x, double y, MatShape mat, Inputs in) throws MissingInput {
        double width = in.need(mat.width(), "electrodes.mat.width");
        double length = in.need(mat.length(), "electrodes.mat.length");
        double mesh = in.need(mat.mesh(), "electrodes.mat.mesh");
        return BarShapes.mat(
                name,
                x - width / 2,
                y - length / 2,
                width,
                length,
                Math.max(1, (int) Math.round(width / mesh)),
                Math.max(1, (int) Math.round(length / mesh)),
                in.need(mat.depth(), "electrodes.mat.depth"),
                in.need(mat.diameter(), "electrodes.mat.diameter") / 2);
    }

    private static List<Bar> plate(String name, double x, double y, PlateShape plate, Inputs in) throws MissingInput {
        double depth = in.need(plate.depth(), "electrodes.plate.depth");
        double length = in.need(plate.length(), "electrodes.plate.length");
        boolean upright = plate.lie() == PlateLie.VERTICAL;
        if (upright && !(depth >= length / 2)) {
            throw new MissingInput(
                    "an upright plate must lie below ground: its centre no less than half its length deep",
                    "electrodes.plate.depth");
        }
        return BarShapes.plate(name, x, y, depth, in.need(plate.width(), "electrodes.plate.width"), length, upright);
    }

    private static double top(earthing.quantity.@Nullable Measure measure, Inputs in) throws MissingInput {
        return in.orElse(measure, "electrodes.top-depth", 0, earthing.quantity.Dimension.LENGTH, TOP);
    }

    /** Where the earth lead meets an electrode, the terminal of a test: its place in the site file, x and y [m]. */
    static double[] terminal(Electrode electrode, @Nullable Pole pole, Inputs in) throws MissingInput {
        return position(electrode, pole, in);
    }

    /**
     * Where an electrode is, x and y [m]. One without a place stands at the foot of the pole, clear of a butt that conducts:
     * a star with the butt midway between two arms.
     */
    private static double[] position(Electrode electrode, @Nullable Pole pole, Inputs in) throws MissingInput {
        Position at = electrode.at();
        if (at != null) {
            return new double[] {in.need(at.x(), "electrodes.at.x"), in.need(at.y(), "electrodes.at.y")};
        }
        boolean around = electrode.ring() != null || electrode.rodsInRing() != null || electrode.mat() != null;
        if (pole == null || !conducts(pole) || around || !electrode.bars().isEmpty()) {
            return new double[2];
        }
        double clear = radius(pole, in) + CLEARANCE;
        StarShape star = electrode.star();
        if (star == null || star.arms() < 2) {
            return new double[] {0, clear};
        }
        double between = Math.PI / star.arms();
        // Of all directions midway between two arms the one nearest to due south.
        double toPole = between * (2 * Math.round((1.5 * Math.PI / between - 1) / 2) + 1);
        double away = clear / Math.sin(between);
        return new double[] {-away * Math.cos(toPole), -away * Math.sin(toPole)};
    }

    static boolean conducts(Pole pole) {
        return pole.material() == PoleMaterial.STEEL || pole.material() == PoleMaterial.CONCRETE;
    }

    /** Radius of the circle on which the pole's metal lies [m]. */
    static double radius(Pole pole, Inputs in) throws MissingInput {
        double outer = in.need(pole.diameter(), "pole.diameter") / 2;
        return pole.material() == PoleMaterial.CONCRETE ? CAGE * outer : outer;
    }

    /**
     * The butt of a conducting pole, in its foundation where one is described; where its contact is not known absent at the
     * high bound, coated present at the low bound only, on an insulating base never.
     */
    static List<Bar> poleButt(@Nullable Pole pole, Bound bound, Inputs in) throws MissingInput {
        if (pole == null || !conducts(pole)) {
            return List.of();
        }
        ButtContact contact = pole.buttContact();
        boolean reaches = contact == ButtContact.BARE
                || (contact == ButtContact.COATED && bound == Bound.LOW)
                || ((contact == ButtContact.UNKNOWN || contact == null) && bound != Bound.HIGH);
        if (!reaches) {
            return List.of();
        }
        if (contact == ButtContact.COATED) {
            in.choice("pole.butt-contact", "the coating of the butt is whole but at the low bound", COATING);
        }
        double burial = in.need(pole.burial(), "pole.burial");
        ConcreteShell foundation = pole.foundation();
        List<Bar> butt = BarShapes.poleButt(POLE_BUTT, 0, 0, burial, 2 * radius(pole, in));
        if (foundation == null) {
            in.choice("pole.butt-contact", "the buried butt is an electrode", BUTT);
            return butt;
        }
        return List.of(sleeved(
                butt.get(0),
                in.need(foundation.diameter(), "pole.foundation.diameter") / 2,
                in.need(foundation.resistivity(), "pole.foundation.resistivity", bound),
                "pole.foundation.diameter"));
    }
}
