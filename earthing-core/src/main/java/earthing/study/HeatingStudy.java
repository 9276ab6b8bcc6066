package earthing.study;

import earthing.conductor.AdiabaticHeating;
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
import earthing.site.Criteria;
import earthing.site.Cubicle;
import earthing.site.Joint;
import earthing.site.Site;
import earthing.site.YesNo;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Heating of every conductor of the earth paths by its own share of the fault, all shots to lockout added. */
final class HeatingStudy {

    private static final Source START = Source.standard(
            "IEC 60364-5-54:2011", "bare conductor, initial temperature 30 °C", Source.Status.FROM_MEMORY);
    private static final Source RESISTANCE = Source.tool("cross-section, length and resistivity at 20 °C");
    private static final Source NEVER = Source.tool("heating needs a duration");

    /** Above this no metal is left; an adiabatic temperature beyond it says only that [°C]. */
    private static final double BEYOND_METALS = 10_000;

    private static final int POINTS_PER_PHASE = 12;

    private final Site site;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final Set<Gap> gaps = new LinkedHashSet<>();
    private Optional<Hottest> hottest = Optional.empty();

    private record Hottest(Member member, SequenceHeating heating, List<Shot> shots, Case circumstances) {}

    private HeatingStudy(Site site) {
        this.site = site;
    }

    /** Heats the conductors in every case of the site as it is. */
    static StudyResults of(List<PowerCase> cases, Site site) {
        return new HeatingStudy(site).run(cases);
    }

    private StudyResults run(List<PowerCase> cases) {
        resistances();
        String arrangement = site.cubicle() == null
                ? ""
                : Arrangement.of(site.cubicle().earth()).map(Arrangement::word).orElse("");
        for (PowerCase each : cases) {
            boolean own = !each.circumstances().keys().containsKey("broken")
                    && each.circumstances()
                            .keys()
                            .getOrDefault("arrangement", arrangement)
                            .equals(arrangement);
            if (own) {
                for (Member member : each.paths().members()) {
                    if (member.intact() && heats(member)) {
                        heat(member, each);
                    }
                }
            }
        }
        return new StudyResults(results, history(), List.copyOf(gaps), in.assumptions(), List.of());
    }

    private static boolean heats(Member member) {
        return member.role() == Role.MAIN_EARTH
                || member.role() == Role.TEE
                || member.role() == Role.OWN_LEAD
                || member.name().equals("second lead");
    }

