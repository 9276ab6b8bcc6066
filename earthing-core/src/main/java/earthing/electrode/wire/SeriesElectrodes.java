package earthing.electrode.wire;

import earthing.conductor.inductance.SkinEffect;
import earthing.quantity.Source;
import earthing.soil.FixedSoil;
import earthing.soil.SoilModel;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * Electrodes at power frequency whose bars are no longer at one potential: the current meets the impedance inside the
 * conductors and the partial inductances with e^(−γR), which brings the return through the ground. Matters for long wires,
 * poor conductors and good ground. See docs/theory/electrode.md.
 *
 * <p>Valid up to 1 kHz. The reactance of a wire longer than the depth of its return lies some 5 % low, because the air above is
 * taken as ground.
 */
public final class SeriesElectrodes {

    /** Where the method comes from. */
    public static final Source SOURCE = Source.publication(
            "Sunde, Earth Conduction Effects in Transmission Systems, 1949; Visacro, Soares, IEEE Transactions on Power"
                    + " Delivery 20(2), 2005",
            "wires with leakage and impedance along them; docs/theory/electrode.md",
            Source.Status.FROM_MEMORY);

    private static final double HIGHEST = 1e3;
    private static final double PERMITTIVITY = 10;
    /** A wire is cut into no more than about so many elements. */
    private static final int FINE = 150;

    /**
     * What the bars of an electrode are made of.
     *
     * @param resistivity resistivity [Ω·m], &gt; 0
     * @param relativePermeability μr [-], ≥ 1
     */
    public record Conductor(double resistivity, double relativePermeability) {

        /**
         * Refuses what no metal has.
         *
         * @param resistivity resistivity [Ω·m], &gt; 0
         * @param relativePermeability μr [-], ≥ 1
         */
        public Conductor {
            if (!(resistivity > 0) || !(relativePermeability >= 1)) {
                throw new IllegalArgumentException("a conductor needs a resistivity > 0 ohm.m and a relative"
                        + " permeability >= 1; have " + resistivity + ", " + relativePermeability);
            }
        }
    }

    private final Complex[][] impedances;
    private final double[][] resistances;
    private final List<String> names;

    private SeriesElectrodes(List<String> names, Complex[][] impedances, double[][] resistances) {
        this.names = names;
        this.impedances = impedances;
        this.resistances = resistances;
    }

    /**
     * Solves electrodes.
     *
     * @param soil the ground; its lowest layer must conduct
     * @param bars the bars of all of them, round and solid; those of one name are one electrode
     * @param terminals by name of electrode: where its current arrives, east and north [m]
     * @param conductors by name of electrode what it is made of; those left out conduct perfectly
     * @param frequency frequency [Hz], 10 … 1000
     * @return the electrodes, in the order of the terminals
     * @throws IllegalArgumentException when an electrode has no bar or no terminal, or there are too many elements
     */
    public static SeriesElectrodes of(
            SoilModel soil,
            List<Bar> bars,
            Map<String, double[]> terminals,
            Map<String, Conductor> conductors,
            double frequency) {
        if (!(frequency >= HarmonicElectrode.LOWEST && frequency <= HIGHEST)) {
            throw new IllegalArgumentException(
                    "the impedance along the bars is computed from 10 Hz to 1 kHz; have " + frequency + " Hz");
        }
        List<String> names = List.copyOf(terminals.keySet());
        Set<String> found = bars.stream().map(Bar::electrode).collect(Collectors.toSet());
        if (names.isEmpty() || !found.equals(terminals.keySet())) {
            throw new IllegalArgumentException(
                    "every electrode needs bars and a terminal; have bars of " + found + " and terminals of " + names);
        }
        double length = bars.stream().mapToDouble(Bar::length).sum();
        double longest = Math.max(Discretisation.STANDARD.longest(), length / FINE);
        BondedWires wires = BondedWires.of(
                soil,
                bars,
                names,
                terminals.values().stream().map(double[]::clone).toArray(double[][]::new),
                count -> new Discretisation(count > 8 ? 3 : Discretisation.STANDARD.leastPerBar(), longest, 1));
        double[] plain = wires.coefficients(soil);
        int n = wires.mesh.size;
        ZMatrixRMaj across = new ZMatrixRMaj(n, n);
        ZMatrixRMaj along = new ZMatrixRMaj(n, n);
        for (int k = 0; k < plain.length; k++) {
            across.data[2 * k] = plain[k];
        }
        Complex[] kappa = new Complex[soil.layerCount()];
        for (int l = 0; l < kappa.length; l++) {
            kappa[l] = new FixedSoil(PERMITTIVITY).admittivity(1 / soil.resistivity(l), frequency);
        }
        // Potentials as of direct current, for the phase of a leaked ampere belongs to its return; along the bars it
        // counts.
        wires.phases(kappa, frequency, new ZMatrixRMaj(n, n), along);
        wires.addSleeves(across);
        double omega = 2 * Math.PI * frequency;
        for (int e = 0; e < n; e++) {
            Conductor metal = conductors.get(names.get(wires.owner(e)));
            if (metal != null) {
                Complex inside = SkinEffect.solid(
                                omega, wires.mesh.metal[e], metal.resistivity(), metal.relativePermeability())
                        .multiply(wires.mesh.length[e]);
                int at = 2 * (e * n + e);
                along.data[at] += inside.getReal();
                along.data[at + 1] += inside.getImaginary();
            }
        }
        return new SeriesElectrodes(names, wires.solve(across, along), resistances(wires, plain, names.size()));
    }

    /** The same elements at one potential an electrode. */
    private static double[][] resistances(BondedWires wires, double[] plain, int electrodes) {
        int n = wires.mesh.size;
        DMatrixRMaj a = new DMatrixRMaj(n, n, true, plain.clone());
        for (int e = 0; e < n; e++) {
            a.add(e, e, wires.mesh.sleeve[e]);
        }
        DMatrixRMaj inverse = new DMatrixRMaj(n, n);
        DMatrixRMaj conductances = new DMatrixRMaj(electrodes, electrodes);
        if (!CommonOps_DDRM.invert(a, inverse)) {
            throw new IllegalArgumentException("the bars cannot be solved: two of them probably overlap");
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                conductances.add(wires.owner(i), wires.owner(j), inverse.get(i, j));
            }
        }
        if (!CommonOps_DDRM.invert(conductances)) {
            throw new IllegalArgumentException("the electrodes cannot be told apart");
        }
        double[][] values = new double[electrodes][electrodes];
        for (int i = 0; i < electrodes; i++) {
            for (int j = 0; j < electrodes; j++) {
                values[i][j] = (conductances.get(i, j) + conductances.get(j, i)) / 2;
            }
        }
        return values;
    }

    /**
     * Names of the electrodes.
     *
     * @return names in the order of the terminals
     */
    public List<String> names() {
        return names;
    }

    /**
     * Own impedance of an electrode to remote earth where its lead arrives, the others floating.
     *
     * @param name name
     * @return impedance [Ω]
     */
    public Complex impedance(String name) {
        int k = index(name);
        return impedances[k][k];
    }

    /**
     * What the impedance along its bars adds to an electrode: its impedance less its resistance with the same elements, all
     * bars of it at one potential.
     *
     * @param name name
     * @return impedance [Ω]
     */
    public Complex added(String name) {
        int k = index(name);
        return impedances[k][k].subtract(resistances[k][k]);
    }

    private int index(String name) {
        int k = names.indexOf(name);
        if (k < 0) {
            throw new IllegalArgumentException("no electrode \"" + name + "\"; have " + names);
        }
        return k;
    }
}
