package earthing.safety;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import earthing.quantity.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads an owner's own table of permissible touch voltages. */
public final class OwnerCurve {

    private OwnerCurve() {}

    /**
     * Reads comma-separated lines of duration in seconds and voltage in volts; a heading line without numbers and lines
     * that start with {@code #} are passed over.
     *
     * @param text the lines
     * @param name name of the curve for the report
     * @param reference the owner's reference
     * @param sustained value for sustained faults, empty if the owner gives none
     * @return the curve, read log-log between its points
     * @throws IllegalArgumentException if a line is not understood or the points are out of order; names the line
     */
    public static TabulatedCurve read(String text, String name, String reference, Optional<SustainedLimit> sustained) {
        List<Double> durations = new ArrayList<>();
        List<Double> voltages = new ArrayList<>();
        boolean heading = true;
        for (CsvRecord line : CsvReader.builder()
                .commentStrategy(CommentStrategy.SKIP)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(text)) {
            String first = line.getField(0).strip();
            if (line.getFieldCount() != 2) {
                throw new IllegalArgumentException("line " + line.getStartingLineNumber()
                        + ": expected duration [s] and voltage [V]; have " + line.getFieldCount() + " fields");
            }
            if (heading && !first.isEmpty() && Character.isLetter(first.charAt(0))) {
                heading = false;
                continue;
            }
            heading = false;
            durations.add(number(line, 0));
            voltages.add(number(line, 1));
        }
        return new TabulatedCurve(
                name,
                reference,
                new Points(Interpolation.LOG_LOG, durations, voltages),
                Optional.empty(),
                sustained,
                Source.owner(reference));
    }

    private static double number(CsvRecord line, int field) {
        String text = line.getField(field).strip();
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "line " + line.getStartingLineNumber() + ": \"" + text + "\" is no number", e);
        }
    }
}
