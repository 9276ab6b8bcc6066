package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.render.TextRenderer;
import earthing.study.Case;
import earthing.study.Gap;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The four ways to earth the cubicle side by side, in 80 columns: first one screen that a student understands, then the
 * details.
 */
public final class ArrangementPage {

    private static final int WIDTH = 80;
    private static final String CABLE_END = "surge.cable-end.";
    private static final String OPEN = ".open-voltage";
    private static final String SHORT = ".short-circuit-current";

    /** What each arrangement buys and what it pays with. */
    private static final Map<String, String> MEANING = meaning();

    /** The same in one sentence. */
    private static final Map<String, String> SHORT_MEANING = shortMeaning();

    private final StudyResults results;
    private final StringBuilder page = new StringBuilder(4096);

    private ArrangementPage(StudyResults results) {
        this.results = results;
    }

    /**
     * Prints the page.
     *
     * @param results results of a site with the four arrangements
     * @return lines of at most 80 columns, each ended by a line feed
     */
    public static String text(StudyResults results) {
        ArrangementPage page = new ArrangementPage(results);
        page.print();
        return page.page.toString();
    }

    private static Map<String, String> shortMeaning() {
        Map<String, String> meaning = new LinkedHashMap<>();
        meaning.put(
                "shared",
                "teed to the main earth. Tank and cubicle rise together; the loop of cable and main earth picks up"
                        + " fast fronts.");
        meaning.put(
                "separate",
                "own electrode only. Nearly the whole earth potential rise stands across the control cable, and two"
                        + " earths are within reach.");
        meaning.put(
                "both",
                "tee and own electrode. No floating cubicle if one path breaks; part of every current passes the"
                        + " cubicle.");
        meaning.put(
                "unearthed", "no earth at all. A metal cabinet whose potential nobody fixes, within reach of a hand.");
        return meaning;
    }

    private static Map<String, String> meaning() {
        Map<String, String> meaning = new LinkedHashMap<>();
        meaning.put(
                "shared",
                "cubicle teed to the main earth. Tank and cubicle rise together, so the control cable sees no earth"
                        + " potential rise. It pays with the loop between cable and main earth: M·dI/dt, large on a fast"
                        + " front, whatever the electrode is worth.");
        meaning.put(
                "separate",
                "cubicle on its own electrode only. The main earth's current stays out of the cubicle. It pays with"
                        + " nearly the whole earth potential rise across the control cable, R·I in a stroke and for the"
                        + " whole clearing time of an earth fault, and with two earths within reach of one person.");
        meaning.put(
                "both",
                "tee and own electrode. Lower resistance, no floating cubicle if one path breaks. It pays with a share of"
                        + " every stroke and fault current led past the cubicle and, with the screen bonded at both ends,"
                        + " along the cable.");
        meaning.put(
                "unearthed",
                "cubicle not connected to earth. No current is led through it. It pays with a metal cabinet at working"
                        + " height whose potential nobody fixes: capacitances and flashovers do, and a fault to it may not be"
                        + " cleared.");
        return meaning;
    }

    private void print() {
        Set<Case> cases = new LinkedHashSet<>();
        results.under("surge.")
                .filter(r -> r.circumstances().keys().containsKey("arrangement") && !isBroken(r))
                .forEach(r -> cases.add(withoutArrangement(r.circumstances())));
        // Results without a cable end come from the arresters and say nothing about the screen.
        String bond = cases.stream()
                .filter(rest -> !hardest(rest, "tank").isEmpty()
                        || !hardest(rest, "cubicle").isEmpty())
                .map(ArrangementPage::bondOf)
                .findFirst()
                .orElse("");
        firstScreen(cases.stream().filter(rest -> bondOf(rest).equals(bond)).toList(), bond);
        lines("Details", "");
        page.append('\n');
        if (cases.isEmpty()) {
            lines("No surge result with an arrangement was computed for this site.", "");
            page.append('\n');
        }
        cases.stream().filter(rest -> bondOf(rest).equals(bond)).forEach(this::surge);
        summary(cases.stream().filter(rest -> !bondOf(rest).equals(bond)).toList());
        powerFrequency();
        MEANING.forEach((arrangement, sentence) -> lines(arrangement + ": " + sentence, "  "));
        page.append('\n');
        gaps();
        lines(
                "Peak values for surges, r.m.s. for earth faults; potentials are to remote earth. A voltage and the"
                        + " current beside it are one source: the open end sees the voltage, a conducting protector the"
                        + " current. Hand value = M·dI/dt + R·I; ≈ 0 is less than a millionth of the voltages or"
                        + " currents beside it. These figures must not be used to justify removing an earth.",
                "");
    }

