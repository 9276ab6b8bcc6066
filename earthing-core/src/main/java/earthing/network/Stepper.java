package earthing.network;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Advances a circuit by one step. Two implicit stages share one matrix: as a rule the trapezoidal rule up to γh followed
 * by the second-order backward difference (TR-BDF2, γ = 2 − √2); on the first step and after a jump of a source a
 * two-stage diagonally implicit Runge–Kutta step of the same order that needs no derivative at its start. Both are
 * A-stable and damp infinitely fast modes completely, so a ramp of current into an inductance gives a flat voltage.
 *
 * <p>Source: R. E. Bank et al., Transient simulation of silicon devices and circuits, IEEE Trans. Electron Devices 32
 * (1985) 1992-2007 (TR-BDF2); R. Alexander, SIAM J. Numer. Anal. 14 (1977) 1006-1021 (the Runge–Kutta pair); both from
 * memory.
 */
final class Stepper {

    private static final double GAMMA = 2 - Math.sqrt(2);
    private static final double STAGE = GAMMA / 2;
    private static final double KEEP_MIDDLE = 1 / (GAMMA * (2 - GAMMA));
    private static final double KEEP_START = (1 - GAMMA) * (1 - GAMMA) / (GAMMA * (2 - GAMMA));

    final Topology topology;
    private final CoupledBlocks inductances;
    private final CoupledBlocks resistances;
    private final Map<Double, StepMatrices> matrices = new HashMap<>();
    private final Wave[] currentWaves;
    private final Wave[] voltageWaves;
    private final double[] inductorResistance;
    private final boolean resistive;
    private final Ports ports;
    private final LineHistory lines;
    private final AdmittanceStates admittances;
    private final boolean[] closed;

    /** State at the start of the step: currents and their rates of inductances, voltages and their rates of capacitances. */
    private final double[] i0;

    private final double[] di0;
    private final double[] v0;
    private final double[] dv0;

    private final double[] iStar;
    private final double[] vStar;
    private final double[] iMiddle;
    private final double[] diMiddle;
    private final double[] vMiddle;
    private final double[] dvMiddle;
    private final double[] iNew;
    private final double[] diNew;
    private final double[] vNew;
    private final double[] dvNew;

    private final double[][] blockIn;
    private final double[][] blockOut;
    private final double[] right;
    private final double[] unknown;
    private final double[] open;
    private final double[] surplus;
    private final double[] portNow;
    private final double[] portStart;

    private StepMatrices now;
    private double stepStart;
    private double stepMiddle;
    private double stepEnd;
    private boolean stepAfterJump;
    private boolean stale;
    private double worstCondition;
    private double worstResidual;

    Stepper(Circuit circuit, double firstStep) {
        topology = new Topology(circuit);
        inductances = CoupledBlocks.inductances(circuit);
        resistances = CoupledBlocks.resistances(circuit);
        currentWaves =
                topology.currentSources.stream().map(Branch.CurrentSource::wave).toArray(Wave[]::new);
        voltageWaves = topology.rigid.stream()
                .map(b -> b instanceof Branch.VoltageSource source ? source.wave() : Wave.constant(0))
                .toArray(Wave[]::new);
        inductorResistance = topology.inductors.stream()
                .mapToDouble(Branch.Inductor::resistance)
                .toArray();
        boolean any = false;
        for (double r : inductorResistance) {
            any |= r > 0;
        }
        resistive = any;
        ports = new Ports(
                topology.nonlinears.stream().map(Branch.Nonlinear::curve).toArray(NonlinearResistance[]::new));
        lines = new LineHistory(topology.lineEnds, topology.lineTerminals);
        admittances = new AdmittanceStates(topology.admittances, topology.admittanceEnds);
        closed = new boolean[topology.gaps.size()];
        int m = topology.inductors.size();
        int c = topology.capacitors.size();
        int p = topology.nonlinears.size();
        i0 = new double[m];
        di0 = new double[m];
        v0 = new double[c];
        dv0 = new double[c];
        iStar = new double[m];
        vStar = new double[c];
        iMiddle = new double[m];
        diMiddle = new double[m];
        vMiddle = new double[c];
        dvMiddle = new double[c];
        iNew = new double[m];
        diNew = new double[m];
        vNew = new double[c];
        dvNew = new double[c];
        List<CoupledBlocks.Block> blocks = inductances.blocks();
        blockIn = new double[blocks.size()][];
        blockOut = new double[blocks.size()][];
        for (int b = 0; b < blocks.size(); b++) {
            blockIn[b] = new double[blocks.get(b).members().length];
            blockOut[b] = new double[blocks.get(b).members().length];
        }
        right = new double[topology.unknowns()];
        unknown = new double[topology.unknowns()];
        open = new double[p];
        surplus = new double[p];
        portNow = new double[p];
        portStart = new double[p];
        now = new StepMatrices(topology, inductances, resistances, lines, admittances, closed, STAGE * firstStep);
        matrices.put(firstStep, now);
        noteQuality();
    }

