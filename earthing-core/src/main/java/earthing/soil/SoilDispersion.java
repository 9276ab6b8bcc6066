package earthing.soil;

import earthing.quantity.Source;
import org.apache.commons.math3.complex.Complex;

/**
 * How conductivity and permittivity of the ground move with frequency, from its conductivity at low frequency. All laws
 * are means of measured soils; single sites scatter about them.
 */
public sealed interface SoilDispersion
        permits PowerLawSoil, VisacroAlipioSoil, LongmireSmithSoil, MessierSoil, FixedSoil {

    /** Permittivity of free space [F/m]. */
    double EPSILON0 = 8.8541878128e-12;

    /**
     * Complex conductivity κ = σ + jωε.
     *
     * @param conductivity conductivity at low frequency σ₀ [S/m], &gt; 0
     * @param frequency frequency [Hz], &gt; 0; outside {@link #lowest} … {@link #highest} the law is an extrapolation
     * @return κ [S/m]
     */
    Complex admittivity(double conductivity, double frequency);

    /**
     * Name of the law as the report shows it.
     *
     * @return authors and year
     */
    String title();

    /**
     * Where the law comes from.
     *
     * @return the source
     */
    Source source();

    /**
     * Lower end of the published range.
     *
     * @return frequency [Hz]
     */
    double lowest();

    /**
     * Upper end of the published range.
     *
     * @return frequency [Hz]
     */
    double highest();

    /**
     * Conductivity at a frequency.
     *
     * @param conductivity conductivity at low frequency [S/m]
     * @param frequency frequency [Hz]
     * @return σ [S/m]
     */
    default double conductivity(double conductivity, double frequency) {
        return admittivity(conductivity, frequency).getReal();
    }

    /**
     * Relative permittivity at a frequency.
     *
     * @param conductivity conductivity at low frequency [S/m]
     * @param frequency frequency [Hz]
     * @return εr [-]
     */
    default double relativePermittivity(double conductivity, double frequency) {
        return admittivity(conductivity, frequency).getImaginary() / (2 * Math.PI * frequency * EPSILON0);
    }

    /**
     * Refuses arguments outside the domain.
     *
     * @param conductivity conductivity at low frequency [S/m]
     * @param frequency frequency [Hz]
     */
    static void require(double conductivity, double frequency) {
        if (!(conductivity > 0) || !Double.isFinite(conductivity)) {
            throw new IllegalArgumentException("conductivity must be > 0 S/m and finite; have " + conductivity);
        }
        if (!(frequency > 0) || !Double.isFinite(frequency)) {
            throw new IllegalArgumentException("frequency must be > 0 Hz and finite; have " + frequency);
        }
    }
}
