package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.quantity.Measure;
import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.site.EarthSegment;
import earthing.site.Electrode;
import earthing.site.Site;
import earthing.site.file.SiteTree;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The ten reasons for which reviewers send a report back; each stops the report with a named problem. */
final class ReviewGate {

    private final ReportInput input;
    private final List<Block> blocks;
    private final Map<String, Block.Table> tables = new LinkedHashMap<>();
    private final Map<String, String> facts = new LinkedHashMap<>();
    private final List<String> problems = new ArrayList<>();

    private ReviewGate(ReportInput input, Document document) {
        this.input = input;
        this.blocks = document.everyBlock();
        for (Block block : blocks) {
            if (block instanceof Block.Table table) {
                tables.put(table.id(), table);
            } else if (block instanceof Block.Facts some) {
                some.facts().forEach(fact -> facts.putIfAbsent(fact.name(), fact.value()));
            }
        }
    }

    static List<String> problems(ReportInput input, Document document) {
        ReviewGate gate = new ReviewGate(input, document);
        gate.faultsCarryTheirCase();
        gate.readingsCarryTheirMethod();
        gate.limitsStandBesideVerdicts();
        gate.touchIsNotPotentialRise();
        gate.drawingAgreesWithModel();
        gate.referencesAreShown();
        gate.assumedValuesAreMarked();
        gate.reclosingIsInHeating();
        gate.testsAreThere();
        gate.oneNumberCanBeRedone();
        return gate.problems;
    }

    /** 1: a current without its case, or a clearing time of another current. */
    private void faultsCarryTheirCase() {
        for (Result result : input.results().results()) {
            boolean current = result.id().startsWith("fault.") && result.id().endsWith(".current");
            boolean time = result.id().startsWith("fault.") && result.id().endsWith(".clearing-time");
            if ((current || time) && !result.circumstances().keys().containsKey("fault")) {
                problems.add("fault: " + result.id() + " does not name the case it belongs to");
            } else if (time
                    && input.results().results().stream()
                            .noneMatch(other -> other.id().startsWith("fault.")
                                    && other.id().endsWith(".current")
                                    && other.at().equals(result.at())
                                    && other.circumstances().equals(result.circumstances()))) {
                problems.add("fault: " + result.id() + " at " + result.at() + ", "
                        + result.circumstances().text() + ", stands beside no current of that case");
            }
        }
    }

    /** 2: a reading without method, isolation, ground or date. */
    private void readingsCarryTheirMethod() {
        if (input.site().measurements().isEmpty()) {
            return;
        }
        filled("acceptance-readings", "a reading", List.of("Method", "Isolated", "Ground", "Date"));
    }

    /** 3: a verdict without limit, clause and edition. */
    private void limitsStandBesideVerdicts() {
        filled("verdict-checks", "a verdict", List.of("Status", "Basis of the limit"));
        for (Finding finding : input.findings()) {
            boolean limited = finding.limit().isPresent() && !finding.status().equals(Status.NOT_APPLICABLE);
            Block.Table limits = tables.get("criteria-limits");
            if (limited
                    && (limits == null
                            || limits.rows().stream()
                                    .noneMatch(row -> row.get(0).equals(SiteSections.limited(finding))))) {
                problems.add("criteria: the limit of " + finding.id() + " is not listed with its clause and edition");
            }
        }
    }

    /** 4: a potential rise shown as touch voltage; a credit that nobody declared. */
    private void touchIsNotPotentialRise() {
        for (Result result : input.results().results()) {
            if (result.id().startsWith("touch.") && result.id().endsWith(".voltage")) {
                String part = result.id().substring(0, result.id().length() - ".voltage".length());
                boolean judged = input.results().of(part + ".permissible").stream()
                                .anyMatch(p -> p.at().equals(result.at())
                                        && p.circumstances().equals(result.circumstances()))
                        || !input.results().gapsOf(part).isEmpty();
                if (!judged) {
                    problems.add(
                            "voltages: " + result.id() + " at " + result.at() + " has no permissible value beside it");
                }
            }
        }
        if (input.site().criteria() != null) {
            fact("Footwear credited", "criteria: footwear credited is not told");
            fact("Covering credited", "criteria: covering credited is not told");
        }
    }

    /** 5: the drawing is missing, or drawing and model disagree. */
    private void drawingAgreesWithModel() {
        String words = blocks.stream()
                .filter(block ->
                        block instanceof Block.Figure figure && figure.id().equals(SiteSections.ELEVATION_FIGURE))
                .map(block -> ((Block.Figure) block).alternative())
                .findFirst()
                .orElse("");
        if (words.isEmpty()) {
            problems.add("elevation: the drawing of the earth paths is missing");
            return;
        }
        Site site = input.site();
        if (site.mainEarth() != null) {
            for (EarthSegment segment : site.mainEarth().segments()) {
                drawn(words, "segment " + segment.name(), "Segment " + segment.name());
            }
        }
        for (Electrode electrode : site.electrodes()) {
            drawn(words, "electrode " + electrode.name(), "Electrode " + electrode.name());
        }
        if (site.cubicle() != null) {
            drawn(words, "cubicle", "Cubicle");
            site.cubicle().otherPaths().forEach(path -> drawn(words, "path " + path, path));
        }
    }

