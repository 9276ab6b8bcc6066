package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.Objects;
import java.util.Optional;

/**
 * Body current from left hand to feet over duration, alternating current 15 to 100 Hz.
 *
 * @param name name of the curve
 * @param points current [A] over duration [s]
 * @param sustained current for durations beyond the last point [A], empty where none is known
 * @param source where the points come from
 */
public record BodyCurrent(String name, Points points, Optional<Double> sustained, Source source) {

    /** The body currents behind the touch-voltage table of EN 50522, about curve c2 of IEC/TS 60479-1. */
    public static final BodyCurrent EN_50522 = new BodyCurrent(
            "I_B of EN 50522",
            Points.of(
                    Interpolation.LOG_LOG,
                    0.05,
                    0.900,
                    0.10,
                    0.750,
                    0.20,
                    0.600,
                    0.50,
                    0.200,
                    1,
                    0.080,
                    2,
                    0.060,
                    5,
                    0.051,
                    10,
                    0.050),
            Optional.empty(),
            Source.standard("EN 50522:2010", "table B.1; at 0.1 and 0.2 s in doubt", Status.FROM_MEMORY));

    /** Curve c1, onset of the risk of fibrillation; read back from the touch voltages of the railway standard. */
    public static final BodyCurrent C1 = new BodyCurrent(
            "curve c1",
            Points.of(
                    Interpolation.LOG_LOG,
                    0.02,
                    0.495,
                    0.05,
                    0.475,
                    0.1,
                    0.441,
                    0.2,
                    0.351,
                    0.3,
                    0.251,
                    0.4,
                    0.144,
                    0.5,
                    0.100,
                    0.6,
                    0.079,
                    0.7,
                    0.065,
                    0.8,
                    0.060,
                    0.9,
                    0.055,
                    1.0,
                    0.050,
                    3,
                    0.040),
            Optional.of(0.039),
            Source.standard(
                    "IEC/TS 60479-1:2005",
                    "figure 20, curve c1, back-solved from EN 50122-1, within about 5 %",
                    Status.FROM_MEMORY));

    /**
     * Checks that no part is missing.
     *
     * @param name name of the curve
     * @param points current [A] over duration [s]
     * @param sustained current for durations beyond the last point [A], empty where none is known
     * @param source where the points come from
     */
    public BodyCurrent {
        Objects.requireNonNull(name);
        Objects.requireNonNull(points);
        Objects.requireNonNull(sustained);
        Objects.requireNonNull(source);
        if (sustained.isPresent() && !(sustained.get() > 0)) {
            throw new IllegalArgumentException("sustained body current must be > 0 A; have " + sustained.get());
        }
    }
}
