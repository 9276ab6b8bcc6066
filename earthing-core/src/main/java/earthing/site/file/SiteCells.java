package earthing.site.file;

import earthing.quantity.ColumnTable;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.site.Site;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Sites as rows of a table that {@link SiteRows} reads: the columns that they need together, and the cells of each. */
public final class SiteCells {

    /** A number that is turned into another unit is written with as many digits as it needs to read back the same. */
    private static final int FEWEST_DIGITS = 6;

    private static final int MOST_DIGITS = 20;

    /** What a row cannot say, in place of a key. */
    static final String EMPTY_BLOCK = "a block without keys";

    private SiteCells() {}

    /**
     * The columns that sites need, each with the unit in which the first of them gives its value.
     *
     * @param sites the sites
     * @return the columns in the order of the site file
     */
    public static List<SiteColumn> columns(List<Site> sites) {
        List<SiteColumn> columns = new ArrayList<>();
        collect(Block.site(), sites, List.of(), columns);
        return columns;
    }

    private static void collect(
            Block block, List<? extends Record> records, List<SiteColumn.Step> before, List<SiteColumn> columns) {
        for (Entry entry : block.entries()) {
            if (before.isEmpty() && entry.key().equals(SiteRows.VERSION)) {
                continue;
            }
            if (!entry.isList()) {
                key(entry, 0, given(records, entry::value), before, columns);
                continue;
            }
            int longest = 0;
            for (Record one : records) {
                longest = Math.max(longest, items(entry, one).size());
            }
            for (int i = 0; i < longest; i++) {
                int item = i;
                key(
                        entry,
                        item + 1,
                        given(records, record -> {
                            List<?> items = items(entry, record);
                            return item < items.size() ? items.get(item) : null;
                        }),
                        before,
                        columns);
            }
        }
    }

    private static List<?> items(Entry entry, Record record) {
        return entry.value(record) instanceof List<?> items ? items : List.of();
    }

    private static List<Object> given(List<? extends Record> records, Function<Record, @Nullable Object> value) {
        List<Object> given = new ArrayList<>();
        for (Record block : records) {
            Object there = value.apply(block);
            if (there != null) {
                given.add(there);
            }
        }
        return given;
    }

    private static void key(
            Entry entry, int item, List<Object> values, List<SiteColumn.Step> before, List<SiteColumn> columns) {
        if (values.isEmpty()) {
            return;
        }
        List<SiteColumn.Step> steps = new ArrayList<>(before);
        steps.add(new SiteColumn.Step(entry, item));
        if (entry.kind() == Entry.Kind.BLOCK) {
            collect(entry.block(), values.stream().map(Record.class::cast).toList(), steps, columns);
            return;
        }
        if (entry.kind() != Entry.Kind.QUANTITY) {
            columns.add(new SiteColumn(steps, "", ""));
            return;
        }
        List<Measure> measures = values.stream().map(Measure.class::cast).toList();
        String unit = unit(measures);
        columns.add(new SiteColumn(steps, "", unit));
        for (String part : SiteColumn.PARTS) {
            boolean bound = part.equals(ValueReader.LOW) || part.equals(ValueReader.HIGH);
            SiteColumn column = new SiteColumn(steps, part, bound ? unit : "");
            if (measures.stream().anyMatch(measure -> !part(measure, column).isEmpty())) {
                columns.add(column);
            }
        }
    }

    /** The unit in which the first of some values is written; one that others cannot be turned into only if all have it. */
    private static String unit(List<Measure> measures) {
        Dimension dimension = measures.get(0).dimension();
        List<String> units = measures.stream()
                .flatMap(measure -> measure.bounds().stream())
                .flatMap(bounds -> Stream.of(bounds.nominal(), bounds.low(), bounds.high()))
                .map(SiteCells::unit)
                .distinct()
                .toList();
        if (units.isEmpty()) {
            return dimension.siUnit();
        }
        return units.size() == 1 || dimension.factors().containsKey(units.get(0)) ? units.get(0) : dimension.siUnit();
    }

