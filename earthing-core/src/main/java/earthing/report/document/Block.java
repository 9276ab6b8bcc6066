package earthing.report.document;

import earthing.quantity.Worked;
import earthing.study.Curve;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A piece of a document. */
public sealed interface Block {

    /**
     * A section with a heading.
     *
     * @param id anchor, unique in the document
     * @param level 2 for a main section, 3 and 4 below it; the title of the document is level 1
     * @param title heading
     * @param blocks what stands under it; sections among them are one level deeper
     */
    record Section(String id, int level, String title, List<Block> blocks) implements Block {
        /**
         * Copies the blocks and checks that headings nest without a gap.
         *
         * @param id anchor, unique in the document
         * @param level 2 for a main section, 3 and 4 below it; the title of the document is level 1
         * @param title heading
         * @param blocks what stands under it; sections among them are one level deeper
         */
        public Section {
            if (level < 2 || level > 6) {
                throw new IllegalArgumentException("the level of a section must be 2 to 6; have " + level);
            }
            blocks = List.copyOf(blocks);
            for (Block block : blocks) {
                if (block instanceof Section inner && inner.level() != level + 1) {
                    throw new IllegalArgumentException("section " + inner.id() + " inside " + id + " must have level "
                            + (level + 1) + "; have " + inner.level());
                }
            }
        }
    }

    /** The place of the table of contents, in formats that have one; without it they put it under the title. */
    record Contents() implements Block {}

    /**
     * Running text.
     *
     * @param text one paragraph without line breaks
     */
    record Paragraph(String text) implements Block {}

    /**
     * The answer in one line.
     *
     * @param status word of the status
     * @param text sentence that says what it covers
     */
    record Headline(String status, String text) implements Block {}

    /**
     * A table.
     *
     * @param id anchor, unique in the document
     * @param caption what the table shows
     * @param columns the columns
     * @param rows the cells, as many in each row as there are columns
     */
    record Table(String id, String caption, List<Column> columns, List<List<String>> rows) implements Block {
        /**
         * Copies the rows and counts their cells.
         *
         * @param id anchor, unique in the document
         * @param caption what the table shows
         * @param columns the columns
         * @param rows the cells, as many in each row as there are columns
         */
        public Table {
            columns = List.copyOf(columns);
            rows = rows.stream().map(List::copyOf).toList();
            for (List<String> row : rows) {
                if (row.size() != columns.size()) {
                    throw new IllegalArgumentException("table " + id + " has " + columns.size()
                            + " columns; have a row of " + row.size() + " cells");
                }
            }
        }

        /**
         * The same table without the columns that hold nothing; the first stays.
         *
         * @return the narrower table, or this one
         */
        public Table withoutEmptyColumns() {
            List<Integer> kept = IntStream.range(0, columns.size())
                    .filter(i -> i == 0
                            || rows.stream()
                                    .map(row -> row.get(i))
                                    .anyMatch(cell -> !cell.isEmpty() && !cell.equals("–")))
                    .boxed()
                    .toList();
            return rows.isEmpty() || kept.size() == columns.size()
                    ? this
                    : new Table(
                            id,
                            caption,
                            kept.stream().map(columns::get).toList(),
                            rows.stream()
                                    .map(row -> kept.stream().map(row::get).toList())
                                    .toList());
        }
    }

    /**
     * A table of cases among which a reader may choose: the first columns tell the case. Where nothing can be chosen, on
     * paper or in plain text, it is the whole table.
     *
     * @param table all cases
     * @param keys how many of its columns tell the case
     */
    record Choice(Table table, int keys) implements Block {
        /**
         * Refuses a table without both.
         *
         * @param table all cases
         * @param keys how many of its columns tell the case
         */
        public Choice {
            if (keys < 1 || keys >= table.columns().size()) {
                throw new IllegalArgumentException("of " + table.columns().size()
                        + " columns at least one must tell the case and one a value; have " + keys);
            }
        }

