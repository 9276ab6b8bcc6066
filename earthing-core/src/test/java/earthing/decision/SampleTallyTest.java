package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SampleTallyTest {

    private static final double[] PARTS = {0, 1e-5, 0.01, 0.05, 0.3, 0.5, 0.95, 0.999, 1};

    /** Lognormal numbers about a shift, so that some are below zero, as margins are. */
    private static double[] numbers(int count, double shift) {
        Random random = new Random(20261127);
        double[] numbers = new double[count];
        for (int i = 0; i < count; i++) {
            numbers[i] = 100 * Math.exp(0.4 * random.nextGaussian()) - shift;
        }
        return numbers;
    }

    private static SampleTally tally(double[] numbers) {
        SampleTally tally = new SampleTally();
        for (double number : numbers) {
            tally.add(number);
        }
        return tally.settled();
    }

    private static double exact(double[] rising, double part) {
        double place = part * (rising.length - 1);
        int below = (int) Math.floor(place);
        int above = Math.min(rising.length - 1, below + 1);
        return rising[below] + (place - below) * (rising[above] - rising[below]);
    }

    /** Sorted by hand, a quantile lies between two numbers; beyond the number that is kept it holds to a step. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 999, SampleTally.KEPT, SampleTally.KEPT + 1, 3 * SampleTally.KEPT})
    void quantilesAreThoseOfTheSortedNumbers(int count) {
        double[] numbers = numbers(count, 120);
        SampleTally tally = tally(numbers);
        double[] rising = numbers.clone();
        Arrays.sort(rising);
        double step = count > SampleTally.KEPT ? 2.5e-4 : 0;
        for (double part : PARTS) {
            double exact = exact(rising, part);
            assertThat(tally.quantile(part)).isCloseTo(exact, within(step * Math.abs(exact)));
        }
        assertThat(tally.quantile(0)).isEqualTo(rising[0]);
        assertThat(tally.quantile(1)).isEqualTo(rising[count - 1]);
        assertThat(tally.count()).isEqualTo(count);
    }

    /** The mean of equal steps from −1 to 1 about 7 is 7, whatever the number of terms. */
    @Test
    void theMeanLosesNoDigitsOverManyTerms() {
        int half = 500_000;
        SampleTally tally = new SampleTally();
        for (int i = -half; i <= half; i++) {
            tally.add(7 + (double) i / half);
        }
        assertThat(tally.settled().mean()).isCloseTo(7, within(1e-14));
    }

    /** Every number falls into one box, and the boxes differ from a count one by one by what one step holds at most. */
    @Test
    void countsOfManyNumbersAreThoseOfEach() {
        double[] numbers = numbers(2 * SampleTally.KEPT, 120);
        SampleTally tally = tally(numbers);
        int[] counts = tally.counts(tally.quantile(0), tally.quantile(1), 40);
        assertThat(Arrays.stream(counts).sum()).isEqualTo(numbers.length);
        double from = tally.quantile(0);
        double wide = tally.quantile(1) - from;
        int[] each = new int[40];
        for (double number : numbers) {
            each[Math.min(39, (int) ((number - from) / wide * 40))]++;
        }
        for (int i = 0; i < 40; i++) {
            assertThat(counts[i]).isCloseTo(each[i], within(Math.max(20, numbers.length / 200)));
        }
    }
}
