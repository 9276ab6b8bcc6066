package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PublishedSoundingsTest {

    /**
     * Test tables of an open four-electrode rheometry library (Resistance2LayerTest and Resistance3LayerTest), MN = s,
     * AB = l in line, printed to 1 mΩ. Rows: s, l, printed resistance, then ρ and h in turn.
     */
    private static final double[][] RHEOMETRY = {
        {0.02, 0.04, 21.221, 1.0},
        {0.006, 0.018, 18.568, 0.7},
        {0.01, 0.02, 309.342, 8, 0.01, 1},
        {0.01, 0.02, 339.173, 8, 0.05, 1},
        {0.02, 0.04, 59.108, 3.5, 0.01, 1.35},
        {0.02, 0.04, 95.908, 5, 0.015, 2},
        {0.04, 0.08, 50.132, 7, 0.02, 1},
        {0.04, 0.08, 10.649, 20, 0.001, 1},
        {0.01, 0.03, 30.971, 0.7, 0.005, Double.POSITIVE_INFINITY},
        {0.03, 0.05, 61.860, 0.7, 0.005, Double.POSITIVE_INFINITY},
        {0.01, 0.05, 18.069, 0.7, 0.005, Double.POSITIVE_INFINITY},
        {0.01, 0.03, 16.761, 0.7, 0.01, Double.POSITIVE_INFINITY},
        {0.01, 0.05, 4.047, 0.7, 0.035, Double.POSITIVE_INFINITY},
        {0.01, 0.02, 242.751, 8, 0.005, 2, 0.005, 1},
        {0.01, 0.02, 281.017, 8, 0.005, 5, 0.005, 1},
        {0.01, 0.02, 62.886, 1, 0.005, 8, 0.005, 5},
        {0.007, 0.035, 31.938, 22.19, 0.000154, 1.57, 0.000301, 4.24},
        {0.007, 0.021, 94.584, 22.19, 0.000154, 1.57, 0.000301, 4.24},
        {0.021, 0.035, 142.539, 22.19, 0.000154, 1.57, 0.000301, 4.24},
        {0.02, 0.04, 99.949, 10, 0.005, 5, 0.005, 1},
        {0.02, 0.04, 103.657, 5, 0.005, 10, 0.005, 1},
        {0.02, 0.04, 49.651, 1, 0.005, 5, 0.005, 10},
        {0.01, 0.03, 149.637, 10, 0.003, 1, 0.0001, 10}
    };

    private static SoilModel soil(double[] row, int from) {
        List<Layer> layers = new ArrayList<>();
        for (int i = from; i < row.length; i += 2) {
            layers.add(i + 1 < row.length ? new Layer(row[i], row[i + 1]) : Layer.below(row[i]));
        }
        return SoilModel.of(layers);
    }

    @Test
    void rheometryTablesOfOneTwoAndThreeLayers() {
        for (double[] row : RHEOMETRY) {
            double read = new Schlumberger(row[1] / 2, row[0] / 2).resistance(soil(row, 3));
            // One unit of the last digit: the series behind the table were cut off.
            assertThat(read).as("printed %s", row[2]).isCloseTo(row[2], within(1e-3));
        }
    }

    @Test
    void sevenLayerSchlumbergerSounding() {
        // Seven-layer model of an open teaching notebook on direct-current soundings. Its printed curve is 2.0 … 2.3
        // Ω·m
        // low throughout; the values here were confirmed by an independent multi-precision integration.
        SoilModel soil = soil(new double[] {400, 8, 50, 8, 400, 4, 200, 10, 2000, 10, 20, 10, 2000}, 0);
        double[] printed = {384.32370085624325, 187.08128724614207, 442.19822724869465};
        double[][] array = {{5, 1}, {20, 1}, {400, 30}};
        for (int i = 0; i < 3; i++) {
            double rho = new Schlumberger(array[i][0], array[i][1]).apparentResistivity(soil);
            assertThat(rho - printed[i]).isBetween(1.9, 2.4);
        }
    }

    @Test
    void wennerOrdinatesOfTwoLayerCurvesAfterSunde1949() {
        double[] ratio = {0.5, 1, 2, 4};
        double[][] expected = {
            {0.964558, 0.829017, 0.558163, 0.38168},
            {1.041171, 1.210343, 1.639508, 2.190484},
            {1.093885, 1.504459, 2.779921, 5.545197}
        };
        double[] lower = {100.0 / 3, 300, Double.POSITIVE_INFINITY};
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < 4; i++) {
                SoilModel soil = SoilModel.twoLayer(100, 1 / ratio[i], lower[k]);
                assertThat(Wenner.of(1).apparentResistivity(soil) / 100).isCloseTo(expected[k][i], within(1e-6));
            }
        }
    }

    @Test
    void asymptotesOverAnInsulatorAfterTelford() {
        SoilModel soil = SoilModel.twoLayer(1, 1, Double.POSITIVE_INFINITY);
        assertThat(Wenner.of(50).apparentResistivity(soil) / 50).isCloseTo(2 * Math.log(2), within(1e-6));
        assertThat(new Schlumberger(50, 0.01).apparentResistivity(soil) / 50).isCloseTo(1, within(1e-6));
    }

    @Test
    void pointSourceOnTwoLayersSeriesAndIntegral() {
        double[] r = {1, 5, 20};
        double[][] expected = {{11.99736, 0.8874324, 0.1607842}, {29.25823, 13.71209, 6.017301}};
        double[] lower = {20, 1000};
        for (int k = 0; k < 2; k++) {
            for (int i = 0; i < 3; i++) {
                SoilModel soil = SoilModel.twoLayer(100, 2, lower[k]);
                assertThat(SurfacePotential.of(soil).at(r[i])).isCloseTo(expected[k][i], within(1e-6 * expected[k][i]));
                assertThat(PointSource.of(soil).potential(r[i], 0, 0))
                        .isCloseTo(expected[k][i], within(1e-6 * expected[k][i]));
            }
        }
        assertThat(PointSource.of(SoilModel.uniform(100)).potential(3, 1, 0))
                .isCloseTo(5.032921210448704, within(1e-12));
    }

    @Test
    void wennerWithProbeDepthIeee81() {
        double[] depth = {0.02, 0.05, 0.1, 0.2, 0.3, 0.5};
        double[] ratio = {1.0007, 1.004358, 1.01723, 1.065886, 1.138201, 1.315974};
        for (int i = 0; i < depth.length; i++) {
            Wenner array = new Wenner(1, depth[i]);
            assertThat(array.geometricFactor() / (2 * Math.PI)).isCloseTo(ratio[i], within(1e-6));
            assertThat(array.apparentResistivity(SoilModel.uniform(100))).isCloseTo(100, within(1e-9));
        }
        assertThat(Wenner.driven(3, 0.3).probeDepth()).isCloseTo(0.2, within(1e-15));
    }

    @Test
    void ghoshFiltersOf1971() {
        // Published digital filters as an outside check of the whole chain; their design error is about 0.5 %.
        double[] schlumberger = {0.0225, -0.0499, 0.1064, 0.1854, 1.972, -1.5716, 0.4018, -0.0814, 0.0148};
        ResistivityTransform transform = ResistivityTransform.of(SoilModel.twoLayer(100, 5, 20));
        for (double l : new double[] {1, 2, 5, 10, 20, 50, 100}) {
            double filtered = 0;
            for (int j = 0; j < schlumberger.length; j++) {
                filtered += schlumberger[j] * transform.at(Math.pow(10, (j - 3) / 3.0) / (1.05 * l));
            }
            double rho = new Schlumberger(l, l / 1000).apparentResistivity(SoilModel.twoLayer(100, 5, 20));
            assertThat(filtered).isCloseTo(rho, within(0.006 * rho));
        }
    }
}
