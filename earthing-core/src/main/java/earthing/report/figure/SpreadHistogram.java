package earthing.report.figure;

import earthing.report.document.Amount;
import earthing.report.markup.Markup;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How often a value falls where: filled boxes where the requirement is met, hatched ones with a thick outline where it is
 * not, the limit dashed; it reads without colour.
 */
public final class SpreadHistogram {

    private static final double WIDTH = 860;
    private static final double LEFT = 90;
    private static final double RIGHT = 820;
    private static final double TOP = 44;
    private static final double BOTTOM = 300;
    private static final double FOOT = 62;

    /**
     * What is drawn.
     *
     * @param title name of the value
     * @param unit its SI unit
     * @param from beginning of the first box in SI
     * @param to end of the last box in SI
     * @param counts samples in each box
     * @param limit limit in SI, if it is one value
     * @param beyondIsAbove whether values above the limit are those that do not meet it
     */
    public record Data(
            String title,
            String unit,
            double from,
            double to,
            List<Integer> counts,
            OptionalDouble limit,
            boolean beyondIsAbove) {

        /**
         * Copies the counts.
         *
         * @param title name of the value
         * @param unit its SI unit
         * @param from beginning of the first box in SI
         * @param to end of the last box in SI
         * @param counts samples in each box
         * @param limit limit in SI, if it is one value
         * @param beyondIsAbove whether values above the limit are those that do not meet it
         */
        public Data {
            counts = List.copyOf(counts);
            if (counts.isEmpty() || !(to > from)) {
                throw new IllegalArgumentException("a histogram needs boxes from one value to a larger one");
            }
        }
    }

    private SpreadHistogram() {}

    /**
     * Draws the boxes.
     *
     * @param data what is drawn
     * @param alternative the same in words
     * @param id anchor of the figure
     * @return the drawing
     */
    public static String of(Data data, String alternative, String id) {
        double span = data.to() - data.from();
        boolean shown = data.limit().isPresent()
                && data.limit().getAsDouble() > data.from() - 2 * span
                && data.limit().getAsDouble() < data.to() + 2 * span;
        Axis axis = Axis.over(
                shown ? Math.min(data.from(), data.limit().getAsDouble()) : data.from(),
                shown ? Math.max(data.to(), data.limit().getAsDouble()) : data.to(),
                data.unit(),
                false);
        Markup svg = Draw.begin(id, data.title(), alternative, WIDTH, BOTTOM + FOOT);
        int total = data.counts().stream().mapToInt(Integer::intValue).sum();
        int most = data.counts().stream().mapToInt(Integer::intValue).max().orElse(1);
        Axis parts = Axis.over(0, (double) most / Math.max(1, total), "", false);
        for (double tick : parts.ticks()) {
            double y = BOTTOM - parts.placeOfTick(tick) * (BOTTOM - TOP);
            Draw.line(svg, LEFT - 5, y, LEFT, y, 1, "");
            Draw.text(svg, Axis.label(tick), LEFT - 9, y + 4, "end");
        }
        for (double tick : axis.ticks()) {
            double x = LEFT + axis.placeOfTick(tick) * (RIGHT - LEFT);
            Draw.line(svg, x, BOTTOM, x, BOTTOM + 5, 1, "");
            Draw.text(svg, Axis.label(tick), x, BOTTOM + 19, "middle");
        }
        int n = data.counts().size();
        for (int i = 0; i < n; i++) {
            double left = data.from() + span * i / n;
            double right = data.from() + span * (i + 1) / n;
            double x1 = LEFT + axis.place(left) * (RIGHT - LEFT);
            double x2 = LEFT + axis.place(right) * (RIGHT - LEFT);
            double y = BOTTOM - parts.place((double) data.counts().get(i) / Math.max(1, total)) * (BOTTOM - TOP);
            box(svg, x1, y, x2, beyond(data, (left + right) / 2));
        }
        Draw.line(svg, LEFT, BOTTOM, RIGHT, BOTTOM, 1, "");
        Draw.line(svg, LEFT, TOP, LEFT, BOTTOM, 1, "");
        if (shown) {
            double x = LEFT + axis.place(data.limit().getAsDouble()) * (RIGHT - LEFT);
            Draw.line(svg, x, TOP - 6, x, BOTTOM, 2.5, "6 4");
        }
        Draw.text(svg, heading(data, shown), LEFT, TOP - 20, "start");
        Draw.text(
                svg,
                data.title() + (axis.unit().isEmpty() ? "" : " [" + axis.unit() + "]")
                        + "; grey: met, hatched: not met; upwards: part of the samples",
                (LEFT + RIGHT) / 2,
                BOTTOM + 44,
                "middle");
        return svg.end();
    }

    private static boolean beyond(Data data, double value) {
        return data.limit().isPresent()
                && (data.beyondIsAbove()
                        ? value > data.limit().getAsDouble()
                        : value < data.limit().getAsDouble());
    }

    private static void box(Markup svg, double x1, double y, double x2, boolean notMet) {
        if (!(BOTTOM - y > 0)) {
            return;
        }
        if (!notMet) {
            Draw.box(svg, x1, y, x2 - x1, BOTTOM - y, "0.3");
            return;
        }
        Draw.path(
                svg,
                "M" + Draw.n(x1) + " " + Draw.n(BOTTOM) + "V" + Draw.n(y) + "H" + Draw.n(x2) + "V" + Draw.n(BOTTOM),
                2,
                "");
        for (double line = BOTTOM - 4; line > y; line -= 6) {
            Draw.line(svg, x1, line, x2, line, 1, "");
        }
    }

    private static String heading(Data data, boolean shown) {
        return data.limit().isEmpty()
                ? "no single limit"
                : "limit: " + Amount.text(data.limit(), data.unit()) + (shown ? ", dashed" : ", outside the drawing");
    }
}
