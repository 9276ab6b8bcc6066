package earthing.safety;

import earthing.quantity.Source;
import java.util.List;
import java.util.Optional;

/** An owner's own table of permissible touch voltages. */
public final class OwnerCurve {

    private OwnerCurve() {}

    /**
     * The curve through an owner's points.
     *
     * @param durations durations [s], rising, &gt; 0, at least two
     * @param voltages permissible touch voltages [V], &gt; 0, not rising
     * @param name name of the curve for the report
     * @param reference the owner's reference
     * @param sustained value for sustained faults, empty if the owner gives none
     * @return the curve, read log-log between its points; footwear and covering are not credited, since no body current
     *     belongs to it
     * @throws IllegalArgumentException if the points are out of order
     */
    public static TabulatedCurve of(
            List<Double> durations,
            List<Double> voltages,
            String name,
            String reference,
            Optional<SustainedLimit> sustained) {
        return new TabulatedCurve(
                name,
                reference,
                new Points(Interpolation.LOG_LOG, durations, voltages),
                Optional.empty(),
                sustained,
                Source.owner(reference));
    }
}
