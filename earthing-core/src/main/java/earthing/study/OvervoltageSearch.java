package earthing.study;

import earthing.fault.EarthFault;
import earthing.fault.EarthFaultResult;
import earthing.fault.EarthFaultSystem;
import earthing.fault.PoleEarth;
import earthing.fault.ReturnPaths;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.site.Site;
import earthing.study.FaultNetwork.State;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.complex.Complex;

/**
 * Looks for the earth fault that strains an arrester most, anywhere within the bounds of network and ground.
 *
 * <p>The voltage of a healthy phase against the tank is no steady function of the sources: it is highest where the
 * three-phase level is high and the earth-fault level low, or between the bounds. Against one impedance of the loop it is
 * the size of a fraction (a + b·Z) / (c + d·Z), so that along one input it has one greatest value at most between the
 * ends. All corners are tried, then each input between its ends while that is worse.
 */
final class OvervoltageSearch {

    /** Beyond this many bounded inputs the corners of all are too many; only the ends of the network are then tried. */
    private static final int MOST_CORNERED = 7;

    /** Places between the ends of an input; the outer ones tell which way the slope goes there. */
    private static final double[] BETWEEN = {0.02, 0.25, 0.5, 0.75, 0.98};

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    /** Leaves 1e-4 of the range, and of the voltage, which is flat at its greatest, far less. */
    private static final int NARROWINGS = 18;

    private static final int ROUNDS = 4;
    private static final double WORSE = 1 + 1e-9;

    /**
     * Where the ground stands at one point.
     *
     * @param at name of the point
     * @param others bound of the neutral's earths along the line
     * @param pole impedance between the tank and remote earth [Ω]
     */
    record Ground(String at, Bound others, Complex pole) {}

    /** The network of a fault in one state; empty where the values contradict each other. */
    interface Network {
        Optional<EarthFaultSystem> at(Site site, State state, Bound others);
    }

    /**
     * A fault.
     *
     * @param circuit its currents and voltages
     * @param at where in the range of the inputs
     * @param strain voltage of the arrester over what it bears [1]
     */
    record Found(EarthFaultResult circuit, String at, double strain) {}

    /** A point: the part of the way from low to high of each input, the last one that of the ground. */
    private static final class Point {

        private final double[] parts;
        private final EarthFaultResult circuit;
        private final double strain;

        Point(double[] parts, EarthFaultResult circuit, double strain) {
            this.parts = parts;
            this.circuit = circuit;
            this.strain = strain;
        }

        double strain() {
            return strain;
        }
    }

    private final Site site;
    private final State state;
    private final Network network;
    private final ToDoubleFunction<EarthFaultResult> strain;
    private final Map<String, Measure> inputs;
    private final ReturnPaths paths = new ReturnPaths();

    /**
     * Prepares a search.
     *
     * @param site the site with its bounds
     * @param state largest or smallest driving voltage
     * @param network the network at exact values
     * @param strain voltage of the arrester over what it bears [1]
     */
    OvervoltageSearch(Site site, State state, Network network, ToDoubleFunction<EarthFaultResult> strain) {
        this.site = site;
        this.state = state;
        this.network = network;
        this.strain = strain;
        this.inputs = AdverseInputs.ofNetwork(site);
    }

    /** The worst fault between two grounds; empty where no fault can be computed. */
    Optional<Found> between(Ground low, Ground high) {
        Optional<Point> worst = Optional.empty();
        boolean grounds = !low.at().equals(high.at());
        for (double[] corner : corners(grounds)) {
            worst = worse(worst, at(corner, low, high));
        }
        for (int round = 0; round < ROUNDS && worst.isPresent(); round++) {
            double before = worst.get().strain();
            for (int i = 0; i < inputs.size() + (grounds ? 1 : 0); i++) {
                worst = along(i, worst.orElseThrow(), low, high);
            }
            if (worst.orElseThrow().strain() <= before * WORSE) {
                break;
            }
        }
        return worst.map(point -> new Found(point.circuit, name(point.parts, low, high), point.strain()));
    }

    private List<double[]> corners(boolean grounds) {
        int free = inputs.size() + (grounds ? 1 : 0);
        List<double[]> corners = new ArrayList<>();
        int count = free <= MOST_CORNERED ? 1 << free : 4;
        for (int corner = 0; corner < count; corner++) {
            double[] parts = new double[inputs.size() + 1];
            for (int i = 0; i < free; i++) {
                int bit = free <= MOST_CORNERED ? i : i == inputs.size() ? 1 : 0;
                parts[i] = corner >> bit & 1;
            }
            corners.add(parts);
        }
        return corners;
    }

