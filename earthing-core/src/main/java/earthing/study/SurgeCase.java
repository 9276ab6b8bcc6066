package earthing.study;

import earthing.conductor.AdiabaticHeating;
import earthing.conductor.ThermalConstants;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import earthing.network.Branch;
import earthing.network.Circuit;
import earthing.network.KirchhoffCheck;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One surge on one arrangement: the core open at the cubicle, and bonded to chassis at both ends. */
final class SurgeCase {

    static final Source SCREEN_LIMIT_SOURCE =
            Source.standard("IEC 60949", "screens with thermoplastic sheath, short circuit", Source.Status.FROM_MEMORY);
    /** Final temperature of a screen under a thermoplastic sheath [°C]. */
    static final double SCREEN_LIMIT = 200;
    /** Temperature of a screen before the surge [°C]. */
    private static final double SCREEN_START = 40;

    private static final double MU0_OVER_2PI = 2e-7;
    /** Keeps the peak of an inductive voltage to 0.01 %, however long the record. */
    private static final double TOLERANCE = 1e-4;

    /** Part of the driving quantity below which a value is rounding. */
    static final double ROUNDING = 1e-9;

    private SurgeCase() {}

    /** The open end of the core. */
    record OpenEnd(
            double voltage,
            double time,
            double resistive,
            double inductive,
            Optional<Worked> working,
            Waveform waveform) {}

    /** Current in a screen that is bonded at both ends. */
    record ScreenCurrent(
            double peak, double share, double charge, double temperature, double bondVoltage, Worked working) {}

    /** A gap with the voltage that would stand across it if nothing flashed over. */
    record Stress(PoleGap gap, double prospective) {}

    /** What one case gives. */
    record Outcome(
            PoleCircuit.Built built,
            Waveform tankWave,
            OpenEnd open,
            double shortCurrent,
            double shortCharge,
            double tank,
            double cubicle,
            double alongLead,
            List<Stress> gaps,
            Optional<Flashover> flashover,
            Map<String, Double> members,
            Optional<ScreenCurrent> screen,
            KirchhoffCheck recheck,
            List<String> notes) {

        /** The same with another hand value of the open end, or with none. */
        Outcome worked(Optional<Worked> working) {
            OpenEnd end = new OpenEnd(
                    open.voltage(), open.time(), open.resistive(), open.inductive(), working, open.waveform());
            return new Outcome(
                    built,
                    tankWave,
                    end,
                    shortCurrent,
                    shortCharge,
                    tank,
                    cubicle,
                    alongLead,
                    gaps,
                    flashover,
                    members,
                    screen,
                    recheck,
                    notes);
        }

        /** Prospective voltage across a gap by its key [V]. */
        double across(String gap) {
            return gaps.stream()
                    .filter(s -> s.gap().key().equals(gap))
                    .mapToDouble(Stress::prospective)
                    .findFirst()
                    .orElseThrow();
        }
    }

    static Outcome solve(
            Site site, EarthPaths paths, EarthCache cache, Bound bound, SurgeWave wave, double peak, Inputs in)
            throws MissingInput {
        SiteEarth earth = SiteEarth.of(site, bound, in, cache);
        PoleCircuit.Built open = PoleCircuit.of(site, paths, earth, wave.current(peak), false, in);
        PoleCircuit.Built bonded = PoleCircuit.of(site, paths, earth, wave.current(peak), true, in);
        TimeGrid grid = new TimeGrid(wave.end(), wave.firstStep(), TOLERANCE);
        TransientSolution solution = TransientSolution.solve(open.circuit(), grid);
        return of(paths, earth, open, bonded, open.circuit(), PoleGap.of(site, open, in), solution, grid, wave, peak);
    }

