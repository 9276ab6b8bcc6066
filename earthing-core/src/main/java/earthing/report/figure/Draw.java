package earthing.report.figure;

import earthing.report.markup.Markup;

/** Strokes, texts and coordinates of a drawing. */
final class Draw {

    /** Family of the texts; the same as the page's. */
    static final String FONT = "'DejaVu Sans', Arial, sans-serif";

    private Draw() {}

    /** A coordinate with one decimal, whatever the locale. */
    static String n(double value) {
        long tenths = Math.round(value * 10);
        long whole = tenths / 10;
        long rest = Math.abs(tenths % 10);
        String sign = tenths < 0 && whole == 0 ? "-" : "";
        return rest == 0 ? sign + whole : sign + whole + "." + rest;
    }

    /** Opens a drawing with its title and its text alternative. */
    static Markup begin(String id, String title, String alternative, double width, double height) {
        Markup svg = new Markup();
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + n(width) + " " + n(height),
                "width",
                n(width),
                "height",
                n(height),
                "role",
                "img",
                "aria-labelledby",
                id + "-title " + id + "-text",
                "font-family",
                FONT,
                "font-size",
                "12");
        svg.leaf("title", title, "id", id + "-title");
        svg.leaf("desc", alternative, "id", id + "-text");
        return svg;
    }

    static void text(Markup svg, String content, double x, double y, String anchor) {
        svg.leaf("text", content, "x", n(x), "y", n(y), "text-anchor", anchor, "fill", "currentColor");
    }

    static void line(Markup svg, double x1, double y1, double x2, double y2, double width, String dash) {
        if (dash.isEmpty()) {
            svg.empty(
                    "line",
                    "x1",
                    n(x1),
                    "y1",
                    n(y1),
                    "x2",
                    n(x2),
                    "y2",
                    n(y2),
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    n(width));
        } else {
            svg.empty(
                    "line",
                    "x1",
                    n(x1),
                    "y1",
                    n(y1),
                    "x2",
                    n(x2),
                    "y2",
                    n(y2),
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    n(width),
                    "stroke-dasharray",
                    dash);
        }
    }

    static void path(Markup svg, String data, double width, String dash) {
        svg.empty(
                "path",
                "d",
                data,
                "fill",
                "none",
                "stroke",
                "currentColor",
                "stroke-width",
                n(width),
                "stroke-dasharray",
                dash.isEmpty() ? "none" : dash);
    }

    static void box(Markup svg, double x, double y, double width, double height, String opacity) {
        svg.empty(
                "rect",
                "x",
                n(x),
                "y",
                n(y),
                "width",
                n(width),
                "height",
                n(height),
                "fill",
                "currentColor",
                "fill-opacity",
                opacity,
                "stroke",
                "currentColor",
                "stroke-width",
                "1.2");
    }
}
