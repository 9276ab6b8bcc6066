package earthing.study;

import earthing.network.KirchhoffCheck;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Turns what one case of the surge gave into results with stable ids. */
final class SurgeEmission {

    private static final Source CIRCUIT =
            Source.tool("partial-inductance circuit in the time domain, docs/theory/surge-path.md");
    private static final String INTO_TANK = "circuit of the pole, current into the tank";
    private static final String PROSPECTIVE = "; prospective, a gap flashes over first";
    private static final String AFTER = ", with the arcs that strike on the way";

    private final List<String> cores;
    private final Case circumstances;
    private final String at;
    private final List<Result> results;
    private final Set<String> notes;
    private final String plain;
    private final Source source;
    private String model;

    SurgeEmission(List<String> cores, Case circumstances, Bound bound, List<Result> results, Set<String> notes) {
        this(cores, circumstances, word(bound), results, notes, INTO_TANK, CIRCUIT);
    }

    /** The standard case in ground beside the bounds. */
    SurgeEmission(List<String> cores, Case circumstances, String at, List<Result> results, Set<String> notes) {
        this(cores, circumstances, at, results, notes, INTO_TANK, CIRCUIT);
    }

    private static String word(Bound bound) {
        return bound.name().toLowerCase(Locale.ROOT);
    }

    /**
     * Another way in than the standard case.
     *
     * @param model the way in, in words
     * @param source where the model is described
     */
    SurgeEmission(
            List<String> cores,
            Case circumstances,
            Bound bound,
            List<Result> results,
            Set<String> notes,
            String model,
            Source source) {
        this(cores, circumstances, word(bound), results, notes, model, source);
    }

    private SurgeEmission(
            List<String> cores,
            Case circumstances,
            String at,
            List<Result> results,
            Set<String> notes,
            String model,
            Source source) {
        this.plain = model;
        this.model = model;
        this.source = source;
        this.cores = cores;
        this.circumstances = circumstances;
        this.at = at;
        this.results = results;
        this.notes = notes;
    }

    void emit(SurgeCase.Outcome outcome) {
        model = outcome.flashover().isPresent() ? plain + PROSPECTIVE : plain;
        for (String core : cores) {
            for (String end : List.of("tank", "cubicle")) {
                String id = "surge.cable-end." + core + "." + end + ".";
                Result open = number(id + "open-voltage", outcome.open().voltage(), "V");
                results.add(outcome.open()
                        .working()
                        .map(hand -> open.withHandValue(hand.value()).withWorked(hand))
                        .orElse(open));
                add(id + "time-of-peak", outcome.open().time(), "s");
                add(id + "resistive", outcome.open().resistive(), "V");
                add(id + "inductive", outcome.open().inductive(), "V");
                add(id + "short-circuit-current", outcome.shortCurrent(), "A");
                add(id + "charge", outcome.shortCharge(), "C");
            }
        }
        add("surge.tank.peak", outcome.tank(), "V");
        add("surge.cubicle.peak", outcome.cubicle(), "V");
        add("surge.along-lead.peak", outcome.alongLead(), "V");
        outcome.members()
                .forEach((member, current) -> add("surge." + EarthPaths.key(member) + ".current.peak", current, "A"));
        recheck(outcome.recheck());
        outcome.screen().ifPresent(this::screen);
        outcome.gaps().forEach(this::gap);
        outcome.flashover().ifPresent(this::flashover);
    }

    /** With a path broken: the pair, what the screen bears, the potentials, the gaps and what strikes first. */
    void emitBroken(SurgeCase.Outcome outcome) {
        model = outcome.flashover().isPresent() ? plain + PROSPECTIVE : plain;
        for (String core : cores) {
            for (String end : List.of("tank", "cubicle")) {
                String id = "surge.cable-end." + core + "." + end + ".";
                add(id + "open-voltage", outcome.open().voltage(), "V");
                add(id + "short-circuit-current", outcome.shortCurrent(), "A");
                add(id + "charge", outcome.shortCharge(), "C");
            }
        }
        add("surge.tank.peak", outcome.tank(), "V");
        add("surge.cubicle.peak", outcome.cubicle(), "V");
        outcome.members()
                .forEach((member, current) -> add("surge." + EarthPaths.key(member) + ".current.peak", current, "A"));
        outcome.screen().ifPresent(screen -> {
            add("surge.screen.current.peak", screen.peak(), "A");
            add("surge.screen.share", screen.share(), "");
            add("surge.screen.final-temperature", screen.temperature(), "degC");
        });
        outcome.gaps().forEach(this::gap);
        note(outcome.recheck());
        outcome.flashover().ifPresent(flashover -> {
            model = plain + AFTER;
            arcs(flashover);
            pairAfter(flashover);
        });
    }

