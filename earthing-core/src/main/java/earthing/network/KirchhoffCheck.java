package earthing.network;

import earthing.quantity.Numbers;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.complex.Complex;

/**
 * Checks a solution by the laws themselves, with code that shares nothing with the solver: currents at every node must
 * cancel, every branch must obey its own equation, and the energy delivered by the sources must be found again.
 *
 * @param nodeResidual largest sum of currents at a node, as a part of the largest branch current
 * @param nodeName node where it occurs
 * @param branchResidual worst departure of a branch from its equation, as a part of the largest term of that equation
 * @param branchName branch where it occurs
 * @param energyResidual energy delivered less energy dissipated and stored, as a part of the energy delivered; for a
 *     phasor solution complex power likewise
 */
public record KirchhoffCheck(
        double nodeResidual, String nodeName, double branchResidual, String branchName, double energyResidual) {

    /** Part of the circuit's largest quantities below which a branch is idle: rounding alone is in its equation. */
    private static final double ROUNDING = 1e-9;

    /** Below these a branch is idle: voltage [V], current [A]; with the time that was followed [s]. */
    private record Idle(double voltage, double current, double span) {}

    /**
     * Whether all residuals are within a bound.
     *
     * @param bound bound, for example 1e-3 for a solution in time
     * @return true if all are within
     */
    public boolean within(double bound) {
        return nodeResidual <= bound && branchResidual <= bound && energyResidual <= bound;
    }

    /**
     * The largest residual in words.
     *
     * @return for example {@code 1.2 % of the largest term of the equation of screen}
     */
    public String worst() {
        if (energyResidual >= nodeResidual && energyResidual >= branchResidual) {
            return Numbers.brief(100 * energyResidual) + " % of the energy that came in";
        }
        return branchResidual >= nodeResidual
                ? Numbers.brief(100 * branchResidual) + " % of the largest term of the equation of " + branchName
                : Numbers.brief(100 * nodeResidual) + " % of the largest current, at " + nodeName;
    }

    /**
     * Checks a solution in time. Rates of change are replaced by integrals over the samples, by trapezoids, so residuals
     * fall with the square of the step.
     *
     * @param solution the solution
     * @return the residuals
     */
    public static KirchhoffCheck of(TransientSolution solution) {
        Circuit circuit = solution.circuit();
        Map<String, Waveform> currents = new HashMap<>();
        Map<String, Waveform> voltages = new HashMap<>();
        for (Branch branch : circuit.branches()) {
            currents.put(branch.name(), solution.current(branch.name()));
            voltages.put(branch.name(), solution.voltage(branch.from(), branch.to()));
        }
        int size = solution.size();
        double largest = 0;
        Map<String, double[]> sums = new HashMap<>();
        for (Branch branch : circuit.branches()) {
            Waveform i = of(currents, branch.name());
            double[] out = sums.computeIfAbsent(branch.from(), n -> new double[size]);
            double[] in = sums.computeIfAbsent(branch.to(), n -> new double[size]);
            for (int k = 1; k < size; k++) {
                out[k] -= i.value(k);
                in[k] += i.value(k);
                largest = Math.max(largest, Math.abs(i.value(k)));
            }
        }
        double nodeWorst = 0;
        String nodeName = "";
        for (Map.Entry<String, double[]> entry : sums.entrySet()) {
            for (double sum : entry.getValue()) {
                if (Math.abs(sum) > nodeWorst) {
                    nodeWorst = Math.abs(sum);
                    nodeName = entry.getKey();
                }
            }
        }
        double highest = 0;
        for (Waveform v : voltages.values()) {
            for (int k = 1; k < size; k++) {
                highest = Math.max(highest, Math.abs(v.value(k)));
            }
        }
        double span = voltages.values().iterator().next().time(size - 1);
        Idle idle = new Idle(ROUNDING * highest, ROUNDING * largest, span);
        Map<String, Double> closed = new HashMap<>();
        solution.flashovers().forEach(f -> closed.put(f.gap(), f.time()));
        double branchWorst = 0;
        String branchName = "";
        Map<String, double[]> coupled = coupled(circuit, currents, size);
        for (Branch branch : circuit.branches()) {
            double off = departure(branch, circuit, currents, voltages, coupled, closed, idle);
            if (off > branchWorst) {
                branchWorst = off;
                branchName = branch.name();
            }
        }
        double energy = energy(circuit, currents, voltages);
        return new KirchhoffCheck(largest > 0 ? nodeWorst / largest : 0, nodeName, branchWorst, branchName, energy);
    }

    static Waveform of(Map<String, Waveform> map, String name) {
        Waveform found = map.get(name);
        if (found == null) {
            throw new IllegalStateException("no waveform of " + name);
        }
        return found;
    }

    /** What the other branches add to a branch through its mutuals: flux [Vs] of inductors, voltage [V] of resistors. */
    private static Map<String, double[]> coupled(Circuit circuit, Map<String, Waveform> currents, int size) {
        Map<String, double[]> sums = new HashMap<>();
        for (Circuit.Mutual mutual : circuit.mutuals()) {
            double[] first = sums.computeIfAbsent(mutual.first(), n -> new double[size]);
            double[] second = sums.computeIfAbsent(mutual.second(), n -> new double[size]);
            Waveform ofFirst = of(currents, mutual.first());
            Waveform ofSecond = of(currents, mutual.second());
            double value = mutual.value();
            for (int k = 0; k < size; k++) {
                first[k] += value * ofSecond.value(k);
                second[k] += value * ofFirst.value(k);
            }
        }
        return sums;
    }

    /** Worst departure of a branch from its equation, as a part of the largest term of that equation. */
    private static double departure(
            Branch branch,
            Circuit circuit,
            Map<String, Waveform> currents,
            Map<String, Waveform> voltages,
            Map<String, double[]> coupled,
            Map<String, Double> closed,
            Idle idle) {
        if (branch instanceof Branch.LineEnd end) {
            return LineBalance.departure(circuit, end, currents, voltages);
        }
        if (branch instanceof Branch.Admittance admittance) {
            return AdmittanceBalance.departure(circuit, admittance, currents, voltages, idle.current());
        }
        Waveform i = of(currents, branch.name());
        Waveform v = of(voltages, branch.name());
        double[] others = coupled.getOrDefault(branch.name(), new double[i.size()]);
        if (branch instanceof Branch.Inductor inductor) {
            return inductor(inductor, v, i, others, idle.voltage() * idle.span());
        }
        if (branch instanceof Branch.Capacitor capacitor) {
            return capacitor(capacitor, v, i, idle.current() * idle.span());
        }
        if (branch instanceof Branch.Resistor resistor) {
            return worst(v, k -> resistor.resistance() * i.value(k) + others[k], idle.voltage());
        }
        if (branch instanceof Branch.Nonlinear nonlinear) {
            return worst(v, k -> nonlinear.curve().voltage(i.value(k)), idle.voltage());
        }
        if (branch instanceof Branch.Gap gap) {
            // Open it has no current, closed the current that its arc admits.
            double struck = closed.getOrDefault(gap.name(), Double.POSITIVE_INFINITY);
            return worst(
                    v,
                    k -> struck < v.time(k) ? gap.arc() * i.value(k) : v.value(k) + gap.arc() * i.value(k),
                    idle.voltage());
        }
        if (branch instanceof Branch.VoltageSource source) {
            return worst(v, k -> source.wave().at(v.time(k)), idle.voltage());
        }
        if (branch instanceof Branch.CurrentSource source) {
            return worst(i, k -> source.wave().at(i.time(k)), idle.current());
        }
        return Math.abs(v.peak().value());
    }

    private static double worst(Waveform have, IntToDoubleFunction due, double least) {
        double worst = 0;
        double scale = least;
        for (int k = 1; k < have.size(); k++) {
            worst = Math.max(worst, Math.abs(have.value(k) - due.applyAsDouble(k)));
            scale = Math.max(scale, Math.abs(have.value(k)));
        }
        return scale > 0 ? worst / scale : worst;
    }

    /** Flux is the integral of the voltage left by the resistance. */
    private static double inductor(Branch.Inductor branch, Waveform v, Waveform i, double[] others, double least) {
        double across = 0;
        double lost = 0;
        double worst = 0;
        double scale = least;
        for (int k = 1; k < i.size(); k++) {
            // First step by its end: the sources may jump at the start.
            double meanV = k == 1 ? v.value(k) : 0.5 * (v.value(k) + v.value(k - 1));
            double meanI = 0.5 * (i.value(k) + i.value(k - 1));
            double step = i.time(k) - i.time(k - 1);
            across += meanV * step;
            lost += branch.resistance() * meanI * step;
            double own = branch.inductance() * i.value(k);
            worst = Math.max(worst, Math.abs(across - lost - own - others[k]));
            // Beside a high resistance the flux is the small difference of two integrals by trapezoids.
            double terms = Math.max(Math.abs(across), Math.abs(lost));
            scale = Math.max(scale, Math.max(terms, Math.max(Math.abs(own + others[k]), Math.abs(own))));
        }
        return scale > 0 ? worst / scale : worst;
    }

    /** Charge is the integral of the current. */
    private static double capacitor(Branch.Capacitor branch, Waveform v, Waveform i, double least) {
        double integral = 0;
        double worst = 0;
        double scale = least;
        for (int k = 1; k < i.size(); k++) {
            double mean = k == 1 ? i.value(k) : 0.5 * (i.value(k) + i.value(k - 1));
            integral += mean * (i.time(k) - i.time(k - 1));
            double charge = branch.capacitance() * v.value(k);
            worst = Math.max(worst, Math.abs(integral - charge));
            scale = Math.max(scale, Math.abs(charge));
        }
        return scale > 0 ? worst / scale : worst;
    }

    private static double energy(Circuit circuit, Map<String, Waveform> currents, Map<String, Waveform> voltages) {
        double delivered = 0;
        double taken = 0;
        double moved = 0;
        for (Branch branch : circuit.branches()) {
            Waveform i = of(currents, branch.name());
            Waveform v = of(voltages, branch.name());
            int last = i.size() - 1;
            if (branch instanceof Branch.CurrentSource || branch instanceof Branch.VoltageSource) {
                delivered -= work(v, i);
                moved += work(v, i, true);
            } else if (branch instanceof Branch.Inductor inductor) {
                taken += inductor.resistance() * work(i, i);
                taken += 0.5 * inductor.inductance() * i.value(last) * i.value(last);
            } else if (branch instanceof Branch.Capacitor capacitor) {
                taken += 0.5 * capacitor.capacitance() * v.value(last) * v.value(last);
            } else if (!(branch instanceof Branch.LineEnd)) {
                taken += work(v, i);
            }
        }
        taken += LineBalance.onTheWay(circuit, currents, voltages);
        for (Circuit.Mutual mutual : circuit.mutuals()) {
            if (circuit.branch(mutual.first()) instanceof Branch.Inductor) {
                Waveform a = of(currents, mutual.first());
                Waveform b = of(currents, mutual.second());
                int last = a.size() - 1;
                taken += mutual.value() * a.value(last) * b.value(last);
            }
        }
        return moved > 0 ? Math.abs(delivered - taken) / moved : 0;
    }

    private static double work(Waveform v, Waveform i) {
        return work(v, i, false);
    }

    /** Integral of v·i, or of its magnitude; in the first step its end counts, since sources may jump at the start. */
    private static double work(Waveform v, Waveform i, boolean magnitude) {
        double sum = 0;
        double before = 0;
        for (int k = 1; k < v.size(); k++) {
            double power = v.value(k) * i.value(k);
            power = magnitude ? Math.abs(power) : power;
            sum += (k == 1 ? power : 0.5 * (power + before)) * (v.time(k) - v.time(k - 1));
            before = power;
        }
        return sum;
    }

    /**
     * Checks a phasor solution.
     *
     * @param solution the solution
     * @return the residuals
     */
    public static KirchhoffCheck of(FrequencySolution solution) {
        Circuit circuit = solution.circuit();
        double w = solution.angularFrequency();
        Map<String, Complex> sums = new HashMap<>();
        double largest = 0;
        double branchWorst = 0;
        String branchName = "";
        Complex balance = Complex.ZERO;
        double moved = 0;
        for (Branch branch : circuit.branches()) {
            Complex i = solution.current(branch.name());
            Complex v = solution.voltage(branch.from(), branch.to());
            sums.merge(branch.from(), i.negate(), Complex::add);
            sums.merge(branch.to(), i, Complex::add);
            largest = Math.max(largest, i.abs());
            Complex power = v.multiply(i.conjugate());
            balance = balance.add(power);
            moved += power.abs();
            Complex law = law(branch, solution, circuit.mutuals(), w);
            double scale = Math.max(v.abs(), law.abs());
            double off = scale > 0 ? v.subtract(law).abs() / scale : 0;
            if (branch instanceof Branch.Tie) {
                off = v.abs();
            }
            if (off > branchWorst) {
                branchWorst = off;
                branchName = branch.name();
            }
        }
        double nodeWorst = 0;
        String nodeName = "";
        for (Map.Entry<String, Complex> entry : sums.entrySet()) {
            if (entry.getValue().abs() > nodeWorst) {
                nodeWorst = entry.getValue().abs();
                nodeName = entry.getKey();
            }
        }
        return new KirchhoffCheck(
                largest > 0 ? nodeWorst / largest : 0,
                nodeName,
                branchWorst,
                branchName,
                moved > 0 ? balance.abs() / moved : 0);
    }

    private static Complex law(Branch branch, FrequencySolution solution, List<Circuit.Mutual> mutuals, double w) {
        Complex i = solution.current(branch.name());
        if (branch instanceof Branch.Inductor inductor) {
            Complex z = new Complex(inductor.resistance(), w * inductor.inductance())
                    .add(inductor.internal().map(f -> f.at(w)).orElse(Complex.ZERO));
            return i.multiply(z).add(coupled(branch, solution, mutuals).multiply(new Complex(0, w)));
        }
        if (branch instanceof Branch.Resistor resistor) {
            return i.multiply(resistor.resistance()).add(coupled(branch, solution, mutuals));
        }
        if (branch instanceof Branch.Capacitor capacitor) {
            return i.divide(new Complex(0, w * capacitor.capacitance()));
        }
        if (branch instanceof Branch.VoltageSource source) {
            return source.phasor();
        }
        if (branch instanceof Branch.Admittance admittance) {
            return AdmittanceBalance.law(admittance, solution, w);
        }
        return solution.voltage(branch.from(), branch.to());
    }

    private static Complex coupled(Branch branch, FrequencySolution solution, List<Circuit.Mutual> mutuals) {
        Complex sum = Complex.ZERO;
        for (Circuit.Mutual mutual : mutuals) {
            if (mutual.first().equals(branch.name())) {
                sum = sum.add(solution.current(mutual.second()).multiply(mutual.value()));
            } else if (mutual.second().equals(branch.name())) {
                sum = sum.add(solution.current(mutual.first()).multiply(mutual.value()));
            }
        }
        return sum;
    }
}
