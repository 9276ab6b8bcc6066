package earthing.fault;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Ways back to the station beside the phases, for one ampere each of fault current and of neutral current: potentials of pole
 * and station, voltage along the phases.
 *
 * @param poleByFault potential of the tank's earth [Ω]
 * @param poleByNeutral the same for the neutral current [Ω]
 * @param stationByFault potential of the station earth [Ω]
 * @param stationByNeutral the same for the neutral current [Ω]
 * @param dropByFault voltage induced along the phases [Ω]
 * @param dropByNeutral the same for the neutral current [Ω]
 * @param reader what the conductors carry
 */
record ReturnPath(
        Complex poleByFault,
        Complex poleByNeutral,
        Complex stationByFault,
        Complex stationByNeutral,
        Complex dropByFault,
        Complex dropByNeutral,
        Reader reader) {

    /** Reads the conductors off a solution. */
    interface Reader {

        /** Conductors for a fault and a neutral current. */
        List<EarthFaultResult.Wire> wires(Complex fault, Complex neutral);
    }

    static ReturnPath of(EarthFaultSystem system, PoleEarth earth) {
        if (system.returnConductor().isEmpty()) {
            return new ReturnPath(
                    alone(earth),
                    Complex.ZERO,
                    Complex.ZERO,
                    system.stationEarth().negate(),
                    Complex.ZERO,
                    Complex.ZERO,
                    (fault, neutral) -> List.of());
        }
        ReturnConductor wire = system.returnConductor().get();
        boolean bonded = wire.bondedAtPole()
                || system.secondWire().map(w -> w.wire().bondedAtPole()).orElse(false);
        if (bonded && earth.isBolted()) {
            throw new IllegalArgumentException("a bolted earth cannot be combined with a bonded return conductor");
        }
        return system.secondWire()
                .map(second -> coupled(CoupledLadder.of(wire, second, system.stationEarth()), earth, bonded))
                .orElseGet(() -> single(wire, system.stationEarth(), earth));
    }

    private static ReturnPath single(ReturnConductor wire, Complex stationEarth, PoleEarth earth) {
        boolean bonded = wire.bondedAtPole();
        ReturnLadder ladder = new ReturnLadder(wire, stationEarth, bonded ? earth.admittance() : Complex.ZERO);
        int pole = ladder.poleNode();
        return new ReturnPath(
                bonded ? ladder.faultPotential(pole) : alone(earth),
                bonded ? ladder.neutralPotential(pole) : Complex.ZERO,
                ladder.faultPotential(0),
                ladder.neutralPotential(0),
                ladder.faultDrop(),
                ladder.neutralDrop(),
                (fault, neutral) -> {
                    List<Complex> profile = new ArrayList<>();
                    for (int k = 0; k < ladder.nodes(); k++) {
                        profile.add(ladder.potential(k, fault, neutral));
                    }
                    Complex towards =
                            bonded ? Complex.ZERO.subtract(ladder.spanCurrent(pole, fault, neutral)) : Complex.ZERO;
                    Complex beyond = bonded && pole + 1 < ladder.nodes()
                            ? ladder.spanCurrent(pole + 1, fault, neutral)
                            : Complex.ZERO;
                    return List.of(new EarthFaultResult.Wire(bonded, wire.bondHeight(), towards, beyond, profile));
                });
    }

    /** The conductors that are bonded at the pole take their parts so that all stand at the potential of the tank. */
    private static ReturnPath coupled(CoupledLadder ladder, PoleEarth earth, boolean bonded) {
        CoupledLadder.Response fault = ladder.induced();
        CoupledLadder.Response neutral = ladder.drawnAtStation();
        Complex poleByFault = Complex.ZERO;
        Complex poleByNeutral = Complex.ZERO;
        if (bonded) {
            Tank tank = Tank.of(ladder, earth.admittance());
            fault = tank.joined(fault, Complex.ONE);
            neutral = tank.joined(neutral, Complex.ZERO);
            poleByFault = tank.potential(fault);
            poleByNeutral = tank.potential(neutral);
        } else {
            poleByFault = alone(earth);
        }
        CoupledLadder.Response byFault = fault;
        CoupledLadder.Response byNeutral = neutral;
        return new ReturnPath(
                poleByFault,
                poleByNeutral,
                fault.potential(0, 0),
                neutral.potential(0, 0),
                ladder.drop(fault),
                ladder.drop(neutral),
                (i, n) -> {
                    CoupledLadder.Response both = byFault.times(i).plus(byNeutral, n);
                    List<EarthFaultResult.Wire> wires = new ArrayList<>();
                    for (int w = 0; w < ladder.count(); w++) {
                        wires.add(ladder.read(both, w));
                    }
                    return wires;
                });
    }

    /** Conductors bonded to the tank, with what one ampere into each of them does; the admittance less what holds them. */
    private record Tank(
            CoupledLadder ladder, Complex admittance, List<Integer> bonded, List<CoupledLadder.Response> entering) {

        static Tank of(CoupledLadder ladder, Complex admittance) {
            List<Integer> bonded = new ArrayList<>();
            List<CoupledLadder.Response> entering = new ArrayList<>();
            for (int w = 0; w < ladder.count(); w++) {
                if (ladder.wire(w).bondedAtPole()) {
                    bonded.add(w);
                    entering.add(ladder.enteringAtPole(w));
                }
            }
            return new Tank(ladder, admittance.subtract(CoupledLadder.HELD * bonded.size()), bonded, entering);
        }

        /** Adds the currents that leave the tank for the conductors, {@code injected} amperes coming into the tank. */
        CoupledLadder.Response joined(CoupledLadder.Response open, Complex injected) {
            int pole = ladder.poleNode();
            int last = bonded.size() - 1;
            // What comes in goes to earth, Y·V, or into the conductors: Σ(1 + Y·g)·a = injected − Y·v.
            Complex[][] m = new Complex[bonded.size()][bonded.size()];
            Complex[] right = new Complex[bonded.size()];
            for (int i = 0; i <= last; i++) {
                right[i] = injected.subtract(admittance.multiply(open.potential(pole, bonded.get(i))));
                for (int j = 0; j <= last; j++) {
                    Complex own = entering.get(j).potential(pole, bonded.get(i));
                    m[i][j] = admittance.multiply(own).add(1);
                }
            }
            if (last == 0) {
                return open.plus(entering.get(0), right[0].divide(m[0][0]));
            }
            // The second row as the difference of both potentials, or it would repeat the first where Y is small.
            for (int j = 0; j <= last; j++) {
                m[1][j] = entering.get(j)
                        .potential(pole, bonded.get(0))
                        .subtract(entering.get(j).potential(pole, bonded.get(1)));
            }
            right[1] = open.potential(pole, bonded.get(1)).subtract(open.potential(pole, bonded.get(0)));
            Complex det = m[0][0].multiply(m[1][1]).subtract(m[0][1].multiply(m[1][0]));
            Complex first = right[0].multiply(m[1][1])
                    .subtract(m[0][1].multiply(right[1]))
                    .divide(det);
            Complex second = m[0][0].multiply(right[1])
                    .subtract(right[0].multiply(m[1][0]))
                    .divide(det);
            return open.plus(entering.get(0), first).plus(entering.get(1), second);
        }

        Complex potential(CoupledLadder.Response joined) {
            return joined.potential(ladder.poleNode(), bonded.get(0));
        }
    }

    private static Complex alone(PoleEarth earth) {
        if (!earth.isBolted() && !(earth.admittance().abs() > 0)) {
            throw new IllegalArgumentException("the tank has no way to earth: no earth-fault current flows and the"
                    + " faulted tank stands at the voltage of the phase");
        }
        return earth.impedance();
    }

    List<EarthFaultResult.Wire> wires(Complex fault, Complex neutral) {
        return reader.wires(fault, neutral);
    }
}
