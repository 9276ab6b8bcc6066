package earthing.fault;

import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * What the tank's earths and the return conductors bonded to them are for a current that comes from elsewhere than the
 * station, so that nothing is induced along the line: one of two earth faults at two poles.
 *
 * @param impedance impedance between tank and remote earth [Ω]
 * @param wires what each return conductor takes of one ampere, and its potentials
 */
public record DrivingPoint(Complex impedance, List<EarthFaultResult.Wire> wires) {

    /**
     * Takes a copy.
     *
     * @param impedance impedance between tank and remote earth [Ω]
     * @param wires what each return conductor takes of one ampere, and its potentials
     */
    public DrivingPoint {
        wires = List.copyOf(wires);
    }

    /**
     * Solves the ways to earth.
     *
     * @param system the network; only its return conductors and its station earth count
     * @param earth the ways from the tank to earth
     * @return the impedance
     * @throws IllegalArgumentException if the tank has no way to earth at all
     */
    public static DrivingPoint of(EarthFaultSystem system, PoleEarth earth) {
        EarthFaultSystem quiet = system;
        if (system.returnConductor().isPresent()) {
            quiet = quiet.withReturnConductor(system.returnConductor().get().uncoupled());
        }
        if (system.secondWire().isPresent()) {
            SecondWire second = system.secondWire().get();
            quiet = quiet.withSecondWire(second.with(second.wire().uncoupled()));
        }
        ReturnPath path = ReturnPath.of(quiet, earth);
        return new DrivingPoint(path.poleByFault(), path.wires(Complex.ONE, Complex.ZERO));
    }
}
