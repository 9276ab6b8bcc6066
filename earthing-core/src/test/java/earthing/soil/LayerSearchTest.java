package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The search within its bounds, by the filter and by a computation that an arrangement brings itself. */
class LayerSearchTest {

    private static final SoilModel TWO = SoilModel.twoLayer(100, 2, 500);
    private static final SoilModel THREE = SoilModel.of(List.of(new Layer(200, 1), new Layer(40, 4), Layer.below(600)));

    /** Probes as of Wenner that bring their own computation, the quadrature, instead of the filter. */
    private record Own(Wenner probes, int mostLayers, double thinnest) implements ElectrodeArray {

        @Override
        public double resistance(SoilModel soil) {
            return probes.resistance(soil);
        }

        @Override
        public double geometricFactor() {
            return probes.geometricFactor();
        }

        @Override
        public double spread() {
            return probes.spread();
        }

        @Override
        public Optional<SoundingForward> forward(List<Reading> readings) {
            Own own = this;
            return Optional.of(new SoundingForward() {
                @Override
                public double[] apparentResistivities(SoilModel soil) {
                    return readings.stream()
                            .mapToDouble(reading -> reading.array().apparentResistivity(soil))
                            .toArray();
                }

                @Override
                public double thinnest() {
                    return own.thinnest;
                }

                @Override
                public int mostLayers() {
                    return own.mostLayers;
                }
            });
        }
    }

