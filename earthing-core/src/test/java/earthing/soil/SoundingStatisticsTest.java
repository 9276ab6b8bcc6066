package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The statistics of an inversion where textbooks give them in closed form: for uniform ground the logarithms of the
 * readings are a sample of one mean, with its interval after Student and the deleted residual after Cook and Weisberg.
 */
class SoundingStatisticsTest {

    private static Sounding sounding(double... logs) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < logs.length; i++) {
            readings.add(new Reading(Wenner.of(1 + 0.5 * i), Math.exp(logs[i])));
        }
        return new Sounding("", readings);
    }

    /** Mean 5, standard deviation s, one value pair by pair above and below. */
    private static double[] scattered(int count, double s) {
        double[] logs = new double[count];
        double off = s * Math.sqrt((count - 1.0) / count);
        for (int i = 0; i < count; i++) {
            logs[i] = 5 + (i % 2 == 0 ? off : -off);
        }
        return logs;
    }

    private static double student(int freedom, double probability) {
        return new TDistribution(freedom).inverseCumulativeProbability(probability);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.002, 0.02, 0.08})
    void uniformGroundIsTheMeanWithTheIntervalOfStudent(double scatter) {
        double[] logs = scattered(8, scatter);
        SoundingFit fit = SoundingInversion.of(sounding(logs), 1).best();
        assertThat(fit.layers()).isEqualTo(1);
        assertThat(fit.setAside()).isEmpty();
        assertThat(fit.resistivity(0).value()).isCloseTo(Math.exp(5), within(1e-6 * Math.exp(5)));
        // No reading is believed to better than 1 %, however little they scatter.
        double half = student(7, 0.95) * Math.max(0.01, scatter) / Math.sqrt(8);
        assertThat(Math.log(fit.resistivity(0).high())).isCloseTo(5 + half, within(1e-7));
        assertThat(Math.log(fit.resistivity(0).low())).isCloseTo(5 - half, within(1e-7));
        assertThat(fit.resistivity(0).resolved()).isTrue();
        // Schwarz 1978 with a floor: n ln(S/n + e²) + k ln n, one parameter.
        assertThat(fit.criterion())
                .isCloseTo(8 * Math.log(scatter * scatter * 7 / 8 + 1e-4) + Math.log(8), within(1e-6));
        double squares = Arrays.stream(logs)
                .map(log -> Math.exp(log - 5) - 1)
                .map(x -> x * x)
                .sum();
        assertThat(fit.misfit()).isCloseTo(Math.sqrt(squares / 8), within(1e-8));
        assertThat(fit.condition()).isEqualTo(1);
        assertThat(fit.products()).isEmpty();
    }

    /** The seventh of eight readings is moved until its deleted residual is a part of the bound of Bonferroni. */
    private static double[] oneOff(double scatter, double part) {
        double[] others = scattered(7, scatter);
        double mean = new Mean().evaluate(others);
        double sigma = Math.max(0.01, Math.sqrt(new Variance().evaluate(others)));
        double[] logs = new double[8];
        System.arraycopy(others, 0, logs, 0, 6);
        logs[7] = others[6];
        logs[6] = mean + part * student(6, 1 - 0.01 / (2 * 8)) * sigma * Math.sqrt(1 + 1 / 7.0);
        return logs;
    }

    @ParameterizedTest
    @CsvSource({"0.003, 1.02", "0.003, -1.02", "0.03, 1.02", "0.03, -1.02", "0.03, 4"})
    void aReadingBeyondTheBoundIsSetAside(double scatter, double part) {
        SoundingFit fit =
                SoundingInversion.of(sounding(oneOff(scatter, part)), 1).best();
        assertThat(fit.setAside()).hasSize(1);
        assertThat(fit.readings().get(6).setAside()).isTrue();
        double mean = new Mean().evaluate(scattered(7, scatter));
        assertThat(fit.resistivity(0).value()).isCloseTo(Math.exp(mean), within(1e-5 * Math.exp(mean)));
        // The reading that is set aside costs the criterion three parameters and leaves the sum.
        double sum = 6 * new Variance().evaluate(scattered(7, scatter));
        assertThat(fit.criterion()).isCloseTo(8 * Math.log(sum / 8 + 1e-4) + 4 * Math.log(8), within(1e-5));
        double half = student(6, 0.95) * Math.max(0.01, Math.sqrt(sum / 6)) / Math.sqrt(7);
        assertThat(Math.log(fit.resistivity(0).high())).isCloseTo(mean + half, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0.003, 0.98", "0.003, -0.98", "0.03, 0.98", "0.03, -0.98", "0.03, 0.1"})
    void aReadingWithinTheBoundIsKept(double scatter, double part) {
        assertThat(SoundingInversion.of(sounding(oneOff(scatter, part)), 1)
                        .best()
                        .setAside())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.049, false", "0.051, true", "-0.049, false", "-0.051, true"})
    void aReadingThatIsOffByLessThanFiveErrorsIsKept(double off, boolean setAside) {
        // Of 40 readings the bound of Bonferroni is 0.042: the five errors of 1 % bind.
        double[] logs = new double[40];
        Arrays.fill(logs, 5);
        logs[17] += off;
        SoundingFit fit = SoundingInversion.of(sounding(logs), 1).best();
        assertThat(fit.readings().get(17).setAside()).isEqualTo(setAside);
        assertThat(fit.setAside()).hasSize(setAside ? 1 : 0);
    }

    @ParameterizedTest
    @CsvSource({"5, 1, 0", "6, 1, 1", "11, 2, 1", "12, 2, 2", "12, 1, 1", "17, 3, 2", "18, 3, 3"})
    void oneReadingOfSixMayBeSetAside(int count, int bad, int setAside) {
        double[] logs = new double[count];
        Arrays.fill(logs, 5);
        // Far from each other, so that none hides behind the spread that the others make.
        double[] off = {Math.log(3), Math.log(40), Math.log(900)};
        for (int i = 0; i < bad; i++) {
            logs[1 + 2 * i] += off[i];
        }
        SoundingFit fit = SoundingInversion.of(sounding(logs), 1).best();
        assertThat(fit.setAside()).hasSize(setAside);
        if (setAside == bad) {
            assertThat(fit.resistivity(0).value()).isCloseTo(Math.exp(5), within(1e-6 * Math.exp(5)));
        }
    }

    /** Readings over known ground, one of them multiplied. */
    private static Sounding over(SoilModel soil, int count, int bad, double factor) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Wenner array = Wenner.of(0.5 * Math.pow(1.9, i));
            readings.add(new Reading(array, array.apparentResistivity(soil) * (i == bad ? factor : 1)));
        }
        return new Sounding("", readings);
    }

    @Test
    void noReadingIsSetAsideWhereTooFewWouldBeLeftToJudge() {
        // Two layers from six readings leave two to spare when one is left out, enough; three layers from seven leave
        // one.
        SoilModel two = SoilModel.twoLayer(100, 2, 500);
        assertThat(SoundingInversion.of(over(two, 6, 2, 3), 2).best().setAside())
                .extracting(one -> one.reading().spacing())
                .containsExactly(0.5 * 1.9 * 1.9);
        SoilModel three = SoilModel.of(List.of(new Layer(100, 1), new Layer(20, 3), Layer.below(400)));
        assertThat(SoundingInversion.of(over(three, 7, 3, 3), 3).best().setAside())
                .isEmpty();
    }

    @Test
    void theFewestLayersWithinTwoOfTheLowestCriterionAreTaken() {
        for (double contrast : new double[] {1.02, 1.05, 1.1, 1.2, 1.5, 3}) {
            SoundingInversion inversion =
                    SoundingInversion.of(over(SoilModel.twoLayer(100, 2, 100 * contrast), 9, -1, 1));
            assertThat(inversion.fits()).extracting(SoundingFit::layers).containsExactly(1, 2, 3, 4);
            double lowest = inversion.fits().stream()
                    .mapToDouble(SoundingFit::criterion)
                    .min()
                    .orElseThrow();
            int fewest = 0;
            while (inversion.fits().get(fewest).criterion() > lowest + 2) {
                fewest++;
            }
            assertThat(inversion.best().layers()).isEqualTo(fewest + 1);
            assertThat(inversion.best().layers()).as("contrast " + contrast).isEqualTo(contrast < 1.04 ? 1 : 2);
        }
    }

    @Test
    void layersAreTriedUpToHalfTheReadings() {
        SoilModel soil = SoilModel.twoLayer(100, 2, 500);
        for (int count = 3; count <= 10; count++) {
            assertThat(SoundingInversion.of(over(soil, count, -1, 1)).fits()).hasSize(Math.min(4, count / 2));
        }
        Sounding six = over(soil, 6, -1, 1);
        assertThat(SoundingInversion.of(six, 3).best().layers()).isEqualTo(3);
        assertThatIllegalArgumentException().isThrownBy(() -> SoundingInversion.of(six, 4));
        assertThatIllegalArgumentException().isThrownBy(() -> SoundingInversion.of(six, 0));
        List<SoundingFit> fits = SoundingInversion.of(six).fits();
        assertThatIllegalArgumentException().isThrownBy(() -> new SoundingInversion(six, fits, fits.size()));
        assertThatIllegalArgumentException().isThrownBy(() -> new SoundingInversion(six, fits, -1));
    }

    /** Readings that are linear in the logarithms: rows of a matrix. */
    private static final class Linear implements LogModel {

        private final double[][] rows;

        Linear(double[][] rows) {
            this.rows = rows;
        }

        @Override
        public int parameters() {
            return rows[0].length;
        }

        @Override
        public void evaluate(double[] logs) {
            // The slopes are the same everywhere.
        }

        @Override
        public double value(int reading) {
            throw new UnsupportedOperationException();
        }

        @Override
        public double derivative(int reading, int parameter) {
            return rows[reading][parameter];
        }
    }

    @Test
    void spreadIsTheInverseOfTheNormalMatrix() {
        // By hand: rows (1 0), (1 2), and one left out; JᵀJ = (2 2; 2 4), its inverse (1 -0.5; -0.5 0.5).
        Linear model = new Linear(new double[][] {{1, 0}, {1, 2}, {7, 9}});
        boolean[] kept = {true, true, false};
        Spread both = Spread.of(model, new double[2], kept, new boolean[2]);
        assertThat(both.variance(new double[] {1, 0})).isCloseTo(1, within(1e-12));
        assertThat(both.variance(new double[] {0, 1})).isCloseTo(0.5, within(1e-12));
        assertThat(both.variance(new double[] {1, 1})).isCloseTo(0.5, within(1e-12));
        assertThat(both.variance(new double[] {1, -1})).isCloseTo(2.5, within(1e-12));
        assertThat(both.gradient(2)).containsExactly(7, 9);
        // Eigenvalues 3 ± √5: the ratio of the singular values is √((3+√5)/(3-√5)).
        assertThat(both.condition()).isCloseTo(Math.sqrt((3 + Math.sqrt(5)) / (3 - Math.sqrt(5))), within(1e-12));
        // With the second held, the first is the mean of two readings and the second does not move.
        Spread one = Spread.of(model, new double[2], kept, new boolean[] {false, true});
        assertThat(one.variance(new double[] {1, 0})).isCloseTo(0.5, within(1e-12));
        assertThat(one.variance(new double[] {0, 1})).isCloseTo(0, within(1e-12));
        assertThat(one.condition()).isEqualTo(1);
        Spread none = Spread.of(model, new double[2], kept, new boolean[] {true, true});
        assertThat(none.variance(new double[] {1, 1})).isZero();
        assertThat(none.condition()).isEqualTo(1);
    }

    @Test
    void directionsThatNoReadingFeelsAreAsGoodAsUnknown() {
        Linear model = new Linear(new double[][] {{1, 1}});
        Spread spread = Spread.of(model, new double[2], new boolean[] {true}, new boolean[2]);
        assertThat(spread.variance(new double[] {0.5, 0.5})).isCloseTo(0.25, within(1e-9));
        assertThat(spread.variance(new double[] {1, -1})).isGreaterThan(1e13);
        assertThat(spread.condition()).isCloseTo(1e7, within(1.0));
    }
}
