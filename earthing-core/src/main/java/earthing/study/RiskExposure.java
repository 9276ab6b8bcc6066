package earthing.study;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.Line;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.surge.FlashCollection;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Ground from which flashes come to this pole.
 *
 * @param height height of the conductors [m]
 * @param breadth distance of the outer conductors [m]
 * @param length length of line whose strokes reach this pole, all directions together [m]
 * @param shielding part of the flashes that trees and buildings take away [1]
 * @param weights part of the length nearest to this pole, to the next one and so on
 * @param top height of the antenna or pole top, where it is higher than the conductors [m]; else 0
 */
record RiskExposure(double height, double breadth, double length, double shielding, List<Double> weights, double top) {

    private static final Source USUAL_LINE = Source.tool("a usual line of medium voltage");
    private static final Source OPEN_GROUND = Source.tool("open ground: nothing beside the line takes flashes away");
    private static final Source FOLLOWED = Source.tool(
            "with arresters on the neighbouring poles the spans that are followed; else the spans next to this pole,"
                    + " because a stroke further away flashes over at the poles before it");

    RiskExposure {
        weights = List.copyOf(weights);
    }

    static RiskExposure of(Site site, EntryInputs entry, Inputs in) throws MissingInput {
        Line line = site.line();
        if (line == null) {
            throw new MissingInput("the file describes no line", "line");
        }
        Surges surges = site.surges();
        double height = height(site, in);
        double spacing = in.orElse(line.phaseSpacing(), "line.phase-spacing", 1.1, Dimension.LENGTH, USUAL_LINE);
        double span = in.need(line.spanLength(), "line.span-length");
        boolean shared = entry.neighboursHaveArresters();
        double usual = entry.directions() * span * (shared ? LineEntry.FOLLOWED + 0.5 : 1);
        double length = in.orElse(
                surges == null ? null : surges.exposedLineLength(),
                "surges.exposed-line-length",
                usual,
                Dimension.LENGTH,
                FOLLOWED);
        double shielding = in.orElse(
                surges == null ? null : surges.shieldingFactor(),
                "surges.shielding-factor",
                0,
                Dimension.RATIO,
                OPEN_GROUND);
        if (!(shielding <= 1)) {
            throw new MissingInput("the shielding factor is a part of all flashes, 0 to 1", "surges.shielding-factor");
        }
        double top = Math.max(
                above(site.pole() == null ? null : site.pole().height(), height),
                above(site.antenna() == null ? null : site.antenna().height(), height));
        if (!(Math.max(height, top) <= FlashCollection.TALLEST)) {
            throw new MissingInput(
                    "the attractive width of a line holds for heights up to " + Math.round(FlashCollection.TALLEST)
                            + " m",
                    "line.height",
                    "antenna.height");
        }
        return new RiskExposure(
                height,
                2 * spacing,
                length,
                shielding,
                shared ? weights(length, span * entry.directions()) : List.of(1.0),
                top);
    }

    /** Height of the conductors [m]. */
    static double height(Site site, Inputs in) throws MissingInput {
        return in.orElse(
                site.line() == null ? null : site.line().height(), "line.height", 10, Dimension.LENGTH, USUAL_LINE);
    }

    private static double above(@Nullable Measure measure, double height) {
        return measure != null && measure.isKnown() && measure.nominal() > height ? measure.nominal() : 0;
    }

    /** Half a span each way is nearest to this pole, whole spans to the others; what lies beyond counts as the last. */
    private static List<Double> weights(double length, double spans) {
        List<Double> weights = new ArrayList<>();
        double left = length;
        for (int away = 0; away <= LineEntry.FOLLOWED; away++) {
            boolean last = away == LineEntry.FOLLOWED;
            double here = last ? left : Math.min(left, away == 0 ? spans / 2 : spans);
            weights.add(here / length);
            left -= here;
        }
        return weights;
    }

    /** Whether a part of the length lies beyond the poles that are followed and counts as at the last of them. */
    boolean reachesBeyond() {
        return weights.size() > 1 && weights.get(weights.size() - 1) * length > length * 2 * weights.get(0) * 1.001;
    }

    /** Width of the strip whose flashes end on the line [m]. */
    double width() {
        return FlashCollection.width(height, breadth);
    }

    /** Ground whose flashes end on the exposed line [m²]. */
    double lineArea() {
        return (1 - shielding) * width() * length;
    }

    /** Ground beyond the strip whose flashes end on the antenna or pole top [m²]. */
    double poleArea() {
        return top > 0 ? (1 - shielding) * FlashCollection.areaBeyondStrip(top, width()) : 0;
    }

    /** How many poles away a stroke to the line hits, for a number spread evenly over [0, 1). */
    int away(double uniform) {
        double left = uniform;
        for (int k = 0; k < weights.size(); k++) {
            left -= weights.get(k);
            if (left < 0) {
                return k;
            }
        }
        return weights.size() - 1;
    }
}