    private static Sounding readings(SoilModel soil, int count, double scatter, boolean own, int most) {
        Random random = new Random(11);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Wenner probes = Wenner.of(0.5 * Math.pow(1.6, i));
            double apparent = probes.apparentResistivity(soil) * Math.exp(scatter * random.nextGaussian());
            readings.add(new Reading(own ? new Own(probes, most, 0.05) : probes, apparent));
        }
        return new Sounding("", readings);
    }

    private static Sounding with(Sounding sounding, int index, double factor) {
        List<Reading> readings = new ArrayList<>(sounding.readings());
        Reading good = readings.get(index);
        readings.set(index, new Reading(good.array(), good.apparentResistivity() * factor));
        return new Sounding("", readings);
    }

    private static LayerSearch byFilter(Sounding sounding, int layers) {
        return new LayerSearch(SoundingFilter.of(sounding.readings()), sounding, layers);
    }

    private static LayerSearch byOwn(Sounding sounding, int layers) {
        return new LayerSearch(
                sounding.readings().get(0).array().forward(sounding.readings()).orElseThrow(), sounding, layers);
    }

    @Test
    void boundsAreWhatTheSurveyCouldSee() {
        Sounding sounding = readings(THREE, 10, 0, false, 4);
        double low = sounding.readings().stream()
                .mapToDouble(Reading::apparentResistivity)
                .min()
                .orElseThrow();
        double high = sounding.readings().stream()
                .mapToDouble(Reading::apparentResistivity)
                .max()
                .orElseThrow();
        LayerSearch search = byFilter(sounding, 3);
        for (int p = 0; p < 3; p++) {
            assertThat(Math.exp(search.least(p))).isCloseTo(low / 30, within(1e-9 * low));
            assertThat(Math.exp(search.most(p))).isCloseTo(high * 30, within(1e-9 * high));
        }
        for (int p = 3; p < 5; p++) {
            // A tenth of the shortest spacing, and twice the longest.
            assertThat(Math.exp(search.least(p))).isCloseTo(0.05, within(1e-12));
            assertThat(Math.exp(search.most(p))).isCloseTo(2 * sounding.longest(), within(1e-9));
        }
        assertThat(Math.exp(byOwn(readings(THREE, 10, 0, true, 4), 2).least(2))).isCloseTo(0.05, within(1e-12));
    }

    @Test
    void onlyParametersAtABoundAreHeld() {
        LayerSearch search = byFilter(readings(THREE, 10, 0, false, 4), 2);
        double[] middle = new double[3];
        for (int p = 0; p < 3; p++) {
            middle[p] = 0.5 * (search.least(p) + search.most(p));
        }
        assertThat(search.held(middle)).containsExactly(false, false, false);
        for (int p = 0; p < 3; p++) {
            for (double at :
                    new double[] {search.least(p), search.least(p) + 0.9e-3, search.most(p), search.most(p) - 0.9e-3}) {
                double[] moved = middle.clone();
                moved[p] = at;
                boolean[] expected = new boolean[3];
                expected[p] = true;
                assertThat(search.held(moved)).containsExactly(expected);
            }
            for (double inside : new double[] {search.least(p) + 2e-3, search.most(p) - 2e-3}) {
                double[] moved = middle.clone();
                moved[p] = inside;
                assertThat(search.held(moved)).containsExactly(false, false, false);
            }
        }
        // Uniform ground is the mean of the readings, never at a bound.
        LayerSearch uniform = byFilter(readings(THREE, 10, 0, false, 4), 1);
        assertThat(uniform.held(new double[] {uniform.least(0)})).containsExactly(false);
    }

    @ParameterizedTest
    @CsvSource({"1, false", "2, false", "3, false", "4, false", "1, true", "2, true", "3, true"})
    void aFitToItsOwnGroundLeavesNothing(int layers, boolean own) {
        SoilModel soil = switch (layers) {
            case 1 -> SoilModel.uniform(80);
            case 2 -> TWO;
            case 3 -> THREE;
            default ->
                SoilModel.of(List.of(new Layer(300, 0.8), new Layer(50, 3), new Layer(800, 10), Layer.below(60)));
        };
        Sounding sounding = readings(soil, 11, 0, own, 4);
        LayerSearch search = own ? byOwn(sounding, layers) : byFilter(sounding, layers);
        LayerSearch.Found found = search.search(sounding.shortest(), sounding.longest());
        // The filter is right to 1e-4; readings of an arrangement with dear steps are followed to a per mille.
        assertThat(Math.sqrt(found.sum() / 11)).isLessThan(own ? 1e-3 : 1e-4);
        assertThat(found.kept()).doesNotContain(false);
        assertThat(found.logs()).hasSize(2 * layers - 1);
        search.model().evaluate(found.logs());
        double sum = 0;
        for (int i = 0; i < 11; i++) {
            double off = search.model().value(i)
                    - Math.log(sounding.readings().get(i).apparentResistivity());
            sum += off * off;
        }
        assertThat(found.sum()).isCloseTo(sum, within(1e-12));
        for (int i = 0; i < layers && layers < 4; i++) {
            assertThat(Math.exp(found.logs()[i]) / soil.resistivity(i)).isCloseTo(1, within(0.02));
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void noPointBesideTheFoundOneIsBetter(boolean own) {
        Sounding sounding = readings(TWO, 10, 0.03, own, 4);
        LayerSearch search = own ? byOwn(sounding, 2) : byFilter(sounding, 2);
        LayerSearch.Found found = search.search(sounding.shortest(), sounding.longest());
        for (int p = 0; p < 3; p++) {
            for (double step : new double[] {-0.02, 0.02}) {
                double[] moved = found.logs().clone();
                moved[p] += step;
                search.model().evaluate(moved);
                double sum = 0;
                for (int i = 0; i < 10; i++) {
                    double off = search.model().value(i)
                            - Math.log(sounding.readings().get(i).apparentResistivity());
                    sum += off * off;
                }
                assertThat(sum).isGreaterThan(found.sum());
            }
        }
    }

    @Test
    void groundBeyondTheBoundsStopsAtThem() {
        // Over rock that does not conduct the lowest layer runs into the bound: nothing but a least value is known.
        SoilModel rock = SoilModel.twoLayer(100, 1, 1e7);
        Sounding sounding = readings(rock, 9, 0, false, 4);
        SoundingFit fit = SoundingInversion.of(sounding, 2).best();
        LayerSearch search = byFilter(sounding, 2);
        assertThat(fit.resistivity(1).value()).isLessThanOrEqualTo(Math.exp(search.most(1)) * (1 + 1e-9));
        assertThat(fit.resistivity(1).resolved()).isFalse();
        assertThat(fit.resistivity(1).high())
                .isCloseTo(
                        Math.exp(search.most(1)),
                        within(1e-6 * fit.resistivity(1).high()));
        // The bound lets the lowest layer conduct more than the rock does, which bends the rest by some percent.
        assertThat(fit.resistivity(0).value()).isCloseTo(100, within(5.0));
        assertThat(fit.thickness(0).value()).isCloseTo(1, within(0.05));
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "2, 1", "3, 1", "4, 1", "2, 0", "3, 0", "4, 0"})
    void slopesOfTheFilterAreThoseOfItsReadings(int layers, double contrast) {
        Sounding sounding = readings(THREE, 8, 0, false, 4);
        FilteredLogModel model = new FilteredLogModel(SoundingFilter.of(sounding.readings()), 8, layers);
        double[] logs = {0, -1.3, 1.1, -0.6};
        double[] point = new double[2 * layers - 1];
        for (int i = 0; i < layers; i++) {
            point[i] = 5 + contrast * logs[i];
        }
        for (int i = 0; i < layers - 1; i++) {
            point[layers + i] = 0.3 + 0.5 * i;
        }
        SoilModel soil = LogModel.soil(point);
        model.evaluate(point);
        double[][] slopes = new double[8][point.length];
        for (int i = 0; i < 8; i++) {
            assertThat(model.value(i))
                    .isCloseTo(Math.log(sounding.readings().get(i).array().apparentResistivity(soil)), within(1e-4));
            for (int p = 0; p < point.length; p++) {
                slopes[i][p] = model.derivative(i, p);
            }
        }
        for (int p = 0; p < point.length; p++) {
            double[] up = point.clone();
            double[] down = point.clone();
            up[p] += 1e-4;
            down[p] -= 1e-4;
            double[] above = new double[8];
            model.evaluate(up);
            for (int i = 0; i < 8; i++) {
                above[i] = model.value(i);
            }
            model.evaluate(down);
            for (int i = 0; i < 8; i++) {
                assertThat(slopes[i][p]).isCloseTo((above[i] - model.value(i)) / 2e-4, within(1e-6));
            }
        }
    }

    @Test
    void slopesByStepsAreThoseOfTheFilterToTheirStep() {
        Sounding sounding = readings(THREE, 8, 0, true, 4);
        Sounding plain = readings(THREE, 8, 0, false, 4);
        SteppedLogModel stepped = new SteppedLogModel(
                byOwnForward(sounding)::apparentResistivities,
                sounding.readings().size(),
                3);
        FilteredLogModel filtered = new FilteredLogModel(SoundingFilter.of(plain.readings()), 8, 3);
        double[] point = {5.3, 3.7, 6.4, 0, 1.4};
        stepped.evaluate(point);
        filtered.evaluate(point);
        assertThat(stepped.parameters()).isEqualTo(5);
        for (int i = 0; i < 8; i++) {
            assertThat(stepped.value(i)).isCloseTo(filtered.value(i), within(1e-4));
            double resistivities = 0;
            for (int p = 0; p < 5; p++) {
                assertThat(stepped.derivative(i, p)).isCloseTo(filtered.derivative(i, p), within(0.02));
                resistivities += p < 3 ? stepped.derivative(i, p) : 0;
            }
            // All resistivities together scale the reading.
            assertThat(resistivities).isCloseTo(1, within(1e-12));
        }
    }

    private static SoundingForward byOwnForward(Sounding sounding) {
        return sounding.readings().get(0).array().forward(sounding.readings()).orElseThrow();
    }

    @Test
    void anArrangementOfItsOwnFindsTheGroundOfTheFilter() {
        SoundingFit filtered =
                SoundingInversion.of(readings(TWO, 10, 0.02, false, 4), 2).best();
        SoundingFit own =
                SoundingInversion.of(readings(TWO, 10, 0.02, true, 4), 2).best();
        assertThat(own.misfit()).isCloseTo(filtered.misfit(), within(1e-4));
        for (int p = 0; p < 3; p++) {
            FitParameter there = filtered.parameters().get(p);
            FitParameter here = own.parameters().get(p);
            assertThat(here.value() / there.value()).isCloseTo(1, within(0.02));
            assertThat(Math.log(here.high() / here.low()) / Math.log(there.high() / there.low()))
                    .isCloseTo(1, within(0.1));
        }
    }

    @Test
    void anArrangementOfItsOwnSaysHowManyLayersItTells() {
        Sounding two = readings(TWO, 10, 0.04, true, 2);
        assertThat(SoundingInversion.of(two).fits()).hasSize(2);
        assertThat(SoundingInversion.of(two, 2).best().layers()).isEqualTo(2);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SoundingInversion.of(two, 3))
                .withMessageContaining("no more than 2 layers apart; asked for 3");
        // More layers are not tried once the readings are met to their error.
        assertThat(SoundingInversion.of(readings(TWO, 10, 0, true, 3)).fits()).hasSize(2);
        assertThat(SoundingInversion.of(readings(SoilModel.uniform(70), 10, 0, true, 3))
                        .fits())
                .hasSize(1);
    }

    @Test
    void aBadReadingIsFoundWithAnArrangementOfItsOwn() {
        Sounding good = readings(TWO, 9, 0.01, true, 2);
        for (int bad : new int[] {2, 6}) {
            SoundingFit fit = SoundingInversion.of(with(good, bad, 0.5), 2).best();
            assertThat(fit.setAside()).hasSize(1);
            assertThat(fit.readings().get(bad).setAside()).isTrue();
            assertThat(fit.resistivity(0).value()).isCloseTo(100, within(5.0));
        }
        assertThat(SoundingInversion.of(good, 2).best().setAside()).isEmpty();
    }

    @Test
    void arrangementsAreNotMixed() {
        List<Reading> mixed = new ArrayList<>(readings(TWO, 5, 0, false, 4).readings());
        mixed.addAll(readings(TWO, 5, 0, true, 4).readings());
        assertThatThrownBy(() -> SoundingInversion.of(new Sounding("", mixed)))
                .hasMessageContaining("one kind of array");
    }

    private static FitParameter parameter(
            FitParameter.Kind kind, int layer, double low, double high, boolean resolved) {
        return new FitParameter(kind, layer, Math.sqrt(low * high), low, high, resolved);
    }

    private static SoundingFit known(boolean rho, boolean h, FitParameter transverse, FitParameter longitudinal) {
        return new SoundingFit(
                TWO,
                List.of(
                        parameter(FitParameter.Kind.RESISTIVITY, 0, 50, 200, rho),
                        parameter(FitParameter.Kind.RESISTIVITY, 1, 400, 600, true),
                        parameter(FitParameter.Kind.THICKNESS, 0, 1, 4, h)),
                List.of(transverse, longitudinal),
                List.of(),
                0.01,
                0,
                10);
    }

    @Test
    void theBetterKnownProductStandsForALayerThatIsNotResolved() {
        FitParameter sharp = parameter(FitParameter.Kind.TRANSVERSE_RESISTANCE, 0, 160, 250, true);
        FitParameter blunt = parameter(FitParameter.Kind.LONGITUDINAL_CONDUCTANCE, 0, 0.01, 0.04, false);
        assertThat(known(true, true, sharp, blunt).equivalent(0)).isEmpty();
        assertThat(known(false, true, sharp, blunt).equivalent(0)).contains(sharp);
        assertThat(known(true, false, sharp, blunt).equivalent(0)).contains(sharp);
        assertThat(known(false, false, sharp, blunt).equivalent(1)).isEmpty();
        assertThat(known(true, true, sharp, blunt).resistivityAtThickness(0).high())
                .isEqualTo(200);
        // 160 … 250 Ω·m² over 2 m.
        FitParameter held = known(false, false, sharp, blunt).resistivityAtThickness(0);
        assertThat(held.low()).isCloseTo(80, within(1e-9));
        assertThat(held.high()).isCloseTo(125, within(1e-9));
        assertThat(held.value()).isCloseTo(100, within(1e-9));
        assertThat(held.resolved()).isFalse();
        FitParameter conductance = parameter(FitParameter.Kind.LONGITUDINAL_CONDUCTANCE, 0, 0.016, 0.025, true);
        FitParameter vague = parameter(FitParameter.Kind.TRANSVERSE_RESISTANCE, 0, 50, 800, false);
        assertThat(known(false, false, vague, conductance).equivalent(0)).contains(conductance);
        // 2 m over 0.016 … 0.025 S.
        FitParameter conducting = known(false, false, vague, conductance).resistivityAtThickness(0);
        assertThat(conducting.low()).isCloseTo(80, within(1e-9));
        assertThat(conducting.high()).isCloseTo(125, within(1e-9));
        // Where neither product is known nothing is said.
        assertThat(known(false, false, vague, blunt).equivalent(0)).isEmpty();
        assertThat(known(false, false, vague, blunt).resistivityAtThickness(0).high())
                .isEqualTo(200);
    }
}
