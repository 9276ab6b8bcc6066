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

    /** The ports of one admittance, its residues as plain numbers, and the damping of its poles for one step. */
    private static final class Group {

        private final RationalAdmittance admittance;
        private final int[] members;
        private final int first;
        private final int terms;
        private final double[] poleRe;
        private final double[] poleIm;
        /** Weights of the real and the imaginary part of a state in a current, twice the residue for a pair. */
        private final double[] weightRe;

        private final double[] weightIm;
        /** 1/(1 − αp). */
        private final double[] dampRe;

        private final double[] dampIm;
        private double alpha = Double.NaN;

        Group(RationalAdmittance admittance, int first) {
            this.admittance = admittance;
            this.first = first;
            int n = admittance.ports();
            members = new int[n];
            terms = admittance.terms().size();
            poleRe = new double[terms];
            poleIm = new double[terms];
            dampRe = new double[terms];
            dampIm = new double[terms];
            weightRe = new double[terms * n * n];
            weightIm = new double[terms * n * n];
            for (int t = 0; t < terms; t++) {
                RationalAdmittance.Term term = admittance.terms().get(t);
                poleRe[t] = term.pole().getReal();
                poleIm[t] = term.pole().getImaginary();
                double times = term.pair() ? 2 : 1;
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j < n; j++) {
                        weightRe[weight(t, i, j)] = times * term.residue(i, j).getReal();
                        weightIm[weight(t, i, j)] = -times * term.residue(i, j).getImaginary();
                    }
                }
            }
        }

        private int weight(int term, int i, int j) {
            return (term * members.length + i) * members.length + j;
        }

        /** Place of a state: real part, imaginary part behind it. */
        int place(int term, int port) {
            return first + 2 * (term * members.length + port);
        }

        void prepare(double step) {
            if (step != alpha) {
                alpha = step;
                for (int t = 0; t < terms; t++) {
                    double re = 1 - step * poleRe[t];
                    double im = -step * poleIm[t];
                    double square = re * re + im * im;
                    dampRe[t] = re / square;
                    dampIm[t] = -im / square;
                }
            }
        }

        /** Part of a state in the current of a port. */
        double share(int term, int i, int j, double re, double im) {
            int at = weight(term, i, j);
            return weightRe[at] * re + weightIm[at] * im;
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

    /** Puts what answers at once into the nodal matrix. */
    void stamp(double[][] y, double alpha) {
        for (Group group : groups) {
            group.prepare(alpha);
            int n = group.members.length;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    double g = group.admittance.constant(i, j);
                    for (int t = 0; t < group.terms; t++) {
                        g += alpha * group.share(t, i, j, group.dampRe[t], group.dampIm[t]);
                    }
                    Topology.stamp(y, ends, group.members[i], group.members[j], g);
                }
            }
        }
    }

    /** Draws what the past drives from the nodes. */
    void draw(double[] right, double alpha) {
        for (Group group : groups) {
            group.prepare(alpha);
            int n = group.members.length;
            for (int i = 0; i < n; i++) {
                double sum = 0;
                for (int t = 0; t < group.terms; t++) {
                    double damp = group.dampRe[t];
                    double turn = group.dampIm[t];
                    for (int j = 0; j < n; j++) {
                        int at = group.place(t, j);
                        sum += group.share(
                                t, i, j, star[at] * damp - star[at + 1] * turn, star[at] * turn + star[at + 1] * damp);
                    }
                }
                Stepper.draw(right, ends, group.members[i], sum);
            }
        }
    }

    /** Finds states, rates and currents of a stage from the potentials. */
    void settle(double[] unknown, double alpha, double[] state, double[] rate) {
        Arrays.fill(current, 0);
        for (Group group : groups) {
            group.prepare(alpha);
            int n = group.members.length;
            for (int j = 0; j < n; j++) {
                double v = Stepper.across(unknown, ends, group.members[j]);
                for (int i = 0; i < n; i++) {
                    current[group.members[i]] += group.admittance.constant(i, j) * v;
                }
                for (int t = 0; t < group.terms; t++) {
                    double damp = group.dampRe[t];
                    double turn = group.dampIm[t];
                    int at = group.place(t, j);
                    double driven = star[at] + alpha * v;
                    state[at] = driven * damp - star[at + 1] * turn;
                    state[at + 1] = driven * turn + star[at + 1] * damp;
                    rate[at] = (state[at] - star[at]) / alpha;
                    rate[at + 1] = (state[at + 1] - star[at + 1]) / alpha;
                    for (int i = 0; i < n; i++) {
                        current[group.members[i]] += group.share(t, i, j, state[at], state[at + 1]);
                    }
                }
            }
        }
    }
}
