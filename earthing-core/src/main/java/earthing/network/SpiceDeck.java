package earthing.network;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Writes a circuit as plain SPICE text for a general-purpose circuit simulator, for a second opinion. Nodes and branches
 * are numbered; comment lines give their names. A gap is a switch that stays closed; the simulator closes it at the end
 * of a step, so that it strikes up to a step late. Rational admittances become controlled sources with a capacitance for each
 * state. Mutual resistances and internal impedances that depend on frequency can't be written.
 */
public final class SpiceDeck {

    /** Decades below the largest current of a curve that is not straight between points, and points to each. */
    private static final int DECADES = 9;

    private static final int TO_A_DECADE = 12;

    private static final int SAMPLES = 2000;
    /** How far below 0 the drive of a gap's switch would have to fall to open it again. */
    private static final double NEVER = 1000;
    /** What a gap leaks through before it breaks down [Ω]; a switch has to have a resistance. */
    private static final double OPEN = 1e12;

    private final Circuit circuit;
    private final Map<String, String> nodes = new HashMap<>();
    private final Map<String, String> names = new HashMap<>();
    private final StringBuilder text = new StringBuilder();

    private SpiceDeck(Circuit circuit) {
        this.circuit = circuit;
    }

    /**
     * Writes a deck that solves the circuit in time and measures the extremes of every node.
     *
     * @param circuit the circuit, without floating nodes and mutual resistances
     * @param title first line
     * @param grid end and step; the simulator is held to the step
     * @return the text of the deck
     * @throws IllegalArgumentException if the circuit can't be written
     */
    public static String write(Circuit circuit, String title, TimeGrid grid) {
        for (String node : circuit.floatingNodes()) {
            throw new FloatingNodeException(node);
        }
        return new SpiceDeck(circuit).build(title, grid);
    }

    private String build(String title, TimeGrid grid) {
        line("* " + title.replace('\n', ' '));
        nodes.put(Circuit.REFERENCE, "0");
        int number = 1;
        for (String node : circuit.nodes()) {
            String label = "n" + number++;
            nodes.put(node, label);
            line("* node " + label + " = " + node);
        }
        int index = 1;
        for (Branch branch : circuit.branches()) {
            line("* branch " + index + " = " + branch.name());
            write(branch, index++, grid);
        }
        int coupling = 1;
        for (Circuit.Mutual mutual : circuit.mutuals()) {
            if (!(circuit.branch(mutual.first()) instanceof Branch.Inductor a)
                    || !(circuit.branch(mutual.second()) instanceof Branch.Inductor b)) {
                throw new IllegalArgumentException(
                        "mutual resistance of " + mutual.first() + " and " + mutual.second() + " can't be written");
            }
            double k = mutual.value() / Math.sqrt(a.inductance() * b.inductance());
            line("K" + coupling++ + " " + name(a) + " " + name(b) + " " + k);
        }
        line(".options method=trap reltol=1e-5 abstol=1e-6 vntol=1e-3 chgtol=1e-14");
        line(".tran " + grid.step() + " " + grid.end() + " 0 " + grid.step() + " uic");
        line(".control");
        line("run");
        for (String node : circuit.nodes()) {
            String label = node(node);
            line("meas tran " + label + "_max MAX v(" + label + ")");
            line("meas tran " + label + "_min MIN v(" + label + ")");
        }
        line("quit 0");
        line(".endc");
        line(".end");
        return text.toString();
    }

    private void write(Branch branch, int index, TimeGrid grid) {
        String from = node(branch.from());
        String to = node(branch.to());
        String ends = " " + from + " " + to + " ";
        if (branch instanceof Branch.Resistor resistor) {
            line("R" + index + ends + resistor.resistance());
        } else if (branch instanceof Branch.Capacitor capacitor) {
            line("C" + index + ends + capacitor.capacitance());
        } else if (branch instanceof Branch.Inductor inductor) {
            if (inductor.internal().isPresent()) {
                throw new IllegalArgumentException(
                        "the internal impedance of " + branch.name() + " depends on frequency and can't be written");
            }
            names.put(branch.name(), "L" + index);
            if (inductor.resistance() == 0) {
                line("L" + index + ends + inductor.inductance());
            } else {
                line("L" + index + " " + from + " m" + index + " " + inductor.inductance());
                line("R" + index + "s m" + index + " " + to + " " + inductor.resistance());
            }
        } else if (branch instanceof Branch.CurrentSource source) {
            line(source(index, ends, "I", source.wave(), grid));
        } else if (branch instanceof Branch.VoltageSource source) {
            line(source(index, ends, "V", source.wave(), grid));
        } else if (branch instanceof Branch.LineEnd end) {
            line(end, index);
        } else if (branch instanceof Branch.Nonlinear nonlinear) {
            line("B" + index + ends + "I = " + curve(nonlinear, from, to));
        } else if (branch instanceof Branch.Gap gap) {
            gap(gap, index, from, to);
        } else if (branch instanceof Branch.Admittance admittance) {
            SpiceAdmittance.lines(circuit, admittance, index, this::node).forEach(this::line);
        } else {
            line("V" + index + ends + "0");
        }
    }

