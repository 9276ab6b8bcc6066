package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where the search for the worst place ends does not depend on where the site lies or how it was numbered. */
class WorstPlaceTest {

    private static final SoilModel TWO = SoilModel.twoLayer(100, 2, 600);

    /** Unlike in every direction, with a part across and a raked rod. */
    private static List<Bar> site(double east, double north) {
        List<Bar> bars = new ArrayList<>();
        bars.addAll(BarShapes.rod("main", east, north, 0.5, 3, 0.008));
        bars.addAll(BarShapes.wire("main", east, north, east + 3, north + 1, 0.5, 0.005));
        bars.addAll(BarShapes.rod("cubicle", east + 1, north + 4, 0.1, 2.4, 0.008));
        return bars;
    }

    private static EnergisedElectrodes field(double east, double north) {
        return EarthElectrodes.of(TWO, site(east, north)).carrying(Map.of("main", 100.0, "cubicle", 7.0));
    }

    @Test
    void aSiteElsewhereHasTheSameVoltagesAtTheSamePlaces() {
        EnergisedElectrodes here = field(0, 0);
        EnergisedElectrodes there = field(7, -11);
        double volts = here.potentialOf("main");
        assertThat(there.potential(7.4, -10.3, 0)).isCloseTo(here.potential(0.4, 0.7, 0), within(1e-6 * volts));
        SurfaceVoltage touch = here.worstTouch(0.3, 0.2, 1, volts);
        SurfaceVoltage moved = there.worstTouch(7.3, -10.8, 1, volts);
        assertThat(moved.voltage()).isCloseTo(touch.voltage(), within(1e-6 * volts));
        assertThat(moved.x1() - 7).isCloseTo(touch.x1(), within(0.01));
        assertThat(moved.y1() + 11).isCloseTo(touch.y1(), within(0.01));
        SurfaceVoltage step = here.worstStep(1);
        assertThat(there.worstStep(1).voltage()).isCloseTo(step.voltage(), within(1e-4 * step.voltage()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 1.25})
    void worstTouchIsThatOfAnExhaustiveSearchWithinReach(double reach) {
        EnergisedElectrodes field = field(2, 3);
        for (double metal : new double[] {field.potentialOf("main"), field.potentialOf("cubicle"), 0}) {
            double greatest = 0;
            for (double x = -reach; x <= reach; x += reach / 40) {
                for (double y = -reach; y <= reach; y += reach / 40) {
                    if (Math.hypot(x, y) <= reach) {
                        greatest = Math.max(greatest, Math.abs(metal - field.potential(2.2 + x, 3.3 + y, 0)));
                    }
                }
            }
            SurfaceVoltage found = field.worstTouch(2.2, 3.3, reach, metal);
            assertThat(found.voltage()).isGreaterThanOrEqualTo(greatest * (1 - 1e-6));
            double feet = Math.abs(metal - field.potential(found.x1(), found.y1(), 0));
            assertThat(found.voltage()).isCloseTo(feet, within(1e-9 * feet));
            assertThat(Math.hypot(found.x1() - 2.2, found.y1() - 3.3)).isLessThanOrEqualTo(reach * (1 + 1e-9));
        }
    }

    @Test
    void theHigherOfTwoTopsWithinReachIsFoundThoughTheLowerIsNearer() {
        // A part without voltage between two rods: uphill from it lies the nearer one, that of less potential.
        List<Bar> bars = new ArrayList<>();
        bars.addAll(BarShapes.rod("low", -0.25, 0, 0.1, 2, 0.008));
        bars.addAll(BarShapes.rod("high", 0.8, 0, 0.1, 2, 0.008));
        EnergisedElectrodes field =
                EarthElectrodes.of(SoilModel.uniform(100), bars).atPotentials(Map.of("low", 100.0, "high", 130.0));
        assertThat(field.potential(-0.03, 0, 0)).isGreaterThan(field.potential(0.03, 0, 0));
        SurfaceVoltage found = field.worstTouch(0, 0, 1, 0);
        assertThat(found.x1()).isCloseTo(0.8, within(0.05));
        assertThat(found.voltage()).isGreaterThanOrEqualTo(field.potential(0.8, 0, 0));
    }

    @ParameterizedTest
    @CsvSource({"0.31, 0.17", "-0.43, 0.39", "0.11, -0.62", "-0.07, -0.05"})
    void theTopAboveARodThatEndsAtTheSurfaceIsFoundBetweenTheRings(double x, double y) {
        // Metal without voltage beside two rods of another earth, one of which lies deeper and at the reach.
        List<Bar> bars = new ArrayList<>();
        bars.addAll(BarShapes.rod("other", x, y, 0, 2, 0.008));
        bars.addAll(BarShapes.rod("other", -x, -y, 0.4, 2, 0.008));
        bars.addAll(BarShapes.rod("far", 1.1, 0.2, 0, 2, 0.008));
        for (SoilModel soil : List.of(SoilModel.uniform(100), TWO)) {
            EnergisedElectrodes field =
                    EarthElectrodes.of(soil, bars).atPotentials(Map.of("other", 400.0, "far", 500.0));
            SurfaceVoltage found = field.worstTouch(0, 0, 1, 0);
            assertThat(found.voltage()).isGreaterThanOrEqualTo(greatest(field, 0.004) * (1 - 1e-6));
            assertThat(Math.hypot(found.x1(), found.y1())).isLessThanOrEqualTo(1 + 1e-9);
            assertThat(Math.hypot(found.x1() - x, found.y1() - y)).isLessThan(0.02);
        }
    }

    @ParameterizedTest
    @CsvSource({"-0.9, -0.13, 0.4, 0.47", "0.29, -2, 0.35, 2", "0.6, 0.1, 0.1, 0.65"})
    void theRingsFindTheTopAboveAShallowWireWithinThreePerMille(double x1, double y1, double x2, double y2) {
        List<Bar> bars = List.of(new Bar("wire", x1, y1, 0.02, x2, y2, 0.02, 0.004));
        EnergisedElectrodes field = EarthElectrodes.of(TWO, bars).atPotentials(Map.of("wire", 400.0));
        SurfaceVoltage found = field.worstTouch(0, 0, 1, 0);
        assertThat(found.voltage()).isGreaterThanOrEqualTo(greatest(field, 0.01) * (1 - 3e-3));
    }

    private static double greatest(EnergisedElectrodes field, double apart) {
        double greatest = 0;
        for (double x = -1; x <= 1; x += apart) {
            for (double y = -Math.sqrt(1 - x * x); y * y + x * x <= 1; y += apart) {
                greatest = Math.max(greatest, Math.abs(field.potential(x, y, 0)));
            }
        }
        return greatest;
    }

    @Test
    void onARectangleTheWorstOfItsPlacesCountsSidesIncluded() {
        EnergisedElectrodes field = field(0, 0);
        double worst = 0;
        for (double metal : new double[] {field.potentialOf("main"), 0}) {
            worst = 0;
            for (double x : new double[] {0.5, 1.0, 1.5}) {
                for (double y : new double[] {-2, -1, 0}) {
                    worst = Math.max(worst, Math.abs(metal - field.potential(x, y, 0)));
                }
            }
            assertThat(field.worstTouchOn(1, -1, 1, 2, 3, metal)).isCloseTo(worst, within(1e-9 * worst));
        }
        // The ground falls with the distance from the electrodes: without voltage on the metal the nearest corner is
        // worst.
        assertThat(worst).isCloseTo(field.potential(0.5, 0, 0), within(1e-9 * worst));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> field.worstTouchOn(1, -1, 1, 2, 1, 0))
                .withMessageContaining("have 1");
        assertThat(field.worstTouchOn(1, -1, 1, 2, 2, 0)).isCloseTo(worst, within(1e-9 * worst));
    }

