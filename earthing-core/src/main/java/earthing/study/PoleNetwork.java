package earthing.study;

import earthing.conductor.Metal;
import earthing.conductor.inductance.InductanceMatrix;
import earthing.conductor.inductance.InductanceMatrix.Ground;
import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
import earthing.network.Circuit;
import earthing.network.FrequencySolution;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.Conductor;
import earthing.site.ConductorMaterial;
import earthing.site.Cubicle;
import earthing.site.HighVoltageCable;
import earthing.site.LowVoltageTransformer;
import earthing.site.Screen;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.study.EarthPaths.Member;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.complex.Complex;
import org.jspecify.annotations.Nullable;

/**
 * Leads, screen, pole and coupled electrodes at network frequency, for one ampere into the tank. A neutral along the line
 * is not in it: its ladder belongs to the fault circuit.
 */
final class PoleNetwork {

    /** Earth of the low-voltage network where no electrode of it is named. */
    static final String LOW_VOLTAGE_EARTH = "low-voltage earth";

    private static final Source LEAD =
            Source.tool("milliohms of a lead that is not described are nothing beside the ohms of the electrode");
    private static final Source WALL =
            Source.tool("0.2 mohm/m for the metal of a pole; nothing beside the ohms of its butt");
    private static final double WALL_RESISTANCE = 0.2e-3;
    private static final double FEEDER_RESISTANCE = 5e-3;
    private static final double JOINT = 1e-3;
    private static final double USUAL_OFFSET = 0.15;
    private static final double USUAL_SEPARATION = 0.2;
    private static final double USUAL_TEE = 0.3;
    private static final double USUAL_AREA = 50e-6;
    private static final double USUAL_SCREEN_AREA = 4e-6;
    /** A lead is not shorter than it is thick; so short a piece is nothing beside its joints [m]. */
    private static final double SHORTEST = 0.05;

    private record Piece(String name, String from, String to, RoundConductor axis, double resistance) {}

    private record Tie(String name, String from, String to, double resistance) {}

    /**
     * What one ampere into the tank does.
     *
     * @param earthed whether a way leads from the tank to earth
     * @param impedance impedance between tank and remote earth [Ω], zero if not earthed
     * @param potentials potential by node for one ampere [V]
     * @param members current by member [A]
     * @param electrodes current by electrode [A]
     * @param floating potential of electrodes that nothing is joined to [V]
     */
    record Solution(
            boolean earthed,
            Complex impedance,
            Map<String, Complex> potentials,
            Map<String, Complex> members,
            Map<String, Complex> electrodes,
            Map<String, Complex> floating) {}

    private final Site site;
    private final EarthPaths paths;
    private final SiteEarth earth;
    private final Inputs in;
    private final Set<String> notes;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Tie> ties = new ArrayList<>();

    private PoleNetwork(Site site, EarthPaths paths, SiteEarth earth, Inputs in, Set<String> notes) {
        this.site = site;
        this.paths = paths;
        this.earth = earth;
        this.in = in;
        this.notes = notes;
    }

    static Solution of(Site site, EarthPaths paths, SiteEarth earth, double frequency, Inputs in, Set<String> notes)
            throws MissingInput {
        return new PoleNetwork(site, paths, earth, in, notes).solve(frequency);
    }

    private Solution solve(double frequency) throws MissingInput {
        if (site.tank() == null) {
            throw new MissingInput("the file describes no tank, where the fault enters the earth paths", "tank.height");
        }
        for (Member member : paths.members()) {
            if (member.intact()) {
                add(member);
            }
        }
        lowVoltageEarth();
        Set<String> reached = reached();
        pieces.removeIf(p -> !reached.contains(p.from()) || !reached.contains(p.to()));
        ties.removeIf(t -> !reached.contains(t.from()) || !reached.contains(t.to()));
        boolean earthed = reached.contains(EarthPaths.TANK);
        Circuit.Builder circuit = new Circuit.Builder();
        addPieces(circuit);
        for (Tie tie : ties) {
            circuit.resistor(tie.name(), tie.from(), tie.to(), tie.resistance());
        }
        List<String> joined = earth.names().stream().filter(this::joined).toList();
        addElectrodes(circuit, joined);
        if (!earthed) {
            return new Solution(false, Complex.ZERO, Map.of(), Map.of(), Map.of(), Map.of());
        }
        circuit.currentSource("fault current", Circuit.REFERENCE, EarthPaths.TANK, Complex.ONE);
        return read(FrequencySolution.solve(circuit.build(), frequency), joined, reached);
    }