    /**
     * A switch that is driven by the used part of the gap's strength. Its hysteresis reaches so far below 0, which that
     * part never passes, that it stays closed once it has closed, as the arc does.
     */
    private void gap(Branch.Gap gap, int index, String from, String to) {
        String drive = "g" + index;
        line("B" + index + "g " + drive + " 0 V = abs(v(" + from + ")-v(" + to + "))/("
                + gap.law().expression() + ")");
        line("S" + index + " " + from + " " + to + " " + drive + " 0 arc" + index);
        double middle = (1 - NEVER) / 2;
        line(".model arc" + index + " sw(vt=" + middle + " vh=" + (1 - middle) + " ron=" + gap.arc() + " roff=" + OPEN
                + ")");
    }

    private void line(Branch.LineEnd end, int index) {
        if (end.line().conductors() != 1) {
            throw new IllegalArgumentException(
                    "line " + end.lineName() + " has several conductors and can't be written");
        }
        if (end.far()) {
            return;
        }
        for (Branch.LineEnd other : circuit.branches(Branch.LineEnd.class)) {
            if (other.far() && other.lineName().equals(end.lineName())) {
                line("T" + index + " " + node(end.from()) + " " + node(end.to()) + " " + node(other.from()) + " "
                        + node(other.to()) + " Z0=" + end.line().surgeImpedance(0, 0) + " TD="
                        + end.line().delay());
            }
        }
    }

    private static String source(int index, String ends, String kind, Wave wave, TimeGrid grid) {
        Optional<String> expression = wave.expression();
        if (expression.isPresent()) {
            return "B" + index + ends + kind + " = " + expression.get();
        }
        StringBuilder line = new StringBuilder(kind + index + ends + "PWL(");
        for (int k = 0; k <= SAMPLES; k++) {
            double t = grid.end() * k / SAMPLES;
            line.append(k == 0 ? "" : " ").append(t).append(' ').append(wave.at(t));
        }
        return line.append(')').toString();
    }

    private static String curve(Branch.Nonlinear branch, String from, String to) {
        double[] currents = currents(branch.curve());
        StringBuilder line = new StringBuilder("pwl(v(" + from + "," + to + ")");
        for (int k = currents.length - 1; k >= 0; k--) {
            line.append(", ")
                    .append(-branch.curve().voltage(currents[k]))
                    .append(", ")
                    .append(-currents[k]);
        }
        line.append(", 0, 0");
        for (double current : currents) {
            line.append(", ")
                    .append(branch.curve().voltage(current))
                    .append(", ")
                    .append(current);
        }
        return line.append(')').toString();
    }

    /**
     * Currents [A] between which a curve is written straight. One point lies beyond the last: the simulator would hold the
     * last value, this library goes on. A curve that is not straight between points is written by close ones.
     */
    private static double[] currents(NonlinearResistance curve) {
        double last = curve.largestCurrent();
        if (curve instanceof NonlinearResistance.PiecewiseLinear table) {
            return DoubleStream.concat(
                            IntStream.range(0, table.points()).mapToDouble(table::current), DoubleStream.of(10 * last))
                    .toArray();
        }
        return IntStream.rangeClosed(-DECADES * TO_A_DECADE, TO_A_DECADE)
                .mapToDouble(k -> last * Math.pow(10, (double) k / TO_A_DECADE))
                .toArray();
    }

    private String node(String name) {
        return nodes.getOrDefault(name, name.toLowerCase(Locale.ROOT));
    }

    private String name(Branch branch) {
        return names.getOrDefault(branch.name(), branch.name());
    }

    private void line(String line) {
        text.append(line).append('\n');
    }
}
