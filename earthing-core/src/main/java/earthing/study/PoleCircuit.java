package earthing.study;

import earthing.conductor.inductance.InductanceMatrix;
import earthing.conductor.inductance.InductanceMatrix.Ground;
import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
import earthing.network.Circuit;
import earthing.network.Wave;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.Conductor;
import earthing.site.Cubicle;
import earthing.site.ElectrodeModel;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.site.YesNo;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The pole as a circuit: every member of the earth-path graph as straight conductors at true positions with partial self
 * and mutual inductances (filament at radius, free space unless images are asked for), the electrodes as coupled resistances or as {@link ElectrodeCircuit} has them, the core of the
 * control cable, the screen with its bond leads. The surge current enters at the tank.
 */
final class PoleCircuit {

    /** Node at the cubicle's end of the core. */
    static final String CORE_END = "core at cubicle";
    /** Branch of the core. */
    static final String CORE = "core";
    /** Branch of a second core beside the first. */
    static final String SECOND_CORE = "second core";
    /** Branch of the screen between its bond leads. */
    static final String SCREEN = "cable screen";
    /** End of the branch of the part of a lead below the cubicle, where the lead is cut there. */
    static final String BELOW_CUBICLE = " below cubicle";
    /** Branch of the source. */
    static final String SOURCE = "surge current";

    private static final Source SIDE_BY_SIDE = Source.tool("insulation half as thick as the conductor");

    /** A piece of conductor between two nodes. */
    record Piece(String name, String from, String to, RoundConductor axis, double resistance) {}

    /** Where the surge current enters. */
    enum Strike {
        /** The standard case. */
        TANK,
        /** The metal of a conducting pole; on wood the highest earthed metal. */
        POLE_TOP,
        /** Head of the antenna. */
        ANTENNA
    }

    /** What the cores do; all are bonded at the tank. */
    enum Cores {
        /** The core is open at the cubicle. */
        OPEN,
        /** The core is bonded to chassis at the cubicle too. */
        BONDED,
        /** The core is bonded at both ends, a second one beside it is open at the cubicle. */
        NEIGHBOUR_OPEN,
        /** Both are bonded at both ends. */
        NEIGHBOUR_BONDED
    }

    private final Site site;
    private final EarthPaths paths;
    private final SiteEarth earth;
    private final PoleGeometry geometry;
    private final Inputs in;
    private final List<Piece> pieces = new ArrayList<>();
    private final Circuit.Builder circuit = new Circuit.Builder();
    private final List<String> notes = new ArrayList<>();
    private final SecondPaths secondPaths;

    private PoleCircuit(Site site, EarthPaths paths, SiteEarth earth, PoleGeometry geometry, Inputs in) {
        this.site = site;
        this.paths = paths;
        this.earth = earth;
        this.geometry = geometry;
        this.in = in;
        this.secondPaths = new SecondPaths(site, earth, geometry, in, pieces, circuit, notes);
    }

    /** A circuit with what is needed to read it. */
    record Built(Circuit circuit, PoleGeometry geometry, List<CablePath.Step> path, List<String> notes) {}

    /**
     * Builds the circuit of a site.
     *
     * @param site the site, arranged as wanted
     * @param paths its earth paths, broken as wanted
     * @param earth its electrodes
     * @param wave current into the tank [A]
     * @param shorted whether the core is bonded to chassis at both ends; else it is open at the cubicle
     */
    static Built of(Site site, EarthPaths paths, SiteEarth earth, Wave wave, boolean shorted, Inputs in)
            throws MissingInput {
        return of(site, paths, earth, wave, shorted ? Cores.BONDED : Cores.OPEN, in);
    }

    static Built of(Site site, EarthPaths paths, SiteEarth earth, Wave wave, Cores cores, Inputs in)
            throws MissingInput {
        return of(site, paths, earth, wave, cores, Strike.TANK, in);
    }

    /**
     * Builds the circuit of a site that is struck somewhere else than at the tank.
     *
     * @param strike where the current enters
     */
    static Built of(Site site, EarthPaths paths, SiteEarth earth, Wave wave, Cores cores, Strike strike, Inputs in)
            throws MissingInput {
        PoleGeometry geometry = PoleGeometry.of(site, in);
        return new PoleCircuit(site, paths, earth, geometry, in).build(wave, cores, strike);
    }

