package earthing.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * A rational admittance as SPICE text. Every pole of every port is a node of its own, whose potential is the state times
 * |p|: a capacitance 1/|p| is charged by the port's voltage and discharged by the pole; of a pair there are two. Current
 * sources controlled by these nodes drive the ports.
 */
final class SpiceAdmittance {

    private SpiceAdmittance() {}

    static List<String> lines(Circuit circuit, Branch.Admittance branch, int index, UnaryOperator<String> node) {
        List<String> lines = new ArrayList<>();
        String from = node.apply(branch.from());
        String to = node.apply(branch.to());
        List<RationalAdmittance.Term> terms = branch.admittance().terms();
        for (int t = 0; t < terms.size(); t++) {
            states(lines, terms.get(t), state(branch, t), from, to, index + "x" + t);
        }
        List<Branch.Admittance> group = circuit.branches(Branch.Admittance.class).stream()
                .filter(b -> b.group().equals(branch.group()))
                .sorted(Comparator.comparingInt(Branch.Admittance::port))
                .toList();
        for (Branch.Admittance other : group) {
            String source = "G" + index + "p" + other.port();
            lines.add(source + " " + from + " " + to + " " + node.apply(other.from()) + " " + node.apply(other.to())
                    + " " + branch.admittance().constant(branch.port(), other.port()));
            for (int t = 0; t < terms.size(); t++) {
                RationalAdmittance.Term term = terms.get(t);
                double scale = (term.pair() ? 2 : 1) / term.pole().abs();
                double re = term.residue(branch.port(), other.port()).getReal() * scale;
                double im = term.residue(branch.port(), other.port()).getImaginary() * scale;
                String state = state(other, t);
                lines.add(source + "r" + t + " " + from + " " + to + " " + state + " 0 " + re);
                if (term.pair()) {
                    lines.add(source + "i" + t + " " + from + " " + to + " " + state + "i 0 " + -im);
                }
            }
        }
        return lines;
    }

    private static String state(Branch.Admittance branch, int term) {
        return "x" + branch.group().replaceAll("[^A-Za-z0-9]", "").toLowerCase(java.util.Locale.ROOT) + "p"
                + branch.port() + "t" + term;
    }

    private static void states(
            List<String> lines, RationalAdmittance.Term term, String state, String from, String to, String label) {
        double size = term.pole().abs();
        double damping = -term.pole().getReal() / size;
        double turning = term.pole().getImaginary() / size;
        lines.add("C" + label + " " + state + " 0 " + 1 / size);
        lines.add("R" + label + " " + state + " 0 " + 1 / damping);
        lines.add("G" + label + "v 0 " + state + " " + from + " " + to + " 1");
        if (term.pair()) {
            lines.add("C" + label + "i " + state + "i 0 " + 1 / size);
            lines.add("R" + label + "i " + state + "i 0 " + 1 / damping);
            lines.add("G" + label + "a " + state + " 0 " + state + "i 0 " + turning);
            lines.add("G" + label + "b 0 " + state + "i " + state + " 0 " + turning);
        }
    }
}
