package earthing.study;

import earthing.electrode.ElectrodePorts;
import earthing.electrode.SoilIonisation;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.network.Branch;
import earthing.network.Circuit;
import earthing.network.NonlinearResistance;
import earthing.network.TransientSolution;
import earthing.quantity.Dimension;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.FrequencyDependence;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.soil.FixedSoil;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The electrodes in the surge circuit as more than resistances: with the inductance of their tapering currents and a
 * capacitance, or over frequency as passive rational functions.
 */
final class ElectrodeCircuit {

    /** A fit that is further off than this is not used [1]. */
    static final double WORST_FIT = 0.1;

    /** Permittivity of free space [F/m]. */
    private static final double EPSILON0 = SoilDispersion.EPSILON0;

    private static final double USUAL_PERMITTIVITY = 10;
    private static final String LUMPED_RESISTANCE = ": R";
    private static final String LUMPED_CAPACITANCE = ": C";
    /** End of the branches of the ground around an electrode that may break down. */
    private static final String BROKEN_GROUND = ": ground that breaks down";
    /** Part of an electrode's resistance that stays linear where it has no neighbour [1]. */
    private static final double UNBROKEN = 1e-6;

    private static final Source PERMITTIVITY = Source.tool("relative permittivity of moist ground above 1 MHz");

    private final Site site;
    private final SiteEarth earth;
    private final Inputs in;

    ElectrodeCircuit(Site site, SiteEarth earth, Inputs in) {
        this.site = site;
        this.earth = earth;
        this.in = in;
    }

    /** Whether a branch stands behind the one that carries the current of an electrode. */
    static boolean inner(String branch) {
        return branch.startsWith("earth of ")
                && (branch.endsWith(LUMPED_RESISTANCE)
                        || branch.endsWith(BROKEN_GROUND)
                        || branch.contains(LUMPED_CAPACITANCE));
    }

    /**
     * Adds the electrodes to a circuit; those without a shape as resistances.
     *
     * @param names electrodes that something is joined to
     * @param nodes node of each
     * @return a note that tells the model
     */
    String add(Circuit.Builder circuit, List<String> names, List<String> nodes) throws MissingInput {
        List<String> shaped = new ArrayList<>();
        List<String> shapedNodes = new ArrayList<>();
        for (int k = 0; k < names.size(); k++) {
            String name = names.get(k);
            if (earth.hasShape(name)) {
                shaped.add(name);
                shapedNodes.add(nodes.get(k));
            } else {
                circuit.resistor(
                        PoleCircuit.electrodeBranch(name),
                        nodes.get(k),
                        Circuit.REFERENCE,
                        earth.resistance(name, name));
            }
        }
        if (shaped.isEmpty()) {
            return "no electrode of the surge circuit has a shape; each is its resistance";
        }
        try {
            return switch (Surges.circuitModel(site.surges())) {
                case LUMPED -> lumped(circuit, shaped, shapedNodes);
                case IONISED -> ionised(circuit, shaped, shapedNodes);
                case RESISTANCE, FREQUENCY -> rational(circuit, shaped, shapedNodes);
            };
        } catch (IllegalArgumentException impossible) {
            throw new MissingInput(
                    "the electrodes have no solution over frequency for the surge circuit: " + impossible.getMessage(),
                    "surges.electrode-model");
        }
    }

    private String rational(Circuit.Builder circuit, List<String> names, List<String> nodes) throws MissingInput {
        ElectrodePorts ports = ports(names);
        circuit.admittance(
                "electrodes", names.stream().map(PoleCircuit::electrodeBranch).toList(), nodes, ports.admittance());
        return "electrodes of the surge circuit over frequency, 100 Hz to 4 MHz, "
                + ImpulseStudy.law(law(), in).title()
                + "; passive rational functions with coupling; conductors are perfect, concrete around them does not disperse";
    }

