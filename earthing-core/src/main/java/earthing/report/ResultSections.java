package earthing.report;

import earthing.compliance.Finding;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.figure.LineChart;
import earthing.report.figure.PlanView;
import earthing.study.Case;
import earthing.study.Curve;
import earthing.study.Gap;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The results in the order of the physics, from the soil to the broken paths, and every finding in full. */
final class ResultSections {

    private static final int MOST_CASES = 8;

    /** Of the conductors' results those that are shown for every case; the rest stands at the governing one. */
    private static final List<String> IN_BOUNDS = List.of(".resistance", ".current", ".final-temperature");

    private static final String PROSPECTIVE =
            "Values marked p are prospective: they would arise if nothing flashed over, but a gap of that arrangement"
                    + " strikes first. The rows \"flashover\" tell which one, when, and what voltages and currents then"
                    + " remain, arcs included; the pair at the cable end is given with the arcs too. A gap strikes at its"
                    + " lasting strength, without time lag, which is the earliest moment at which it can; the volt-time"
                    + " row is the time by the published curve, and where it is missing the gap holds by that curve and"
                    + " the prospective values may arise after all.";

    private static final String TERMINATIONS =
            "Open and shorted are the pair: the voltage while nothing conducts, the current when the core is closed to"
                    + " chassis at both ends. Let-through, current, charge and energy are solved with every declared"
                    + " protector of the core in its loop and the end without one conducting; that is the heaviest duty."
                    + " A protector does not relieve the other end: while that end stays open, the open voltage stands"
                    + " there. Core to core: one core conducts, its neighbour is still open. Leads of the protectors are"
                    + " not counted.";

    /**
     * A section of results.
     *
     * @param id anchor
     * @param title heading
     * @param lead what the reader has to know first
     * @param prefixes beginnings of the ids that belong here
     */
    private record Topic(String id, String title, String lead, List<String> prefixes) {}

    private static final List<Topic> TOPICS = List.of(
            new Topic(
                    "soil",
                    "Soil",
                    "The model of the ground that every electrode result rests on. Season acts on a top depth only.",
                    List.of("soil.")),
            new Topic(
                    "electrode",
                    "Earth electrodes",
                    "Resistance to remote earth of each electrode alone, the others floating, and the mutual"
                            + " resistances that tell how separate \"separate\" is. Low and high follow the bounds of"
                            + " the soil and its season.",
                    List.of("electrode.")),
            new Topic(
                    "fault",
                    "Earth fault and clearing",
                    "Each current is solved with the electrode in the loop and stands beside the clearing time that"
                            + " belongs to it. Currents are r.m.s.",
                    List.of("fault.", "line.")),
            new Topic(
                    "voltages",
                    "Earth potential rise, touch, step and transfer",
                    "Potentials are to remote earth, r.m.s., at power frequency. The earth potential rise is not a"
                            + " touch voltage; touch voltages are prospective and stand beside the permissible value.",
                    List.of(
                            "epr.",
                            "criteria.",
                            "touch.",
                            "step.",
                            "exposure.",
                            "transfer.",
                            "safety.",
                            "cable.power-frequency.")),
            new Topic(
                    "conductors",
                    "Conductors and joints",
                    "Heating adds every shot up to lockout without cooling; the history with cooling is information.",
                    List.of("conductor.")),
            new Topic(
                    "surge",
                    "Surge path",
                    "Peak values. For each end of the control cable the open-circuit voltage and the short-circuit"
                            + " current belong together; a voltage alone tells nothing. Each peak is split into its"
                            + " resistive and its inductive part at its own time; the hand value is M·dI/dt + R·I.",
                    List.of("circuit.", "surge.", "cable.")),
            new Topic(
                    "surge-risk",
                    "How often, and what if",
                    "Information; no verdict rests on it. How many flashes a year bring an end of a core more than it"
                            + " bears, from the flash density, the line's exposure and the published statistics of strokes;"
                            + " low and high hold the bounds of the flash density and 95 % of the scatter of the draw. Then"
                            + " the full circuit again with one input changed.",
                    List.of("surge.risk.", "surge.stroke.", "surge.variant.", "surge.images.")));

