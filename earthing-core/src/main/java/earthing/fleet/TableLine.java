package earthing.fleet;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.List;

/**
 * One line of a table, as far as it could be read.
 *
 * @param number its number in the file, from 1
 * @param text its text, empty if it is no text
 * @param fault why it is no text, empty if it is one
 */
record TableLine(int number, String text, String fault) {

    /** The cells of a line, or why it has none. */
    record Cells(List<String> cells, String fault) {}

    /** Whether it says nothing: empty cells only. */
    boolean isBlank() {
        return fault.isEmpty() && text.chars().allMatch(c -> c == ',' || c == ';' || c == '"' || c <= ' ');
    }

    boolean isComment() {
        return fault.isEmpty() && text.startsWith("#");
    }

    Cells cells(char separator) {
        if (!fault.isEmpty()) {
            return new Cells(List.of(), fault);
        }
        if (text.chars().filter(c -> c == '"').count() % 2 != 0) {
            // A mark that is never closed would swallow the rows below it.
            return new Cells(List.of(), "a quotation mark of this row is not closed in its line");
        }
        try (CsvReader<CsvRecord> csv =
                CsvReader.builder().fieldSeparator(separator).ofCsvRecord(text)) {
            for (CsvRecord row : csv) {
                return new Cells(row.getFields(), "");
            }
            return new Cells(List.of(), "this row has no cells");
        } catch (CsvParseException | java.io.IOException e) {
            return new Cells(List.of(), "this is no row of separated values");
        }
    }
}
