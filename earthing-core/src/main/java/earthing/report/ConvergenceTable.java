package earthing.report;

import earthing.quantity.Numbers;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Case;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the elements of the numeric solution cost: each electrode with shorter ones. */
final class ConvergenceTable {

    private static final String MARK = ".convergence.";

    private static final Map<String, String> RULES = rules();

    private ConvergenceTable() {}

    private static Map<String, String> rules() {
        Map<String, String> rules = new LinkedHashMap<>();
        rules.put("standard", "standard, as used");
        rules.put("half", "half as long");
        rules.put("quarter", "a quarter as long");
        rules.put("refined", "96 a bar or more");
        return rules;
    }

    /** Whether a result stands here and nowhere else. */
    static boolean belongs(String id) {
        return id.startsWith("electrode.") && id.contains(MARK);
    }

    /**
     * One row an electrode and rule.
     *
     * @param input site and results
     * @return the table with what it means, or nothing where no electrode was solved
     */
    static List<Block> of(ReportInput input) {
        List<List<String>> rows = new ArrayList<>();
        double worst = 0;
        for (Result own : input.results().results()) {
            if (!own.id().endsWith(MARK + "standard.resistance")) {
                continue;
            }
            String electrode =
                    own.id().substring("electrode.".length(), own.id().indexOf(MARK));
            double last = 0;
            for (Map.Entry<String, String> rule : RULES.entrySet()) {
                String id = "electrode." + electrode + MARK + rule.getKey() + ".";
                Optional<Result> value = one(input, id + "resistance");
                if (value.isPresent()) {
                    last = one(input, id + "standard-apart").orElseThrow().value();
                    rows.add(List.of(
                            electrode,
                            rule.getValue(),
                            String.valueOf(Math.round(
                                    one(input, id + "elements").orElseThrow().value())),
                            Numbers.significant(value.get().value(), 5) + " Ω",
                            rule.getKey().equals("standard") ? "" : percent(last)));
                }
            }
            worst = Math.max(worst, Math.abs(last));
        }
        if (rows.isEmpty()) {
            return List.of();
        }
        Block table = new Block.Table(
                "electrode-convergence",
                "The same electrodes with shorter elements, nominal ground",
                List.of(
                        Column.text("Electrode"),
                        Column.text("Elements"),
                        Column.number("In all"),
                        Column.number("Resistance"),
                        Column.number("Standard lies")),
                rows);
        return List.of(
                table,
                new Block.Paragraph(
                        "The kernel of the tube along each bar converges when elements are made shorter. Every"
                                + " study takes the standard ones; they lie " + Numbers.significant(100 * worst, 2)
                                + " % from the finest, at most. Electrodes of so many bars that a finer division would pass 1000"
                                + " elements stand without it."));
    }

    private static Optional<Result> one(ReportInput input, String id) {
        return input.results().one(id, Case.NONE, "nominal");
    }

    private static String percent(double apart) {
        return Numbers.significant(100 * Math.abs(apart), 2) + " % " + (apart < 0 ? "below" : "above");
    }
}
