package earthing.electrode.wire;

import earthing.quantity.Source;
import earthing.soil.PointSource;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.jspecify.annotations.Nullable;

/**
 * Several buried electrodes, each at one potential, solved together: thin-wire Galerkin method with elements of uniform
 * leakage in layered ground. See docs/theory/electrode.md for method and accuracy.
 *
 * <p>Bars are equipotential along their length, which holds at power frequency for the short electrodes of a pole.
 */
public final class EarthElectrodes {

    /** Where the method of even leakage comes from. */
    public static final Source EVEN_LEAKAGE = Source.publication(
            "Howe, The capacity of radio-telegraphic antennae, The Electrician 73, 1914; Thomson's theorem of least loss",
            "average potential of even leakage, an upper bound",
            Source.Status.FROM_MEMORY);

    private final SoilModel soil;
    private final List<Bar> bars;
    private final List<String> names;
    private final Mesh mesh;
    private final PairIntegral integral;
    private final int[] electrode;
    private final GalerkinSystem system;
    private final double[][] currentPerVolt;
    private final AtomicReference<@Nullable SurfaceField> surface;
    private final ResistanceMatrix resistances;
    private final double residual;
    private final double condition;
    /** The same electrodes in the ground that was solved, and how many times its resistivities this ground has. */
    private final EarthElectrodes reference;

    private final double scale;

    private EarthElectrodes(PointSource ground, List<Bar> bars, Discretisation rule) {
        if (bars.isEmpty()) {
            throw new IllegalArgumentException("an electrode needs at least one bar");
        }
        requireApart(bars);
        soil = ground.soil();
        this.bars = List.copyOf(bars);
        names = List.copyOf(
                new LinkedHashSet<>(bars.stream().map(Bar::electrode).toList()));
        mesh = Mesh.of(soil, this.bars, rule);
        int[] ofBar =
                bars.stream().mapToInt(bar -> names.indexOf(bar.electrode())).toArray();
        electrode = Arrays.stream(mesh.bar).map(bar -> ofBar[bar]).toArray();
        integral = new PairIntegral(mesh, ground);
        system = GalerkinSystem.of(mesh, integral, electrode, names.size());
        boolean[] all = new boolean[names.size()];
        Arrays.fill(all, true);
        GalerkinSystem.Solution solution = system.solve(all);
        currentPerVolt = solution.currents;
        surface = new AtomicReference<>();
        residual = solution.residual;
        condition = solution.condition;
        resistances = new ResistanceMatrix(names, invert(solution.conductances));
        reference = this;
        scale = 1;
    }

