package earthing.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShapeTest {

    /** Geometric mean radius over outer radius of concentric strands, handbook table, from memory. */
    @ParameterizedTest
    @CsvSource({"7, 0.726", "19, 0.758", "37, 0.768", "61, 0.772"})
    void geometricMeanRadiusOfStrandedConductors(int strands, double printed) {
        Stranded conductor = Stranded.ofArea(strands, 70e-6);
        assertThat(conductor.geometricMeanRadius() / conductor.equivalentRadius())
                .isCloseTo(printed, within(0.0005));
        assertThat(conductor.area()).isCloseTo(70e-6, within(1e-16));
    }

    /** Rosa and Grover 1912: square 0.44705 of its side, thin strip 0.22313 of its width. */
    @Test
    void geometricMeanRadiusOfRectangles() {
        assertThat(new Tape(0.01, 0.01).geometricMeanRadius()).isCloseTo(0.0044705, within(5e-8));
        assertThat(new Tape(0.01, 1e-9).geometricMeanRadius()).isCloseTo(0.0022313, within(5e-8));
    }

    @Test
    void tubeRunsFromSolidWireToThinShell() {
        assertThat(new Tube(0.1, 0.1 * (1 - 1e-9)).geometricMeanRadius())
                .isCloseTo(0.1 * Math.exp(-0.25), within(1e-9));
        assertThat(new Tube(0.1, 1e-8).geometricMeanRadius()).isCloseTo(0.1, within(1e-8));
        // The series takes over where the closed form loses digits, without a step.
        assertThat(new Tube(1, 0.999999e-3).geometricMeanRadius())
                .isCloseTo(new Tube(1, 1.000001e-3).geometricMeanRadius(), within(2e-9));
    }

    /** Dwight 1936: a thin flat bar acts as a round one of a quarter of its width. */
    @Test
    void equivalentRadiusOfATape() {
        assertThat(new Tape(0.04, 1e-9).equivalentRadius()).isCloseTo(0.01, within(1e-9));
    }

    @Property(seed = "20261125", tries = 100)
    void sectionsAreConsistent(
            @ForAll @DoubleRange(min = 1, max = 100) double widthMm,
            @ForAll @DoubleRange(min = 0.1, max = 100) double thicknessMm) {
        double width = widthMm * 1e-3;
        double thickness = thicknessMm * 1e-3;
        Tape tape = new Tape(width, thickness);
        assertThat(tape.geometricMeanRadius())
                .isCloseTo(new Tape(thickness, width).geometricMeanRadius(), within(1e-12 * width + 1e-12 * thickness));
        assertThat(tape.geometricMeanRadius() / (width + thickness)).isBetween(0.2231, 0.2237);
        // The circle has the shortest outline for its area.
        assertThat(tape.perimeter())
                .isGreaterThan(SolidRound.ofArea(tape.area()).perimeter());
        double scale = 3;
        assertThat(new Tape(scale * width, scale * thickness).geometricMeanRadius() / tape.geometricMeanRadius())
                .isCloseTo(scale, within(1e-9));
    }

    @Test
    void refusesImpossibleSections() {
        assertThatIllegalArgumentException().isThrownBy(() -> new SolidRound(0));
        assertThatIllegalArgumentException().isThrownBy(() -> new SolidRound(Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> new Stranded(8, 1e-3));
        assertThatIllegalArgumentException().isThrownBy(() -> new Tape(0.03, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Tube(0.1, 0.1));
    }
}
