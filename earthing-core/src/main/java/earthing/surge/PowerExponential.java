package earthing.surge;

import earthing.quantity.Source;
import java.util.Optional;
import org.apache.commons.math3.special.Gamma;

/**
 * {@code i(t) = I A (t/τ)^3 exp(−t/τ)}, the form of the 8/20 µs current impulse; a double exponential cannot make that
 * shape.
 *
 * @param amplitude I·A·τ³ in the standard's writing [A]: the factor of (t/τ)³ exp(−t/τ), above 0
 * @param timeConstant τ [s], above 0
 */
public record PowerExponential(double amplitude, double timeConstant) implements Impulse {

    /** Source of the 8/20 constants. */
    public static final Source SOURCE =
            Source.standard("IEEE C62.41.2-2002", "8/20 µs: A = 0.01243 µs⁻³, τ = 3.911 µs", Source.Status.FROM_MEMORY);

    /** Source of the 4/10 shape. */
    public static final Source SHORT_SOURCE =
            Source.tool("4/10 µs as the 8/20 µs form at half its time scale: front 4.01 µs, tail 9.97 µs");

    private static final double A_PER_CUBIC_SECOND = 0.01243e18;
    private static final double TAU_820 = 3.911e-6;

    /**
     * Refuses values that are not above 0.
     *
     * @param amplitude I·A·τ³ in the standard's writing [A]: the factor of (t/τ)³ exp(−t/τ), above 0
     * @param timeConstant τ [s], above 0
     */
    public PowerExponential {
        if (!(amplitude > 0) || !Double.isFinite(amplitude)) {
            throw new IllegalArgumentException("amplitude must be > 0; have " + amplitude);
        }
        if (!(timeConstant > 0) || !Double.isFinite(timeConstant)) {
            throw new IllegalArgumentException("time constant must be > 0 s; have " + timeConstant);
        }
    }

    /**
     * The 8/20 µs current as the standard writes it. Its true peak is 0.99957 of the nominal one.
     *
     * @param nominal nominal peak I [A]
     * @return the impulse
     */
    public static PowerExponential impulse820(double nominal) {
        return new PowerExponential(nominal * A_PER_CUBIC_SECOND * TAU_820 * TAU_820 * TAU_820, TAU_820);
    }

    /**
     * The 4/10 µs current.
     *
     * @param nominal nominal peak I [A]
     * @return the impulse
     */
    public static PowerExponential impulse410(double nominal) {
        return new PowerExponential(nominal * A_PER_CUBIC_SECOND * TAU_820 * TAU_820 * TAU_820, TAU_820 / 2);
    }

    @Override
    public double at(double time) {
        if (!(time > 0)) {
            return 0;
        }
        double x = time / timeConstant;
        return amplitude * x * x * x * Math.exp(-x);
    }

    @Override
    public double rate(double time) {
        if (!(time > 0)) {
            return 0;
        }
        double x = time / timeConstant;
        return amplitude / timeConstant * x * x * (3 - x) * Math.exp(-x);
    }

    /**
     * Steepest rise, in closed form at x = 3 − √3.
     *
     * @return di/dt [A/s]
     */
    public double steepest() {
        return rate((3 - Math.sqrt(3)) * timeConstant);
    }

    /**
     * Charge in closed form, 6 I A τ⁴ in the standard's writing.
     *
     * @return ∫ i dt [A·s]
     */
    public double charge() {
        return amplitude * timeConstant * Gamma.gamma(4);
    }

    /**
     * Specific energy in closed form.
     *
     * @return ∫ i² dt [A²·s]
     */
    public double specificEnergy() {
        return amplitude * amplitude * timeConstant * Gamma.gamma(7) / 128;
    }

    @Override
    public double duration() {
        return 30 * timeConstant;
    }

    @Override
    public double frontScale() {
        return timeConstant;
    }

    @Override
    public PowerExponential scaled(double factor) {
        return new PowerExponential(amplitude * factor, timeConstant);
    }

    @Override
    public Optional<String> expression() {
        return Optional.of(amplitude + "*pow(time/" + timeConstant + ",3)*exp(-time/" + timeConstant + ")");
    }
}
