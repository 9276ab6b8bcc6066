package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The first page: may the crew go out, what is not met, what to do. It selects from the findings and judges nothing. */
final class SummarySection {

    /** Rows that leave room for the cautions on the first page; what is beyond them stands on the verdict page. */
    private static final int MOST_ROWS = 12;
    /** Names of checks in one row. */
    private static final int MOST_NAMES = 4;

    private static final Comparator<Finding> PERSONS_FIRST = Comparator.comparing(
                    (Finding f) -> !Severity.HEADLINE_GROUPS.contains(f.group()))
            .thenComparing(Severity.HEAVIEST_FIRST);

    private SummarySection() {}

    static Block of(ReportInput input) {
        List<Finding> findings = input.findings();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Headline(Severity.headline(findings).text(), headline(findings)));
        blocks.add(new Block.Facts(List.of(
                new Block.Fact("May the crew go out?", release(findings)),
                new Block.Fact(
                        "What was looked at",
                        findings.size() + " checks: " + counts(findings) + ". Stage: "
                                + FrontSections.stage(input.site().site()) + "."))));
        table(
                blocks,
                "summary-not-met",
                "What is not met, and what to do",
                "Found",
                byAdvice(findings, List.of(Status.NOT_MET)));
        table(
                blocks,
                "summary-open",
                "What could not be answered, and what would answer it",
                "Why",
                byAdvice(findings, List.of(Status.INSUFFICIENT_DATA, Status.NOT_ASSESSED)));
        closest(findings)
                .ifPresent(f -> blocks.add(new Block.Paragraph("Of all that is met, closest to its limit: "
                        + CheckWords.of(f) + ", " + against(f) + ", margin " + Amount.margin(f.margin()) + ".")));
        return new Block.Section("summary", 2, "In short", blocks);
    }

    private static String headline(List<Finding> findings) {
        long notMet = count(findings, Status.NOT_MET);
        return switch (Severity.headline(findings)) {
            case NOT_MET -> notMet == 1 ? "one requirement is not met." : notMet + " requirements are not met.";
            case INSUFFICIENT_DATA ->
                "nothing that was assessed for persons, heating, surge and broken earth paths"
                        + " failed, but an input is missing.";
            case NOT_ASSESSED ->
                "nothing that was assessed for persons, heating, surge and broken earth paths failed,"
                        + " but not everything could be assessed.";
            case ACCEPTED_DEPARTURE -> "the owner has accepted a departure from a requirement.";
            case MET ->
                "every requirement for persons, heating, surge and broken earth paths that applies is met for"
                        + " the inputs listed.";
            case DUE_LATER -> "the tests belong to a later stage.";
            case NOT_APPLICABLE ->
                "no requirement for persons, heating, surge or broken earth paths concerns this site.";
        };
    }

    /** The release is a person's; the report tells what stands in its way. */
    private static String release(List<Finding> findings) {
        List<Finding> notMet =
                findings.stream().filter(f -> f.status() == Status.NOT_MET).toList();
        long open = count(findings, Status.INSUFFICIENT_DATA) + count(findings, Status.NOT_ASSESSED);
        String words;
        if (notMet.stream().anyMatch(f -> Severity.HEADLINE_GROUPS.contains(f.group()))) {
            words = "Not on these numbers. Change what the table below says and have the site checked again.";
        } else if (!notMet.isEmpty()) {
            words = "Not before the rules below are followed, or the owner has accepted the departure in writing"
                    + (open > 0 ? "; and what could not be answered has to be answered." : ".");
        } else if (open > 0) {
            words = "Not yet: what could not be answered below has to be answered, by an input or by a competent"
                    + " person.";
        } else {
            words = "Nothing in this report stands against it.";
        }
        long later = count(findings, Status.DUE_LATER);
        return words
                + (later == 0
                        ? ""
                        : later == 1
                                ? " One test is due when it has been built."
                                : " " + later + " tests are due when it has been built.")
                + " The person in charge of the work decides and releases, by the local rules; this report does not.";
    }

    private static String counts(List<Finding> findings) {
        List<String> words = new ArrayList<>();
        for (Status status : List.of(
                Status.NOT_MET,
                Status.INSUFFICIENT_DATA,
                Status.NOT_ASSESSED,
                Status.ACCEPTED_DEPARTURE,
                Status.MET,
                Status.DUE_LATER,
                Status.NOT_APPLICABLE)) {
            long count = count(findings, status);
            if (count > 0) {
                words.add(count + " " + status.text());
            }
        }
        return String.join(", ", words);
    }

    private static long count(List<Finding> findings, Status status) {
        return findings.stream().filter(f -> f.status() == status).count();
    }

    /** Findings that the same advice helps stand together, the heaviest first. */
    private static List<List<Finding>> byAdvice(List<Finding> findings, List<Status> statuses) {
        Map<String, List<Finding>> groups = new LinkedHashMap<>();
        findings.stream()
                .filter(f -> statuses.contains(f.status()))
                .sorted(PERSONS_FIRST)
                .forEach(f -> groups.computeIfAbsent(
                                f.advice().isBlank() ? f.reason() : f.advice(), key -> new ArrayList<>())
                        .add(f));
        return List.copyOf(groups.values());
    }

    private static void table(
            List<Block> blocks, String id, String caption, String second, List<List<Finding>> groups) {
        if (groups.isEmpty()) {
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        for (List<Finding> group : groups.subList(0, Math.min(groups.size(), MOST_ROWS))) {
            Finding worst = group.get(0);
            boolean numbers = worst.value().isPresent() && worst.limit().isPresent();
            rows.add(List.of(
                    names(group),
                    numbers ? (group.size() > 1 ? "worst: " : "") + against(worst) : sentence(worst.reason()),
                    worst.advice().isBlank() ? "–" : sentence(worst.advice())));
        }
        blocks.add(new Block.Table(
                id,
                caption,
                List.of(Column.text("Requirement"), Column.text(second), Column.text("What to do")),
                rows));
        if (groups.size() > MOST_ROWS) {
            int more = groups.subList(MOST_ROWS, groups.size()).stream()
                    .mapToInt(List::size)
                    .sum();
            blocks.add(new Block.Paragraph(more + " more: see Verdict."));
        }
    }

    private static String names(List<Finding> group) {
        List<String> names = group.stream().map(CheckWords::of).distinct().toList();
        String told = String.join("; ", names.subList(0, Math.min(names.size(), MOST_NAMES)));
        return ResultSections.capital(
                names.size() > MOST_NAMES ? told + " and " + (names.size() - MOST_NAMES) + " more" : told);
    }

    private static String sentence(String words) {
        return ResultSections.capital(ResultSections.sentence(words));
    }

    private static String against(Finding finding) {
        return Amount.text(finding.value(), finding.unit()) + ", limit " + Amount.text(finding.limit(), finding.unit());
    }

    private static Optional<Finding> closest(List<Finding> findings) {
        return findings.stream()
                .filter(f -> f.status() == Status.MET
                        && Severity.HEADLINE_GROUPS.contains(f.group())
                        && f.margin().isPresent()
                        && f.value().isPresent()
                        && f.limit().isPresent())
                .min(Comparator.comparingDouble(f -> f.margin().getAsDouble()));
    }
}
