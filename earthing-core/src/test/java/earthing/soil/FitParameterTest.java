package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** What a fit tells of each layer: resistivity, thickness and their products, with intervals. */
class FitParameterTest {

    private static final int COUNT = 12;

    private static Sounding over(SoilModel soil, double scatter) {
        Random random = new Random(3);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < COUNT; i++) {
            Wenner array = Wenner.of(0.5 * Math.pow(1.5, i));
            readings.add(
                    new Reading(array, array.apparentResistivity(soil) * Math.exp(scatter * random.nextGaussian())));
        }
        return new Sounding("", readings);
    }

    private static double[] logs(SoundingFit fit) {
        return fit.parameters().stream()
                .mapToDouble(parameter -> Math.log(parameter.value()))
                .toArray();
    }

    /** (JᵀJ)⁻¹ with slopes by central differences of the quadrature. */
    private static RealMatrix covariance(Sounding sounding, double[] point) {
        double[][] jacobian = new double[COUNT][point.length];
        for (int p = 0; p < point.length; p++) {
            double[] up = point.clone();
            double[] down = point.clone();
            up[p] += 1e-3;
            down[p] -= 1e-3;
            for (int i = 0; i < COUNT; i++) {
                ElectrodeArray array = sounding.readings().get(i).array();
                jacobian[i][p] = Math.log(array.apparentResistivity(LogModel.soil(up))
                                / array.apparentResistivity(LogModel.soil(down)))
                        / 2e-3;
            }
        }
        RealMatrix j = MatrixUtils.createRealMatrix(jacobian);
        return new LUDecomposition(j.transpose().multiply(j)).getSolver().getInverse();
    }

    private static double half(RealMatrix covariance, double... g) {
        ArrayRealVector vector = new ArrayRealVector(g);
        return Math.sqrt(vector.dotProduct(covariance.operate(vector)));
    }

    @Test
    void intervalsAreThoseOfTheLinearTheory() {
        Sounding sounding = over(SoilModel.twoLayer(150, 2, 500), 0.03);
        SoundingFit fit = SoundingInversion.of(sounding, 2).best();
        double[] point = logs(fit);
        double squares = 0;
        for (Reading reading : sounding.readings()) {
            double off =
                    Math.log(reading.apparentResistivity() / reading.array().apparentResistivity(fit.soil()));
            squares += off * off;
        }
        // Nine readings to spare; two-sided 90 %.
        double reach = Math.sqrt(squares / 9) * new TDistribution(9).inverseCumulativeProbability(0.95);
        RealMatrix covariance = covariance(sounding, point);
        double[] halves = {
            half(covariance, 1, 0, 0),
            half(covariance, 0, 1, 0),
            half(covariance, 0, 0, 1),
            half(covariance, 1, 0, 1),
            half(covariance, -1, 0, 1)
        };
        List<FitParameter> all = new ArrayList<>(fit.parameters());
        all.addAll(fit.products());
        assertThat(all).hasSize(5);
        for (int i = 0; i < 5; i++) {
            FitParameter one = all.get(i);
            assertThat(Math.log(one.high() / one.value()))
                    .isCloseTo(reach * halves[i], within(0.01 * reach * halves[i]));
            assertThat(Math.log(one.value() / one.low()))
                    .isCloseTo(reach * halves[i], within(0.01 * reach * halves[i]));
            assertThat(one.resolved()).isTrue();
        }
    }

    @Test
    void everyParameterSaysWhatItIsAndOfWhichLayer() {
        SoilModel soil = SoilModel.of(List.of(new Layer(200, 1), new Layer(40, 4), Layer.below(600)));
        SoundingFit fit = SoundingInversion.of(over(soil, 0.01), 3).best();
        assertThat(fit.parameters()).extracting(FitParameter::layer).containsExactly(0, 1, 2, 0, 1);
        assertThat(fit.parameters())
                .extracting(FitParameter::kind)
                .containsExactly(
                        FitParameter.Kind.RESISTIVITY,
                        FitParameter.Kind.RESISTIVITY,
                        FitParameter.Kind.RESISTIVITY,
                        FitParameter.Kind.THICKNESS,
                        FitParameter.Kind.THICKNESS);
        assertThat(fit.products()).extracting(FitParameter::layer).containsExactly(0, 1, 0, 1);
        assertThat(fit.products())
                .extracting(FitParameter::kind)
                .containsExactly(
                        FitParameter.Kind.TRANSVERSE_RESISTANCE,
                        FitParameter.Kind.TRANSVERSE_RESISTANCE,
                        FitParameter.Kind.LONGITUDINAL_CONDUCTANCE,
                        FitParameter.Kind.LONGITUDINAL_CONDUCTANCE);
        for (int i = 0; i < 2; i++) {
            double rho = fit.resistivity(i).value();
            double h = fit.thickness(i).value();
            assertThat(fit.products().get(i).value()).isCloseTo(rho * h, within(1e-9 * rho * h));
            assertThat(fit.products().get(2 + i).value()).isCloseTo(h / rho, within(1e-9 * h / rho));
            assertThat(fit.soil().resistivity(i)).isCloseTo(rho, within(1e-9 * rho));
            assertThat(fit.soil().thickness(i)).isCloseTo(h, within(1e-9 * h));
        }
    }

    @Test
    void ofAThinConductingSurfaceOnlyTheConductanceIsKnown() {
        // A skin of 5 mm, a hundredth of the shortest spacing and a tenth of the thinnest layer that is looked for.
        Sounding sounding = over(SoilModel.twoLayer(2, 0.005, 500), 0.001);
        SoundingFit fit = SoundingInversion.of(sounding, 2).best();
        LayerSearch search = new LayerSearch(SoundingFilter.of(sounding.readings()), sounding, 2);
        assertThat(search.held(logs(fit))).contains(true);
        FitParameter known = fit.equivalent(0).orElseThrow();
        assertThat(known.kind()).isEqualTo(FitParameter.Kind.LONGITUDINAL_CONDUCTANCE);
        assertThat(known.value()).isCloseTo(0.0025, within(0.0001));
        assertThat(known.low()).isBetween(0.002, 0.0025);
        assertThat(known.high()).isBetween(0.0025, 0.003);
        // Of the rest nothing but the bounds of the search.
        assertThat(fit.resistivity(0).resolved()).isFalse();
        assertThat(fit.resistivity(0).low()).isCloseTo(Math.exp(search.least(0)), within(1e-9));
        assertThat(Math.log(fit.resistivity(0).high())).isCloseTo(search.most(0), within(1e-9));
        assertThat(fit.thickness(0).resolved()).isFalse();
        assertThat(Math.log(fit.thickness(0).low())).isCloseTo(search.least(2), within(1e-9));
        assertThat(Math.log(fit.thickness(0).high())).isCloseTo(search.most(2), within(1e-9));
        FitParameter transverse = fit.products().get(0);
        assertThat(transverse.resolved()).isFalse();
        assertThat(Math.log(transverse.low())).isCloseTo(search.least(0) + search.least(2), within(1e-9));
        assertThat(Math.log(transverse.high())).isCloseTo(search.most(0) + search.most(2), within(1e-9));
        assertThat(fit.resistivity(1).resolved()).isTrue();
        assertThat(fit.resistivity(1).value()).isCloseTo(500, within(5.0));
    }

    @Test
    void ofAThinResistiveSurfaceNothingIsKnown() {
        Sounding sounding = over(SoilModel.twoLayer(20_000, 0.02, 100), 0.001);
        SoundingFit fit = SoundingInversion.of(sounding, 2).best();
        LayerSearch search = new LayerSearch(SoundingFilter.of(sounding.readings()), sounding, 2);
        assertThat(search.held(logs(fit))).contains(true);
        assertThat(fit.equivalent(0)).isEmpty();
        assertThat(fit.products())
                .allSatisfy(product -> assertThat(product.resolved()).isFalse());
        FitParameter conductance = fit.products().get(1);
        assertThat(Math.log(conductance.low())).isCloseTo(search.least(2) - search.most(0), within(1e-9));
        assertThat(Math.log(conductance.high())).isCloseTo(search.most(2) - search.least(0), within(1e-9));
        assertThat(fit.resistivity(1).value()).isCloseTo(100, within(1.0));
    }

    @Test
    void aThinLayerIsFeltByItsConductanceOrItsResistance() {
        // At the surface a better conductor is felt, a worse one hides.
        assertThat(SoundingInversion.productOfThinLayer(new double[] {3, 5, 0}, 0))
                .isEqualTo(-1);
        assertThat(SoundingInversion.productOfThinLayer(new double[] {5, 3, 0}, 0))
                .isZero();
        // Between others it is set against their mean.
        for (double[] around : new double[][] {{2, 6}, {6, 2}}) {
            double[] better = {around[0], 3.9, around[1], 0, 0};
            double[] worse = {around[0], 4.1, around[1], 0, 0};
            assertThat(SoundingInversion.productOfThinLayer(better, 1)).isEqualTo(-1);
            assertThat(SoundingInversion.productOfThinLayer(worse, 1)).isEqualTo(1);
        }
    }
}
