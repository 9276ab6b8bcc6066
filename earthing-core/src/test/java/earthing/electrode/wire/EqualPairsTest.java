package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.soil.Layer;
import earthing.soil.PointSource;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class EqualPairsTest {

    private static final List<SoilModel> SOILS = List.of(
            SoilModel.uniform(100),
            SoilModel.of(List.of(new Layer(100, 1.2), Layer.below(900))),
            SoilModel.of(List.of(new Layer(300, 0.5), new Layer(60, 1.5), Layer.below(2000))));

    /** Wires level, sloping, raked and upright, none like another. */
    private static List<Bar> irregular() {
        List<Bar> bars = new ArrayList<>();
        bars.add(new Bar("a", 0, 0, 0.4, 3.1, 0.7, 0.4, 0.005));
        bars.add(new Bar("a", -1, 2, 0.5, -4.3, 3.9, 0.9, 0.004));
        bars.add(new Bar("b", 7, 1, 0.3, 7, 1, 3.3, 0.008));
        bars.addAll(BarShapes.rakedRod("c", 1, -6, 0.2, 3, 0.4, 0.7, 0.008));
        return bars;
    }

    private static List<Bar> turned(List<Bar> bars, double angle, boolean mirrored, double east, double north) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double side = mirrored ? -1 : 1;
        return bars.stream()
                .map(b -> new Bar(
                        b.electrode(),
                        east + cos * b.x1() - sin * side * b.y1(),
                        north + sin * b.x1() + cos * side * b.y1(),
                        b.depth1(),
                        east + cos * b.x2() - sin * side * b.y2(),
                        north + sin * b.x2() + cos * side * b.y2(),
                        b.depth2(),
                        b.radius()))
                .toList();
    }

    private static long kinds(int[] first) {
        return Arrays.stream(first).distinct().count();
    }

    /** Every pair has, by its own integral, the mean of the first of its kind: symmetry of level layers, no outside source. */
    @Test
    void pairsOfAKindHaveOneMean() {
        List<Bar> bars = new ArrayList<>(BarShapes.mat("mat", -3, -4, 4, 4, 3, 3, 0.6, 0.005));
        bars.addAll(irregular());
        bars.addAll(turned(irregular(), 0.6, true, 30, -20));
        for (SoilModel soil : SOILS) {
            Mesh mesh = Mesh.of(soil, bars, Discretisation.STANDARD);
            PairIntegral integral = new PairIntegral(mesh, PointSource.of(soil));
            ImageTerms room = new ImageTerms();
            int[] first = EqualPairs.of(mesh);
            double[] mean = new double[first.length];
            int place = 0;
            double worst = 0;
            for (int i = 0; i < mesh.size; i++) {
                for (int j = 0; j <= i; j++) {
                    mean[place] = integral.mean(i, j, room);
                    worst = Math.max(worst, Math.abs(mean[place] / mean[first[place]] - 1));
                    place++;
                }
            }
            // The two ways round of one pair differ by as much.
            assertThat(worst).as("%s", soil).isLessThan(2e-6);
            assertThat(kinds(first)).isLessThan(place * 2 / 3);
        }
    }

    @Test
    void noTwoPairsOfIrregularWiresAreTakenForOne() {
        Mesh mesh = Mesh.of(SOILS.get(0), irregular(), Discretisation.STANDARD);
        int[] first = EqualPairs.of(mesh);
        PairIntegral integral = new PairIntegral(mesh, PointSource.of(SOILS.get(0)));
        ImageTerms room = new ImageTerms();
        int place = 0;
        for (int i = 0; i < mesh.size; i++) {
            for (int j = 0; j <= i; j++) {
                int like = first[place];
                int row = (int) ((Math.sqrt(8.0 * like + 1) - 1) / 2);
                assertThat(integral.mean(i, j, room))
                        .isCloseTo(integral.mean(row, like - row * (row + 1) / 2, room), within(1e-9));
                place++;
            }
        }
        // Between different bars nothing repeats itself here; along a bar little does.
        assertThat(kinds(first)).isGreaterThan(place * 9 / 10);
    }

    @Test
    void aTurnedAndMirroredElectrodeAddsNoKindOfItsOwn() {
        Mesh once = Mesh.of(SOILS.get(1), irregular(), Discretisation.STANDARD);
        List<Bar> twice = new ArrayList<>(irregular());
        twice.addAll(turned(irregular(), 2.1, true, 500, 300));
        Mesh both = Mesh.of(SOILS.get(1), twice, Discretisation.STANDARD);
        int[] first = EqualPairs.of(both);
        int n = once.size;
        assertThat(both.size).isEqualTo(2 * n);
        int own = n * (n + 1) / 2;
        for (int i = n; i < 2 * n; i++) {
            for (int j = n; j <= i; j++) {
                assertThat(first[i * (i + 1) / 2 + j]).as("%s %s", i, j).isLessThan(own);
            }
        }
    }

    /** One rod of one millimetre more is another rod; 0.1 nm is none. */
    @Test
    void aMillimetreCountsAndATenthOfANanometreDoesNot() {
        for (double more : new double[] {1e-3, 1e-10}) {
            List<Bar> bars = List.of(
                    new Bar("a", 0, 0, 0.5, 0, 0, 2.5, 0.008), new Bar("b", 9, 0, 0.5, 9, 0, 2.5 + more, 0.008));
            Mesh mesh = Mesh.of(SOILS.get(0), bars, Discretisation.STANDARD);
            int n = mesh.size / 2;
            int[] first = EqualPairs.of(mesh);
            int last = 2 * n - 1;
            boolean same = first[last * (last + 1) / 2 + last] < n * (n + 1) / 2;
            assertThat(same).isEqualTo(more < 1e-6);
        }
    }

    @Test
    void tooManyElementsAreNotCompared() {
        List<Bar> bars = BarShapes.mat("mat", 0, 0, 30, 30, 8, 8, 0.6, 0.005);
        Mesh mesh = Mesh.of(SOILS.get(0), bars, Discretisation.STANDARD);
        assertThat(mesh.size).isGreaterThan(1000);
        assertThat(EqualPairs.of(mesh)).isEmpty();
    }
}
