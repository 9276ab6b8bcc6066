package earthing.study;

import earthing.fault.line.EarthReturn;
import earthing.fault.line.LineConductor;
import earthing.fault.line.PoleEarthChain;
import earthing.fault.line.SequenceImpedances;
import earthing.fault.line.SeriesImpedance;
import earthing.quantity.Source;
import earthing.site.EarthReturnForm;
import earthing.site.LineWire;
import earthing.site.SourceLine;
import earthing.site.WireUse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * Impedances per length of a line from the places of its conductors, in one form of the earth return.
 *
 * @param form the form
 * @param phases sequence impedances of the phases, return wires not reduced into them [Ω/m]; of a single wire its self
 *     impedance as positive sequence
 * @param wire the return wires as one, if the line has any
 * @param pair neutral and shield wire apart, if the line has both
 */
record LineConstants(EarthReturnForm form, SequenceImpedances phases, Optional<Wire> wire, Optional<Pair> pair) {

    private static final String KEY = "system.source-line";
    private static final String BONDED = "return wires";
    private static final Source SOLID_WIRE = Source.publication(
            "textbooks of line constants", "solid round wire, r e^(-1/4)", Source.Status.FROM_MEMORY);
    private static final Source FORM =
            Source.tool("Carson's series is summed to convergence and is the more exact form at power frequency");

    /**
     * The return wires as one.
     *
     * @param self series impedance with earth return [Ω/m]
     * @param mutual mean mutual impedance to the phases [Ω/m]
     */
    record Wire(Complex self, Complex mutual) {

        /** What is left to the soil by induction alone, far from both ends. */
        Complex reductionFactor() {
            return PoleEarthChain.reductionFactor(mutual, self);
        }
    }

    /**
     * Neutral and shield wire.
     *
     * @param neutral the neutral
     * @param shield the shield wire
     * @param between their mutual impedance [Ω/m]
     */
    record Pair(Wire neutral, Wire shield, Complex between) {}

    /** The form that the results use. */
    static EarthReturnForm chosen(SourceLine line, Inputs in) {
        if (line.earthReturn() == null) {
            in.choice(KEY + ".earth-return", "carson-series", FORM);
            return EarthReturnForm.CARSON_SERIES;
        }
        return line.earthReturn();
    }

    static LineConstants of(SourceLine line, EarthReturnForm form, double frequency, Inputs in) throws MissingInput {
        double resistivity = in.need(line.earthResistivity(), KEY + ".earth-resistivity");
        List<LineConductor> conductors = new ArrayList<>();
        List<String> phases = new ArrayList<>();
        List<String> returns = new ArrayList<>();
        List<String> neutrals = new ArrayList<>();
        List<String> shields = new ArrayList<>();
        for (LineWire wire : line.conductors()) {
            conductors.add(conductor(wire, in));
            (wire.use() == WireUse.PHASE ? phases : returns).add(wire.name());
            if (wire.use() == WireUse.NEUTRAL || wire.use() == WireUse.SHIELD_WIRE) {
                (wire.use() == WireUse.NEUTRAL ? neutrals : shields).add(wire.name());
            }
        }
        EarthReturn earth = switch (form) {
            case CARSON_SERIES -> EarthReturn.CARSON_SERIES;
            case COMPLEX_DEPTH -> EarthReturn.COMPLEX_DEPTH;
        };
        try {
            SeriesImpedance series = SeriesImpedance.of(conductors, earth, frequency, resistivity);
            Optional<Pair> pair = neutrals.isEmpty() || shields.isEmpty() || phases.size() == 1
                    ? Optional.empty()
                    : Optional.of(pair(series.bonded(neutrals, "neutrals").bonded(shields, "shield wires"), phases));
            if (!returns.isEmpty()) {
                series = series.bonded(returns, BONDED);
            }
            SequenceImpedances sequence;
            Complex mutual = Complex.ZERO;
            if (phases.size() == 1) {
                Complex self = series.at(phases.get(0), phases.get(0));
                sequence = SequenceImpedances.of(self, self);
            } else {
                sequence = series.sequence(phases.get(0), phases.get(1), phases.get(2));
                mutual = returns.isEmpty()
                        ? Complex.ZERO
                        : series.meanMutual(phases.get(0), phases.get(1), phases.get(2), BONDED);
            }
            return new LineConstants(
                    form,
                    sequence,
                    returns.isEmpty() ? Optional.empty() : Optional.of(new Wire(series.at(BONDED, BONDED), mutual)),
                    pair);
        } catch (IllegalArgumentException impossible) {
            throw new MissingInput(
                    "the impedance of the line cannot be computed: " + impossible.getMessage(), KEY + ".conductors");
        }
    }

