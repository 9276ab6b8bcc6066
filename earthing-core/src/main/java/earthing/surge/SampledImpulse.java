package earthing.surge;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A recorded impulse: straight between samples, 0 before the first and after the last. */
public final class SampledImpulse implements Impulse {

    private final double[] times;
    private final double[] values;

    /**
     * An impulse from samples.
     *
     * @param times rising times [s], the first at least 0, at least three
     * @param values as many values [A] or [V], at least one above 0
     * @throws IllegalArgumentException if the times do not rise, the numbers differ, or no value is above 0
     */
    public SampledImpulse(double[] times, double[] values) {
        if (times.length != values.length || times.length < 3) {
            throw new IllegalArgumentException("a recorded impulse needs as many values as times, at least three; have "
                    + times.length + " and " + values.length);
        }
        double last = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < times.length; k++) {
            if (!(times[k] > last) || !(times[k] >= 0) || !Double.isFinite(values[k])) {
                throw new IllegalArgumentException("sample " + (k + 1)
                        + ": times must rise from 0 and values be finite; have " + times[k] + " s, " + values[k]);
            }
            last = times[k];
        }
        if (!(Arrays.stream(values).max().orElse(0) > 0)) {
            throw new IllegalArgumentException("a recorded impulse needs a value above 0; reverse its sign");
        }
        this.times = times.clone();
        this.values = values.clone();
    }

    /**
     * Reads two columns, time and value, separated by commas. Lines that begin with {@code #} and one heading line are
     * passed over.
     *
     * @param reader where to read
     * @param timeUnit factor of the time column into seconds, above 0
     * @param valueUnit factor of the value column into ampere or volt
     * @return the impulse
     * @throws IllegalArgumentException if a line is not two numbers; the message names the line
     */
    public static SampledImpulse read(Reader reader, double timeUnit, double valueUnit) {
        List<double[]> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .commentStrategy(de.siegmar.fastcsv.reader.CommentStrategy.SKIP)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(reader)) {
            boolean first = true;
            for (CsvRecord record : csv) {
                double[] row = row(record);
                if (row.length == 2) {
                    rows.add(new double[] {row[0] * timeUnit, row[1] * valueUnit});
                } else if (!first) {
                    throw new IllegalArgumentException("line " + record.getStartingLineNumber()
                            + ": expected a time and a value, separated by a comma; have " + record.getFields());
                }
                first = false;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new SampledImpulse(
                rows.stream().mapToDouble(r -> r[0]).toArray(),
                rows.stream().mapToDouble(r -> r[1]).toArray());
    }

    private static double[] row(CsvRecord record) {
        if (record.getFieldCount() != 2) {
            return new double[0];
        }
        try {
            return new double[] {
                Double.parseDouble(record.getField(0).strip()),
                Double.parseDouble(record.getField(1).strip())
            };
        } catch (NumberFormatException e) {
            return new double[0];
        }
    }

    private int piece(double time) {
        int found = Arrays.binarySearch(times, time);
        int k = found >= 0 ? found : -found - 2;
        return Math.min(k, times.length - 2);
    }

    @Override
    public double at(double time) {
        if (!(time >= times[0]) || !(time <= times[times.length - 1])) {
            return 0;
        }
        int k = piece(time);
        return values[k] + slope(k) * (time - times[k]);
    }

    private double slope(int k) {
        return (values[k + 1] - values[k]) / (times[k + 1] - times[k]);
    }

    @Override
    public double rate(double time) {
        if (!(time >= times[0]) || !(time <= times[times.length - 1])) {
            return 0;
        }
        return slope(piece(time));
    }

    @Override
    public List<Double> jumps() {
        List<Double> jumps = new ArrayList<>();
        if (values[0] != 0 && times[0] > 0) {
            jumps.add(times[0]);
        }
        if (values[values.length - 1] != 0) {
            jumps.add(times[times.length - 1]);
        }
        return jumps;
    }

    /**
     * Number of samples.
     *
     * @return at least three
     */
    public int size() {
        return times.length;
    }

    /**
     * Time of a sample.
     *
     * @param k index from 0
     * @return time [s]
     */
    public double time(int k) {
        return times[k];
    }

    @Override
    public double duration() {
        return times[times.length - 1];
    }

    @Override
    public double frontScale() {
        int peak = 0;
        for (int k = 1; k < values.length; k++) {
            if (values[k] > values[peak]) {
                peak = k;
            }
        }
        return Math.max(times[peak], times[1]);
    }

    @Override
    public SampledImpulse scaled(double factor) {
        return new SampledImpulse(
                times, Arrays.stream(values).map(v -> v * factor).toArray());
    }
}
