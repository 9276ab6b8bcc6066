package earthing.soil;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.special.BesselJ;

/**
 * Potential on the surface of layered ground around a point source on the surface, by quadrature of the Stefanescu
 * integral between the zeros of J0 and extrapolation of the partial sums (Wynn's epsilon algorithm).
 *
 * <p>The part of uniform ground ρ1/(2πr) is split off exactly, so that only what the deeper layers add is integrated.
 * Over a lowest layer that does not conduct, the integral has a logarithm without a zero at infinity; the same constant
 * is then left out for every distance and only differences have a meaning.
 */
public final class SurfacePotential {

    private static final int OCTAVES = 60;
    private static final int OCTAVE_NODES = 16;
    private static final int CYCLES = 160;
    private static final int CYCLE_NODES = 10;
    private static final double CONVERGED = 1e-14;
    /** Beyond λ·h of this the deeper layers add less than 1e-16 of ρ1. */
    private static final double LAMBDA_END = 19;

    private static final double[] OCTAVE_X = new double[OCTAVES * OCTAVE_NODES];
    private static final double[] OCTAVE_W = new double[OCTAVES * OCTAVE_NODES];
    private static final double[] CYCLE_X = new double[CYCLES * CYCLE_NODES];
    private static final double[] CYCLE_W = new double[CYCLES * CYCLE_NODES];
    private static final double[] UNIT_X = new double[OCTAVE_NODES];
    private static final double[] UNIT_W = new double[OCTAVE_NODES];
    private static final double FIRST_ZERO = zero(1);

    static {
        GaussIntegratorFactory gauss = new GaussIntegratorFactory();
        GaussIntegrator fine = gauss.legendre(OCTAVE_NODES, 0, 1);
        for (int j = 0; j < OCTAVE_NODES; j++) {
            UNIT_X[j] = fine.getPoint(j);
            UNIT_W[j] = fine.getWeight(j);
        }
        double end = FIRST_ZERO;
        for (int octave = 0; octave < OCTAVES; octave++) {
            double start = end / 2;
            for (int j = 0; j < OCTAVE_NODES; j++) {
                double x = start + (end - start) * UNIT_X[j];
                OCTAVE_X[octave * OCTAVE_NODES + j] = x;
                OCTAVE_W[octave * OCTAVE_NODES + j] = (end - start) * UNIT_W[j] * BesselJ.value(0, x);
            }
            end = start;
        }
        for (int cycle = 0; cycle < CYCLES; cycle++) {
            GaussIntegrator rule = gauss.legendre(CYCLE_NODES, zero(cycle + 1), zero(cycle + 2));
            for (int j = 0; j < CYCLE_NODES; j++) {
                double x = rule.getPoint(j);
                CYCLE_X[cycle * CYCLE_NODES + j] = x;
                CYCLE_W[cycle * CYCLE_NODES + j] = rule.getWeight(j) * BesselJ.value(0, x);
            }
        }
    }

    private final ResistivityTransform transform;
    private final double rho;
    private final double firstThickness;
    private final double totalThickness;
    private final double sheetResistance;
    private final double smallestFeature;

    private SurfacePotential(SoilModel soil) {
        transform = ResistivityTransform.of(soil);
        rho = soil.resistivity(0);
        int last = soil.layerCount() - 1;
        firstThickness = soil.thickness(0);
        totalThickness = soil.top(last);
        double conductance = 0;
        double longest = totalThickness;
        for (int i = 0; i < last; i++) {
            conductance += soil.thickness(i) / soil.resistivity(i);
            longest += soil.thickness(i) * contrast(soil.resistivity(i), soil.resistivity(last));
        }
        boolean insulated = Double.isInfinite(soil.resistivity(last));
        sheetResistance = insulated ? 1 / conductance : 0;
        smallestFeature = 0.25 / longest;
    }

    private static double contrast(double a, double b) {
        return Double.isInfinite(b) ? 1 : Math.max(a / b, b / a);
    }

    /**
     * Prepares a model.
     *
     * @param soil the ground
     * @return its surface potential
     */
    public static SurfacePotential of(SoilModel soil) {
        return new SurfacePotential(soil);
    }

