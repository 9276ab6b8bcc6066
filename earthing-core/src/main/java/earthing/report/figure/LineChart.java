package earthing.report.figure;

import earthing.report.document.Amount;
import earthing.report.markup.Markup;
import earthing.study.Curve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** A line chart; each trace has its own dash pattern and its name at its end. */
public final class LineChart {

    private static final double WIDTH = 860;
    private static final double HEIGHT = 400;
    private static final double LEFT = 76;
    private static final double RIGHT = 640;
    /** Part of the field that a leader has to cross to be drawn unlike a line. */
    private static final double ACROSS = 0.25;

    private static final double TOP = 30;
    private static final double BOTTOM = 346;
    private static final int MOST_POINTS = 480;
    private static final int NAME_WIDTH = 26;
    private static final double NAME_LINE = 14;

    private static final String[] DASHES = {"none", "9 4", "3 3", "12 4 3 4", "6 2 1 2", "1 3", "16 5", "8 3 2 3 2 3"};
    private static final String[] COLOURS = {
        "#2a78d6", "#c2571a", "#238b57", "#8a5bc7", "#b0354f", "#7a7a1e", "#1b8a9c", "#77604a"
    };

    private final Curve curve;
    private final Axis xAxis;
    private final Axis yAxis;

    private LineChart(Curve curve, Axis xAxis, Axis yAxis) {
        this.curve = curve;
        this.xAxis = xAxis;
        this.yAxis = yAxis;
    }

    /**
     * Draws a curve. An axis is divided in decades where all its values are positive and span more than a factor of
     * 40; a vertical one only together with the horizontal one. Resistivities are drawn in decades both ways, as soundings
     * are.
     *
     * @param curve the data; at least one trace with one point
     * @param id anchor of the figure, prefix of the anchors inside
     * @return the drawing
     * @throws IllegalArgumentException if there is no point to draw or a point is not finite
     */
    public static String of(Curve curve, String id) {
        double[] x = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        double[] y = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (Curve.Trace trace : curve.traces()) {
            for (int i = 0; i < trace.size(); i++) {
                if (!Double.isFinite(trace.x(i)) || !Double.isFinite(trace.y(i))) {
                    throw new IllegalArgumentException("curve " + curve.id() + ", trace " + trace.name()
                            + " must be finite; have " + trace.x(i) + ", " + trace.y(i));
                }
                x[0] = Math.min(x[0], trace.x(i));
                x[1] = Math.max(x[1], trace.x(i));
                y[0] = Math.min(y[0], trace.y(i));
                y[1] = Math.max(y[1], trace.y(i));
            }
        }
        if (!(x[0] <= x[1])) {
            throw new IllegalArgumentException("curve " + curve.id() + " needs at least one point");
        }
        boolean sounding = curve.yUnit().equals("ohm.m") && x[0] > 0 && x[0] < x[1] && y[0] > 0;
        boolean xInDecades = sounding || (x[0] > 0 && x[1] / x[0] > 40);
        boolean yInDecades = sounding || (xInDecades && y[0] > 0 && y[1] / y[0] > 40);
        // An even vertical axis begins at zero unless the values lie far from it.
        double bottom = yInDecades || y[0] < 0 || y[0] > 0.6 * y[1] ? y[0] : 0;
        double top = y[1] < 0 ? 0 : y[1];
        Axis across = Axis.over(x[0], x[1], curve.xUnit(), xInDecades);
        Axis up = Axis.over(bottom, top, curve.yUnit(), yInDecades);
        return new LineChart(curve, across, up).draw(id);
    }

    /**
     * A curve in words: for each trace its lowest and highest value and where they are.
     *
     * @param curve the data
     * @return sentences
     */
    public static String words(Curve curve) {
        StringBuilder words = new StringBuilder("Chart of ");
        words.append(curve.yLabel().toLowerCase(Locale.ROOT))
                .append(" against ")
                .append(curve.xLabel().toLowerCase(Locale.ROOT))
                .append('.');
        for (Curve.Trace trace : curve.traces()) {
            if (trace.size() == 0) {
                continue;
            }
            int low = 0;
            int high = 0;
            for (int i = 1; i < trace.size(); i++) {
                low = trace.y(i) < trace.y(low) ? i : low;
                high = trace.y(i) > trace.y(high) ? i : high;
            }
            words.append(' ')
                    .append(trace.name())
                    .append(": highest ")
                    .append(Amount.text(trace.y(high), curve.yUnit()))
                    .append(" at ")
                    .append(Amount.text(trace.x(high), curve.xUnit()))
                    .append(", lowest ")
                    .append(Amount.text(trace.y(low), curve.yUnit()))
                    .append(" at ")
                    .append(Amount.text(trace.x(low), curve.xUnit()))
                    .append('.');
        }
        return words.toString();
    }

    private String draw(String id) {
        Markup svg = Draw.begin(id, curve.title(), words(curve), WIDTH, HEIGHT);
        axes(svg);
        List<End> ends = new ArrayList<>();
        for (int i = 0; i < curve.traces().size(); i++) {
            Curve.Trace trace = curve.traces().get(i);
            if (trace.size() > 0) {
                trace(svg, trace, i);
                int last = trace.size() - 1;
                ends.add(
                        new End(LabelColumn.folded(trace.name(), NAME_WIDTH), px(trace.x(last)), py(trace.y(last)), i));
            }
        }
        names(svg, ends);
        return svg.end();
    }

    private record End(List<String> lines, double x, double y, int number) {}

    private double px(double x) {
        return LEFT + xAxis.place(x) * (RIGHT - LEFT);
    }

