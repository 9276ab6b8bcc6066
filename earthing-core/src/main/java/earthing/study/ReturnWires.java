package earthing.study;

import earthing.fault.ReturnConductor;
import earthing.fault.SecondWire;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.NeutralMethod;
import earthing.site.ReturnWire;
import earthing.site.ReturnWirePair;
import earthing.site.Site;
import earthing.site.SourceLine;
import earthing.site.YesNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.math3.complex.Complex;
import org.jspecify.annotations.Nullable;

/**
 * Neutral and shield wire of a site's line as ladders of spans.
 *
 * @param first the neutral, else the shield wire
 * @param second the shield wire beside a neutral
 */
record ReturnWires(Optional<ReturnConductor> first, Optional<SecondWire> second) {

    private static final Source END = Source.tool("the line ends at this pole; less help by earths beyond errs high");
    private static final String NEUTRAL = "system.neutral.conductor";
    private static final String SHIELD = "system.shield-wire";
    private static final String PAIR = "system.return-wires";

    /** Members of the earth paths that stand for the wires, in the order of {@link #first} and {@link #second}. */
    static List<String> members(Site site) {
        List<String> names = new ArrayList<>();
        if (multiEarthed(site)) {
            names.add(FaultSolver.LINE_NEUTRAL);
        }
        if (site.system().shieldWire() != null) {
            names.add(FaultSolver.SHIELD_WIRE);
        }
        return List.copyOf(names);
    }

    private static boolean multiEarthed(Site site) {
        return site.system().neutral().method() == NeutralMethod.MULTI_EARTHED;
    }

    /** Reads the wires; {@code soil} chooses among the resistances of their earths. */
    static ReturnWires of(Site site, double frequency, Bound soil, Inputs in) throws MissingInput {
        ReturnWire shield = site.system().shieldWire();
        if (!multiEarthed(site) && shield == null) {
            return new ReturnWires(Optional.empty(), Optional.empty());
        }
        Optional<LineConstants> placed = placed(site.system().sourceLine(), frequency, in);
        if (!multiEarthed(site)) {
            return new ReturnWires(
                    Optional.of(new Reader(site, soil, in)
                            .conductor(shield, SHIELD, placed.flatMap(LineConstants::wire), true)),
                    Optional.empty());
        }
        ReturnWire neutral = site.system().neutral().conductor();
        if (shield == null) {
            return new ReturnWires(
                    Optional.of(new Reader(site, soil, in)
                            .conductor(neutral, NEUTRAL, placed.flatMap(LineConstants::wire), true)),
                    Optional.empty());
        }
        return pair(site, neutral, shield, placed.flatMap(LineConstants::pair), soil, in);
    }

    private static ReturnWires pair(
            Site site,
            @Nullable ReturnWire neutral,
            ReturnWire shield,
            Optional<LineConstants.Pair> placed,
            Bound soil,
            Inputs in)
            throws MissingInput {
        ReturnWirePair both = site.system().returnWires();
        if (both == null || both.bonded() == YesNo.UNKNOWN) {
            throw new MissingInput(
                    "whether neutral and shield wire are bonded to each other at the earthed poles is not given",
                    PAIR + ".bonded");
        }
        boolean bonded = both.bonded() == YesNo.YES;
        Reader reader = new Reader(site, soil, in);
        ReturnConductor first = reader.conductor(neutral, NEUTRAL, placed.map(LineConstants.Pair::neutral), true);
        ReturnConductor second = reader.conductor(shield, SHIELD, placed.map(LineConstants.Pair::shield), !bonded);
        double span = in.need(shield.span(), SHIELD + ".span");
        Complex between = placed.isPresent()
                ? placed.get().between()
                : new Complex(
                        in.need(both.mutualResistance(), PAIR + ".mutual-resistance"),
                        in.need(both.mutualReactance(), PAIR + ".mutual-reactance"));
        return new ReturnWires(Optional.of(first), Optional.of(new SecondWire(second, between.multiply(span), bonded)));
    }

    private static Optional<LineConstants> placed(@Nullable SourceLine line, double frequency, Inputs in)
            throws MissingInput {
        return line == null || line.conductors().isEmpty()
                ? Optional.empty()
                : Optional.of(LineConstants.of(line, LineConstants.chosen(line, in), frequency, in));
    }

    private record Reader(Site site, Bound soil, Inputs in) {

        ReturnConductor conductor(
                @Nullable ReturnWire wire, String key, Optional<LineConstants.Wire> placed, boolean ownEarths)
                throws MissingInput {
            if (wire == null) {
                throw new MissingInput("the multi-earthed neutral is not described", key);
            }
            Integer toSource = wire.spansToSource();
            Integer every = wire.earthedEvery();
            if (toSource == null) {
                throw new MissingInput("the number of spans to the source is not given", key + ".spans-to-source");
            }
            if (ownEarths && every == null) {
                throw new MissingInput("how often the wire is earthed is not given", key + ".earthed-every");
            }
            if (wire.spansBeyond() == null) {
                in.choice(key + ".spans-beyond", "0", END);
            }
            int beyond = wire.spansBeyond() == null ? 0 : wire.spansBeyond();
            double span = in.need(wire.span(), key + ".span");
            Complex self = placed.isPresent()
                    ? placed.get().self()
                    : new Complex(
                            in.need(wire.impedance(), key + ".impedance"),
                            in.need(wire.reactance(), key + ".reactance"));
            Complex mutual = placed.isPresent()
                    ? placed.get().mutual()
                    : new Complex(
                            in.need(wire.mutualResistance(), key + ".mutual-resistance"),
                            in.need(wire.mutualReactance(), key + ".mutual-reactance"));
            Complex earth = ownEarths
                    ? new Complex(1 / in.need(wire.poleEarthResistance(), key + ".pole-earth-resistance", soil), 0)
                    : Complex.ZERO;
            List<ReturnConductor.Span> spans = new ArrayList<>();
            for (int pole = 1; pole <= toSource + beyond; pole++) {
                boolean earthed = every != null && pole != toSource && Math.floorMod(pole - toSource, every) == 0;
                spans.add(new ReturnConductor.Span(
                        self.multiply(span), mutual.multiply(span), earthed ? earth : Complex.ZERO));
            }
            return new ReturnConductor(
                    spans, toSource, wire.bondedToMainEarth() == YesNo.YES, bondHeight(wire, key), OptionalInt.empty());
        }

        private double bondHeight(ReturnWire wire, String key) throws MissingInput {
            if (wire.bondHeight() != null) {
                return in.need(wire.bondHeight(), key + ".bond-height");
            }
            return site.tank() == null ? 1 : in.need(site.tank().height(), "tank.height");
        }
    }
}