    /** The ports of electrodes with a shape. */
    ElectrodePorts ports(List<String> names) throws MissingInput {
        SoilDispersion dispersion = ImpulseStudy.law(law(), in);
        earthing.quantity.Measure fixed = law().relativePermittivity();
        String key = dispersion.title() + " " + (fixed == null || !fixed.isKnown() ? "" : fixed.nominal());
        HarmonicElectrode solved = earth.cache().harmonic(earth, dispersion, key);
        List<String> order = List.copyOf(earth.terminals().keySet());
        ElectrodePorts ports = earth.cache()
                .ports(
                        earth,
                        key,
                        names,
                        () -> ElectrodePorts.of(
                                solved,
                                names.stream().mapToInt(order::indexOf).toArray(),
                                names.stream()
                                        .mapToDouble(n -> earth.resistance(n, n))
                                        .toArray()));
        if (!(ports.error() <= WORST_FIT)) {
            throw new IllegalArgumentException(
                    "the passive functions miss the impedance by " + Numbers.brief(100 * ports.error()) + " %");
        }
        return ports;
    }

    private FrequencyDependence law() throws MissingInput {
        FrequencyDependence ground = site.soil() == null ? null : site.soil().frequencyDependence();
        if (ground == null) {
            throw new MissingInput(
                    "electrodes over frequency need a law of the ground", "soil.frequency-dependence.law");
        }
        return ground;
    }

    private double permittivity() throws MissingInput {
        FrequencyDependence ground = site.soil() == null ? null : site.soil().frequencyDependence();
        return in.orElse(
                ground == null ? null : ground.relativePermittivity(),
                "soil.frequency-dependence.relative-permittivity",
                USUAL_PERMITTIVITY,
                Dimension.RATIO,
                PERMITTIVITY);
    }

    /**
     * R with a capacitance beside it behind the inductance of the tapering current. C from R·C = ρε with ρ the resistivity of
     * the uniform ground that gives the same R; mutual capacitances likewise.
     */
    private String lumped(Circuit.Builder circuit, List<String> names, List<String> nodes) throws MissingInput {
        double permittivity = permittivity();
        int n = names.size();
        double[][] inductances = inductances(names);
        double[][] conductances = conductances(names);
        double[] apparent = apparent(names);
        for (int i = 0; i < n; i++) {
            String branch = PoleCircuit.electrodeBranch(names.get(i));
            String inner = branch + ": leakage";
            circuit.inductor(branch, nodes.get(i), inner, 0, inductances[i][i]);
            circuit.resistor(
                    branch + LUMPED_RESISTANCE, inner, Circuit.REFERENCE, earth.resistance(names.get(i), names.get(i)));
            double toEarth = 0;
            for (int j = 0; j < n; j++) {
                double tau = Math.sqrt(apparent[i] * apparent[j]) * EPSILON0 * permittivity;
                toEarth += tau * conductances[i][j];
                if (j < i) {
                    String other = PoleCircuit.electrodeBranch(names.get(j));
                    couple(circuit, branch, other, inductances[i][j]);
                    couple(
                            circuit,
                            branch + LUMPED_RESISTANCE,
                            other + LUMPED_RESISTANCE,
                            earth.resistance(names.get(i), names.get(j)));
                    if (conductances[i][j] < 0) {
                        circuit.capacitor(
                                branch + LUMPED_CAPACITANCE + " to " + names.get(j),
                                inner,
                                other + ": leakage",
                                -tau * conductances[i][j]);
                    }
                }
            }
            if (toEarth > 0) {
                circuit.capacitor(branch + LUMPED_CAPACITANCE, inner, Circuit.REFERENCE, toEarth);
            }
        }
        return "electrodes of the surge circuit as resistance, inductance of the tapering current and capacitance, relative"
                + " permittivity " + Numbers.brief(permittivity)
                + "; no dispersion, no propagation; conductors are perfect";
    }