    /**
     * The outcome of circuits that are built.
     *
     * @param open circuit with the core open at the cubicle
     * @param bonded the same with the core bonded at both ends
     * @param pole the pole's own circuit, whose members are told
     * @param gaps gaps of the pole that may strike
     * @param solution solution of the first circuit
     */
    static Outcome of(
            EarthPaths paths,
            SiteEarth earth,
            PoleCircuit.Built open,
            PoleCircuit.Built bonded,
            Circuit pole,
            List<PoleGap> gaps,
            TransientSolution solution,
            TimeGrid grid,
            SurgeWave wave,
            double peak) {
        TransientSolution shorted = TransientSolution.solve(bonded.circuit(), grid);
        Waveform core = shorted.current(PoleCircuit.CORE);
        Waveform tank = solution.potential(EarthPaths.TANK);
        Waveform cubicle = solution.potential(EarthPaths.CUBICLE);
        Waveform atLead = solution.potential(
                PoleGap.leadNode(open.circuit(), open.geometry().cubicleHeight()));
        double scale = Math.abs(tank.peak().value());
        List<Stress> stresses = new ArrayList<>();
        boolean strikes = false;
        for (PoleGap gap : gaps) {
            double prospective = settled(gap.prospective(solution), scale);
            strikes |= prospective >= gap.strength();
            stresses.add(new Stress(gap, prospective));
        }
        return new Outcome(
                open,
                tank,
                openEnd(open, paths, solution, earth, wave, peak),
                settled(Math.abs(core.peak().value()), peak),
                settled(Math.abs(core.integral()), peak * wave.end()),
                scale,
                settled(Math.abs(cubicle.peak().value()), scale),
                settled(Math.abs(tank.minus(atLead).peak().value()), scale),
                List.copyOf(stresses),
                strikes ? Optional.of(Flashover.of(gaps, solution, open, bonded, pole, grid, peak)) : Optional.empty(),
                members(pole, solution, peak),
                screen(open, solution, wave),
                KirchhoffCheck.of(solution),
                open.notes());
    }

    /** What is nothing but the rounding of the solver beside the quantities that drive it, is nothing. */
    static double settled(double value, double scale) {
        return Math.abs(value) < ROUNDING * scale ? 0 : value;
    }

    private static OpenEnd openEnd(
            PoleCircuit.Built built,
            EarthPaths paths,
            TransientSolution solution,
            SiteEarth earth,
            SurgeWave wave,
            double peak) {
        Waveform voltage = solution.voltage(PoleCircuit.CORE_END, EarthPaths.CUBICLE);
        Waveform.Extreme top = voltage.peak();
        double scale = Math.abs(solution.potential(EarthPaths.TANK).peak().value());
        boolean known = built.path().stream().anyMatch(s -> s.branch().equals(PoleCircuit.SCREEN))
                || CablePath.alongMainEarth(built.path(), paths);
        Optional<Worked> working = known ? Optional.of(hand(built, earth, wave, peak, top.time())) : Optional.empty();
        if (settled(top.value(), scale) == 0) {
            // No current runs along the cable, nothing stands at its end: there is no time of peak and no split either.
            return new OpenEnd(0, 0, 0, 0, working, voltage);
        }
        double resistive = CablePath.resistive(built.path(), built.circuit(), solution, top.time());
        return new OpenEnd(
                Math.abs(top.value()),
                top.time(),
                Math.signum(top.value()) * resistive,
                Math.abs(top.value()) - Math.signum(top.value()) * resistive,
                working,
                voltage);
    }

    /**
     * The student's value at the time of the peak: V = M·dI/dt + R·I. Through the tee only the loop beside the upper lead
     * counts; through the soil also the loop below and the electrode less its mutual part; through a screen its resistance.
     * All of the surge is taken to run down the main earth.
     */
    private static Worked hand(PoleCircuit.Built built, SiteEarth earth, SurgeWave wave, double peak, double time) {
        PoleGeometry g = built.geometry();
        double current = peak * wave.at(time);
        double slope = peak * wave.slope(time);
        double run = g.tankHeight() - g.cubicleHeight();
        Branch.Inductor lead = firstLead(built);
        double radius = PoleGeometry.radius(PoleGeometry.resistancePerLength(earthing.conductor.Metal.COPPER, 1)
                / Math.max(lead.resistance() / run, 1e-9));
        double loop = MU0_OVER_2PI * run * Math.log(g.separation() / radius);
        boolean screen = built.path().stream().anyMatch(s -> s.branch().equals(PoleCircuit.SCREEN));
        if (screen) {
            Branch.Inductor branch = (Branch.Inductor) built.circuit().branch(PoleCircuit.SCREEN);
            // About half the current takes the screen where the cubicle leads it on, none where it does not.
            double share = leadsOn(built.circuit()) ? 0.5 : 0;
            return Worked.of("V", "R * p * I")
                    .with("R", branch.resistance(), "ohm")
                    .with("p", share, "")
                    .with("I", current, "A")
                    .gives(branch.resistance() * share * current, "V");
        }
        List<String> electrodes = built.path().stream()
                .map(CablePath.Step::branch)
                .filter(b -> b.startsWith("earth of ") && !ElectrodeCircuit.inner(b))
                .map(b -> b.substring("earth of ".length()))
                .toList();
        if (electrodes.size() == 2) {
            double self = earth.resistance(electrodes.get(0), electrodes.get(0));
            double mutual = earth.resistance(electrodes.get(0), electrodes.get(1));
            // Below the cubicle its own lead comes down beside the main one; the loop between the two counts.
            double below = MU0_OVER_2PI * g.cubicleHeight() * Math.log(g.ownLeadOffset() / radius);
            return Worked.of("V", "(M + M_2) * S + (R - R_m) * I")
                    .with("M", loop, "H")
                    .with("M_2", below, "H")
                    .with("S", slope, "A/s")
                    .with("R", self, "ohm")
                    .with("R_m", mutual, "ohm")
                    .with("I", current, "A")
                    .gives((loop + below) * slope + (self - mutual) * current, "V");
        }
        return Worked.of("V", "M * S + R * I")
                .with("M", loop, "H")
                .with("S", slope, "A/s")
                .with("R", lead.resistance(), "ohm")
                .with("I", current, "A")
                .gives(loop * slope + lead.resistance() * current, "V");
    }