    /** At most 40 lines: what decides, and one sentence on each arrangement. */
    private void firstScreen(List<Case> cases, String bond) {
        lines("The control cubicle earthed in four ways", "");
        page.append('\n');
        List<List<String>> rows = new ArrayList<>();
        for (Case rest : cases) {
            String end = hardest(rest, "tank").isEmpty() ? "cubicle" : "tank";
            String core = hardest(rest, end);
            if (core.isEmpty() || rest.isInformation()) {
                continue;
            }
            String wave = rest.keys().getOrDefault("wave", "surge");
            row(rows, wave + ": control cable, open", CABLE_END + core + "." + end + OPEN, rest, false);
            row(rows, "  current behind it", CABLE_END + core + "." + end + SHORT, rest, false);
            if (rows.size() <= 2) {
                row(rows, "  current in the screen", "surge.screen.current.peak", rest, false);
                row(rows, "  tank to earth", "surge.tank.peak", rest, false);
                row(rows, "  cubicle to earth", "surge.cubicle.peak", rest, false);
            }
        }
        powerCases().stream().reduce((a, b) -> harder(a, b)).ifPresent(rest -> {
            row(rows, "earth fault: cubicle, touched", "touch.cubicle.voltage", rest, false);
            row(rows, "  permissible", "touch.cubicle.permissible", rest, false);
            row(rows, "  across the control cable", "cable.power-frequency.voltage", rest, false);
            row(rows, "  current in the screen", "cable.power-frequency.screen-current", rest, false);
        });
        if (rows.isEmpty()) {
            lines("Nothing that tells the arrangements apart could be computed; see below what to fill in.", "");
            page.append('\n');
        } else {
            page.append(TextRenderer.table(arrangements("Overview", rows), WIDTH))
                    .append('\n');
            lines(
                    "The surge current enters at the tank"
                            + (bond.isEmpty() ? "" : "; screen of the control cable bonded: " + bond.replace('-', ' '))
                            + ". \"Open\" is what an open input sees, \"behind it\" what a protector must carry.",
                    "");
            page.append('\n');
        }
        SHORT_MEANING.forEach((arrangement, sentence) -> lines(arrangement + ": " + sentence, "  "));
        page.append('\n');
        lines(
                "Never remove an earth because of these figures. A competent and licensed person decides; local codes"
                        + " and the owner's rules govern.",
                "");
        page.append('\n');
    }

    /** Of two faults the one with the higher touch voltage at the cubicle as built. */
    private Case harder(Case a, Case b) {
        return most("touch.cubicle.voltage", b) > most("touch.cubicle.voltage", a) ? b : a;
    }

    private static boolean isBroken(Result result) {
        return result.circumstances().keys().containsKey("broken");
    }

    private static Case withoutArrangement(Case circumstances) {
        Case rest = Case.NONE;
        for (Map.Entry<String, String> entry : circumstances.keys().entrySet()) {
            rest = entry.getKey().equals("arrangement") ? rest : rest.with(entry.getKey(), entry.getValue());
        }
        return rest;
    }

    private static String bondOf(Case circumstances) {
        return circumstances.keys().getOrDefault("screen-bond", "");
    }

    private void surge(Case rest) {
        List<List<String>> tankEnd = end(rest, "tank");
        List<List<String>> cubicleEnd = end(rest, "cubicle");
        List<List<String>> rows = new ArrayList<>();
        if (numbers(tankEnd).equals(numbers(cubicleEnd)) && !tankEnd.isEmpty()) {
            List<String> first = new ArrayList<>(tankEnd.get(0));
            first.set(0, hardest(rest, "tank") + ", either end, open");
            rows.add(first);
            rows.addAll(tankEnd.subList(1, tankEnd.size()));
        } else {
            rows.addAll(tankEnd);
            rows.addAll(cubicleEnd);
        }
        row(rows, "screen current", "surge.screen.current.peak", rest, false);
        row(rows, "tank to earth", "surge.tank.peak", rest, false);
        row(rows, "cubicle to earth", "surge.cubicle.peak", rest, false);
        table("Surge: " + CaseWords.of(rest), rows);
    }

    private List<List<String>> end(Case rest, String end) {
        List<List<String>> rows = new ArrayList<>();
        String core = hardest(rest, end);
        if (!core.isEmpty()) {
            String id = CABLE_END + core + "." + end;
            row(rows, core + ", " + end + " end, open", id + OPEN, rest, false);
            row(rows, "  hand value", id + OPEN, rest, true);
            double open = most(id + OPEN, rest);
            row(rows, "  resistive part", id + ".resistive", rest, false, open);
            row(rows, "  inductive part", id + ".inductive", rest, false, open);
            row(rows, "  short-circuited", id + SHORT, rest, false);
        }
        return rows;
    }

    private static List<List<String>> numbers(List<List<String>> rows) {
        return rows.stream().map(row -> row.subList(1, row.size())).toList();
    }

    /** Cases with another bond of the screen than the first one: voltage and current of the hardest core only. */
    private void summary(List<Case> cases) {
        List<List<String>> rows = new ArrayList<>();
        for (Case rest : cases) {
            String end = hardest(rest, "tank").isEmpty() ? "cubicle" : "tank";
            String core = hardest(rest, end);
            if (!core.isEmpty()) {
                String id = CABLE_END + core + "." + end;
                row(rows, CaseWords.of(rest) + ": " + core + ", " + end + " end, open", id + OPEN, rest, false);
                row(rows, "  short-circuited", id + SHORT, rest, false);
            }
        }
        table("The same with the screen bonded otherwise", rows);
    }