    private void noteQuality() {
        worstCondition = Math.max(worstCondition, now.condition);
        worstResidual = Math.max(worstResidual, now.residual);
    }

    double condition() {
        return worstCondition;
    }

    double residual() {
        return worstResidual;
    }

    private void choose(double step) {
        double alpha = STAGE * step;
        if (stale || now.alpha != alpha) {
            stale = false;
            StepMatrices kept = matrices.get(step);
            if (kept == null) {
                kept = new StepMatrices(topology, inductances, resistances, lines, admittances, closed, alpha);
                matrices.put(step, kept);
            }
            now = kept;
            noteQuality();
        }
    }

    /** One trial step; the state is left as it was until {@link #accept()}. */
    void step(double start, double step, boolean afterJump) {
        choose(step);
        stepStart = start;
        stepMiddle = start + (afterJump ? STAGE : GAMMA) * step;
        stepEnd = start + step;
        stepAfterJump = afterJump;
        int m = i0.length;
        int c = v0.length;
        AdmittanceStates x = admittances;
        System.arraycopy(portStart, 0, portNow, 0, portNow.length);
        if (afterJump) {
            System.arraycopy(i0, 0, iStar, 0, m);
            System.arraycopy(v0, 0, vStar, 0, c);
            System.arraycopy(x.start, 0, x.star, 0, x.star.length);
            stage(stepMiddle, iMiddle, diMiddle, vMiddle, dvMiddle);
            x.settle(unknown, now.alpha, x.middle, x.middleRate);
            double rest = (1 - STAGE) * step;
            for (int k = 0; k < m; k++) {
                iStar[k] = i0[k] + rest * diMiddle[k];
            }
            for (int k = 0; k < c; k++) {
                vStar[k] = v0[k] + rest * dvMiddle[k];
            }
            for (int k = 0; k < x.star.length; k++) {
                x.star[k] = x.start[k] + rest * x.middleRate[k];
            }
        } else {
            double alpha = now.alpha;
            for (int k = 0; k < m; k++) {
                iStar[k] = i0[k] + alpha * di0[k];
            }
            for (int k = 0; k < c; k++) {
                vStar[k] = v0[k] + alpha * dv0[k];
            }
            for (int k = 0; k < x.star.length; k++) {
                x.star[k] = x.start[k] + alpha * x.startRate[k];
            }
            stage(stepMiddle, iMiddle, diMiddle, vMiddle, dvMiddle);
            x.settle(unknown, alpha, x.middle, x.middleRate);
            for (int k = 0; k < m; k++) {
                iStar[k] = KEEP_MIDDLE * iMiddle[k] - KEEP_START * i0[k];
            }
            for (int k = 0; k < c; k++) {
                vStar[k] = KEEP_MIDDLE * vMiddle[k] - KEEP_START * v0[k];
            }
            for (int k = 0; k < x.star.length; k++) {
                x.star[k] = KEEP_MIDDLE * x.middle[k] - KEEP_START * x.start[k];
            }
        }
        lines.depart(unknown, false);
        stage(stepEnd, iNew, diNew, vNew, dvNew);
        x.settle(unknown, now.alpha, x.end, x.endRate);
        lines.depart(unknown, true);
    }

