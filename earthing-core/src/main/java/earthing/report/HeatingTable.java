package earthing.report;

import earthing.compliance.Finding;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Each conductor at the case that governs its heating: what flows, what is fitted, what is needed by both standards. */
final class HeatingTable {

    private static final String BEGIN = "conductor.";
    private static final String END = ".heating";

    private HeatingTable() {}

    static List<Block> of(List<Finding> findings, StudyResults results) {
        List<List<String>> temperatures = new ArrayList<>();
        List<List<String>> areas = new ArrayList<>();
        for (Finding finding : findings) {
            if (!finding.id().startsWith(BEGIN) || !finding.id().endsWith(END)) {
                continue;
            }
            String id = finding.id().substring(0, finding.id().length() - END.length()) + ".";
            String name = id.substring(BEGIN.length(), id.length() - 1).replace('-', ' ');
            if (find(results, id + "final-temperature", finding).isEmpty()) {
                continue;
            }
            temperatures.add(List.of(
                    name,
                    FrontSections.governing(finding),
                    amount(results, id + "current", finding),
                    amount(results, id + "first-shot-temperature", finding),
                    amount(results, id + "final-temperature", finding),
                    amount(results, id + "temperature-limit", finding)));
            areas.add(List.of(
                    name,
                    amount(results, id + "area", finding),
                    amount(results, id + "required-area", finding),
                    amount(results, id + "required-area-ieee", finding),
                    find(results, id + "required-area-difference", finding)
                            .map(r -> Amount.margin(OptionalDouble.of(r.value())))
                            .orElse("–"),
                    amount(results, id + "standard-area", finding),
                    amount(results, id + "required-area-non-adiabatic", finding)));
        }
        if (temperatures.isEmpty()) {
            return List.of();
        }
        return List.of(
                new Block.Table(
                        "conductors-temperatures",
                        "Temperature at the end of the sequence, each conductor at its worst case",
                        List.of(
                                Column.text("Conductor"),
                                Column.text("Governing case"),
                                Column.number("Current"),
                                Column.number("First shot"),
                                Column.number("End"),
                                Column.number("Limit")),
                        temperatures),
                new Block.Table(
                        "conductors-areas",
                        "Cross-sections at the same cases: needed for heating by both standards, and the next size",
                        List.of(
                                Column.text("Conductor"),
                                Column.number("Fitted"),
                                Column.number("Needed, IEC"),
                                Column.number("Needed, IEEE"),
                                Column.number("IEEE over IEC"),
                                Column.number("Next size"),
                                Column.number("Non-adiabatic")),
                        areas),
                new Block.Paragraph("The next size is for heating alone; minimum sizes against damage and corrosion are"
                        + " another check. The non-adiabatic area counts the heat that a covering takes up; it is"
                        + " information and no credit is taken for it."));
    }

    private static String amount(StudyResults results, String id, Finding finding) {
        return find(results, id, finding)
                .map(r -> Amount.text(r.value(), r.unit()))
                .orElse("–");
    }

    private static Optional<Result> find(StudyResults results, String id, Finding finding) {
        return results.of(id).stream()
                .filter(r -> r.at().equals(finding.bound()) && r.circumstances().equals(finding.circumstances()))
                .findFirst();
    }
}