    private static Pair pair(SeriesImpedance series, List<String> phases) {
        return new Pair(
                apart(series, phases, "neutrals"),
                apart(series, phases, "shield wires"),
                series.at("neutrals", "shield wires"));
    }

    private static Wire apart(SeriesImpedance series, List<String> phases, String wire) {
        return new Wire(series.at(wire, wire), series.meanMutual(phases.get(0), phases.get(1), phases.get(2), wire));
    }

    private static LineConductor conductor(LineWire wire, Inputs in) throws MissingInput {
        String key = KEY + ".conductors";
        double radius = in.need(wire.diameter(), key + ".diameter") / 2;
        double mean;
        if (wire.geometricMeanRadius() == null) {
            in.choice(key + ".geometric-mean-radius", wire.name() + ": 0.7788 times its radius", SOLID_WIRE);
            mean = radius * Math.exp(-0.25);
        } else {
            mean = in.need(wire.geometricMeanRadius(), key + ".geometric-mean-radius");
        }
        return new LineConductor(
                wire.name(),
                in.need(wire.offset(), key + ".offset"),
                in.need(wire.height(), key + ".height"),
                in.need(wire.resistance(), key + ".resistance"),
                mean,
                radius);
    }

    /** The numbers of this form, of the whole line, and by how much another form differs. */
    List<Result> results(double length, Optional<LineConstants> other) {
        List<Result> results = new ArrayList<>();
        String word = form.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        Source source = form == EarthReturnForm.CARSON_SERIES
                ? EarthReturn.CARSON_SERIES.source()
                : EarthReturn.COMPLEX_DEPTH.source();
        List<Quantity> mine = quantities();
        for (Quantity quantity : mine) {
            results.add(Result.of(
                    "line." + word + "." + quantity.name(),
                    Case.NONE,
                    "nominal",
                    quantity.perLength() ? quantity.value() * length : quantity.value(),
                    quantity.perLength() ? "ohm" : "",
                    quantity.perLength() ? "whole line, from the places of its conductors" : "far from both ends",
                    source));
        }
        other.ifPresent(o -> {
            List<Quantity> theirs = o.quantities();
            for (int i = 0; i < mine.size(); i++) {
                double base = mine.get(i).value();
                if (base != 0) {
                    results.add(Result.of(
                            "line.difference." + mine.get(i).name(),
                            Case.NONE,
                            "nominal",
                            theirs.get(i).value() / base - 1,
                            "",
                            "complex depth over Carson's series, less one",
                            EarthReturn.COMPLEX_DEPTH.source()));
                }
            }
        });
        return results;
    }

    private record Quantity(String name, double value, boolean perLength) {}

    private List<Quantity> quantities() {
        List<Quantity> all = new ArrayList<>(List.of(
                new Quantity("positive-sequence-resistance", phases.positive().getReal(), true),
                new Quantity("positive-sequence-reactance", phases.positive().getImaginary(), true),
                new Quantity("zero-sequence-resistance", phases.zero().getReal(), true),
                new Quantity("zero-sequence-reactance", phases.zero().getImaginary(), true)));
        wire.ifPresent(w -> {
            all.add(new Quantity("return-wire-resistance", w.self().getReal(), true));
            all.add(new Quantity("return-wire-reactance", w.self().getImaginary(), true));
            all.add(new Quantity("mutual-resistance", w.mutual().getReal(), true));
            all.add(new Quantity("mutual-reactance", w.mutual().getImaginary(), true));
            all.add(new Quantity("reduction-factor", w.reductionFactor().abs(), false));
        });
        pair.ifPresent(p -> {
            all.add(new Quantity(
                    "neutral-reduction-factor", p.neutral().reductionFactor().abs(), false));
            all.add(new Quantity(
                    "shield-wire-reduction-factor", p.shield().reductionFactor().abs(), false));
            all.add(new Quantity(
                    "neutral-to-shield-wire-resistance", p.between().getReal(), true));
            all.add(new Quantity("neutral-to-shield-wire-reactance", p.between().getImaginary(), true));
        });
        return List.copyOf(all);
    }
}
