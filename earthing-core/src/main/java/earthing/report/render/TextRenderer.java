package earthing.report.render;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Document;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A document as Markdown that reads well in a terminal: tables are aligned, lines have at most 100 columns. */
public final class TextRenderer {

    private static final int WIDTH = 100;
    private static final int NARROWEST = 7;
    private static final int LONGEST_WORD = 34;

    private final StringBuilder out = new StringBuilder(65536);

    private TextRenderer() {}

    /**
     * Renders a document.
     *
     * @param document the document
     * @return Markdown, lines ended by a line feed
     */
    public static String render(Document document) {
        TextRenderer renderer = new TextRenderer();
        renderer.out.append("# ").append(document.title()).append("\n\n");
        renderer.blocks(document.blocks());
        return renderer.text();
    }

    /**
     * A table alone.
     *
     * @param table the table
     * @param width the widest line
     * @return lines, each ended by a line feed
     */
    public static String table(Block.Table table, int width) {
        TextRenderer renderer = new TextRenderer();
        renderer.rows(table, width);
        return renderer.text();
    }

    private String text() {
        return out.toString().replace(Amount.NO_BREAK, " ");
    }

    /**
     * Words put into lines.
     *
     * @param text the words
     * @param width the widest line
     * @return the lines
     */
    public static List<String> lines(String text, int width) {
        return fold(text.replace('\n', ' '), width).stream()
                .map(line -> line.replace(Amount.NO_BREAK, " "))
                .toList();
    }

    private void blocks(List<Block> blocks) {
        for (Block block : blocks) {
            block(block);
        }
    }

    private void block(Block block) {
        if (block instanceof Block.Section section) {
            out.append("#".repeat(section.level()))
                    .append(' ')
                    .append(section.title())
                    .append("\n\n");
            blocks(section.blocks());
        } else if (block instanceof Block.Paragraph paragraph) {
            wrapped(paragraph.text(), "", "");
            out.append('\n');
        } else if (block instanceof Block.Headline headline) {
            wrapped("**" + headline.status().toUpperCase(java.util.Locale.ROOT) + "** – " + headline.text(), "", "");
            out.append('\n');
        } else if (block instanceof Block.Choice choice) {
            block(choice.inOneColumn());
        } else if (block instanceof Block.Table table) {
            wrapped("Table: " + table.caption(), "", "");
            out.append('\n');
            rows(table, WIDTH);
            out.append('\n');
        } else if (block instanceof Block.Bullets bullets) {
            bullets.items().forEach(item -> wrapped(item, "- ", "  "));
            out.append('\n');
        } else if (block instanceof Block.Figure figure) {
            wrapped("Figure: " + figure.caption(), "", "");
            out.append('\n');
            wrapped(figure.alternative(), "> ", "> ");
            out.append('\n');
        } else if (block instanceof Block.Working working) {
            wrapped(working.subject() + ":", "- ", "  ");
            wrapped("`" + working.line().text() + "`", "  ", "  ");
            if (!working.basis().isEmpty()) {
                wrapped("(" + working.basis() + ")", "  ", "  ");
            }
            out.append('\n');
        } else if (block instanceof Block.Caution caution) {
            wrapped("**" + caution.title() + "**", "> ", "> ");
            out.append(">\n");
            caution.lines().forEach(line -> wrapped(line, "> - ", ">   "));
            out.append('\n');
        } else if (block instanceof Block.Facts facts) {
            facts(facts);
        } else if (block instanceof Block.Preformatted preformatted) {
            preformatted(preformatted);
        }
    }

    private void facts(Block.Facts facts) {
        int widest =
                facts.facts().stream().mapToInt(f -> length(f.name())).max().orElse(0);
        for (Block.Fact fact : facts.facts()) {
            String name = "- " + fact.name() + ": " + " ".repeat(widest - length(fact.name()));
            wrapped(fact.toFillIn() ? "_".repeat(40) : fact.value(), name, " ".repeat(length(name)));
        }
        out.append('\n');
    }

    private void preformatted(Block.Preformatted block) {
        wrapped(block.label(), "", "");
        String fence = "```";
        while (block.text().contains(fence)) {
            fence += "`";
        }
        out.append('\n').append(fence).append('\n').append(block.text());
        if (!block.text().endsWith("\n")) {
            out.append('\n');
        }
        out.append(fence).append("\n\n");
    }

    /** A table; where it would be too wide, cells go on in the rows below. */
    private void rows(Block.Table table, int width) {
        int columns = table.columns().size();
        List<List<String>> cells = new ArrayList<>();
        List<String> head = new ArrayList<>();
        table.columns().forEach(column -> head.add(cell(column.heading())));
        cells.add(head);
        for (List<String> row : table.rows()) {
            List<String> line = new ArrayList<>();
            row.forEach(content -> line.add(cell(content)));
            cells.add(line);
        }
        int[] widths = widths(cells, columns, width);
        for (int i = 0; i < cells.size(); i++) {
            row(table, cells.get(i), widths);
            if (i == 0) {
                rule(table, widths);
            }
        }
    }

