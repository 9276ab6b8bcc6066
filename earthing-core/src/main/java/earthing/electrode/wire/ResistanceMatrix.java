package earthing.electrode.wire;

import java.util.List;

/**
 * Self and mutual resistances of separately connected electrodes: the potential of one per ampere into another. A self
 * value holds with the other electrodes present and floating.
 */
public final class ResistanceMatrix {

    private final List<String> names;
    private final double[][] values;

    ResistanceMatrix(List<String> names, double[][] values) {
        this.names = List.copyOf(names);
        this.values = values;
    }

    /**
     * Names of the electrodes.
     *
     * @return names in the order of rows and columns
     */
    public List<String> names() {
        return names;
    }

    /**
     * One element.
     *
     * @param row index of the electrode whose potential is meant
     * @param column index of the electrode that carries the ampere
     * @return resistance [Ω]
     */
    public double get(int row, int column) {
        return values[row][column];
    }

    /**
     * Mutual resistance of two electrodes, or the self resistance where both are the same.
     *
     * @param one name
     * @param other name
     * @return resistance [Ω]
     */
    public double mutual(String one, String other) {
        return values[index(one)][index(other)];
    }

    /**
     * Resistance of one electrode, the others present and floating.
     *
     * @param name name
     * @return resistance to remote earth [Ω]
     */
    public double alone(String name) {
        return mutual(name, name);
    }

    /**
     * Resistance of two electrodes joined, the others present and floating.
     *
     * @param one name
     * @param other name of another one
     * @return resistance to remote earth [Ω]
     */
    public double joined(String one, String other) {
        double a = alone(one);
        double b = alone(other);
        double m = mutual(one, other);
        return (a * b - m * m) / (a + b - 2 * m);
    }

    /**
     * Row of an electrode.
     *
     * @param name name
     * @return index
     * @throws IllegalArgumentException when there is no electrode of that name
     */
    public int index(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("no electrode \"" + name + "\"; have " + names);
        }
        return index;
    }
}
