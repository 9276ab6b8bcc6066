package earthing.report.figure;

import earthing.report.markup.Markup;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Labels one below the other beside a drawing, each with a leader to its anchor, none over another. */
final class LabelColumn {

    private static final double LINE = 14;
    private static final double GAP = 7;

    private final double x;
    private final boolean left;
    private final int widest;
    private final List<Label> labels = new ArrayList<>();

    private record Label(List<String> lines, double anchorX, double anchorY) {
        double height() {
            return lines.size() * LINE;
        }
    }

    /**
     * A column.
     *
     * @param x edge of the text that looks towards the drawing
     * @param left whether the column stands left of the drawing, so that its text ends at the edge
     * @param widest characters in a line
     */
    LabelColumn(double x, boolean left, int widest) {
        this.x = x;
        this.left = left;
        this.widest = widest;
    }

    void add(String text, double anchorX, double anchorY) {
        labels.add(new Label(folded(text, widest), anchorX, anchorY));
    }

    /** The least height that holds every label. */
    double height() {
        return labels.stream().mapToDouble(label -> label.height() + GAP).sum();
    }

    void draw(Markup svg, double top, double bottom) {
        List<Label> sorted = new ArrayList<>(labels);
        sorted.sort(Comparator.comparingDouble(Label::anchorY));
        double[] tops = new double[sorted.size()];
        double free = top;
        for (int i = 0; i < tops.length; i++) {
            tops[i] = Math.max(free, sorted.get(i).anchorY() - sorted.get(i).height() / 2);
            free = tops[i] + sorted.get(i).height() + GAP;
        }
        double limit = bottom;
        for (int i = tops.length - 1; i >= 0; i--) {
            tops[i] = Math.min(tops[i], limit - sorted.get(i).height());
            limit = tops[i] - GAP;
        }
        for (int i = 0; i < tops.length; i++) {
            draw(svg, sorted.get(i), tops[i]);
        }
    }

    private void draw(Markup svg, Label label, double top) {
        double middle = top + label.height() / 2;
        double edge = left ? x + 5 : x - 5;
        double knee = left ? x + 22 : x - 22;
        svg.empty(
                "path",
                "d",
                "M" + Draw.n(edge) + " " + Draw.n(middle) + "H" + Draw.n(knee) + "L" + Draw.n(label.anchorX()) + " "
                        + Draw.n(label.anchorY()),
                "fill",
                "none",
                "stroke",
                "currentColor",
                "stroke-width",
                "0.7",
                "stroke-opacity",
                "0.6");
        svg.empty(
                "circle",
                "cx",
                Draw.n(label.anchorX()),
                "cy",
                Draw.n(label.anchorY()),
                "r",
                "1.8",
                "fill",
                "currentColor");
        for (int i = 0; i < label.lines().size(); i++) {
            Draw.text(svg, label.lines().get(i), x, top + LINE * i + 10.5, left ? "end" : "start");
        }
    }

    static List<String> folded(String text, int widest) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        int start = 0;
        while (start < text.length()) {
            int space = text.indexOf(' ', start);
            int end = space < 0 ? text.length() : space;
            String word = text.substring(start, end);
            while (word.length() > widest) {
                if (!line.isEmpty()) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                lines.add(word.substring(0, widest));
                word = word.substring(widest);
            }
            if (!line.isEmpty() && line.length() + 1 + word.length() > widest) {
                lines.add(line.toString());
                line.setLength(0);
            }
            if (!line.isEmpty()) {
                line.append(' ');
            }
            line.append(word);
            start = end + 1;
        }
        if (!line.isEmpty()) {
            lines.add(line.toString());
        }
        return lines;
    }
}
