package earthing.report;

import earthing.quantity.Numbers;
import earthing.report.document.Block;
import earthing.report.figure.LineChart;
import earthing.report.figure.PlanView;
import earthing.site.ControlCable;
import earthing.site.Surges;
import earthing.site.file.SiteTree;
import earthing.study.Case;
import earthing.study.Curve;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The results in the order of the physics, from the soil to the broken paths, and every finding in full. */
final class ResultSections {

    private static final Set<String> LEADING =
            Set.of("surge.tank.peak", "surge.cubicle.peak", "surge.screen.current.peak");

    /** Of the conductors' results those that are shown for every case; the rest stands at the governing one. */
    private static final List<String> IN_BOUNDS = List.of(".resistance", ".current", ".final-temperature");

    /** What the lines without a number under some tables are. */
    static final Block MODELS = new Block.Paragraph("Models and limits behind these values:");

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
                    + " there. Core to core: one core conducts, its neighbour is still open. The protectors' own leads count"
                    + " where their length is given. Over the device and through it: every declared winding and"
                    + " protector of both ends in the loop at once, an end of which nothing is known conducting.";

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
                            "cable.power-frequency.",
                            "aux-supply.")),
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

    /** Faults whose low and high values are printed; those of the others stand in the tables beside the report. */
    private static final Set<String> MAIN_FAULTS =
            Set.of("maximum", "minimum", "double-earth-fault", "double-earth-fault-minimum");

    /** Topics whose tables, figures or lines of working hold the resistance of an electrode. */
    private static final Set<String> SHOWS_RESISTANCES = Set.of("electrode", "fault", "voltages");

    private ResultSections() {}

    static List<Block> of(ReportInput input, References references) {
        List<Block> blocks = new ArrayList<>();
        List<Result> rest = new ArrayList<>();
        List<Result> broken = new ArrayList<>();
        for (Result result : input.results().results()) {
            if (result.id().startsWith(SharingSection.PREFIX)
                    || SensitivitySection.belongs(result.id())
                    || RecheckSection.belongs(result.id())
                    || ConvergenceTable.belongs(result.id())) {
                continue;
            }
            (result.circumstances().keys().containsKey("broken") ? broken : rest).add(result);
        }
        List<Curve> curves = new ArrayList<>();
        input.results()
                .curves()
                .forEach(curve -> curves.add(
                        curve.id().equals(WaveformLimits.CURVE) ? WaveformLimits.added(curve, input) : curve));
        curves.removeIf(c -> c.id().startsWith(SharingSection.PREFIX) || SensitivitySection.belongs(c.id()));
        Map<String, List<Result>> byTopic = new HashMap<>();
        rest.forEach(r -> byTopic.computeIfAbsent(topicOf(r.id()), topic -> new ArrayList<>())
                .add(r));
        for (Topic topic : TOPICS) {
            blocks.add(section(topic, byTopic.getOrDefault(topic.id(), List.of()), input, curves, references));
        }
        rest = byTopic.getOrDefault("", List.of());
        blocks.add(SharingSection.of(input, references));
        blocks.add(FindingSections.contingencies(input, broken, references));
        blocks.add(RemedyBlocks.section(input));
        blocks.add(SensitivitySection.of(input));
        blocks.addAll(CasesSection.of(input, bondOf(input)));
        blocks.addAll(RecheckSection.of(input));
        if (!rest.isEmpty() || !curves.isEmpty()) {
            List<Block> further = new ArrayList<>();
            if (!rest.isEmpty()) {
                further.addAll(ResultTable.byCase("further-results", "Further results", rest, references));
            }
            further.addAll(figures(curves));
            if (!further.isEmpty()) {
                blocks.add(new Block.Section("further", 2, "Further results", further));
            }
        }
        blocks.add(FindingSections.all(input, references));
        return blocks;
    }

    /** Anchor of the topic that an id belongs to, the one with the longest beginning that fits; empty for none. */
    private static String topicOf(String id) {
        int longest = 0;
        String found = "";
        for (Topic topic : TOPICS) {
            for (String prefix : topic.prefixes()) {
                if (prefix.length() > longest && id.startsWith(prefix)) {
                    longest = prefix.length();
                    found = topic.id();
                }
            }
        }
        return found;
    }

    private static Block section(
            Topic topic, List<Result> mine, ReportInput input, List<Curve> curves, References references) {
        List<Block> blocks = new ArrayList<>();
        boolean surge = topic.id().equals("surge");
        if (!surge) {
            blocks.add(new Block.Paragraph(topic.lead()));
        }
        if (topic.id().equals("soil")) {
            input.results().notes().stream()
                    .filter(note -> note.startsWith("soil "))
                    .forEach(note -> blocks.add(new Block.Paragraph(capital(sentence(note)))));
        }
        if (surge) {
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
            List<Result> screen = bounded.stream()
                    .filter(r -> r.circumstances().keys().containsKey("screen-bond"))
                    .toList();
            List<Result> rest =
                    bounded.stream().filter(r -> !screen.contains(r)).toList();
            List<Result> atBounds = rest.stream()
                    .filter(r -> ResultTable.BOUNDS.contains(r.at()))
                    .toList();
            blocks.addAll(ResultTable.across(
                    "conductors-results", "Conductors at every fault", atBounds, "fault", references));
            if (atBounds.size() < rest.size()) {
                blocks.add(
                        new Block.Paragraph(
                                "Points of the sweeps between the bounds stand above where they govern, and"
                                        + " all of them in the tables and in the JSON that this program writes beside the report."));
            }
            Map<Case, List<Result>> cases = new LinkedHashMap<>();
            screen.forEach(
                    r -> cases.computeIfAbsent(r.circumstances().without("arrangement"), key -> new ArrayList<>())
                            .add(r));
            cases.forEach((circumstances, its) -> blocks.add(ResultTable.sideBySide(
                    "conductors-screen-" + (blocks.size() + 1),
                    "The screen of the cable: " + CaseWords.of(circumstances),
                    its,
                    references)));
        } else {
            tables(input, topic, mine, bondOf(input), references, blocks);
        }
        if (mine.isEmpty()) {
            blocks.add(new Block.Paragraph("There is no result of this kind."));
        } else {
            blocks.add(MODELS);
            blocks.add(new Block.Bullets(ResultTable.models(mine, references)));
        }
        if (SHOWS_RESISTANCES.contains(topic.id())) {
            blocks.addAll(ElectrodeBasis.of(
                    input, topic.id().equals("electrode") ? ElectrodeBasis.EVERY_BOUND : ElectrodeBasis.NOMINAL));
        }
        if (topic.id().equals("electrode")) {
            blocks.addAll(ConvergenceTable.of(input));
        }
        List<Curve> here =
                curves.stream().filter(c -> topicOf(c.id()).equals(topic.id())).toList();
        curves.removeAll(here);
        blocks.addAll(figures(here));
        worked(mine, references, blocks);
        gaps(input, topic, blocks);
        if (surge) {
            List<Block> inShort = new ArrayList<>(List.of(new Block.Paragraph(topic.lead())));
            inShort.addAll(SurgeSummary.of(input, bondOf(input)));
            inShort.add(new Block.Section("surge-details", 3, "The surge path in detail", blocks));
            return new Block.Section(topic.id(), 2, topic.title(), inShort);
        }
        return new Block.Section(topic.id(), 2, topic.title(), blocks);
    }

    /** Results with an arrangement stand side by side, one table for each remaining case; the rest by bound. */
    private static void tables(
            ReportInput input,
            Topic topic,
            List<Result> mine,
            String ownBond,
            References references,
            List<Block> blocks) {
        List<Result> plain = new ArrayList<>();
        Map<String, List<Result>> cases = new LinkedHashMap<>();
        List<Result> stroke = new ArrayList<>();
        List<Result> induced = new ArrayList<>();
        List<Result> pole = new ArrayList<>();
        List<Result> variants = new ArrayList<>();
        List<Result> overvoltages = new ArrayList<>();
        List<Result> risk = new ArrayList<>();
        List<Result> images = new ArrayList<>();
        for (Result result : mine) {
            String entered = result.circumstances().keys().getOrDefault("entry", "");
            if (entered.equals(Case.LINE_CONDUCTOR)) {
                stroke.add(result);
            } else if (entered.equals(Case.INDUCED)) {
                induced.add(result);
            } else if (entered.equals(Case.POLE)) {
                pole.add(result);
            } else if (VariantTable.isImages(result)) {
                images.add(result);
            } else if (RiskTable.shows(result.id())) {
                risk.add(result);
            } else if (result.id().startsWith("surge.variant.")) {
                variants.add(result);
            } else if (result.id().startsWith(OvervoltageTable.ID)) {
                overvoltages.add(result);
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
        boolean shortened = false;
        List<Result> faults = onlyOwn(cases);
        if (!faults.isEmpty()) {
            blocks.addAll(FaultTable.of(topic.id() + "-faults", faults, references));
        }
        for (Map.Entry<String, List<Result>> entry : cases.entrySet()) {
            number++;
            List<Result> all = entry.getValue();
            List<Result> shown = ownBond.isEmpty() || isOf(all.get(0), ownBond)
                    ? all
                    : all.stream().filter(r -> isLeading(r.id())).toList();
            shortened |= shown.size() < all.size();
            if (!shown.isEmpty()) {
                blocks.add(ResultTable.sideBySide(
                        topic.id() + "-case-" + number,
                        "Arrangements side by side" + (entry.getKey().isEmpty() ? "" : ": " + entry.getKey()),
                        shown,
                        references));
            }
        }
        if (shortened) {
            blocks.add(new Block.Paragraph("Of the screen bonds that the site does not have only the voltages and the"
                    + " currents at the ends of the cable, the potentials and the gaps are printed; every other value"
                    + " stands in the tables and in the JSON that this program writes beside the report."));
        }
        residuals(mine, blocks);
        List<Result> line =
                plain.stream().filter(r -> r.id().startsWith("line.")).toList();
        plain.removeAll(line);
        blocks.addAll(FaultTable.line(line, references));
        if (!plain.isEmpty()) {
            blocks.addAll(ResultTable.byCase(
                    topic.id() + "-results",
                    topic.title() + (cases.isEmpty() ? "" : ": results that belong to no particular arrangement"),
                    plain,
                    references));
        }
        if (!overvoltages.isEmpty()) {
            blocks.add(OvervoltageTable.of(overvoltages, references));
        }
        if (!stroke.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A stroke to a phase conductor, as the line, its arresters and its neighbours let it in, for the"
                            + " arrangement at hand. Information beside the standard current into the tank; no verdict"
                            + " rests on it. The hand value holds until reflections return."));
            blocks.add(EntryTable.of(
                    "surge-entry",
                    "Stroke to the line, " + SurgeSummary.current(input.site().surges()) + " " + Surges.STANDARD_WAVE,
                    stroke,
                    references));
        }
        if (!induced.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A median first stroke to the ground beside the line: the voltage that it induces in all phases, and"
                            + " what the arresters pass of it into the tank. Information; no verdict rests on it. The hand"
                            + " value holds for a current that jumps to its peak and is the most there can be."));
            blocks.add(
                    EntryTable.of("surge-induced", "Stroke beside the line, median first stroke", induced, references));
        }
        if (!pole.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A stroke to the pole itself, for the arrangement at hand: to the metal at its top (on wood the highest"
                            + " earthed metal), or to the antenna, from where it comes down the feeder to the cubicle and by"
                            + " the tee to the main earth. The tank rises first, and arresters conduct backwards into the"
                            + " line. Information; no verdict rests on it."));
            Map<String, List<Result>> strikes = new LinkedHashMap<>();
            pole.forEach(r -> strikes.computeIfAbsent(
                            r.circumstances().keys().getOrDefault("strike", ""), key -> new ArrayList<>())
                    .add(r));
            strikes.forEach((strike, its) -> blocks.add(EntryTable.of(
                    "surge-pole-" + strike,
                    "Stroke to the " + (strike.equals("antenna") ? strike : "top of the pole") + ", "
                            + SurgeSummary.current(input.site().surges()),
                    its,
                    references)));
        }
        blocks.addAll(RiskTable.of(risk, references));
        if (!variants.isEmpty()) {
            blocks.add(VariantTable.of("surge-variants", variants, references));
        }
        if (!images.isEmpty()) {
            blocks.add(VariantTable.images(images, references));
        }
        blocks.addAll(ResultTable.moving(
                topic.id() + "-bounds",
                "Values that the bounds of the inputs move by more than 1 %",
                Stream.concat(
                                cases.values().stream().flatMap(List::stream),
                                faults.stream()
                                        .filter(r -> MAIN_FAULTS.contains(
                                                r.circumstances().keys().getOrDefault("fault", ""))))
                        .filter(r -> ownBond.isEmpty() || isOf(r, ownBond))
                        .toList(),
                references));
    }

    /** Takes out the earth faults that are known of one arrangement only: they stand beside each other. */
    private static List<Result> onlyOwn(Map<String, List<Result>> cases) {
        List<Result> own = new ArrayList<>();
        cases.values().removeIf(results -> {
            boolean one = results.stream()
                            .map(r -> r.circumstances().keys().getOrDefault("arrangement", ""))
                            .distinct()
                            .count()
                    == 1;
            if (!one || !results.get(0).circumstances().keys().containsKey("fault")) {
                return false;
            }
            own.addAll(results);
            return true;
        });
        return own;
    }

    /** Whether a quantity is printed of a case that is not the site's own. */
    private static boolean isLeading(String id) {
        if (id.startsWith("surge.cable-end.")) {
            return id.endsWith(".open-voltage") || id.endsWith(".short-circuit-current");
        }
        return (id.startsWith("surge.gap.") && id.endsWith(".voltage"))
                || LEADING.contains(id)
                || !id.startsWith("surge.");
    }

    /** Whether a result holds for the bond of the screen that the site has, or for any. */
    private static boolean isOf(Result result, String bond) {
        return result.circumstances().keys().getOrDefault("screen-bond", bond).equals(bond);
    }

    /** How well the circuits keep to their own laws, the worst of all cases. */
    private static void residuals(List<Result> results, List<Block> blocks) {
        double node = worst(results, "surge.node.residual");
        double energy = worst(results, "surge.energy.residual");
        if (node > 0 || energy > 0) {
            blocks.add(new Block.Paragraph("Re-check of every circuit by its own laws, the worst of all cases: the"
                    + " currents of a node add up to " + Numbers.brief(node)
                    + " of the largest of them, the energies to "
                    + Numbers.brief(energy) + " of what came in."));
        }
    }

    private static double worst(List<Result> results, String id) {
        return results.stream()
                .filter(r -> r.id().equals(id))
                .mapToDouble(Result::value)
                .map(Math::abs)
                .max()
                .orElse(0);
    }

    private static boolean isArranged(Result result) {
        return result.circumstances().keys().containsKey("arrangement")
                && !result.circumstances().isInformation();
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
                            + CaseWords.bound(result.at()),
                    result.worked().orElseThrow(),
                    result.source().text() + " " + references.cite(result.source())));
        });
    }

    private static void gaps(ReportInput input, Topic topic, List<Block> blocks) {
        List<String> lines = GapWords.of(input.results().gaps().stream()
                .filter(gap -> topicOf(gap.id() + ".").equals(topic.id()))
                .toList());
        if (!lines.isEmpty()) {
            blocks.add(new Block.Paragraph("Could not be computed:"));
            blocks.add(new Block.Bullets(lines));
        }
    }

    /** Word of the bond of the cable's screen; empty without a screen. */
    private static String bondOf(ReportInput input) {
        ControlCable cable = input.site().controlCable();
        return cable == null || cable.screen() == null
                ? ""
                : SiteTree.word(cable.screen().bond());
    }

    /** A reason with the full stop that it may lack. */
    static String sentence(String reason) {
        return reason.endsWith(".") || reason.isEmpty() ? reason : reason + ".";
    }

    /** A sentence that begins with a capital. */
    static String capital(String sentence) {
        return sentence.isEmpty() || !Character.isLowerCase(sentence.charAt(0))
                ? sentence
                : Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
