package earthing.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The states behind all rational admittances of a circuit, one a pole and port: x' = p·x + v, i = G·v + Σ R·x, of a pair twice
 * the real part. They obey the implicit stages like every other state, so that no convolution over the past is needed.
 */
final class AdmittanceStates {

    private static final class Group {

        private final RationalAdmittance admittance;
        private final int[] members;
        private final int first;

        Group(RationalAdmittance admittance, int first) {
            this.admittance = admittance;
            this.members = new int[admittance.ports()];
            this.first = first;
        }

        /** Place of a state: real part, imaginary part behind it. */
        int place(int term, int port) {
            return first + 2 * (term * members.length + port);
        }
    }

    /** States at the start of the step with their rates, at the middle stage and at the end. */
    final double[] start;

    final double[] startRate;
    final double[] middle;
    final double[] middleRate;
    final double[] end;
    final double[] endRate;
    /** y* of the stage, y = y* + α dy/dt. */
    final double[] star;

    private final List<Group> groups = new ArrayList<>();
    private final int[][] ends;
    private final double[] current;

    AdmittanceStates(List<Branch.Admittance> list, int[][] ends) {
        this.ends = ends;
        Map<String, Group> byName = new LinkedHashMap<>();
        int length = 0;
        for (int k = 0; k < list.size(); k++) {
            Branch.Admittance branch = list.get(k);
            Group group = byName.get(branch.group());
            if (group == null) {
                group = new Group(branch.admittance(), length);
                byName.put(branch.group(), group);
                length += 2
                        * branch.admittance().terms().size()
                        * branch.admittance().ports();
            }
            group.members[branch.port()] = k;
        }
        groups.addAll(byName.values());
        start = new double[length];
        startRate = new double[length];
        middle = new double[length];
        middleRate = new double[length];
        end = new double[length];
        endRate = new double[length];
        star = new double[length];
        current = new double[list.size()];
    }

    /** Current of a branch at the last stage [A]. */
    double current(int branch) {
        return current[branch];
    }

    void rest() {
        Arrays.fill(start, 0);
        Arrays.fill(startRate, 0);
    }

    void accept() {
        System.arraycopy(end, 0, start, 0, start.length);
        System.arraycopy(endRate, 0, startRate, 0, startRate.length);
    }

    /** 1/(1 − αp), real and imaginary part. */
    private static double[] damping(RationalAdmittance.Term term, double alpha) {
        double re = 1 - alpha * term.pole().getReal();
        double im = -alpha * term.pole().getImaginary();
        double square = re * re + im * im;
        return new double[] {re / square, -im / square};
    }

    /** Puts what answers at once into the nodal matrix. */
    void stamp(double[][] y, double alpha) {
        for (Group group : groups) {
            int n = group.members.length;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    double g = group.admittance.constant(i, j);
                    for (RationalAdmittance.Term term : group.admittance.terms()) {
                        double[] factor = damping(term, alpha);
                        g += alpha * share(term, i, j, factor[0], factor[1]);
                    }
                    Topology.stamp(y, ends, group.members[i], group.members[j], g);
                }
            }
        }
    }

    /** Real part of R·x, twice for a pair. */
    private static double share(RationalAdmittance.Term term, int i, int j, double re, double im) {
        double r = term.residue(i, j).getReal();
        return term.pair() ? 2 * (r * re - term.residue(i, j).getImaginary() * im) : r * re;
    }

    /** Draws what the past drives from the nodes. */
    void draw(double[] right, double alpha) {
        for (Group group : groups) {
            int n = group.members.length;
            List<RationalAdmittance.Term> terms = group.admittance.terms();
            for (int t = 0; t < terms.size(); t++) {
                RationalAdmittance.Term term = terms.get(t);
                double[] factor = damping(term, alpha);
                for (int j = 0; j < n; j++) {
                    int at = group.place(t, j);
                    double re = star[at] * factor[0] - star[at + 1] * factor[1];
                    double im = star[at] * factor[1] + star[at + 1] * factor[0];
                    for (int i = 0; i < n; i++) {
                        Stepper.draw(right, ends, group.members[i], share(term, i, j, re, im));
                    }
                }
            }
        }
    }

    /** Finds states, rates and currents of a stage from the potentials. */
    void settle(double[] unknown, double alpha, double[] state, double[] rate) {
        Arrays.fill(current, 0);
        for (Group group : groups) {
            int n = group.members.length;
            List<RationalAdmittance.Term> terms = group.admittance.terms();
            for (int j = 0; j < n; j++) {
                double v = Stepper.across(unknown, ends, group.members[j]);
                for (int i = 0; i < n; i++) {
                    current[group.members[i]] += group.admittance.constant(i, j) * v;
                }
                for (int t = 0; t < terms.size(); t++) {
                    RationalAdmittance.Term term = terms.get(t);
                    double[] factor = damping(term, alpha);
                    int at = group.place(t, j);
                    double driven = star[at] + alpha * v;
                    state[at] = driven * factor[0] - star[at + 1] * factor[1];
                    state[at + 1] = driven * factor[1] + star[at + 1] * factor[0];
                    rate[at] = (state[at] - star[at]) / alpha;
                    rate[at + 1] = (state[at + 1] - star[at + 1]) / alpha;
                    for (int i = 0; i < n; i++) {
                        current[group.members[i]] += share(term, i, j, state[at], state[at + 1]);
                    }
                }
            }
        }
    }
}
