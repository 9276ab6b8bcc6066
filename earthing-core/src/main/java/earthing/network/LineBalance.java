package earthing.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Checks the ends of lossless lines on their samples: what sets out at one end arrives at the other one time of travel
 * later, and the energy on the way is the difference of what went in and out. Integrals by trapezoids take the place of
 * values, because waves may jump.
 */
final class LineBalance {

    private LineBalance() {}

    /** The current i = Y v − h of an end, in the order of the line's conductors: the wave h + 2 (Y v − h) that sets out. */
    private static List<double[]> departing(
            List<Branch.LineEnd> side, Map<String, Waveform> currents, Map<String, Waveform> voltages) {
        List<double[]> waves = new ArrayList<>();
        for (Branch.LineEnd end : side) {
            Waveform i = KirchhoffCheck.of(currents, end.name());
            double[] wave = new double[i.size()];
            for (Branch.LineEnd other : side) {
                Waveform v = KirchhoffCheck.of(voltages, other.name());
                double y = end.line().surgeAdmittance(end.conductor(), other.conductor());
                for (int k = 1; k < wave.length; k++) {
                    wave[k] += y * v.value(k);
                }
            }
            for (int k = 1; k < wave.length; k++) {
                wave[k] += i.value(k);
            }
            waves.add(wave);
        }
        return waves;
    }

    private static List<Branch.LineEnd> side(Circuit circuit, Branch.LineEnd of, boolean far) {
        return circuit.branches(Branch.LineEnd.class).stream()
                .filter(e -> e.lineName().equals(of.lineName()) && e.far() == far)
                .sorted(java.util.Comparator.comparingInt(Branch.LineEnd::conductor))
                .toList();
    }

    /** Integral up to each sample; in the first step its value at the end counts, since sources may jump at the start. */
    private static double[] integral(double[] values, Waveform times) {
        double[] sums = new double[values.length];
        for (int k = 1; k < values.length; k++) {
            double mean = k == 1 ? values[1] : 0.5 * (values[k] + values[k - 1]);
            sums[k] = sums[k - 1] + mean * (times.time(k) - times.time(k - 1));
        }
        return sums;
    }

    /** Worst departure of one end from the law of the line, as a part of the largest integral. */
    static double departure(
            Circuit circuit, Branch.LineEnd end, Map<String, Waveform> currents, Map<String, Waveform> voltages) {
        Waveform i = KirchhoffCheck.of(currents, end.name());
        double[] here = departing(side(circuit, end, end.far()), currents, voltages)
                .get(end.conductor())
                .clone();
        for (int k = 1; k < here.length; k++) {
            // What arrives here: Y v − i.
            here[k] -= 2 * i.value(k);
        }
        double[] sent = integral(
                departing(side(circuit, end, !end.far()), currents, voltages).get(end.conductor()), i);
        double[] arrived = integral(here, i);
        double[] times = new double[sent.length];
        for (int k = 0; k < times.length; k++) {
            times[k] = i.time(k);
        }
        Waveform source = new Waveform(times, sent);
        double worst = 0;
        double scale = 0;
        for (int k = 1; k < times.length; k++) {
            double before = times[k] - end.line().delay();
            double expected = before > 0 ? source.at(before) : 0;
            worst = Math.max(worst, Math.abs(arrived[k] - expected));
            scale = Math.max(scale, Math.max(Math.abs(arrived[k]), Math.abs(sent[k])));
        }
        return scale > 0 ? worst / scale : worst;
    }

    /** Energy on the way in all lines at the last sample [J]: ¼ ∫ wᵀ Z w dt over the last time of travel, both ways. */
    static double onTheWay(Circuit circuit, Map<String, Waveform> currents, Map<String, Waveform> voltages) {
        double energy = 0;
        for (Branch.LineEnd end : circuit.branches(Branch.LineEnd.class)) {
            if (end.conductor() != 0) {
                continue;
            }
            LosslessLine line = end.line();
            List<double[]> waves = departing(side(circuit, end, end.far()), currents, voltages);
            Waveform i = KirchhoffCheck.of(currents, end.name());
            double[] power = new double[i.size()];
            for (int a = 0; a < waves.size(); a++) {
                for (int b = 0; b < waves.size(); b++) {
                    for (int k = 1; k < power.length; k++) {
                        power[k] += 0.25 * line.surgeImpedance(a, b) * waves.get(a)[k] * waves.get(b)[k];
                    }
                }
            }
            double[] sum = integral(power, i);
            double[] times = new double[sum.length];
            for (int k = 0; k < times.length; k++) {
                times[k] = i.time(k);
            }
            double from = times[times.length - 1] - line.delay();
            energy += sum[sum.length - 1] - (from > 0 ? new Waveform(times, sum).at(from) : 0);
        }
        return energy;
    }
}
