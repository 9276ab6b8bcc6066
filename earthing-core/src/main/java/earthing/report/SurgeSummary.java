package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.study.Case;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The surge path on half a page, for the site as it is: the verdict, the pair at the core ends for each wave, what enters
 * in each way, and what flashes over first. It selects from the results; the details stand below it.
 */
final class SurgeSummary {

    private static final String NONE = "–";
    private static final String OPEN = ".open-voltage";
    private static final String SHORTED = ".short-circuit-current";
    private static final String TIME = ".time";
    private static final String ABOVE_METAL = ResultTable.FLASHOVER + "pole-top-wood" + TIME;
    private static final String AFTER_PAIR = ResultTable.FLASHOVER + "cable-end.open-voltage";
    /** More open points than these are counted only. */
    private static final int MOST = 8;

    private final List<Result> own;
    private final String current;

    private SurgeSummary(List<Result> own, String current) {
        this.own = own;
        this.current = current;
    }

    /** Verdict and two tables; the tables are left out where nothing was computed. */
    static List<Block> of(ReportInput input, String bond) {
        List<Block> blocks = new ArrayList<>();
        verdict(input.findings(), blocks);
        String arrangement = arrangementOf(input.site());
        List<Result> own = input.results()
                .under("surge.")
                .filter(r ->
                        r.at().equals("nominal") && ofSite(r.circumstances().keys(), arrangement, bond))
                .toList();
        SurgeSummary summary = new SurgeSummary(own, current(input.site().surges()));
        summary.waves(Surges.verdictWaves(input.site().surges())).ifPresent(blocks::add);
        summary.entries().ifPresent(blocks::add);
        return blocks;
    }

    /** The word of the arrangement that the site has; empty without a cubicle. */
    static String arrangementOf(Site site) {
        return site.cubicle() == null ? "" : site.cubicle().earth().name().toLowerCase(Locale.ROOT);
    }

    /** The largest open voltage of a core against its chassis among the results of one case. */
    static String openVoltage(Collection<Result> of) {
        return ends(of, OPEN, struck(of) ? ResultTable.PROSPECTIVE : "");
    }

    /** The largest short-circuit current of a core among the results of one case. */
    static String shortCircuitCurrent(Collection<Result> of) {
        return ends(of, SHORTED, struck(of) ? ResultTable.PROSPECTIVE : "");
    }

    /** Peak of the standard current. */
    static String current(@Nullable Surges surges) {
        return Amount.text(
                surges == null || surges.current() == null || !surges.current().isKnown()
                        ? Surges.STANDARD_CURRENT
                        : surges.current().nominal(),
                "A");
    }

    private static boolean ofSite(Map<String, String> keys, String arrangement, String bond) {
        return keys.containsKey("entry")
                && !keys.containsKey("broken")
                && keys.getOrDefault("arrangement", "").equals(arrangement)
                && (bond.isEmpty() || keys.getOrDefault("screen-bond", "").equals(bond));
    }

    /** The status of the group, and what is not met or open in a line each. */
    private static void verdict(List<Finding> findings, List<Block> blocks) {
        List<Finding> surge = findings.stream()
                .filter(f -> f.group() == Finding.Group.SURGE)
                .sorted(Severity.HEAVIEST_FIRST)
                .toList();
        Map<Status, Integer> counts = new LinkedHashMap<>();
        surge.stream()
                .filter(f -> f.status() != Status.NOT_APPLICABLE)
                .forEach(f -> counts.merge(f.status(), 1, Integer::sum));
        List<String> parts = new ArrayList<>();
        counts.forEach((status, count) -> parts.add(count + " " + status.text()));
        blocks.add(new Block.Headline(
                Severity.status(findings, Finding.Group.SURGE).text(),
                "surge; " + (parts.isEmpty() ? "no check applies" : String.join(", ", parts))));
        List<String> open = surge.stream()
                .filter(f -> f.status().weight() > Status.ACCEPTED_DEPARTURE.weight())
                .map(f -> f.subject() + ": " + f.status().text() + " – " + f.reason() + numbers(f))
                .toList();
        List<String> told = new ArrayList<>(open.subList(0, Math.min(MOST, open.size())));
        if (open.size() > told.size()) {
            told.add((open.size() - told.size()) + " more under \"All findings\"");
        }
        if (!told.isEmpty()) {
            blocks.add(new Block.Bullets(told));
        }
    }

    private static String numbers(Finding finding) {
        return finding.value().isEmpty() || finding.limit().isEmpty()
                ? ""
                : "; " + Amount.text(finding.value(), finding.unit()) + ", limit "
                        + Amount.text(finding.limit(), finding.unit());
    }

