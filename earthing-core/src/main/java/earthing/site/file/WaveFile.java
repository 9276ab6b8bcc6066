package earthing.site.file;

import earthing.quantity.ColumnTable;
import earthing.surge.SampledImpulse;

/** A recorded surge current: the columns {@code time} and {@code current} of a {@link TableFile}. */
public final class WaveFile {

    private WaveFile() {}

    /**
     * The current of a table that a site file names.
     *
     * @param table the table, checked when it was read
     * @return the current [A] over time [s]
     */
    public static SampledImpulse impulse(ColumnTable table) {
        return new SampledImpulse(
                table.column("time").stream().mapToDouble(Double::doubleValue).toArray(),
                table.column("current").stream()
                        .mapToDouble(Double::doubleValue)
                        .toArray());
    }

    /** Tells what keeps a table from being a current. */
    static void check(TableFile.Read read, ProblemList problems) {
        if (problems.isEmpty() && read.table() != null) {
            try {
                impulse(read.table());
            } catch (IllegalArgumentException noWave) {
                problems.add(Place.WHOLE_FILE, String.valueOf(noWave.getMessage()));
            }
        }
    }
}
