package earthing.report;

import earthing.compliance.Expectations;
import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.render.TextRenderer;
import earthing.site.file.KeyPlaces;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The findings as a table for a terminal of 80 columns. */
public final class VerdictTable {

    private static final int WIDTH = 80;

    private VerdictTable() {}

    /**
     * Prints the findings: what is not met first, then what is open, then what is met; what does not concern the site
     * is counted only.
     *
     * @param findings the findings
     * @return lines of at most 80 columns, each ended by a line feed
     */
    public static String text(List<Finding> findings) {
        StringBuilder text = new StringBuilder();
        text.append("Headline: ").append(Severity.headline(findings).text()).append('\n');
        for (Finding.Group group : Severity.HEADLINE_GROUPS) {
            String name = Severity.words(group);
            text.append("  ")
                    .append(name)
                    .append(" ".repeat(24 - name.length()))
                    .append(Severity.status(findings, group).text())
                    .append('\n');
        }
        text.append('\n');
        List<List<String>> rows = new ArrayList<>();
        int elsewhere = 0;
        Map<String, Long> ids = findings.stream()
                .filter(finding -> finding.status() != Status.NOT_APPLICABLE)
                .collect(Collectors.groupingBy(Finding::id, Collectors.counting()));
        for (Finding finding : findings.stream().sorted(Severity.HEAVIEST_FIRST).toList()) {
            if (finding.status() == Status.NOT_APPLICABLE) {
                elsewhere++;
                continue;
            }
            rows.add(List.of(
                    ids.getOrDefault(finding.id(), 0L) > 1 ? finding.id() + ": " + finding.subject() : finding.id(),
                    finding.status().text(),
                    Amount.text(finding.value(), finding.unit()),
                    Amount.text(finding.limit(), finding.unit()),
                    Amount.margin(finding.margin())));
        }
        Block.Table table = new Block.Table(
                "findings",
                "Findings",
                List.of(
                        Block.Column.text("Check"),
                        Block.Column.status("Status"),
                        Block.Column.number("Value"),
                        Block.Column.number("Limit"),
                        Block.Column.number("Margin")),
                rows);
        text.append(TextRenderer.table(table, WIDTH));
        if (elsewhere > 0) {
            text.append('\n')
                    .append(elsewhere)
                    .append(
                            elsewhere == 1
                                    ? " check does not concern this site.\n"
                                    : " checks do not concern this site.\n");
        }
        advice(findings, text);
        return text.toString();
    }

    /**
     * Prints what the author of the file expected: how many hold, and each that does not with its line.
     *
     * @param input what was read and found
     * @return lines of at most 80 columns; empty if nothing is expected
     */
    public static String expectations(ReportInput input) {
        List<Expectations.Held> all = input.expectations();
        if (all.isEmpty()) {
            return "";
        }
        StringBuilder text = new StringBuilder();
        long hold = all.stream().filter(Expectations.Held::holds).count();
        text.append('\n').append(hold).append(" of ").append(all.size()).append(" expected results hold.\n");
        KeyPlaces places = KeyPlaces.of(input.siteFileText());
        for (Expectations.Held held : all) {
            if (!held.holds()) {
                TextRenderer.lines(
                                input.siteFileName() + ":" + places.line(held.path()) + ": " + held.path() + ": "
                                        + held.expectation().result(),
                                WIDTH)
                        .forEach(line -> text.append(line).append('\n'));
                for (String line : List.of("expected: " + held.expected(), "found: " + held.found())) {
                    TextRenderer.lines(line, WIDTH - 2)
                            .forEach(part -> text.append("  ").append(part).append('\n'));
                }
            }
        }
        return text.toString();
    }

    private static void advice(List<Finding> findings, StringBuilder text) {
        List<Finding> open = findings.stream()
                .filter(f -> f.status() == Status.NOT_MET
                        || f.status() == Status.INSUFFICIENT_DATA
                        || f.status() == Status.NOT_ASSESSED)
                .sorted(Severity.HEAVIEST_FIRST)
                .toList();
        Set<String> told = new HashSet<>();
        for (Finding finding : open) {
            if (!told.add(finding.id() + finding.subject() + finding.reason() + finding.advice())) {
                continue;
            }
            String subject = finding.subject().equals(finding.id()) ? "" : ", " + finding.subject();
            text.append('\n');
            TextRenderer.lines(finding.id() + subject + ": " + finding.status().text(), WIDTH)
                    .forEach(line -> text.append(line).append('\n'));
            TextRenderer.lines(finding.reason(), WIDTH - 2)
                    .forEach(line -> text.append("  ").append(line).append('\n'));
            if (!finding.advice().isBlank()) {
                TextRenderer.lines("→ " + finding.advice(), WIDTH - 2)
                        .forEach(line -> text.append("  ").append(line).append('\n'));
            }
        }
    }
}