    private static String unit(Quantity quantity) {
        String text = quantity.text();
        for (String unit : SiteColumn.units(quantity.dimension())) {
            if (!unit.isEmpty() && text.endsWith(unit) && isNumber(text.substring(0, text.length() - unit.length()))) {
                return unit;
            }
        }
        return quantity.dimension().siUnit();
    }

    private static boolean isNumber(String text) {
        return text.strip().matches("[-+.0-9eE]+|[1-4]/0");
    }

    /**
     * The cells of a site.
     *
     * @param site the site
     * @param columns the columns, see {@link #columns}
     * @param decimalComma whether numbers are written with a comma
     * @return a cell for each column
     */
    public static List<String> of(Site site, List<SiteColumn> columns, boolean decimalComma) {
        List<String> cells = new ArrayList<>();
        Set<String> filled = new HashSet<>();
        for (SiteColumn column : columns) {
            String cell = cell(site, column);
            cells.add(decimalComma && column.isNumber() ? cell.replace('.', ',') : cell);
            if (!cell.isEmpty() && !cell.equals(SiteRows.NOT_GIVEN)) {
                filled.addAll(RowTree.owners(column));
            }
        }
        for (int i = 0; i < cells.size(); i++) {
            SiteColumn column = columns.get(i);
            // Where nothing else says that the block is there, the word does.
            if (cells.get(i).isEmpty() && isUnknown(site, column) && !filled.containsAll(RowTree.owners(column))) {
                cells.set(i, ValueReader.UNKNOWN);
                filled.addAll(RowTree.owners(column));
            }
        }
        return cells;
    }

    private static boolean isUnknown(Site site, SiteColumn column) {
        return column.canBeUnknown()
                && owner(site, column)
                        .map(owner ->
                                value(owner, column.steps().get(column.steps().size() - 1)))
                        .isPresent();
    }

    private static Optional<Record> owner(Site site, SiteColumn column) {
        Record owner = site;
        List<SiteColumn.Step> steps = column.steps();
        for (SiteColumn.Step step : steps.subList(0, steps.size() - 1)) {
            if (!(value(owner, step) instanceof Record next)) {
                return Optional.empty();
            }
            owner = next;
        }
        return Optional.of(owner);
    }

    private static String cell(Site site, SiteColumn column) {
        Optional<Record> owner = owner(site, column);
        if (owner.isEmpty()) {
            return "";
        }
        Object value = value(owner.get(), column.steps().get(column.steps().size() - 1));
        if (value == null) {
            return column.canBeUnknown() ? SiteRows.NOT_GIVEN : "";
        }
        if (value instanceof Measure measure) {
            return part(measure, column);
        }
        if (value instanceof Enum<?> word) {
            String text = Entry.word(word);
            return column.canBeUnknown() && text.equals(ValueReader.UNKNOWN) ? "" : text;
        }
        // A row ends with its line.
        return value instanceof ColumnTable table ? table.file() : onOneLine(value);
    }

    private static String onOneLine(Object text) {
        return text.toString().replaceAll("\\s*\\R\\s*", " ");
    }

    private static @Nullable Object value(Record owner, SiteColumn.Step step) {
        if (step.item() == 0) {
            return step.entry().value(owner);
        }
        List<?> items = items(step.entry(), owner);
        return step.item() <= items.size() ? items.get(step.item() - 1) : null;
    }

    private static String part(Measure measure, SiteColumn column) {
        return switch (column.part()) {
            case ValueReader.ORIGIN -> measure.origin() == Measure.Origin.UNSTATED ? "" : Entry.word(measure.origin());
            case ValueReader.DATE -> measure.date();
            case ValueReader.BY -> measure.by();
            default ->
                measure.bounds()
                        .map(bounds -> bound(bounds, column))
                        .orElse(column.entry().isList() && column.part().isEmpty() ? ValueReader.UNKNOWN : "");
        };
    }

