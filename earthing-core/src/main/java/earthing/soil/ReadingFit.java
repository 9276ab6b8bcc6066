package earthing.soil;

/**
 * A reading beside what the fitted ground would have given.
 *
 * @param reading the reading
 * @param computed apparent resistivity over the fitted ground [Ω·m]
 * @param setAside whether the reading was found to contradict the others and did not take part in the fit
 */
public record ReadingFit(Reading reading, double computed, boolean setAside) {

    /**
     * How far the reading lies from the fit.
     *
     * @return measured over computed, less 1 [-]
     */
    public double residual() {
        return reading.apparentResistivity() / computed - 1;
    }
}
