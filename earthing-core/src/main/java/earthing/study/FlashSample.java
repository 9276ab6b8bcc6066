package earthing.study;

import earthing.surge.ConcaveFront;
import earthing.surge.RampResponse;
import earthing.surge.StrokeSampler;
import java.util.Arrays;

/** Flashes that were drawn, each with the ground that it stands for and the most that its strokes brought. */
final class FlashSample {

    /** Strokes that follow the first one; a negative flash has three strokes in the mean, from memory. */
    static final int SUBSEQUENT = 2;

    /** 95 % of a normal distribution lie within so many standard deviations. */
    static final double NINETY_FIVE = 1.96;
    /** Upper 95 % bound of a mean of which nothing was seen: 3 of the number drawn (rule of three). */
    private static final double NONE_SEEN = 3;

    private final double[] ground;
    private final double[] voltage;
    private final double[] current;
    private int count;

    FlashSample(int size) {
        ground = new double[size];
        voltage = new double[size];
        current = new double[size];
    }

    /** Number of flashes that were added. */
    int size() {
        return count;
    }

    /** The strokes of the next flash. */
    static ConcaveFront[] flash(StrokeSampler sampler) {
        ConcaveFront[] strokes = new ConcaveFront[1 + SUBSEQUENT];
        strokes[0] = sampler.first();
        for (int k = 1; k < strokes.length; k++) {
            strokes[k] = sampler.subsequent();
        }
        return strokes;
    }

    /** Adds a flash: ground it stands for [m²], largest open voltage [V] and short-circuit current [A]. */
    void add(double area, double openVoltage, double shortCurrent) {
        ground[count] = area;
        voltage[count] = openVoltage;
        current[count] = shortCurrent;
        count++;
    }

    /** Adds a flash whose strokes all come in the same way; the current is asked for only where a limit needs it. */
    void add(double area, ConcaveFront[] strokes, StrokeResponses.Pair answers, boolean withCurrent) {
        double open = 0;
        double shorted = 0;
        for (ConcaveFront stroke : strokes) {
            open = Math.max(open, answers.open().peak(stroke));
            if (withCurrent) {
                shorted = Math.max(shorted, answers.shorted().peak(stroke));
            }
        }
        add(area, open, shorted);
    }

    /**
     * Ground whose flashes bring more than a limit.
     *
     * @param area mean area [m²]
     * @param error its standard error [m²]
     * @param bound a 95 % upper bound of the error, also where nothing was seen [m²]
     */
    record Ground(double area, double error, double bound) {}

    Ground beyond(RiskLimit limit) {
        double[] value = limit.current() ? current : voltage;
        double sum = 0;
        double squares = 0;
        double seen = 0;
        for (int k = 0; k < count; k++) {
            if (value[k] > 0) {
                seen += ground[k];
            }
            if (value[k] > limit.value()) {
                sum += ground[k];
                squares += ground[k] * ground[k];
            }
        }
        if (count == 0) {
            return new Ground(0, 0, 0);
        }
        double mean = sum / count;
        double error = Math.sqrt(Math.max(0, squares / count - mean * mean) / count);
        return new Ground(mean, error, sum > 0 ? NINETY_FIVE * error : NONE_SEEN / count * seen / count);
    }

    /** Largest magnitudes of the answers to strokes that were drawn, in rising order. */
    static double[] sorted(ConcaveFront[] strokes, RampResponse response) {
        double[] peaks = new double[strokes.length];
        for (int k = 0; k < peaks.length; k++) {
            peaks[k] = response.peak(strokes[k]);
        }
        Arrays.sort(peaks);
        return peaks;
    }

    /** The value that a part of sorted values exceeds, straight between them. */
    static double exceededBy(double[] sorted, double part) {
        double at = (1 - part) * sorted.length - 0.5;
        int k = (int) Math.max(0, Math.min(sorted.length - 2, Math.floor(at)));
        double between = Math.max(0, Math.min(1, at - k));
        return sorted[k] + between * (sorted[k + 1] - sorted[k]);
    }
}
