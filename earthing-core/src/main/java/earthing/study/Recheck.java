package earthing.study;

import earthing.conductor.Shot;
import earthing.conductor.ThermalConstants;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.ElementLeakage;
import earthing.electrode.wire.EnergisedElectrodes;
import earthing.fault.EarthFaultResult;
import earthing.network.KirchhoffCheck;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.Site;
import earthing.site.Surges;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * The results of a site verified by code that did not produce them: the laws themselves, or another way to the same
 * number. Each line tells a difference and the bound that it must keep; a difference beyond its bound means that a
 * number of this site is not to be relied on.
 */
public final class Recheck {

    /** Beginning of the ids of all that is found here. */
    public static final String PREFIX = "recheck.";
    /** End of the id of a bound; without it the id is that of the difference. */
    public static final String BOUND = ".bound";

    private static final Source LAWS =
            Source.tool("verified by code that did not produce the result, docs/theory/recheck.md");

    /** Potential of a bar by superposition against that of its electrode, mean over the bar [1]. */
    private static final double BAR_BOUND = 0.02;
    /** Length in radii below which a filament on the axis stands badly for a tube [1]. */
    private static final double THICK = 30;
    /** The same along such a bar; the solution itself takes the tube [1]. */
    private static final double THICK_BOUND = 0.05;
    /** Tables of the surface against the sum of all images, part of the potential rise [1]. */
    private static final double SURFACE_BOUND = 2e-6;
    /** A place within reach that the search missed, part of the touch voltage [1]. */
    private static final double TOUCH_BOUND = 1e-3;
    /** Sums that hold to rounding [1]. */
    private static final double EXACT_BOUND = 1e-6;
    /** Heating by integration, part of the rise in temperature [1]. */
    private static final double HEATING_BOUND = 1e-6;

    private static final double TOLERANCE = 1e-4;
    private static final int PLACES = 24;
    private static final int RINGS = 10;
    private static final double JUST_BELOW = 1e-9;
    private static final double BEYOND_METALS = 10_000;

    private final Site site;
    private final EarthCache cache = new EarthCache();
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();

    private Recheck(Site site) {
        this.site = site;
    }

    /**
     * One thing that was verified.
     *
     * @param id its id without the prefix
     * @param words what was compared with what
     * @param at case and bound at which the difference is greatest
     * @param difference the difference, a part of the quantity itself [1]
     * @param bound what it may be [1]
     */
    public record Line(String id, String words, String at, double difference, double bound) {

        /**
         * Whether the difference keeps its bound.
         *
         * @return true if it does
         */
        public boolean holds() {
            return difference <= bound;
        }
    }

    /**
     * Verifies the results of a site.
     *
     * @param asRead the site, its ground as the file gives it
     * @param studied what {@link SiteStudy} found of it
     * @return those results, and then the differences with their bounds
     */
    public static StudyResults added(Site asRead, StudyResults studied) {
        EarthCache cache = new EarthCache();
        Recheck recheck = new Recheck(SiteGround.of(asRead, cache).site());
        recheck.electrodes();
        recheck.powerFrequency(studied);
        recheck.surge();
        return StudyResults.join(
                List.of(studied, new StudyResults(recheck.results, List.of(), recheck.gaps, List.of(), List.of())));
    }

    /**
     * The lines of a recheck, the greatest difference of each kind.
     *
     * @param results results to which a recheck was added
     * @return the lines; empty where none was
     */
    public static List<Line> lines(StudyResults results) {
        Map<String, Line> worst = new LinkedHashMap<>();
        for (Result result : results.results()) {
            if (!result.id().startsWith(PREFIX) || result.id().endsWith(BOUND)) {
                continue;
            }
            double bound = results.one(result.id() + BOUND, result.circumstances(), result.at())
                    .orElseThrow()
                    .value();
            String place = (result.circumstances().text() + " " + result.at()).strip();
            Line line = new Line(result.id().substring(PREFIX.length()), result.model(), place, result.value(), bound);
            worst.merge(line.id(), line, (a, b) -> b.difference() > a.difference() ? b : a);
        }
        return List.copyOf(worst.values());
    }

