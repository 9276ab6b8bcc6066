package earthing.conductor;

import earthing.quantity.Source;
import java.util.Objects;

/**
 * How a bare conductor gives its heat to the air, by one declared coefficient for convection and radiation together.
 *
 * @param coefficient heat flow per surface and kelvin [W/(m²·K)], ≥ 0; 0 for none
 * @param source where the coefficient comes from
 */
public record HeatTransfer(double coefficient, Source source) {

    /** Nothing leaves: the adiabatic case. */
    public static final HeatTransfer NONE = new HeatTransfer(0, Source.tool("adiabatic, no heat leaves"));

    /** Still air around a bare weathered wire; the real value rises with wind, temperature and thinness. */
    public static final HeatTransfer STILL_AIR =
            new HeatTransfer(15, Source.commonPractice("15 W/(m²·K), still air with radiation, bare wire"));

    /**
     * Refuses a coefficient that is negative.
     *
     * @param coefficient heat flow per surface and kelvin [W/(m²·K)], ≥ 0; 0 for none
     * @param source where the coefficient comes from
     */
    public HeatTransfer {
        Objects.requireNonNull(source);
        if (!(coefficient >= 0 && coefficient < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("heat transfer coefficient must be >= 0 W/(m²K); have " + coefficient);
        }
    }
}
