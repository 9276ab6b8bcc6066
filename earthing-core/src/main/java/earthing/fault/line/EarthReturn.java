package earthing.fault.line;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import org.apache.commons.math3.complex.Complex;

/**
 * Self and mutual series impedance per length of overhead conductors whose current returns through uniform earth.
 *
 * <p>All three forms share {@code z = r·δ + jω·µ₀/2π·ln(…)}; they differ in the earth's part only. One network uses one
 * form: at 50…60 Hz the complex depth is about 1 % above Carson's series in reactance on a medium-voltage line.
 */
public enum EarthReturn {
    /**
     * Carson's earth correction summed to convergence, {@code ωµ₀/π·(P + jQ)}. Valid while {@code D·√(ωµ₀/ρ)} ≤ 10 for
     * the image distance D; beyond, the power series loses its digits and is refused.
     */
    CARSON_SERIES(Source.publication(
            "J. R. Carson, Wave propagation in overhead wires with ground return, Bell Syst. Tech. J. 5, 1926",
            "series for P and Q; general term as in the theory book of H. W. Dommel, 1986, sec. 4.1.1.1",
            Status.FROM_MEMORY)),
    /**
     * Perfect image at the complex depth {@code p = √(ρ/(jωµ₀))}; valid at every frequency where displacement current in
     * the soil may be left out.
     */
    COMPLEX_DEPTH(Source.publication(
            "A. Deri, G. Tevan, A. Semlyen, A. Castanheira, The complex ground return plane, IEEE Trans. PAS-100, 1981",
            "eqs. (1)-(3)",
            Status.FROM_MEMORY)),
    /**
     * First terms of Carson's series, {@code R = ωµ₀/8}, depth of return {@code 658.9·√(ρ/f)} m, as in most textbooks;
     * valid while the image distance is far below the depth of return.
     */
    CARSON_FIRST_TERMS(Source.publication(
            "W. H. Kersting, Distribution System Modeling and Analysis",
            "modified Carson's equations, sec. 4.1",
            Status.FROM_MEMORY));

    /** Permeability of free space, 4π·10⁻⁷ [H/m]. */
    public static final double MU_0 = 4e-7 * Math.PI;

    private static final double EULER_GAMMA = 0.5772156649015329;
    /** ½ + ln 2 − γ: the constant of the logarithmic term. */
    private static final double LOG_TERM = 0.5 + Math.log(2) - EULER_GAMMA;

    private static final double SERIES_LIMIT = 10;

    @SuppressWarnings("ImmutableEnumChecker") // a record of strings and enums
    private final Source source;

    EarthReturn(Source source) {
        this.source = source;
    }

    /**
     * Where the form comes from.
     *
     * @return its source
     */
    public Source source() {
        return source;
    }

    /**
     * Self impedance of a conductor with earth return.
     *
     * @param conductor the conductor
     * @param frequency frequency [Hz], &gt; 0
     * @param resistivity soil resistivity [Ω·m], &gt; 0
     * @return impedance [Ω/m]
     * @throws IllegalArgumentException outside the validity of the form
     */
    public Complex self(LineConductor conductor, double frequency, double resistivity) {
        return perMetre(2 * conductor.height(), 0, conductor.geometricMeanRadius(), frequency, resistivity)
                .add(conductor.resistance());
    }

    /**
     * Mutual impedance of two conductors with common earth return.
     *
     * @param a one conductor
     * @param b another one
     * @param frequency frequency [Hz], &gt; 0
     * @param resistivity soil resistivity [Ω·m], &gt; 0
     * @return impedance [Ω/m]
     * @throws IllegalArgumentException outside the validity of the form, or when both are at the same place
     */
    public Complex mutual(LineConductor a, LineConductor b, double frequency, double resistivity) {
        double distance = a.distance(b);
        if (!(distance > 0)) {
            throw new IllegalArgumentException(a.name() + " and " + b.name() + " are at the same place");
        }
        return perMetre(a.height() + b.height(), Math.abs(a.offset() - b.offset()), distance, frequency, resistivity);
    }

    /**
     * Depth of the equivalent earth return, {@code 658.9·√(ρ/f)} m; the exact constant is {@code 2·e^(½−γ)/√(2πµ₀)}.
     *
     * @param frequency frequency [Hz], &gt; 0
     * @param resistivity soil resistivity [Ω·m], &gt; 0
     * @return depth [m]
     */
    public static double returnDepth(double frequency, double resistivity) {
        return Math.exp(LOG_TERM) / wavenumber(frequency, resistivity);
    }