    private ResultSections() {}

    static List<Block> of(ReportInput input, References references) {
        List<Block> blocks = new ArrayList<>();
        List<Result> rest = new ArrayList<>();
        List<Result> broken = new ArrayList<>();
        for (Result result : input.results().results()) {
            if (result.id().startsWith(SharingSection.PREFIX)) {
                continue;
            }
            (result.circumstances().keys().containsKey("broken") ? broken : rest).add(result);
        }
        List<Curve> curves = new ArrayList<>(input.results().curves());
        curves.removeIf(c -> c.id().startsWith(SharingSection.PREFIX));
        for (Topic topic : TOPICS) {
            List<Result> mine =
                    rest.stream().filter(r -> belongs(r.id(), topic)).toList();
            rest.removeIf(r -> belongs(r.id(), topic));
            blocks.add(section(topic, mine, input, curves, references));
        }
        blocks.add(SharingSection.of(input, references));
        blocks.add(contingencies(input, broken, references));
        if (!rest.isEmpty() || !curves.isEmpty()) {
            List<Block> further = new ArrayList<>();
            if (!rest.isEmpty()) {
                further.add(ResultTable.byBound("further-results", "Further results", rest, references));
            }
            further.addAll(figures(curves));
            if (!further.isEmpty()) {
                blocks.add(new Block.Section("further", 2, "Further results", further));
            }
        }
        blocks.add(findings(input.findings(), references));
        return blocks;
    }

    /** Whether an id belongs to a topic: the one with the longest beginning that fits. */
    private static boolean belongs(String id, Topic topic) {
        int most = TOPICS.stream().mapToInt(each -> fits(id, each)).max().orElse(0);
        return most > 0 && fits(id, topic) == most;
    }

    private static int fits(String id, Topic topic) {
        return topic.prefixes().stream()
                .filter(id::startsWith)
                .mapToInt(String::length)
                .max()
                .orElse(0);
    }

