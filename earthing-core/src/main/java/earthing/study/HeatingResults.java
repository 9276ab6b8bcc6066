package earthing.study;

import earthing.conductor.AdiabaticHeating;
import earthing.conductor.AreaComparison;
import earthing.conductor.Metal;
import earthing.conductor.NonAdiabaticFactor;
import earthing.conductor.NonAdiabaticFactor.Insulation;
import earthing.conductor.SequenceHeating;
import earthing.conductor.Shot;
import earthing.conductor.SizeSeries;
import earthing.conductor.StandardSize;
import earthing.conductor.ThermalConstants;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.ConductorForm;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Turns the heating of one conductor in one fault into results: temperatures, areas by both standards, next size. */
final class HeatingResults {

    /** Above this no metal is left; an adiabatic temperature beyond it says only that [°C]. */
    private static final double BEYOND_METALS = 10_000;

    private static final double LONGEST_SHOT = 5;
    private static final int MOST_STEPS = 200;
    private static final Source DECLARED = Source.tool("as declared in the site file");

    /**
     * A conductor as it is heated.
     *
     * @param id beginning of its results' ids, with a full stop
     * @param area cross-section [m²]
     * @param metal its metal
     * @param declared the declared cross-section, empty where it was not declared
     * @param insulated whether it is covered
     * @param tape whether it is a tape, for which the series of wires mean nothing
     */
    record Body(String id, double area, Metal metal, Optional<Measure> declared, boolean insulated, boolean tape) {

        static boolean isTape(earthing.site.Conductor conductor) {
            return conductor.form() == ConductorForm.TAPE;
        }
    }

    private final Body body;
    private final PowerCase fault;
    private final Consumer<Result> sink;

    HeatingResults(Body body, PowerCase fault, Consumer<Result> sink) {
        this.body = body;
        this.fault = fault;
        this.sink = sink;
    }

    void emit(SequenceHeating heating, List<Shot> shots, double current) {
        add("current", current, "A", "share of the fault current, r.m.s. without offset", FaultResults.CIRCUIT);
        add("area", body.area(), "m2", "cross-section fitted", DECLARED);
        temperatures(heating);
        String model = "adiabatic, all shots to lockout, decrement of the whole loop on each";
        sink.accept(result("required-area", heating.requiredArea(), "m2", model, AdiabaticHeating.IEC)
                .withWorked(Worked.of("A", "W^0.5 / (K * L^0.5)")
                        .with("W", heating.jouleIntegral(), "A2s")
                        .with("K", heating.metal().constant(), "A.s^0.5/m2")
                        .with("L", logarithm(heating), "")
                        .gives(heating.requiredArea(), "m2")));
        comparison(heating);
        standardSize(heating);
        if (body.insulated()) {
            nonAdiabatic(heating, shots);
        }
    }

    private void temperatures(SequenceHeating heating) {
        ThermalConstants metal = heating.metal();
        double end = end(heating);
        String model = "adiabatic, " + fault.shots().size() + " shot(s), decrement of the whole loop on each";
        Result finalTemperature = result("final-temperature", end, "degC", model, AdiabaticHeating.IEC);
        sink.accept(
                heating.finalTemperature() > BEYOND_METALS
                        ? finalTemperature
                        : finalTemperature.withWorked(Worked.of("T", "(b + T_0) * exp(W / (K * A)^2) - b")
                                .with("b", metal.beta(), "K")
                                .with("T_0", heating.initial(), "degC")
                                .with("W", heating.jouleIntegral(), "A2s")
                                .with("K", metal.constant(), "A.s^0.5/m2")
                                .with("A", heating.area(), "m2")
                                .gives(end, "degC")));
        add(
                "temperature-limit",
                heating.limit().temperature(),
                "degC",
                "limit: " + heating.limit().subject() + "; all shots to lockout added",
                heating.limit().source());
        add(
                "first-shot-temperature",
                Math.min(heating.afterShot().get(0), BEYOND_METALS),
                "degC",
                model,
                AdiabaticHeating.IEC);
    }

    /** Final temperature, no higher than any metal bears [°C]. */
    static double end(SequenceHeating heating) {
        return Math.min(heating.finalTemperature(), BEYOND_METALS);
    }

    private static double logarithm(SequenceHeating heating) {
        return Math.log1p((heating.limit().temperature() - heating.initial())
                / (heating.metal().beta() + heating.initial()));
    }