    private void drawn(String words, String what, String word) {
        if (!words.contains(word)) {
            problems.add("elevation: the drawing does not show " + what + ", which is in the model");
        }
    }

    /** 6: screen bonding, reference of the supply, low-voltage earth. */
    private void referencesAreShown() {
        fact(SiteSections.SCREEN, "elevation: how the screen of the control cable is bonded is not shown");
        fact(SiteSections.SUPPLY, "elevation: whose earth the auxiliary supply is referenced to is not shown");
        fact(SiteSections.LOW_VOLTAGE, "elevation: where the low-voltage earth is, is not shown");
    }

    /** 7: assumed values that are not marked; no margin. */
    private void assumedValuesAreMarked() {
        for (SiteTree.Entry entry : SiteTree.entries(input.site())) {
            if (entry.value() instanceof Measure measure && measure.origin() == Measure.Origin.ASSUMED) {
                boolean marked = tables.values().stream()
                        .filter(table -> table.id().startsWith("inputs-"))
                        .flatMap(table -> table.rows().stream())
                        .anyMatch(row -> entry.path().endsWith(row.get(0))
                                && String.join(" ", row).contains("ASSUMED"));
                if (!marked) {
                    problems.add("inputs: " + entry.path() + " is assumed and not marked so");
                }
            }
        }
        if (!input.results().assumptions().isEmpty() && !tables.containsKey("inputs-effective")) {
            problems.add("inputs: the values that were assumed in place of missing ones are not listed");
        }
        Block.Table verdicts = tables.get("verdict-checks");
        if (verdicts == null
                || verdicts.columns().stream().noneMatch(column -> column.head().equals("Margin"))) {
            problems.add("verdict: the margins are not shown");
        }
    }

    /** 8: reclosing left out of the heating. */
    private void reclosingIsInHeating() {
        boolean recloses =
                input.site().protection() != null && input.site().protection().reclose() != null;
        if (!recloses) {
            return;
        }
        for (Result result : input.results().results()) {
            if (result.id().startsWith("conductor.")
                    && result.id().endsWith(".final-temperature")
                    && input.results().of(result.id().replace(".final-temperature", ".first-shot-temperature")).stream()
                            .noneMatch(first -> first.at().equals(result.at())
                                    && first.circumstances().equals(result.circumstances()))) {
                problems.add("conductors: " + result.id() + " at " + result.at()
                        + " does not tell the first shot and the whole sequence apart");
            }
        }
    }

    /** 9: no as-built and test section, no condition for testing again, no departures. */
    private void testsAreThere() {
        if (!tables.containsKey("acceptance-tests")) {
            problems.add("acceptance: the test plan is missing");
        }
        fact(ClosingSections.AS_BUILT, "acceptance: there is no line for what was built otherwise");
        text("Test again", "acceptance: it is not said when to test again");
        if (!tables.containsKey("acceptance-departures")) {
            text("Accepted departures", "acceptance: accepted departures are not listed");
        }
    }

    /** 10: tool and version; a number that can be checked by hand. */
    private void oneNumberCanBeRedone() {
        String version = facts.getOrDefault("Tool and version", "");
        if (version.isBlank() || !version.contains(input.toolVersion())) {
            problems.add("control block: tool and version are not stated");
        }
        boolean works = input.findings().stream().anyMatch(f -> f.worked().isPresent())
                || input.results().results().stream().anyMatch(r -> r.worked().isPresent());
        if (works && !tables.containsKey("worked-terms")) {
            problems.add("worked: no calculation is shown that could be redone by hand");
        }
    }

    private void fact(String name, String problem) {
        if (facts.getOrDefault(name, "").isBlank()
                && !(facts.containsKey(name) && name.equals(ClosingSections.AS_BUILT))) {
            problems.add(problem);
        }
    }

    private void text(String words, String problem) {
        if (blocks.stream()
                .noneMatch(
                        block -> block instanceof Block.Paragraph p && p.text().contains(words))) {
            problems.add(problem);
        }
    }

    private void filled(String table, String what, List<String> columns) {
        Block.Table found = tables.get(table);
        if (found == null) {
            problems.add("table " + table + " is missing");
            return;
        }
        for (String column : columns) {
            int at = -1;
            for (int i = 0; i < found.columns().size(); i++) {
                at = found.columns().get(i).head().equals(column) ? i : at;
            }
            int place = at;
            if (at < 0) {
                problems.add("table " + table + ": " + what + " is shown without " + column);
            } else if (found.rows().stream().anyMatch(row -> row.get(place).isBlank())) {
                problems.add("table " + table + ": " + what + " has no entry under " + column);
            }
        }
    }
}