    private void tell(String id, Case circumstances, String at, String words, double difference, double bound) {
        results.add(Result.of(PREFIX + id, circumstances, at, difference, "", words, LAWS));
        results.add(Result.of(
                PREFIX + id + BOUND, circumstances, at, bound, "", "largest difference that is accepted", LAWS));
    }

    private void electrodes() {
        for (Bound bound : Bound.values()) {
            String at = bound.name().toLowerCase(Locale.ROOT);
            try {
                SiteEarth.of(site, bound, in, cache).fields().ifPresent(fields -> field(fields, at));
            } catch (MissingInput missing) {
                gaps.add(missing.gap(PREFIX + "electrode", Case.NONE));
                return;
            }
        }
    }

    /** Each electrode in turn carries one ampere and the others float. */
    private void field(EarthElectrodes fields, String at) {
        double bar = 0;
        double thick = 0;
        double sum = 0;
        double surface = 0;
        double reciprocity = 0;
        Map<String, EnergisedElectrodes> energised = new HashMap<>();
        for (String name : fields.names()) {
            EnergisedElectrodes field = fields.carrying(Map.of(name, 1.0));
            energised.put(name, field);
            double rise = field.potentialOf(name);
            for (Bar each : fields.bars()) {
                if (each.sleeve() > 0) {
                    // Within concrete the metal is not at the potential of the soil beside it.
                    continue;
                }
                double off = Math.abs(mean(field, each) - field.potentialOf(each.electrode())) / rise;
                if (each.length() < THICK * each.radius()) {
                    thick = Math.max(thick, off);
                } else {
                    bar = Math.max(bar, off);
                }
            }
            double given = field.leakage().stream()
                    .filter(leak -> leak.electrode().equals(name))
                    .mapToDouble(ElementLeakage::current)
                    .sum();
            sum = Math.max(sum, Math.abs(given - 1));
            for (int i = 0; i < PLACES; i++) {
                double x = (1 + i) * 0.4 * Math.cos(i);
                double y = (1 + i) * 0.4 * Math.sin(i);
                double summed = field.potential(x, y, JUST_BELOW);
                surface = Math.max(surface, Math.abs(field.potential(x, y, 0) - summed) / rise);
            }
        }
        for (String one : fields.names()) {
            for (String other : fields.names()) {
                EnergisedElectrodes ofOne = energised.get(one);
                EnergisedElectrodes ofOther = energised.get(other);
                if (ofOne != null && ofOther != null && !one.equals(other)) {
                    double there = mean(ofOne, fields, other);
                    double back = mean(ofOther, fields, one);
                    reciprocity = Math.max(reciprocity, Math.abs(there - back) / ofOne.potentialOf(one));
                }
            }
        }
        String by = "potential along every bar by superposition of all images, against that of its electrode";
        tell("electrode.potential", Case.NONE, at, by, bar, BAR_BOUND);
        if (thick > 0) {
            tell(
                    "electrode.potential-thick",
                    Case.NONE,
                    at,
                    "the same along bars shorter than 30 radii, whose current the superposition holds on their axis",
                    thick,
                    THICK_BOUND);
        }
        tell(
                "electrode.current",
                Case.NONE,
                at,
                "current of all elements against that of the electrode",
                sum,
                EXACT_BOUND);
        tell(
                "electrode.surface",
                Case.NONE,
                at,
                "surface from tables against the sum of all images",
                surface,
                SURFACE_BOUND);
        if (fields.names().size() > 1) {
            tell(
                    "electrode.reciprocity",
                    Case.NONE,
                    at,
                    "potential at one electrode by the other, there and back by superposition",
                    reciprocity,
                    BAR_BOUND);
        }
    }

