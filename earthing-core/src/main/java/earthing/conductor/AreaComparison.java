package earthing.conductor;

/**
 * The area by both standards for the same heat, so that a report can show the difference.
 *
 * @param iec area by the constants of IEC 60949 [m²]
 * @param ieee area by the constants of IEEE Std 80 [m²]
 */
public record AreaComparison(double iec, double ieee) {

    /**
     * Computes both.
     *
     * @param metal a metal that both tables hold
     * @param ieeeEdition which edition of IEEE Std 80
     * @param jouleIntegral heat per ohm [A²·s], ≥ 0
     * @param initial initial temperature [°C]
     * @param end permissible final temperature [°C]
     * @return both areas
     */
    public static AreaComparison of(
            Metal metal, ThermalEdition ieeeEdition, double jouleIntegral, double initial, double end) {
        if (ieeeEdition == ThermalEdition.IEC_60949) {
            throw new IllegalArgumentException("the comparison needs an edition of IEEE Std 80");
        }
        ThermalConstants one = ThermalTable.require(metal, ThermalEdition.IEC_60949);
        ThermalConstants other = ThermalTable.require(metal, ieeeEdition);
        return new AreaComparison(
                AdiabaticHeating.requiredArea(one, jouleIntegral, initial, end),
                AdiabaticHeating.requiredArea(other, jouleIntegral, initial, end));
    }

    /**
     * How much larger the IEEE area is.
     *
     * @return relative difference, negative if it is smaller
     */
    public double difference() {
        return ieee / iec - 1;
    }
}
