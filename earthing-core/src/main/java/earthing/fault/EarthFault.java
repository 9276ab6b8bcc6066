package earthing.fault;

import earthing.fault.line.SequenceImpedances;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Earth fault of one, two or three phases at the tank of the pole, solved with the electrode in the loop.
 *
 * <p>Unknowns are the currents of the faulted phases, the current of the source neutral and the zero-sequence voltage of
 * the busbar. Every faulted phase closes a loop: driving voltage = positive- and negative-sequence drop of source and
 * line + zero-sequence drop of the line + voltage induced by the return conductor + fault resistance + earth potential
 * rise − zero-sequence voltage of the busbar. Load current is left out, the capacitance is lumped at the busbar and acts
 * in the zero sequence only; the derivation is in docs/theory/fault.md.
 */
public final class EarthFault {

    private static final Complex A = new Complex(-0.5, Math.sqrt(3) / 2);
    private static final Complex A2 = A.conjugate();

    private EarthFault() {}

    /** Phases of the line. */
    public enum Phase {
        /** Reference phase. */
        A,
        /** Phase that lags A by 120°. */
        B,
        /** Phase that leads A by 120°. */
        C
    }

    /**
     * What is faulted.
     *
     * @param phases phases on the tank, at least one
     * @param resistance resistance of each fault, between phase and tank [Ω], ≥ 0
     */
    public record Kind(Set<Phase> phases, double resistance) {

        /** One phase on the tank, without fault resistance. */
        public static final Kind SINGLE_PHASE = singlePhase(0);

        /**
         * Takes a copy and refuses a fault without phases.
         *
         * @param phases phases on the tank, at least one
         * @param resistance resistance of each fault, between phase and tank [Ω], ≥ 0
         */
        public Kind {
            phases = Set.copyOf(phases);
            if (phases.isEmpty()) {
                throw new IllegalArgumentException("an earth fault needs at least one phase");
            }
            if (!(resistance >= 0) || !Double.isFinite(resistance)) {
                throw new IllegalArgumentException("fault resistance must be >= 0 ohm; have " + resistance);
            }
        }

        /**
         * Phase A on the tank.
         *
         * @param resistance fault resistance [Ω], ≥ 0
         * @return the fault
         */
        public static Kind singlePhase(double resistance) {
            return new Kind(EnumSet.of(Phase.A), resistance);
        }

        /**
         * Phases B and C on the same tank.
         *
         * @param resistance fault resistance of each [Ω], ≥ 0
         * @return the fault
         */
        public static Kind twoPhases(double resistance) {
            return new Kind(EnumSet.of(Phase.B, Phase.C), resistance);
        }

        private List<Phase> ordered() {
            return List.copyOf(EnumSet.copyOf(phases));
        }
    }

    /**
     * Solves a single-phase fault without fault resistance.
     *
     * @param system the network
     * @param earth the ways from the tank to earth
     * @return currents and voltages
     */
    public static EarthFaultResult solve(EarthFaultSystem system, PoleEarth earth) {
        return solve(system, earth, Kind.SINGLE_PHASE);
    }

    /**
     * Solves a fault.
     *
     * @param system the network
     * @param earth the ways from the tank to earth
     * @param kind what is faulted
     * @return currents and voltages
     * @throws IllegalArgumentException if the tank has no way to earth at all, or a bolted earth meets a return conductor
     */
    public static EarthFaultResult solve(EarthFaultSystem system, PoleEarth earth, Kind kind) {
        return solve(system, earth, kind, ReturnPath.of(system, earth));
    }

    /**
     * Solves one of many faults with the same conductors.
     *
     * @param system the network
     * @param earth the ways from the tank to earth
     * @param kind what is faulted
     * @param paths ways back that have been found, to which this one is added
     * @return currents and voltages, as without them
     * @throws IllegalArgumentException as without them
     */
    public static EarthFaultResult solve(EarthFaultSystem system, PoleEarth earth, Kind kind, ReturnPaths paths) {
        return solve(system, earth, kind, paths.of(system, earth));
    }

    private static EarthFaultResult solve(EarthFaultSystem system, PoleEarth earth, Kind kind, ReturnPath ret) {
        List<Phase> faulted = kind.ordered();
        int m = faulted.size();
        ZMatrixRMaj matrix = new ZMatrixRMaj(m + 2, m + 2);
        ZMatrixRMaj right = new ZMatrixRMaj(m + 2, 1);
        int neutral = m;
        int zero = m + 1;
        SequenceImpedances series = system.source().plus(system.line());
        Complex common = system.line().zero().divide(3).add(ret.poleByFault()).add(ret.dropByFault());
        for (int i = 0; i < m; i++) {
            for (int j = 0; j < m; j++) {
                Complex z =
                        phaseImpedance(series, faulted.get(i), faulted.get(j)).add(common);
                set(matrix, i, j, i == j ? z.add(kind.resistance()) : z);
            }
            set(matrix, i, neutral, ret.poleByNeutral().add(ret.dropByNeutral()));
            set(matrix, i, zero, Complex.ONE.negate());
            set(right, i, 0, driving(system, faulted.get(i)));
        }
        Complex shunt = new Complex(0, 2 * Math.PI * system.frequency() * system.networkCapacitance());
        if (system.neutral().connected()) {
            Complex branch =
                    system.neutral().impedance().add(system.source().zero().divide(3));
            for (int j = 0; j < m; j++) {
                set(matrix, neutral, j, ret.stationByFault().negate());
            }
            set(matrix, neutral, neutral, branch.subtract(ret.stationByNeutral()));
            set(matrix, neutral, zero, Complex.ONE);
        } else {
            set(matrix, neutral, neutral, Complex.ONE);
        }
        for (int j = 0; j < m; j++) {
            set(matrix, zero, j, Complex.ONE);
        }
        set(matrix, zero, neutral, Complex.ONE.negate());
        set(matrix, zero, zero, shunt);
        scaleRows(matrix, right);
        ZMatrixRMaj x = new ZMatrixRMaj(m + 2, 1);
        LinearSolverDense<ZMatrixRMaj> solver = LinearSolverFactory_ZDRM.lu(m + 2);
        if (!solver.setA(matrix.copy())) {
            throw new IllegalArgumentException("the fault circuit has no solution: its matrix is singular");
        }
        solver.solve(right, x);
        if (!system.neutral().connected()) {
            x.set(neutral, 0, 0, 0); // its row says so; elimination leaves a rounding error
        }
        return result(system, earth, kind, ret, x, residual(matrix, x, right), solver.quality());
    }