    /**
     * The ground around each electrode breaks down: R_i = R/sqrt(1 + I/I_g). What it shares with its neighbours lies
     * further off and stays as it is, which errs high. Over layers ρ is that of the uniform ground in which the electrode
     * would have its resistance.
     */
    private String ionised(Circuit.Builder circuit, List<String> names, List<String> nodes) throws MissingInput {
        FrequencyDependence ground = site.soil() == null ? null : site.soil().frequencyDependence();
        if (ground == null || ground.ionisationField() == null) {
            throw new MissingInput(
                    "ground that breaks down needs the field at which it does",
                    "soil.frequency-dependence.ionisation-field");
        }
        double field = in.need(ground.ionisationField(), "soil.frequency-dependence.ionisation-field", earth.bound());
        for (Bar bar : earth.bars()) {
            if (bar.sleeve() > 0 && names.contains(bar.electrode())) {
                throw new MissingInput(
                        "the electrode " + bar.electrode()
                                + " lies in concrete; at which field concrete breaks down is not known",
                        "surges.electrode-model");
            }
        }
        double[] apparent = apparent(names);
        for (int i = 0; i < names.size(); i++) {
            String branch = PoleCircuit.electrodeBranch(names.get(i));
            double own = earth.resistance(names.get(i), names.get(i));
            double shared = 0;
            for (int j = 0; j < names.size(); j++) {
                shared += i == j ? 0 : Math.abs(earth.resistance(names.get(i), names.get(j)));
            }
            if (!(shared < own)) {
                throw new MissingInput(
                        "the electrode " + names.get(i)
                                + " shares so much of its ground with the others that no part of"
                                + " it breaks down alone",
                        "surges.electrode-model");
            }
            double linear = Math.max(UNBROKEN * own, Math.min(2 * shared, (shared + own) / 2));
            circuit.resistor(branch, nodes.get(i), branch + ": further ground", linear);
            circuit.nonlinear(
                    branch + BROKEN_GROUND,
                    branch + ": further ground",
                    Circuit.REFERENCE,
                    new NonlinearResistance.Falling(
                            own - linear, SoilIonisation.limitCurrent(own, apparent[i], field)));
            for (int j = 0; j < i; j++) {
                couple(
                        circuit,
                        branch,
                        PoleCircuit.electrodeBranch(names.get(j)),
                        earth.resistance(names.get(i), names.get(j)));
            }
        }
        return "electrodes of the surge circuit in ground that breaks down at " + Numbers.brief(field / 1e3)
                + " kV/m: an option, no time lag, never for touch or step; draws of strokes hold the unbroken ground";
    }

    private static void couple(Circuit.Builder circuit, String one, String other, double value) {
        if (value != 0) {
            circuit.mutual(one, other, value);
        }
    }

    /** Inductances of the tapering currents of electrodes with a shape [H]. */
    double[][] inductances(List<String> names) {
        List<String> order = List.copyOf(earth.terminals().keySet());
        double[][] all = earth.cache()
                .inductances(
                        earth,
                        () -> HarmonicElectrode.of(earth.soil(), new FixedSoil(1), earth.bars(), earth.terminals())
                                .inductances());
        double[][] part = new double[names.size()][names.size()];
        for (int i = 0; i < part.length; i++) {
            for (int j = 0; j < part.length; j++) {
                part[i][j] = all[order.indexOf(names.get(i))][order.indexOf(names.get(j))];
            }
        }
        return part;
    }

    private double[][] conductances(List<String> names) {
        int n = names.size();
        double[][] r = new double[n][n];
        for (int i = 0; i < n; i++) {
            int row = i;
            Arrays.setAll(r[i], j -> earth.resistance(names.get(row), names.get(j)));
        }
        return new org.apache.commons.math3.linear.LUDecomposition(
                        new org.apache.commons.math3.linear.Array2DRowRealMatrix(r))
                .getSolver()
                .getInverse()
                .getData();
    }

    /** Resistivity of the uniform ground in which each electrode would have its resistance, concrete left out [Ω·m]. */
    private double[] apparent(List<String> names) {
        List<Bar> outside = earth.bars().stream().map(Bar::outside).toList();
        EarthElectrodes own = earth.cache().solve(earth.soil(), outside);
        EarthElectrodes unit = earth.cache().solve(SoilModel.uniform(1), outside);
        return names.stream()
                .mapToDouble(
                        n -> own.resistances().mutual(n, n) / unit.resistances().mutual(n, n))
                .toArray();
    }

    /** Voltage that the resistances of a port and its neighbours make [V]. */
    static double resistive(Branch.Admittance port, Circuit circuit, TransientSolution solution, double time) {
        double[][] r = port.admittance().resistances();
        double sum = 0;
        for (Branch.Admittance other : circuit.branches(Branch.Admittance.class)) {
            if (other.group().equals(port.group())) {
                sum += r[port.port()][other.port()]
                        * solution.current(other.name()).at(time);
            }
        }
        return sum;
    }
}
