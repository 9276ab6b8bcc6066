package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.EarthElectrodes;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class UnitFieldsTest {

    private static final EarthElectrodes SOLVED = EarthElectrodes.of(SoilModel.twoLayer(80, 1.4, 300), bars());

    private static List<Bar> bars() {
        List<Bar> bars = new ArrayList<>(BarShapes.rod("main", 0, 0, 0.5, 3, 0.008));
        bars.addAll(BarShapes.rod("other", 2, 0, 0.5, 2, 0.008));
        return bars;
    }

    /** Metal below, between and above the potentials of the ground, between electrodes of either sign. */
    @Property(tries = 60, seed = "20261125")
    void touchIsThatOfASearchForThisVery(
            @ForAll @DoubleRange(min = -4000, max = 4000) double metal,
            @ForAll @DoubleRange(min = -1, max = 3) double x,
            @ForAll @DoubleRange(min = -100, max = 100) double other) {
        Map<String, Double> currents = Map.of("main", 100.0, "other", other);
        double found = new UnitFields(new EarthCache()).of(SOLVED, currents).worstTouch(x, 1, metal);
        double searched = SOLVED.carrying(currents).worstTouch(x, 0, 1, metal).voltage();
        assertThat(found).isGreaterThanOrEqualTo(searched * (1 - 1e-6));
        assertThat(found).isCloseTo(searched, within(0.02 * searched));
    }

    @Property(tries = 20, seed = "20261125")
    void followsTheResistivityOfTheGround(@ForAll @DoubleRange(min = 0.01, max = 100) double factor) {
        Map<String, Double> currents = Map.of("main", 100.0);
        EarthElectrodes scaled = SOLVED.in(SOLVED.soil().scaled(factor), factor);
        UnitFields fields = new UnitFields(new EarthCache());
        double rise = SOLVED.resistances().alone("main") * 100;
        double touch = fields.of(SOLVED, currents).worstTouch(0, 1, rise);
        assertThat(fields.of(scaled, currents).worstTouch(0, 1, factor * rise))
                .isCloseTo(factor * touch, within(1e-9 * factor * touch));
        double step = fields.of(SOLVED, currents).worstStep();
        assertThat(fields.of(scaled, currents).worstStep()).isCloseTo(factor * step, within(1e-9 * factor * step));
    }
}
