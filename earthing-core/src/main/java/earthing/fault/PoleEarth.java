package earthing.fault;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.CommonOps_ZDRM;

/**
 * The ways from the tank of the pole into the soil that are tied together there: electrode, stay, low-voltage neutral,
 * cable screen. Each has a name and an impedance to remote earth; electrodes near each other may be coupled through the
 * soil. Immutable.
 */
public final class PoleEarth {

    private final List<String> names;
    /** Admittance matrix of the branches, row-major [S]; empty for a bolted earth. */
    private final List<Complex> admittances;

    private final boolean bolted;

    private PoleEarth(List<String> names, List<Complex> admittances, boolean bolted) {
        this.names = List.copyOf(names);
        this.admittances = List.copyOf(admittances);
        this.bolted = bolted;
    }

    /**
     * One way into the soil.
     *
     * @param name name of the branch
     * @param impedance impedance to remote earth [Ω], not zero, resistance ≥ 0
     */
    public record Branch(String name, Complex impedance) {

        /**
         * Refuses a branch without name or with an impedance of zero.
         *
         * @param name name of the branch
         * @param impedance impedance to remote earth [Ω], not zero, resistance ≥ 0
         */
        public Branch {
            if (name.isBlank()) {
                throw new IllegalArgumentException("a branch to earth needs a name");
            }
            if (!(impedance.getReal() >= 0) || !(impedance.abs() > 0) || !Double.isFinite(impedance.abs())) {
                throw new IllegalArgumentException(
                        "impedance of " + name + " must be finite, not zero, with resistance >= 0; have " + impedance);
            }
        }

        /**
         * A resistance.
         *
         * @param name name of the branch
         * @param resistance resistance to remote earth [Ω], &gt; 0
         * @return the branch
         */
        public static Branch ofResistance(String name, double resistance) {
            return new Branch(name, new Complex(resistance, 0));
        }
    }

    /**
     * Branches that do not influence each other.
     *
     * @param branches the branches, names unique; none if every way to earth is broken
     * @return the pole earth
     */
    public static PoleEarth of(List<Branch> branches) {
        int n = branches.size();
        List<String> names = branches.stream().map(Branch::name).toList();
        requireUnique(names);
        List<Complex> admittances = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                admittances.add(i == j ? branches.get(i).impedance().reciprocal() : Complex.ZERO);
            }
        }
        return new PoleEarth(names, admittances, false);
    }

    /**
     * A single electrode.
     *
     * @param name its name
     * @param resistance resistance to remote earth [Ω], &gt; 0
     * @return the pole earth
     */
    public static PoleEarth ofResistance(String name, double resistance) {
        return of(List.of(Branch.ofResistance(name, resistance)));
    }

    /**
     * Electrodes that are coupled through the soil.
     *
     * @param names names of the electrodes, unique
     * @param impedances self and mutual impedances [Ω], one row for each electrode, symmetric
     * @return the pole earth
     */
    public static PoleEarth coupled(List<String> names, List<List<Complex>> impedances) {
        int n = names.size();
        requireUnique(names);
        if (n == 0 || impedances.size() != n) {
            throw new IllegalArgumentException("the impedance matrix must have one row for each of " + names);
        }
        ZMatrixRMaj z = new ZMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            if (impedances.get(i).size() != n) {
                throw new IllegalArgumentException("row " + i + " of the impedance matrix must have " + n + " entries");
            }
            for (int j = 0; j < n; j++) {
                Complex value = impedances.get(i).get(j);
                Complex mirror = impedances.get(j).get(i);
                if (!(value.subtract(mirror).abs() <= 1e-6 * (value.abs() + mirror.abs()))) {
                    throw new IllegalArgumentException(
                            "mutual impedance of " + names.get(i) + " and " + names.get(j) + " is not symmetric");
                }
                z.set(i, j, value.getReal(), value.getImaginary());
            }
        }
        ZMatrixRMaj y = new ZMatrixRMaj(n, n);
        if (!CommonOps_ZDRM.invert(z, y)) {
            throw new IllegalArgumentException("the impedance matrix of " + names + " is singular");
        }
        List<Complex> admittances = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                admittances.add(new Complex(y.getReal(i, j), y.getImag(i, j)));
            }
        }
        return new PoleEarth(names, admittances, false);
    }

    /**
     * An earth of no impedance, for comparison with textbook fault currents.
     *
     * @param name its name
     * @return the pole earth; it cannot be combined with a return conductor
     */
    public static PoleEarth bolted(String name) {
        return new PoleEarth(List.of(Objects.requireNonNull(name)), List.of(), true);
    }

    private static void requireUnique(List<String> names) {
        if (names.stream().distinct().count() != names.size()) {
            throw new IllegalArgumentException("branches to earth need names of their own; have " + names);
        }
    }

    /**
     * The branches.
     *
     * @return names in order
     */
    public List<String> names() {
        return names;
    }

    /**
     * Whether this is the ideal earth of no impedance.
     *
     * @return true for {@link #bolted}
     */
    public boolean isBolted() {
        return bolted;
    }

    /**
     * Admittance of all branches together.
     *
     * @return admittance [S], zero without any branch
     * @throws IllegalStateException for a bolted earth
     */
    public Complex admittance() {
        if (bolted) {
            throw new IllegalStateException("a bolted earth has no finite admittance");
        }
        Complex sum = Complex.ZERO;
        for (Complex y : admittances) {
            sum = sum.add(y);
        }
        return sum;
    }

    /**
     * Impedance of all branches together.
     *
     * @return impedance to remote earth [Ω], zero when bolted
     * @throws IllegalStateException without any branch
     */
    public Complex impedance() {
        if (bolted) {
            return Complex.ZERO;
        }
        Complex y = admittance();
        if (!(y.abs() > 0)) {
            throw new IllegalStateException("every way to earth is broken; there is no impedance to earth");
        }
        return y.reciprocal();
    }

    /**
     * Current of each branch.
     *
     * @param potential potential of the tank to remote earth [V]
     * @param total current of all branches together [A], used when bolted
     * @return current by name [A], in order, towards the soil
     */
    Map<String, Complex> currents(Complex potential, Complex total) {
        Map<String, Complex> result = new LinkedHashMap<>();
        int n = names.size();
        for (int i = 0; i < n; i++) {
            Complex sum = bolted ? total : Complex.ZERO;
            for (int j = 0; j < n && !bolted; j++) {
                sum = sum.add(admittances.get(i * n + j).multiply(potential));
            }
            result.put(names.get(i), sum);
        }
        return result;
    }
}
