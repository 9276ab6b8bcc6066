package earthing.report.figure;

import earthing.quantity.Numbers;
import earthing.report.document.Amount;
import java.util.ArrayList;
import java.util.List;

/** One axis of a chart: from a value in the printed unit to a place on the paper, with round ticks. */
final class Axis {

    private final boolean logarithmic;
    private final double low;
    private final double high;
    private final Amount.Scale scale;
    private final List<Double> ticks;

    private Axis(boolean logarithmic, double low, double high, Amount.Scale scale, List<Double> ticks) {
        this.logarithmic = logarithmic;
        this.low = low;
        this.high = high;
        this.scale = scale;
        this.ticks = List.copyOf(ticks);
    }

    /** Decades that would begin below this are named by their middle. */
    private static final double LEAST_LABEL = 0.005;

    /**
     * An axis over a range.
     *
     * @param least lowest value in SI
     * @param greatest highest value in SI
     * @param unit SI unit
     * @param logarithmic whether it is divided in decades
     */
    static Axis over(double least, double greatest, String unit, boolean logarithmic) {
        double size = Math.max(Math.abs(least), Math.abs(greatest));
        if (logarithmic && Amount.scale(size, unit).of(least) < LEAST_LABEL) {
            // 1 Ω to 1 kΩ in ohms, not from 0.001 kΩ.
            size = Math.sqrt(Math.abs(least) * Math.abs(greatest));
        }
        Amount.Scale scale = Amount.scale(size, unit);
        return logarithmic
                ? decades(scale.of(least), scale.of(greatest), scale)
                : even(scale.of(least), scale.of(greatest), scale);
    }

    /** An axis that begins and ends exactly there, with round ticks between. */
    static Axis exactly(double least, double greatest, String unit) {
        Axis around = over(least, greatest, unit, false);
        double low = around.scale.of(least);
        double high = around.scale.of(greatest);
        return new Axis(
                false,
                low,
                high,
                around.scale,
                around.ticks.stream()
                        .filter(tick -> tick >= low && tick <= high)
                        .toList());
    }

    private static Axis even(double from, double to, Amount.Scale scale) {
        double least = from;
        double greatest = to;
        // A range without extent, relative to its size, is opened on both sides.
        if (!(greatest - least > 1e-9 * Math.max(Math.abs(least), Math.abs(greatest)))) {
            double room = greatest == 0 ? 1 : Math.abs(greatest) * 0.5;
            least -= room;
            greatest += room;
        }
        double raw = (greatest - least) / 6;
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double step =
                raw / power <= 1 ? power : raw / power <= 2 ? 2 * power : raw / power <= 5 ? 5 * power : 10 * power;
        long first = (long) Math.floor(least / step + 1e-9);
        long last = (long) Math.ceil(greatest / step - 1e-9);
        List<Double> ticks = new ArrayList<>();
        for (long i = first; i <= last; i++) {
            ticks.add(i * step);
        }
        return new Axis(false, first * step, last * step, scale, ticks);
    }

    private static Axis decades(double least, double greatest, Amount.Scale scale) {
        int first = (int) Math.floor(Math.log10(least) + 1e-9);
        int last = (int) Math.ceil(Math.log10(greatest) - 1e-9);
        List<Double> ticks = new ArrayList<>();
        if (last - first <= 2) {
            double low = Math.log10(least);
            double high = Math.log10(greatest);
            for (int decade = first; decade <= last; decade++) {
                for (int digit : new int[] {1, 2, 5}) {
                    double tick = digit * Math.pow(10, decade);
                    if (Math.log10(tick) > low - 0.4 && Math.log10(tick) < high + 0.4) {
                        ticks.add(tick);
                    }
                }
            }
            double bottom = Math.min(least, ticks.get(0));
            double top = Math.max(greatest, ticks.get(ticks.size() - 1));
            return new Axis(true, bottom, top, scale, ticks);
        }
        for (int decade = first; decade <= last; decade++) {
            ticks.add(Math.pow(10, decade));
        }
        return new Axis(true, Math.pow(10, first), Math.pow(10, last), scale, ticks);
    }

    /** Ticks in the printed unit. */
    List<Double> ticks() {
        return ticks;
    }

    String unit() {
        return scale.unit();
    }

    /** Text of a tick, without the noise of binary fractions. */
    static String label(double tick) {
        String text = Numbers.significant(tick, 6);
        int point = text.indexOf('.');
        if (point < 0 || text.indexOf('e') >= 0) {
            return point < 0 ? text : Numbers.significant(tick, 1);
        }
        int end = text.length();
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        return text.substring(0, end - 1 == point ? point : end);
    }

    /** Place of a value in SI as a fraction of the axis. */
    double place(double si) {
        return placeOfTick(scale.of(si));
    }

    /** Place of a tick as a fraction of the axis. */
    double placeOfTick(double value) {
        return logarithmic
                ? (Math.log10(value) - Math.log10(low)) / (Math.log10(high) - Math.log10(low))
                : (value - low) / (high - low);
    }
}
