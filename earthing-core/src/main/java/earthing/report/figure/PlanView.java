package earthing.report.figure;

import earthing.report.markup.Markup;
import earthing.study.Curve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The ground around the pole in plan, to scale: lines of equal potential, the limit of touch, metal in the ground, the
 * reach of a hand, neighbours. It draws the lines of the study and knows them by the first words of their names.
 */
public final class PlanView {

    /** Id of the curve that is drawn this way. */
    public static final String CURVE = "touch.plan";

    private static final double WIDTH = 860;
    private static final double HEIGHT = 620;
    private static final double LEFT = 60;
    private static final double TOP = 30;
    private static final double SIDE = 530;
    private static final double NAMES = LEFT + SIDE + 34;
    private static final double NAME_LINE = 14;
    private static final int NAME_WIDTH = 28;

    private static final String CONTOUR = "ground at ";
    private static final String LIMIT = "limit of touch";
    private static final String ELECTRODE = "electrode ";
    private static final String REACH = "reach ";
    private static final String NEIGHBOUR = "neighbour ";

    private final Curve curve;
    private final Axis across;
    private final Axis up;
    private final double middleX;
    private final double middleY;
    private final List<Name> names = new ArrayList<>();

    private record Name(List<String> lines, double x, double y, String dash, double width) {}

    private PlanView(Curve curve) {
        this.curve = curve;
        double[] x = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        double[] y = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        // The neighbours may lie outside; what the study looked at is the extent of the rest.
        for (Curve.Trace trace : curve.traces()) {
            if (!trace.name().startsWith(NEIGHBOUR)) {
                for (int i = 0; i < trace.size(); i++) {
                    x[0] = Math.min(x[0], trace.x(i));
                    x[1] = Math.max(x[1], trace.x(i));
                    y[0] = Math.min(y[0], trace.y(i));
                    y[1] = Math.max(y[1], trace.y(i));
                }
            }
        }
        middleX = (x[0] + x[1]) / 2;
        middleY = (y[0] + y[1]) / 2;
        double half = 0.505 * Math.max(x[1] - x[0], y[1] - y[0]);
        this.across = Axis.exactly(middleX - half, middleX + half, "m");
        this.up = Axis.exactly(middleY - half, middleY + half, "m");
    }

    /**
     * Draws the plan.
     *
     * @param curve the data, of id {@link #CURVE}, with at least one line that is no neighbour
     * @param id anchor of the figure, prefix of the anchors inside
     * @return the drawing
     */
    public static String of(Curve curve, String id) {
        return new PlanView(curve).draw(id);
    }

    /**
     * The plan in words.
     *
     * @param curve the data
     * @return sentences
     */
    public static String words(Curve curve) {
        Set<String> told = new LinkedHashSet<>();
        curve.traces().forEach(trace -> told.add(trace.name()));
        return "Plan of the ground around the pole, seen from above, with these lines: " + String.join("; ", told)
                + ". " + curve.title();
    }

    private double px(double x) {
        return LEFT + across.place(x) * SIDE;
    }

    private double py(double y) {
        return TOP + SIDE - up.place(y) * SIDE;
    }

    private String draw(String id) {
        Markup svg = Draw.begin(id, "Plan of the ground around the pole", words(curve), WIDTH, HEIGHT);
        svg.open("clipPath", "id", id + "-frame");
        svg.empty("rect", "x", Draw.n(LEFT), "y", Draw.n(TOP), "width", Draw.n(SIDE), "height", Draw.n(SIDE));
        svg.close();
        axes(svg);
        svg.open("g", "clip-path", "url(#" + id + "-frame)");
        Map<String, List<Curve.Trace>> byName = new LinkedHashMap<>();
        curve.traces()
                .forEach(trace -> byName.computeIfAbsent(trace.name(), key -> new ArrayList<>())
                        .add(trace));
        byName.forEach((name, traces) -> traces.forEach(trace -> line(svg, trace)));
        svg.empty(
                "circle",
                "cx",
                Draw.n(px(0)),
                "cy",
                Draw.n(py(0)),
                "r",
                "5",
                "fill",
                "none",
                "stroke",
                "currentColor",
                "stroke-width",
                "1.6");
        svg.close();
        int number = 0;
        for (Map.Entry<String, List<Curve.Trace>> entry : byName.entrySet()) {
            name(entry.getKey(), entry.getValue(), number, byName.size());
            number++;
        }
        names.add(new Name(List.of("pole"), px(0) + 5, py(0), "none", 1.6));
        names(svg);
        return svg.end();
    }