    private static EarthFaultResult result(
            EarthFaultSystem system,
            PoleEarth earth,
            Kind kind,
            ReturnPath ret,
            ZMatrixRMaj x,
            double residual,
            double quality) {
        List<Phase> faulted = kind.ordered();
        int m = faulted.size();
        Complex total = Complex.ZERO;
        Map<Phase, Complex> phaseCurrents = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            int index = faulted.indexOf(phase);
            Complex current = index < 0 ? Complex.ZERO : get(x, index);
            phaseCurrents.put(phase, current);
            total = total.add(current);
        }
        Complex neutralCurrent = get(x, m);
        Complex busbarZero = get(x, m + 1);
        Complex rise = ret.poleByFault().multiply(total).add(ret.poleByNeutral().multiply(neutralCurrent));
        Complex station =
                ret.stationByFault().multiply(total).add(ret.stationByNeutral().multiply(neutralCurrent));
        SequenceImpedances series = system.source().plus(system.line());
        Complex induced =
                ret.dropByFault().multiply(total).add(ret.dropByNeutral().multiply(neutralCurrent));
        Complex zeroAtPole = busbarZero
                .subtract(system.line().zero().divide(3).multiply(total))
                .subtract(induced);
        Map<Phase, Complex> voltages = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            Complex voltage = driving(system, phase).add(zeroAtPole);
            for (Phase other : faulted) {
                voltage = voltage.subtract(phaseImpedance(series, phase, other).multiply(phaseCurrents.get(other)));
            }
            voltages.put(phase, voltage);
        }
        Complex neutralPoint = system.neutral().connected()
                ? station.subtract(system.neutral().impedance().multiply(neutralCurrent))
                : busbarZero;
        Map<String, Complex> branches = earth.currents(rise, total);
        Phase first = faulted.get(0);
        return new EarthFaultResult(
                system.frequency(),
                system.phaseVoltage(),
                total,
                phaseCurrents,
                branches,
                ret.wires(total, neutralCurrent),
                rise,
                station,
                neutralCurrent,
                neutralPoint,
                busbarZero,
                voltages,
                driving(system, first).divide(phaseCurrents.get(first)),
                new EarthFaultResult.Quality(residual, quality));
    }

    /** Positive- and negative-sequence part of the phase impedance matrix, no zero sequence in it. */
    private static Complex phaseImpedance(SequenceImpedances z, Phase row, Phase column) {
        Complex forward = rotation(row).multiply(rotation(column).conjugate());
        return z.positive()
                .multiply(forward)
                .add(z.negative().multiply(forward.conjugate()))
                .divide(3);
    }

    /** Direction of a phase in the positive sequence: 1, a², a. */
    private static Complex rotation(Phase phase) {
        return switch (phase) {
            case A -> Complex.ONE;
            case B -> A2;
            case C -> A;
        };
    }

    private static Complex driving(EarthFaultSystem system, Phase phase) {
        return rotation(phase).multiply(system.phaseVoltage());
    }

    private static void set(ZMatrixRMaj matrix, int row, int column, Complex value) {
        matrix.set(row, column, value.getReal(), value.getImaginary());
    }

    private static Complex get(ZMatrixRMaj vector, int row) {
        return new Complex(vector.getReal(row, 0), vector.getImag(row, 0));
    }

    /** Loops are in volts, the last row in amperes: bring every row to the same size before pivoting. */
    private static void scaleRows(ZMatrixRMaj matrix, ZMatrixRMaj right) {
        for (int i = 0; i < matrix.numRows; i++) {
            double largest = 0;
            for (int j = 0; j < matrix.numCols; j++) {
                largest = Math.max(largest, Math.hypot(matrix.getReal(i, j), matrix.getImag(i, j)));
            }
            for (int j = 0; j < matrix.numCols; j++) {
                matrix.set(i, j, matrix.getReal(i, j) / largest, matrix.getImag(i, j) / largest);
            }
            right.set(i, 0, right.getReal(i, 0) / largest, right.getImag(i, 0) / largest);
        }
    }

    private static double residual(ZMatrixRMaj matrix, ZMatrixRMaj x, ZMatrixRMaj right) {
        double worst = 0;
        for (int i = 0; i < matrix.numRows; i++) {
            Complex sum = get(right, i).negate();
            double scale = get(right, i).abs();
            for (int j = 0; j < matrix.numCols; j++) {
                Complex term = new Complex(matrix.getReal(i, j), matrix.getImag(i, j)).multiply(get(x, j));
                sum = sum.add(term);
                scale += term.abs();
            }
            worst = scale > 0 ? Math.max(worst, sum.abs() / scale) : worst;
        }
        return worst;
    }
}
