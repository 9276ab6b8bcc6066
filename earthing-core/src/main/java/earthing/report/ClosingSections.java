package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.quantity.Numbers;
import earthing.quantity.Worked;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.figure.ElevationWords;
import earthing.site.Departure;
import earthing.site.EarthSegment;
import earthing.site.Electrode;
import earthing.site.Measurement;
import earthing.site.Site;
import earthing.site.file.SiteTree;
import earthing.study.Assumption;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Tests, assumptions, references, one calculation in full and the file itself. */
final class ClosingSections {

    /** The line for what was built otherwise. */
    static final String AS_BUILT = "As built, differences from the drawing";

    private ClosingSections() {}

    static List<Block> of(ReportInput input, References references) {
        Block worked = worked(input, references);
        return List.of(
                acceptance(input),
                assumptions(input, references),
                references(references),
                worked,
                new Block.Section(
                        "input-file",
                        2,
                        "Input file verbatim",
                        List.of(new Block.Preformatted(
                                input.siteFileName() + ", SHA-256 " + input.sha256(), input.siteFileText()))));
    }

    private static Block acceptance(ReportInput input) {
        Site site = input.site();
        List<List<String>> rows = new ArrayList<>();
        for (Electrode electrode : site.electrodes()) {
            rows.add(test(
                    "Resistance of electrode " + electrode.name()
                            + ", isolated, fall of potential with probe distances and state of the ground written down",
                    predicted(input.results(), "electrode." + electrode.name() + ".resistance")));
        }
        if (site.mainEarth() != null) {
            rows.add(
                    test("Continuity of the main earth, tank terminal to electrode, four-wire, dead and earthed", "–"));
            for (EarthSegment segment : site.mainEarth().segments()) {
                rows.add(test("Continuity of segment " + segment.name() + " with its joint, four-wire", "–"));
            }
        }
        if (site.cubicle() != null) {
            rows.add(test(
                    "Cubicle earth as drawn: " + SiteTree.word(site.cubicle().earth())
                            + "; no other metallic way to earth",
                    "as drawn"));
        }
        if (site.controlCable() != null) {
            rows.add(test(
                    "Control cable: separation from the main earth along the whole route, no coil, screen bonds as"
                            + " declared",
                    site.controlCable().separation() == null
                            ? "–"
                            : site.controlCable()
                                    .separation()
                                    .bounds()
                                    .map(b -> b.nominal().text())
                                    .orElse("unknown")));
        }
        if (site.arresters() != null) {
            rows.add(test(
                    "Arresters: " + ElevationWords.earthed(site.arresters().earthedAt())
                            + ", leads no longer than drawn",
                    "as drawn"));
        }
        for (Finding finding : input.findings()) {
            if (finding.status() == Status.DUE_LATER) {
                rows.add(test(later(finding), "–"));
            }
        }
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(
                "To be filled in on site. Isolate and earth the line before an earth is opened; treat every lead as live"
                        + " until proved. Test again after any change, after a fault or a stroke that operated the"
                        + " protection, and at the owner's interval."));
        blocks.add(new Block.Table(
                "acceptance-tests",
                "Test plan and acceptance sheet",
                List.of(
                        Column.text("Test"),
                        Column.text("Expected"),
                        Column.text("Reading"),
                        Column.text("Date, instrument"),
                        Column.text("Accepted by")),
                rows));
        blocks.addAll(ElectrodeBasis.of(input, ElectrodeBasis.NOMINAL));
        measurements(site, blocks);
        departures(site, blocks);
        blocks.add(new Block.Facts(
                List.of(new Block.Fact(AS_BUILT, ""), new Block.Fact("Accepted: name, signature, date", ""))));
        return new Block.Section("acceptance", 2, "Test plan and acceptance", blocks);
    }

    /** What a check that is due later asks for; what a broken path would do stands under the contingencies. */
    private static String later(Finding finding) {
        return finding.group() == Finding.Group.CONTINGENCY
                ? "Continuity of " + finding.subject().replace("broken: ", "")
                        + ", measured when it has been built: a break of it cannot be seen from the ground"
                : ResultSections.capital(CheckWords.of(finding)) + ": " + ResultSections.sentence(finding.reason());
    }

    private static List<String> test(String what, String expected) {
        return List.of(what, expected, "________", "________", "________");
    }

    private static String predicted(StudyResults results, String id) {
        StringBuilder text = new StringBuilder();
        for (String bound : List.of("low", "nominal", "high")) {
            Optional<Result> result = results.one(id, Case.NONE, bound);
            if (result.isPresent()) {
                text.append(text.isEmpty() ? "" : "; ")
                        .append(bound)
                        .append(' ')
                        .append(Amount.text(result.get().value(), result.get().unit()));
            }
        }
        return text.isEmpty() ? "–" : text.toString();
    }

    private static void measurements(Site site, List<Block> blocks) {
        List<List<String>> rows = new ArrayList<>();
        for (Measurement m : site.measurements()) {
            rows.add(List.of(
                    SiteTree.word(m.kind()).replace('-', ' ') + " of " + m.of(),
                    m.value().bounds().map(b -> b.nominal().text()).orElse("unknown"),
                    SiteTree.word(m.method()).replace('-', ' '),
                    SiteTree.word(m.isolated()),
                    m.soilState() == null ? "not stated" : SiteTree.word(m.soilState()),
                    m.date()));
        }
        if (rows.isEmpty()) {
            blocks.add(new Block.Paragraph("No reading taken on site is recorded in the site file."));
        } else {
            blocks.add(new Block.Table(
                    "acceptance-readings",
                    "Readings in the site file",
                    List.of(
                            Column.text("Reading"),
                            Column.number("Value"),
                            Column.text("Method"),
                            Column.text("Isolated"),
                            Column.text("Ground"),
                            Column.text("Date")),
                    rows));
        }
    }

    private static void departures(Site site, List<Block> blocks) {
        List<Departure> departures =
                site.criteria() == null ? List.of() : site.criteria().departures();
        if (departures.isEmpty()) {
            blocks.add(new Block.Paragraph("Accepted departures: none are recorded."));
            return;
        }
        blocks.add(new Block.Table(
                "acceptance-departures",
                "Accepted departures",
                List.of(Column.text("Finding"), Column.text("Reference"), Column.text("Date")),
                departures.stream()
                        .map(d -> List.of(d.finding(), d.reference(), d.date()))
                        .toList()));
    }

    private static Block assumptions(ReportInput input, References references) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Section("assumptions-made", 3, "Assumptions", assumed(input, references)));
        blocks.add(part(
                "assumptions-limits",
                "Limits of applicability",
                input.results().notes().stream().map(ClosingSections::line).toList(),
                "No model was used outside its stated range."));
        List<String> open = new ArrayList<>(GapWords.of(input.results().gaps()));
        openChecks(input.findings(), open);
        blocks.add(part(
                "assumptions-open",
                "Not assessed",
                open.stream().map(ClosingSections::line).toList(),
                "Nothing was left open."));
        return new Block.Section("assumptions", 2, "Assumptions, limits and what was not assessed", blocks);
    }

    private static String line(String note) {
        return ResultSections.capital(ResultSections.sentence(note));
    }

    /** What the file does not give; a value that was taken otherwise in each case stands in one row. */
    private static List<Block> assumed(ReportInput input, References references) {
        Map<String, List<Assumption>> rows = new LinkedHashMap<>();
        for (Assumption a : input.results().assumptions()) {
            String key = a.key().isEmpty() ? a.text() : a.key();
            rows.computeIfAbsent(key + " " + references.cite(a.source()), k -> new ArrayList<>())
                    .add(a);
        }
        if (rows.isEmpty()) {
            return List.of(new Block.Paragraph("No value was taken that the file does not give."));
        }
        return List.of(new Block.Table(
                "inputs-effective",
                "Effective inputs that the file does not give, ASSUMED by this tool",
                List.of(Column.text("Key that would replace it"), Column.text("Value or choice"), Column.text("Ref")),
                rows.values().stream()
                        .map(same -> List.of(
                                same.get(0).key().isEmpty()
                                        ? "(model)"
                                        : same.get(0).key(),
                                same.size() == 1
                                        ? same.get(0).text()
                                        : same.stream()
                                                        .map(Assumption::text)
                                                        .sorted()
                                                        .collect(Collectors.joining(" or "))
                                                + ", by the case",
                                references.cite(same.get(0).source())))
                        .toList()));
    }

    /** The checks that could not be made; those that lack the same stand in one line. */
    private static void openChecks(List<Finding> findings, List<String> lines) {
        Map<String, Set<String>> subjects = new LinkedHashMap<>();
        findings.stream()
                .filter(f -> f.status() == Status.NOT_ASSESSED || f.status() == Status.INSUFFICIENT_DATA)
                .forEach(f -> subjects.computeIfAbsent(
                                ResultSections.sentence(f.reason())
                                        + (f.advice().isBlank()
                                                ? ""
                                                : " " + ResultSections.capital(ResultSections.sentence(f.advice()))),
                                key -> new LinkedHashSet<>())
                        .add(f.subject()));
        subjects.forEach((why, which) ->
                lines.add((which.size() == 1 ? "check " : "checks ") + String.join("; ", which) + ": " + why));
    }

    private static Block part(String id, String title, List<String> lines, String none) {
        return new Block.Section(
                id, 3, title, List.of(lines.isEmpty() ? new Block.Paragraph(none) : new Block.Bullets(lines)));
    }

    private static Block references(References references) {
        return new Block.Section(
                "references",
                2,
                "References",
                List.of(new Block.Table(
                        References.TABLE,
                        "Sources of formulas, constants and limits",
                        List.of(
                                Column.text("No."),
                                Column.text("Kind"),
                                Column.text("Title"),
                                Column.text("Locus"),
                                Column.text("How taken over")),
                        references.rows())));
    }

    /** The finding that a reviewer would redo: with working, the heaviest of the headline groups first. */
    private static Block worked(ReportInput input, References references) {
        Optional<Finding> chosen = input.findings().stream()
                .filter(f -> f.worked().isPresent())
                .sorted(Severity.HEAVIEST_FIRST)
                .filter(f -> Severity.HEADLINE_GROUPS.contains(f.group()))
                .findFirst()
                .or(() -> input.findings().stream()
                        .filter(f -> f.worked().isPresent())
                        .min(Severity.HEAVIEST_FIRST));
        List<Block> blocks = new ArrayList<>();
        if (chosen.isPresent()) {
            full(chosen.get(), references, blocks);
        } else {
            Optional<Result> result = input.results().results().stream()
                    .filter(r -> r.worked().isPresent())
                    .findFirst();
            if (result.isPresent()) {
                line(ResultWords.of(result.get().id()), result.get().worked().orElseThrow(), blocks);
            } else {
                blocks.add(new Block.Paragraph(
                        "No finding and no result of this site carries a line of working: nothing was computed that"
                                + " could be redone by hand."));
            }
        }
        blocks.addAll(ElectrodeBasis.of(input, ElectrodeBasis.NOMINAL));
        return new Block.Section("worked", 2, "One calculation in full", blocks);
    }

    private static void full(Finding finding, References references, List<Block> blocks) {
        blocks.add(new Block.Paragraph(ResultSections.capital(CheckWords.of(finding)) + ". Governing case: "
                + FrontSections.governing(finding) + "."));
        line(finding.subject(), finding.worked().orElseThrow(), blocks);
        if (finding.value().isPresent() && finding.limit().isPresent()) {
            blocks.add(new Block.Paragraph("Value " + Amount.text(finding.value(), finding.unit()) + ", limit "
                    + Amount.text(finding.limit(), finding.unit()) + " by "
                    + finding.basis().text() + " " + references.cite(finding.basis()) + ", margin "
                    + Amount.margin(finding.margin()) + ": "
                    + finding.status().text() + "."));
        }
        blocks.add(new Block.Paragraph(ResultSections.capital(ResultSections.sentence(finding.reason()))));
    }

    private static void line(String subject, Worked worked, List<Block> blocks) {
        List<List<String>> rows = new ArrayList<>();
        for (Worked.Term term : worked.terms()) {
            rows.add(
                    List.of(term.name(), Numbers.full(term.value()), term.unit().isEmpty() ? "1" : term.unit()));
        }
        rows.add(List.of(
                worked.symbol() + " (result)",
                Numbers.full(worked.value()),
                worked.unit().isEmpty() ? "1" : worked.unit()));
        blocks.add(new Block.Working(subject, worked, ""));
        blocks.add(new Block.Table(
                "worked-terms",
                "Its numbers at full precision, in SI",
                List.of(Column.text("Symbol"), Column.number("Value"), Column.text("Unit")),
                rows));
    }
}
