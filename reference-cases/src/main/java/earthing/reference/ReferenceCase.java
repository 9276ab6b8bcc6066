package earthing.reference;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * One case of a case file: where its values come from, which model they check, and one or more rows of values.
 *
 * @param id identifier, unique over all files
 * @param title what is computed, in one line
 * @param kind authority behind the values
 * @param source the publication, or the means of computation
 * @param locus table, equation or page; empty where the source says it all
 * @param status whether the print was seen
 * @param catches which mistake the case would show
 * @param model name of the model
 * @param because reason of a tolerance other than the last printed digit; empty if there is none
 * @param note anything else worth knowing; for a negative case, which error the print contains
 * @param covers identifiers of other published cases whose printed values run as rows of this one
 * @param rows the rows
 * @param file the case file, relative to the folder of cases, with {@code /}
 * @param line line of the case in its file
 */
public record ReferenceCase(
        String id,
        String title,
        CaseKind kind,
        String source,
        String locus,
        CaseStatus status,
        String catches,
        String model,
        String because,
        String note,
        List<String> covers,
        List<Row> rows,
        String file,
        int line) {

    /**
     * Keeps a copy of the rows.
     *
     * @param id identifier, unique over all files
     * @param title what is computed, in one line
     * @param kind authority behind the values
     * @param source the publication, or the means of computation
     * @param locus table, equation or page; empty where the source says it all
     * @param status whether the print was seen
     * @param catches which mistake the case would show
     * @param model name of the model
     * @param because reason of a tolerance other than the last printed digit; empty if there is none
     * @param note anything else worth knowing; for a negative case, which error the print contains
     * @param covers identifiers of other published cases whose printed values run as rows of this one
     * @param rows the rows
     * @param file the case file, relative to the folder of cases, with {@code /}
     * @param line line of the case in its file
     */
    public ReferenceCase {
        covers = List.copyOf(covers);
        rows = List.copyOf(rows);
        Objects.requireNonNull(id);
    }

    /**
     * One printed value with its tolerance.
     *
     * @param name the model's name of the result
     * @param printed the printed value
     * @param tolerance how far the computed value may lie from it
     * @param misprint whether the print is known to be wrong, so that the computed value must not agree
     */
    public record Expected(String name, PrintedNumber printed, Tolerance tolerance, boolean misprint) {}

    /**
     * One row: given values and what is expected of them.
     *
     * @param number place in the case, from 1
     * @param line line in the file
     * @param given the given values
     * @param expected the expected values, at least one
     */
    public record Row(int number, int line, Map<String, Given.Value> given, List<Expected> expected) {
        /**
         * Keeps copies.
         *
         * @param number place in the case, from 1
         * @param line line in the file
         * @param given the given values
         * @param expected the expected values, at least one
         */
        public Row {
            given = Collections.unmodifiableMap(new LinkedHashMap<>(given));
            expected = List.copyOf(expected);
        }
    }

    /**
     * The room of the case: the first part of its file's path.
     *
     * @return for example {@code electrode}
     */
    public String room() {
        int slash = file.indexOf('/');
        return slash < 0 ? file : file.substring(0, slash);
    }
}
