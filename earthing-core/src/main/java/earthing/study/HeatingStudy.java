package earthing.study;

import earthing.conductor.ConductorCondition;
import earthing.conductor.HeatTransfer;
import earthing.conductor.JointType;
import earthing.conductor.Metal;
import earthing.conductor.SequenceHeating;
import earthing.conductor.Shot;
import earthing.conductor.SolidRound;
import earthing.conductor.TemperatureHistory;
import earthing.conductor.TemperatureLimit;
import earthing.conductor.ThermalConstants;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import earthing.fault.DecrementFactor;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Conductor;
import earthing.site.ConductorMaterial;
import earthing.site.Criteria;
import earthing.site.Cubicle;
import earthing.site.EarthSegment;
import earthing.site.Joint;
import earthing.site.MainEarth;
import earthing.site.Screen;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.site.YesNo;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import earthing.study.HeatingResults.Body;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Heating of every conductor of the earth paths by its own share of the fault, all shots to lockout added. */
final class HeatingStudy {

    private static final Source START = Source.standard(
            "IEC 60364-5-54:2011", "bare conductor, initial temperature 30 °C", Source.Status.FROM_MEMORY);
    private static final Source RESISTANCE = Source.tool("cross-section, length and resistivity at 20 °C");
    private static final Source NEVER = Source.tool("heating needs a duration");

    private static final Source SCREEN_METAL = Source.tool("screens of control cables are of copper as a rule");
    private static final TemperatureLimit SCREEN_LIMIT = new TemperatureLimit(
            "screen under a thermoplastic sheath", SurgeCase.SCREEN_LIMIT, SurgeCase.SCREEN_LIMIT_SOURCE);

    /** Part of the fault current below which a member's current is rounding [1]. */
    private static final double ROUNDING = 1e-9;

    private static final int POINTS_PER_PHASE = 12;

    private final Site site;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final Set<Gap> gaps = new LinkedHashSet<>();
    private Optional<Hottest> hottest = Optional.empty();

    /** One conductor heated in one fault. */
    record Heated(Body body, PowerCase fault, SequenceHeating heating, List<Shot> shots, double current) {

        private void emit(List<Result> results) {
            new HeatingResults(body, fault, results::add).emit(heating, shots, current);
        }
    }

    private record Hottest(Member member, SequenceHeating heating, List<Shot> shots, Case circumstances) {}

    private record Beside(double heat, Member member, PowerCase fault) {}

    private final Map<String, Beside> beside = new LinkedHashMap<>();
    private final List<Heated> atBounds = new ArrayList<>();

    private HeatingStudy(Site site) {
        this.site = site;
    }

    /** Heats the conductors in every case of the site as it is. */
    static StudyResults of(List<PowerCase> cases, Site site) {
        return new HeatingStudy(site).run(cases);
    }

    /** What was heated in every case at the bounds, for a check by other code. */
    static List<Heated> heated(List<PowerCase> cases, Site site) {
        HeatingStudy study = new HeatingStudy(site);
        study.run(cases);
        return List.copyOf(study.atBounds);
    }

    private StudyResults run(List<PowerCase> cases) {
        resistances();
        for (PowerCase each : cases) {
            if (each.circumstances().keys().containsKey("broken")) {
                continue;
            }
            boolean own = own(each.circumstances());
            for (Member member : each.paths().members()) {
                // What the other arrangements would do to the screen is what they pay with; their leads do not exist.
                if (member.intact() && (own ? heats(member) : member.role() == Role.SCREEN)) {
                    if (own && GoverningResults.beside(each.at()) && !each.neverCleared()) {
                        keepWorst(member, each);
                    } else {
                        heat(member, each, own);
                    }
                }
            }
        }
        beside.values().forEach(worst -> heat(worst.member(), worst.fault(), true));
        return new StudyResults(results, history(), List.copyOf(gaps), in.assumptions(), List.of());
    }

    private boolean own(Case circumstances) {
        String arrangement = site.cubicle() == null
                ? ""
                : Arrangement.of(site.cubicle().earth()).map(Arrangement::word).orElse("");
        return circumstances.keys().getOrDefault("arrangement", arrangement).equals(arrangement)
                && !circumstances.keys().containsKey("screen-bond");
    }

    private static boolean heats(Member member) {
        return member.role() == Role.MAIN_EARTH
                || member.role() == Role.TEE
                || member.role() == Role.OWN_LEAD
                || member.role() == Role.SCREEN
                || (member.role() == Role.PARALLEL && member.conductor().isPresent());
    }