    private static Optional<Point> worse(Optional<Point> one, Optional<Point> other) {
        return one.isEmpty()
                        || (other.isPresent()
                                && other.get().strain() > one.get().strain())
                ? other
                : one;
    }

    /** The worst point with one input moved; the ends have been tried, what lies between is narrowed if it is worse. */
    private Optional<Point> along(int input, Point from, Ground low, Ground high) {
        Optional<Point> worst = Optional.of(from);
        double centre = from.parts[input];
        boolean found = false;
        for (double part : BETWEEN) {
            Optional<Point> there = moved(input, part, from, low, high);
            if (there.isPresent() && there.get().strain() > worst.get().strain()) {
                worst = there;
                centre = part;
                found = true;
            }
        }
        if (!found && (centre == 0 || centre == 1)) {
            return worst;
        }
        double a = Math.max(0, centre - 0.25);
        double b = Math.min(1, centre + 0.25);
        double left = b - GOLDEN * (b - a);
        double right = a + GOLDEN * (b - a);
        Optional<Point> one = moved(input, left, from, low, high);
        Optional<Point> other = moved(input, right, from, low, high);
        for (int i = 0; i < NARROWINGS; i++) {
            worst = worse(worse(worst, one), other);
            if (one.map(Point::strain).orElse(0.0) > other.map(Point::strain).orElse(0.0)) {
                b = right;
                right = left;
                other = one;
                left = b - GOLDEN * (b - a);
                one = moved(input, left, from, low, high);
            } else {
                a = left;
                left = right;
                one = other;
                right = a + GOLDEN * (b - a);
                other = moved(input, right, from, low, high);
            }
        }
        return worst;
    }

    private Optional<Point> moved(int input, double part, Point from, Ground low, Ground high) {
        double[] parts = from.parts.clone();
        parts[input] = part;
        return at(parts, low, high);
    }

    private Optional<Point> at(double[] parts, Ground low, Ground high) {
        Map<String, Double> values = new LinkedHashMap<>();
        int i = 0;
        for (Map.Entry<String, Measure> input : inputs.entrySet()) {
            values.put(input.getKey(), value(input.getValue(), parts[i]));
            i++;
        }
        Site point = AdverseInputs.exactly(site, values);
        double ground = parts[inputs.size()];
        Complex pole = low.pole().multiply(1 - ground).add(high.pole().multiply(ground));
        Optional<EarthFaultSystem> system = network.at(point, state, low.others());
        if (system.isEmpty()) {
            return Optional.empty();
        }
        Measure resistance = point.system().faultResistance();
        try {
            EarthFaultResult circuit = EarthFault.solve(
                    system.get(),
                    PoleEarth.of(List.of(new PoleEarth.Branch(FaultSolver.POLE, pole))),
                    EarthFault.Kind.singlePhase(resistance == null ? 0 : resistance.nominal()),
                    paths);
            return Optional.of(new Point(parts, circuit, strain.applyAsDouble(circuit)));
        } catch (IllegalArgumentException refused) {
            return Optional.empty(); // levels that contradict each other are no state of the network
        }
    }

    private static double value(Measure measure, double part) {
        double low = measure.at(Bound.LOW);
        double high = measure.at(Bound.HIGH);
        return part == 0
                ? low
                : part == 1 ? high : low > 0 ? low * Math.pow(high / low, part) : low + part * (high - low);
    }

    private String name(double[] parts, Ground low, Ground high) {
        double ground = parts[inputs.size()];
        StringBuilder name = new StringBuilder();
        String end = ground == 0 ? low.at() : ground == 1 ? high.at() : "";
        if (end.isEmpty()) {
            Complex pole = low.pole().multiply(1 - ground).add(high.pole().multiply(ground));
            end = "between, pole's earth of " + Numbers.brief(pole.abs()) + " ohm";
        }
        name.append(end.startsWith("soil=") ? end : "soil=" + end);
        int i = 0;
        for (Map.Entry<String, Measure> input : inputs.entrySet()) {
            name.append(", ")
                    .append(input.getKey().substring(AdverseInputs.NETWORK.length()))
                    .append('=')
                    .append(Numbers.brief(value(input.getValue(), parts[i])))
                    .append(' ')
                    .append(input.getValue().dimension().siUnit());
            i++;
        }
        return name.toString();
    }
}