    /**
     * Resistance of the earth return to first order, {@code ωµ₀/8 = π²·f·10⁻⁷}.
     *
     * @param frequency frequency [Hz], &gt; 0
     * @return resistance [Ω/m]
     */
    public static double returnResistance(double frequency) {
        return Math.PI * Math.PI * 1e-7 * frequency;
    }

    private static double wavenumber(double frequency, double resistivity) {
        if (!(frequency > 0) || !Double.isFinite(frequency)) {
            throw new IllegalArgumentException("frequency must be > 0 Hz; have " + frequency);
        }
        if (!(resistivity > 0) || !Double.isFinite(resistivity)) {
            throw new IllegalArgumentException("soil resistivity must be > 0 ohm.m; have " + resistivity);
        }
        return Math.sqrt(2 * Math.PI * frequency * MU_0 / resistivity);
    }

    private Complex perMetre(double heights, double across, double distance, double frequency, double resistivity) {
        double m = wavenumber(frequency, resistivity);
        double unit = MU_0 * frequency; // ωµ₀/2π
        return switch (this) {
            case CARSON_FIRST_TERMS ->
                new Complex(
                        returnResistance(frequency), unit * Math.log(returnDepth(frequency, resistivity) / distance));
            case COMPLEX_DEPTH -> {
                // p = 1/(m·√j); image at heights + 2p
                Complex image = new Complex(1, -1).multiply(Math.sqrt(2) / m).add(heights);
                Complex imageDistance =
                        image.multiply(image).add(across * across).sqrt();
                yield imageDistance.divide(distance).log().multiply(new Complex(0, unit));
            }
            case CARSON_SERIES -> {
                double imageSpacing = Math.hypot(heights, across);
                double a = imageSpacing * m;
                if (!(a <= SERIES_LIMIT)) {
                    throw new IllegalArgumentException(
                            "Carson's series is used up to an image distance of 10 times sqrt(rho/(omega mu0)); have "
                                    + a + " times; use the complex depth");
                }
                double[] pq = correction(a, Math.atan2(across, heights));
                yield new Complex(2 * unit * pq[0], unit * Math.log(imageSpacing / distance) + 2 * unit * pq[1]);
            }
        };
    }

    /**
     * Carson's P and Q. Terms follow Dommel: {@code b(i) = ±b(i−2)/(i(i+2))}, {@code c(i) = c(i−2) + 1/i + 1/(i+2)},
     * {@code d(i) = π/4·b(i)}; the part of each order cycles with period four.
     */
    private static double[] correction(double a, double phi) {
        double logA = Math.log(a);
        double p = Math.PI / 8;
        double q = 0.5 * (LOG_TERM - logA);
        double bOdd = Math.sqrt(2) / 6;
        double bEven = 1.0 / 16;
        double cEven = LOG_TERM + 0.75;
        double power = 1;
        for (int i = 1; i <= 60; i++) {
            power *= a;
            boolean odd = (i & 1) == 1;
            if (i > 2) {
                // the sign of b turns after every fourth term
                double sign = (i - 1) / 4 % 2 == (i - 3) / 4 % 2 ? 1 : -1;
                double step = sign / ((double) i * (i + 2));
                if (odd) {
                    bOdd *= step;
                } else {
                    bEven *= step;
                    cEven += 1.0 / i + 1.0 / (i + 2);
                }
            }
            double b = odd ? bOdd : bEven;
            double cos = power * Math.cos(i * phi);
            double plain = b * cos;
            double logarithmic = b * ((cEven - logA) * cos + phi * power * Math.sin(i * phi));
            double quarter = Math.PI / 4 * b * cos;
            switch (i % 4) {
                case 1 -> {
                    p -= plain;
                    q += plain;
                }
                case 2 -> {
                    p += logarithmic;
                    q -= quarter;
                }
                case 3 -> {
                    p += plain;
                    q += plain;
                }
                default -> {
                    p -= quarter;
                    q -= logarithmic;
                }
            }
            if (i > 8 && Math.abs(b) * power * (1 + Math.abs(cEven - logA)) < 1e-17) {
                break;
            }
        }
        return new double[] {p, q};
    }
}
