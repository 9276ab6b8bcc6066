package earthing.electrode;

import earthing.electrode.wire.HarmonicElectrode;
import earthing.network.RationalAdmittance;
import earthing.numeric.VectorFit;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexField;
import org.apache.commons.math3.linear.Array2DRowFieldMatrix;
import org.apache.commons.math3.linear.FieldLUDecomposition;
import org.apache.commons.math3.linear.FieldMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * Electrodes that see each other, as a circuit in the time domain can hold them: their admittances over frequency fitted by
 * rational functions with common poles. Of the orders 4 to 12 the lowest is taken that is passive and meets the impedances
 * within 0.5 %, else the passive one that meets them best.
 *
 * <p>The impedances are first brought to the own resistances of the finer solution at low frequency by one factor an electrode
 * on rows and columns, which leaves them passive.
 *
 * @param admittance the admittances; their ports are the electrodes
 * @param error greatest difference of an own or mutual impedance over the geometric mean of both own ones [-]
 * @param frequencies frequencies of the solution [Hz], 100 Hz … 4 MHz at equal ratios
 * @param impedances own and mutual impedances that were fitted, at each [Ω]
 */
public record ElectrodePorts(
        RationalAdmittance admittance, double error, List<Double> frequencies, List<Complex[][]> impedances) {

    private static final double FROM = 100;
    private static final int COUNT = 48;
    private static final int LEAST_ORDER = 4;
    private static final int MOST_ORDER = 12;
    private static final double ENOUGH = 5e-3;

    /**
     * Copies the lists.
     *
     * @param admittance the admittances
     * @param error greatest relative difference [-]
     * @param frequencies frequencies of the solution [Hz]
     * @param impedances impedances that were fitted [Ω]
     */
    public ElectrodePorts {
        frequencies = List.copyOf(frequencies);
        impedances = List.copyOf(impedances);
    }

    /**
     * Solves electrodes over frequency and fits them.
     *
     * @param electrodes the electrodes
     * @param chosen numbers of those that become ports, from 0; the others float
     * @param resistances own resistances of these at low frequency [Ω], &gt; 0
     * @return the ports, in the order chosen
     * @throws IllegalArgumentException when no order gives a passive fit
     */
    public static ElectrodePorts of(HarmonicElectrode electrodes, int[] chosen, double[] resistances) {
        List<Double> frequencies = new ArrayList<>();
        List<Complex[][]> impedances = new ArrayList<>();
        double ratio = HarmonicElectrode.HIGHEST / FROM;
        for (int i = 0; i < COUNT; i++) {
            double f = i == COUNT - 1 ? HarmonicElectrode.HIGHEST : FROM * Math.pow(ratio, i / (COUNT - 1.0));
            frequencies.add(f);
            impedances.add(part(electrodes.impedances(f), chosen));
        }
        int n = resistances.length;
        double[] factors = new double[n];
        for (int k = 0; k < n; k++) {
            double low = impedances.get(0)[k][k].abs();
            if (!(resistances[k] > 0)) {
                throw new IllegalArgumentException("a resistance must be > 0 ohm; have " + resistances[k]);
            }
            factors[k] = Math.sqrt(resistances[k] / low);
        }
        for (Complex[][] z : impedances) {
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    z[i][j] = z[i][j].multiply(factors[i] * factors[j]);
                }
            }
        }
        return fit(frequencies, impedances);
    }

    private static Complex[][] part(Complex[][] all, int[] chosen) {
        Complex[][] part = new Complex[chosen.length][chosen.length];
        for (int i = 0; i < chosen.length; i++) {
            for (int j = 0; j < chosen.length; j++) {
                part[i][j] = all[chosen[i]][chosen[j]];
            }
        }
        return part;
    }

    /**
     * Fits impedances over frequency.
     *
     * @param frequencies frequencies [Hz], &gt; 0, rising, more than 12
     * @param impedances own and mutual impedances at each [Ω], symmetric
     * @return the ports
     * @throws IllegalArgumentException when no order gives a passive fit
     */
    public static ElectrodePorts fit(List<Double> frequencies, List<Complex[][]> impedances) {
        if (frequencies.size() <= MOST_ORDER || impedances.size() != frequencies.size()) {
            throw new IllegalArgumentException("need impedances at each of more than " + MOST_ORDER
                    + " frequencies; have " + impedances.size() + " at " + frequencies.size());
        }
        int n = impedances.get(0).length;
        int count = frequencies.size();
        double[] omega = new double[count];
        Complex[][] values = new Complex[n * (n + 1) / 2][count];
        double[][] weights = new double[values.length][count];
        for (int f = 0; f < count; f++) {
            omega[f] = 2 * Math.PI * frequencies.get(f);
            Complex[][] y = inverse(impedances.get(f));
            for (int i = 0; i < n; i++) {
                for (int j = 0; j <= i; j++) {
                    values[place(i, j)][f] = y[i][j].add(y[j][i]).divide(2);
                    weights[place(i, j)][f] = 1 / Math.sqrt(y[i][i].abs() * y[j][j].abs());
                }
            }
        }
        ElectrodePorts best = null;
        String reason = "";
        for (int order = LEAST_ORDER; order <= MOST_ORDER; order++) {
            try {
                RationalAdmittance admittance = admittance(VectorFit.of(omega, values, weights, order), n);
                double error = error(admittance, omega, impedances);
                if (best == null || error < best.error()) {
                    best = new ElectrodePorts(admittance, error, frequencies, impedances);
                }
                if (error <= ENOUGH) {
                    break;
                }
            } catch (IllegalArgumentException refused) {
                reason = String.valueOf(refused.getMessage());
            }
        }
        if (best == null) {
            throw new IllegalArgumentException("no passive fit of the electrodes over frequency: " + reason);
        }
        return best;
    }

    private static int place(int i, int j) {
        return i * (i + 1) / 2 + j;
    }

    private static RationalAdmittance admittance(VectorFit.Result fit, int n) {
        double[][] constant = new double[n][n];
        List<Complex[][]> residues = new ArrayList<>();
        for (int k = 0; k < fit.poles().size(); k++) {
            residues.add(new Complex[n][n]);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                int element = place(i, j);
                constant[i][j] = fit.constants().get(element);
                constant[j][i] = constant[i][j];
                for (int k = 0; k < residues.size(); k++) {
                    residues.get(k)[i][j] = fit.residues().get(element).get(k);
                    residues.get(k)[j][i] = residues.get(k)[i][j];
                }
            }
        }
        return RationalAdmittance.of(constant, fit.poles(), residues);
    }

    private static double error(RationalAdmittance admittance, double[] omega, List<Complex[][]> impedances) {
        double error = 0;
        for (int f = 0; f < omega.length; f++) {
            Complex[][] z = inverse(admittance.at(omega[f]));
            Complex[][] wanted = impedances.get(f);
            for (int i = 0; i < z.length; i++) {
                for (int j = 0; j <= i; j++) {
                    double size = Math.sqrt(wanted[i][i].abs() * wanted[j][j].abs());
                    error = Math.max(error, z[i][j].subtract(wanted[i][j]).abs() / size);
                }
            }
        }
        return error;
    }

    private static Complex[][] inverse(Complex[][] matrix) {
        try {
            FieldMatrix<Complex> inverse = new FieldLUDecomposition<>(
                            new Array2DRowFieldMatrix<>(ComplexField.getInstance(), matrix, true))
                    .getSolver()
                    .getInverse();
            return inverse.getData();
        } catch (SingularMatrixException singular) {
            throw new IllegalArgumentException("the impedances of the electrodes are singular", singular);
        }
    }

    /**
     * Own and mutual impedances of the fit.
     *
     * @param frequency frequency [Hz], ≥ 0
     * @return impedances [Ω]
     */
    public Complex[][] impedances(double frequency) {
        return inverse(admittance.at(2 * Math.PI * frequency));
    }
}
