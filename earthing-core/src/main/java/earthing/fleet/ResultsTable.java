package earthing.fleet;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import de.siegmar.fastcsv.writer.QuoteStrategies;
import earthing.compliance.Finding;
import earthing.compliance.Finding.Group;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.fleet.PoleResult.Governing;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.site.SiteIdentity;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** The results as a table, one row a pole, values in SI at full precision; written and read back here. */
final class ResultsTable {

    private static final List<String> FIRST =
            List.of("row", "pole", "name", "latitude [deg]", "longitude [deg]", "outcome", "headline");

    private static final List<String> OF_GROUP =
            List.of("check", "status", "value", "limit", "unit", "margin", "case", "bound");

    private static final List<String> LAST = List.of("missing keys", "reason");

    private static final String ASSESSED = "assessed";

    private final TableForm form;

    ResultsTable(TableForm form) {
        this.form = form;
    }

    /** The word of a group in the head of its columns. */
    static String word(Group group) {
        return group.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    String head() {
        List<String> cells = new ArrayList<>(FIRST);
        for (Group group : Group.values()) {
            OF_GROUP.forEach(column -> cells.add(word(group) + " " + column));
        }
        cells.addAll(LAST);
        return line(cells);
    }

    static PoleResult result(PoleOutcome outcome) {
        if (outcome instanceof PoleOutcome.Refused refused) {
            StringBuilder reasons = new StringBuilder();
            for (Reason reason : refused.reasons()) {
                reasons.append(reasons.isEmpty() ? "" : " | ").append(reason.text(refused.file(), refused.row()));
            }
            return new PoleResult(
                    refused.row(),
                    refused.pole(),
                    "",
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.empty(),
                    Map.of(),
                    List.of(),
                    reasons.toString());
        }
        PoleOutcome.Assessed assessed = (PoleOutcome.Assessed) outcome;
        SiteIdentity identity = assessed.site().site();
        Map<Group, Governing> governing = new EnumMap<>(Group.class);
        for (Group group : Group.values()) {
            Severity.worst(assessed.findings(), group).ifPresent(worst -> governing.put(group, governing(worst)));
        }
        return new PoleResult(
                assessed.row(),
                assessed.pole(),
                identity.name(),
                angle(identity.latitude()),
                angle(identity.longitude()),
                Optional.of(Severity.headline(assessed.findings())),
                governing,
                assessed.findings().stream()
                        .flatMap(finding -> finding.missingKeys().stream())
                        .distinct()
                        .sorted()
                        .toList(),
                "");
    }

    private static OptionalDouble angle(@Nullable Measure measure) {
        return measure != null && measure.isKnown() ? OptionalDouble.of(measure.nominal()) : OptionalDouble.empty();
    }

    private static Governing governing(Finding finding) {
        return new Governing(
                finding.id(),
                finding.status(),
                finding.value(),
                finding.limit(),
                finding.unit(),
                finding.margin(),
                finding.circumstances().text(),
                finding.bound());
    }

    String line(PoleResult result) {
        List<String> cells = new ArrayList<>();
        cells.add(Integer.toString(result.row()));
        cells.add(result.pole());
        cells.add(result.name());
        cells.add(number(result.latitude()));
        cells.add(number(result.longitude()));
        cells.add(result.isAssessed() ? ASSESSED : "refused");
        cells.add(result.headline().map(Status::id).orElse(""));
        for (Group group : Group.values()) {
            Governing governing = result.governing().get(group);
            if (governing == null) {
                OF_GROUP.forEach(column -> cells.add(""));
                continue;
            }
            cells.add(governing.check());
            cells.add(governing.status().id());
            cells.add(number(governing.value()));
            cells.add(number(governing.limit()));
            cells.add(governing.unit());
            cells.add(number(governing.margin()));
            cells.add(governing.circumstances());
            cells.add(governing.bound());
        }
        cells.add(String.join(" ", result.missingKeys()));
        cells.add(result.reason());
        return line(cells);
    }

    private String number(OptionalDouble value) {
        return value.isEmpty() ? "" : number(value.getAsDouble());
    }

    String number(double value) {
        String text = Numbers.full(value);
        return form.decimalComma() ? text.replace('.', ',') : text;
    }

    /** A line of separated values; a row ends with its line. */
    String line(List<String> cells) {
        StringWriter text = new StringWriter();
        // A first cell that begins like a comment would be one.
        boolean comment = cells.get(0).startsWith("#");
        try (CsvWriter csv = CsvWriter.builder()
                .fieldSeparator(form.separator())
                .quoteStrategy(comment ? QuoteStrategies.ALWAYS : QuoteStrategies.REQUIRED)
                .lineDelimiter(LineDelimiter.LF)
                .build(text)) {
            csv.writeRecord(cells.stream()
                    .map(cell -> cell.replaceAll("\\s*\\R\\s*", " "))
                    .toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** Goes through the results of a file. */
    void read(Path file, Consumer<PoleResult> visitor) throws IOException {
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .fieldSeparator(form.separator())
                .ofCsvRecord(Files.newBufferedReader(file, StandardCharsets.UTF_8))) {
            boolean head = true;
            for (CsvRecord row : csv) {
                if (!head) {
                    visitor.accept(result(row));
                }
                head = false;
            }
        }
    }

    private PoleResult result(CsvRecord row) {
        Map<Group, Governing> governing = new EnumMap<>(Group.class);
        int at = FIRST.size();
        for (Group group : Group.values()) {
            if (!row.getField(at).isEmpty()) {
                governing.put(
                        group,
                        new Governing(
                                row.getField(at).intern(),
                                status(row.getField(at + 1)),
                                number(row.getField(at + 2)),
                                number(row.getField(at + 3)),
                                row.getField(at + 4).intern(),
                                number(row.getField(at + 5)),
                                row.getField(at + 6),
                                row.getField(at + 7)));
            }
            at += OF_GROUP.size();
        }
        String keys = row.getField(at);
        return new PoleResult(
                Integer.parseInt(row.getField(0)),
                row.getField(1),
                row.getField(2),
                number(row.getField(3)),
                number(row.getField(4)),
                row.getField(5).equals(ASSESSED) ? Optional.of(status(row.getField(6))) : Optional.empty(),
                governing,
                keys.isEmpty() ? List.of() : List.of(keys.split(" ")),
                row.getField(at + 1));
    }

    private static Status status(String id) {
        return Status.valueOf(id.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    private static OptionalDouble number(String text) {
        return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
    }
}