    private Built build(Wave wave, Cores cores, Strike strike) throws MissingInput {
        boolean open = cores == Cores.OPEN || cores == Cores.NEIGHBOUR_OPEN;
        for (Member member : paths.members()) {
            if (member.intact()) {
                add(member);
            }
        }
        secondPaths.metalOfPole(paths);
        new CableRiser(site, earth, geometry, in, pieces, circuit, notes).addOpen();
        String struck = strike == Strike.TANK
                ? EarthPaths.TANK
                : new StruckMetal(site, geometry, in, pieces, circuit, notes).node(strike);
        if (cores == Cores.OPEN || cores == Cores.BONDED) {
            addCore(CORE, 0, open);
        } else {
            double spacing = 4 * geometry.coreRadius();
            in.choice("", "distance of two cores: two diameters of a core's conductor", SIDE_BY_SIDE);
            addCore(CORE, 0, false);
            addCore(SECOND_CORE, spacing, open);
        }
        addPieces();
        addElectrodes();
        addFloatingCubicle(!open);
        List<String> floating = circuit.build().floatingNodes();
        if (!floating.isEmpty()) {
            throw new MissingInput(
                    floating.contains(EarthPaths.TANK)
                            ? "no metal leads the surge from the tank to earth: something has to flash over, and how high the voltage rises until then is open"
                            : "the cubicle floats and its capacitances are not given: its voltage cannot be computed",
                    floating.contains(EarthPaths.TANK) ? new String[0] : FLOATING_KEYS);
        }
        circuit.currentSource(SOURCE, Circuit.REFERENCE, struck, wave);
        Circuit built = circuit.build();
        return new Built(built, geometry, CablePath.of(paths, built), List.copyOf(notes));
    }

    private static final String[] FLOATING_KEYS = {"cubicle.capacitance-to-earth", "cubicle.capacitance-to-cable"};

    private void add(Member member) throws MissingInput {
        switch (member.role()) {
            case MAIN_EARTH -> lead(member);
            case TEE ->
                piece(
                        member.name(),
                        member.from(),
                        member.to(),
                        new Point(geometry.leadX(), 0, geometry.cubicleHeight()),
                        new Point(geometry.leadX(), -geometry.teeLength(), geometry.cubicleHeight()),
                        conductor(member, "cubicle.tee"));
            case OWN_LEAD ->
                piece(
                        member.name(),
                        member.from(),
                        member.to(),
                        new Point(geometry.leadX(), geometry.ownLeadOffset(), geometry.cubicleHeight()),
                        new Point(geometry.leadX(), geometry.ownLeadOffset(), 0),
                        conductor(member, "cubicle.own-lead"));
            case SCREEN -> screen();
            case PARALLEL -> {
                if (member.name().equals("second lead")) {
                    lead(member);
                } else {
                    secondPaths.parallel(member);
                }
            }
            case UNINTENDED -> secondPaths.unintended(member);
            case ELECTRODE -> {
                // Added together, because they are coupled.
            }
        }
    }

    private Conductor conductor(Member member, String key) throws MissingInput {
        if (member.conductor().isPresent()) {
            return member.conductor().get();
        }
        if (site.mainEarth() != null) {
            in.choice(
                    key, "as the main earth", Source.tool("a lead that is not described is of the main earth's kind"));
            return site.mainEarth().conductor();
        }
        throw new MissingInput("the conductor of " + member.name() + " is not described", key);
    }

    private void piece(String name, String from, String to, Point start, Point end, Conductor conductor)
            throws MissingInput {
        double area = PoleGeometry.area(conductor, "main-earth.conductor", in);
        double perLength = PoleGeometry.resistancePerLength(PoleGeometry.metal(conductor.material()), area);
        RoundConductor axis = RoundConductor.between(start, end, PoleGeometry.radius(area));
        pieces.add(new Piece(name, from, to, axis, perLength * axis.axis().length()));
    }

    /** A piece of the main earth; it is cut at the cubicle's height, so that the voltage to the lead there is known. */
    private void lead(Member member) throws MissingInput {
        Conductor conductor = conductor(member, "main-earth.conductor");
        double x = member.name().equals("second lead") ? -geometry.leadX() : geometry.leadX();
        double cut = geometry.cubicleHeight();
        if (member.toHeight() < cut && cut < member.fromHeight()) {
            piece(
                    member.name(),
                    member.from(),
                    CablePath.LEAD_AT_CUBICLE,
                    new Point(x, 0, member.fromHeight()),
                    new Point(x, 0, cut),
                    conductor);
            piece(
                    member.name() + BELOW_CUBICLE,
                    CablePath.LEAD_AT_CUBICLE,
                    member.to(),
                    new Point(x, 0, cut),
                    new Point(x, 0, member.toHeight()),
                    conductor);
        } else {
            piece(
                    member.name(),
                    member.from(),
                    member.to(),
                    new Point(x, 0, member.fromHeight()),
                    new Point(x, 0, member.toHeight()),
                    conductor);
        }
    }

