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
import java.util.List;
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
    private static final String TEMPORARY = "surge.arrester.temporary-overvoltage";

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

    private static void temporary(
            SolvedFault fault, EarthFaultResult circuit, Arresters arresters, FaultResults results, Inputs in)
            throws MissingInput {
        PowerCase power = fault.power();
        double voltage = circuit.temporaryOvervoltage() * circuit.phaseVoltage();
        results.add(Result.of(
                        TEMPORARY,
                        power.circumstances(),
                        power.at(),
                        voltage,
                        "V",
                        "healthy phase to the faulted tank",
                        FaultResults.CIRCUIT)
                .withWorked(Worked.of("U_h", "k * E")
                        .with("k", circuit.temporaryOvervoltage(), "")
                        .with("E", circuit.phaseVoltage(), "V")
                        .gives(voltage, "V")));
        if (power.neverCleared()) {
            add(
                    results,
                    power,
                    in.need(arresters.continuousVoltage(), "arresters.continuous-voltage", Bound.LOW),
                    "never cleared: continuous voltage of the arrester",
                    RATING);
            return;
        }
        double stated = in.need(arresters.temporaryOvervoltage(), "arresters.temporary-overvoltage", Bound.LOW);
        double time = known(arresters.temporaryOvervoltageTime());
        double all = power.shots().stream()
                .mapToDouble(PowerCase.FaultShot::duration)
                .sum();
        add(
                results,
                power,
                stated * Math.pow(time / all, EXPONENT),
                "healthy phase to the faulted tank against the arrester's temporary overvoltage brought to the time of"
                        + " all shots",
                TIME);
    }

    private static double known(@Nullable Measure time) throws MissingInput {
        if (time == null || !time.isKnown()) {
            throw new MissingInput(
                    "the time of the arrester's temporary overvoltage is not given",
                    "arresters.temporary-overvoltage-time");
        }
        return time.at(Bound.LOW);
    }

    private static void add(FaultResults results, PowerCase power, double rating, String model, Source source) {
        results.add(Result.of(TEMPORARY + ".rating", power.circumstances(), power.at(), rating, "V", model, source));
    }
}
