package earthing.study;

import earthing.fault.EarthFault;
import earthing.fault.EarthFaultSystem;
import earthing.fault.NeutralMethod;
import earthing.fault.PoleEarth;
import earthing.fault.SingleWireEarthReturn;
import earthing.fault.VoltageFactor;
import earthing.fault.line.CapacitiveCurrent;
import earthing.fault.line.SequenceImpedances;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.EarthReturnForm;
import earthing.site.Neutral;
import earthing.site.Site;
import earthing.site.SourceLine;
import earthing.site.SystemData;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.jspecify.annotations.Nullable;

/** The network of a site as an earth fault at the pole sees it, at its smallest and at its largest source. */
final class FaultNetwork {

    /** State of the source. */
    enum State {
        /** Smallest source, highest fault resistance, voltage factor for the smallest current. */
        MINIMUM(Bound.LOW, Bound.HIGH, VoltageFactor.MINIMUM),
        /** Largest source, lowest fault resistance, voltage factor for the largest current. */
        MAXIMUM(Bound.HIGH, Bound.LOW, VoltageFactor.MAXIMUM);

        private final Bound source;
        private final Bound faultResistance;
        private final VoltageFactor voltage;

        State(Bound source, Bound faultResistance, VoltageFactor voltage) {
            this.source = source;
            this.faultResistance = faultResistance;
            this.voltage = voltage;
        }

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        double voltageFactor() {
            return voltage.factor();
        }
    }

    private static final Source RATIO =
            Source.commonPractice("reactance over resistance at a medium-voltage busbar; with the electrode in the loop"
                    + " it has little influence");
    private static final Source ZERO_SEQUENCE = Source.commonPractice(
            "a star-delta transformer has about the same reactance in zero as in positive sequence");
    private static final Source STATION =
            Source.tool("a station's earth is small beside that of a pole; zero errs to the high current");
    private static final Source BOLTED = Source.tool("no fault resistance errs to the high current");
    private static final Source STATED =
            Source.tool("the stated fault currents flow at the driving voltage of the same state");

    private static final String THREE_PHASE = "system.three-phase-fault-current";
    private static final String SINGLE_PHASE = "system.earth-fault-current";

    private final Site site;
    private final SystemData system;
    private final Inputs in;
    private final boolean bounded;

    FaultNetwork(Site site, Inputs in) {
        this(site, in, StudyScope.AS_BUILT);
    }

    FaultNetwork(Site site, Inputs in, StudyScope scope) {
        this.site = site;
        this.system = site.system();
        this.in = in;
        this.bounded = scope != StudyScope.POINT;
    }

    /** Whether the split into sequences is known, which double faults and healthy-phase voltages ask for. */
    boolean sequencesKnown() {
        Measure level = system.threePhaseFaultCurrent();
        return level != null && level.isKnown();
    }

    /** Whether EN 50522 takes the double earth fault for heating. */
    boolean doubleFaultsCount() {
        return switch (system.neutral().method()) {
            case RESONANT, ISOLATED -> true;
            case SOLID, RESISTOR, REACTOR, MULTI_EARTHED, SINGLE_WIRE_EARTH_RETURN, UNKNOWN -> false;
        };
    }

    double frequency() throws MissingInput {
        return in.need(system.frequency(), "system.frequency");
    }

    /** Driving voltage between phases, voltage factor included [V]. */
    double lineVoltage(State state) throws MissingInput {
        in.choice(
                "",
                "driving voltage: 1.1 times nominal for the largest, 1.0 times for the smallest current",
                VoltageFactor.SOURCE);
        in.choice("", "stated fault currents: taken at the driving voltage of the same state", STATED);
        return state.voltageFactor() * in.need(system.voltage(), "system.voltage");
    }

    double faultResistance(State state) throws MissingInput {
        Measure given = system.faultResistance();
        return given == null
                ? in.orElse(null, "system.fault-resistance", 0, Dimension.RESISTANCE, BOLTED)
                : in.need(given, "system.fault-resistance", state.faultResistance);
    }