    private Set<Case> powerCases() {
        Set<Case> cases = new LinkedHashSet<>();
        results.results().stream()
                .filter(r -> (r.id().startsWith("touch.cubicle.") || r.id().startsWith("cable.power-frequency."))
                        && r.circumstances().keys().containsKey("arrangement")
                        && !isBroken(r))
                .forEach(r -> cases.add(withoutArrangement(r.circumstances())));
        return cases;
    }

    private void powerFrequency() {
        for (Case rest : powerCases()) {
            List<List<String>> rows = new ArrayList<>();
            row(rows, "touch voltage at the cubicle", "touch.cubicle.voltage", rest, false);
            row(rows, "  permissible", "touch.cubicle.permissible", rest, false);
            row(rows, "across the control cable", "cable.power-frequency.voltage", rest, false);
            row(rows, "screen current", "cable.power-frequency.screen-current", rest, false);
            String title = CaseWords.of(rest);
            table(title.isEmpty() ? "Earth fault" : "Earth fault: " + title, rows);
        }
    }

    /** The core or screen whose open voltage is the highest of all arrangements in this case; empty if there is none. */
    private String hardest(Case rest, String end) {
        String tail = "." + end + OPEN;
        String hardest = "";
        double most = -1;
        for (Result result : results.results()) {
            if (result.id().startsWith(CABLE_END)
                    && result.id().endsWith(tail)
                    && withoutArrangement(result.circumstances()).equals(rest)
                    && Math.abs(result.value()) > most) {
                most = Math.abs(result.value());
                hardest = result.id().substring(CABLE_END.length(), result.id().length() - tail.length());
            }
        }
        return hardest;
    }

    private double most(String id, Case rest) {
        double most = 0;
        for (String arrangement : ResultTable.ARRANGEMENTS) {
            most = Math.max(
                    most,
                    find(id, rest.with("arrangement", arrangement))
                            .map(r -> Math.abs(r.value()))
                            .orElse(0.0));
        }
        return most;
    }

    private void row(List<List<String>> rows, String label, String id, Case rest, boolean hand) {
        row(rows, label, id, rest, hand, 0);
    }

    private void row(List<List<String>> rows, String label, String id, Case rest, boolean hand, double beside) {
        List<OptionalDouble> values = new ArrayList<>();
        String unit = "";
        for (String arrangement : ResultTable.ARRANGEMENTS) {
            Optional<Result> result = find(id, rest.with("arrangement", arrangement));
            unit = result.map(Result::unit).orElse(unit);
            values.add(result.map(r -> hand ? r.handValue() : OptionalDouble.of(r.value()))
                    .orElse(OptionalDouble.empty()));
        }
        if (values.stream().anyMatch(OptionalDouble::isPresent)) {
            List<String> cells = new ArrayList<>(List.of(label));
            cells.addAll(Amount.row(values, unit, beside));
            rows.add(cells);
        }
    }

    /** The result of exactly this case; the nominal one, else the high one, else the first. */
    private Optional<Result> find(String id, Case circumstances) {
        List<Result> found = results.of(id).stream()
                .filter(r -> r.circumstances().equals(circumstances))
                .toList();
        for (String bound : List.of("nominal", "high")) {
            Optional<Result> result =
                    found.stream().filter(r -> r.at().equals(bound)).findFirst();
            if (result.isPresent()) {
                return result;
            }
        }
        return found.stream().findFirst();
    }

    private void table(String title, List<List<String>> rows) {
        if (rows.isEmpty()) {
            return;
        }
        lines(title, "");
        page.append('\n')
                .append(TextRenderer.table(arrangements(title, rows), WIDTH))
                .append('\n');
    }

    private static Block.Table arrangements(String title, List<List<String>> rows) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Quantity"));
        ResultTable.ARRANGEMENTS.forEach(arrangement -> columns.add(Column.number(arrangement)));
        return new Block.Table("arrangements", title, columns, rows);
    }

    private void gaps() {
        Set<String> told = new LinkedHashSet<>();
        for (Gap gap : results.gaps()) {
            if (gap.circumstances().keys().containsKey("arrangement")
                    && !gap.circumstances().keys().containsKey("broken")) {
                told.add(gap.circumstances().keys().get("arrangement") + ": " + ResultSections.sentence(gap.reason())
                        + (gap.missingKeys().isEmpty()
                                ? ""
                                : " Fill in: " + String.join(", ", gap.missingKeys()) + "."));
            }
        }
        if (!told.isEmpty()) {
            lines("What could not be computed (–):", "");
            told.forEach(line -> lines(line, "  "));
            page.append('\n');
        }
    }

    private void lines(String text, String indent) {
        String prefix = "";
        for (String line : TextRenderer.lines(text, WIDTH - indent.length())) {
            page.append(prefix).append(line).append('\n');
            prefix = indent;
        }
    }
}
