package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.quantity.Measure;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.document.Block.Fact;
import earthing.site.SiteIdentity;
import earthing.site.file.SiteTree;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Control block and verdict page. */
final class FrontSections {

    /** Rows that fit on the verdict page; beyond them checks that are met are counted only. */
    private static final int MOST_ROWS = 24;

    private static final String NOT_GIVEN = "not given";

    private FrontSections() {}

    static List<Block> of(ReportInput input, References references) {
        return List.of(SummarySection.of(input), control(input), verdict(input, references));
    }

    private static Block control(ReportInput input) {
        SiteIdentity site = input.site().site();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Site", site.name()));
        facts.add(new Fact("Pole", given(site.pole())));
        facts.add(new Fact("Drawing", given(site.drawing())));
        facts.add(new Fact("Revision", given(site.revision())));
        facts.add(new Fact("Stage", stage(site)));
        if (site.purpose() != null) {
            facts.add(new Fact("Purpose", site.purpose()));
        }
        facts.add(new Fact("Site file", input.siteFileName()));
        facts.add(new Fact("SHA-256 of the file", input.sha256()));
        facts.add(new Fact("Tool and version", ReportInput.TOOL_NAME + " " + input.toolVersion()));
        List<Fact> toSign = new ArrayList<>();
        for (String role : CompletenessGate.SIGN_OFF) {
            toSign.add(new Fact(role + ": name, role", ""));
            toSign.add(new Fact(role + ": signature, date", ""));
        }
        return new Block.Section(
                "control",
                2,
                "Document control",
                List.of(
                        new Block.Facts(facts),
                        new Block.Section("sign-off", 3, "To be signed", List.of(new Block.Facts(toSign)))));
    }

    static String stage(SiteIdentity site) {
        return SiteTree.word(site.stage()).replace('-', ' ');
    }

    private static String given(@Nullable String text) {
        return text == null || text.isBlank() ? NOT_GIVEN : text;
    }

    private static Block verdict(ReportInput input, References references) {
        List<Finding> findings = input.findings();
        List<Block> blocks = new ArrayList<>();
        List<List<String>> groups = new ArrayList<>();
        for (Finding.Group group : Finding.Group.values()) {
            List<Finding> members =
                    findings.stream().filter(f -> f.group() == group).toList();
            if (!members.isEmpty() || Severity.HEADLINE_GROUPS.contains(group)) {
                groups.add(group(findings, group, members));
            }
        }
        blocks.add(new Block.Table(
                "verdict-groups",
                "Worst finding of each group; the first four make the headline",
                List.of(
                        Column.text("Group"),
                        Column.status("Status"),
                        Column.text("Governing check"),
                        Column.number("Margin"),
                        Column.number("Checks")),
                groups));
        checks(findings, references, blocks);
        blocks.add(new Block.Paragraph(conditions(input)));
        blocks.addAll(ElectrodeBasis.of(input, ElectrodeBasis.NOMINAL));
        return new Block.Section("verdict", 2, "Verdict", blocks);
    }

    private static List<String> group(List<Finding> all, Finding.Group group, List<Finding> members) {
        String governing = Severity.worst(all, group)
                .map(f -> CheckWords.of(f)
                        + (f.circumstances().keys().isEmpty() ? "" : " – " + CaseWords.of(f.circumstances())))
                .orElse("no check has looked at this");
        String margin =
                Severity.worst(all, group).map(f -> Amount.margin(f.margin())).orElse("–");
        return List.of(
                Severity.words(group),
                Severity.status(all, group).text(),
                governing,
                margin,
                Integer.toString(members.size()));
    }

    private static void checks(List<Finding> findings, References references, List<Block> blocks) {
        List<Finding> sorted = findings.stream()
                .filter(f -> f.status() != Status.NOT_APPLICABLE && f.status() != Status.DUE_LATER)
                .sorted(Severity.HEAVIEST_FIRST)
                .toList();
        Set<List<String>> rows = new LinkedHashSet<>();
        int shown = 0;
        for (Finding finding : sorted) {
            if (rows.size() >= MOST_ROWS && finding.status() == Status.MET) {
                break;
            }
            shown++;
            rows.add(List.of(
                    ResultSections.capital(CheckWords.of(finding)),
                    finding.status().text(),
                    Amount.text(finding.value(), finding.unit()),
                    Amount.text(finding.limit(), finding.unit()),
                    Amount.margin(finding.margin()),
                    governing(finding),
                    references.brief(finding.basis())));
        }
        blocks.add(new Block.Table(
                "verdict-checks",
                "Checks, the heaviest finding first",
                List.of(
                        Column.text("Check"),
                        Column.status("Status"),
                        Column.number("Value"),
                        Column.number("Limit"),
                        Column.number("Margin"),
                        Column.text("Governing case and bound"),
                        Column.text("Basis of the limit")),
                List.copyOf(rows)));
        StringBuilder rest = new StringBuilder();
        if (sorted.size() > shown) {
            rest.append(sorted.size() - shown)
                    .append(" more checks are met, with larger margins or without a number; see \"All findings\". ");
        }
        counted(rest, findings, Status.DUE_LATER, "due at a later stage");
        counted(rest, findings, Status.NOT_APPLICABLE, "not applicable to this site");
        if (!rest.isEmpty()) {
            blocks.add(new Block.Paragraph(rest.toString().strip()));
        }
    }

    static String governing(Finding finding) {
        String circumstances = CaseWords.of(finding.circumstances());
        if (finding.bound().isBlank()) {
            return circumstances.isEmpty() ? "–" : circumstances;
        }
        String bound = "at " + CaseWords.bound(finding.bound());
        return circumstances.isEmpty() ? bound : circumstances + "; " + bound;
    }

    private static void counted(StringBuilder text, List<Finding> findings, Status status, String words) {
        long count = findings.stream().filter(f -> f.status() == status).count();
        if (count > 0) {
            text.append(count)
                    .append(count == 1 ? " check is " : " checks are ")
                    .append(words)
                    .append(". ");
        }
    }

    private static String conditions(ReportInput input) {
        long assumed = SiteTree.entries(input.site()).stream()
                .filter(e -> e.value() instanceof Measure m && m.origin() == Measure.Origin.ASSUMED)
                .count();
        long unknown = SiteTree.entries(input.site()).stream()
                .filter(e -> e.value() instanceof Measure m && !m.isKnown())
                .count();
        return "Conditions: stage " + stage(input.site().site()) + "; "
                + assumed + (assumed == 1 ? " input is" : " inputs are") + " marked as assumed, " + unknown
                + " declared unknown, "
                + input.results().assumptions().size()
                + (input.results().assumptions().size() == 1 ? " value was" : " values were")
                + " taken by this tool where the file gives none; accepted departures: "
                + (input.site().criteria() == null
                        ? 0
                        : input.site().criteria().departures().size())
                + ". The verdict holds for the inputs and editions listed in this report only.";
    }
}
