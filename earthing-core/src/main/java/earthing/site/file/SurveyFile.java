package earthing.site.file;

import earthing.electrode.wire.DrivenRod;
import earthing.quantity.ColumnTable;
import earthing.site.Key;
import earthing.site.Soil;
import earthing.soil.ElectrodeArray;
import earthing.soil.Reading;
import earthing.soil.Schlumberger;
import earthing.soil.Sounding;
import earthing.soil.Wenner;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The readings of a soil survey, a {@link TableFile} with these columns: {@code spacing [m]} for Wenner or
 * {@code AB/2 [m]} and {@code MN/2 [m]} for Schlumberger or {@code rod depth [m]} and {@code rod diameter [mm]} for a rod that
 * is driven deeper step by step; {@code resistance [ohm]} or {@code resistivity [ohm.m]}; and,
 * where wanted, {@code traverse} and {@code probe depth [m]} (the depth to which the probes were driven; two thirds of it
 * is taken). No row is dropped silently: a file with a bad row is refused, and the author may put {@code #} before it.
 */
public final class SurveyFile {

    private static final String TRAVERSE = "traverse";
    private static final String SPACING = "spacing";
    private static final String HALF_CURRENT = "AB/2";
    private static final String HALF_POTENTIAL = "MN/2";
    private static final String DEPTH = "probe depth";
    private static final String ROD_DEPTH = "rod depth";
    private static final String ROD_DIAMETER = "rod diameter";
    private static final String RESISTANCE = "resistance";
    private static final String RESISTIVITY = "resistivity";

    private SurveyFile() {}

    /**
     * Reads a file.
     *
     * @param path the file; its text names it in problems
     * @param expected the arrangement that the user named, {@code wenner}, {@code schlumberger} or {@code driven-rod}; empty takes what the
     *     columns say
     * @return the soundings, or every problem
     */
    public static SurveyOutcome read(Path path, Optional<String> expected) {
        ProblemList problems = new ProblemList(path.toString());
        byte[] bytes = SiteFile.bytes(path, problems);
        return bytes == null
                ? new SurveyOutcome.Invalid(problems.inOrderOfFile())
                : read(bytes, path.toString(), expected);
    }

    /**
     * Reads a text.
     *
     * @param text content of a file
     * @param name name of the file for problems
     * @param expected the arrangement that the user named; empty takes what the columns say
     * @return the soundings, or every problem
     */
    public static SurveyOutcome read(String text, String name, Optional<String> expected) {
        return read(text.getBytes(StandardCharsets.UTF_8), name, expected);
    }

    private static SurveyOutcome read(byte[] bytes, String name, Optional<String> expected) {
        ProblemList problems = new ProblemList(name);
        TableFile.Read read = TableFile.read(name, bytes, key(), problems);
        SurveyRows rows = new SurveyRows(name, problems);
        check(read, expected, rows, problems);
        ColumnTable table = read.table();
        return table == null || !problems.isEmpty()
                ? new SurveyOutcome.Invalid(problems.inOrderOfFile())
                : new SurveyOutcome.Valid(array(table), rows.soundings(), rows.warnings());
    }

    /**
     * The soundings of a table that a site file names.
     *
     * @param table the table, checked when it was read
     * @return one sounding a traverse, in the order of the file
     */
    public static List<Sounding> soundings(ColumnTable table) {
        SurveyRows rows = rows(table);
        return rows.soundings();
    }

    /**
     * What looks odd in such a table though it is possible.
     *
     * @param table the table, checked when it was read
     * @return one line each
     */
    public static List<String> warnings(ColumnTable table) {
        SurveyRows rows = rows(table);
        rows.check();
        return rows.warnings();
    }

    private static SurveyRows rows(ColumnTable table) {
        SurveyRows rows = new SurveyRows(table.file(), new ProblemList(table.file()));
        for (int i = 0; i < table.rows(); i++) {
            rows.add(i, table.text(TRAVERSE, i), reading(table, i));
        }
        return rows;
    }

    /** Tells what keeps a table from being a survey. */
    static void check(TableFile.Read read, ProblemList problems) {
        check(read, Optional.empty(), new SurveyRows(problems.file(), problems), problems);
    }

    private static void check(TableFile.Read read, Optional<String> expected, SurveyRows rows, ProblemList problems) {
        ColumnTable table = read.table();
        if (table == null || !suffices(read, table, expected, problems)) {
            return;
        }
        for (int i = 0; i < table.rows(); i++) {
            int line = read.lines().get(i);
            try {
                rows.add(line, table.text(TRAVERSE, i), reading(table, i));
            } catch (IllegalArgumentException impossible) {
                problems.add(new Place(line, 1), String.valueOf(impossible.getMessage()));
            }
        }
        rows.check();
    }

    private static boolean suffices(
            TableFile.Read read, ColumnTable table, Optional<String> expected, ProblemList problems) {
        boolean wenner = table.has(SPACING);
        boolean schlumberger = table.has(HALF_CURRENT) && table.has(HALF_POTENTIAL);
        boolean driven = table.has(ROD_DEPTH) && table.has(ROD_DIAMETER);
        String lacks = "";
        boolean halves = table.has(HALF_CURRENT) || table.has(HALF_POTENTIAL);
        boolean rods = table.has(ROD_DEPTH) || table.has(ROD_DIAMETER);
        boolean whole = wenner || (halves ? schlumberger : driven);
        if (!whole || (wenner ? halves || rods : halves && rods)) {
            lacks = "either spacing [m], or AB/2 [m] and MN/2 [m], or rod depth [m] and rod diameter [mm]";
        } else if (table.has(RESISTANCE) == table.has(RESISTIVITY)) {
            lacks = "either resistance [ohm] or resistivity [ohm.m]";
        } else if (!wenner && table.has(DEPTH)) {
            lacks = "no probe depth: it is taken into account for Wenner arrays only";
        } else if (expected.isPresent()
                && !expected.get().equals(array(table).toLowerCase(Locale.ROOT).replace(' ', '-'))) {
            lacks = "the columns of a " + expected.get() + " array";
        }
        if (!lacks.isEmpty()) {
            problems.add(new Place(read.headLine(), 1), "", "", "the columns of this head line do not suffice", lacks);
        }
        return lacks.isEmpty();
    }

    private static String array(ColumnTable table) {
        return table.has(SPACING) ? "Wenner" : table.has(HALF_CURRENT) ? "Schlumberger" : "Driven rod";
    }

    private static Reading reading(ColumnTable table, int row) {
        ElectrodeArray array = table.has(ROD_DEPTH)
                ? new DrivenRod(at(table, ROD_DEPTH, row), at(table, ROD_DIAMETER, row) / 2)
                : table.has(SPACING)
                        ? Wenner.driven(at(table, SPACING, row), table.has(DEPTH) ? at(table, DEPTH, row) : 0)
                        : new Schlumberger(at(table, HALF_CURRENT, row), at(table, HALF_POTENTIAL, row));
        return table.has(RESISTANCE)
                ? Reading.ofResistance(array, at(table, RESISTANCE, row))
                : new Reading(array, at(table, RESISTIVITY, row));
    }

    private static double at(ColumnTable table, String column, int row) {
        return table.column(column).get(row);
    }

    /** The key of the site file that takes such a table; it knows the columns. */
    private static Key key() {
        return Block.of(Soil.class).entries().stream()
                .filter(entry -> entry.key().equals("survey-file"))
                .findFirst()
                .orElseThrow()
                .meaning();
    }
}
