package earthing.reference;

import earthing.quantity.Numbers;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Writes up what the reference cases showed, as a page of the documentation. Without date, so that it can be tested. */
public final class ValidationPage {

    private final List<RowOutcome> outcomes;
    private final List<AccuracyGates.Line> gates;
    private final CaseReader.NotYet notYet;
    private final StringBuilder page = new StringBuilder();

    private ValidationPage(List<RowOutcome> outcomes, List<AccuracyGates.Line> gates, CaseReader.NotYet notYet) {
        this.outcomes = outcomes;
        this.gates = gates;
        this.notYet = notYet;
    }

    /**
     * The page.
     *
     * @param outcomes what became of the rows
     * @param gates what the standard elements cost in accuracy, may be empty
     * @param notYet the cases that no model runs yet
     * @return Markdown, lines ended by a line feed
     */
    public static String of(List<RowOutcome> outcomes, List<AccuracyGates.Line> gates, CaseReader.NotYet notYet) {
        return new ValidationPage(outcomes, gates, notYet).write();
    }

    private String write() {
        line("# Validation");
        line("");
        line(
                "What the library gives beside what others printed or computed. The page is generated from the case files in");
        line(
                "`reference-cases/cases` by running every row through the library; `reference-cases/README.md` explains the");
        line(
                "kinds, and how to generate it anew. A deviation is given in units of the last printed digit, up to 0.5 of which");
        line(
                "is rounding, and as a share of the tolerance of the case. Values of the kind *baseline* validate nothing; they");
        line("only hold the library against unwanted change, and no deviation is reported for them.");
        line("");
        summary();
        rooms();
        gates();
        misprints();
        fromMemory();
        notRun();
        return page.toString();
    }

    private void summary() {
        line("| room | rows run | values | " + kinds().map(CaseKind::text).collect(Collectors.joining(" | "))
                + " | from memory | not run | median of tolerance | worst of tolerance |");
        line("|---|" + "---:|".repeat(CaseKind.values().length + 6));
        byRoom().forEach((room, of) -> summaryLine(room, of));
        summaryLine("**all**", outcomes);
        line("");
    }

    private void summaryLine(String room, List<RowOutcome> of) {
        List<RowOutcome> run = of.stream().filter(RowOutcome::executed).toList();
        double[] shares = compared(run)
                .mapToDouble(RowOutcome.Deviation::ofTolerance)
                .sorted()
                .toArray();
        long values = run.stream().mapToLong(o -> o.deviations().size()).sum();
        line("| " + room + " | " + run.size() + " | " + values + " | "
                + kinds().map(kind -> String.valueOf(
                                run.stream().filter(o -> o.of().kind() == kind).count()))
                        .collect(Collectors.joining(" | "))
                + " | "
                + run.stream()
                        .filter(o -> o.of().status() == CaseStatus.FROM_MEMORY)
                        .count()
                + " | " + (of.size() - run.size()) + " | "
                + (shares.length == 0 ? "–" : fixed(median(shares))) + " | "
                + (shares.length == 0 ? "–" : fixed(shares[shares.length - 1])) + " |");
    }

    private void rooms() {
        byRoom().forEach((room, of) -> {
            List<RowOutcome> run = of.stream().filter(RowOutcome::executed).toList();
            if (run.isEmpty()) {
                return;
            }
            line("## " + room);
            line("");
            line("| case | what | source | kind | rows | worst, of value | worst, last digits | worst, of tolerance |");
            line("|---|---|---|---|---:|---:|---:|---:|");
            byCase(run).forEach(ValidationPage.this::caseLine);
            line("");
            wide(run);
        });
    }

    private void caseLine(ReferenceCase of, List<RowOutcome> run) {
        OptionalDouble digits =
                compared(run).mapToDouble(RowOutcome.Deviation::lastDigits).max();
        OptionalDouble shares =
                compared(run).mapToDouble(RowOutcome.Deviation::ofTolerance).max();
        OptionalDouble parts =
                compared(run).mapToDouble(RowOutcome.Deviation::ofValue).max();
        line("| " + of.id() + " | " + cell(of.title()) + covered(of) + " | " + cell(source(of)) + " | "
                + of.kind().text() + " | " + run.size() + " | "
                + (parts.isPresent() ? percent(parts.getAsDouble()) : "–") + " | "
                + (digits.isPresent() ? digits(digits.getAsDouble()) : "–") + " | "
                + (shares.isPresent() ? fixed(shares.getAsDouble()) : "–") + " |");
    }

    private static String covered(ReferenceCase of) {
        return of.covers().isEmpty() ? "" : " (covers " + String.join(", ", of.covers()) + ")";
    }

    /** The values that rounding does not explain, each with the reason that its case gives. */
    private void wide(List<RowOutcome> run) {
        Map<ReferenceCase, List<RowOutcome>> wide = new LinkedHashMap<>();
        byCase(run).forEach((of, rows) -> {
            boolean beyond = of.kind() == CaseKind.PUBLISHED
                    && compared(rows).anyMatch(d -> d.lastDigits() > 0.5 + Tolerance.ROUNDING * 1e3);
            if (beyond) {
                wide.put(of, rows);
            }
        });
        if (wide.isEmpty()) {
            return;
        }
        line("Published values that rounding of the last digit does not explain:");
        line("");
        wide.forEach((of, rows) -> {
            RowOutcome.Deviation worst = compared(rows)
                    .max(Comparator.comparingDouble(RowOutcome.Deviation::ofTolerance))
                    .orElseThrow();
            line("- " + of.id() + ", worst " + worst.expected().name() + ": printed "
                    + worst.expected().printed().text() + ", computed "
                    + Numbers.significant(worst.computed(), 5) + ". "
                    + sentence(of.because().isEmpty() ? "no reason is given" : of.because())
                    + (rows.stream().anyMatch(o -> o.failure().isPresent()) ? " **The case fails.**" : ""));
        });
        line("");
    }

