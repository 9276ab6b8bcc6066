package earthing.report.figure;

import earthing.report.document.Amount;
import earthing.report.markup.Markup;
import earthing.study.Curve;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How far each input alone moves a value: two bars an input from the nominal value, open for its low bound and filled for
 * its high one, the heaviest input first.
 */
public final class SensitivityBars {

    private static final double WIDTH = 860;
    private static final double LEFT = 300;
    private static final double RIGHT = 640;
    private static final double TOP = 30;
    private static final double BAR = 9;
    private static final double STEP = 32;
    private static final double FOOT = 62;
    private static final int LOW = 0;
    private static final int NOMINAL = 1;
    private static final int HIGH = 2;

    private SensitivityBars() {}

    /**
     * Draws the bars.
     *
     * @param curve a trace for each input, heaviest first; its values at the low bound, nominal, and at the high bound
     * @param limit limit of the value, in SI; a mark is drawn where it lies near the values
     * @param id anchor of the figure
     * @return the drawing
     * @throws IllegalArgumentException if there is no trace or one has not three values
     */
    public static String of(Curve curve, OptionalDouble limit, String id) {
        List<Curve.Trace> traces = curve.traces();
        if (traces.isEmpty() || traces.stream().anyMatch(trace -> trace.size() != 3)) {
            throw new IllegalArgumentException("curve " + curve.id() + " needs traces of three values each");
        }
        double nominal = traces.get(0).y(NOMINAL);
        double least = traces.stream()
                .mapToDouble(t -> Math.min(t.y(LOW), t.y(HIGH)))
                .min()
                .orElse(nominal);
        double most = traces.stream()
                .mapToDouble(t -> Math.max(t.y(LOW), t.y(HIGH)))
                .max()
                .orElse(nominal);
        least = Math.min(least, nominal);
        most = Math.max(most, nominal);
        boolean shown = limit.isPresent() && isNear(limit.getAsDouble(), least, most);
        Axis axis = Axis.over(
                shown ? Math.min(least, limit.getAsDouble()) : least,
                shown ? Math.max(most, limit.getAsDouble()) : most,
                curve.yUnit(),
                false);
        double bottom = TOP + STEP * traces.size();
        Markup svg = Draw.begin(id, curve.title(), words(curve, limit), WIDTH, bottom + FOOT);
        for (double tick : axis.ticks()) {
            double x = LEFT + axis.placeOfTick(tick) * (RIGHT - LEFT);
            Draw.line(svg, x, bottom, x, bottom + 5, 1, "");
            Draw.text(svg, Axis.label(tick), x, bottom + 19, "middle");
        }
        Draw.line(svg, LEFT, bottom, RIGHT, bottom, 1, "");
        Draw.text(
                svg,
                curve.title() + (axis.unit().isEmpty() ? "" : " [" + axis.unit() + "]")
                        + "; open: input low, filled: input high",
                (LEFT + RIGHT) / 2,
                bottom + 42,
                "middle");
        double zero = LEFT + axis.place(nominal) * (RIGHT - LEFT);
        for (int i = 0; i < traces.size(); i++) {
            Curve.Trace trace = traces.get(i);
            double y = TOP + STEP * i + 5;
            Draw.text(svg, trace.name(), LEFT - 10, y + BAR + 4, "end");
            bar(svg, zero, LEFT + axis.place(trace.y(LOW)) * (RIGHT - LEFT), y, "0");
            bar(svg, zero, LEFT + axis.place(trace.y(HIGH)) * (RIGHT - LEFT), y + BAR + 2, "0.45");
            Draw.text(
                    svg,
                    Amount.text(trace.y(LOW), curve.yUnit()) + " … " + Amount.text(trace.y(HIGH), curve.yUnit()),
                    RIGHT + 16,
                    y + BAR + 4,
                    "start");
        }
        Draw.line(svg, zero, TOP, zero, bottom, 1.2, "");
        if (shown) {
            double x = LEFT + axis.place(limit.getAsDouble()) * (RIGHT - LEFT);
            Draw.line(svg, x, TOP - 8, x, bottom, 2, "3 2");
        }
        Draw.text(svg, heading(nominal, curve.yUnit(), limit, shown), LEFT, TOP - 14, "start");
        return svg.end();
    }

    private static String heading(double nominal, String unit, OptionalDouble limit, boolean shown) {
        String all = "all nominal: " + Amount.text(nominal, unit);
        return limit.isEmpty()
                ? all
                : all + "; limit: " + Amount.text(limit, unit) + (shown ? ", dashed" : ", outside the drawing");
    }

    /** Whether a limit may be drawn without pressing the bars together. */
    private static boolean isNear(double limit, double least, double most) {
        double span = most - least;
        return limit >= least - 2 * span && limit <= most + 2 * span;
    }

    private static void bar(Markup svg, double from, double to, double y, String opacity) {
        Draw.box(svg, Math.min(from, to), y, Math.max(0.5, Math.abs(to - from)), BAR, opacity);
    }

    /**
     * The bars in words.
     *
     * @param curve the data
     * @param limit limit of the value, in SI
     * @return sentences
     */
    public static String words(Curve curve, OptionalDouble limit) {
        StringBuilder words = new StringBuilder(curve.title());
        words.append(" with all inputs nominal: ")
                .append(Amount.text(curve.traces().get(0).y(NOMINAL), curve.yUnit()))
                .append('.');
        for (Curve.Trace trace : curve.traces()) {
            words.append(" With ")
                    .append(trace.name())
                    .append(" low ")
                    .append(Amount.text(trace.y(LOW), curve.yUnit()))
                    .append(", high ")
                    .append(Amount.text(trace.y(HIGH), curve.yUnit()))
                    .append('.');
        }
        limit.ifPresent(value -> words.append(" Limit ")
                .append(Amount.text(value, curve.yUnit()))
                .append('.'));
        return words.toString();
    }
}