    private EarthElectrodes(EarthElectrodes solved, SoilModel soil, double scale) {
        this.soil = soil;
        this.scale = scale;
        reference = solved;
        bars = solved.bars;
        names = solved.names;
        mesh = solved.mesh;
        integral = solved.integral;
        electrode = solved.electrode;
        system = solved.system;
        currentPerVolt = solved.currentPerVolt;
        surface = solved.surface;
        residual = solved.residual;
        condition = solved.condition;
        int k = names.size();
        double[][] values = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                values[i][j] = scale * solved.resistances.get(i, j);
            }
        }
        resistances = new ResistanceMatrix(names, values);
    }

    /**
     * Solves electrodes with the standard discretisation.
     *
     * @param soil the ground; its lowest layer must conduct
     * @param bars all bars; those of one electrode name are bonded
     * @return the solved electrodes
     */
    public static EarthElectrodes of(SoilModel soil, List<Bar> bars) {
        return of(soil, bars, Discretisation.STANDARD);
    }

    /**
     * Solves electrodes.
     *
     * @param soil the ground; its lowest layer must conduct
     * @param bars all bars; those of one electrode name are bonded
     * @param rule how bars are cut
     * @return the solved electrodes
     * @throws IllegalArgumentException when there is no bar, or the matrix of the bars is not positive definite, as it
     *     happens when bars overlap
     */
    public static EarthElectrodes of(SoilModel soil, List<Bar> bars, Discretisation rule) {
        return new EarthElectrodes(PointSource.of(soil), bars, rule);
    }

    /**
     * Solves electrodes in ground whose images are known already.
     *
     * @param ground Green's function of the ground
     * @param bars all bars
     * @param rule how bars are cut
     * @return the solved electrodes
     */
    public static EarthElectrodes of(PointSource ground, List<Bar> bars, Discretisation rule) {
        return new EarthElectrodes(ground, bars, rule);
    }

    /**
     * The same bars in ground all of whose resistivities are greater by one factor: every resistance and, for given
     * currents, every potential is greater by it.
     *
     * @param soil that ground
     * @param factor its resistivities over those of this ground [-], &gt; 0
     * @return the electrodes in it, which share what has been solved
     * @throws IllegalArgumentException if a bar has a sleeve, whose resistance does not follow the ground
     */
    public EarthElectrodes in(SoilModel soil, double factor) {
        if (bars.stream().anyMatch(bar -> bar.sleeve() != 0)) {
            throw new IllegalArgumentException("a bar in a sleeve does not follow the resistivity of the ground");
        }
        if (!(factor > 0)) {
            throw new IllegalArgumentException("a factor on resistivity must be > 0; have " + factor);
        }
        return new EarthElectrodes(reference, soil, scale * factor);
    }

    /**
     * The electrodes in the ground in which they were solved; see {@link #in}.
     *
     * @return these where they were solved themselves
     */
    public EarthElectrodes reference() {
        return reference;
    }

    /**
     * Resistivities of this ground over those of the ground of {@link #reference}.
     *
     * @return factor [-]
     */
    public double scale() {
        return scale;
    }

    /** Bars of two electrodes that run into each other are one electrode; the equation would not notice. */
    private static void requireApart(List<Bar> bars) {
        for (int i = 0; i < bars.size(); i++) {
            Bar one = bars.get(i);
            for (int j = 0; j < i; j++) {
                Bar other = bars.get(j);
                if (!one.electrode().equals(other.electrode()) && one.distance(other) < one.radius() + other.radius()) {
                    throw new IllegalArgumentException(
                            "bars of " + other.electrode() + " and of " + one.electrode() + " run into each other");
                }
            }
        }
    }

    private static double[][] invert(double[][] conductances) {
        DMatrixRMaj inverse = new DMatrixRMaj(conductances);
        if (!CommonOps_DDRM.invert(inverse)) {
            throw new IllegalArgumentException("the electrodes cannot be told apart");
        }
        int k = conductances.length;
        double[][] values = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                values[i][j] = inverse.get(i, j);
            }
        }
        return GalerkinSystem.symmetric(values);
    }

    /**
     * The ground.
     *
     * @return the model
     */
    public SoilModel soil() {
        return soil;
    }

    /**
     * The bars.
     *
     * @return all bars of all electrodes
     */
    public List<Bar> bars() {
        return bars;
    }

    /**
     * How finely the bars are cut.
     *
     * @return number of elements of all bars
     */
    public int elements() {
        return electrode.length;
    }

    /**
     * Names of the electrodes.
     *
     * @return names in the order in which they first occur among the bars
     */
    public List<String> names() {
        return names;
    }

    /**
     * Self and mutual resistances, every electrode present.
     *
     * @return the matrix [Ω]
     */
    public ResistanceMatrix resistances() {
        return resistances;
    }

    /**
     * Resistance of one electrode with the others taken out of the ground, not merely floating.
     *
     * @param name name
     * @return resistance to remote earth [Ω]
     */
    public double resistanceWithoutOthers(String name) {
        boolean[] present = new boolean[names.size()];
        present[resistances.index(name)] = true;
        return scale / system.solve(present).conductances[0][0];
    }

    /**
     * Resistance of one electrode alone by the average potential of even leakage: every metre gives current in proportion
     * to the conductivity of its layer, and the mean potential over that current is taken. Of all ways to leave an
     * electrode the true one has the least loss, so this lies above {@link #resistanceWithoutOthers}, by little where the
     * leakage is nearly even. See {@link #EVEN_LEAKAGE}.
     *
     * @param name name
     * @return resistance to remote earth [Ω], an upper bound of the same equation
     */
    public double evenLeakage(String name) {
        int wanted = resistances.index(name);
        double[] weight = new double[mesh.size];
        double whole = 0;
        for (int e = 0; e < mesh.size; e++) {
            if (electrode[e] == wanted) {
                weight[e] = mesh.length[e] / reference.soil.resistivity(mesh.layer[e]);
                whole += weight[e];
            }
        }
        return scale * system.loss(weight) / (whole * whole);
    }

    /**
     * Number of elements.
     *
     * @return size of the linear system
     */
    public int elementCount() {
        return mesh.size;
    }

    /**
     * Number of elements that a rule would make, without a solution.
     *
     * @param soil the ground
     * @param bars all bars
     * @param rule how bars are cut
     * @return size of the linear system
     */
    public static int elementCount(SoilModel soil, List<Bar> bars, Discretisation rule) {
        return Mesh.of(soil, bars, rule).size;
    }

    /**
     * Residual of the linear system for one volt.
     *
     * @return greatest error of an element's mean potential [V]
     */
    public double residual() {
        return residual;
    }

    /**
     * Condition of the linear system.
     *
     * @return estimate in the 1-norm [-], ≥ 1
     */
    public double condition() {
        return condition;
    }

    /**
     * Potential somewhere per ampere into one electrode, the others floating.
     *
     * @param name electrode that carries the ampere
     * @param x east [m]
     * @param y north [m]
     * @param depth depth [m], ≥ 0
     * @return potential to remote earth [V/A]
     */
    public double potentialPerAmpere(String name, double x, double y, double depth) {
        return carrying(Map.of(name, 1.0)).potential(x, y, depth);
    }

    /**
     * The electrodes with given currents.
     *
     * @param currents current into each named electrode [A]; the ones left out float
     * @return the field
     */
    public EnergisedElectrodes carrying(Map<String, Double> currents) {
        int k = names.size();
        double[] injected = new double[k];
        currents.forEach((name, current) -> injected[resistances.index(name)] = current);
        double[] potential = new double[k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                potential[i] += resistances.get(i, j) * injected[j];
            }
        }
        return energised(potential, injected);
    }

    /**
     * The electrodes at given potentials.
     *
     * @param potentials potential of every electrode [V]
     * @return the field
     */
    public EnergisedElectrodes atPotentials(Map<String, Double> potentials) {
        int k = names.size();
        if (potentials.size() != k) {
            throw new IllegalArgumentException("need the potential of each of " + names + "; have " + potentials);
        }
        double[] potential = new double[k];
        potentials.forEach((name, value) -> potential[resistances.index(name)] = value);
        double[] current = new double[k];
        for (int e = 0; e < mesh.size; e++) {
            for (int j = 0; j < k; j++) {
                current[electrode[e]] += currentPerVolt[j][e] * potential[j] / scale;
            }
        }
        return energised(potential, current);
    }

    /** Tables of the surface, made when a field is first asked for and shared by all fields. */
    private SurfaceField surface() {
        SurfaceField known = surface.get();
        if (known == null) {
            known = new SurfaceField(mesh, integral, currentPerVolt);
            if (!surface.compareAndSet(null, known)) {
                return Objects.requireNonNull(surface.get());
            }
        }
        return known;
    }

    private EnergisedElectrodes energised(double[] potential, double[] current) {
        // Currents that give these potentials in the ground that was solved.
        double[] element = new double[mesh.size];
        List<ElementLeakage> leakage = new ArrayList<>();
        for (int e = 0; e < mesh.size; e++) {
            for (int k = 0; k < potential.length; k++) {
                element[e] += currentPerVolt[k][e] * potential[k];
            }
            leakage.add(new ElementLeakage(
                    names.get(electrode[e]),
                    (mesh.x1[e] + mesh.x2[e]) / 2,
                    (mesh.y1[e] + mesh.y2[e]) / 2,
                    (mesh.z1[e] + mesh.z2[e]) / 2,
                    mesh.length[e],
                    element[e] / scale));
        }
        return new EnergisedElectrodes(
                soil, bars, names, integral, this::surface, potential, current, element, leakage);
    }
}
