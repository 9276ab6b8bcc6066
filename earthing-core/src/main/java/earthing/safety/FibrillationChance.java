package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import earthing.safety.BodyImpedance.Percentile;
import java.util.Objects;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * An upper bound of the chance that a touch starts ventricular fibrillation. The body impedance is spread over persons as
 * the 5, 50 and 95 % columns of its table say, log-normal between and beyond them; the heart answers by steps: nothing up
 * to curve c1, 5 % up to about curve c2, certainty above. The curves of IEC/TS 60479-1 for higher chances are left out, so
 * the figure errs high above c2.
 *
 * @param impedance table of body impedance
 * @param path path through the body
 * @param series resistance in series with the body, of covering and footwear [Ω], ≥ 0
 */
public record FibrillationChance(BodyImpedance impedance, BodyPath path, double series) {

    /** Where the steps stand. */
    public static final Source SOURCE = Source.standard(
            "IEC/TS 60479-1:2005", "figure 20 and table 11: up to about 5 % between c1 and c2", Status.FROM_MEMORY);

    /** Chance from curve c1 up to about curve c2 [1]. */
    public static final SourcedValue UP_TO_C2 = new SourcedValue(0.05, SOURCE);

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
    private static final double Q95 = NORMAL.inverseCumulativeProbability(0.95);

    /**
     * Refuses a negative resistance.
     *
     * @param impedance table of body impedance
     * @param path path through the body
     * @param series resistance in series with the body, of covering and footwear [Ω], ≥ 0
     */
    public FibrillationChance {
        Objects.requireNonNull(impedance);
        Objects.requireNonNull(path);
        if (!(series >= 0) || !Double.isFinite(series)) {
            throw new IllegalArgumentException("series resistance must be >= 0 ohm; have " + series);
        }
    }

    /**
     * Upper bound of the chance for one exposure.
     *
     * @param voltage prospective touch voltage [V], ≥ 0
     * @param duration duration [s], &gt; 0; infinite where it is never cleared
     * @return chance, 0 to 1
     */
    public double of(double voltage, double duration) {
        double first = shareAbove(voltage, current(BodyCurrent.C1, duration));
        double second = shareAbove(voltage, current(BodyCurrent.EN_50522, duration));
        return Math.min(1, UP_TO_C2.value() * (first - Math.min(first, second)) + Math.min(first, second));
    }

    /** The curve's current; beyond its end the sustained one of c1, which errs low and the chance high. */
    private static double current(BodyCurrent curve, double duration) {
        VoltageCurve.checked(duration);
        Points points = curve.points();
        if (duration <= points.last()) {
            return points.at(duration);
        }
        return curve.sustained().orElseGet(() -> BodyCurrent.C1.sustained().orElseThrow());
    }

    /**
     * Share of persons whose body carries more than a current.
     *
     * @param voltage prospective touch voltage [V], ≥ 0
     * @param current current from left hand to feet that does the same harm [A], &gt; 0
     * @return share, 0 to 1
     */
    public double shareAbove(double voltage, double current) {
        if (!(voltage >= 0) || !(current > 0)) {
            throw new IllegalArgumentException(
                    "a share needs a voltage >= 0 V and a current > 0 A; have " + voltage + " and " + current);
        }
        double onPath = path.pathCurrent(current);
        double acrossBody = voltage - onPath * series;
        if (!(acrossBody > 0)) {
            return 0;
        }
        // Who has less than this impedance at this voltage carries more than the current.
        double limit = Math.log(acrossBody / onPath);
        double low = Math.log(impedance.on(path, acrossBody, Percentile.P5));
        double middle = Math.log(impedance.on(path, acrossBody, Percentile.P50));
        double high = Math.log(impedance.on(path, acrossBody, Percentile.P95));
        double spread = (limit < middle ? middle - low : high - middle) / Q95;
        return NORMAL.cumulativeProbability((limit - middle) / spread);
    }
}