    private void resistances() {
        for (Member member : EarthPaths.of(site).members()) {
            if (heats(member) && member.conductor().isPresent() && length(member) > 0) {
                Conductor conductor = member.conductor().get();
                try {
                    double area = PoleGeometry.area(conductor, "main-earth.conductor", in);
                    double perLength = PoleGeometry.resistancePerLength(PoleGeometry.metal(conductor.material()), area);
                    results.add(Result.of(
                                    "conductor." + EarthPaths.key(member.name()) + ".resistance",
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
    }

    /** A tee runs level, so its length is not a difference of heights. */
    private double length(Member member) {
        Cubicle cubicle = site.cubicle();
        Measure tee = cubicle == null ? null : cubicle.teeLength();
        return member.role() == Role.TEE && tee != null && tee.isKnown() ? tee.nominal() : member.length();
    }

    private void heat(Member member, PowerCase fault) {
        String id = "conductor." + EarthPaths.key(member.name()) + ".";
        try {
            Conductor conductor = member.conductor()
                    .or(() -> Optional.ofNullable(site.mainEarth()).map(m -> m.conductor()))
                    .orElseThrow(() -> new MissingInput("the conductor is not described", "main-earth.conductor"));
            double area = PoleGeometry.area(conductor, "main-earth.conductor", in);
            Metal metal = PoleGeometry.metal(conductor.material());
            ThermalConstants constants = ThermalTable.find(metal, ThermalEdition.IEC_60949)
                    .orElseGet(() -> ThermalTable.require(metal, ThermalEdition.IEEE_80_2013));
            Criteria criteria = site.criteria();
            double start = in.orElse(
                    criteria == null ? null : criteria.initialTemperature(),
                    "criteria.initial-temperature",
                    30,
                    Dimension.TEMPERATURE,
                    START);
            double current = Math.abs(fault.memberCurrents().getOrDefault(member.name(), 0.0));
            if (fault.neverCleared()) {
                gaps.add(new Gap(
                        id + "final-temperature",
                        fault.circumstances(),
                        "the fault is never cleared, so heating cannot be shown; " + NEVER.locus(),
                        List.of()));
                return;
            }
            List<Shot> shots = shots(fault, current);
            List<TemperatureLimit> limits = limits(conductor, metal, area, member, criteria);
            SequenceHeating heating = SequenceHeating.of(constants, area, start, shots, limits);
            emit(id, heating, fault, current);
            if (fault.at().equals("nominal")
                    && (hottest.isEmpty()
                            || heating.utilisation() > hottest.get().heating().utilisation())) {
                hottest = Optional.of(new Hottest(member, heating, shots, fault.circumstances()));
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap(id + "final-temperature", fault.circumstances()));
        }
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

    private void emit(String id, SequenceHeating heating, PowerCase fault, double current) {
        ThermalConstants metal = heating.metal();
        double end = Math.min(heating.finalTemperature(), BEYOND_METALS);
        String model = "adiabatic, " + fault.shots().size() + " shot(s), own share "
                + earthing.quantity.Numbers.brief(current) + " A, decrement of the whole loop";
        Result finalTemperature = result(id + "final-temperature", fault, end, "degC", model, AdiabaticHeating.IEC);
        results.add(
                heating.finalTemperature() > BEYOND_METALS
                        ? finalTemperature
                        : finalTemperature.withWorked(Worked.of("T", "(b + T_0) * exp(W / (K * A)^2) - b")
                                .with("b", metal.beta(), "K")
                                .with("T_0", heating.initial(), "degC")
                                .with("W", heating.jouleIntegral(), "A2s")
                                .with("K", metal.constant(), "A.s^0.5/m2")
                                .with("A", heating.area(), "m2")
                                .gives(end, "degC")));
        results.add(result(
                id + "temperature-limit",
                fault,
                heating.limit().temperature(),
                "degC",
                "limit: " + heating.limit().subject() + "; all shots to lockout added",
                heating.limit().source()));
        results.add(result(
                id + "first-shot-temperature",
                fault,
                Math.min(heating.afterShot().get(0), BEYOND_METALS),
                "degC",
                model,
                AdiabaticHeating.IEC));
        results.add(result(id + "required-area", fault, heating.requiredArea(), "m2", model, AdiabaticHeating.IEC));
    }

    private static Result result(String id, PowerCase fault, double value, String unit, String model, Source source) {
        return Result.of(id, fault.circumstances(), fault.at(), value, unit, model, source);
    }

    /** Temperature over the sequence with cooling, for the conductor that heats most: information, no criterion. */
    private List<Curve> history() {
        if (hottest.isEmpty()) {
            return List.of();
        }
        Hottest h = hottest.get();
        TemperatureHistory history = TemperatureHistory.of(
                h.heating().metal(),
                SolidRound.ofArea(h.heating().area()),
                h.heating().initial(),
                h.heating().initial(),
                HeatTransfer.STILL_AIR,
                h.shots(),
                POINTS_PER_PHASE);
        int n = history.points().size();
        double[] x = new double[n];
        double[] y = new double[n];
        double[] limit = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = history.points().get(i).time();
            y[i] = history.points().get(i).temperature();
            limit[i] = h.heating().limit().temperature();
        }
        return List.of(new Curve(
                "conductor.temperature-history",
                "Temperature of " + h.member().name() + " over the reclose sequence, with cooling in still air",
                "time",
                "s",
                "temperature",
                "degC",
                List.of(new Curve.Trace("with cooling", x, y), new Curve.Trace("limit", x, limit))));
    }
}