    /** Takes the trial step over. */
    void accept() {
        System.arraycopy(iNew, 0, i0, 0, i0.length);
        System.arraycopy(diNew, 0, di0, 0, di0.length);
        System.arraycopy(vNew, 0, v0, 0, v0.length);
        System.arraycopy(dvNew, 0, dv0, 0, dv0.length);
        System.arraycopy(portNow, 0, portStart, 0, portNow.length);
        admittances.accept();
        lines.accept(stepStart, stepMiddle, stepEnd, stepAfterJump);
    }

    /** Back to rest. */
    void rest() {
        for (double[] state : new double[][] {i0, di0, v0, dv0, portStart}) {
            Arrays.fill(state, 0);
        }
        lines.rest();
        admittances.rest();
        for (int k = 0; k < closed.length; k++) {
            if (closed[k]) {
                closed[k] = false;
                forgetMatrices();
            }
        }
    }

    boolean closed(int gap) {
        return closed[gap];
    }

    /** Strikes the arc of a gap. */
    void close(int gap) {
        closed[gap] = true;
        forgetMatrices();
    }

    /** Closes what the accepted step brought beyond its strength, without asking when. */
    void closeStruck(double time) {
        for (int k = 0; k < closed.length; k++) {
            if (!closed[k]
                    && Math.abs(gapVoltage(k)) >= topology.gaps.get(k).law().strength(time)) {
                close(k);
            }
        }
    }

    private void forgetMatrices() {
        matrices.clear();
        stale = true;
    }

    double gapVoltage(int gap) {
        return across(unknown, topology.gapEnds, gap);
    }

    LineHistory lines() {
        return lines;
    }

    /** Solves y = y* + α dy/dt at one time for all states together. */
    private void stage(double time, double[] i, double[] di, double[] v, double[] dv) {
        Topology t = topology;
        double alpha = now.alpha;
        Arrays.fill(right, 0);
        for (int k = 0; k < currentWaves.length; k++) {
            double value = currentWaves[k].at(time);
            draw(right, t.currentSourceEnds, k, value);
        }
        for (int k = 0; k < voltageWaves.length; k++) {
            right[t.nodes + k] = voltageWaves[k].at(time);
        }
        for (int k = 0; k < vStar.length; k++) {
            draw(right, t.capacitorEnds, k, -now.capacitorConductance[k] * vStar[k]);
        }
        if (lines.count() > 0) {
            lines.arrive(time, 1e-6 * (stepEnd - stepStart));
            for (int k = 0; k < lines.count(); k++) {
                draw(right, t.lineTerminals, k, -lines.arriving(k));
            }
        }
        admittances.draw(right, alpha);
        // i = i* − G R i* + G v; the first two terms go to the right-hand side.
        for (int b = 0; b < blockIn.length; b++) {
            int[] members = now.blocks.get(b).members();
            double[] in = blockIn[b];
            double[] out = blockOut[b];
            for (int k = 0; k < in.length; k++) {
                in[k] = -inductorResistance[members[k]] * iStar[members[k]];
                out[k] = iStar[members[k]];
            }
            if (resistive) {
                now.conductances.get(b).addProduct(in, out);
            }
            for (int k = 0; k < in.length; k++) {
                draw(right, t.inductorEnds, members[k], out[k]);
            }
        }
        Arrays.fill(unknown, 0);
        now.nodal.addProduct(right, unknown);
        if (open.length > 0) {
            for (int k = 0; k < open.length; k++) {
                open[k] = across(unknown, t.nonlinearEnds, k);
            }
            ports.solve(now, open, portNow, surplus, time);
            for (int k = 0; k < open.length; k++) {
                double current = surplus[k];
                double[] answer = now.portAnswer[k];
                for (int j = 0; j < unknown.length; j++) {
                    unknown[j] -= current * answer[j];
                }
            }
        }
        for (int b = 0; b < blockIn.length; b++) {
            int[] members = now.blocks.get(b).members();
            double[] in = blockIn[b];
            double[] out = blockOut[b];
            for (int k = 0; k < in.length; k++) {
                in[k] = across(unknown, t.inductorEnds, members[k]);
            }
            now.conductances.get(b).addProduct(in, out);
            for (int k = 0; k < out.length; k++) {
                int member = members[k];
                i[member] = out[k];
                di[member] = (out[k] - iStar[member]) / alpha;
            }
        }
        for (int k = 0; k < v.length; k++) {
            v[k] = across(unknown, t.capacitorEnds, k);
            dv[k] = (v[k] - vStar[k]) / alpha;
        }
    }

