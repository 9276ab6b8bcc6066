package earthing.surge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class FlashCollectionTest {

    /** IEEE Std 1410 (from memory): 11.15 flashes for 100 km at 10 m and 1 flash/km²/a. */
    @Test
    void ieee1410StrokesToALine() {
        assertThat(FlashCollection.lineRate(1e-6, 10, 0, 100e3)).isCloseTo(11.15, within(0.005));
    }

    /** IEEE Std 1410 (from memory): 25 thunderstorm days make 2.24 flashes/km²/a. */
    @Test
    void ieee1410ThunderstormDays() {
        assertThat(FlashCollection.ofThunderstormDays(25)).isCloseTo(2.24e-6, within(0.005e-6));
    }

    /** IEEE Std 1410 (from memory): 10 I^0.65; by hand 10·exp(0.65·ln 31) = 93.2 m and √(93.19² − 73.87²) = 56.8 m. */
    @Test
    void ieee1410StrikingDistances() {
        assertThat(StrikingDistance.toConductor(31e3)).isCloseTo(93.2, within(0.05));
        assertThat(StrikingDistance.nearestToGround(31e3, 10)).isCloseTo(56.8, within(0.05));
    }

    /** At the median peak the two published views of a line's reach, 14 h^0.6 and the striking distance, agree to a few per cent. */
    @Test
    void attractiveRadiusAndStrikingDistanceAgree() {
        assertThat(StrikingDistance.nearestToGround(31e3, 10) / FlashCollection.radius(10))
                .isBetween(0.95, 1.05);
    }

    @Test
    void refusesWhatIsOutsideItsRange() {
        assertThatThrownBy(() -> FlashCollection.radius(0)).hasMessageContaining("100 m");
        assertThatThrownBy(() -> FlashCollection.radius(Double.NaN)).hasMessageContaining("100 m");
        assertThatThrownBy(() -> FlashCollection.width(10, -1)).hasMessageContaining("breadth");
        assertThatThrownBy(() -> FlashCollection.lineRate(-1, 10, 0, 1)).hasMessageContaining("density");
        assertThatThrownBy(() -> FlashCollection.ofThunderstormDays(400)).hasMessageContaining("366");
        assertThatThrownBy(() -> FlashCollection.areaBeyondStrip(10, -1)).hasMessageContaining("strip");
        assertThatThrownBy(() -> StrikingDistance.toConductor(0)).hasMessageContaining("peak");
        assertThatThrownBy(() -> StrikingDistance.nearestToGround(1e4, 0)).hasMessageContaining("height");
    }

    @Property(seed = "20261125", tries = 200)
    void circleLessStripIsWhatIsCountedOnAGrid(
            @ForAll @DoubleRange(min = 5, max = 40) double object,
            @ForAll @DoubleRange(min = 0, max = 300) double width) {
        double r = FlashCollection.radius(object);
        int n = 400;
        int inside = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double x = r * (2 * (i + 0.5) / n - 1);
                double y = r * (2 * (j + 0.5) / n - 1);
                inside += Math.hypot(x, y) < r && Math.abs(y) > width / 2 ? 1 : 0;
            }
        }
        double counted = 4 * r * r * inside / ((double) n * n);
        assertThat(FlashCollection.areaBeyondStrip(object, width)).isCloseTo(counted, within(0.02 * Math.PI * r * r));
    }

    @Property(seed = "20261125", tries = 200)
    void ratesScaleWithDensityAndLength(
            @ForAll @DoubleRange(min = 0.1, max = 50) double perSquareKilometre,
            @ForAll @DoubleRange(min = 5, max = 60) double height,
            @ForAll @DoubleRange(min = 1, max = 1e5) double length) {
        double density = 1e-6 * perSquareKilometre;
        double rate = FlashCollection.lineRate(density, height, 2, length);
        assertThat(FlashCollection.lineRate(3 * density, height, 2, length)).isCloseTo(3 * rate, within(1e-12 * rate));
        assertThat(FlashCollection.lineRate(density, height, 2, 2 * length)).isCloseTo(2 * rate, within(1e-12 * rate));
        assertThat(FlashCollection.lineRate(density, height + 1, 2, length)).isGreaterThan(rate);
    }

    @Property(seed = "20261125", tries = 200)
    void aStrongerStrokeStaysFurtherAway(
            @ForAll @DoubleRange(min = 3e3, max = 100e3) double peak,
            @ForAll @DoubleRange(min = 5, max = 20) double height) {
        assertThat(StrikingDistance.nearestToGround(1.2 * peak, height))
                .isGreaterThan(StrikingDistance.nearestToGround(peak, height));
    }
}
