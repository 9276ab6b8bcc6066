package earthing.conductor.inductance;

import java.util.List;

/**
 * Self and mutual partial inductances of a set of straight round conductors. Convention: filament at radius for the
 * self values; the mutual of parallel conductors uses the distance of their axes, but no less than the larger radius.
 * So pieces of one conductor add up exactly to the whole, and a wire inside a tube couples with it by exactly the tube's
 * self inductance.
 */
public final class InductanceMatrix {

    /** What lies below height 0. */
    public enum Ground {
        /** Free space; the current closes through branches that the circuit holds. */
        NONE,
        /** A perfectly conducting plane: every conductor couples with the images of all. */
        PERFECT_IMAGE
    }

    private final double[][] values;

    private InductanceMatrix(double[][] values) {
        this.values = values;
    }

    /**
     * Computes the matrix.
     *
     * @param conductors the conductors; with a ground plane all at heights of at least 0
     * @param ground whether there is a ground plane
     * @return the matrix in the order of the list
     * @throws IllegalArgumentException if a conductor dips below a ground plane
     */
    public static InductanceMatrix of(List<RoundConductor> conductors, Ground ground) {
        int n = conductors.size();
        double[][] values = new double[n][n];
        for (int i = 0; i < n; i++) {
            RoundConductor a = conductors.get(i);
            if (ground == Ground.PERFECT_IMAGE
                    && !(Math.min(a.axis().start().z(), a.axis().end().z()) >= 0)) {
                throw new IllegalArgumentException("conductor " + i + " dips below the ground plane");
            }
            for (int j = i; j < n; j++) {
                double value = mutual(a, conductors.get(j), ground);
                values[i][j] = value;
                values[j][i] = value;
            }
        }
        return new InductanceMatrix(values);
    }

    /**
     * Mutual partial inductance of two conductors; of a conductor with itself its self inductance.
     *
     * @param a first conductor
     * @param b second conductor
     * @param ground whether there is a ground plane
     * @return inductance [H], its sign by the directions of the axes
     */
    public static double mutual(RoundConductor a, RoundConductor b, Ground ground) {
        double closest = Math.max(a.radius(), b.radius());
        double value = a.equals(b)
                ? SelfInductance.filamentAtRadius(a.axis().length(), a.radius())
                : FilamentInductance.mutual(a.axis(), b.axis(), closest);
        if (ground == Ground.PERFECT_IMAGE) {
            value += FilamentInductance.mutual(a.axis(), b.axis().image(), closest);
        }
        return value;
    }

    /**
     * One entry.
     *
     * @param i position in the list
     * @param j position in the list
     * @return self or mutual inductance [H]
     */
    public double get(int i, int j) {
        return values[i][j];
    }

    /**
     * Number of conductors.
     *
     * @return rows of the matrix
     */
    public int size() {
        return values.length;
    }

    /**
     * Inductance of all conductors in series, each passed in its positive direction: of a loop, if they close one.
     *
     * @return sum of all entries [H]
     */
    public double series() {
        double sum = 0;
        for (double[] row : values) {
            for (double value : row) {
                sum += value;
            }
        }
        return sum;
    }
}