    private Solution read(FrequencySolution solution, List<String> joined, Set<String> reached) {
        Map<String, Complex> potentials = new LinkedHashMap<>();
        for (String node : reached) {
            if (!node.equals(Circuit.REFERENCE)) {
                potentials.put(node, solution.potential(node));
            }
        }
        Map<String, Complex> members = new LinkedHashMap<>();
        pieces.forEach(p -> members.put(p.name(), solution.current(p.name())));
        ties.forEach(t -> members.put(t.name(), solution.current(t.name())));
        Map<String, Complex> electrodes = new LinkedHashMap<>();
        joined.forEach(name -> electrodes.put(name, solution.current(branch(name))));
        Map<String, Complex> floating = new LinkedHashMap<>();
        for (String name : earth.names()) {
            if (!joined.contains(name)) {
                Complex sum = Complex.ZERO;
                for (Map.Entry<String, Complex> other : electrodes.entrySet()) {
                    sum = sum.add(other.getValue().multiply(earth.resistance(name, other.getKey())));
                }
                floating.put(name, sum);
            }
        }
        Complex tank = solution.potential(EarthPaths.TANK);
        if (!potentials.containsKey(EarthPaths.CUBICLE)) {
            divider().ifPresent(part -> potentials.put(EarthPaths.CUBICLE, tank.multiply(part)));
        }
        return new Solution(true, tank, potentials, members, electrodes, floating);
    }

    /** Part of the cable's voltage that an unearthed cubicle takes through its capacitances. */
    private Optional<Double> divider() {
        Cubicle cubicle = site.cubicle();
        if (cubicle == null
                || cubicle.capacitanceToCable() == null
                || cubicle.capacitanceToEarth() == null
                || !cubicle.capacitanceToCable().isKnown()
                || !cubicle.capacitanceToEarth().isKnown()) {
            return Optional.empty();
        }
        double toCable = cubicle.capacitanceToCable().nominal();
        return Optional.of(toCable / (toCable + cubicle.capacitanceToEarth().nominal()));
    }