    @Test
    void theReachIsAPositiveLength() {
        EnergisedElectrodes field = field(0, 0);
        for (double bad : new double[] {0, -1, Double.NaN}) {
            assertThatIllegalArgumentException().isThrownBy(() -> field.worstTouch(0, 0, bad, 1));
        }
    }

    @Test
    void aBarLeaksToAPlaceAsTheClosedIntegralOfItsTube() {
        // ∫ dl/√(l² + d² + a² + t²) = asinh((l2)/D) − asinh((l1)/D) along a bar of 4 m.
        Bar bar = new Bar("wire", 1, 2, 0.5, 5, 2, 0.5, 0.01);
        double[][] places = {{3, 2.7, 0.5, 0.02}, {0, 2, 0.5, 0.3}, {6, 1, 1.5, 0}, {2, 2, 0.9, 0.05}};
        for (double[] place : places) {
            double across = Math.sqrt(
                    Math.pow(place[1] - 2, 2) + Math.pow(place[2] - 0.5, 2) + 0.01 * 0.01 + place[3] * place[3]);
            double a = (5 - place[0]) / across;
            double b = (1 - place[0]) / across;
            double expected = Math.log(a + Math.sqrt(a * a + 1)) - Math.log(b + Math.sqrt(b * b + 1));
            assertThat(bar.evenPotential(place[0], place[1], place[2], place[3]))
                    .isCloseTo(expected, within(1e-9 * expected));
        }
        assertThat(bar.nearestTo(new Bar("wire", 4, 4, 0.5, 4, 9, 0.5, 0.01))).isCloseTo(0.75, within(1e-12));
        assertThat(bar.distance(new Bar("wire", 4, 4, 0.5, 4, 9, 0.5, 0.01))).isCloseTo(2, within(1e-12));
    }
}