        /**
         * The table with each case in words in one column, for where there is little room.
         *
         * @return the narrower table
         */
        public Table inOneColumn() {
            List<Column> columns = new ArrayList<>();
            columns.add(Column.text("Case"));
            columns.addAll(table.columns().subList(keys, table.columns().size()));
            List<List<String>> rows = new ArrayList<>();
            for (List<String> row : table.rows()) {
                List<String> narrow = new ArrayList<>();
                narrow.add(row.subList(0, keys).stream()
                        .filter(word -> !word.equals("–"))
                        .collect(Collectors.joining(", ")));
                narrow.addAll(row.subList(keys, row.size()));
                rows.add(narrow);
            }
            return new Table(table.id(), table.caption(), columns, rows);
        }
    }

    /**
     * A column of a table.
     *
     * @param head heading
     * @param unit unit of all its cells; empty where the cells carry their own or have none
     * @param kind how it is set
     */
    record Column(String head, String unit, Kind kind) {
        /** How a column is set. */
        public enum Kind {
            /** Words, to the left. */
            TEXT,
            /** Amounts, to the right. */
            NUMBER,
            /** The word of a status. */
            STATUS
        }

        /**
         * A column of words.
         *
         * @param head heading
         * @return the column
         */
        public static Column text(String head) {
            return new Column(head, "", Kind.TEXT);
        }

        /**
         * A column of amounts that carry their units.
         *
         * @param head heading
         * @return the column
         */
        public static Column number(String head) {
            return new Column(head, "", Kind.NUMBER);
        }

        /**
         * A column of statuses.
         *
         * @param head heading
         * @return the column
         */
        public static Column status(String head) {
            return new Column(head, "", Kind.STATUS);
        }

        /**
         * The heading with its unit.
         *
         * @return for example {@code Height [m]}
         */
        public String heading() {
            return unit.isEmpty() ? head : head + " [" + unit + "]";
        }
    }

    /**
     * A list.
     *
     * @param items one line of text each
     */
    record Bullets(List<String> items) implements Block {
        /**
         * Copies the items.
         *
         * @param items one line of text each
         */
        public Bullets {
            items = List.copyOf(items);
        }
    }

    /**
     * A figure.
     *
     * @param id anchor, unique in the document
     * @param caption what it shows
     * @param alternative the same in words, for a reader who does not see it
     * @param svg the drawing
     * @param data the data behind it, where it is a chart
     */
    record Figure(String id, String caption, String alternative, String svg, Optional<Curve> data) implements Block {
        /**
         * Refuses a figure without a text alternative.
         *
         * @param id anchor, unique in the document
         * @param caption what it shows
         * @param alternative the same in words, for a reader who does not see it
         * @param svg the drawing
         * @param data the data behind it, where it is a chart
         */
        public Figure {
            if (alternative.isBlank()) {
                throw new IllegalArgumentException("figure " + id + " needs a text alternative");
            }
        }
    }

    /**
     * A line of working.
     *
     * @param subject what is worked out
     * @param line the line
     * @param basis where the formula or the limit comes from; empty if it is told elsewhere
     */
    record Working(String subject, Worked line, String basis) implements Block {}

    /**
     * Cautions.
     *
     * @param title heading
     * @param lines the cautions
     */
    record Caution(String title, List<String> lines) implements Block {
        /**
         * Copies the lines.
         *
         * @param title heading
         * @param lines the cautions
         */
        public Caution {
            lines = List.copyOf(lines);
        }
    }

    /**
     * Names and values.
     *
     * @param facts the pairs
     */
    record Facts(List<Fact> facts) implements Block {
        /**
         * Copies the pairs.
         *
         * @param facts the pairs
         */
        public Facts {
            facts = List.copyOf(facts);
        }
    }

    /**
     * A name with its value.
     *
     * @param name the name
     * @param value the value; a line to fill in by hand where it is empty
     */
    record Fact(String name, String value) {
        /**
         * Whether a person fills it in.
         *
         * @return true for an empty value
         */
        public boolean toFillIn() {
            return value.isEmpty();
        }
    }

    /**
     * Text that is printed as it stands.
     *
     * @param label what it is
     * @param text the text
     */
    record Preformatted(String label, String text) implements Block {}
}