    private void screen() {
        double top = geometry.tankHeight() - geometry.tankBondLead();
        double foot = geometry.cubicleHeight() + geometry.cubicleBondLead();
        String upper = geometry.tankBondLead() > 0 ? "screen top" : EarthPaths.TANK;
        String lower = geometry.cubicleBondLead() > 0 ? "screen foot" : EarthPaths.CUBICLE;
        double perLength = PoleGeometry.resistancePerLength(geometry.screenMetal(), geometry.screenArea());
        pieces.add(new Piece(
                SCREEN,
                upper,
                lower,
                RoundConductor.between(
                        new Point(geometry.cableX(), 0, top),
                        new Point(geometry.cableX(), 0, foot),
                        geometry.cableRadius()),
                perLength * (top - foot)));
        // A bond lead runs beside the exposed cores at the distance of the cable's surface.
        if (geometry.tankBondLead() > 0) {
            bondLead("screen bond at tank", EarthPaths.TANK, upper, geometry.tankHeight(), top, perLength);
        }
        if (geometry.cubicleBondLead() > 0) {
            bondLead("screen bond at cubicle", lower, EarthPaths.CUBICLE, foot, geometry.cubicleHeight(), perLength);
        }
    }

    private void bondLead(String name, String from, String to, double top, double foot, double perLength) {
        double x = geometry.cableX() + geometry.cableRadius();
        pieces.add(new Piece(
                name,
                from,
                to,
                RoundConductor.between(
                        new Point(x, 0, top), new Point(x, 0, foot), PoleGeometry.radius(geometry.screenArea())),
                perLength * (top - foot)));
    }

    private void addCore(String name, double offset, boolean open) {
        double area = Math.PI * geometry.coreRadius() * geometry.coreRadius();
        double x = geometry.cableX() + offset;
        RoundConductor axis = RoundConductor.between(
                new Point(x, 0, geometry.tankHeight()),
                new Point(x, 0, geometry.cubicleHeight()),
                geometry.coreRadius());
        pieces.add(new Piece(
                name,
                EarthPaths.TANK,
                open ? CORE_END : EarthPaths.CUBICLE,
                axis,
                PoleGeometry.resistancePerLength(earthing.conductor.Metal.COPPER, area)
                        * axis.axis().length()));
    }

    private void addPieces() {
        InductanceMatrix inductances =
                InductanceMatrix.of(pieces.stream().map(Piece::axis).toList(), ground());
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

    private Ground ground() {
        return site.surges() != null && site.surges().earthImages() == YesNo.YES ? Ground.PERFECT_IMAGE : Ground.NONE;
    }

    private void addElectrodes() throws MissingInput {
        List<String> names = earth.names().stream().filter(this::joined).toList();
        if (Surges.circuitModel(site.surges()) != ElectrodeModel.RESISTANCE) {
            notes.add(new ElectrodeCircuit(site, earth, in)
                    .add(circuit, names, names.stream().map(PoleCircuit::node).toList()));
            return;
        }
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            circuit.resistor(electrodeBranch(name), node(name), Circuit.REFERENCE, earth.resistance(name, name));
            for (int j = 0; j < i; j++) {
                if (earth.resistance(name, names.get(j)) != 0) {
                    circuit.mutual(
                            electrodeBranch(name), electrodeBranch(names.get(j)), earth.resistance(name, names.get(j)));
                }
            }
        }
    }

    /** Whether anything is joined to an electrode; one that floats takes no part. */
    private boolean joined(String name) {
        String node = node(name);
        return pieces.stream().anyMatch(p -> p.from().equals(node) || p.to().equals(node));
    }

    static String electrodeBranch(String name) {
        return "earth of " + name;
    }

    private static String node(String electrode) {
        return electrode.equals(ElectrodeBars.POLE_BUTT)
                ? ElectrodeBars.POLE_BUTT
                : EarthPaths.electrodeNode(electrode);
    }

    private void addFloatingCubicle(boolean shorted) throws MissingInput {
        Cubicle cubicle = site.cubicle();
        boolean earthed = paths.withRole(Role.TEE).stream().anyMatch(Member::intact)
                || paths.connected(EarthPaths.CUBICLE, EarthPaths.EARTH);
        if (earthed || cubicle == null) {
            return;
        }
        Optional<Double> toEarth = known(cubicle.capacitanceToEarth());
        Optional<Double> toCable = known(cubicle.capacitanceToCable());
        if (toEarth.isEmpty() || toCable.isEmpty()) {
            throw new MissingInput(
                    "the cubicle floats and its capacitances are not given: its voltage cannot be computed",
                    FLOATING_KEYS);
        }
        circuit.capacitor("cubicle to earth", EarthPaths.CUBICLE, Circuit.REFERENCE, toEarth.get());
        if (!shorted) {
            circuit.capacitor("cubicle to cable", EarthPaths.CUBICLE, CORE_END, toCable.get());
        }
    }

    private static Optional<Double> known(@Nullable Measure measure) {
        return measure != null && measure.isKnown() ? Optional.of(measure.nominal()) : Optional.empty();
    }
}
