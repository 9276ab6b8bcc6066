package earthing.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import earthing.quantity.Measure.Bound;
import earthing.quantity.Measure.Bounds;
import earthing.quantity.Measure.Origin;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MeasureTest {

    private static Bounds bounds(double low, double nominal, double high) {
        return new Bounds(
                Quantity.of(Dimension.RESISTANCE, low),
                Quantity.of(Dimension.RESISTANCE, nominal),
                Quantity.of(Dimension.RESISTANCE, high));
    }

    private static Measure measure(Bounds bounds) {
        return new Measure(Dimension.RESISTANCE, Optional.of(bounds), Origin.MEASURED, "2026-01-31", "fitter");
    }

    @Test
    void eachBoundIsFound() {
        Measure measure = measure(bounds(8, 10, 15));
        assertThat(measure.at(Bound.LOW)).isEqualTo(8);
        assertThat(measure.at(Bound.NOMINAL)).isEqualTo(10);
        assertThat(measure.at(Bound.HIGH)).isEqualTo(15);
        assertThat(measure.nominal()).isEqualTo(10);
        assertThat(measure.isKnown()).isTrue();
        assertThat(measure.hasSpread()).isTrue();
    }

    @Test
    void oneValueHasNoSpread() {
        Measure measure = Measure.of(Dimension.RESISTANCE, 10);
        assertThat(measure.at(Bound.LOW)).isEqualTo(measure.at(Bound.HIGH)).isEqualTo(10);
        assertThat(measure.hasSpread()).isFalse();
        assertThat(measure.origin()).isEqualTo(Origin.UNSTATED);
        assertThat(measure.bounds().orElseThrow().nominal().text()).isEqualTo("10 ohm");
        assertThat(measure(bounds(10, 10, 10)).hasSpread()).isFalse();
        assertThat(measure(bounds(10, 10, Math.nextUp(10.0))).hasSpread()).isTrue();
    }

    @Test
    void anUnknownValueIsNoNumber() {
        Measure unknown = Measure.unknown(Dimension.RESISTANCE);
        assertThat(unknown.isKnown()).isFalse();
        assertThat(unknown.hasSpread()).isFalse();
        assertThat(unknown.dimension()).isEqualTo(Dimension.RESISTANCE);
        assertThatIllegalStateException().isThrownBy(unknown::nominal).withMessage("the value is unknown");
    }

    @Test
    void boundsAreInOrder() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> bounds(11, 10, 15))
                .withMessageContaining("low <= nominal <= high; have 11 ohm, 10 ohm, 15 ohm");
        assertThatIllegalArgumentException().isThrownBy(() -> bounds(8, 16, 15));
    }
}
