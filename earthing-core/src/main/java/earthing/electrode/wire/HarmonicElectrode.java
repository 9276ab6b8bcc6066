package earthing.electrode.wire;

import earthing.quantity.Source;
import earthing.soil.Layer;
import earthing.soil.LayeredSoil;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.ZMatrixRMaj;

/**
 * One electrode or several over frequency, the current entering each at one place: thin-wire solution in ground of complex
 * conductivity κ = σ + jωε. Each element leaks its current evenly; mean potentials follow from the layers of complex κ with the phase
 * e^(−γR) on direct term and surface image; along the bars the current meets the partial inductances with e^(−γR). See
 * docs/theory/electrode.md.
 *
 * <p>Layers of complex κ are reached from real ones, because the coefficients are analytic in the logarithms of κ. Two
 * layers: √(κ₁κ₂) times a coefficient is a function of ln(κ₁/κ₂) alone, analytic up to ±jπ, and interpolated at its
 * complex value from nine real ones. More layers: with log κ = u + jv, five real grounds along u + t·v, t = −1 … 1, give
 * the value at t = j. Both hold 0.3 % while the phases of two layers differ by less than 1 rad.
 *
 * <p>Valid 10 Hz … 4 MHz. The conductors are perfect, air does not conduct, metal that is not given is absent, concrete around bars does not disperse, and in layered
 * ground the phase over a distance is that of the geometric mean of both layers.
 */
public final class HarmonicElectrode {

    /** Source of the method. */
    public static final Source SOURCE = Source.publication(
            "Visacro, Soares, HEM: a model for simulation of lightning-related engineering problems, IEEE Transactions on"
                    + " Power Delivery 20(2), 2005; Grcev, Dawalibi, IEEE Transactions on Power Delivery 5(4), 1990",
            "leakage and longitudinal currents of thin wires; docs/theory/electrode.md",
            Source.Status.FROM_MEMORY);

    /** Lower end of the validity [Hz]. */
    public static final double LOWEST = 10;

    /** Upper end of the validity [Hz]. */
    public static final double HIGHEST = 4e6;

    /** Reactance is nothing beside resistance at this frequency, and not lost in rounding [Hz]. */
    private static final double QUASI_STATIC = 1e3;

    /** Offsets along the phases: fewer where the phases of the layers differ by less. */
    private static final double[][] OFFSETS = {{-1, 1}, {-1, 0, 1}, {-1, -0.5, 0, 0.5, 1}};

    /** Greatest phase at which the first, and the first two, of these suffice for 0.1 % [rad]. */
    private static final double[] PHASES = {0.04, 0.15};

    private static final int NODES = 9;

    /** Nodes over the logarithm of the frequency for three layers and more, whose Green's function is dear. */
    private static final int FREQUENCY_NODES = 8;

    private final SoilModel soil;
    private final SoilDispersion law;
    private final BondedWires wires;
    private final double[] contrasts;
    private final double[][] real;
    private final double[] logFrequencies;
    private final List<ZMatrixRMaj> scaled;

    private HarmonicElectrode(
            SoilModel soil,
            SoilDispersion law,
            List<Bar> bars,
            List<String> electrodes,
            double[][] terminals,
            double longest) {
        this.soil = soil;
        this.law = law;
        wires = BondedWires.of(
                soil, bars, electrodes, terminals, count -> new Discretisation(count > 8 ? 3 : 6, longest, 1));
        contrasts = soil.layerCount() == 2 ? contrasts() : new double[soil.layerCount() == 1 ? 1 : 0];
        real = new double[contrasts.length][];
        for (int k = 0; k < contrasts.length; k++) {
            real[k] = wires.coefficients(
                    soil.layerCount() == 1
                            ? SoilModel.uniform(1)
                            : new LayeredSoil(List.of(
                                    new Layer(Math.exp(-contrasts[k] / 2), soil.thickness(0)),
                                    Layer.below(Math.exp(contrasts[k] / 2)))));
        }
        logFrequencies =
                soil.layerCount() > 2 ? chebyshev(Math.log(LOWEST), Math.log(HIGHEST), FREQUENCY_NODES) : new double[0];
        scaled = Arrays.stream(logFrequencies)
                .boxed()
                .parallel()
                .map(logarithm -> turnedByPhases(kappa(Math.exp(logarithm))))
                .toList();
    }

    private static double[] chebyshev(double least, double most, int count) {
        double[] points = new double[count];
        for (int i = 0; i < count; i++) {
            points[i] = (least + most) / 2 + (most - least) / 2 * Math.cos(Math.PI * (i + 0.5) / count);
        }
        return points;
    }

