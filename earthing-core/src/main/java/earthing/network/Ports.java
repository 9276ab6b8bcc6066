package earthing.network;

/**
 * Finds the currents of the nonlinear branches against the linear network behind them. Newton's method, stopped at every
 * bend of a curve (for straight pieces that is Katzenelson's method, which always arrives: J. Katzenelson, An algorithm
 * for solving nonlinear resistor networks, Bell Syst. Tech. J. 44 (1965) 1605-1620, from memory) and with backtracking
 * between bends. The linear network already carries a chord conductance in place of each branch; the unknowns are the
 * true currents. Branches that do not see each other within a step, such as those of poles joined by travelling waves
 * only, are solved apart. No allocation after construction.
 */
final class Ports {

    private static final int MOST_ITERATIONS = 200;
    private static final double TOLERANCE = 1e-11;
    /** The sum of some terms cannot be trusted below so many roundings of the terms themselves. */
    private static final double ROUNDINGS = 8 * Math.ulp(1.0);

    private final NonlinearResistance[] curves;
    private final double[] voltage;
    private final double[] excess;
    private final double[] gap;
    private final double[] trial;
    private final double[] move;
    private final double[] solved;
    private final double[] limit;
    private final double[] reach;
    private final double[][] jacobian;
    /** What rounding leaves of the last residual [V]: behind a current source its terms exceed the voltages by far. */
    private double rounding;

    Ports(NonlinearResistance[] curves) {
        int n = curves.length;
        this.curves = curves;
        voltage = new double[n];
        excess = new double[n];
        gap = new double[n];
        trial = new double[n];
        move = new double[n];
        solved = new double[n];
        limit = new double[n];
        reach = new double[n];
        jacobian = new double[n][n];
    }

    /**
     * Solves v(i) = open − Z (i − g v(i)).
     *
     * @param matrices impedance seen from the ports and chord conductances
     * @param open port voltages of the linear network [V]
     * @param current start in, solution out [A]
     * @param surplus out: current beyond that of the chord [A], to be drawn from the linear network
     */
    void solve(StepMatrices matrices, double[] open, double[] current, double[] surplus, double time) {
        double scale = 0;
        for (int k = 0; k < curves.length; k++) {
            scale = Math.max(scale, Math.max(Math.abs(open[k]), Math.abs(curves[k].voltage(current[k]))));
        }
        for (int[] group : matrices.portGroups) {
            solve(matrices, group, open, current, scale, time);
        }
        for (int k = 0; k < curves.length; k++) {
            surplus[k] = current[k] - matrices.chord[k] * curves[k].voltage(current[k]);
        }
    }

    private void solve(StepMatrices matrices, int[] group, double[] open, double[] current, double scale, double time) {
        double norm = gaps(matrices, group, open, current);
        double enough = Math.max(TOLERANCE * scale, rounding);
        int iterations = 0;
        while (norm > enough) {
            if (++iterations > MOST_ITERATIONS) {
                throw new IllegalStateException("nonlinear branches did not settle at t = " + time
                        + " s; voltage residual " + norm + " V of " + scale + " V");
            }
            direction(matrices, group, current);
            double fraction = toNextBend(group, current);
            double found = 0;
            boolean better = false;
            for (int halving = 0; halving < 40 && !better; halving++) {
                for (int k : group) {
                    // A hair beyond the bend, so that the slope of the next piece holds.
                    trial[k] = reach[k] <= fraction * (1 + 1e-12)
                            ? limit[k] + Math.copySign(1e-12 * limit[k], move[k])
                            : current[k] + fraction * move[k];
                }
                found = gaps(matrices, group, open, trial);
                enough = Math.max(TOLERANCE * scale, rounding);
                better = found <= norm * (1 + 1e-9) + enough;
                fraction /= 2;
            }
            if (!better) {
                throw new IllegalStateException("nonlinear branches did not settle at t = " + time
                        + " s; voltage residual " + norm + " V of " + scale + " V");
            }
            for (int k : group) {
                current[k] = trial[k];
            }
            norm = found;
        }
    }

    /** Part of the move that stays on the pieces of the curves on which it was computed. */
    private double toNextBend(int[] group, double[] current) {
        double fraction = 1;
        for (int k : group) {
            limit[k] = move[k] == 0 ? Double.POSITIVE_INFINITY : curves[k].nextBend(current[k], move[k] > 0);
            reach[k] = move[k] == 0 ? Double.POSITIVE_INFINITY : (limit[k] - current[k]) / move[k];
            fraction = Math.min(fraction, reach[k]);
        }
        return fraction;
    }

    private double gaps(StepMatrices matrices, int[] group, double[] open, double[] current) {
        for (int k : group) {
            voltage[k] = curves[k].voltage(current[k]);
            excess[k] = current[k] - matrices.chord[k] * voltage[k];
        }
        double norm = 0;
        double largest = 0;
        for (int k : group) {
            double sum = voltage[k] - open[k];
            double size = Math.abs(voltage[k]) + Math.abs(open[k]);
            double[] impedance = matrices.portImpedance[k];
            for (int j : group) {
                sum += impedance[j] * excess[j];
                size += Math.abs(impedance[j]) * (Math.abs(current[j]) + Math.abs(matrices.chord[j] * voltage[j]));
            }
            gap[k] = sum;
            norm = Math.max(norm, Math.abs(sum));
            largest = Math.max(largest, size);
        }
        rounding = ROUNDINGS * largest;
        return norm;
    }

    private void direction(StepMatrices matrices, int[] group, double[] current) {
        int n = group.length;
        for (int k = 0; k < n; k++) {
            solved[k] = -gap[group[k]];
        }
        for (int j = 0; j < n; j++) {
            int port = group[j];
            double slope = curves[port].slope(current[port]);
            double factor = 1 - matrices.chord[port] * slope;
            for (int k = 0; k < n; k++) {
                jacobian[k][j] = matrices.portImpedance[group[k]][port] * factor;
            }
            jacobian[j][j] += slope;
        }
        for (int c = 0; c < n; c++) {
            int pivot = c;
            for (int r = c + 1; r < n; r++) {
                if (Math.abs(jacobian[r][c]) > Math.abs(jacobian[pivot][c])) {
                    pivot = r;
                }
            }
            double[] swap = jacobian[c];
            jacobian[c] = jacobian[pivot];
            jacobian[pivot] = swap;
            double held = solved[c];
            solved[c] = solved[pivot];
            solved[pivot] = held;
            for (int r = c + 1; r < n; r++) {
                double factor = jacobian[r][c] / jacobian[c][c];
                for (int k = c; k < n; k++) {
                    jacobian[r][k] -= factor * jacobian[c][k];
                }
                solved[r] -= factor * solved[c];
            }
        }
        for (int r = n - 1; r >= 0; r--) {
            double sum = solved[r];
            for (int k = r + 1; k < n; k++) {
                sum -= jacobian[r][k] * solved[k];
            }
            solved[r] = sum / jacobian[r][r];
        }
        for (int k = 0; k < n; k++) {
            move[group[k]] = solved[k];
        }
    }
}
