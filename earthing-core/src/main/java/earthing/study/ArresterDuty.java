package earthing.study;

import earthing.fault.EarthFaultResult;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.ArresterSide;
import earthing.site.Arresters;
import earthing.site.NeutralMethod;
import earthing.site.Site;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Voltages that the arresters have to stand at power frequency, in service and during an earth fault. */
final class ArresterDuty {

    private static final Source RATING = Source.standard(
            "IEC 60099-5:2018", "continuous operating voltage by treatment of the neutral", Source.Status.FROM_MEMORY);
    private static final Source TIME = Source.standard(
            "IEC 60099-5:2018",
            "temporary overvoltage of another duration, U * (T / t)^m with m = 0.02",
            Source.Status.FROM_MEMORY);
    /** Exponent of withstand against time [1]. */
    static final double EXPONENT = 0.02;

    private static final String CONTINUOUS = "surge.arrester.continuous-voltage";
    /** Id of the voltage of a healthy phase to the faulted tank. */
    static final String TEMPORARY = "surge.arrester.temporary-overvoltage";

    private ArresterDuty() {}

    static void of(Site site, List<SolvedFault> faults, boolean sequencesKnown, FaultResults results, Inputs in) {
        Arresters arresters = site.arresters();
        if (arresters == null || arresters.side() == ArresterSide.NONE || arresters.side() == ArresterSide.UNKNOWN) {
            return;
        }
        boolean single = site.system().neutral().method() == NeutralMethod.SINGLE_WIRE_EARTH_RETURN;
        boolean sustained = faults.stream().anyMatch(f -> f.power().neverCleared());
        try {
            continuous(site, arresters, sustained, single, results, in);
        } catch (MissingInput missing) {
            results.gap(missing.gap(CONTINUOUS, Case.NONE));
        }
        if (single) {
            return; // no healthy phase that the fault could raise
        }
        if (!sequencesKnown) {
            results.gap(new Gap(
                    TEMPORARY,
                    Case.NONE,
                    "the three-phase fault current is not given, and with it the voltage of the healthy phases",
                    List.of("system.three-phase-fault-current")));
            return;
        }
        try {
            for (SolvedFault fault : faults) {
                if (fault.circuit().isPresent() && !fault.power().shots().isEmpty()) {
                    temporary(fault, fault.circuit().get(), arresters, results, in);
                }
            }
        } catch (MissingInput missing) {
            results.gap(missing.gap(TEMPORARY, Case.NONE));
        }
    }

    private static void continuous(
            Site site, Arresters arresters, boolean sustained, boolean single, FaultResults results, Inputs in)
            throws MissingInput {
        double highest = in.need(site.system().highestVoltage(), "system.highest-voltage", Bound.HIGH);
        double rating = in.need(arresters.continuousVoltage(), "arresters.continuous-voltage", Bound.LOW);
        boolean whole = sustained || single;
        double needed = whole ? highest : highest / Math.sqrt(3);
        String model = single
                ? "highest voltage of the single wire to earth"
                : sustained
                        ? "highest voltage between phases, an earth fault can stand"
                        : "highest voltage to neutral, every earth fault is cleared";
        results.add(Result.of(CONTINUOUS, Case.NONE, "nominal", needed, "V", model, RATING)
                .withWorked(Worked.of("U_c", whole ? "U_m" : "U_m / sqrt(3)")
                        .with("U_m", highest, "V")
                        .gives(needed, "V")));
        results.add(Result.of(
                CONTINUOUS + ".rating",
                Case.NONE,
                "nominal",
                rating,
                "V",
                "continuous voltage needed: " + model,
                RATING));
    }

    /** What a search for a worse fault asks: the faults of one kind in one state, at the points of the ground. */
    record Asked(
            FaultNetwork.State state,
            Case circumstances,
            OvervoltageSearch.Network network,
            List<OvervoltageSearch.Ground> grounds) {

        /** Copies the list. */
        Asked {
            grounds = List.copyOf(grounds);
        }
    }

    /** What is asked between two of its grounds. */
    private record Between(Asked asked, OvervoltageSearch.Ground low, OvervoltageSearch.Ground high) {}

    /** The fault that strains the arresters most within the bounds of network and ground; it stands beside the bounds. */
    static void worst(Site site, FaultClearing clearing, List<Asked> asked, FaultResults results, Inputs in) {
        Arresters arresters = site.arresters();
        if (arresters == null || arresters.side() == ArresterSide.NONE || arresters.side() == ArresterSide.UNKNOWN) {
            return;
        }
        try {
            Bears stated = Bears.of(arresters, in);
            List<Between> searches = asked.stream()
                    .flatMap(each ->
                            ends(each.grounds()).stream().map(ends -> new Between(each, ends.get(0), ends.get(1))))
                    .toList();
            List<Optional<OvervoltageSearch.Found>> found = searches.parallelStream()
                    .map(one -> new OvervoltageSearch(
                                    site,
                                    one.asked().state(),
                                    one.asked().network(),
                                    c -> voltage(c) / stated.during(shots(clearing, c)))
                            .between(one.low(), one.high()))
                    .toList();
            for (int i = 0; i < searches.size(); i++) {
                Case circumstances = searches.get(i).asked().circumstances();
                found.get(i)
                        .ifPresent(worst -> emit(
                                circumstances,
                                worst.at(),
                                worst.circuit(),
                                stated,
                                shots(clearing, worst.circuit()),
                                results));
            }
        } catch (MissingInput missing) {
            return; // told where the faults at the bounds are looked at
        }
    }

