package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Document;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A report taken apart into one line for each cell, fact, sentence and label of a drawing, indented below the table and
 * the section that it belongs to; and the differences between two of these, told in the words of a reader.
 *
 * <p>Words and printed digits have to be the same. A number of more than six digits, as the calculation in
 * full has them, may differ by 1e-9 of itself: another processor rounds its last bits differently.
 * A point of a list is its own name, so that one more does not shift those that follow; for the same reason the numbers
 * of references are left out.
 */
final class GoldenCopy {

    private static final String IS = " = ";
    private static final String INSIDE = "\t";
    private static final String INDENT = "  ";
    private static final Pattern LABEL = Pattern.compile("<text[^>]*>(.*?)</text>", Pattern.DOTALL);
    private static final Pattern TAG = Pattern.compile("<[^>]*>");
    private static final Pattern CITATION = Pattern.compile("\\[\\d+]");
    private static final Pattern LONG_NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?(?:[eE]-?\\d+)?");
    private static final int PRINTED_DIGITS = 6;
    private static final BigDecimal LAST_BITS = new BigDecimal("1e-9");

    private final StringBuilder lines = new StringBuilder(1 << 18);
    private final Map<String, Integer> seen = new HashMap<>();
    private final List<String> place = new ArrayList<>();

    private GoldenCopy() {}

    /** The report as lines; the text of the input file is left out, since it stands beside the copy anyway. */
    static String of(Document document) {
        GoldenCopy copy = new GoldenCopy();
        copy.leaf("title", document.title());
        document.blocks().forEach(copy::block);
        return copy.lines.toString();
    }

    /**
     * What differs, in the order of the report.
     *
     * @param report name of the report
     * @param was the copy that is kept
     * @param is the report of now
     * @return one line a difference; empty if there is none
     */
    static List<String> differences(String report, String was, String is) {
        Map<String, String> before = read(was);
        Map<String, String> now = read(is);
        String start = "report " + report + ", ";
        List<String> told = new ArrayList<>();
        before.forEach((where, value) -> {
            String other = now.get(where);
            if (other == null) {
                // Told once, for the whole row or section that is gone.
                if (!before.containsKey(parent(where)) || now.containsKey(parent(where))) {
                    told.add(start + where + ": is gone" + (value.isEmpty() ? "" : ", was " + value));
                }
            } else if (!same(value, other)) {
                told.add(start + where + ": " + value + " → " + other);
            }
        });
        now.forEach((where, value) -> {
            if (!before.containsKey(where) && (before.containsKey(parent(where)) || !now.containsKey(parent(where)))) {
                told.add(start + where + ": is new" + (value.isEmpty() ? "" : ": " + value));
            }
        });
        if (told.isEmpty() && !List.copyOf(before.keySet()).equals(List.copyOf(now.keySet()))) {
            List<String> a = List.copyOf(before.keySet());
            List<String> b = List.copyOf(now.keySet());
            int i = 0;
            while (a.get(i).equals(b.get(i))) {
                i++;
            }
            told.add("report " + report + ": in another order from here on: " + a.get(i) + " → " + b.get(i));
        }
        return told.stream().map(line -> line.replace(INSIDE, ", ")).toList();
    }

    private static String parent(String where) {
        int end = where.lastIndexOf(INSIDE);
        return end < 0 ? "" : where.substring(0, end);
    }

    /** From the place of each line, told in words, to what stands there. */
    private static Map<String, String> read(String text) {
        Map<String, String> found = new LinkedHashMap<>();
        List<String> above = new ArrayList<>();
        text.lines().forEach(line -> {
            int depth = 0;
            while (line.startsWith(INDENT, depth * INDENT.length())) {
                depth++;
            }
            String content = line.substring(depth * INDENT.length());
            int is = content.indexOf(IS);
            String key = is < 0 ? content : content.substring(0, is);
            above.subList(depth, above.size()).clear();
            above.add(key);
            String where = String.join(INSIDE, above);
            if (found.put(where, is < 0 ? "" : content.substring(is + IS.length())) != null) {
                throw new IllegalArgumentException("stands twice: " + where);
            }
        });
        return found;
    }