    /** What the standard elements cost in accuracy, two digits of it. */
    private void gates() {
        if (gates.isEmpty()) {
            return;
        }
        line("## Accuracy of the standard elements");
        line("");
        line(
                "Buried bars cut into the standard elements against the same equation with four to twelve times as many, the");
        line(
                "worst over uniform ground and layers of 1:10 and 10:1, 2 m and 0.8 m thick. It tells what the division costs,");
        line("not whether the equation is right; that is what the rows above are for.");
        line("");
        line("| quantity | electrode | worst in | difference | gate |");
        line("|---|---|---|---:|---:|");
        for (AccuracyGates.Line gate : gates) {
            line("| " + gate.quantity() + " | " + gate.shape() + " | " + gate.ground() + " | "
                    + (gate.worst() < 5e-5
                            ? "< 0.01 %"
                            : BigDecimal.valueOf(100 * gate.worst()).setScale(2, RoundingMode.HALF_UP) + " %")
                    + " | " + Numbers.brief(100 * gate.gate()) + " % |");
        }
        line("");
    }

    private void misprints() {
        List<RowOutcome> negative = outcomes.stream()
                .filter(RowOutcome::executed)
                .filter(o -> o.of().kind() == CaseKind.NEGATIVE)
                .toList();
        if (negative.isEmpty()) {
            return;
        }
        line("## Printed errors");
        line("");
        line("The library does not agree with these prints, and is not meant to.");
        line("");
        byCase(negative).forEach((of, rows) -> {
            String values = rows.stream()
                    .flatMap(o -> o.deviations().stream())
                    .filter(d -> d.expected().misprint())
                    .map(d -> d.expected().name() + " printed "
                            + d.expected().printed().text() + ", computed " + Numbers.significant(d.computed(), 5))
                    .collect(Collectors.joining("; "));
            line("- " + of.id() + ", " + source(of) + ": " + values + ". " + sentence(of.note()));
        });
        line("");
    }

    private void fromMemory() {
        Map<String, Set<String>> bySource = new TreeMap<>();
        for (RowOutcome outcome : outcomes) {
            if (outcome.executed() && outcome.of().status() == CaseStatus.FROM_MEMORY) {
                bySource.computeIfAbsent(outcome.of().source(), s -> new LinkedHashSet<>())
                        .add(outcome.of().id());
            }
        }
        if (bySource.isEmpty()) {
            return;
        }
        line("## Values from memory");
        line("");
        line("Recalled; the print was not seen. They agree with the library, which is weaker evidence than a print.");
        line("");
        bySource.forEach((source, ids) -> line("- " + source + ": " + String.join(", ", ids)));
        line("");
    }

    private void notRun() {
        notRun("## Not run", "Cases whose values stand in the files and that no model runs.", notYet.reasons());
        notRun(
                "## Without rows",
                "Known published values that stand in no case, each with what is in the way.",
                notYet.withoutRows());
    }

    private void notRun(String heading, String meaning, Map<String, String> reasons) {
        if (reasons.isEmpty()) {
            return;
        }
        line(heading);
        line("");
        line(meaning);
        line("");
        Map<String, Set<String>> byReason = new TreeMap<>();
        new TreeMap<>(reasons)
                .forEach((id, reason) -> byReason.computeIfAbsent(reason, r -> new LinkedHashSet<>())
                        .add(id));
        byReason.forEach((reason, ids) -> line("- " + sentence(reason) + " " + String.join(", ", ids)));
        line("");
    }

    private Map<String, List<RowOutcome>> byRoom() {
        return outcomes.stream().collect(Collectors.groupingBy(o -> o.of().room(), TreeMap::new, Collectors.toList()));
    }

    private static Map<ReferenceCase, List<RowOutcome>> byCase(List<RowOutcome> of) {
        return of.stream().collect(Collectors.groupingBy(RowOutcome::of, LinkedHashMap::new, Collectors.toList()));
    }

    /** The compared values that say something about accuracy. */
    private static Stream<RowOutcome.Deviation> compared(List<RowOutcome> of) {
        return of.stream()
                .filter(o -> o.of().kind() != CaseKind.BASELINE)
                .flatMap(o -> o.deviations().stream())
                .filter(d -> !d.expected().misprint());
    }

    private static Stream<CaseKind> kinds() {
        return Arrays.stream(CaseKind.values());
    }

    private static double median(double[] sorted) {
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /** Two decimals: rounding noise of another machine does not show. */
    private static String fixed(double value) {
        return Double.isFinite(value)
                ? BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).toPlainString()
                : "infinite";
    }

    /** Nothing below a millionth, where the arithmetic of the machine begins to show. */
    private static String percent(double part) {
        return part < 1e-6 ? "< 0.0001 %" : Numbers.significant(100 * part, 2) + " %";
    }

    private static String digits(double value) {
        return value < 10 || !Double.isFinite(value) ? fixed(value) : Numbers.significant(value, 2);
    }

    private static String source(ReferenceCase of) {
        return of.source()
                + (of.locus().isEmpty() ? "" : ", " + of.locus())
                + (of.status() == CaseStatus.FROM_MEMORY ? " (from memory)" : "");
    }

    private static String sentence(String text) {
        if (text.isEmpty()) {
            return "";
        }
        String first = text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
        return first.endsWith(".") ? first : first + ".";
    }

    private static String cell(String text) {
        return text.replace("|", "\\|").replace("\n", " ");
    }

    private void line(String text) {
        page.append(text).append('\n');
    }
}