    private static double mean(EnergisedElectrodes field, EarthElectrodes fields, String electrode) {
        double sum = 0;
        double length = 0;
        for (Bar bar : fields.bars()) {
            if (bar.electrode().equals(electrode)) {
                sum += mean(field, bar) * bar.length();
                length += bar.length();
            }
        }
        return sum / length;
    }

    /** Mean potential along a bar, at places that are not those of the solution. */
    private static double mean(EnergisedElectrodes field, Bar bar) {
        double sum = 0;
        for (int i = 0; i < PLACES; i++) {
            double t = (i + 0.5) / PLACES;
            sum += field.potential(
                    bar.x1() + t * (bar.x2() - bar.x1()),
                    bar.y1() + t * (bar.y2() - bar.y1()),
                    bar.depth1() + t * (bar.depth2() - bar.depth1()));
        }
        return sum / PLACES;
    }

    private void powerFrequency(StudyResults studied) {
        Site adverse = AdverseInputs.of(site, in);
        FaultStudy.Outcome faults = FaultStudy.of(adverse, cache, StudyScope.AS_BUILT);
        for (SolvedFault fault : faults.solved()) {
            fault.circuit().ifPresent(circuit -> currents(fault, circuit));
        }
        List<PowerCase> atBounds = faults.cases().stream()
                .filter(c -> !GoverningResults.beside(c.at())
                        && !c.circumstances().keys().containsKey("broken"))
                .toList();
        for (HeatingStudy.Heated heated : HeatingStudy.heated(PowerStudy.forHeating(atBounds), adverse)) {
            heating(heated);
        }
        for (PowerCase fault : PowerStudy.forTouch(atBounds)) {
            studied.one("touch.cubicle.voltage", fault.circumstances(), fault.at())
                    .ifPresent(touch -> touch(fault, touch));
        }
    }

    /** The current at the fault leaves through the pole and its wires, and nothing else. */
    private void currents(SolvedFault fault, EarthFaultResult circuit) {
        Complex left = circuit.totalCurrent();
        if (left.abs() == 0) {
            return;
        }
        Complex ways = Complex.ZERO;
        for (EarthFaultResult.Wire wire : circuit.wires()) {
            ways = ways.add(wire.away());
        }
        Complex pole = circuit.branchCurrents().values().stream().reduce(Complex.ZERO, Complex::add);
        double off = left.subtract(ways).subtract(pole).abs() / left.abs();
        PowerCase power = fault.power();
        tell(
                "fault.currents",
                power.circumstances(),
                power.at(),
                "fault current against the sum of pole and wires",
                off,
                EXACT_BOUND);
    }

    /** The equation of the heated conductor integrated step by step, with the resistance of its temperature. */
    private void heating(HeatingStudy.Heated heated) {
        ThermalConstants metal = heated.heating().metal();
        double area = heated.heating().area();
        double[] temperature = {heated.heating().initial()};
        for (Shot shot : heated.shots()) {
            double current = shot.current() * shot.decrement();
            if (!(current > 0 && shot.duration() > 0) || temperature[0] > BEYOND_METALS) {
                continue;
            }
            double perKelvin = current * current * metal.resistivity20() / (area * area * metal.heatCapacity());
            new DormandPrince853Integrator(shot.duration() * 1e-9, shot.duration(), 1e-9, 1e-10)
                    .integrate(new Warming(perKelvin, metal.alpha20()), 0, temperature, shot.duration(), temperature);
        }
        double rise = heated.heating().finalTemperature() - heated.heating().initial();
        if (heated.heating().finalTemperature() > BEYOND_METALS || !(rise > 0)) {
            return;
        }
        double integrated = temperature[0] - heated.heating().initial();
        tell(
                "conductor.heating",
                heated.fault().circumstances(),
                heated.fault().at(),
                "rise in temperature of every conductor against its differential equation, integrated step by step",
                Math.abs(integrated - rise) / rise,
                HEATING_BOUND);
    }

