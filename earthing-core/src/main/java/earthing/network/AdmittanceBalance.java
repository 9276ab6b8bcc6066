package earthing.network;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/** Re-check of rational admittances by code that shares nothing with the solver. */
final class AdmittanceBalance {

    private AdmittanceBalance() {}

    private static List<Branch.Admittance> group(Circuit circuit, Branch.Admittance branch) {
        return circuit.branches(Branch.Admittance.class).stream()
                .filter(b -> b.group().equals(branch.group()))
                .sorted(Comparator.comparingInt(Branch.Admittance::port))
                .toList();
    }

    /**
     * Departure of the current from what the voltages of all ports, straight between samples, drive through every pole
     * in closed form, as a part of the largest current that one of them drives.
     */
    static double departure(
            Circuit circuit,
            Branch.Admittance branch,
            Map<String, Waveform> currents,
            Map<String, Waveform> voltages,
            double least) {
        Waveform i = KirchhoffCheck.of(currents, branch.name());
        double[] due = new double[i.size()];
        double scale = least;
        for (Branch.Admittance other : group(circuit, branch)) {
            Waveform v = KirchhoffCheck.of(voltages, other.name());
            double g = branch.admittance().constant(branch.port(), other.port());
            double[] part = new double[due.length];
            for (int k = 1; k < due.length; k++) {
                part[k] = g * v.value(k);
            }
            for (RationalAdmittance.Term term : branch.admittance().terms()) {
                add(term, term.residue(branch.port(), other.port()), v, part);
            }
            // An electrode that nearly floats: what its own voltage drives is what its neighbours drive.
            for (int k = 1; k < due.length; k++) {
                due[k] += part[k];
                scale = Math.max(scale, Math.abs(part[k]));
            }
        }
        double worst = 0;
        for (int k = 1; k < due.length; k++) {
            worst = Math.max(worst, Math.abs(i.value(k) - due[k]));
            scale = Math.max(scale, Math.abs(i.value(k)));
        }
        return scale > 0 ? worst / scale : worst;
    }

    private static void add(RationalAdmittance.Term term, Complex residue, Waveform v, double[] due) {
        Complex x = Complex.ZERO;
        Complex p = term.pole();
        for (int k = 1; k < due.length; k++) {
            double h = v.time(k) - v.time(k - 1);
            Complex turn = p.multiply(h);
            // First step by its end: the sources may jump at the start.
            double before = k == 1 ? v.value(k) : v.value(k - 1);
            Complex decay = turn.exp();
            // φ₁ = (e^z − 1)/z and φ₂ = (φ₁ − 1)/z, by their series where they cancel.
            boolean small = turn.abs() < 1e-3;
            Complex first = small
                    ? turn.divide(2).add(1).add(turn.multiply(turn).divide(6))
                    : decay.subtract(1).divide(turn);
            Complex second = small ? turn.divide(6).add(0.5) : first.subtract(1).divide(turn);
            x = x.multiply(decay).add(first.multiply(h * before)).add(second.multiply(h * (v.value(k) - before)));
            double share = residue.multiply(x).getReal();
            due[k] += term.pair() ? 2 * share : share;
        }
    }

    /** The voltage at which the port's current at one frequency would be what its group makes it. */
    static Complex law(Branch.Admittance branch, FrequencySolution solution, double omega) {
        Complex[][] y = branch.admittance().at(omega);
        Complex due = Complex.ZERO;
        for (Branch.Admittance other : group(solution.circuit(), branch)) {
            due = due.add(y[branch.port()][other.port()].multiply(solution.voltage(other.from(), other.to())));
        }
        Complex off = solution.current(branch.name()).subtract(due);
        return solution.voltage(branch.from(), branch.to()).add(off.divide(y[branch.port()][branch.port()]));
    }
}
