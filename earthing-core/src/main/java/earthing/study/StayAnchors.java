package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.quantity.Source;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.site.StayAnchor;
import earthing.site.YesNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Stays that are part of the earthing: their anchors as electrodes. */
final class StayAnchors {

    /** Radius of the wires that stand for the surface of a plate. */
    static final Source PLATE = Source.publication(
            "A. C. Ludwig, Wire grid modeling of surfaces, IEEE Trans. Antennas and Propagation AP-35, 1987",
            "the wires together have the area of both sides of the surface",
            Source.Status.FROM_MEMORY);

    private static final Source LOG =
            Source.tool("only the rod of an anchor without a plate is metal in the soil; a log adds nothing");

    /** Spokes that stand for a plate. */
    private static final int SPOKES = 8;

    private StayAnchors() {}

    /** Stays that carry a part of an earth fault's current if their anchor is known. */
    static List<Stay> bonded(Site site) {
        return site.stays().stream()
                .filter(s -> s.bondedToMainEarth() == YesNo.YES && s.insulated() != YesNo.YES)
                .toList();
    }

    static Optional<Stay> named(Site site, String member) {
        return bonded(site).stream().filter(s -> s.name().equals(member)).findFirst();
    }

    /** Name of the electrode that the anchor of a stay forms. */
    static String electrode(Stay stay) {
        return stay.name() + " anchor";
    }

    /** Length of the stay above ground [m]; 0 where its ends are not known. */
    static double length(Stay stay) {
        if (!stay.topHeight().isKnown() || !stay.anchorDistance().isKnown()) {
            return 0;
        }
        return Math.hypot(stay.topHeight().nominal(), stay.anchorDistance().nominal());
    }

    /** The anchor's bars; none where its shape is not given. */
    static List<Bar> bars(Stay stay, Inputs in) throws MissingInput {
        StayAnchor anchor = stay.anchor();
        if (anchor == null) {
            return List.of();
        }
        double height = in.need(stay.topHeight(), "stays.top-height");
        double distance = in.need(stay.anchorDistance(), "stays.anchor-distance");
        double length = in.need(anchor.rodLength(), "stays.anchor.rod-length");
        double rake = Math.atan2(Math.abs(distance), height);
        double azimuth = distance < 0 ? Math.PI : 0;
        String name = electrode(stay);
        List<Bar> bars = new ArrayList<>(BarShapes.rakedRod(
                name,
                distance,
                0,
                0,
                length,
                rake,
                azimuth,
                in.need(anchor.rodDiameter(), "stays.anchor.rod-diameter") / 2));
        if (anchor.plateDiameter() == null) {
            in.choice("stays.anchor.plate-diameter", stay.name() + ": no plate", LOG);
            return bars;
        }
        double radius = in.need(anchor.plateDiameter(), "stays.anchor.plate-diameter") / 2;
        double depth = length * Math.cos(rake);
        if (!(depth > radius)) {
            throw new MissingInput(
                    "the plate of " + stay.name() + " would not be covered by soil", "stays.anchor.rod-length");
        }
        bars.addAll(plate(name, distance + length * Math.sin(rake) * Math.cos(azimuth), depth, rake, azimuth, radius));
        return bars;
    }

    /** Spokes in the plane at right angles to the rod: less metal than the plate, so the resistance errs high. */
    private static List<Bar> plate(String name, double x, double depth, double rake, double azimuth, double radius) {
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < SPOKES; i++) {
            double angle = 2 * Math.PI * i / SPOKES;
            double along = radius * Math.sin(angle);
            bars.add(new Bar(
                    name,
                    x,
                    0,
                    depth,
                    x + along * Math.cos(rake) * Math.cos(azimuth),
                    radius * Math.cos(angle),
                    depth - along * Math.sin(rake),
                    radius / (2 * SPOKES)));
        }
        return bars;
    }
}
