package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.special.BesselJ;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Apparent resistivities from 0.1 m to 1 km over contrasts of 1:1000 to 1000:1, within 1e-6 of sums made apart. */
class ContrastsTest {

    private static final double[] SPACINGS = {0.1, 0.3, 1, 3, 10, 30, 100, 300, 1000};
    private static final double[] THICKNESSES = {0.2, 2, 20};
    private static final double NEAR = 1e-6;

    /**
     * Image series of Hummel (1932) and Tagg, summed term by term to below 1e-17, largest terms last; r and h in metres.
     *
     * @return 2π times potential a ampere, over ρ1
     */
    private static double series(double k, double h, double r) {
        int terms = (int) Math.ceil(Math.log(1e-17) / Math.log(Math.abs(k)));
        double sum = 0;
        for (int n = terms; n > 0; n--) {
            sum += 2 * Math.pow(k, n) / Math.sqrt(r * r + 4.0 * n * n * h * h);
        }
        return 1 / r + sum;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.01, 0.1, 0.5, 2, 10, 100, 1000})
    void wennerAndSchlumbergerMeetTheImageSeriesOfTwoLayers(double contrast) {
        double k = (contrast - 1) / (contrast + 1);
        for (double h : THICKNESSES) {
            SoilModel soil = SoilModel.twoLayer(100, h, 100 * contrast);
            for (double a : SPACINGS) {
                double wenner = 100 * 2 * a * (series(k, h, a) - series(k, h, 2 * a));
                assertThat(Wenner.of(a).apparentResistivity(soil))
                        .as("Wenner %s m over %s m, %s", a, h, contrast)
                        .isCloseTo(wenner, within(NEAR * wenner));
                double l = a / 5;
                double factor = (a * a - l * l) / (2 * l);
                double schlumberger = 100 * factor * (series(k, h, a - l) - series(k, h, a + l));
                assertThat(new Schlumberger(a, l).apparentResistivity(soil))
                        .as("Schlumberger %s m over %s m, %s", a, h, contrast)
                        .isCloseTo(schlumberger, within(NEAR * schlumberger));
            }
        }
    }

    /** Beyond 1000 by Hankel's asymptotic series (Abramowitz and Stegun 9.2.5, from memory); what is left out is below 1e-12. */
    private static double besselJ0(double x) {
        if (x < 1000) {
            return BesselJ.value(0, x);
        }
        double p = 1 - 9 / (128 * x * x);
        double q = -1 / (8 * x) + 75 / (1024 * x * x * x);
        return Math.sqrt(2 / (Math.PI * x)) * (p * Math.cos(x - Math.PI / 4) - q * Math.sin(x - Math.PI / 4));
    }

    @Test
    void bothWaysToTheBesselFunctionMeet() {
        for (double x : new double[] {1000, 2345.6, 9999}) {
            assertThat(besselJ0(x)).isCloseTo(BesselJ.value(0, x), within(1e-12));
        }
    }

    /** Stefanescu integral of layers in panels far finer than the oscillation, as in {@link StefanescuIntegralTest}. */
    private static double quadrature(SoilModel soil, double r) {
        ResistivityTransform transform = ResistivityTransform.of(soil);
        GaussIntegratorFactory gauss = new GaussIntegratorFactory();
        double end = 14 / soil.thickness(0);
        double sum = 0;
        double a = 0;
        double b = 1e-9;
        while (a < end) {
            GaussIntegrator rule = gauss.legendre(12, a, b);
            sum += rule.integrate(l -> (transform.at(l) - soil.resistivity(0)) * besselJ0(l * r));
            a = b;
            b = Math.min(b * 1.5, b + 2 / r);
        }
        return (soil.resistivity(0) / r + sum) / (2 * Math.PI);
    }

    @Test
    void wennerMeetsTheQuadratureOfThreeToFiveLayers() {
        List<SoilModel> soils = List.of(
                SoilModel.of(List.of(new Layer(1000, 1), new Layer(1, 3), Layer.below(1000))),
                SoilModel.of(List.of(new Layer(1, 1), new Layer(1000, 3), Layer.below(1))),
                SoilModel.of(List.of(new Layer(1000, 1), new Layer(30, 5), Layer.below(1))),
                SoilModel.of(List.of(new Layer(1, 0.5), new Layer(30, 5), Layer.below(1000))),
                SoilModel.of(List.of(new Layer(1000, 1), new Layer(1, 2), new Layer(1000, 4), Layer.below(1))),
                SoilModel.of(List.of(
                        new Layer(1, 0.5), new Layer(1000, 1), new Layer(3, 2), new Layer(300, 8), Layer.below(1))),
                SoilModel.of(List.of(
                        new Layer(1000, 0.5),
                        new Layer(100, 1),
                        new Layer(1, 2),
                        new Layer(10, 20),
                        Layer.below(1000))));
        for (SoilModel soil : soils) {
            for (double a : new double[] {0.1, 1, 10, 100, 300, 1000}) {
                double expected = 4 * Math.PI * a * (quadrature(soil, a) - quadrature(soil, 2 * a));
                assertThat(Wenner.of(a).apparentResistivity(soil))
                        .as("%s at %s m", soil, a)
                        .isCloseTo(expected, within(NEAR * expected));
            }
        }
    }

    @Test
    void atTheEndsStandTheLayersThemselves() {
        for (double contrast : new double[] {0.001, 1000}) {
            SoilModel soil = SoilModel.twoLayer(100, 20, 100 * contrast);
            assertThat(Wenner.of(0.1).apparentResistivity(soil)).isCloseTo(100, within(1e-3));
        }
        assertThat(Wenner.of(1000).apparentResistivity(SoilModel.twoLayer(100, 0.2, 0.1)))
                .isCloseTo(0.1, within(1e-4));
    }
}