    /** Nodes that a way leads to from earth. */
    private Set<String> reached() {
        Set<String> reached = new LinkedHashSet<>(Set.of(Circuit.REFERENCE));
        earth.names().stream().filter(this::joined).map(PoleNetwork::node).forEach(reached::add);
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Piece piece : pieces) {
                grown |= spread(reached, piece.from(), piece.to());
            }
            for (Tie tie : ties) {
                grown |= spread(reached, tie.from(), tie.to());
            }
        }
        return reached;
    }

    private static boolean spread(Set<String> reached, String one, String other) {
        if (reached.contains(one) == reached.contains(other)) {
            return false;
        }
        reached.add(one);
        reached.add(other);
        return true;
    }

    private boolean joined(String electrode) {
        String node = node(electrode);
        return pieces.stream().anyMatch(p -> p.from().equals(node) || p.to().equals(node))
                || ties.stream().anyMatch(t -> t.from().equals(node) || t.to().equals(node));
    }

    private static String branch(String electrode) {
        return "earth of " + electrode;
    }

    static String node(String electrode) {
        return electrode.equals(ElectrodeBars.POLE_BUTT)
                ? ElectrodeBars.POLE_BUTT
                : EarthPaths.electrodeNode(electrode);
    }

    private void addPieces(Circuit.Builder circuit) {
        if (pieces.isEmpty()) {
            return;
        }
        InductanceMatrix inductances =
                InductanceMatrix.of(pieces.stream().map(Piece::axis).toList(), Ground.NONE);
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            circuit.inductor(piece.name(), piece.from(), piece.to(), piece.resistance(), inductances.get(i, i));
            for (int j = 0; j < i; j++) {
                if (inductances.get(i, j) != 0) {
                    circuit.mutual(piece.name(), pieces.get(j).name(), inductances.get(i, j));
                }
            }
        }
    }

    private void addElectrodes(Circuit.Builder circuit, List<String> names) {
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            double along = earth.inSeries(name);
            String top = node(name);
            if (along > 0) {
                top = "conductors of " + name;
                circuit.resistor(top, node(name), top, along);
            }
            circuit.resistor(branch(name), top, Circuit.REFERENCE, earth.resistance(name, name));
            for (int j = 0; j < i; j++) {
                double mutual = earth.resistance(name, names.get(j));
                if (mutual != 0) {
                    circuit.mutual(branch(name), branch(names.get(j)), mutual);
                }
            }
        }
    }

    private void add(Member member) throws MissingInput {
        double x = leadX();
        switch (member.role()) {
            case MAIN_EARTH -> vertical(member, x, 0);
            case TEE -> {
                double length = Math.max(SHORTEST, known(teeLength(), USUAL_TEE));
                lead(member, new Point(x, 0, member.fromHeight()), new Point(x, -length, member.fromHeight()));
            }
            case OWN_LEAD ->
                vertical(
                        member,
                        x,
                        known(site.cubicle() == null ? null : site.cubicle().ownLeadOffset(), 0.3));
            case SCREEN -> screen(member);
            case PARALLEL -> parallel(member);
            case UNINTENDED -> unintended(member);
            case ELECTRODE -> {
                // Added together, because they are coupled.
            }
        }
    }

    private @Nullable Measure teeLength() {
        return site.cubicle() == null ? null : site.cubicle().teeLength();
    }

    private double leadX() {
        return known(site.mainEarth() == null ? null : site.mainEarth().offset(), USUAL_OFFSET);
    }

    private static double known(@Nullable Measure measure, double otherwise) {
        return measure != null && measure.isKnown() ? measure.nominal() : otherwise;
    }

    private void vertical(Member member, double x, double y) throws MissingInput {
        double top = Math.max(member.fromHeight(), member.toHeight() + SHORTEST);
        lead(member, new Point(x, y, top), new Point(x, y, member.toHeight()));
    }

    private void lead(Member member, Point start, Point end) throws MissingInput {
        Conductor conductor = member.conductor()
                .orElse(site.mainEarth() == null ? null : site.mainEarth().conductor());
        double area = USUAL_AREA;
        Metal metal = Metal.COPPER;
        if (conductor != null
                && conductor.area() != null
                && conductor.area().isKnown()
                && conductor.material() != ConductorMaterial.UNKNOWN) {
            area = conductor.area().nominal();
            metal = PoleGeometry.metal(conductor.material());
        } else {
            in.choice("", member.name() + ": 50 mm2 of copper for its resistance in the fault circuit", LEAD);
        }
        RoundConductor axis = RoundConductor.between(start, end, PoleGeometry.radius(area));
        pieces.add(new Piece(
                member.name(),
                member.from(),
                member.to(),
                axis,
                PoleGeometry.resistancePerLength(metal, area) * axis.axis().length()));
    }

    private void screen(Member member) {
        Screen screen = site.controlCable() == null ? null : site.controlCable().screen();
        double area = known(screen == null ? null : screen.area(), USUAL_SCREEN_AREA);
        Metal metal =
                screen == null || screen.material() == null ? Metal.COPPER : PoleGeometry.metal(screen.material());
        double separation =
                known(site.controlCable() == null ? null : site.controlCable().separation(), USUAL_SEPARATION);
        double radius =
                known(site.controlCable() == null ? null : site.controlCable().diameter(), 0.018) / 2;
        double x = leadX() + separation;
        double top = Math.max(member.fromHeight(), member.toHeight() + SHORTEST);
        pieces.add(new Piece(
                member.name(),
                member.from(),
                member.to(),
                RoundConductor.between(new Point(x, 0, top), new Point(x, 0, member.toHeight()), radius),
                PoleGeometry.resistancePerLength(metal, area) * (top - member.toHeight())));
    }

    private void parallel(Member member) throws MissingInput {
        HighVoltageCable cable = site.hvCable();
        if (member.name().equals("second lead")) {
            vertical(member, -leadX(), 0);
        } else if (member.name().startsWith("pole ")) {
            wall(member);
        } else if (member.name().equals("low-voltage neutral")) {
            lowVoltage(member);
        } else if (member.name().equals("high-voltage cable screen") && cable != null) {
            double along = known(cable.length(), 0) * known(cable.screenImpedance(), 0);
            ties.add(new Tie(
                    member.name(),
                    member.from(),
                    Circuit.REFERENCE,
                    Math.max(JOINT, known(cable.screenRemoteEarthResistance(), 0) + along)));
        } else if (StayAnchors.named(site, member.name()).isPresent()) {
            stay(member, StayAnchors.named(site, member.name()).get());
        } else if (!FaultSolver.isReturnWire(member.name())) {
            notes.add(member.name() + ": its resistance to earth is not known and it is left out of the fault circuit;"
                    + " the potential rise errs high");
        }
    }

    private void stay(Member member, Stay stay) throws MissingInput {
        if (stay.anchor() != null) {
            Conductor conductor = stay.conductor();
            Metal metal = Metal.STEEL_GALVANISED;
            double area = USUAL_AREA;
            if (conductor == null) {
                in.choice("stays.conductor", member.name() + ": 50 mm2 of galvanised steel in the fault circuit", LEAD);
            } else {
                area = PoleGeometry.area(conductor, "stays.conductor", in);
                metal = PoleGeometry.metal(conductor.material());
            }
            pieces.add(new Piece(
                    member.name(),
                    member.from(),
                    node(StayAnchors.electrode(stay)),
                    RoundConductor.between(
                            new Point(0, 0, in.need(stay.topHeight(), "stays.top-height")),
                            new Point(in.need(stay.anchorDistance(), "stays.anchor-distance"), 0, 0),
                            PoleGeometry.radius(area)),
                    PoleGeometry.resistancePerLength(metal, area) * StayAnchors.length(stay)));
        } else if (stay.anchorResistance() != null) {
            ties.add(new Tie(
                    member.name(),
                    member.from(),
                    Circuit.REFERENCE,
                    in.need(stay.anchorResistance(), "stays.anchor-resistance", earth.bound())));
        } else {
            notes.add(member.name()
                    + ": neither its anchor nor the anchor's resistance is described and it is left out of"
                    + " the fault circuit; the potential rise errs high");
        }
    }

    private void wall(Member member) throws MissingInput {
        if (site.pole() == null || !earth.names().contains(ElectrodeBars.POLE_BUTT)) {
            notes.add(
                    "where the buried butt is taken to have no contact with the soil, the pole's metal carries no fault"
                            + " current");
            return;
        }
        in.choice("", "metal of the pole: 0.2 mohm/m", WALL);
        double top = Math.max(SHORTEST, member.fromHeight());
        pieces.add(new Piece(
                member.name(),
                member.from(),
                ElectrodeBars.POLE_BUTT,
                RoundConductor.between(new Point(0, 0, top), new Point(0, 0, 0), ElectrodeBars.radius(site.pole(), in)),
                WALL_RESISTANCE * top));
    }

    private void unintended(Member member) {
        if (member.name().equals("antenna feeder screen")) {
            double x = leadX()
                    - known(site.antenna() == null ? null : site.antenna().feederSeparation(), 0.4);
            double top = Math.max(member.fromHeight(), member.toHeight() + SHORTEST);
            pieces.add(new Piece(
                    member.name(),
                    member.from(),
                    member.to(),
                    RoundConductor.between(new Point(x, 0, top), new Point(x, 0, member.toHeight()), 0.005),
                    FEEDER_RESISTANCE * (top - member.toHeight())));
        } else if (member.name().startsWith("auxiliary supply")) {
            lowVoltage(member);
        } else {
            notes.add(member.name() + ": its resistance to earth is not known and it is left out of the fault circuit;"
                    + " the potential rise errs high");
        }
    }

    private void lowVoltage(Member member) {
        if (lowVoltageNode().isEmpty()) {
            notes.add(member.name() + ": the resistance of the low-voltage earths is not given and they are left out of"
                    + " the fault circuit; the potential rise errs high");
            return;
        }
        ties.add(new Tie(member.name(), member.from(), lowVoltageNode().get(), JOINT));
    }

    private Optional<String> lowVoltageNode() {
        LowVoltageTransformer transformer = site.lvTransformer();
        if (transformer == null) {
            return Optional.empty();
        }
        String electrode = transformer.electrode();
        if (electrode != null && earth.names().contains(electrode)) {
            return Optional.of(EarthPaths.electrodeNode(electrode));
        }
        Measure others = transformer.neutralEarthResistance();
        return others != null && others.isKnown() ? Optional.of(LOW_VOLTAGE_EARTH) : Optional.empty();
    }

    /** The other earths of the low-voltage network, where stated, hold its neutral down. */
    private void lowVoltageEarth() {
        LowVoltageTransformer transformer = site.lvTransformer();
        if (transformer == null || lowVoltageNode().isEmpty()) {
            return;
        }
        Measure others = transformer.neutralEarthResistance();
        if (others != null && others.isKnown()) {
            ties.add(new Tie(
                    "earths of the low-voltage network",
                    lowVoltageNode().get(),
                    Circuit.REFERENCE,
                    others.at(earth.bound())));
        }
    }
}
