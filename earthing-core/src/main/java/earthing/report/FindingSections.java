package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The broken paths, and every finding in full. */
final class FindingSections {

    private FindingSections() {}

    /** What each broken path would do, powered and under surge. */
    static Block contingencies(ReportInput input, List<Result> broken, References references) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(
                "Each earth path is broken in turn, powered and under surge: who floats, what flows in the control"
                        + " cable, whether the protection trips, whether the break can be seen."));
        List<Finding> findings = input.findings().stream()
                .filter(f -> f.group() == Finding.Group.CONTINGENCY)
                .toList();
        if (findings.isEmpty()) {
            blocks.add(new Block.Paragraph("No broken path has been checked."));
        }
        if (!findings.isEmpty()) {
            blocks.add(new Block.Table(
                    "contingency-findings",
                    "What a broken earth path would do",
                    List.of(Column.text("Path"), Column.status("Status"), Column.text("What then")),
                    findings.stream()
                            .map(f -> List.of(
                                    f.subject().replace("broken: ", ""),
                                    f.status().text(),
                                    ResultSections.capital(ResultSections.sentence(f.reason()))
                                            + (f.advice().isBlank()
                                                    ? ""
                                                    : " Advice: " + ResultSections.sentence(f.advice()))))
                            .toList()));
            blocks.add(new Block.Paragraph("Basis: "
                    + findings.stream()
                            .map(f -> f.basis().text() + " " + references.cite(f.basis()))
                            .distinct()
                            .collect(Collectors.joining("; "))
                    + "."));
        }
        List<Block> surge = BrokenTable.of(input.results(), broken);
        if (!surge.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "Under surge, peak values, nominal soil: the pair of a core at the cubicle, the screen, the potentials"
                            + " to remote earth, the voltages across the gaps. A core with a current and no"
                            + " voltage: no metal leads the surge away but a conducting core, and all of it passes through"
                            + " what that core ends on. Not computed: the reason stands under the surge path. Isolations that would open a second path are broken too. Where a gap"
                            + " flashes over, the values of its line are prospective."));
            blocks.addAll(surge);
        }
        List<Result> powered =
                broken.stream().filter(r -> !BrokenTable.belongs(r)).toList();
        if (!powered.isEmpty()) {
            blocks.addAll(
                    ResultTable.across("contingency-results", "With a path broken", powered, "broken", references));
        }
        if (!broken.isEmpty()) {
            // What is told of a break stands in its finding, and what is yes or no in words in the table.
            blocks.add(ResultSections.MODELS);
            blocks.add(new Block.Bullets(ResultTable.models(
                    broken.stream()
                            .filter(r -> !ResultTable.YES_OR_NO.contains(r.id()))
                            .toList(),
                    references)));
        }
        return new Block.Section("contingencies", 2, "Contingencies", blocks);
    }

    /** Every finding in full, group by group, with the lines of working; those of broken paths stand where these are told. */
    static Block all(ReportInput input, References references) {
        List<Finding> findings = input.findings();
        List<Block> sections = new ArrayList<>(ElectrodeBasis.of(input, ElectrodeBasis.NOMINAL));
        for (Finding.Group group : Finding.Group.values()) {
            List<List<String>> rows = new ArrayList<>();
            findings.stream()
                    .filter(f -> f.group() == group && group != Finding.Group.CONTINGENCY)
                    .forEach(f -> rows.add(List.of(
                            f.id(),
                            f.status().text(),
                            f.subject() + ": " + ResultSections.sentence(f.reason())
                                    + (f.advice().isBlank() ? "" : " Advice: " + ResultSections.sentence(f.advice())),
                            f.basis().text() + " " + references.cite(f.basis()))));
            if (rows.isEmpty()) {
                continue;
            }
            String id = "findings-"
                    + group.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
            List<Block> blocks = new ArrayList<>();
            blocks.add(new Block.Table(
                    id + "-table",
                    "Findings: " + Severity.words(group),
                    List.of(
                            Column.text("Check"),
                            Column.status("Status"),
                            Column.text("Finding"),
                            Column.text("Basis")),
                    rows));
            findings.stream()
                    .filter(f -> f.group() == group && f.worked().isPresent())
                    .forEach(f -> blocks.add(new Block.Working(
                            f.id() + ": " + ResultSections.capital(CheckWords.of(f)),
                            f.worked().orElseThrow(),
                            FrontSections.governing(f))));
            sections.add(new Block.Section(id, 3, Severity.words(group), blocks));
        }
        if (findings.stream().anyMatch(f -> f.group() == Finding.Group.CONTINGENCY)) {
            sections.add(
                    0,
                    new Block.Paragraph(
                            "The findings about broken earth paths stand under Contingencies. The names in the first column are those that"
                                    + " the command line explains with --explain."));
        }
        return new Block.Section("findings", 2, "All findings", sections);
    }
}
