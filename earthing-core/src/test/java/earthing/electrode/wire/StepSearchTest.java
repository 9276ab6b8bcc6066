package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The worst pace where a search by single moves ends too early; a dense search in all directions stands against it. */
class StepSearchTest {

    /** Three rods, and a stay's anchor that comes out of the ground: one foot stands on the sharp top over it. */
    @Test
    void aStepFromTheSharpTopOverAnAnchorIsFound() {
        double rake = Math.atan2(5, 8.8);
        List<Bar> bars = new ArrayList<>(BarShapes.rodsInLine("rods", 0, 0, 3, 3, 0.5, 3, 0.008));
        bars.addAll(BarShapes.wire("rods", 0, 0, 6, 0, 0.5, 0.005));
        bars.addAll(BarShapes.rakedRod("anchor", -5, 0, 0, 2, rake, Math.PI, 0.0095));
        bars.addAll(BarShapes.roundPlate("anchor", -5 - 2 * Math.sin(rake), 0, 2 * Math.cos(rake), 0.2, rake, Math.PI));
        for (double anchor : new double[] {0.2, 0.35, 0.5}) {
            EnergisedElectrodes field =
                    EarthElectrodes.of(SoilModel.uniform(1), bars).carrying(Map.of("rods", 1.0, "anchor", anchor));
            assertThat(field.worstStep(1).voltage())
                    .as("anchor %s", anchor)
                    .isGreaterThanOrEqualTo(0.9995 * greatestStep(field, -7, 8, 2));
        }
    }

    /** Two rods and a wire in ground that is better below: the worst pace lies aslant, and a ridge leads to it. */
    @Test
    void theWorstPaceAtTheEndOfARidgeIsFound() {
        List<Bar> bars = new ArrayList<>(BarShapes.rod("main", 0, 0, 0.6, 3, 0.008));
        bars.addAll(BarShapes.rod("main", 6, 0, 0.6, 3, 0.008));
        bars.addAll(BarShapes.wire("main", 0, 0, 6, 0, 0.6, 0.005));
        for (double below : new double[] {20, 30, 50}) {
            EnergisedElectrodes field = EarthElectrodes.of(SoilModel.twoLayer(180, 1.2, below), bars)
                    .carrying(Map.of("main", 100.0));
            assertThat(field.worstStep(1).voltage())
                    .as("below %s", below)
                    .isGreaterThanOrEqualTo(0.9999 * greatestStep(field, -2, 3, 2.5));
        }
    }

    /** All paces of 1 m, 48 directions from places an eighth of a metre apart. */
    private static double greatestStep(EnergisedElectrodes field, double west, double east, double across) {
        double greatest = 0;
        for (double x = west; x <= east; x += 0.125) {
            for (double y = -across; y <= across; y += 0.125) {
                double here = field.potential(x, y, 0);
                for (int a = 0; a < 48; a++) {
                    double angle = Math.PI / 24 * a;
                    double there = field.potential(x + Math.cos(angle), y + Math.sin(angle), 0);
                    greatest = Math.max(greatest, Math.abs(here - there));
                }
            }
        }
        return greatest;
    }
}
