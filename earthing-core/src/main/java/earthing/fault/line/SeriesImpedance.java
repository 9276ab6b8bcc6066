package earthing.fault.line;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.CommonOps_ZDRM;

/**
 * Series impedance matrix of the parallel conductors of a line, with earth as their common return [Ω/m]. Immutable.
 * Currents of all conductors count in the same direction along the line.
 */
public final class SeriesImpedance {

    private final List<String> names;
    private final ZMatrixRMaj matrix;

    private SeriesImpedance(List<String> names, ZMatrixRMaj matrix) {
        this.names = List.copyOf(names);
        this.matrix = matrix;
    }

    /**
     * The matrix of a line from its geometry.
     *
     * @param conductors the conductors, names unique
     * @param earth form of the earth return
     * @param frequency frequency [Hz]
     * @param resistivity soil resistivity [Ω·m]
     * @return the matrix, in the order of the conductors
     */
    public static SeriesImpedance of(
            List<LineConductor> conductors, EarthReturn earth, double frequency, double resistivity) {
        int n = conductors.size();
        List<String> names = new ArrayList<>();
        ZMatrixRMaj z = new ZMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            names.add(conductors.get(i).name());
            for (int j = 0; j < n; j++) {
                Complex value = i == j
                        ? earth.self(conductors.get(i), frequency, resistivity)
                        : earth.mutual(conductors.get(i), conductors.get(j), frequency, resistivity);
                z.set(i, j, value.getReal(), value.getImaginary());
            }
        }
        if (n == 0 || new HashSet<>(names).size() != n) {
            throw new IllegalArgumentException("a line needs conductors with names of their own; have " + names);
        }
        return new SeriesImpedance(names, z);
    }

    /**
     * The conductors.
     *
     * @return names in matrix order
     */
    public List<String> names() {
        return names;
    }

    /**
     * One entry.
     *
     * @param a name of a conductor
     * @param b name of a conductor, the same for the self impedance
     * @return impedance [Ω/m]
     */
    public Complex at(String a, String b) {
        int i = index(a);
        int j = index(b);
        return new Complex(matrix.getReal(i, j), matrix.getImag(i, j));
    }

    private int index(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("no conductor " + name + " on this line; it has " + names);
        }
        return index;
    }

    /**
     * Only some of the conductors, the others carrying no current (open).
     *
     * @param kept names to keep
     * @return the smaller matrix in the order given
     */
    public SeriesImpedance only(List<String> kept) {
        int n = kept.size();
        ZMatrixRMaj z = new ZMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                Complex value = at(kept.get(i), kept.get(j));
                z.set(i, j, value.getReal(), value.getImaginary());
            }
        }
        return new SeriesImpedance(kept, z);
    }

    /**
     * Kron reduction: the named conductors are at earth potential all along (many good earths), their current follows
     * by induction alone and they vanish from the matrix.
     *
     * @param earthed names of the earthed conductors
     * @return the smaller matrix
     */
    public SeriesImpedance withEarthed(List<String> earthed) {
        List<String> kept = new ArrayList<>(names);
        for (String name : earthed) {
            index(name);
            kept.remove(name);
        }
        return new SeriesImpedance(names, inverse(matrix)).only(kept).inverted();
    }

    /**
     * Conductors bonded to each other at every pole: one equivalent conductor that carries the sum of their currents.
     *
     * @param bonded names of the conductors in parallel, at least one
     * @param name name of the equivalent
     * @return the matrix, the equivalent last
     */
    public SeriesImpedance bonded(List<String> bonded, String name) {
        List<String> kept = new ArrayList<>(names);
        for (String member : bonded) {
            index(member);
            kept.remove(member);
        }
        List<String> result = new ArrayList<>(kept);
        result.add(name);
        if (bonded.isEmpty() || kept.contains(name)) {
            throw new IllegalArgumentException("an equivalent conductor needs members and a name of its own");
        }
        ZMatrixRMaj y = inverse(matrix);
        int n = result.size();
        ZMatrixRMaj sum = new ZMatrixRMaj(n, n);
        for (int i = 0; i < names.size(); i++) {
            for (int j = 0; j < names.size(); j++) {
                int row = kept.contains(names.get(i)) ? kept.indexOf(names.get(i)) : n - 1;
                int column = kept.contains(names.get(j)) ? kept.indexOf(names.get(j)) : n - 1;
                sum.set(
                        row,
                        column,
                        sum.getReal(row, column) + y.getReal(i, j),
                        sum.getImag(row, column) + y.getImag(i, j));
            }
        }
        return new SeriesImpedance(result, sum).inverted();
    }

    /**
     * Sequence impedances of three phases, the line taken as transposed.
     *
     * @param a first phase
     * @param b second phase
     * @param c third phase
     * @return impedances [Ω/m], Z₁ = Z₂ = self − mutual, Z₀ = self + 2·mutual of the mean values
     */
    public SequenceImpedances sequence(String a, String b, String c) {
        Complex self = at(a, a).add(at(b, b)).add(at(c, c)).divide(3);
        Complex mutual = at(a, b).add(at(b, c)).add(at(c, a)).divide(3);
        return SequenceImpedances.of(self.subtract(mutual), self.add(mutual.multiply(2)));
    }

    /**
     * Mean mutual impedance of three phases to one more conductor.
     *
     * @param a first phase
     * @param b second phase
     * @param c third phase
     * @param other the neutral or shield wire
     * @return impedance [Ω/m]
     */
    public Complex meanMutual(String a, String b, String c, String other) {
        return at(a, other).add(at(b, other)).add(at(c, other)).divide(3);
    }

    private SeriesImpedance inverted() {
        return new SeriesImpedance(names, inverse(matrix));
    }

    private static ZMatrixRMaj inverse(ZMatrixRMaj z) {
        ZMatrixRMaj y = new ZMatrixRMaj(z.numRows, z.numCols);
        if (!CommonOps_ZDRM.invert(z, y)) {
            throw new IllegalArgumentException("the impedance matrix of the line is singular");
        }
        return y;
    }
}
