package earthing.fault.line;

import java.util.ArrayList;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * Capacitance of overhead conductors over perfectly conducting ground [F/m], from Maxwell's potential coefficients
 * {@code ln(2h/r)/2πε₀} and {@code ln(D'/D)/2πε₀}. Immutable.
 */
public final class LineCapacitance {

    /** Permittivity of free space [F/m], CODATA 2018. */
    public static final double EPSILON_0 = 8.8541878128e-12;

    private final List<String> names;
    private final DMatrixRMaj matrix;

    private LineCapacitance(List<String> names, DMatrixRMaj matrix) {
        this.names = List.copyOf(names);
        this.matrix = matrix;
    }

    /**
     * The capacitance matrix of a line.
     *
     * @param conductors the conductors, names unique
     * @return the matrix
     */
    public static LineCapacitance of(List<LineConductor> conductors) {
        int n = conductors.size();
        List<String> names = new ArrayList<>();
        DMatrixRMaj p = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            LineConductor a = conductors.get(i);
            if (names.contains(a.name())) {
                throw new IllegalArgumentException("conductor " + a.name() + " stands twice");
            }
            names.add(a.name());
            for (int j = 0; j < n; j++) {
                LineConductor b = conductors.get(j);
                double distance = i == j ? a.radius() : a.distance(b);
                p.set(i, j, Math.log(a.imageDistance(b) / distance) / (2 * Math.PI * EPSILON_0));
            }
        }
        DMatrixRMaj c = new DMatrixRMaj(n, n);
        if (n == 0 || !CommonOps_DDRM.invert(p, c)) {
            throw new IllegalArgumentException("the conductors of a line must be apart from each other");
        }
        return new LineCapacitance(names, c);
    }

    /**
     * One entry of the nodal (Maxwell) capacitance matrix; off the diagonal it is negative.
     *
     * @param a name of a conductor
     * @param b name of a conductor
     * @return capacitance [F/m]
     */
    public double at(String a, String b) {
        return matrix.get(index(a), index(b));
    }

    private int index(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("no conductor " + name + " on this line; it has " + names);
        }
        return index;
    }

    /**
     * Capacitance of all three phases together to earth, every other conductor earthed: three times the zero-sequence
     * capacitance of one phase.
     *
     * @param a first phase
     * @param b second phase
     * @param c third phase
     * @return 3·C₀ [F/m]
     */
    public double threePhasesToEarth(String a, String b, String c) {
        double sum = 0;
        for (String i : List.of(a, b, c)) {
            for (String j : List.of(a, b, c)) {
                sum += at(i, j);
            }
        }
        return sum;
    }
}
