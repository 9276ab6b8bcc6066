package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.Electrode;
import earthing.site.Position;
import earthing.site.RodShape;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The electrode that the cubicle is given, for the comparison of arrangements, where the file describes none: a copy of the
 * main one, or a rod where the copy would run into buried metal.
 */
final class OwnElectrode {

    /** Distance from the main electrode [m]. */
    static final double DISTANCE = 5;

    private static final String NAME = "cubicle, assumed";

    /** A copy nearer than this to other metal is not what a crew would lay [m]. */
    private static final double CLEAR = 0.5;

    private static final double ROD_LENGTH = 3;
    private static final double ROD_DIAMETER = 0.016;
    private static final double ROD_TOP = 0.5;

    /** Directions in which a place for the rod is looked for. */
    private static final int DIRECTIONS = 24;

    private OwnElectrode() {}

    /**
     * That electrode; what was chosen is noted among the inputs.
     *
     * @param site the site
     * @param main its main electrode
     * @param in inputs
     */
    static Electrode assumed(Site site, Electrode main, Inputs in) throws MissingInput {
        double x = coordinate(main.at() == null ? null : main.at().x());
        double y = coordinate(main.at() == null ? null : main.at().y());
        // At right angles to the usual line of electrodes, where the file is least likely to hold another one.
        Electrode copy = copy(main, position(x, y + DISTANCE));
        List<Bar> others = metal(site);
        if (apart(bars(copy, site), others) > CLEAR) {
            in.choice(
                    "cubicle.electrode",
                    "for the arrangements with an own electrode: a copy of the main electrode, 5 m to the side",
                    Source.tool("an electrode of the same kind is what a crew would drive"));
            return copy;
        }
        Electrode best = copy;
        double widest = 0;
        for (int k = 0; k < DIRECTIONS; k++) {
            double angle = 2 * Math.PI * k / DIRECTIONS;
            Electrode rod = rod(position(x + DISTANCE * Math.cos(angle), y + DISTANCE * Math.sin(angle)));
            double apart = apart(bars(rod, site), others);
            // Of directions that are as good the first: rounding must not choose.
            if (apart > widest * (1 + 1e-9)) {
                best = rod;
                widest = apart;
            }
        }
        in.choice(
                "cubicle.electrode",
                "for the arrangements with an own electrode: a rod of 3 m, 5 m away, 16 mm thick, its top 0.5 m deep,"
                        + " since a copy of the main electrode would run into buried metal",
                Source.tool("a rod is what a crew would drive between wires"));
        return best;
    }

    private static double coordinate(@Nullable Measure measure) {
        return measure == null || !measure.isKnown() ? 0 : measure.nominal();
    }

    /** Bars of all electrodes; none of one whose shape is not known. */
    private static List<Bar> metal(Site site) throws MissingInput {
        List<Bar> bars = new ArrayList<>();
        for (Electrode electrode : site.electrodes()) {
            bars.addAll(bars(electrode, site));
        }
        return bars;
    }

    /** What is assumed on the way is noted where the electrode is computed, not where it is only measured out. */
    private static List<Bar> bars(Electrode electrode, Site site) throws MissingInput {
        return electrode.resistance() == null ? ElectrodeBars.of(electrode, site.pole(), new Inputs()) : List.of();
    }

    private static double apart(List<Bar> some, List<Bar> others) {
        double least = Double.POSITIVE_INFINITY;
        for (Bar one : some) {
            for (Bar other : others) {
                least = Math.min(least, one.distance(other));
            }
        }
        return least;
    }

    private static Position position(double x, double y) {
        return new Position(Measure.of(Dimension.LENGTH, x), Measure.of(Dimension.LENGTH, y));
    }

    private static Electrode rod(Position at) {
        return new Electrode(
                NAME,
                at,
                new RodShape(
                        Measure.of(Dimension.LENGTH, ROD_LENGTH),
                        Measure.of(Dimension.LENGTH, ROD_DIAMETER),
                        Measure.of(Dimension.LENGTH, ROD_TOP)),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null,
                null,
                null,
                null);
    }

    private static Electrode copy(Electrode main, Position at) {
        return new Electrode(
                NAME,
                at,
                main.rod(),
                main.rodsInLine(),
                main.rodsInRing(),
                main.wire(),
                main.star(),
                main.ring(),
                main.mat(),
                main.plate(),
                main.bars(),
                main.resistance(),
                main.concrete(),
                main.material(),
                main.seriesImpedance());
    }
}