    private void resistances() {
        for (Member member : EarthPaths.of(site).members()) {
            if (heats(member) && member.conductor().isPresent() && length(member) > 0) {
                Conductor conductor = member.conductor().get();
                try {
                    double area = PoleGeometry.area(conductor, "main-earth.conductor", in);
                    double perLength = PoleGeometry.resistancePerLength(PoleGeometry.metal(conductor.material()), area);
                    results.add(Result.of(
                                    resistance(member.name()),
                                    Case.NONE,
                                    "nominal",
                                    perLength * length(member),
                                    "ohm",
                                    "direct current, 20 °C, without joints",
                                    RESISTANCE)
                            .withWorked(Worked.of("R", "r * l")
                                    .with("r", perLength, "ohm/m")
                                    .with("l", length(member), "m")
                                    .gives(perLength * length(member), "ohm")));
                } catch (MissingInput missing) {
                    gaps.add(missing.gap("conductor." + EarthPaths.key(member.name()), Case.NONE));
                }
            }
        }
        bonds();
    }

    /** Resistance of the bonds that a crew measures as one though they are members in a row. */
    private void bonds() {
        MainEarth lead = site.mainEarth();
        if (lead == null) {
            return;
        }
        List<String> bonds = lead.segments().isEmpty()
                ? List.of("main-earth")
                : lead.segments().stream().map(EarthSegment::name).toList();
        for (String bond : bonds) {
            List<Member> members = EarthPaths.of(site).members().stream()
                    .filter(member -> member.isPartOf(bond))
                    .toList();
            List<Result> pieces = members.stream()
                    .flatMap(member -> results.stream().filter(r -> r.id().equals(resistance(member.name()))))
                    .toList();
            if (pieces.isEmpty()
                    || pieces.size() < members.size()
                    || members.stream().anyMatch(member -> member.name().equals(bond))) {
                continue;
            }
            results.add(Result.of(
                    resistance(bond),
                    Case.NONE,
                    "nominal",
                    pieces.stream().mapToDouble(Result::value).sum(),
                    "ohm",
                    "its parts in a row, direct current, 20 °C, without joints",
                    RESISTANCE));
        }
    }

    private static String resistance(String name) {
        return "conductor." + EarthPaths.key(name) + ".resistance";
    }

    /** A tee runs level, so its length is not a difference of heights. */
    private double length(Member member) {
        Cubicle cubicle = site.cubicle();
        Measure tee = cubicle == null ? null : cubicle.teeLength();
        Optional<Stay> stay = StayAnchors.named(site, member.name());
        if (stay.isPresent()) {
            return StayAnchors.length(stay.get());
        }
        return member.role() == Role.TEE && tee != null && tee.isKnown() ? tee.nominal() : member.length();
    }

    private void heat(Member member, PowerCase fault, boolean own) {
        String id = "conductor." + EarthPaths.key(member.name()) + ".";
        try {
            Body body = member.role() == Role.SCREEN ? screen(fault.site(), id) : lead(member, id);
            ThermalConstants constants = ThermalTable.find(body.metal(), ThermalEdition.IEC_60949)
                    .orElseGet(() -> ThermalTable.require(body.metal(), ThermalEdition.IEEE_80_2013));
            Criteria criteria = site.criteria();
            double start = in.orElse(
                    criteria == null ? null : criteria.initialTemperature(),
                    "criteria.initial-temperature",
                    30,
                    Dimension.TEMPERATURE,
                    START);
            double current = current(member, fault);
            if (fault.neverCleared()) {
                gaps.add(new Gap(
                        id + "final-temperature",
                        fault.circumstances(),
                        "the fault is never cleared, so heating cannot be shown; " + NEVER.locus(),
                        List.of()));
                return;
            }
            List<Shot> shots = shots(fault, current);
            List<TemperatureLimit> limits = member.role() == Role.SCREEN
                    ? List.of(SCREEN_LIMIT)
                    : limits(conductor(member), body.metal(), body.area(), member, criteria);
            SequenceHeating heating = SequenceHeating.of(constants, body.area(), start, shots, limits);
            Heated heated = new Heated(body, fault, heating, shots, current);
            heated.emit(results);
            atBounds.add(heated);
            if (own
                    && fault.at().equals("nominal")
                    && (hottest.isEmpty()
                            || heating.utilisation() > hottest.get().heating().utilisation())) {
                hottest = Optional.of(new Hottest(member, heating, shots, fault.circumstances()));
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap(id + "final-temperature", fault.circumstances()));
        }
    }

    private static double current(Member member, PowerCase fault) {
        double current = Math.abs(fault.memberCurrents().getOrDefault(member.name(), 0.0));
        // A lead that nothing flows in carries the rounding error of the circuit.
        return current <= ROUNDING * fault.current() ? 0 : current;
    }

    /** Of points beside the bounds, of which a sweep has thousands, only the one with the most heat can govern. */
    private void keepWorst(Member member, PowerCase fault) {
        double heat = Shot.jouleIntegral(shots(fault, current(member, fault)));
        String group = member.name() + " " + fault.circumstances().keys().getOrDefault(Case.PROTECTION, "");
        Beside worst = beside.get(group);
        if (worst == null || heat > worst.heat()) {
            beside.put(group, new Beside(heat, member, fault));
        }
    }

