package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.soil.Layer;
import earthing.soil.PointSource;
import earthing.soil.SoilModel;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class PairIntegralTest {

    private static final List<SoilModel> SOILS = List.of(
            SoilModel.uniform(100),
            SoilModel.twoLayer(100, 2.5, 1000),
            SoilModel.twoLayer(1000, 2.5, 100),
            SoilModel.of(List.of(new Layer(500, 2.5), new Layer(60, 2), Layer.below(900))));

    @Property(seed = "20261125", tries = 100)
    void meanOfSkewElementsIsTheQuadratureOfThePointSource(
            @ForAll @DoubleRange(min = 1, max = 60) double apart,
            @ForAll @DoubleRange(min = 0, max = 1.5) double rake,
            @ForAll @DoubleRange(min = 0, max = 6.2) double azimuth,
            @ForAll @DoubleRange(min = 0.1, max = 1) double length) {
        double x = 0.2 + apart * Math.cos(0.3);
        double y = apart * Math.sin(0.3);
        Bar one = BarShapes.rakedRod("one", 0, 0, 0.4, 0.8, 1, 0, 0.001).get(0);
        Bar other = BarShapes.rakedRod("other", x, y, 0.7, length, rake, azimuth, 0.001)
                .get(0);
        for (SoilModel soil : SOILS) {
            PointSource ground = PointSource.of(soil);
            Mesh mesh = Mesh.of(soil, List.of(one, other), new Discretisation(1, 10, 1, Double.POSITIVE_INFINITY));
            assertThat(mesh.size).isEqualTo(2);
            double exact = quadrature(ground, one, other);
            assertThat(new PairIntegral(mesh, ground).mean(0, 1, new ImageTerms()))
                    .as("%s", soil)
                    .isCloseTo(exact, within(1e-5 * exact));
        }
    }

    /** Counted by the machine itself, all kernels and tables once made: the loop over pairs takes nothing of the heap. */
    @Test
    void noPairTakesOfTheHeap() {
        com.sun.management.ThreadMXBean counter = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long own = Thread.currentThread().getId();
        List<Bar> bars = new ArrayList<>(BarShapes.mat("mat", 0, 0, 6, 6, 6, 6, 0.6, 0.005));
        bars.addAll(BarShapes.rod("rod", 9, 0, 0, 6, 0.008));
        bars.addAll(BarShapes.rakedRod("raked", 0, 9, 0.2, 4, 0.5, 1, 0.008));
        for (SoilModel soil : SOILS) {
            Mesh mesh = Mesh.of(soil, bars, Discretisation.STANDARD);
            PairIntegral integral = new PairIntegral(mesh, PointSource.of(soil));
            ImageTerms room = new ImageTerms();
            long taken = 0;
            for (int round = 0; round < 2; round++) {
                long before = counter.getThreadAllocatedBytes(own);
                for (int i = 0; i < mesh.size; i++) {
                    for (int j = 0; j <= i; j++) {
                        integral.mean(i, j, room);
                    }
                }
                taken = counter.getThreadAllocatedBytes(own) - before;
            }
            // One object a pair would be a megabyte; the rest belongs to the counter.
            assertThat(taken).as("%s elements in %s", mesh.size, soil).isLessThan(20_000);
        }
    }

    /** Four pieces of each bar with eight Gauss points each. */
    private static double quadrature(PointSource ground, Bar one, Bar other) {
        double sum = 0;
        for (int i = 0; i < 32; i++) {
            double s = place(i);
            for (int j = 0; j < 32; j++) {
                double t = place(j);
                double dx = one.x1() + s * (one.x2() - one.x1()) - other.x1() - t * (other.x2() - other.x1());
                double dy = one.y1() + s * (one.y2() - one.y1()) - other.y1() - t * (other.y2() - other.y1());
                double depth = one.depth1() + s * (one.depth2() - one.depth1());
                double otherDepth = other.depth1() + t * (other.depth2() - other.depth1());
                double weight = GaussRule.weights(8)[i % 8] * GaussRule.weights(8)[j % 8] / 16;
                sum += weight * ground.potential(Math.hypot(dx, dy), depth, otherDepth);
            }
        }
        return sum;
    }

    private static double place(int i) {
        int piece = i / 8;
        return (piece + 0.5 + GaussRule.nodes(8)[i % 8] / 2) / 4;
    }
}
