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

    private static final Source LOG =
            Source.tool("only the rod of an anchor without a plate is metal in the soil; a log adds nothing");

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
        bars.addAll(BarShapes.roundPlate(
                name, distance + length * Math.sin(rake) * Math.cos(azimuth), 0, depth, radius, rake, azimuth));
        return bars;
    }
}
