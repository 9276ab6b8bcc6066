package earthing.network;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/** Branches that stand together or not at all: the ends of a line, the ports of a group of admittances. */
final class WholeGroups {

    private WholeGroups() {}

    static void require(Circuit circuit) {
        lines(circuit);
        admittances(circuit);
    }

    /** A line stands with both ends of each of its conductors, or not at all. */
    private static void lines(Circuit circuit) {
        Map<String, Set<String>> found = new LinkedHashMap<>();
        Map<String, LosslessLine> lines = new LinkedHashMap<>();
        for (Branch.LineEnd end : circuit.branches(Branch.LineEnd.class)) {
            boolean fresh = found.computeIfAbsent(end.lineName(), name -> new LinkedHashSet<>())
                    .add(end.conductor() + (end.far() ? " far" : " near"));
            LosslessLine other = lines.putIfAbsent(end.lineName(), end.line());
            if (!fresh || (other != null && other != end.line())) {
                throw new IllegalArgumentException("line " + end.lineName() + " is given twice");
            }
        }
        found.forEach((name, ends) -> {
            LosslessLine line = lines.get(name);
            if (line != null && ends.size() != 2 * line.conductors()) {
                throw new IllegalArgumentException("line " + name + " lacks an end");
            }
        });
    }

    /** A port that is left out would be short-circuited by the matrix of the others. */
    private static void admittances(Circuit circuit) {
        Map<String, Set<Integer>> found = new LinkedHashMap<>();
        Map<String, RationalAdmittance> groups = new LinkedHashMap<>();
        for (Branch.Admittance branch : circuit.branches(Branch.Admittance.class)) {
            boolean fresh = found.computeIfAbsent(branch.group(), name -> new LinkedHashSet<>())
                    .add(branch.port());
            RationalAdmittance other = groups.putIfAbsent(branch.group(), branch.admittance());
            if (!fresh || (other != null && other != branch.admittance())) {
                throw new IllegalArgumentException("admittance " + branch.group() + " is given twice");
            }
        }
        found.forEach((name, ports) -> {
            RationalAdmittance admittance = groups.get(name);
            if (admittance != null && ports.size() != admittance.ports()) {
                throw new IllegalArgumentException("admittance " + name + " lacks a port");
            }
        });
    }
}