    /** Chebyshev points over the real parts of ln(κ₁/κ₂) from 10 Hz to 4 MHz, widened by more than its imaginary parts. */
    private double[] contrasts() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        double wide = 0.1;
        for (double f = LOWEST; f <= 1.01 * HIGHEST; f *= 1.5) {
            Complex u = contrast(kappa(f));
            least = Math.min(least, u.getReal());
            most = Math.max(most, u.getReal());
            wide = Math.max(wide, 1.25 * Math.abs(u.getImaginary()));
        }
        double half = Math.max(wide, (most - least) / 2 + wide / 2);
        return chebyshev((least + most) / 2 - half, (least + most) / 2 + half, NODES);
    }

    private static Complex contrast(Complex[] kappa) {
        return kappa[0].divide(kappa[1]).log();
    }

    private Complex[] kappa(double frequency) {
        Complex[] kappa = new Complex[soil.layerCount()];
        for (int l = 0; l < kappa.length; l++) {
            kappa[l] = law.admittivity(1 / soil.resistivity(l), frequency);
        }
        return kappa;
    }

    /**
     * Prepares an electrode.
     *
     * @param soil the ground at low frequency; its lowest layer must conduct
     * @param law how it moves with frequency
     * @param bars the bars of one electrode
     * @param x where the current arrives, east [m]; it enters at the nearest end of a bar
     * @param y north [m]
     * @return the electrode
     * @throws IllegalArgumentException when there is no bar or more than 400 elements
     */
    public static HarmonicElectrode of(SoilModel soil, SoilDispersion law, List<Bar> bars, double x, double y) {
        return of(soil, law, bars, x, y, 1);
    }

    /**
     * The same with another length of elements, for a study of convergence.
     *
     * @param soil the ground at low frequency; its lowest layer must conduct
     * @param law how it moves with frequency
     * @param bars the bars of one electrode
     * @param x where the current arrives, east [m]
     * @param y north [m]
     * @param longest greatest length of an element [m], &gt; 0
     * @return the electrode
     */
    public static HarmonicElectrode of(
            SoilModel soil, SoilDispersion law, List<Bar> bars, double x, double y, double longest) {
        if (bars.isEmpty()) {
            throw new IllegalArgumentException("an electrode needs at least one bar");
        }
        return new HarmonicElectrode(
                soil, law, bars, List.of(bars.get(0).electrode()), new double[][] {{x, y}}, longest);
    }

    /**
     * Prepares several electrodes in one ground.
     *
     * @param soil the ground at low frequency; its lowest layer must conduct
     * @param law how it moves with frequency
     * @param bars the bars of all of them; those of one name are one electrode
     * @param terminals by name of electrode: where its current arrives, east and north [m]
     * @return the electrodes, in the order of the terminals
     * @throws IllegalArgumentException when an electrode has no bar or no terminal, bars of two of them meet, or there are
     *     more than 400 elements
     */
    public static HarmonicElectrode of(
            SoilModel soil, SoilDispersion law, List<Bar> bars, Map<String, double[]> terminals) {
        List<String> names = List.copyOf(terminals.keySet());
        Set<String> found = bars.stream().map(Bar::electrode).collect(Collectors.toSet());
        if (names.isEmpty() || !found.equals(terminals.keySet())) {
            throw new IllegalArgumentException(
                    "every electrode needs bars and a terminal; have bars of " + found + " and terminals of " + names);
        }
        return new HarmonicElectrode(
                soil,
                law,
                bars,
                names,
                terminals.values().stream().map(double[]::clone).toArray(double[][]::new),
                1);
    }

    /** Lagrange's weights of real points at a complex place. */
    private static Complex[] weights(double[] points, Complex place) {
        Complex[] weights = new Complex[points.length];
        for (int k = 0; k < points.length; k++) {
            Complex product = Complex.ONE;
            for (int m = 0; m < points.length; m++) {
                if (m != k) {
                    product = product.multiply(place.subtract(points[m])).divide(points[k] - points[m]);
                }
            }
            weights[k] = product;
        }
        return weights;
    }

    /**
     * Number of elements.
     *
     * @return size of the systems that are solved
     */
    public int elementCount() {
        return wires.mesh.size;
    }

    /**
     * The law of the ground.
     *
     * @return the law
     */
    public SoilDispersion law() {
        return law;
    }

    /**
     * Impedance to remote earth of the first electrode at the place where its current enters.
     *
     * @param frequency frequency [Hz], 10 Hz … 4 MHz
     * @return impedance [Ω]
     */
    public Complex impedance(double frequency) {
        return impedances(frequency)[0][0];
    }

    /**
     * Own and mutual impedances to remote earth of all electrodes at the places where their currents enter; those that
     * carry no current float.
     *
     * @param frequency frequency [Hz], 10 Hz … 4 MHz
     * @return impedances [Ω], symmetric
     */
    public Complex[][] impedances(double frequency) {
        if (!(frequency >= LOWEST && frequency <= HIGHEST)) {
            throw new IllegalArgumentException(
                    "the solution over frequency is valid from 10 Hz to 4 MHz; have " + frequency + " Hz");
        }
        Complex[] kappa = kappa(frequency);
        ZMatrixRMaj across = leakage(kappa, frequency);
        ZMatrixRMaj along = new ZMatrixRMaj(wires.mesh.size, wires.mesh.size);
        wires.phases(kappa, frequency, across, along);
        wires.addSleeves(across);
        return wires.solve(across, along);
    }

    /**
     * Own and mutual inductances of the electrodes while each current leaks away as it does at low frequency, so that it
     * tapers along the bars: the reactance that the partial inductances of the bars add, without propagation. The first rung
     * of a model, and a check on the solution over frequency.
     *
     * @return inductances [H], symmetric
     */
    public double[][] inductances() {
        ZMatrixRMaj across = new ZMatrixRMaj(wires.mesh.size, wires.mesh.size);
        double[] plain = wires.coefficients(soil);
        for (int k = 0; k < plain.length; k++) {
            across.data[2 * k] = plain[k];
        }
        wires.addSleeves(across);
        double omega = 2 * Math.PI * QUASI_STATIC;
        ZMatrixRMaj along = new ZMatrixRMaj(wires.mesh.size, wires.mesh.size);
        for (int i = 0; i < wires.mesh.size; i++) {
            for (int j = 0; j < wires.mesh.size; j++) {
                along.set(i, j, 0, omega * wires.inductances.get(i, j));
            }
        }
        Complex[][] z = wires.solve(across, along);
        double[][] found = new double[z.length][z.length];
        for (int i = 0; i < z.length; i++) {
            for (int j = 0; j < z.length; j++) {
                found[i][j] = (z[i][j].getImaginary() + z[j][i].getImaginary()) / 2 / omega;
            }
        }
        return found;
    }

    /** Mean potentials per ampere without the phase over distance. */
    private ZMatrixRMaj leakage(Complex[] kappa, double frequency) {
        ZMatrixRMaj matrix = new ZMatrixRMaj(wires.mesh.size, wires.mesh.size);
        Complex rho = geometricMean(kappa).reciprocal();
        if (kappa.length > 2) {
            Complex[] weights = weights(logFrequencies, new Complex(Math.log(frequency)));
            for (int k = 0; k < weights.length; k++) {
                double weight = weights[k].getReal();
                double[] data = scaled.get(k).data;
                for (int i = 0; i < data.length; i += 2) {
                    matrix.data[i] += weight * (data[i] * rho.getReal() - data[i + 1] * rho.getImaginary());
                    matrix.data[i + 1] += weight * (data[i] * rho.getImaginary() + data[i + 1] * rho.getReal());
                }
            }
            return matrix;
        }
        Complex[] weights = kappa.length == 1 ? new Complex[] {Complex.ONE} : weights(contrasts, contrast(kappa));
        for (int k = 0; k < real.length; k++) {
            add(matrix, real[k], weights[k].multiply(rho));
        }
        return matrix;
    }

    private static Complex geometricMean(Complex[] kappa) {
        Complex logarithm = Complex.ZERO;
        for (Complex k : kappa) {
            logarithm = logarithm.add(k.log().divide(kappa.length));
        }
        return logarithm.exp();
    }

    /** Coefficients times the geometric mean of κ, reached from two to five real grounds along the phases. */
    private ZMatrixRMaj turnedByPhases(Complex[] kappa) {
        ZMatrixRMaj matrix = new ZMatrixRMaj(wires.mesh.size, wires.mesh.size);
        Complex mean = geometricMean(kappa);
        double widest = 0;
        for (Complex k : kappa) {
            widest = Math.max(widest, Math.abs(k.getArgument() - mean.getArgument()));
        }
        double[] offsets = OFFSETS[widest <= PHASES[0] ? 0 : widest <= PHASES[1] ? 1 : 2];
        Complex[] weights = weights(offsets, Complex.I);
        for (int t = 0; t < offsets.length; t++) {
            List<Layer> layers = new ArrayList<>();
            for (int l = 0; l < kappa.length; l++) {
                double phase = kappa[l].getArgument() - mean.getArgument();
                layers.add(new Layer(Math.exp(-offsets[t] * phase) * mean.abs() / kappa[l].abs(), soil.thickness(l)));
            }
            add(matrix, wires.coefficients(new LayeredSoil(layers)), weights[t]);
        }
        return matrix;
    }

    private static void add(ZMatrixRMaj matrix, double[] values, Complex weight) {
        for (int i = 0; i < values.length; i++) {
            matrix.data[2 * i] += values[i] * weight.getReal();
            matrix.data[2 * i + 1] += values[i] * weight.getImaginary();
        }
    }
}
