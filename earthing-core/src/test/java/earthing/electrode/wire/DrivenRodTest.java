package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.soil.Reading;
import earthing.soil.SoilModel;
import earthing.soil.Sounding;
import earthing.soil.SoundingFit;
import earthing.soil.SoundingInversion;
import earthing.soil.Wenner;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.special.BesselJ;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Sounding by a driven rod, forward and back. Forward at contrasts of 1:1000 to 1000:1: the same elements with coefficients from the integral over wave
 * numbers in two layers, without any image of the library. The terms that are singular where pieces touch (the piece itself,
 * its mirror in the surface and at the boundary) are those of tubes; all that bounces between is integrated.
 */
class DrivenRodTest {

    private static final double RADIUS = 0.008;
    private static final double THICKNESS = 2;

    private static final double[] LENGTHS = {0.3, 1, 1.9, 2.1, 3, 6, 15};

    /** The rod with coefficients of its own. */
    private record Integrated(Mesh mesh, double upper, double lower, double h, double k) {

        /** Mean of e^(s λ z) over a piece. */
        private double mean(int e, double s, double lambda) {
            double half = lambda * mesh.length[e] / 2;
            double middle = Math.exp(s * lambda * (mesh.z1[e] + mesh.z2[e]) / 2);
            return half < 1e-5 ? middle : middle * Math.sinh(half) / half;
        }

        private double tube(int i, int j, double sign, double offset) {
            double one = sign * mesh.z1[j] + offset;
            double other = sign * mesh.z2[j] + offset;
            return CollinearTubes.mean(
                    mesh.z1[i], mesh.z2[i], Math.min(one, other), Math.max(one, other), RADIUS * RADIUS);
        }

        private double coefficient(int i, int j) {
            int layers = mesh.layer[i] + mesh.layer[j];
            double rho = layers == 2 ? lower : upper;
            double touching = layers == 0
                    ? tube(i, j, 1, 0) + tube(i, j, -1, 0) + k * tube(i, j, -1, 2 * h)
                    : layers == 2
                            ? tube(i, j, 1, 0) - k * tube(i, j, -1, 2 * h)
                            : (1 + k) * (tube(i, j, 1, 0) + tube(i, j, -1, 0));
            GaussIntegratorFactory gauss = new GaussIntegratorFactory();
            double sum = 0;
            double a = 0;
            double b = 1e-7 / h;
            while (a < 25 / h) {
                GaussIntegrator rule = gauss.legendre(20, a, b);
                sum += rule.integrate(
                        lambda -> rest(i, j, layers, lambda) * Math.pow(BesselJ.value(0, lambda * RADIUS), 2));
                a = b;
                b = Math.min(1.6 * b, b + 1 / h);
            }
            return rho / (4 * Math.PI) * (touching + sum);
        }

        /** What is left of the kernel, over ρ; every term falls at least as e^(−2λh) does. */
        private double rest(int i, int j, int layers, double lambda) {
            double back = Math.exp(-2 * lambda * h);
            double bounced = k * back / (1 - k * back);
            double up = mean(i, 1, lambda);
            double down = mean(i, -1, lambda);
            double otherUp = mean(j, 1, lambda);
            double otherDown = mean(j, -1, lambda);
            if (layers == 0) {
                return bounced * (down * otherDown + k * back * up * otherUp + up * otherDown + down * otherUp);
            }
            if (layers == 2) {
                // (−k + E)/(1 − kE) = −k + (1 − k²) E/(1 − kE), reflected at the boundary
                return (1 - k * k) / (1 - k * back) * down * otherDown;
            }
            boolean first = mesh.layer[i] == 0;
            return (1 + k) * bounced * (first ? up + down : otherUp + otherDown) * (first ? otherDown : down);
        }

        double resistance() {
            double[][] a = new double[mesh.size][mesh.size];
            for (int i = 0; i < mesh.size; i++) {
                for (int j = 0; j <= i; j++) {
                    a[i][j] = coefficient(i, j);
                    a[j][i] = a[i][j];
                }
            }
            double[] currents = new LUDecomposition(new Array2DRowRealMatrix(a))
                    .getSolver()
                    .solve(new ArrayRealVector(mesh.size, 1.0))
                    .toArray();
            double sum = 0;
            for (double current : currents) {
                sum += current;
            }
            return 1 / sum;
        }
    }

