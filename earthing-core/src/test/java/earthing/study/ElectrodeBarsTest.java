package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.wire.Bar;
import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The metal that goes into the computation is that of the site file: plane geometry by hand, place at 2 m, 3 m. */
class ElectrodeBarsTest {

    private static final String SITE = """
            file-version: 1
            site: {name: shapes, stage: design}
            system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
            electrodes:
              - name: main
                at: {x: 2 m, y: 3 m}
                %s
            """;

    private static List<Bar> bars(String shape) throws MissingInput {
        Site site = DemoSite.parse(SITE.formatted(shape));
        return ElectrodeBars.of(site.electrodes().get(0), site.pole(), Bound.NOMINAL, new Inputs());
    }

    private static double least(List<Bar> bars, ToDoubleFunction<Bar> of) {
        return bars.stream().mapToDouble(of).min().orElseThrow();
    }

    private static double most(List<Bar> bars, ToDoubleFunction<Bar> of) {
        return bars.stream().mapToDouble(of).max().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // shape | length of all metal | west | east | south | north | upper and lower end | least and greatest
                // diameter, mm
                "rod: {length: 2.4 m, diameter: 16 mm} | 2.4 | 2 | 2 | 3 | 3 | 0 | 2.4 | 16 | 16",
                "rod: {length: 2.4 m, diameter: 16 mm, top-depth: 0.5 m} | 2.4 | 2 | 2 | 3 | 3 | 0.5 | 2.9 | 16 | 16",
                "rods-in-line: {count: 3, spacing: 2 m, length: 1.5 m, diameter: 14 mm} | 4.5 | 2 | 6 | 3 | 3 | 0 | 1.5 | 14 | 14",
                // A wire between rods is an electrode where it lies in the ground.
                "rods-in-line: {count: 3, spacing: 2 m, length: 1.5 m, diameter: 14 mm, wire-diameter: 8 mm}"
                        + " | 4.5 | 2 | 6 | 3 | 3 | 0 | 1.5 | 14 | 14",
                "rods-in-line: {count: 3, spacing: 2 m, length: 1.5 m, diameter: 14 mm, top-depth: 0.6 m, wire-diameter: 8 mm}"
                        + " | 8.5 | 2 | 6 | 3 | 3 | 0.6 | 2.1 | 8 | 14",
                "rods-in-ring: {count: 4, radius: 2 m, length: 1.5 m, diameter: 14 mm} | 6 | 0 | 4 | 1 | 5 | 0 | 1.5 | 14 | 14",
                // The ring of wire is a polygon of three sides between two rods: 12 · 2 · 2 m · sin 15°.
                "rods-in-ring: {count: 4, radius: 2 m, length: 1.5 m, diameter: 14 mm, top-depth: 0.6 m, wire-diameter: 8 mm}"
                        + " | 18.423314 | 0 | 4 | 1 | 5 | 0.6 | 2.1 | 8 | 14",
                "wire: {length: 10 m, depth: 0.6 m, diameter: 10 mm} | 10 | 2 | 12 | 3 | 3 | 0.6 | 0.6 | 10 | 10",
                "star: {arms: 4, length: 5 m, depth: 0.5 m, diameter: 8 mm} | 20 | -3 | 7 | -2 | 8 | 0.5 | 0.5 | 8 | 8",
                // A polygon of 16 sides: 16 · 2 · 1 m · sin 11.25°.
                "ring: {radius: 1 m, depth: 0.5 m, diameter: 8 mm} | 6.242890 | 1 | 3 | 2 | 4 | 0.5 | 0.5 | 8 | 8",
                // Five wires of 0.9 m and four of 1.2 m, about the place.
                "mat: {width: 1.2 m, length: 0.9 m, mesh: 0.3 m, depth: 0.1 m, diameter: 6 mm}"
                        + " | 9.3 | 1.4 | 2.6 | 2.55 | 3.45 | 0.1 | 0.1 | 6 | 6",
                "bars: [{x1: 1 m, y1: 1 m, depth1: 0.5 m, x2: -2 m, y2: 5 m, depth2: 0.5 m, diameter: 10 mm}]"
                        + " | 5 | 0 | 3 | 4 | 8 | 0.5 | 0.5 | 10 | 10"
            })
    void theMetalIsThatOfTheFile(
            String shape,
            double length,
            double west,
            double east,
            double south,
            double north,
            double upper,
            double lower,
            double thinnest,
            double thickest)
            throws MissingInput {
        List<Bar> bars = bars(shape);
        assertThat(bars.stream().mapToDouble(Bar::length).sum()).isCloseTo(length, within(1e-6));
        assertThat(least(bars, bar -> Math.min(bar.x1(), bar.x2()))).isCloseTo(west, within(1e-9));
        assertThat(most(bars, bar -> Math.max(bar.x1(), bar.x2()))).isCloseTo(east, within(1e-9));
        assertThat(least(bars, bar -> Math.min(bar.y1(), bar.y2()))).isCloseTo(south, within(1e-9));
        assertThat(most(bars, bar -> Math.max(bar.y1(), bar.y2()))).isCloseTo(north, within(1e-9));
        assertThat(least(bars, bar -> Math.min(bar.depth1(), bar.depth2()))).isCloseTo(upper, within(1e-9));
        assertThat(most(bars, bar -> Math.max(bar.depth1(), bar.depth2()))).isCloseTo(lower, within(1e-9));
        assertThat(least(bars, Bar::radius)).isCloseTo(thinnest / 2000, within(1e-12));
        assertThat(most(bars, Bar::radius)).isCloseTo(thickest / 2000, within(1e-12));
        assertThat(bars).allMatch(bar -> bar.electrode().equals("main"));
    }

    @Test
    void concreteIsASleeveOfItsDiameterAndResistivity() throws MissingInput {
        List<Bar> bars =
                bars("rod: {length: 2.4 m, diameter: 16 mm}\n    concrete: {diameter: 0.3 m, resistivity: 60 ohm.m}");
        assertThat(bars).singleElement().satisfies(bar -> {
            assertThat(bar.radius()).isEqualTo(0.15);
            assertThat(bar.metal()).isEqualTo(0.008);
            // Radial current through a shell of one metre: ρ ln(D/d)/(2π).
            assertThat(bar.sleeve()).isCloseTo(60 * Math.log(0.3 / 0.016) / (2 * Math.PI), within(1e-9));
            assertThat(bar.length()).isCloseTo(2.4, within(1e-12));
        });
    }

    @Test
    void anUprightPlateLiesBelowGround() throws MissingInput {
        List<Bar> lying = bars("plate: {width: 1 m, length: 0.5 m, depth: 0.8 m, lie: horizontal}");
        assertThat(lying).allMatch(bar -> bar.depth1() == 0.8 && bar.depth2() == 0.8);
        List<Bar> upright = bars("plate: {width: 1 m, length: 0.5 m, depth: 0.8 m, lie: vertical}");
        assertThat(least(upright, Bar::depth1)).isBetween(0.55, 0.6);
        assertThat(most(upright, Bar::depth1)).isBetween(1.0, 1.05);
        assertThat(upright).allMatch(bar -> bar.y1() == 3);
        assertThatThrownBy(() -> bars("plate: {width: 1 m, length: 0.5 m, depth: 0.24 m, lie: vertical}"))
                .isInstanceOf(MissingInput.class)
                .hasMessageContaining("below ground");
    }
}