    private double py(double y) {
        return BOTTOM - yAxis.place(y) * (BOTTOM - TOP);
    }

    private void axes(Markup svg) {
        for (double tick : xAxis.ticks()) {
            double x = LEFT + xAxis.placeOfTick(tick) * (RIGHT - LEFT);
            grid(svg, x, TOP, x, BOTTOM);
            Draw.text(svg, Axis.label(tick), x, BOTTOM + 18, "middle");
        }
        for (double tick : yAxis.ticks()) {
            double y = BOTTOM - yAxis.placeOfTick(tick) * (BOTTOM - TOP);
            grid(svg, LEFT, y, RIGHT, y);
            Draw.text(svg, Axis.label(tick), LEFT - 8, y + 4, "end");
        }
        Draw.line(svg, LEFT, TOP, LEFT, BOTTOM, 1, "");
        Draw.line(svg, LEFT, BOTTOM, RIGHT, BOTTOM, 1, "");
        Draw.text(svg, named(curve.xLabel(), xAxis.unit()), (LEFT + RIGHT) / 2, BOTTOM + 40, "middle");
        Draw.text(svg, named(curve.yLabel(), yAxis.unit()), 8, 16, "start");
    }

    private static String named(String label, String unit) {
        return unit.isEmpty() ? label : label + " [" + unit + "]";
    }

    private static void grid(Markup svg, double x1, double y1, double x2, double y2) {
        svg.empty(
                "line",
                "x1",
                Draw.n(x1),
                "y1",
                Draw.n(y1),
                "x2",
                Draw.n(x2),
                "y2",
                Draw.n(y2),
                "stroke",
                "currentColor",
                "stroke-opacity",
                "0.15");
    }

    private void trace(Markup svg, Curve.Trace trace, int number) {
        StringBuilder path = new StringBuilder();
        int count = trace.size();
        int step = Math.max(1, (count + MOST_POINTS - 1) / MOST_POINTS);
        for (int i = 0; i < count; i += step) {
            // Of each run of points the lowest and the highest are kept, so that no peak is lost.
            int low = i;
            int high = i;
            for (int j = i + 1; j < Math.min(i + step, count); j++) {
                low = trace.y(j) < trace.y(low) ? j : low;
                high = trace.y(j) > trace.y(high) ? j : high;
            }
            point(path, trace, Math.min(low, high));
            if (low != high) {
                point(path, trace, Math.max(low, high));
            }
        }
        point(path, trace, count - 1);
        svg.empty(
                "path",
                "d",
                path.toString(),
                "fill",
                "none",
                "stroke",
                COLOURS[number % COLOURS.length],
                "stroke-width",
                "2",
                "stroke-linejoin",
                "round",
                "stroke-dasharray",
                DASHES[number % DASHES.length]);
    }

    private void point(StringBuilder path, Curve.Trace trace, int i) {
        path.append(path.isEmpty() ? 'M' : 'L')
                .append(Draw.n(px(trace.x(i))))
                .append(' ')
                .append(Draw.n(py(trace.y(i))));
    }

    /** From the end of a line to its name; across the field it must not be taken for the line itself. */
    private static void leader(Markup svg, End end, double middle, String colour) {
        boolean across = end.x() < RIGHT - ACROSS * (RIGHT - LEFT);
        if (across) {
            svg.empty("circle", "cx", Draw.n(end.x()), "cy", Draw.n(end.y()), "r", "3", "fill", colour);
        }
        svg.empty(
                "path",
                "d",
                "M" + Draw.n(end.x()) + " " + Draw.n(end.y()) + "L" + Draw.n(RIGHT + 14) + " " + Draw.n(middle),
                "fill",
                "none",
                "stroke",
                across ? "currentColor" : colour,
                "stroke-width",
                across ? "0.4" : "0.7",
                "stroke-opacity",
                across ? "0.5" : "0.6");
    }

    /** Names beside the right edge, each with a sample of its line, pushed apart so that none covers another. */
    private static void names(Markup svg, List<End> ends) {
        ends.sort(Comparator.comparingDouble(End::y).thenComparingInt(End::number));
        double[] tops = new double[ends.size()];
        double free = TOP - 8;
        for (int i = 0; i < tops.length; i++) {
            double height = ends.get(i).lines().size() * NAME_LINE;
            tops[i] = Math.max(free, ends.get(i).y() - height / 2);
            free = tops[i] + height + 4;
        }
        double limit = HEIGHT - 4;
        for (int i = tops.length - 1; i >= 0; i--) {
            double height = ends.get(i).lines().size() * NAME_LINE;
            tops[i] = Math.min(tops[i], limit - height);
            limit = tops[i] - 4;
        }
        for (int i = 0; i < tops.length; i++) {
            End end = ends.get(i);
            double middle = tops[i] + end.lines().size() * NAME_LINE / 2;
            String colour = COLOURS[end.number() % COLOURS.length];
            leader(svg, end, middle, colour);
            svg.empty(
                    "path",
                    "d",
                    "M" + Draw.n(RIGHT + 14) + " " + Draw.n(middle) + "H" + Draw.n(RIGHT + 44),
                    "fill",
                    "none",
                    "stroke",
                    colour,
                    "stroke-width",
                    "2",
                    "stroke-dasharray",
                    DASHES[end.number() % DASHES.length]);
            for (int line = 0; line < end.lines().size(); line++) {
                Draw.text(svg, end.lines().get(line), RIGHT + 50, tops[i] + 10.5 + NAME_LINE * line, "start");
            }
        }
    }
}