    private Conductor conductor(Member member) throws MissingInput {
        return member.conductor()
                .or(() -> Optional.ofNullable(site.mainEarth()).map(m -> m.conductor()))
                .orElseThrow(() -> new MissingInput("the conductor is not described", "main-earth.conductor"));
    }

    private Body lead(Member member, String id) throws MissingInput {
        Conductor conductor = conductor(member);
        boolean stay = StayAnchors.named(site, member.name()).isPresent();
        return new Body(
                id,
                PoleGeometry.area(conductor, stay ? "stays.conductor" : "main-earth.conductor", in),
                PoleGeometry.metal(conductor.material()),
                Optional.of(conductor.area()),
                conductor.insulated() == YesNo.YES,
                Body.isTape(conductor));
    }

    /** The screen as a conductor; an area that nobody stated is not assumed, because it decides what the screen bears. */
    private Body screen(Site variant, String id) throws MissingInput {
        Screen screen =
                variant.controlCable() == null ? null : variant.controlCable().screen();
        Measure area = screen == null ? null : screen.area();
        ConductorMaterial material = screen == null ? null : screen.material();
        if (material == ConductorMaterial.UNKNOWN) {
            throw new MissingInput("the material of the screen is declared unknown", "control-cable.screen.material");
        }
        if (material == null) {
            in.choice("control-cable.screen.material", "copper", SCREEN_METAL);
        }
        return new Body(
                id,
                in.need(area, "control-cable.screen.area"),
                material == null ? Metal.COPPER : PoleGeometry.metal(material),
                Optional.ofNullable(area),
                false,
                true);
    }

    private static List<Shot> shots(PowerCase fault, double current) {
        List<Shot> shots = new ArrayList<>();
        for (PowerCase.FaultShot shot : fault.shots()) {
            double decrement = DecrementFactor.of(fault.xOverR(), fault.frequency(), shot.duration());
            shots.add(new Shot(current, shot.duration(), decrement, shot.deadTime()));
        }
        return shots;
    }

    private List<TemperatureLimit> limits(
            Conductor conductor,
            Metal metal,
            double area,
            Member member,
            @org.jspecify.annotations.Nullable Criteria criteria)
            throws MissingInput {
        List<TemperatureLimit> limits = new ArrayList<>();
        Measure owner = criteria == null ? null : criteria.finalTemperature();
        if (owner != null && owner.isKnown()) {
            limits.add(new TemperatureLimit(
                    "owner's final temperature", owner.nominal(), Source.owner("criteria.final-temperature")));
        } else {
            ConductorCondition condition = conductor.insulated() == YesNo.YES
                    ? ConductorCondition.THERMOPLASTIC
                    : ConductorCondition.BARE_NORMAL;
            limits.add(condition.limit(metal, area));
        }
        Joint joint = member.joint().orElse(null);
        if (joint == Joint.UNKNOWN) {
            throw new MissingInput("the joint is declared unknown", "main-earth.joint");
        }
        if (joint != null) {
            JointType type = switch (joint) {
                case BOLTED, COMPRESSION, UNKNOWN -> JointType.PRESSURE;
                case EXOTHERMIC -> JointType.EXOTHERMIC;
                case BRAZED -> JointType.BRAZED;
            };
            type.limit().ifPresent(limits::add);
        }
        return limits;
    }

    /** Temperature over the sequence with cooling, for the conductor that heats most: information, no criterion. */
    private List<Curve> history() {
        if (hottest.isEmpty()) {
            return List.of();
        }
        Hottest h = hottest.get();
        TemperatureHistory cooled = history(h, HeatTransfer.STILL_AIR);
        TemperatureHistory adiabatic = history(h, HeatTransfer.NONE);
        double end = cooled.points().get(cooled.points().size() - 1).time();
        double limit = h.heating().limit().temperature();
        return List.of(new Curve(
                "conductor.temperature-history",
                "Temperature of " + h.member().name()
                        + " over the reclose sequence, the conductor that comes nearest to"
                        + " its limit; without loss of heat (criterion) and with cooling in still air (information)",
                "time",
                "s",
                "temperature",
                "degC",
                List.of(
                        trace("without loss of heat", adiabatic),
                        trace("with cooling", cooled),
                        new Curve.Trace("limit", new double[] {0, end}, new double[] {limit, limit}))));
    }

    private static TemperatureHistory history(Hottest h, HeatTransfer heatTransfer) {
        return TemperatureHistory.of(
                h.heating().metal(),
                SolidRound.ofArea(h.heating().area()),
                h.heating().initial(),
                h.heating().initial(),
                heatTransfer,
                h.shots(),
                POINTS_PER_PHASE);
    }

    private static Curve.Trace trace(String name, TemperatureHistory history) {
        int n = history.points().size();
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = history.points().get(i).time();
            y[i] = history.points().get(i).temperature();
        }
        return new Curve.Trace(name, x, y);
    }
}