    private static Block section(
            Topic topic, List<Result> mine, ReportInput input, List<Curve> curves, References references) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(topic.lead()));
        if (topic.id().equals("soil")) {
            input.results().notes().stream()
                    .filter(note -> note.startsWith("soil "))
                    .forEach(note -> blocks.add(new Block.Paragraph(sentence(note))));
        }
        if (topic.id().equals("surge")) {
            List<Block> terminations = TerminationTable.of(input);
            if (!terminations.isEmpty()) {
                blocks.addAll(terminations);
                blocks.add(new Block.Paragraph(TERMINATIONS));
            }
        }
        if (topic.id().equals("conductors")) {
            blocks.addAll(HeatingTable.of(input.findings(), input.results()));
            List<Result> bounded = mine.stream()
                    .filter(r -> IN_BOUNDS.stream().anyMatch(r.id()::endsWith))
                    .toList();
            if (!bounded.isEmpty()) {
                blocks.add(
                        ResultTable.byBound("conductors-results", "Conductors over the bounds", bounded, references));
            }
        } else {
            tables(topic, mine, references, blocks);
        }
        if (mine.isEmpty()) {
            blocks.add(new Block.Paragraph("There is no result of this kind."));
        } else {
            blocks.add(new Block.Bullets(ResultTable.models(mine, references)));
        }
        List<Curve> here = curves.stream().filter(c -> belongs(c.id(), topic)).toList();
        curves.removeAll(here);
        blocks.addAll(figures(here));
        worked(mine, references, blocks);
        gaps(input, topic, blocks);
        return new Block.Section(topic.id(), 2, topic.title(), blocks);
    }

    /** Results with an arrangement stand side by side, one table for each remaining case; the rest by bound. */
    private static void tables(Topic topic, List<Result> mine, References references, List<Block> blocks) {
        List<Result> plain = new ArrayList<>();
        Map<String, List<Result>> cases = new LinkedHashMap<>();
        List<Result> stroke = new ArrayList<>();
        List<Result> induced = new ArrayList<>();
        List<Result> variants = new ArrayList<>();
        List<Result> risk = new ArrayList<>();
        List<Result> images = new ArrayList<>();
        for (Result result : mine) {
            String entered = result.circumstances().keys().getOrDefault("entry", "");
            if (entered.equals(Case.LINE_CONDUCTOR)) {
                stroke.add(result);
            } else if (entered.equals(Case.INDUCED)) {
                induced.add(result);
            } else if (VariantTable.isImages(result)) {
                images.add(result);
            } else if (RiskTable.shows(result.id())) {
                risk.add(result);
            } else if (result.id().startsWith("surge.variant.")) {
                variants.add(result);
            } else if (result.circumstances().keys().containsKey("arrangement")) {
                cases.computeIfAbsent(
                                CaseWords.without(result.circumstances(), "arrangement"), key -> new ArrayList<>())
                        .add(result);
            } else {
                plain.add(result);
            }
        }
        if (mine.stream().anyMatch(r -> r.id().startsWith(ResultTable.FLASHOVER) && isArranged(r))) {
            blocks.add(new Block.Paragraph(PROSPECTIVE));
        }
        int number = 0;
        List<Result> beyond = new ArrayList<>();
        for (Map.Entry<String, List<Result>> entry : cases.entrySet()) {
            number++;
            if (number <= MOST_CASES) {
                blocks.add(ResultTable.sideBySide(
                        topic.id() + "-case-" + number,
                        "Arrangements side by side" + (entry.getKey().isEmpty() ? "" : ": " + entry.getKey()),
                        entry.getValue(),
                        references));
            } else {
                beyond.addAll(entry.getValue());
            }
        }
        if (!plain.isEmpty()) {
            blocks.add(ResultTable.byBound(
                    topic.id() + "-results",
                    topic.title() + (cases.isEmpty() ? "" : ": results that belong to no particular arrangement"),
                    plain,
                    references));
        }
        if (!stroke.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A stroke to a phase conductor, as the line, its arresters and its neighbours let it in, for the"
                            + " arrangement at hand. Information beside the standard current into the tank; no verdict"
                            + " rests on it. The hand value holds until reflections return."));
            blocks.add(EntryTable.of("surge-entry", "Stroke to the line", stroke, references));
        }
        if (!induced.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A median first stroke to the ground beside the line: the voltage that it induces in all phases, and"
                            + " what the arresters pass of it into the tank. Information; no verdict rests on it. The hand"
                            + " value holds for a current that jumps to its peak and is the most there can be."));
            blocks.add(EntryTable.of("surge-induced", "Stroke beside the line", induced, references));
        }
        blocks.addAll(RiskTable.of(risk, references));
        if (!variants.isEmpty()) {
            blocks.add(VariantTable.of("surge-variants", variants, references));
        }
        if (!images.isEmpty()) {
            blocks.add(VariantTable.images(images, references));
        }
        Block.Table moving = ResultTable.moving(
                topic.id() + "-bounds",
                "Values that move with the bounds of the inputs",
                cases.values().stream().flatMap(List::stream).toList(),
                references);
        if (!moving.rows().isEmpty()) {
            blocks.add(moving);
        }
        if (!beyond.isEmpty()) {
            blocks.add(ResultTable.byBound(
                    topic.id() + "-further", topic.title() + ": further cases", beyond, references));
        }
    }

    private static boolean isArranged(Result result) {
        return result.circumstances().keys().containsKey("arrangement")
                && !result.circumstances().keys().getOrDefault("entry", "").equals(Case.LINE_CONDUCTOR);
    }

    /** The figures of some curves; curves of one id get anchors of their own. */
    private static List<Block> figures(List<Curve> curves) {
        List<Block> figures = new ArrayList<>();
        Map<String, Integer> seen = new HashMap<>();
        for (Curve curve : curves) {
            if (curve.traces().stream().allMatch(trace -> trace.size() == 0)) {
                continue;
            }
            int number = seen.merge(curve.id(), 1, Integer::sum);
            String id = anchor(curve.id()) + (number == 1 ? "" : "-" + number);
            boolean plan = curve.id().equals(PlanView.CURVE);
            figures.add(new Block.Figure(
                    id,
                    curve.title(),
                    plan ? PlanView.words(curve) : LineChart.words(curve),
                    plan ? PlanView.of(curve, id) : LineChart.of(curve, id),
                    Optional.of(curve)));
        }
        return figures;
    }

    private static String anchor(String id) {
        StringBuilder anchor = new StringBuilder("figure-");
        id.chars().forEach(c -> anchor.append(Character.isLetterOrDigit(c) ? (char) c : '-'));
        return anchor.toString();
    }

    /** One line of working for each kind of quantity, at its first case; the others differ in their numbers only. */
    private static void worked(List<Result> results, References references, List<Block> blocks) {
        Map<String, Result> first = new LinkedHashMap<>();
        for (Result result : results) {
            if (result.worked().isPresent()) {
                first.putIfAbsent(result.worked().get().formula(), result);
            }
        }
        first.values().forEach(result -> {
            String circumstances = CaseWords.of(result.circumstances());
            blocks.add(new Block.Working(
                    ResultWords.of(result.id()) + (circumstances.isEmpty() ? "" : ", " + circumstances) + ", at "
                            + result.at(),
                    result.worked().orElseThrow(),
                    result.source().text() + " " + references.cite(result.source())));
        });
    }

    private static void gaps(ReportInput input, Topic topic, List<Block> blocks) {
        List<String> lines = new ArrayList<>();
        for (Gap gap : input.results().gaps()) {
            if (belongs(gap.id() + ".", topic)) {
                lines.add(words(gap));
            }
        }
        if (!lines.isEmpty()) {
            blocks.add(new Block.Paragraph("Could not be computed:"));
            blocks.add(new Block.Bullets(lines));
        }
    }

    /** A reason with the full stop that it may lack. */
    static String sentence(String reason) {
        return reason.endsWith(".") || reason.isEmpty() ? reason : reason + ".";
    }

    static String words(Gap gap) {
        String circumstances = CaseWords.of(gap.circumstances());
        return gap.id() + (circumstances.isEmpty() ? "" : " (" + circumstances + ")") + ": " + sentence(gap.reason())
                + (gap.missingKeys().isEmpty() ? "" : " Fill in: " + String.join(", ", gap.missingKeys()) + ".");
    }

    private static Block contingencies(ReportInput input, List<Result> broken, References references) {
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
        for (Finding finding : findings) {
            blocks.add(new Block.Paragraph(
                    finding.subject() + " – " + finding.status().text() + ". "
                            + finding.reason()
                            + (finding.advice().isBlank() ? "" : " Advice: " + finding.advice())));
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
            blocks.add(ResultTable.byBound("contingency-results", "Results with a path broken", powered, references));
        }
        if (!broken.isEmpty()) {
            blocks.add(new Block.Bullets(ResultTable.models(broken, references)));
        }
        return new Block.Section("contingencies", 2, "Contingencies", blocks);
    }

    private static Block findings(List<Finding> findings, References references) {
        List<Block> sections = new ArrayList<>();
        for (Finding.Group group : Finding.Group.values()) {
            List<List<String>> rows = new ArrayList<>();
            findings.stream()
                    .filter(f -> f.group() == group)
                    .forEach(f -> rows.add(List.of(
                            f.id(),
                            f.status().text(),
                            f.subject() + ": " + sentence(f.reason())
                                    + (f.advice().isBlank() ? "" : " Advice: " + sentence(f.advice())),
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
                            f.id() + ": " + f.subject(), f.worked().orElseThrow(), FrontSections.governing(f))));
            sections.add(new Block.Section(id, 3, Severity.words(group), blocks));
        }
        return new Block.Section("findings", 2, "All findings", sections);
    }
}
