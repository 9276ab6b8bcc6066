package earthing.soil;

/**
 * A quantity of the ground that an inversion gives, with its 90 % confidence interval.
 *
 * @param kind what it is
 * @param layer layer from 0 at the surface
 * @param value the best value [Ω·m, m, Ω·m² or S]
 * @param low lower end of the interval
 * @param high upper end of the interval
 * @param resolved whether the readings hold it within a factor of 2 either way, away from the ends of the search
 */
public record FitParameter(Kind kind, int layer, double value, double low, double high, boolean resolved) {

    /** What a parameter of a layer is. */
    public enum Kind {
        /** Resistivity ρ [Ω·m]. */
        RESISTIVITY,
        /** Thickness h [m]. */
        THICKNESS,
        /** Transverse resistance ρ·h [Ω·m²]: all that is known of a thin resistive layer. */
        TRANSVERSE_RESISTANCE,
        /** Longitudinal conductance h/ρ [S]: all that is known of a thin conductive layer. */
        LONGITUDINAL_CONDUCTANCE
    }
}