    private record Warming(double rate, double alpha) implements FirstOrderDifferentialEquations {
        @Override
        public int getDimension() {
            return 1;
        }

        @Override
        public void computeDerivatives(double t, double[] y, double[] slope) {
            slope[0] = rate * (1 + alpha * (y[0] - 20));
        }
    }

    /** No place within reach may be worse than the one that the search found; the ground by superposition. */
    private void touch(PowerCase fault, Result touch) {
        Optional<EarthElectrodes> fields = fault.earth().fields();
        Double metal = fault.rise().get(EarthPaths.CUBICLE);
        boolean onMat = OperatorPlace.bondedTo(fault.site()).isPresent();
        if (fields.isEmpty() || metal == null || onMat || !(touch.value() > 0)) {
            return;
        }
        try {
            double lead = site.mainEarth() == null || site.mainEarth().offset() == null
                    ? 0.15
                    : in.need(site.mainEarth().offset(), "main-earth.offset");
            double reach = site.cubicle() == null || site.cubicle().reach() == null
                    ? 1
                    : in.need(site.cubicle().reach(), "cubicle.reach");
            EnergisedElectrodes field = fields.get().carrying(fault.electrodeCurrents());
            double worst = 0;
            for (int ring = 0; ring <= RINGS; ring++) {
                for (int i = 0; i < PLACES; i++) {
                    double angle = 2 * Math.PI * (i + 0.3) / PLACES;
                    double r = reach * ring / RINGS;
                    double ground = field.potential(lead + r * Math.cos(angle), r * Math.sin(angle), JUST_BELOW);
                    worst = Math.max(worst, Math.abs(metal - ground));
                }
            }
            tell(
                    "touch.cubicle",
                    fault.circumstances(),
                    fault.at(),
                    "touch voltage at the cubicle against places within reach, the ground by superposition: how much"
                            + " worse one of them is",
                    Math.max(0, worst / touch.value() - 1),
                    TOUCH_BOUND);
        } catch (MissingInput missing) {
            gaps.add(missing.gap(PREFIX + "touch", fault.circumstances()));
        }
    }

    /** Kirchhoff's laws, each branch's own equation and the energy, in the circuit with the core open and bonded. */
    private void surge() {
        for (String wave : Surges.verdictWaves(site.surges())) {
            Case circumstances = Case.NONE.with("wave", wave);
            try {
                SurgeWave shape = SurgeWave.named(wave);
                double peak = site.surges() == null || site.surges().current() == null
                        ? SurgeStudy.CURRENT
                        : in.need(site.surges().current(), "surges.current");
                SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, in, cache);
                for (boolean bonded : new boolean[] {false, true}) {
                    PoleCircuit.Built built =
                            PoleCircuit.of(site, EarthPaths.of(site), earth, shape.current(peak), bonded, in);
                    KirchhoffCheck check = KirchhoffCheck.of(TransientSolution.solve(
                            built.circuit(), new TimeGrid(shape.end(), shape.firstStep(), TOLERANCE)));
                    String at = bonded ? "core bonded" : "core open";
                    tell(
                            "surge.nodes",
                            circumstances,
                            at,
                            "currents at every node cancel",
                            check.nodeResidual(),
                            EXACT_BOUND);
                    tell(
                            "surge.branches",
                            circumstances,
                            at,
                            "every branch obeys its own equation, integrated by trapezoids",
                            check.branchResidual(),
                            SurgeStudy.RECHECK_BOUND);
                    tell(
                            "surge.energy",
                            circumstances,
                            at,
                            "energy of the sources is found again in what is heated and stored",
                            check.energyResidual(),
                            SurgeStudy.RECHECK_BOUND);
                }
            } catch (MissingInput missing) {
                gaps.add(missing.gap(PREFIX + "surge", circumstances));
            }
        }
    }
}