    /** The laws themselves, checked by code that shares nothing with the solver. */
    private void recheck(KirchhoffCheck check) {
        add("surge.energy.residual", check.energyResidual(), "");
        add("surge.node.residual", check.nodeResidual(), "");
        note(check);
    }

    private void note(KirchhoffCheck check) {
        if (!check.within(SurgeStudy.RECHECK_BOUND)) {
            notes.add("the re-check of the circuit by Kirchhoff's laws and energy leaves " + check.worst() + " (for "
                    + circumstances.text() + ")");
        }
    }

    private void gap(SurgeCase.Stress stress) {
        PoleGap gap = stress.gap();
        results.add(number("surge.gap." + gap.key() + ".voltage", stress.prospective(), "V")
                .withWorked(worked(gap)));
        results.add(Result.of(
                "surge.gap." + gap.key() + ".strength",
                circumstances,
                at,
                gap.strength(),
                "V",
                gap.words(),
                gap.source()));
    }

    private static Worked worked(PoleGap gap) {
        return Worked.of("U_b", "E * s")
                .with("E", gap.perMetre(), "V/m")
                .with("s", gap.distance(), "m")
                .gives(gap.strength(), "V");
    }

    private void screen(SurgeCase.ScreenCurrent screen) {
        add("surge.screen.current.peak", screen.peak(), "A");
        add("surge.screen.share", screen.share(), "");
        add("surge.screen.bond-voltage", screen.bondVoltage(), "V");
        add("surge.screen.charge", screen.charge(), "C");
        results.add(number("surge.screen.final-temperature", screen.temperature(), "degC")
                .withWorked(screen.working()));
        results.add(Result.of(
                "surge.screen.temperature-limit",
                circumstances,
                at,
                SurgeCase.SCREEN_LIMIT,
                "degC",
                "temperature of the screen after one surge, adiabatic",
                SurgeCase.SCREEN_LIMIT_SOURCE));
    }

    /** What strikes first, and what remains. */
    private void flashover(Flashover flashover) {
        model = plain + AFTER;
        arcs(flashover);
        pairAfter(flashover);
        add("surge.flashover.tank.peak", flashover.tank(), "V");
        add("surge.flashover.cubicle.peak", flashover.cubicle(), "V");
        flashover
                .members()
                .forEach((member, current) ->
                        add("surge.flashover." + EarthPaths.key(member) + ".current.peak", current, "A"));
        note(flashover.recheck());
    }

    private void arcs(Flashover flashover) {
        notes.add("a gap strikes at its lasting strength, without time lag: the earliest moment at which it can; the"
                + " volt-time curve tells whether so short a stress suffices");
        for (Flashover.Arc arc : flashover.arcs()) {
            String id = "surge.flashover." + arc.gap().key() + ".";
            String lag = arc.gap().air() && arc.timeLag().isEmpty() ? "; by the volt-time curve the gap holds" : "";
            results.add(Result.of(id + "time", circumstances, at, arc.time(), "s", model + lag, source));
            results.add(number(id + "voltage", arc.voltage(), "V").withWorked(worked(arc.gap())));
            if (arc.gap().air() && arc.timeLag().isPresent()) {
                results.add(Result.of(
                        id + "volt-time",
                        circumstances,
                        at,
                        arc.timeLag().getAsDouble(),
                        "s",
                        "time of the same breakdown by the volt-time curve"
                                + (arc.lagValid() ? "" : ", outside its range of 0.5 us to 16 us"),
                        PoleGap.VOLT_TIME));
            }
        }
    }

    private void pairAfter(Flashover flashover) {
        add("surge.flashover.cable-end.open-voltage", flashover.openVoltage(), "V");
        add("surge.flashover.cable-end.short-circuit-current", flashover.shortCurrent(), "A");
        add("surge.flashover.cable-end.charge", flashover.shortCharge(), "C");
    }

    private void add(String id, double value, String unit) {
        results.add(number(id, value, unit));
    }

    private Result number(String id, double value, String unit) {
        return Result.of(id, circumstances, at, value, unit, model, source);
    }
}
