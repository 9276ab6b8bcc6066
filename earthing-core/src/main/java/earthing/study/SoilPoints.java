package earthing.study;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.site.ReturnWire;
import earthing.site.Site;
import earthing.site.SiteRewrite;
import earthing.site.TouchCriterion;
import earthing.site.YesNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Soils beside the three bounds that an earth fault is looked at in: with layers of which some are at their low and some
 * at their high resistivity, because a touch voltage is no steady function of all of them, and between the bounds where
 * the permissible voltage itself rises with the resistivity of the surface.
 */
final class SoilPoints {

    private static final int MOST_LAYERS = 3;
    private static final List<Double> BETWEEN = List.of(0.2, 0.35, 0.5, 0.65, 0.8);
    private static final List<Double> GRID = List.of(0.0, 0.5, 1.0);
    private static final List<String> KEYS = List.of("soil.resistivity", "soil.layers.resistivity");
    private static final List<String> WITH_CONCRETE = List.of(
            "soil.resistivity",
            "soil.layers.resistivity",
            "electrodes.concrete.resistivity",
            "pole.foundation.resistivity");

    /**
     * One soil.
     *
     * @param site the site with exactly this soil
     * @param at name of the point
     * @param bound bound that season and other earths are taken at
     */
    record Point(Site site, String at, Bound bound) {}

    private SoilPoints() {}

    private static List<Measure> spread(Site site, List<String> keys) {
        List<Measure> spread = new ArrayList<>();
        SiteRewrite.of(site, (path, measure) -> {
            if (keys.contains(path) && measure.hasSpread()) {
                spread.add(measure);
            }
            return measure;
        });
        return spread;
    }

    /**
     * Layers, and concrete in them, of which some are at their low and some at their high resistivity, in each state of the
     * season: all corners but the two that are the bounds themselves.
     */
    static List<Point> corners(Site site) {
        List<Measure> spread = spread(site, WITH_CONCRETE);
        List<Point> points = new ArrayList<>();
        if (spread.size() > MOST_LAYERS) {
            return points;
        }
        int all = (1 << spread.size()) - 1;
        for (int corner = 0; corner <= all; corner++) {
            int bits = corner;
            for (Bound season : seasons(site, (bits & 1) == 1 ? Bound.HIGH : Bound.LOW)) {
                boolean bound = (bits == 0 && season == Bound.LOW) || (bits == all && season == Bound.HIGH);
                if (!bound) {
                    points.add(point(
                            site,
                            WITH_CONCRETE,
                            i -> spread.get(i).at((bits >> i & 1) == 1 ? Bound.HIGH : Bound.LOW),
                            season));
                }
            }
        }
        return points;
    }

    private static List<Bound> seasons(Site site, Bound otherwise) {
        return site.soil() != null && site.soil().season() != null
                ? List.of(Bound.LOW, Bound.HIGH)
                : List.of(otherwise);
    }

    static List<Point> of(Site site) {
        List<Measure> spread = spread(site, KEYS);
        List<Point> points = new ArrayList<>(corners(site));
        boolean surfaceCounts = site.criteria() != null
                && (site.criteria().touch() == TouchCriterion.IEEE_80_50KG
                        || site.criteria().touch() == TouchCriterion.IEEE_80_70KG);
        if (!spread.isEmpty() && spread.size() <= MOST_LAYERS && surfaceCounts) {
            List<Double> parts = spread.size() == 1 ? BETWEEN : GRID;
            int count = (int) Math.pow(parts.size(), spread.size());
            for (int cell = 0; cell < count; cell++) {
                int number = cell;
                for (Bound season : seasons(site, Bound.HIGH)) {
                    points.add(point(
                            site,
                            KEYS,
                            i -> between(
                                    spread.get(i), parts.get(number / (int) Math.pow(parts.size(), i) % parts.size())),
                            season));
                }
            }
        }
        return List.copyOf(points);
    }

    private static double between(Measure measure, double part) {
        double low = measure.at(Bound.LOW);
        return low * Math.pow(measure.at(Bound.HIGH) / low, part);
    }

    /** Whether earths of a neutral along the line are uncertain: these and the pole's own need not be low together. */
    static boolean neutralEarthsVary(Site site) {
        return varies(site.system().shieldWire())
                || varies(site.system().neutral().conductor());
    }

    private static boolean varies(@Nullable ReturnWire wire) {
        return wire != null
                && wire.bondedToMainEarth() == YesNo.YES
                && wire.poleEarthResistance() != null
                && wire.poleEarthResistance().hasSpread();
    }

    /** The site with the i-th uncertain resistivity of these keys at a value [Ω·m]. */
    private static Point point(Site site, List<String> keys, IntFunction<Double> values, Bound bound) {
        int[] next = {0};
        List<String> words = new ArrayList<>();
        List<String> concrete = new ArrayList<>();
        Site exact = SiteRewrite.of(site, (path, measure) -> {
            if (!keys.contains(path) || !measure.hasSpread()) {
                return measure;
            }
            double value = values.apply(next[0]);
            next[0]++;
            (KEYS.contains(path) ? words : concrete).add(Numbers.brief(value));
            return Measure.of(Dimension.RESISTIVITY, value);
        });
        String season = site.soil() == null || site.soil().season() == null
                ? ""
                : ", season " + bound.name().toLowerCase(Locale.ROOT);
        String ground = words.isEmpty() ? bound.name().toLowerCase(Locale.ROOT) : String.join("/", words) + " ohm.m";
        String shell = concrete.isEmpty() ? "" : ", concrete " + String.join("/", concrete) + " ohm.m";
        return new Point(exact, "soil=" + ground + shell + season, bound);
    }
}
