package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Images of a point source held to the series of Tagg (1964) and Sunde (1949), to symmetry and to the flow at a boundary. */
class PointImagesTest {

    private static final double H = 1.5;
    private static final double RHO = 100;

    private static double inverse(double r, double z) {
        return 1 / Math.hypot(r, z);
    }

    /** The series term by term, with so many terms that what is left out is below rounding. From memory. */
    private static double series(double k, double r, double z, double d) {
        double below = RHO * (1 + k) / (1 - k);
        double sum = 0;
        double power = 1;
        for (int n = 0; n == 0 || Math.abs(power) > 1e-16; n++, power *= k) {
            double shift = 2 * n * H;
            if (z <= H && d <= H) {
                sum += power * (inverse(r, shift + z - d) + inverse(r, shift + z + d));
                sum += n == 0 ? 0 : power * (inverse(r, shift - z + d) + inverse(r, shift - z - d));
            } else if (z <= H) {
                sum += (1 + k) * power * (inverse(r, shift + d - z) + inverse(r, shift + d + z));
            } else {
                sum += n == 0 ? inverse(r, z - d) - k * inverse(r, z + d - 2 * H) : 0;
                sum += (1 - k * k) * power * inverse(r, z + d + shift);
            }
        }
        return (z <= H ? RHO : below) / (4 * Math.PI) * sum;
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.98, -0.7, -0.1, 0.3, 0.9, 0.98})
    void twoLayersAreTheSeriesWithinTheBoundThatIsTold(double k) {
        PointSource source = PointSource.of(SoilModel.twoLayer(RHO, H, RHO * (1 + k) / (1 - k)));
        double[][] pairs = {{0, 0}, {0.3, 1.2}, {1.2, 0.3}, {0, 2}, {0.8, 3}, {1.5, 1.5}, {2, 2.5}, {4, 2}};
        for (double[] depths : pairs) {
            double z = Math.min(depths[0], depths[1]);
            double d = Math.max(depths[0], depths[1]);
            ImageSet images = source.images(z <= H ? 0 : 1, d <= H ? 0 : 1);
            assertThat(images.bound()).isBetween(0.0, 1e-6 * RHO);
            for (double r : new double[] {0.05, 1, 7, 100}) {
                double expected = series(k, r, z, d);
                assertThat(source.potential(r, depths[0], depths[1]))
                        .as("r %s, depths %s and %s", r, z, d)
                        .isCloseTo(expected, within(images.bound() + 1e-12 * expected));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"-0.9, 0", "-0.9, 1", "0.4, 0", "0.4, 1", "0.95, 0", "0.95, 1"})
    void aPointOnTheSurfaceOfTwoLayers(double k, int layer) {
        PointSource source = PointSource.of(SoilModel.twoLayer(RHO, H, RHO * (1 + k) / (1 - k)));
        ImageSet images = source.surfaceImages(layer);
        double depth = layer == 0 ? 0.9 : 3;
        for (double r : new double[] {0.2, 2, 30}) {
            double expected = series(k, r, 0, depth);
            assertThat(images.potential(r, 0, depth)).isCloseTo(expected, within(images.bound() + 1e-12 * expected));
        }
        assertThat(images.size()).isLessThan(source.images(0, layer).size());
        assertThat(images.bound()).isBetween(0.0, 1e-6 * RHO);
        assertThat(source.surfaceImages(layer)).isSameAs(images);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void aPointOnTheSurfaceOfThreeLayersIsThatOfNoDepth(int layer) {
        SoilModel soil = SoilModel.of(List.of(new Layer(100, 1), new Layer(30, 2), Layer.below(300)));
        PointSource source = PointSource.of(soil);
        ImageSet images = source.surfaceImages(layer);
        double depth = soil.top(layer) + 0.4;
        for (double r : new double[] {0.3, 3, 40}) {
            double expected = source.images(0, layer).potential(r, 0, depth);
            assertThat(images.potential(r, 0, depth)).isCloseTo(expected, within(1e-6 * expected));
        }
        assertThat(images.bound()).isGreaterThan(0);
        assertThat(images.size()).isLessThan(source.images(0, layer).size());
        assertThat(source.images(0, layer)).isSameAs(source.images(0, layer));
    }

    @ParameterizedTest
    @CsvSource({"0.3, 1", "0.3, 3", "0.3, 6", "2, 1", "2, 3", "2, 6", "5, 1", "5, 3", "5, 6", "8, 1", "8, 3", "8, 6"})
    void potentialAndFlowPassABoundary(double sourceDepth, double boundary) {
        // Four layers: only there a layer between source and point has others above and below both.
        SoilModel soil = SoilModel.of(List.of(new Layer(100, 1), new Layer(30, 2), new Layer(200, 3), Layer.below(50)));
        PointSource source = PointSource.of(soil);
        double step = 1e-3;
        for (double r : new double[] {0.7, 4}) {
            double[] v = new double[6];
            for (int i = 0; i < 6; i++) {
                v[i] = source.potential(r, sourceDepth, boundary + (i - 2.5) * step);
            }
            // To the boundary from either side by a parabola through three points, half a step to the nearest.
            double above = (15 * v[2] - 10 * v[1] + 3 * v[0]) / 8;
            double below = (15 * v[3] - 10 * v[4] + 3 * v[5]) / 8;
            assertThat(above).isCloseTo(below, within(1e-6 * above));
            double flowAbove = (2 * v[2] - 3 * v[1] + v[0]) / step / soil.resistivityAt(boundary - step);
            double flowBelow = (-2 * v[3] + 3 * v[4] - v[5]) / step / soil.resistivityAt(boundary + step);
            assertThat(flowAbove).isCloseTo(flowBelow, within(2e-3 * Math.abs(flowAbove) + 1e-7));
        }
    }
}
