package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.quantity.Measure;
import earthing.report.document.Block;
import earthing.report.document.Document;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Stops a report that would leave a mandatory part blank. */
final class CompletenessGate {

    /** Sections without which a reviewer sends a report back. */
    static final List<String> MANDATORY_SECTIONS = List.of(
            "summary",
            "control",
            "verdict",
            "elevation",
            "inputs",
            "criteria",
            "limits",
            "soil",
            "electrode",
            "fault",
            "voltages",
            "conductors",
            "surge",
            "sharing",
            "contingencies",
            "remedies",
            "acceptance",
            "assumptions",
            "references",
            "worked",
            "input-file");

    /** Lines that people have to sign. */
    static final List<String> SIGN_OFF = List.of("Author", "Checker", "Approver");

    private static final int HASH_DIGITS = 64;

    private CompletenessGate() {}

    static void beforeBuilding(ReportInput input) throws ReportIncomplete {
        List<String> problems = new ArrayList<>();
        blank(problems, input.site().site().name(), "control block: site.name is blank");
        blank(problems, input.siteFileName(), "control block: the name of the site file is not given");
        blank(problems, input.toolVersion(), "control block: the version of the tool is not given");
        blank(problems, input.siteFileText(), "input file: the text of the site file is not given");
        if (input.sha256().length() != HASH_DIGITS) {
            problems.add("control block: the hash of the site file needs 64 digits; have "
                    + input.sha256().length());
        }
        height(
                problems,
                input.site().pole() == null ? null : input.site().pole().height(),
                "pole");
        height(
                problems,
                input.site().tank() == null ? null : input.site().tank().height(),
                "tank");
        if (input.findings().isEmpty()) {
            problems.add("verdict page: no check has been made");
        }
        for (Finding finding : input.findings()) {
            finding(problems, finding);
        }
        if (!problems.isEmpty()) {
            throw new ReportIncomplete(problems);
        }
    }

    private static void finding(List<String> problems, Finding finding) {
        boolean decided = finding.status() == Status.MET || finding.status() == Status.NOT_MET;
        if (!decided && finding.reason().isBlank()) {
            problems.add(
                    "verdict page: " + finding.id() + " is " + finding.status().text() + " without a reason");
        }
        if (decided
                && finding.value().isPresent()
                && finding.limit().isEmpty()
                && finding.reason().isBlank()) {
            problems.add("verdict page: " + finding.id() + " has a value but neither limit nor reason");
        }
    }

    private static void height(List<String> problems, @Nullable Measure height, String key) {
        if (height == null) {
            problems.add("figure of the earth paths: " + key + ".height is not given");
        } else if (!height.isKnown()) {
            problems.add("figure of the earth paths: " + key + ".height is unknown");
        }
    }

    static void afterBuilding(ReportInput input, Document document) throws ReportIncomplete {
        Set<String> sections = new HashSet<>();
        Set<String> facts = new HashSet<>();
        boolean elevation = false;
        for (Block block : document.everyBlock()) {
            if (block instanceof Block.Section section && !section.blocks().isEmpty()) {
                sections.add(section.id());
            } else if (block instanceof Block.Facts block1) {
                block1.facts().forEach(fact -> facts.add(fact.name()));
            } else if (block instanceof Block.Figure figure) {
                elevation |= figure.id().equals(SiteSections.ELEVATION_FIGURE);
            }
        }
        List<String> problems = new ArrayList<>();
        MANDATORY_SECTIONS.stream()
                .filter(id -> !sections.contains(id))
                .forEach(id -> problems.add("section " + id + " is missing or empty"));
        SIGN_OFF.stream()
                .filter(name -> facts.stream().noneMatch(fact -> fact.startsWith(name)))
                .forEach(name -> problems.add("sign-off line " + name + " is missing"));
        if (!elevation) {
            problems.add("the figure of the earth paths is missing");
        }
        problems.addAll(ReviewGate.problems(input, document));
        if (!problems.isEmpty()) {
            throw new ReportIncomplete(problems);
        }
    }

    private static void blank(List<String> problems, String text, String problem) {
        if (text.isBlank()) {
            problems.add(problem);
        }
    }
}
