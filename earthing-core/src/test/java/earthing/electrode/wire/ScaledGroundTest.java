package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Electrodes in ground whose resistivities are all greater by a factor: exact solution, the equations are linear in it. */
class ScaledGroundTest {

    private static final SoilModel GROUND = SoilModel.twoLayer(80, 1.4, 300);

    private static List<Bar> bars() {
        List<Bar> bars = new ArrayList<>(BarShapes.rod("main", 0, 0, 0.5, 3, 0.008));
        bars.addAll(BarShapes.wire("main", 0, 0, 4, 0, 0.5, 0.005));
        bars.addAll(BarShapes.rod("other", 2, 3, 0.5, 2, 0.008));
        return bars;
    }

    private static Offset<Double> near(double value) {
        return within(1e-9 * Math.abs(value));
    }

    @Property(tries = 12, seed = "20261125")
    void isWhatIsSolvedAnew(
            @ForAll @DoubleRange(min = 0.01, max = 1000) double factor,
            @ForAll @DoubleRange(min = -3, max = 6) double x,
            @ForAll @DoubleRange(min = -3, max = 6) double y) {
        EarthElectrodes scaled = EarthElectrodes.of(GROUND, bars()).in(GROUND.scaled(factor), factor);
        EarthElectrodes anew = EarthElectrodes.of(GROUND.scaled(factor), bars());
        assertThat(scaled.soil()).isEqualTo(anew.soil());
        for (String name : List.of("main", "other")) {
            double own = anew.resistances().alone(name);
            assertThat(scaled.resistances().alone(name)).isCloseTo(own, near(own));
            assertThat(scaled.evenLeakage(name)).isCloseTo(anew.evenLeakage(name), near(own));
            assertThat(scaled.resistanceWithoutOthers(name)).isCloseTo(anew.resistanceWithoutOthers(name), near(own));
        }
        Map<String, Double> currents = Map.of("main", 100.0, "other", -30.0);
        EnergisedElectrodes field = scaled.carrying(currents);
        EnergisedElectrodes same = anew.carrying(currents);
        double rise = same.greatestPotential();
        assertThat(field.greatestPotential()).isCloseTo(rise, near(rise));
        assertThat(field.potential(x, y, 0)).isCloseTo(same.potential(x, y, 0), within(2e-6 * rise));
        assertThat(field.potential(x, y, 0.7)).isCloseTo(same.potential(x, y, 0.7), near(rise));
        assertThat(field.currentOf("main")).isEqualTo(100);
        double leaked = field.leakage().stream()
                .filter(element -> element.electrode().equals("main"))
                .mapToDouble(ElementLeakage::current)
                .sum();
        assertThat(leaked).isCloseTo(100, near(100));
        Map<String, Double> volts = Map.of("main", 50.0, "other", 20.0);
        double into = anew.atPotentials(volts).currentOf("main");
        assertThat(scaled.atPotentials(volts).currentOf("main")).isCloseTo(into, near(into));
    }

    @Test
    void factorsMultiplyAndTheSolutionIsShared() {
        EarthElectrodes solved = EarthElectrodes.of(GROUND, bars());
        EarthElectrodes twice = solved.in(GROUND.scaled(2), 2).in(GROUND.scaled(6), 3);
        assertThat(twice.scale()).isEqualTo(6);
        assertThat(twice.reference()).isSameAs(solved);
        assertThat(solved.reference()).isSameAs(solved);
        assertThat(twice.resistances().alone("main"))
                .isCloseTo(
                        6 * solved.resistances().alone("main"),
                        near(solved.resistances().alone("main")));
    }

    @Test
    void aSleeveDoesNotFollow() {
        Bar sleeved = BarShapes.rod("main", 0, 0, 0.5, 3, 0.008).get(0).in(0.1, 60);
        EarthElectrodes solved = EarthElectrodes.of(GROUND, List.of(sleeved));
        assertThatThrownBy(() -> solved.in(GROUND.scaled(2), 2)).hasMessageContaining("sleeve");
        assertThatThrownBy(() -> EarthElectrodes.of(GROUND, bars()).in(GROUND, 0))
                .hasMessageContaining("must be > 0");
    }
}