    /** Whether a way leads on from the cubicle beside the cable. */
    private static boolean leadsOn(Circuit circuit) {
        return circuit.branches().stream()
                .filter(b -> b instanceof Branch.Inductor || b instanceof Branch.Resistor)
                .filter(b -> !b.name().equals(PoleCircuit.CORE)
                        && !b.name().startsWith(PoleCircuit.SCREEN)
                        && !b.name().startsWith("screen bond"))
                .anyMatch(b -> b.from().equals(EarthPaths.CUBICLE) || b.to().equals(EarthPaths.CUBICLE));
    }

    private static Branch.Inductor firstLead(PoleCircuit.Built built) {
        return built.circuit().branches(Branch.Inductor.class).get(0);
    }

    /** The screen is told apart, with its share and heating. */
    private static Map<String, Double> members(Circuit circuit, TransientSolution solution, double peak) {
        Map<String, Double> peaks = MemberCurrents.peaks(circuit, solution, peak);
        peaks.remove(PoleCircuit.SCREEN);
        return peaks;
    }

    private static Optional<ScreenCurrent> screen(PoleCircuit.Built built, TransientSolution solution, SurgeWave wave) {
        if (built.circuit().branches().stream().noneMatch(b -> b.name().equals(PoleCircuit.SCREEN))) {
            return Optional.empty();
        }
        Waveform current = solution.current(PoleCircuit.SCREEN);
        // A recorded wave stands in amperes and is scaled by one, so the source itself tells what was driven.
        double driven = Math.abs(solution.current(PoleCircuit.SOURCE).peak().value());
        double top = settled(Math.abs(current.peak().value()), driven);
        double action = current.squareIntegral();
        PoleGeometry g = built.geometry();
        ThermalConstants metal = ThermalTable.require(g.screenMetal(), ThermalEdition.IEC_60949);
        double temperature = AdiabaticHeating.finalTemperature(metal, g.screenArea(), action, SCREEN_START);
        double bondVoltage = 0;
        for (String bond : List.of("screen bond at tank", "screen bond at cubicle")) {
            if (built.circuit().branches().stream().anyMatch(b -> b.name().equals(bond))) {
                Branch branch = built.circuit().branch(bond);
                bondVoltage = Math.max(
                        bondVoltage,
                        Math.abs(solution.voltage(branch.from(), branch.to())
                                .peak()
                                .value()));
            }
        }
        return Optional.of(new ScreenCurrent(
                top,
                top / driven,
                settled(Math.abs(current.integral()), driven * wave.end()),
                temperature,
                bondVoltage,
                Worked.of("T", "(b + T_0) * exp(W / (K * A)^2) - b")
                        .with("b", metal.beta(), "K")
                        .with("T_0", SCREEN_START, "degC")
                        .with("W", action, "A2s")
                        .with("K", metal.constant(), "A.s^0.5/m2")
                        .with("A", g.screenArea(), "m2")
                        .gives(temperature, "degC")));
    }
}
