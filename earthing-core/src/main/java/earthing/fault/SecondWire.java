package earthing.fault;

import org.apache.commons.math3.complex.Complex;

/**
 * A second return conductor on the poles of the first, as a shield wire above a multi-earthed neutral.
 *
 * @param wire the conductor; its spans are those of the first, it may end earlier or later
 * @param mutualToFirst mutual impedance of both conductors with earth return, one span [Ω]
 * @param bondedToFirst whether both are bonded to each other at the station and at every pole where the first is earthed; they
 *     always meet at the station's earth
 */
public record SecondWire(ReturnConductor wire, Complex mutualToFirst, boolean bondedToFirst) {

    /**
     * Refuses a coupling that is not finite.
     *
     * @param wire the conductor; its spans are those of the first, it may end earlier or later
     * @param mutualToFirst mutual impedance of both conductors with earth return, one span [Ω]
     * @param bondedToFirst whether both are bonded to each other at the station and at every pole where the first is
     *     earthed; they always meet at the station's earth
     */
    public SecondWire {
        if (!Double.isFinite(mutualToFirst.abs())) {
            throw new IllegalArgumentException(
                    "mutual impedance of the return conductors must be finite; have " + mutualToFirst);
        }
    }

    /**
     * The same arrangement with another state of the conductor.
     *
     * @param other the conductor, broken or unbonded
     * @return the contingency
     */
    public SecondWire with(ReturnConductor other) {
        return new SecondWire(other, mutualToFirst, bondedToFirst);
    }
}
