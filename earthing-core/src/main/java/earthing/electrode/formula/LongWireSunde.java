package earthing.electrode.formula;

import earthing.quantity.Source;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * Long buried wire fed at one end, as a line with even leakage: Z = √(z/y)·coth(√(zy)·l), y = 1/(R·l).
 *
 * <p>z impedance along the wire [Ω/m], y conductance to the ground [S/m], R resistance of the wire at one potential [Ω], l
 * length [m]. With z l small beside R it is R + z l/3; of a wire that is long beside 1/|√(zy)| only √(z/y) is left.
 */
public final class LongWireSunde {

    /** Where the formulas come from. */
    public static final Source SOURCE = Source.publication(
            "Sunde, Earth Conduction Effects in Transmission Systems, 1949",
            "buried wire as a line, Z = sqrt(z/y) coth(sqrt(z y) l); impedance along it with return through the ground",
            Source.Status.FROM_MEMORY);

    private static final double MU0 = 4e-7 * Math.PI;

    private static final int STEPS = 60;

    private LongWireSunde() {}

    /**
     * Impedance at the fed end, the other one open.
     *
     * @param resistance R of the wire at one potential [Ω], &gt; 0
     * @param length l [m], &gt; 0
     * @param along z [Ω/m]
     * @return Z [Ω]
     */
    public static Complex impedance(double resistance, double length, Complex along) {
        Positive.require("resistance", resistance);
        Positive.require("length", length);
        Complex whole = along.multiply(length);
        Complex spread = whole.divide(resistance).sqrt();
        if (spread.abs() < 1e-4) {
            return whole.divide(3).add(resistance);
        }
        return whole.multiply(resistance).sqrt().divide(spread.tanh());
    }

    /**
     * Impedance outside a buried wire that is long beside the depth of its return: jωμ₀/(2π)·ln(1.85/(γa)),
     * γ = √(jωμ₀/ρ).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0, |γa| below 0.1
     * @param frequency f [Hz], &gt; 0
     * @return z without the inside of the wire [Ω/m]
     */
    public static Complex outside(double resistivity, double radius, double frequency) {
        double omega = 2 * Math.PI * Positive.require("frequency", frequency);
        Complex gamma = new Complex(0, omega * MU0 / Positive.require("resistivity", resistivity)).sqrt();
        Complex argument = gamma.multiply(Positive.require("radius", radius));
        if (!(argument.abs() < 0.1)) {
            throw new IllegalArgumentException(
                    "the wire is too thick beside the depth of its return; have |gamma a| = " + argument.abs());
        }
        return new Complex(0, omega * MU0 / (2 * Math.PI))
                .multiply(argument.reciprocal().multiply(1.85).log());
    }

    /**
     * Reactance of a straight wire that is short beside the depth of its return: ωμ₀/(2π)·(ln(2l/a) − 1).
     *
     * @param length l [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param frequency f [Hz], &gt; 0
     * @return reactance outside the wire [Ω/m]
     */
    public static double reactance(double length, double radius, double frequency) {
        return MU0
                * Positive.require("frequency", frequency)
                * (Math.log(2 * Positive.require("length", length) / Positive.require("radius", radius)) - 1);
    }

    /**
     * A wire fed at one end by the one of two forms that holds: up to |Γl| = 1 the line with even leakage and the reactance
     * of a short wire, from 3 on √(z/y)·coth(Γl) with both of the attenuation itself, Γ² = zy,
     * y = π/(ρ ln(1.12/(Γ√(2ad)))), z = inside + jωμ₀/(2π)·ln(1.85/(a√(γ² + Γ²))).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param resistance R of the wire at one potential [Ω], &gt; 0
     * @param length l [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param depth d [m], &gt; 0
     * @param inside impedance inside the wire [Ω/m]
     * @param frequency f [Hz], &gt; 0
     * @return Z [Ω]; none between, and none for |Γl| ≤ 1 where the wire is longer than the depth of its return
     */
    public static Optional<Complex> wire(
            double resistivity,
            double resistance,
            double length,
            double radius,
            double depth,
            Complex inside,
            double frequency) {
        double omega = 2 * Math.PI * frequency;
        Complex gamma2 = new Complex(0, omega * MU0 / Positive.require("resistivity", resistivity));
        Complex along = inside.add(new Complex(0, reactance(length, radius, frequency)));
        double spread = along.multiply(length)
                .divide(Positive.require("resistance", resistance))
                .sqrt()
                .abs();
        if (spread <= 1) {
            return length <= Math.sqrt(2) / gamma2.sqrt().abs()
                    ? Optional.of(impedance(resistance, length, along))
                    : Optional.empty();
        }
        double wide = Math.sqrt(2 * radius * Positive.require("depth", depth));
        Complex z = inside.add(outside(resistivity, radius, frequency));
        Complex y = new Complex(1 / (resistance * length));
        Complex attenuation = z.multiply(y).sqrt();
        for (int i = 0; i < STEPS; i++) {
            y = attenuation
                    .multiply(wide)
                    .reciprocal()
                    .multiply(1.12)
                    .log()
                    .reciprocal()
                    .multiply(Math.PI / resistivity);
            Complex both = gamma2.add(attenuation.multiply(attenuation)).sqrt().multiply(radius);
            z = inside.add(new Complex(0, omega * MU0 / (2 * Math.PI))
                    .multiply(both.reciprocal().multiply(1.85).log()));
            attenuation = z.multiply(y).sqrt();
        }
        return attenuation.multiply(length).abs() < 3
                ? Optional.empty()
                : Optional.of(
                        z.divide(y).sqrt().divide(attenuation.multiply(length).tanh()));
    }
}