    /** Both standards for the same heat; the constants of the metals differ a little. */
    private void comparison(SequenceHeating heating) {
        if (ThermalTable.find(body.metal(), ThermalEdition.IEC_60949).isEmpty()
                || ThermalTable.find(body.metal(), ThermalEdition.IEEE_80_2013).isEmpty()) {
            return;
        }
        AreaComparison both = AreaComparison.of(
                body.metal(),
                ThermalEdition.IEEE_80_2013,
                heating.jouleIntegral(),
                heating.initial(),
                heating.limit().temperature());
        add(
                "required-area-ieee",
                both.ieee(),
                "m2",
                "the same heat by the constants of IEEE Std 80-2013",
                AdiabaticHeating.IEEE);
        if (both.iec() > 0) {
            sink.accept(result(
                            "required-area-difference",
                            both.difference(),
                            "",
                            "IEEE Std 80-2013 over IEC 60949, less one",
                            AdiabaticHeating.IEEE)
                    .withWorked(Worked.of("d", "A_2 / A_1 - 1")
                            .with("A_2", both.ieee(), "m2")
                            .with("A_1", both.iec(), "m2")
                            .gives(both.difference(), "")));
        }
    }

    private void standardSize(SequenceHeating heating) {
        if (body.tape()) {
            return;
        }
        SizeSeries series = body.declared().filter(HeatingResults::american).isPresent()
                ? SizeSeries.AWG_KCMIL
                : SizeSeries.IEC_60228;
        Optional<StandardSize> next = series.atLeast(heating.requiredArea());
        next.ifPresent(size -> add(
                "standard-area",
                size.area(),
                "m2",
                "next size of the series for heating alone; minimum sizes are another check",
                series.source()));
    }

    /** Whether the author thinks in wire gauges. */
    private static boolean american(Measure declared) {
        return declared.bounds()
                .map(b -> b.nominal().text().strip())
                .filter(t -> t.endsWith("AWG") || t.endsWith("kcmil"))
                .isPresent();
    }

    /** What an insulated conductor bears more, because its covering takes up heat: information, no criterion. */
    private void nonAdiabatic(SequenceHeating heating, List<Shot> shots) {
        boolean printed =
                body.metal().family() == Metal.Family.COPPER || body.metal().family() == Metal.Family.ALUMINIUM;
        if (!printed || shots.stream().anyMatch(s -> s.duration() > LONGEST_SHOT) || !(heating.jouleIntegral() > 0)) {
            return;
        }
        double factor = Math.sqrt(heating.jouleIntegral() / reduced(shots, heating.area()));
        sink.accept(result(
                "non-adiabatic-factor",
                factor,
                "",
                "current borne over adiabatic current, covering of PVC up to 3 kV, each shot by its own"
                        + " duration; information, no credit is taken",
                NonAdiabaticFactor.SOURCE));
        double perRoot = heating.requiredArea() / Math.sqrt(heating.jouleIntegral());
        double area = heating.requiredArea();
        // Falls steadily: a smaller area gives a larger factor.
        for (int i = 0; i < MOST_STEPS; i++) {
            double next = perRoot * Math.sqrt(reduced(shots, area));
            boolean settled = Math.abs(next - area) <= 1e-13 * area;
            area = next;
            if (settled) {
                break;
            }
        }
        add(
                "required-area-non-adiabatic",
                area,
                "m2",
                "with the non-adiabatic factor at that area; information, no credit is taken",
                NonAdiabaticFactor.SOURCE);
    }

    /** Heat that counts when each shot is divided by the square of its factor [A²·s]. */
    private double reduced(List<Shot> shots, double area) {
        double sum = 0;
        for (Shot shot : shots) {
            double factor = NonAdiabaticFactor.conductor(body.metal(), Insulation.PVC_TO_3_KV, area, shot.duration());
            sum += shot.jouleIntegral() / factor / factor;
        }
        return sum;
    }

    private void add(String quantity, double value, String unit, String model, Source source) {
        sink.accept(result(quantity, value, unit, model, source));
    }

    private Result result(String quantity, double value, String unit, String model, Source source) {
        return Result.of(body.id() + quantity, fault.circumstances(), fault.at(), value, unit, model, source);
    }
}