    private void axes(Markup svg) {
        for (double tick : across.ticks()) {
            double x = LEFT + across.placeOfTick(tick) * SIDE;
            Draw.line(svg, x, TOP + SIDE, x, TOP + SIDE + 5, 1, "");
            Draw.text(svg, Axis.label(tick), x, TOP + SIDE + 20, "middle");
        }
        for (double tick : up.ticks()) {
            double y = TOP + SIDE - up.placeOfTick(tick) * SIDE;
            Draw.line(svg, LEFT - 5, y, LEFT, y, 1, "");
            Draw.text(svg, Axis.label(tick), LEFT - 9, y + 4, "end");
        }
        svg.empty(
                "rect",
                "x",
                Draw.n(LEFT),
                "y",
                Draw.n(TOP),
                "width",
                Draw.n(SIDE),
                "height",
                Draw.n(SIDE),
                "fill",
                "none",
                "stroke",
                "currentColor",
                "stroke-width",
                "1");
        Draw.text(svg, curve.xLabel() + " [m]", LEFT + SIDE / 2, TOP + SIDE + 42, "middle");
        Draw.text(svg, curve.yLabel() + " [m]", 8, 18, "start");
    }

    private static String dash(String name) {
        if (name.startsWith(REACH)) {
            return "7 4";
        }
        return name.startsWith(NEIGHBOUR) ? "2 4" : "none";
    }

    private static double width(String name) {
        if (name.startsWith(LIMIT)) {
            return 3;
        }
        return name.startsWith(ELECTRODE) ? 4.5 : name.startsWith(CONTOUR) ? 0.9 : 1.4;
    }

    private void line(Markup svg, Curve.Trace trace) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < trace.size(); i++) {
            path.append(i == 0 ? 'M' : 'L')
                    .append(Draw.n(px(trace.x(i))))
                    .append(' ')
                    .append(Draw.n(py(trace.y(i))));
        }
        boolean point = trace.size() == 2 && trace.x(0) == trace.x(1) && trace.y(0) == trace.y(1);
        if (point) {
            // A rod goes straight down: a dot in plan.
            svg.empty(
                    "circle",
                    "cx",
                    Draw.n(px(trace.x(0))),
                    "cy",
                    Draw.n(py(trace.y(0))),
                    "r",
                    "4.2",
                    "fill",
                    "currentColor");
        } else {
            Draw.path(svg, path.toString(), width(trace.name()), dash(trace.name()));
        }
    }

    /** The name stands beside the drawing; its thin line ends at the point that lies furthest in a direction of its own. */
    private void name(String text, List<Curve.Trace> traces, int number, int count) {
        double angle = Math.toRadians(62 - 124.0 * (number + 0.5) / count);
        double best = Double.NEGATIVE_INFINITY;
        double x = 0;
        double y = 0;
        for (Curve.Trace trace : traces) {
            for (int i = 0; i < trace.size(); i++) {
                double place = across.place(trace.x(i));
                double height = up.place(trace.y(i));
                double far = (trace.x(i) - middleX) * Math.cos(angle) + (trace.y(i) - middleY) * Math.sin(angle);
                if (place >= 0 && place <= 1 && height >= 0 && height <= 1 && far > best) {
                    best = far;
                    x = trace.x(i);
                    y = trace.y(i);
                }
            }
        }
        boolean seen = best > Double.NEGATIVE_INFINITY;
        List<String> lines = LabelColumn.folded(seen ? text : text + " (outside this view)", NAME_WIDTH);
        names.add(new Name(lines, seen ? px(x) : Double.NaN, seen ? py(y) : TOP + SIDE, dash(text), width(text)));
    }

    private void names(Markup svg) {
        names.sort(Comparator.comparingDouble(Name::y));
        double[] tops = new double[names.size()];
        double free = TOP - 6;
        for (int i = 0; i < tops.length; i++) {
            double height = names.get(i).lines().size() * NAME_LINE;
            tops[i] = Math.max(free, names.get(i).y() - height / 2);
            free = tops[i] + height + 5;
        }
        double limit = HEIGHT - 4;
        for (int i = tops.length - 1; i >= 0; i--) {
            double height = names.get(i).lines().size() * NAME_LINE;
            tops[i] = Math.min(tops[i], limit - height);
            limit = tops[i] - 5;
        }
        for (int i = 0; i < tops.length; i++) {
            Name name = names.get(i);
            double middle = tops[i] + name.lines().size() * NAME_LINE / 2;
            if (!Double.isNaN(name.x())) {
                svg.empty(
                        "path",
                        "d",
                        "M" + Draw.n(name.x()) + " " + Draw.n(name.y()) + "L" + Draw.n(NAMES - 26) + " "
                                + Draw.n(middle),
                        "fill",
                        "none",
                        "stroke",
                        "currentColor",
                        "stroke-width",
                        "0.5",
                        "stroke-opacity",
                        "0.55");
            }
            Draw.path(
                    svg,
                    "M" + Draw.n(NAMES - 26) + " " + Draw.n(middle) + "H" + Draw.n(NAMES - 5),
                    name.width(),
                    name.dash());
            for (int line = 0; line < name.lines().size(); line++) {
                Draw.text(svg, name.lines().get(line), NAMES, tops[i] + 10.5 + NAME_LINE * line, "start");
            }
        }
    }
}