    /**
     * Potential per ampere.
     *
     * @param distance distance from the source [m], &gt; 0
     * @return potential to remote earth [V/A]; over a lowest layer that does not conduct, up to one constant
     */
    public double at(double distance) {
        if (!(distance > 0) || Double.isInfinite(distance)) {
            throw new IllegalArgumentException("distance from the source must be > 0 m and finite; have " + distance);
        }
        double direct = rho / distance;
        if (Double.isInfinite(firstThickness)) {
            return direct / (2 * Math.PI);
        }
        double added = rho * integral(distance);
        if (sheetResistance > 0) {
            added -= sheetResistance * Math.log(totalThickness + Math.hypot(totalThickness, distance));
        }
        return (direct + added) / (2 * Math.PI);
    }

    /** ∫ (T/ρ1 − 1 − pole) J0(λr) dλ. */
    private double integral(double r) {
        double lambdaEnd = (sheetResistance > 0 ? 2 : 1) * LAMBDA_END / firstThickness;
        double sum = 0;
        int octave = 0;
        double end = FIRST_ZERO;
        while (octave < OCTAVES && (octave < 2 || end / r > smallestFeature)) {
            if (end / (2 * r) < lambdaEnd) {
                for (int j = octave * OCTAVE_NODES; j < (octave + 1) * OCTAVE_NODES; j++) {
                    sum += OCTAVE_W[j] * kernel(OCTAVE_X[j] / r);
                }
            }
            end /= 2;
            octave++;
        }
        for (int j = 0; j < OCTAVE_NODES; j++) {
            double x = end * UNIT_X[j];
            sum += end * UNIT_W[j] * kernel(x / r) * besselNearZero(x);
        }
        Extrapolation partial = new Extrapolation();
        double best = partial.add(sum);
        double leastChange = Double.POSITIVE_INFINITY;
        double previous = best;
        for (int cycle = 0; cycle < CYCLES; cycle++) {
            if (CYCLE_X[cycle * CYCLE_NODES] / r > lambdaEnd) {
                return sum / r;
            }
            for (int j = cycle * CYCLE_NODES; j < (cycle + 1) * CYCLE_NODES; j++) {
                sum += CYCLE_W[j] * kernel(CYCLE_X[j] / r);
            }
            double next = partial.add(sum);
            double change = Math.abs(next - previous);
            previous = next;
            if (cycle > 3 && change <= leastChange) {
                leastChange = change;
                best = next;
                if (change <= CONVERGED * Math.abs(next)) {
                    break;
                }
            }
        }
        return best / r;
    }

    /** Power series of J0, to 1e-13 for x ≤ 0.61. */
    private static double besselNearZero(double x) {
        double q = x * x / 4;
        return 1 - q * (1 - q / 4 * (1 - q / 9 * (1 - q / 16 * (1 - q / 25))));
    }

    private double kernel(double lambda) {
        double excess = transform.excess(lambda);
        return sheetResistance > 0
                ? excess - sheetResistance / (rho * lambda) * Math.exp(-lambda * totalThickness)
                : excess;
    }

    /** Zeros of J0: McMahon's expansion polished by Newton's method. */
    private static double zero(int n) {
        double b = Math.PI * (n - 0.25);
        double x = b + 1 / (8 * b) - 31 / (384 * b * b * b);
        for (int i = 0; i < 4; i++) {
            x += BesselJ.value(0, x) / BesselJ.value(1, x);
        }
        return x;
    }

    /** Wynn's epsilon algorithm over the latest partial sums, one anti-diagonal kept. */
    private static final class Extrapolation {
        private static final int COLUMNS = 25;
        private final double[] diagonal = new double[COLUMNS];
        private int filled;

        double add(double partialSum) {
            double before = 0;
            double carried = partialSum;
            double best = partialSum;
            int columns = Math.min(filled, COLUMNS - 1);
            for (int j = 0; j < columns; j++) {
                double old = diagonal[j];
                diagonal[j] = carried;
                double difference = carried - old;
                if (difference == 0) {
                    filled = j + 1;
                    return j % 2 == 0 ? carried : best;
                }
                carried = before + 1 / difference;
                before = old;
                if (j % 2 == 1) {
                    best = carried;
                }
            }
            diagonal[columns] = carried;
            filled = columns + 1;
            return best;
        }
    }
}