    /** The network; {@code soil} chooses among the resistances of the neutral's earths along the line. */
    EarthFaultSystem at(State state, Bound soil) throws MissingInput {
        return bounded
                ? new FaultNetwork(AdverseInputs.network(site, state), in).solved(state, soil)
                : solved(state, soil);
    }

    /**
     * The network for a single earth fault. Which end of the source's own impedance gives the smallest or the largest
     * current depends on the rest of the loop, as against a coil in tune, so its ends are tried out.
     *
     * @param pole resistance of the pole's earth [Ω]
     */
    EarthFaultSystem single(State state, Bound soil, double pole) throws MissingInput {
        if (!bounded || singleWire() || AdverseInputs.ofNetwork(site).isEmpty()) {
            return at(state, soil);
        }
        Site ends = AdverseInputs.network(site, state);
        PoleEarth earth = PoleEarth.ofResistance("pole", pole);
        EarthFault.Kind kind = EarthFault.Kind.singlePhase(faultResistance(state));
        Optional<EarthFaultSystem> chosen = Optional.empty();
        double extreme = 0;
        for (Site corner : AdverseInputs.corners(site, ends)) {
            EarthFaultSystem system;
            double current;
            try {
                system = new FaultNetwork(corner, in).solved(state, soil);
                current = EarthFault.solve(system, earth, kind).totalCurrent().abs();
            } catch (MissingInput | IllegalArgumentException contradiction) {
                continue; // ends that contradict each other are no state of the network
            }
            if (chosen.isEmpty() || (state == State.MINIMUM ? current < extreme : current > extreme)) {
                chosen = Optional.of(system);
                extreme = current;
            }
        }
        return chosen.isPresent() ? chosen.get() : at(state, soil);
    }

    /** The network of a site none of whose network inputs has bounds. */
    static EarthFaultSystem exact(Site point, State state, Bound soil) throws MissingInput {
        return new FaultNetwork(point, new Inputs()).solved(state, soil);
    }

    private EarthFaultSystem solved(State state, Bound soil) throws MissingInput {
        Neutral neutral = system.neutral();
        double voltage = lineVoltage(state);
        if (singleWire()) {
            return singleWire(state, voltage);
        }
        boolean multiEarthed = neutral.method() == earthing.site.NeutralMethod.MULTI_EARTHED;
        Measure station = neutral.stationEarthResistance();
        double stationEarth = multiEarthed || system.shieldWire() != null
                ? in.need(station, "system.neutral.station-earth-resistance")
                : in.orElse(station, "system.neutral.station-earth-resistance", 0, Dimension.RESISTANCE, STATION);
        double capacitance = 0;
        if (doubleFaultsCount()) {
            double current = in.need(neutral.capacitiveCurrent(), "system.neutral.capacitive-current", state.source);
            capacitance = CapacitiveCurrent.capacitance(voltage, frequency(), current);
        }
        ReturnWires wires = ReturnWires.of(site, frequency(), soil, in);
        try {
            return new EarthFaultSystem(
                    frequency(),
                    voltage / Math.sqrt(3),
                    source(state, voltage),
                    method(state, voltage),
                    line(),
                    capacitance,
                    new Complex(stationEarth, 0),
                    wires.first(),
                    wires.second());
        } catch (IllegalArgumentException contradiction) {
            throw new MissingInput(
                    "the data of the network contradict each other: " + contradiction.getMessage(),
                    THREE_PHASE,
                    SINGLE_PHASE,
                    "system.x-over-r");
        }
    }

    /** One wire, its voltage to earth; nothing of it is a three-phase network. */
    boolean singleWire() {
        return system.neutral().method() == earthing.site.NeutralMethod.SINGLE_WIRE_EARTH_RETURN;
    }