    private static String bound(Measure.Bounds bounds, SiteColumn column) {
        Quantity bound = switch (column.part()) {
            case ValueReader.LOW -> bounds.low();
            case ValueReader.HIGH -> bounds.high();
            default -> bounds.nominal();
        };
        return !column.part().isEmpty() && bound.equals(bounds.nominal()) ? "" : number(bound, column.unit());
    }

    /** The number of a quantity in the unit of its column; as written where it is written in that unit. */
    private static String number(Quantity quantity, String unit) {
        String text = quantity.text();
        if (text.endsWith(unit) && isNumber(text.substring(0, text.length() - unit.length()))) {
            return text.substring(0, text.length() - unit.length()).strip();
        }
        Double factor = quantity.dimension().factors().get(unit);
        if (factor == null) {
            throw new IllegalStateException(text + " cannot be written in " + unit);
        }
        BigDecimal exact =
                BigDecimal.valueOf(quantity.si()).divide(BigDecimal.valueOf(factor), new MathContext(MOST_DIGITS));
        for (int digits = FEWEST_DIGITS; digits <= MOST_DIGITS; digits++) {
            String number =
                    exact.round(new MathContext(digits)).stripTrailingZeros().toPlainString();
            if (number.length() <= SiteRows.LONGEST_NUMBER && readsBack(number + ' ' + unit, quantity)) {
                return number;
            }
        }
        return Numbers.full(exact.doubleValue());
    }

    private static boolean readsBack(String text, Quantity quantity) {
        try {
            return Quantity.parse(text, quantity.dimension(), OptionalDouble.empty())
                            .si()
                    == quantity.si();
        } catch (UnitException e) {
            return false;
        }
    }

    /**
     * What the row of a site does not tell.
     *
     * @param site the site
     * @param columns the columns
     * @param sideFiles where the files are that the site names
     * @return the first key that differs when the row is read again, or why the row is refused; empty if nothing is lost
     */
    public static String lost(Site site, List<SiteColumn> columns, SideFiles sideFiles) {
        SiteRows.Row row = SiteRows.again(columns, of(site, columns, false), sideFiles);
        return row instanceof SiteRows.Row.Read read ? difference(site, read.site()) : refusal(row);
    }

    private static String refusal(SiteRows.Row row) {
        Problem first = ((SiteRows.Row.Refused) row).problems().get(0);
        boolean cell = first.column() > 0;
        return (cell ? "column " + first.column() : first.key()) + ": " + first.found();
    }

    /**
     * Whether two sites say the same: all keys, words and texts, a line break being a space, and values to 1e-12 in whatever
     * unit they are written.
     *
     * @param one a site
     * @param other another
     * @return the first key that differs, empty if none does
     */
    static String difference(Site one, Site other) {
        List<SiteTree.Entry> first = SiteTree.entries(one);
        List<SiteTree.Entry> second = SiteTree.entries(other);
        for (int i = 0; i < Math.max(first.size(), second.size()); i++) {
            if (i >= first.size() || i >= second.size()) {
                return (i >= first.size() ? second : first).get(i).path();
            }
            if (!first.get(i).path().equals(second.get(i).path())
                    || !same(first.get(i).value(), second.get(i).value())) {
                return first.get(i).path();
            }
        }
        // What has no key of its own, such as a block without keys.
        return SiteFile.write(one).lines().count()
                        == SiteFile.write(other).lines().count()
                ? ""
                : EMPTY_BLOCK;
    }

    private static boolean same(Object one, Object other) {
        if (!(one instanceof Measure a) || !(other instanceof Measure b)) {
            return one instanceof String ? onOneLine(one).equals(onOneLine(other)) : one.equals(other);
        }
        if (a.isKnown() != b.isKnown()
                || a.origin() != b.origin()
                || !a.date().equals(b.date())
                || !a.by().equals(b.by())) {
            return false;
        }
        for (Measure.Bound bound : Measure.Bound.values()) {
            if (a.isKnown() && !(Math.abs(a.at(bound) - b.at(bound)) <= 1e-12 * Math.abs(a.at(bound)))) {
                return false;
            }
        }
        return true;
    }
}