    /**
     * The inversion gives back the ground over which readings were computed without the library's images. No printed sounding
     * by a driven rod was at hand; the readings are synthetic.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5, 3, 10})
    void inversionOfAnIntegratedSoundingGivesItsGround(double contrast) {
        SoilModel soil = SoilModel.twoLayer(100, THICKNESS, 100 * contrast);
        List<Reading> readings = new ArrayList<>();
        for (double length : new double[] {0.6, 1, 1.5, 2, 2.5, 3, 4.5, 6}) {
            Mesh mesh = Mesh.of(soil, BarShapes.rod("r", 0, 0, 0, length, RADIUS), Discretisation.STANDARD);
            readings.add(Reading.ofResistance(
                    new DrivenRod(length, RADIUS),
                    new Integrated(mesh, 100, 100 * contrast, THICKNESS, (contrast - 1) / (contrast + 1))
                            .resistance()));
        }
        SoundingFit fit = SoundingInversion.of(new Sounding("rod", readings)).best();
        assertThat(fit.layers()).isEqualTo(2);
        assertThat(fit.misfit()).isLessThan(1e-3);
        assertThat(fit.resistivity(0).value()).isCloseTo(100, within(1.0));
        assertThat(fit.resistivity(1).value()).isCloseTo(100 * contrast, within(contrast));
        assertThat(fit.thickness(0).value()).isCloseTo(THICKNESS, within(0.02));
    }

    /** A survey in kilometres by mistake. */
    @Test
    void aRodOfKilometresIsRefused() {
        assertThatThrownBy(() -> new DrivenRod(1001, 0.008)).hasMessageContaining("is the unit right?");
        assertThat(new DrivenRod(1000, 0.008).length()).isEqualTo(1000);
    }

    /** 2 % of scatter leaves the true ground within intervals; one reading off by 40 % is set aside and named. */
    @Test
    void scatterWidensTheIntervalsAndABadReadingIsSetAside() {
        SoilModel soil = SoilModel.twoLayer(300, 1.4, 60);
        double[] scatter = {0.02, -0.015, 0.01, 0.02, -0.02, 0.4, 0.005, -0.01, 0.015};
        double[] lengths = {0.6, 0.9, 1.2, 1.5, 1.8, 2.4, 3, 4, 5};
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < lengths.length; i++) {
            DrivenRod rod = new DrivenRod(lengths[i], RADIUS);
            readings.add(Reading.ofResistance(rod, rod.resistance(soil) * (1 + scatter[i])));
        }
        SoundingFit fit = SoundingInversion.of(new Sounding("rod", readings), 2).best();
        assertThat(fit.setAside()).hasSize(1);
        assertThat(fit.setAside().get(0).reading()).isEqualTo(readings.get(5));
        assertThat(300.0).isBetween(fit.resistivity(0).low(), fit.resistivity(0).high());
        assertThat(60.0).isBetween(fit.resistivity(1).low(), fit.resistivity(1).high());
        assertThat(1.4).isBetween(fit.thickness(0).low(), fit.thickness(0).high());
    }

    @Test
    void readingsOfTwoKindsAndMoreThanThreeLayersAreRefused() {
        List<Reading> rods = new ArrayList<>();
        for (int i = 1; i <= 9; i++) {
            rods.add(new Reading(new DrivenRod(i, RADIUS), 100));
        }
        assertThatThrownBy(() -> SoundingInversion.of(new Sounding("", rods), 4))
                .hasMessageContaining("no more than 3");
        for (int place : new int[] {0, 9}) {
            List<Reading> mixed = new ArrayList<>(rods);
            mixed.add(place, new Reading(Wenner.of(2), 100));
            assertThatThrownBy(() -> SoundingInversion.of(new Sounding("", mixed)))
                    .hasMessageContaining("one kind");
        }
    }

    /** All resistivities k times as high read k times as much, whatever the rod. */
    @Property(seed = "20261127", tries = 20)
    void readingsScaleWithTheGround(
            @ForAll @DoubleRange(min = 0.5, max = 9) double length,
            @ForAll @DoubleRange(min = 0.01, max = 100) double k,
            @ForAll @DoubleRange(min = 0.05, max = 20) double contrast) {
        DrivenRod rod = new DrivenRod(length, RADIUS);
        double one = rod.apparentResistivity(SoilModel.twoLayer(100, 2, 100 * contrast));
        double other = rod.apparentResistivity(SoilModel.twoLayer(100 * k, 2, 100 * k * contrast));
        assertThat(other).isCloseTo(k * one, within(1e-9 * other));
        assertThat(one).isBetween(100 * Math.min(1, contrast) * 0.999, 100 * Math.max(1, contrast) * 1.001);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.01, 0.1, 0.5, 2, 10, 100, 1000})
    void drivenRodMeetsTheIntegralOverWaveNumbers(double contrast) {
        SoilModel soil = SoilModel.twoLayer(100, THICKNESS, 100 * contrast);
        for (double length : LENGTHS) {
            Mesh mesh = Mesh.of(soil, BarShapes.rod("r", 0, 0, 0, length, RADIUS), Discretisation.STANDARD);
            double expected =
                    new Integrated(mesh, 100, 100 * contrast, THICKNESS, (contrast - 1) / (contrast + 1)).resistance();
            double found = new DrivenRod(length, RADIUS).resistance(soil);
            assertThat(found).as("%s m over %s", length, contrast).isCloseTo(expected, within(1e-6 * expected));
        }
    }
}
