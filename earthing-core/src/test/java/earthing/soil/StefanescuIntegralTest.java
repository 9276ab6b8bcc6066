package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.special.BesselJ;
import org.junit.jupiter.api.Test;

/** Potentials by extrapolated quadrature and by images against plain quadrature of the Stefanescu integral. */
class StefanescuIntegralTest {

    private static final SoilModel TWO = SoilModel.twoLayer(100, 2, 1000);
    private static final SoilModel THREE =
            SoilModel.of(List.of(new Layer(400, 0.8), new Layer(60, 4), Layer.below(900)));
    private static final SoilModel FIVE = SoilModel.of(
            List.of(new Layer(1000, 0.5), new Layer(50, 1.5), new Layer(300, 3), new Layer(20, 6), Layer.below(2000)));

    /** Panels of a fixed width in λ, far finer than J0 and the kernel need. */
    private static double direct(SoilModel soil, double r) {
        ResistivityTransform transform = ResistivityTransform.of(soil);
        double end = 25 / soil.thickness(0);
        GaussIntegratorFactory gauss = new GaussIntegratorFactory();
        double sum = 0;
        double a = 0;
        double b = 1e-7;
        while (a < end) {
            GaussIntegrator rule = gauss.legendre(20, a, b);
            sum += rule.integrate(l -> (transform.at(l) - soil.resistivity(0)) * BesselJ.value(0, l * r));
            a = b;
            b = Math.min(b * 1.5, b + 1.5 / r);
        }
        return (soil.resistivity(0) / r + sum) / (2 * Math.PI);
    }

    @Test
    void extrapolatedQuadratureAgreesWithPlainQuadratureToOnePartInTenMillion() {
        for (SoilModel soil : List.of(TWO, THREE, FIVE, SoilModel.twoLayer(1000, 3, 10))) {
            for (double r : new double[] {0.05, 0.3, 1, 2.5, 7, 20, 60}) {
                double exact = direct(soil, r);
                assertThat(SurfacePotential.of(soil).at(r))
                        .as("%s at %s m", soil, r)
                        .isCloseTo(exact, within(1e-7 * exact));
            }
        }
    }

    @Test
    void imagesAgreeWithQuadratureOnTheSurface() {
        for (SoilModel soil : List.of(TWO, THREE, FIVE, SoilModel.twoLayer(1000, 3, 10))) {
            PointSource source = PointSource.of(soil);
            for (double r : new double[] {0.05, 0.3, 1, 2.5, 7, 20, 60}) {
                double exact = SurfacePotential.of(soil).at(r);
                ImageSet images = source.surfaceImages(0);
                assertThat(images.potential(r, 0, 0))
                        .as("%s at %s m", soil, r)
                        .isCloseTo(exact, within(images.bound() + 1e-9 * exact));
                assertThat(source.potential(r, 0, 0))
                        .isCloseTo(exact, within(source.images(0, 0).bound() + 1e-9 * exact));
            }
        }
    }

    @Test
    void boundOfTheFitIsSmallAgainstTheLeadingTerm() {
        for (SoilModel soil : List.of(TWO, THREE, FIVE)) {
            PointSource source = PointSource.of(soil);
            for (int i = 0; i < soil.layerCount(); i++) {
                for (int j = i; j < soil.layerCount(); j++) {
                    ImageSet images = source.images(i, j);
                    double leading = soil.resistivity(i) / (4 * Math.PI * soil.thickness(0));
                    assertThat(images.bound() / leading)
                            .as("%s %s-%s", soil, i, j)
                            .isLessThan(1e-6);
                }
            }
        }
    }

    @Test
    void potentialAndVerticalCurrentAreContinuousAtEveryBoundary() {
        for (SoilModel soil : List.of(TWO, THREE, FIVE)) {
            PointSource source = PointSource.of(soil);
            for (double depth : new double[] {0, 0.3, 1.1, 3.5, 9, 20}) {
                for (int layer = 0; layer < soil.layerCount() - 1; layer++) {
                    double z = soil.top(layer) + soil.thickness(layer);
                    double e = 1e-4 * z;
                    double r = 1.7;
                    double[] v = new double[5];
                    for (int i = 0; i < 5; i++) {
                        v[i] = source.potential(r, depth, z + (i - 2) * e);
                    }
                    double above = (3 * v[2] - 4 * v[1] + v[0]) / (2 * e) / soil.resistivity(layer);
                    double pastBoundary = source.potential(r, depth, z * (1 + 1e-12));
                    double below = (4 * v[3] - v[4] - 3 * pastBoundary) / (2 * e) / soil.resistivity(layer + 1);
                    assertThat(pastBoundary).isCloseTo(v[2], within(3e-7 * v[2]));
                    assertThat(below)
                            .as("%s source %s boundary %s", soil, depth, z)
                            .isCloseTo(above, within(2e-3 * Math.abs(above) + 1e-3 * v[2] / soil.resistivity(layer)));
                }
            }
        }
    }

    @Property(seed = "20261125", tries = 60)
    void exchangingSourceAndObserverChangesNothing(
            @ForAll @DoubleRange(min = 0, max = 12) double a,
            @ForAll @DoubleRange(min = 0, max = 12) double b,
            @ForAll @DoubleRange(min = 0.01, max = 50) double r) {
        PointSource source = PointSource.of(FIVE);
        double there = source.potential(r, a, b);
        assertThat(source.potential(r, b, a)).isCloseTo(there, within(1e-9 * there));
    }

    @Property(seed = "20261125", tries = 60)
    void layersOfNearlyEqualResistivityAreUniform(
            @ForAll @DoubleRange(min = 0, max = 12) double a,
            @ForAll @DoubleRange(min = 0, max = 12) double b,
            @ForAll @DoubleRange(min = 0.01, max = 50) double r) {
        SoilModel soil = SoilModel.of(List.of(new Layer(100, 1), new Layer(100.000001, 3), Layer.below(100)));
        double uniform = PointSource.of(SoilModel.uniform(100)).potential(r, a, b);
        assertThat(PointSource.of(soil).potential(r, a, b)).isCloseTo(uniform, within(1e-7 * uniform));
    }
}