    /** The grounds of the least and the greatest impedance, for each bound of the neutral's earths. */
    private static List<List<OvervoltageSearch.Ground>> ends(List<OvervoltageSearch.Ground> grounds) {
        Comparator<OvervoltageSearch.Ground> bySize =
                Comparator.comparingDouble(g -> g.pole().abs());
        return Arrays.stream(Bound.values())
                .map(bound -> grounds.stream().filter(g -> g.others() == bound).toList())
                .filter(group -> !group.isEmpty())
                .map(group -> List.of(
                        group.stream().min(bySize).orElseThrow(),
                        group.stream().max(bySize).orElseThrow()))
                .toList();
    }

    private static List<PowerCase.FaultShot> shots(FaultClearing clearing, EarthFaultResult circuit) {
        return FaultClearing.shots(
                clearing.sequence().run(circuit.totalCurrent().abs()));
    }

    private static double voltage(EarthFaultResult circuit) {
        return circuit.temporaryOvervoltage() * circuit.phaseVoltage();
    }

    /** What the arrester bears for how long. */
    private record Bears(double continuous, double temporary, double time) {

        static Bears of(Arresters arresters, Inputs in) throws MissingInput {
            return new Bears(
                    in.need(arresters.continuousVoltage(), "arresters.continuous-voltage", Bound.LOW),
                    in.need(arresters.temporaryOvervoltage(), "arresters.temporary-overvoltage", Bound.LOW),
                    known(arresters.temporaryOvervoltageTime()));
        }

        static boolean never(List<PowerCase.FaultShot> shots) {
            return shots.stream().anyMatch(s -> Double.isInfinite(s.duration()));
        }

        /** Voltage that it bears for all shots [V]. */
        double during(List<PowerCase.FaultShot> shots) {
            double all =
                    shots.stream().mapToDouble(PowerCase.FaultShot::duration).sum();
            return never(shots) ? continuous : temporary * Math.pow(time / all, EXPONENT);
        }
    }

    private static void temporary(
            SolvedFault fault, EarthFaultResult circuit, Arresters arresters, FaultResults results, Inputs in)
            throws MissingInput {
        PowerCase power = fault.power();
        healthy(power.circumstances(), power.at(), circuit, results);
        double continuous = power.neverCleared()
                ? in.need(arresters.continuousVoltage(), "arresters.continuous-voltage", Bound.LOW)
                : Double.NaN;
        Bears bears = power.neverCleared()
                ? new Bears(continuous, Double.NaN, Double.NaN)
                : new Bears(
                        continuous,
                        in.need(arresters.temporaryOvervoltage(), "arresters.temporary-overvoltage", Bound.LOW),
                        known(arresters.temporaryOvervoltageTime()));
        rating(power.circumstances(), power.at(), bears, power.shots(), results);
    }

    private static void emit(
            Case circumstances,
            String at,
            EarthFaultResult circuit,
            Bears bears,
            List<PowerCase.FaultShot> shots,
            FaultResults results) {
        healthy(circumstances, at, circuit, results);
        rating(circumstances, at, bears, shots, results);
    }

    private static void healthy(Case circumstances, String at, EarthFaultResult circuit, FaultResults results) {
        results.add(Result.of(
                        TEMPORARY,
                        circumstances,
                        at,
                        voltage(circuit),
                        "V",
                        "healthy phase to the faulted tank",
                        FaultResults.CIRCUIT)
                .withWorked(Worked.of("U_h", "k * E")
                        .with("k", circuit.temporaryOvervoltage(), "")
                        .with("E", circuit.phaseVoltage(), "V")
                        .gives(voltage(circuit), "V")));
    }

    private static void rating(
            Case circumstances, String at, Bears bears, List<PowerCase.FaultShot> shots, FaultResults results) {
        boolean never = Bears.never(shots);
        results.add(Result.of(
                TEMPORARY + ".rating",
                circumstances,
                at,
                bears.during(shots),
                "V",
                never
                        ? "never cleared: continuous voltage of the arrester"
                        : "healthy phase to the faulted tank against the arrester's temporary overvoltage brought to the"
                                + " time of all shots",
                never ? RATING : TIME));
    }

    private static double known(@Nullable Measure time) throws MissingInput {
        if (time == null || !time.isKnown()) {
            throw new MissingInput(
                    "the time of the arrester's temporary overvoltage is not given",
                    "arresters.temporary-overvoltage-time");
        }
        return time.at(Bound.LOW);
    }
}
