package earthing.report.figure;

import earthing.report.markup.Markup;
import java.util.ArrayList;
import java.util.List;

/**
 * How many of many relative margins lie where: upright bars with their counts, a line at the limit; what does not keep the
 * limit is hatched, so that no colour has to be told.
 */
public final class Histogram {

    private static final double WIDTH = 860;
    private static final double HEIGHT = 262;
    private static final double LEFT = 20;
    private static final double RIGHT = 840;
    private static final double TOP = 58;
    private static final double BOTTOM = 208;

    /** Edges in per cent; a margin cannot be below one more than all that there is only for a limit that is a most. */
    private static final int STEP = 10;

    private static final int LEAST = -100;
    private static final int MOST = 100;

    private Histogram() {}

    /**
     * Counts margins in steps of 10 %, those beyond −100 % and +100 % in one bar at either end.
     *
     * @param margins relative margins, in any order
     * @return counts from the lowest bar to the highest
     */
    public static int[] counts(double[] margins) {
        int inner = (MOST - LEAST) / STEP;
        int[] counts = new int[inner + 2];
        for (double margin : margins) {
            // The noise of a binary fraction must not carry a margin across an edge.
            int bar = 1 + (int) Math.floor((margin * 100 - LEAST) / STEP + 1e-9);
            counts[Math.max(0, Math.min(inner + 1, bar))]++;
        }
        return counts;
    }

    /**
     * Names of the bars of {@link #counts}.
     *
     * @return ranges in words
     */
    public static List<String> ranges() {
        List<String> ranges = new ArrayList<>();
        ranges.add("below " + LEAST + " %");
        for (int from = LEAST; from < MOST; from += STEP) {
            ranges.add(from + " to " + (from + STEP) + " %");
        }
        ranges.add("+" + MOST + " % and more");
        return ranges;
    }

    /**
     * Draws the counts.
     *
     * @param id anchor of the figure
     * @param title title of the drawing
     * @param margins relative margins, at least one
     * @return the drawing
     */
    public static String of(String id, String title, double[] margins) {
        int[] counts = counts(margins);
        int most = 1;
        for (int count : counts) {
            most = Math.max(most, count);
        }
        Markup svg = Draw.begin(id, title, words(margins), WIDTH, HEIGHT);
        hatch(svg, id);
        double step = (RIGHT - LEFT) / counts.length;
        int limit = 1 - LEAST / STEP;
        for (int i = 0; i < counts.length; i++) {
            double x = LEFT + i * step;
            double height = (BOTTOM - TOP) * counts[i] / most;
            if (counts[i] > 0) {
                Draw.box(svg, x + 2, BOTTOM - height, step - 4, height, "0.12");
                if (i < limit) {
                    svg.empty(
                            "rect",
                            "x",
                            Draw.n(x + 2),
                            "y",
                            Draw.n(BOTTOM - height),
                            "width",
                            Draw.n(step - 4),
                            "height",
                            Draw.n(height),
                            "fill",
                            "url(#" + id + "-hatch)");
                }
                Draw.text(svg, Integer.toString(counts[i]), x + step / 2, BOTTOM - height - 4, "middle");
            }
        }
        Draw.line(svg, LEFT, BOTTOM, RIGHT, BOTTOM, 1, "");
        for (int edge = 1; edge < counts.length; edge += 2) {
            int percent = LEAST + (edge - 1) * STEP;
            double x = LEFT + edge * step;
            Draw.line(svg, x, BOTTOM, x, BOTTOM + 5, 1, "");
            Draw.text(svg, (percent > 0 ? "+" : "") + percent, x, BOTTOM + 19, "middle");
        }
        Draw.text(svg, "lower", LEFT + step / 2 - 6, BOTTOM + 19, "middle");
        Draw.text(svg, "higher", RIGHT - step / 2 + 6, BOTTOM + 19, "middle");
        double at = LEFT + limit * step;
        Draw.line(svg, at, TOP - 44, at, BOTTOM + 5, 2, "6 4");
        Draw.text(svg, "not met", at - 8, TOP - 34, "end");
        Draw.text(svg, "met", at + 8, TOP - 34, "start");
        Draw.text(
                svg,
                "margin of the governing check in % of its limit; the number of poles stands on each bar",
                (LEFT + RIGHT) / 2,
                HEIGHT - 12,
                "middle");
        return svg.end();
    }

    private static void hatch(Markup svg, String id) {
        svg.open("defs")
                .open(
                        "pattern",
                        "id",
                        id + "-hatch",
                        "width",
                        "6",
                        "height",
                        "6",
                        "patternUnits",
                        "userSpaceOnUse",
                        "patternTransform",
                        "rotate(45)");
        Draw.line(svg, 0, 0, 0, 6, 2, "");
        svg.close().close();
    }

    /**
     * The drawing in words.
     *
     * @param margins relative margins
     * @return a sentence with the count of each bar that has one
     */
    public static String words(double[] margins) {
        int[] counts = counts(margins);
        List<String> ranges = ranges();
        StringBuilder words = new StringBuilder("Number of poles by margin: ");
        String between = "";
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) {
                words.append(between).append(ranges.get(i)).append(": ").append(counts[i]);
                between = "; ";
            }
        }
        return words.append('.').toString();
    }
}
