package earthing.network;

import org.apache.commons.math3.complex.Complex;

/**
 * An impedance that depends on frequency and stands in series in a branch, for example that inside a wire. Phasor
 * solutions use it; solutions in time do not, they hold the branch's resistance and inductance only.
 */
@FunctionalInterface
public interface InternalImpedance {

    /**
     * The impedance at an angular frequency.
     *
     * @param angularFrequency ω [rad/s], above 0
     * @return impedance [Ω]
     */
    Complex at(double angularFrequency);
}