    private EarthFaultSystem singleWire(State state, double voltage) throws MissingInput {
        double ratio = in.orElse(system.xOverR(), "system.x-over-r", 10, Dimension.RATIO, RATIO);
        double angle = Math.atan(ratio);
        double size = voltage / in.need(system.earthFaultCurrent(), SINGLE_PHASE, state.source);
        Complex wire = Complex.ZERO;
        SourceLine line = system.sourceLine();
        if (line != null) {
            Complex perLength = line.conductors().isEmpty()
                    ? new Complex(
                            in.need(line.resistance(), "system.source-line.resistance"),
                            in.need(line.reactance(), "system.source-line.reactance"))
                    : constants(line).phases().positive();
            wire = perLength.multiply(in.need(line.length(), "system.source-line.length"));
        }
        return new SingleWireEarthReturn(
                        voltage,
                        new Complex(size * Math.cos(angle), size * Math.sin(angle)),
                        wire,
                        new Complex(
                                in.need(
                                        system.neutral().stationEarthResistance(),
                                        "system.neutral.station-earth-resistance"),
                                0))
                .system(frequency());
    }

    private LineConstants constants(SourceLine line) throws MissingInput {
        return LineConstants.of(line, LineConstants.chosen(line, in), frequency(), in);
    }

    /** The line's impedances in both forms of the earth return, where its conductors are given. */
    List<Result> lineResults() throws MissingInput {
        SourceLine line = system.sourceLine();
        if (line == null || line.conductors().isEmpty()) {
            return List.of();
        }
        double length = in.need(line.length(), "system.source-line.length");
        LineConstants carson = LineConstants.of(line, EarthReturnForm.CARSON_SERIES, frequency(), in);
        LineConstants depth = LineConstants.of(line, EarthReturnForm.COMPLEX_DEPTH, frequency(), in);
        List<Result> results = new ArrayList<>(carson.results(length, Optional.of(depth)));
        results.addAll(depth.results(length, Optional.empty()));
        return results;
    }

    private boolean singlePhaseLevelGiven() {
        Measure level = system.earthFaultCurrent();
        return level != null && level.isKnown() && !doubleFaultsCount();
    }

    private NeutralMethod method(State state, double voltage) throws MissingInput {
        Neutral neutral = system.neutral();
        boolean inside = singlePhaseLevelGiven();
        return switch (neutral.method()) {
            case SOLID -> new NeutralMethod.Solid();
            case MULTI_EARTHED -> new NeutralMethod.MultiEarthed();
            case RESISTOR ->
                inside
                        ? new NeutralMethod.Solid()
                        : new NeutralMethod.Resistor(either(neutral.resistance(), "system.neutral.resistance"));
            case REACTOR ->
                inside
                        ? new NeutralMethod.Solid()
                        : new NeutralMethod.Reactor(0, either(neutral.reactance(), "system.neutral.reactance"));
            case RESONANT ->
                new NeutralMethod.Resonant(
                        voltage / Math.sqrt(3),
                        in.need(neutral.capacitiveCurrent(), "system.neutral.capacitive-current", state.source),
                        in.need(neutral.residualCurrent(), "system.neutral.residual-current", state.source));
            case ISOLATED -> new NeutralMethod.Isolated();
            case SINGLE_WIRE_EARTH_RETURN -> throw new IllegalStateException("a single wire has no neutral");
            case UNKNOWN ->
                throw new MissingInput("how the neutral is earthed is declared unknown", "system.neutral.method");
        };
    }

    private double either(@Nullable Measure impedance, String key) throws MissingInput {
        if (impedance == null || !impedance.isKnown()) {
            throw new MissingInput(
                    "neither the earth-fault current of the source nor its neutral impedance is given",
                    SINGLE_PHASE,
                    key);
        }
        return impedance.nominal();
    }

