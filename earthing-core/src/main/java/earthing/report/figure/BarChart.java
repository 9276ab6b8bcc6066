package earthing.report.figure;

import earthing.report.document.Amount;
import earthing.report.markup.Markup;
import java.util.List;
import java.util.OptionalDouble;

/** Groups of horizontal bars, each with its name and its value written beside it, so that no colour has to be told. */
public final class BarChart {

    private static final double WIDTH = 860;
    private static final double LEFT = 150;
    private static final double RIGHT = 640;
    private static final double BAR = 16;
    private static final double STEP = 23;
    private static final double HEAD = 30;
    private static final double GAP = 14;

    /**
     * A group of bars with a scale of its own.
     *
     * @param title what its bars show
     * @param unit SI unit of values and limits
     * @param bars the bars, in order
     */
    public record Group(String title, String unit, List<Bar> bars) {
        /**
         * Copies the bars.
         *
         * @param title what its bars show
         * @param unit SI unit of values and limits
         * @param bars the bars, in order
         */
        public Group {
            bars = List.copyOf(bars);
        }
    }

    /**
     * A bar.
     *
     * @param name name, to its left
     * @param value value, ≥ 0, in SI; empty where there is none
     * @param limit limit drawn across it, in SI; empty for none
     * @param limitName word written with the limit
     */
    public record Bar(String name, OptionalDouble value, OptionalDouble limit, String limitName) {}

    private BarChart() {}

    /**
     * Draws the groups one below the other.
     *
     * @param id anchor of the figure
     * @param title title of the drawing
     * @param groups at least one group
     * @return the drawing
     */
    public static String of(String id, String title, List<Group> groups) {
        if (groups.isEmpty()) {
            throw new IllegalArgumentException("a bar chart needs at least one group");
        }
        double height = GAP;
        for (Group group : groups) {
            height += HEAD + STEP * group.bars().size() + GAP;
        }
        Markup svg = Draw.begin(id, title, words(groups), WIDTH, height);
        double y = GAP;
        for (Group group : groups) {
            Draw.text(svg, group.title(), 8, y + 14, "start");
            y += HEAD;
            double most = group.bars().stream()
                    .flatMapToDouble(b -> java.util.stream.DoubleStream.concat(b.value().stream(), b.limit().stream()))
                    .max()
                    .orElse(0);
            List<String> amounts = amounts(group);
            for (int i = 0; i < group.bars().size(); i++) {
                bar(svg, group.bars().get(i), amounts.get(i), group.unit(), y, most);
                y += STEP;
            }
            Draw.line(svg, LEFT, y - STEP * group.bars().size() - 4, LEFT, y, 1, "");
            y += GAP;
        }
        return svg.end();
    }

    /** Written together, so that what is nothing beside the others is written as nothing. */
    private static List<String> amounts(Group group) {
        return Amount.row(group.bars().stream().map(Bar::value).toList(), group.unit());
    }

    private static void bar(Markup svg, Bar bar, String amount, String unit, double y, double most) {
        Draw.text(svg, bar.name(), LEFT - 10, y + 12, "end");
        if (bar.value().isEmpty()) {
            Draw.text(svg, "could not be computed", LEFT + 8, y + 12, "start");
            return;
        }
        double length = most > 0 ? bar.value().getAsDouble() / most * (RIGHT - LEFT) : 0;
        Draw.box(svg, LEFT, y, Math.max(0.5, length), BAR, "0.25");
        double text = LEFT + length + 8;
        String label = amount;
        if (bar.limit().isPresent()) {
            double x = LEFT + bar.limit().getAsDouble() / most * (RIGHT - LEFT);
            Draw.line(svg, x, y - 4, x, y + BAR + 3, 2, "3 2");
            label += "; " + bar.limitName() + " " + Amount.text(bar.limit(), unit);
            // The words stand clear of the limit's mark.
            text = x >= text - 4 ? Math.max(text, x + 8) : text;
        }
        Draw.text(svg, label, text, y + 12, "start");
    }

    /**
     * The groups in words.
     *
     * @param groups the groups
     * @return sentences
     */
    public static String words(List<Group> groups) {
        StringBuilder words = new StringBuilder("Bars.");
        for (Group group : groups) {
            words.append(' ').append(group.title()).append(": ");
            String comma = "";
            List<String> amounts = amounts(group);
            for (int i = 0; i < group.bars().size(); i++) {
                Bar bar = group.bars().get(i);
                words.append(comma)
                        .append(bar.name())
                        .append(' ')
                        .append(bar.value().isEmpty() ? "could not be computed" : amounts.get(i));
                if (bar.limit().isPresent()) {
                    words.append(" (")
                            .append(bar.limitName())
                            .append(' ')
                            .append(Amount.text(bar.limit(), group.unit()))
                            .append(')');
                }
                comma = ", ";
            }
            words.append('.');
        }
        return words.toString();
    }
}
