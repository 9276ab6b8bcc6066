package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.soil.Layer;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SurfaceFieldTest {

    private static final List<SoilModel> SOILS = List.of(
            SoilModel.uniform(100),
            SoilModel.twoLayer(100, 2, 1000),
            SoilModel.twoLayer(1000, 2, 100),
            SoilModel.twoLayer(5000, 0.3, 50),
            SoilModel.twoLayer(30, 1, 20000),
            SoilModel.of(List.of(new Layer(500, 0.8), new Layer(60, 2.5), Layer.below(900))),
            SoilModel.of(List.of(new Layer(50, 0.2), new Layer(2000, 1), new Layer(30, 6), Layer.below(3000))));

    private static List<Bar> rodsAndWire() {
        List<Bar> bars = new ArrayList<>();
        bars.addAll(BarShapes.rodsInLine("main", 0, 0, 3, 3, 0.5, 3, 0.008));
        bars.addAll(BarShapes.wire("main", 0, 0, 6, 0, 0.5, 0.005));
        bars.addAll(BarShapes.rakedRod("cubicle", 1, 4, 0.1, 2.4, 0.4, 1, 0.008));
        return bars;
    }

    private static List<Bar> ringAboutAPole() {
        List<Bar> bars = new ArrayList<>();
        bars.addAll(BarShapes.ring("main", 0, 0, 2, 16, 0.5, 0.005));
        bars.addAll(BarShapes.poleButt("pole", 0, 0, 1.8, 0.3));
        bars.addAll(BarShapes.rod("main", 2, 0, 0, 3, 0.008));
        return bars;
    }

    private static final List<List<Bar>> SITES = List.of(
            rodsAndWire(),
            ringAboutAPole(),
            BarShapes.mat("main", 0, 0, 10, 10, 2, 2, 0.15, 0.005),
            BarShapes.rod("main", 0, 0, 0, 10, 0.01),
            BarShapes.rakedRod("main", 0, 0, 0, 3, 1.2, 0.3, 0.02));

    private static EnergisedElectrodes field(SoilModel soil, List<Bar> bars) {
        EarthElectrodes electrodes = EarthElectrodes.of(soil, bars);
        Map<String, Double> currents = new LinkedHashMap<>();
        electrodes.names().forEach(name -> currents.put(name, currents.isEmpty() ? 100.0 : -30.0));
        return electrodes.carrying(currents);
    }

    @Test
    void tablesAgreeWithTheSumOfAllImagesWithinTheStatedBound() {
        Random random = new Random(20);
        for (SoilModel soil : SOILS) {
            for (List<Bar> bars : SITES) {
                EnergisedElectrodes field = field(soil, bars);
                double rise = bars.stream()
                        .mapToDouble(bar -> Math.abs(field.potentialOf(bar.electrode())))
                        .max()
                        .orElseThrow();
                for (int i = 0; i < 600; i++) {
                    Bar bar = bars.get(random.nextInt(bars.size()));
                    double distance = Math.pow(10, -3 + 6 * random.nextDouble());
                    double angle = 2 * Math.PI * random.nextDouble();
                    double x = bar.x1() + distance * Math.cos(angle);
                    double y = bar.y1() + distance * Math.sin(angle);
                    assertThat(field.potential(x, y, 0))
                            .as("%s, %s at %s, %s", soil, bars.get(0), x, y)
                            .isCloseTo(field.summed(x, y, 0, 0), within(SurfaceField.BOUND * rise));
                }
            }
        }
    }

    @Test
    void theOrderAndTheThreadOfTheQuestionsChangeNothing() {
        EnergisedElectrodes forward = field(SOILS.get(1), rodsAndWire());
        EnergisedElectrodes together = field(SOILS.get(1), rodsAndWire());
        double[] one = IntStream.range(0, 400)
                .mapToDouble(i -> forward.potential(-5 + 0.03 * i, 0.4, 0))
                .toArray();
        double[] other = IntStream.range(0, 400)
                .parallel()
                .mapToDouble(i -> together.potential(-5 + 0.03 * i, 0.4, 0))
                .toArray();
        assertThat(other).containsExactly(one);
        assertThat(forward.potential(-5, 0.4, 0)).isEqualTo(one[0]);
    }

    @Test
    void uniformLeakageOfAWireGivesTheClosedIntegralOnTheSurface() {
        // Uniform leakage of one element: V = ρI/(2πL)·ln((r₁+r₂+L)/(r₁+r₂−L)), the integral of the point source.
        double rho = 250;
        double length = 3;
        double depth = 0.6;
        EnergisedElectrodes field = EarthElectrodes.of(
                        SoilModel.uniform(rho),
                        BarShapes.wire("wire", 0, 0, length, 0, depth, 0.01),
                        new Discretisation(1, 10, 1))
                .carrying(Map.of("wire", 2.0));
        for (double x = -40; x <= 40; x += 0.37) {
            for (double y : new double[] {0, 0.9, 3.1, 22}) {
                double r1 = Math.sqrt(x * x + y * y + depth * depth);
                double r2 = Math.sqrt((x - length) * (x - length) + y * y + depth * depth);
                double exact = rho * 2 / (2 * Math.PI * length) * Math.log1p(2 * length / (r1 + r2 - length));
                assertThat(field.potential(x, y, 0)).isCloseTo(exact, within(1e-6 * exact));
            }
        }
    }

    @Property(seed = "20261125", tries = 100)
    void anImageIsTabulatedWithinTheTheoreticalBound(
            @ForAll @DoubleRange(min = 0.01, max = 5) double depth,
            @ForAll @DoubleRange(min = 0, max = 50) double further,
            @ForAll @DoubleRange(min = 0, max = 300) double r) {
        double squared = depth * depth;
        RadialTable table = new RadialTable(
                squared, squared, 1, (r2, v, room) -> v[0] = 1 / Math.sqrt(r2 + (depth + further) * (depth + further)));
        double exact = 1 / Math.hypot(r, depth + further);
        double found = table.value(r * r);
        if (r > 0.001) {
            double bound = Math.pow(3 + Math.sqrt(8), -9);
            assertThat(found).isCloseTo(exact, within(bound * exact));
            assertThat(table.sum(r * r, 0, new double[] {3})).isCloseTo(3 * found, within(1e-12 * found));
        }
    }

    @Test
    void whatIsTooRoughOrOutOfRangeIsNotTabulated() {
        RadialTable rough = new RadialTable(1, 1, 1, (r2, v, room) -> v[0] = 2 + Math.sin(40 * r2));
        assertThat(rough.value(7)).isNaN();
        assertThat(rough.sum(7, 0, new double[] {1})).isNaN();
        RadialTable inner = new RadialTable(0.01, 0.04, 1, (r2, v, room) -> v[0] = 1);
        assertThat(inner.value(0.02)).isNaN();
        assertThat(inner.value(0.04)).isCloseTo(1, within(1e-12));
        assertThat(inner.value(1e15)).isNaN();
        assertThat(inner.value(Double.NaN)).isNaN();
    }

    @Test
    void worstStepIsThatOfAnExhaustiveSearch() {
        for (SoilModel soil : List.of(SOILS.get(1), SOILS.get(2), SOILS.get(5))) {
            for (List<Bar> bars : SITES) {
                EnergisedElectrodes field = field(soil, bars);
                double found = field.worstStep(1).voltage();
                double greatest = 0;
                for (double x = -5; x <= 12; x += 0.25) {
                    for (double y = -5; y <= 12; y += 0.25) {
                        double here = field.potential(x, y, 0);
                        for (int a = 0; a < 24; a++) {
                            double angle = Math.PI / 12 * a;
                            double there = field.potential(x + Math.cos(angle), y + Math.sin(angle), 0);
                            greatest = Math.max(greatest, Math.abs(here - there));
                        }
                    }
                }
                assertThat(found).as("%s, %s", soil, bars.get(0)).isGreaterThanOrEqualTo(0.999 * greatest);
            }
        }
    }
}