    private static boolean same(String a, String b) {
        if (a.equals(b)) {
            return true;
        }
        Matcher one = LONG_NUMBER.matcher(a);
        Matcher two = LONG_NUMBER.matcher(b);
        int from = 0;
        int other = 0;
        while (one.find()) {
            if (!two.find()
                    || !a.substring(from, one.start()).equals(b.substring(other, two.start()))
                    || !sameNumber(one.group(), two.group())) {
                return false;
            }
            from = one.end();
            other = two.end();
        }
        return a.substring(from).equals(b.substring(other));
    }

    private static boolean sameNumber(String a, String b) {
        if (a.equals(b)) {
            return true;
        }
        BigDecimal x = new BigDecimal(a);
        BigDecimal y = new BigDecimal(b);
        if (x.precision() <= PRINTED_DIGITS && y.precision() <= PRINTED_DIGITS) {
            return false;
        }
        return x.subtract(y).abs().compareTo(x.abs().multiply(LAST_BITS, MathContext.DECIMAL64)) <= 0;
    }

    private void block(Block block) {
        if (block instanceof Block.Section section) {
            open("section " + section.id(), section.title());
            section.blocks().forEach(this::block);
            close();
        } else if (block instanceof Block.Paragraph paragraph) {
            leaf("paragraph", paragraph.text());
        } else if (block instanceof Block.Headline headline) {
            leaf("headline", headline.status() + " – " + headline.text());
        } else if (block instanceof Block.Choice choice) {
            table(choice.table());
        } else if (block instanceof Block.Table table) {
            table(table);
        } else if (block instanceof Block.Bullets bullets) {
            bullets.items().forEach(item -> leaf("point: " + item, ""));
        } else if (block instanceof Block.Figure figure) {
            open("figure " + figure.id(), figure.caption());
            leaf("in words", figure.alternative());
            LABEL.matcher(figure.svg())
                    .results()
                    .forEach(label ->
                            leaf("label: " + TAG.matcher(label.group(1)).replaceAll(""), ""));
            close();
        } else if (block instanceof Block.Working working) {
            open("working of " + working.subject(), "");
            leaf("line", working.line().text());
            leaf("basis", working.basis());
            close();
        } else if (block instanceof Block.Caution caution) {
            open("caution", caution.title());
            caution.lines().forEach(line -> leaf("point: " + line, ""));
            close();
        } else if (block instanceof Block.Facts facts) {
            facts.facts().forEach(fact -> leaf("fact " + fact.name(), fact.value()));
        } else if (block instanceof Block.Preformatted preformatted) {
            leaf("text as it stands", preformatted.label());
        }
    }

    private void table(Block.Table table) {
        open("table " + table.id(), table.caption());
        leaf(
                "columns",
                String.join(
                        " | ",
                        table.columns().stream().map(Block.Column::heading).toList()));
        boolean numbered = table.columns().get(0).head().equals("No.");
        for (List<String> row : table.rows()) {
            open("row " + (numbered ? row.get(2) : row.get(0)), "");
            for (int i = 1; i < row.size(); i++) {
                leaf("column " + table.columns().get(i).heading(), row.get(i));
            }
            close();
        }
        close();
    }

    private void open(String key, String value) {
        place.add(leaf(key, value));
    }

    private void close() {
        place.remove(place.size() - 1);
    }

    /** Writes a line; what stands twice in one place is numbered. */
    private String leaf(String key, String value) {
        String plain = plain(key).replace(IS, "=");
        int number = seen.merge(String.join("\n", place) + "\n" + plain, 1, Integer::sum);
        String name = number == 1 ? plain : plain + " (" + number + ")";
        lines.append(INDENT.repeat(place.size())).append(name);
        if (!value.isEmpty()) {
            lines.append(IS).append(plain(value));
        }
        lines.append('\n');
        return name;
    }

    private static String plain(String text) {
        return CITATION.matcher(text)
                .replaceAll("[n]")
                .replace(Amount.NO_BREAK, " ")
                .replace('\n', ' ')
                .strip();
    }
}