    /** A current leaving the first node and entering the second. */
    static void draw(double[] right, int[][] ends, int branch, double current) {
        int p = ends[0][branch];
        int q = ends[1][branch];
        if (p >= 0) {
            right[p] -= current;
        }
        if (q >= 0) {
            right[q] += current;
        }
    }

    static double across(double[] unknown, int[][] ends, int branch) {
        int p = ends[0][branch];
        int q = ends[1][branch];
        return (p >= 0 ? unknown[p] : 0) - (q >= 0 ? unknown[q] : 0);
    }

    /** Length of a record of the trial step. */
    int recordLength() {
        return topology.nodes
                + topology.rigid.size()
                + topology.inductors.size()
                + topology.capacitors.size()
                + topology.nonlinears.size()
                + topology.lineEnds.size()
                + topology.gaps.size()
                + topology.admittances.size();
    }

    /** Writes potentials, then currents of rigid, inductive, capacitive and nonlinear branches, line ends, gaps and admittances, of the trial step. */
    void record(double[] target, int offset) {
        int at = offset;
        int head = topology.nodes + topology.rigid.size();
        System.arraycopy(unknown, 0, target, at, head);
        at += head;
        System.arraycopy(iNew, 0, target, at, iNew.length);
        at += iNew.length;
        for (int k = 0; k < dvNew.length; k++) {
            target[at++] = topology.capacitors.get(k).capacitance() * dvNew[k];
        }
        System.arraycopy(portNow, 0, target, at, portNow.length);
        at += portNow.length;
        for (int k = 0; k < lines.count(); k++) {
            target[at++] = lines.current(k);
        }
        for (int k = 0; k < closed.length; k++) {
            target[at++] = closed[k] ? gapVoltage(k) / topology.gaps.get(k).arc() : 0;
        }
        for (int k = 0; k < topology.admittances.size(); k++) {
            target[at++] = admittances.current(k);
        }
    }

    /** Number of quantities that step control watches. */
    int watched() {
        return topology.inductors.size() * 2
                + topology.resistors.size()
                + topology.nonlinears.size()
                + topology.lineEnds.size()
                + topology.admittances.size();
    }

    /** Position of the first voltage of an inductance among the quantities watched. */
    int firstSlope() {
        return topology.inductors.size();
    }

    /** Position behind the last voltage of an inductance among the quantities watched. */
    int afterSlopes() {
        return 2 * topology.inductors.size();
    }

    /** Writes branch currents and voltages of the trial step, for step control. */
    void watch(double[] target) {
        int at = 0;
        for (int k = 0; k < iNew.length; k++) {
            target[at++] = iNew[k];
        }
        for (int k = 0; k < iNew.length; k++) {
            target[at++] = across(unknown, topology.inductorEnds, k);
        }
        for (int k = 0; k < topology.resistors.size(); k++) {
            target[at++] = across(unknown, topology.resistorEnds, k);
        }
        for (int k = 0; k < topology.nonlinears.size(); k++) {
            target[at++] = across(unknown, topology.nonlinearEnds, k);
        }
        for (int k = 0; k < topology.lineEnds.size(); k++) {
            target[at++] = across(unknown, topology.lineTerminals, k);
        }
        for (int k = 0; k < topology.admittances.size(); k++) {
            target[at++] = across(unknown, topology.admittanceEnds, k);
        }
    }
}