    /** A row for each wave; those on which no verdict rests say so. */
    private Optional<Block> waves(List<String> verdict) {
        Set<String> waves = new LinkedHashSet<>();
        List<Result> standard =
                own.stream().filter(r -> entry(r).equals("current-into-tank")).toList();
        standard.forEach(r -> waves.add(r.circumstances().keys().getOrDefault("wave", "")));
        List<List<String>> rows = new ArrayList<>();
        for (String wave : waves) {
            List<Result> of = standard.stream()
                    .filter(r ->
                            r.circumstances().keys().getOrDefault("wave", "").equals(wave))
                    .toList();
            String mark = struck(of) ? ResultTable.PROSPECTIVE : "";
            rows.add(List.of(
                    verdict.contains(wave) ? wave : wave + ", information",
                    ends(of, OPEN, mark),
                    ends(of, SHORTED, mark),
                    one(of, "surge.screen.current.peak", mark),
                    one(of, "surge.tank.peak", mark),
                    one(of, "surge.cubicle.peak", mark),
                    flashesFirst(of)));
        }
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(new Block.Table(
                                "surge-summary",
                                "In short: " + current
                                        + " into the tank, the standard case, peak values, the site as it is,"
                                        + " nominal; the pair holds for either end of the worst core"
                                        + (struck(standard) ? "; p: would arise if nothing flashed over" : ""),
                                List.of(
                                        Column.text("Wave"),
                                        Column.number("Core open"),
                                        Column.number("Core shorted"),
                                        Column.number("Screen"),
                                        Column.number("Tank"),
                                        Column.number("Cubicle"),
                                        Column.text("Flashes first")),
                                rows)
                        .withoutEmptyColumns());
    }

    /** A row for each way in: a stroke to the line by strike point and switch, a stroke beside the line. */
    private Optional<Block> entries() {
        Map<Case, List<Result>> cases = new LinkedHashMap<>();
        own.stream()
                .filter(r -> !entry(r).equals("current-into-tank"))
                .forEach(r -> cases.computeIfAbsent(r.circumstances(), key -> new ArrayList<>())
                        .add(r));
        List<List<String>> rows = new ArrayList<>();
        cases.forEach((circumstances, of) -> rows.add(List.of(
                words(circumstances),
                one(of, "surge.down-lead.current.peak", ""),
                ends(of, OPEN, struck(of) ? ResultTable.PROSPECTIVE : ""),
                ends(of, SHORTED, struck(of) ? ResultTable.PROSPECTIVE : ""),
                flashesFirst(of))));
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(new Block.Table(
                        "surge-summary-entry",
                        "In short: what a stroke of " + current
                                + " brings down the pole and to the core ends, peak values,"
                                + " the site as it is, nominal; information; p: would arise if nothing flashed over",
                        List.of(
                                Column.text("Stroke"),
                                Column.number("Down the pole"),
                                Column.number("Core open"),
                                Column.number("Core shorted"),
                                Column.text("Flashes first")),
                        rows));
    }

    private static String words(Case circumstances) {
        Map<String, String> keys = circumstances.keys();
        if (entry(keys).equals(Case.POLE)) {
            return (keys.getOrDefault("strike", "").equals("antenna") ? "to the antenna, " : "to the top of the pole, ")
                    + keys.getOrDefault("wave", "")
                    + (keys.containsKey("switch") ? ", switch " + keys.get("switch") : "");
        }
        return entry(keys).equals(Case.INDUCED)
                ? "to the ground beside the line, median first stroke"
                : "to the line, " + keys.getOrDefault("wave", "") + ", "
                        + keys.getOrDefault("strike", "here").replace('-', ' ') + ", switch "
                        + keys.getOrDefault("switch", "closed");
    }

    private static String entry(Result result) {
        return entry(result.circumstances().keys());
    }

    private static String entry(Map<String, String> keys) {
        return keys.getOrDefault("entry", "");
    }

    /** Whether an arc of the pole changes the pair; those of the line's bushings are in it already. */
    private static boolean struck(Collection<Result> of) {
        return of.stream().anyMatch(r -> r.id().equals(AFTER_PAIR));
    }

    private static String one(Collection<Result> of, String id, String mark) {
        return of.stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .map(r -> Amount.text(r.value(), r.unit()) + mark)
                .orElse(NONE);
    }

    /** The largest of the ends of single cores. */
    private static String ends(Collection<Result> of, String quantity, String mark) {
        return of.stream()
                .filter(r -> r.id().startsWith("surge.cable-end.")
                        && r.id().endsWith(quantity)
                        && !r.id().startsWith("surge.cable-end.core-to-core."))
                .max(Comparator.comparingDouble(Result::value))
                .map(r -> Amount.text(r.value(), r.unit()) + mark)
                .orElse(NONE);
    }

    /** What the core ends see then, where an arc of the pole changes it. */
    private static String after(Collection<Result> of) {
        String open = one(of, AFTER_PAIR, "");
        return open.equals(NONE)
                ? ""
                : "; core then " + open + ", " + one(of, ResultTable.FLASHOVER + "cable-end.short-circuit-current", "");
    }

    /** The gap that strikes first, with its time and voltage, and the pair afterwards. */
    static String flashesFirst(Collection<Result> of) {
        List<Result> arcs = of.stream()
                .filter(r -> r.id().startsWith(ResultTable.FLASHOVER) && r.id().endsWith(TIME))
                .sorted(Comparator.comparingDouble(Result::value))
                .toList();
        if (arcs.isEmpty()) {
            return "nothing";
        }
        // The wood above the metal only lets the stroke in; what changes the pair comes after it.
        boolean wood = arcs.get(0).id().equals(ABOVE_METAL) && arcs.size() > 1;
        return arc(of, arcs.get(0)) + (wood ? "; then " + arc(of, arcs.get(1)) : "") + after(of);
    }

    private static String arc(Collection<Result> of, Result time) {
        String gap = time.id().substring(0, time.id().length() - TIME.length());
        return SurgeWords.gap(gap.substring(ResultTable.FLASHOVER.length())) + " at "
                + Amount.text(time.value(), time.unit()) + ", " + one(of, gap + ".voltage", "");
    }
}
