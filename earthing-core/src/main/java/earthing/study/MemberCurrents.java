package earthing.study;

import earthing.network.Branch;
import earthing.network.Circuit;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The current of every member of the pole: leads, screen, stays, feeder, networks, electrodes; the wires that stand for
 * the wall of a pole are added up.
 */
final class MemberCurrents {

    private MemberCurrents() {}

    /**
     * Peaks by member.
     *
     * @param pole the circuit of the pole, without line and arresters; its members are followed
     * @param solution a solution that holds them all
     * @param driving current below a rounding part of which nothing flows [A]
     */
    static Map<String, Double> peaks(Circuit pole, TransientSolution solution, double driving) {
        Map<String, Waveform> currents = new LinkedHashMap<>();
        for (Branch branch : pole.branches()) {
            boolean conducts = branch instanceof Branch.Inductor
                    || branch instanceof Branch.Resistor
                    || branch instanceof Branch.Admittance;
            if (conducts
                    && !ElectrodeCircuit.inner(branch.name())
                    && !branch.name().equals(PoleCircuit.CORE)) {
                currents.merge(member(branch.name()), solution.current(branch.name()), Waveform::plus);
            }
        }
        Map<String, Double> peaks = new LinkedHashMap<>();
        currents.forEach((member, current) ->
                peaks.put(member, SurgeCase.settled(Math.abs(current.peak().value()), driving)));
        return peaks;
    }

    /** The member that a branch belongs to: the wires of a wall end with their number. */
    private static String member(String branch) {
        int last = branch.lastIndexOf(' ');
        boolean wire = branch.startsWith(SecondPaths.POLE)
                && last > 0
                && branch.chars().skip(last + 1).allMatch(Character::isDigit);
        return wire ? branch.substring(0, last) : branch;
    }
}