    private SequenceImpedances source(State state, double voltage) throws MissingInput {
        double ratio = in.orElse(system.xOverR(), "system.x-over-r", 10, Dimension.RATIO, RATIO);
        double angle = Math.atan(ratio);
        Complex positive = Complex.ZERO;
        if (sequencesKnown()) {
            double magnitude =
                    voltage / (Math.sqrt(3) * in.need(system.threePhaseFaultCurrent(), THREE_PHASE, state.source));
            positive = new Complex(magnitude * Math.cos(angle), magnitude * Math.sin(angle));
        } else if (!singlePhaseLevelGiven()) {
            throw new MissingInput("the fault current of the source is not given", THREE_PHASE);
        }
        if (!singlePhaseLevelGiven()) {
            if (system.neutral().method() == earthing.site.NeutralMethod.SOLID
                    || system.neutral().method() == earthing.site.NeutralMethod.MULTI_EARTHED) {
                throw new MissingInput("the earth-fault current of the source is not given", SINGLE_PHASE);
            }
            in.choice("", "zero-sequence impedance of the source: as its positive sequence", ZERO_SEQUENCE);
            return SequenceImpedances.of(positive, positive);
        }
        double loop = Math.sqrt(3) * voltage / in.need(system.earthFaultCurrent(), SINGLE_PHASE, state.source);
        return SequenceImpedances.of(
                positive, zero(loopImpedance(loop, angle, positive).subtract(positive.multiply(2)), loop));
    }

    /** A hair below zero is rounding of printed levels; more than that the constructor refuses. */
    private static Complex zero(Complex value, double scale) {
        return value.getReal() < 0 && value.getReal() > -1e-9 * scale ? new Complex(0, value.getImaginary()) : value;
    }

    /** Sum of the sequences of the source, neutral impedance included, from its size and what dominates it. */
    private Complex loopImpedance(double size, double angle, Complex positive) throws MissingInput {
        return switch (system.neutral().method()) {
            case RESISTOR -> {
                in.choice("", "reactance of the source's earth-fault loop: three times its reactance", ZERO_SEQUENCE);
                double reactance = 3 * positive.getImaginary();
                yield new Complex(rest(size, reactance), reactance);
            }
            case REACTOR -> {
                in.choice("", "resistance of the source's earth-fault loop: three times its resistance", ZERO_SEQUENCE);
                double resistance = 3 * positive.getReal();
                yield new Complex(resistance, rest(size, resistance));
            }
            case SOLID, MULTI_EARTHED, RESONANT, ISOLATED, SINGLE_WIRE_EARTH_RETURN, UNKNOWN -> {
                in.choice(
                        "",
                        "reactance over resistance of the source's earth-fault loop: as in positive sequence",
                        ZERO_SEQUENCE);
                yield new Complex(size * Math.cos(angle), size * Math.sin(angle));
            }
        };
    }

    private static double rest(double hypotenuse, double side) throws MissingInput {
        if (!(hypotenuse > side)) {
            throw new MissingInput(
                    "the earth-fault current of the source is too large for its neutral impedance and fault level",
                    SINGLE_PHASE,
                    THREE_PHASE);
        }
        return Math.sqrt(hypotenuse * hypotenuse - side * side);
    }

    private SequenceImpedances line() throws MissingInput {
        SourceLine line = system.sourceLine();
        if (line == null) {
            return SequenceImpedances.NONE;
        }
        double length = in.need(line.length(), "system.source-line.length");
        if (!line.conductors().isEmpty()) {
            return constants(line).phases().times(length);
        }
        return SequenceImpedances.of(
                        new Complex(
                                in.need(line.resistance(), "system.source-line.resistance"),
                                in.need(line.reactance(), "system.source-line.reactance")),
                        new Complex(
                                in.need(line.zeroSequenceResistance(), "system.source-line.zero-sequence-resistance"),
                                in.need(line.zeroSequenceReactance(), "system.source-line.zero-sequence-reactance")))
                .times(length);
    }
}