    private static int[] widths(List<List<String>> cells, int columns, int width) {
        int[] natural = new int[columns];
        int[] least = new int[columns];
        for (List<String> row : cells) {
            for (int i = 0; i < columns; i++) {
                natural[i] = Math.max(natural[i], length(row.get(i)));
                least[i] = Math.max(least[i], Math.max(3, longestWord(row.get(i))));
            }
        }
        int room = width - 3 * columns - 1;
        int sum = 0;
        for (int i = 0; i < columns; i++) {
            natural[i] = Math.max(natural[i], 3);
            least[i] = Math.min(least[i], LONGEST_WORD);
            sum += natural[i];
        }
        // Spaces first; only if that is not enough are words cut.
        sum = shrunk(natural, least, sum, room);
        int[] cut = new int[columns];
        Arrays.fill(cut, NARROWEST);
        shrunk(natural, cut, sum, room);
        return natural;
    }

    private static int shrunk(int[] widths, int[] least, int sum, int room) {
        int now = sum;
        while (now > room) {
            int widest = -1;
            for (int i = 0; i < widths.length; i++) {
                boolean shrinks = widths[i] > least[i] && widths[i] > NARROWEST;
                if (shrinks && (widest < 0 || widths[i] > widths[widest])) {
                    widest = i;
                }
            }
            if (widest < 0) {
                return now;
            }
            widths[widest]--;
            now--;
        }
        return now;
    }

    private void rule(Block.Table table, int[] widths) {
        out.append('|');
        for (int i = 0; i < widths.length; i++) {
            boolean number = table.columns().get(i).kind() == Block.Column.Kind.NUMBER;
            out.append('-').append("-".repeat(widths[i])).append(number ? ":|" : "-|");
        }
        out.append('\n');
    }

    private void row(Block.Table table, List<String> cells, int[] widths) {
        List<List<String>> folded = new ArrayList<>();
        int lines = 1;
        for (int i = 0; i < widths.length; i++) {
            List<String> parts = fold(cells.get(i), widths[i]);
            folded.add(parts);
            lines = Math.max(lines, parts.size());
        }
        for (int line = 0; line < lines; line++) {
            out.append('|');
            for (int i = 0; i < widths.length; i++) {
                String part = line < folded.get(i).size() ? folded.get(i).get(line) : "";
                String pad = " ".repeat(Math.max(0, widths[i] - length(part)));
                boolean number = table.columns().get(i).kind() == Block.Column.Kind.NUMBER;
                out.append(' ')
                        .append(number ? pad : "")
                        .append(part)
                        .append(number ? "" : pad)
                        .append(" |");
            }
            out.append('\n');
        }
    }

    private static String cell(String content) {
        return content.replace('\n', ' ').replace("|", "\\|");
    }

    private void wrapped(String text, String first, String next) {
        String prefix = first;
        for (String line : fold(text.replace('\n', ' '), WIDTH - length(first))) {
            out.append(prefix).append(line).append('\n');
            prefix = next;
        }
    }

    /** Words put into lines; a word longer than a line is cut. */
    private static List<String> fold(String text, int width) {
        if (length(text) <= width) {
            return List.of(text);
        }
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        int start = 0;
        while (start < text.length()) {
            int space = text.indexOf(' ', start);
            int end = space < 0 ? text.length() : space;
            String word = text.substring(start, end);
            start = end + 1;
            if (!line.isEmpty() && length(line) + 1 + length(word) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (length(word) > width) {
                int cut = cut(word, width);
                lines.add(word.substring(0, cut));
                word = word.substring(cut);
            }
            if (!line.isEmpty()) {
                line.append(' ');
            }
            line.append(word);
        }
        if (!line.isEmpty() || lines.isEmpty()) {
            lines.add(line.toString());
        }
        return lines;
    }

    /** Where a long word is cut: after a dot or a hyphen, if there is one in the further half of the line. */
    private static int cut(String word, int width) {
        int end = word.offsetByCodePoints(0, width);
        for (int i = end; i > end / 2; i--) {
            if (word.charAt(i - 1) == '.' || word.charAt(i - 1) == '-') {
                return i;
            }
        }
        return end;
    }

    private static int longestWord(String text) {
        int longest = 0;
        int start = 0;
        while (start <= text.length()) {
            int space = text.indexOf(' ', start);
            int end = space < 0 ? text.length() : space;
            longest = Math.max(longest, end - start);
            start = end + 1;
        }
        return longest;
    }

    private static int length(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
