package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.DemoSite;
import earthing.study.SampleStudy;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadStudyTest {

    /** A rod in uniform ground of 60, 120 and 240 ohm.m, no cubicle: quick to study. */
    private static Site rod(String uncertainty) throws IOException {
        return rod(
                uncertainty,
                "earth-fault-current: {low: 250 A, nominal: 300 A, high: 340 A}\n  neutral: {method: resistor, resistance: 40"
                        + " ohm}");
    }

    private static Site rod(String uncertainty, String source) throws IOException {
        String text = Files.readString(Path.of("..", "earthing-cli", "sites", "lowgarth-short.yaml"))
                .replace(
                        "{resistivity: unknown}", "{resistivity: {low: 60 ohm.m, nominal: 120 ohm.m, high: 240 ohm.m}}")
                .replace("earth-fault-current: 300 A\n  neutral: {method: resistor, resistance: unknown}", source)
                .replaceAll("cubicle: .*\\n", "")
                .replaceAll("control-cable:\\n.*\\n.*\\n", "")
                .replace("{touch: en-50522-2022}", "{touch: en-50522-2022, electrode-resistance: 50 ohm}");
        ReadOutcome outcome = SiteFile.read(text + uncertainty, "site.yaml");
        assertThat(outcome).as(outcome.toString()).isInstanceOf(ReadOutcome.Valid.class);
        return ((ReadOutcome.Valid) outcome).site();
    }

    private static List<Finding> findings(Site site) {
        return ComplianceRun.of(site, SiteStudy.of(site, StudyScope.AS_BUILT));
    }

    /** All corners of the bounds and some points within: none is worse than what a check reports. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "brackenmire-mistakes.yaml",
                "fellmark-single-wire.yaml",
                "ollinford-concrete-lv.yaml",
                "pellwharf-plate-concrete.yaml",
                "ternhook-wood-separate.yaml",
                "ternhook-wood-shared.yaml",
                "thornby-shield-wire.yaml"
            })
    void noPointOfADemonstrationSiteIsWorseThanReported(String name) {
        Site site = DemoSite.read(name);
        WorstSearch search = SpreadStudy.search(site, findings(site), 8, 20261127L);
        assertThat(search.checks()).hasSizeGreaterThan(10);
        assertThat(search.counterexamples()).isEmpty();
    }

    /** What a sample leaves out may not change what it tells. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "brackenmire-mistakes.yaml",
                "ternhook-wood-shared.yaml",
                "millgarth-two-wires.yaml",
                "quernholm-resonant.yaml",
                "fellmark-single-wire.yaml"
            })
    void findingsOfASampleAreThoseOfAWholeStudyOfThatPoint(String name) {
        Site site = DemoSite.read(name);
        List<SpreadInput> inputs = SpreadInput.of(site);
        Site point = SpreadInput.at(site, new InputSampler(site, inputs, 20261125L).sample(1));
        Map<PointRun.Question, Finding> whole = PointRun.keyed(findings(point));
        Map<PointRun.Question, Finding> sample = PointRun.keyed(ComplianceRun.of(point, new SampleStudy().of(point)));
        int compared = 0;
        for (Map.Entry<PointRun.Question, Finding> entry : whole.entrySet()) {
            Finding full = entry.getValue();
            if (full.value().isPresent() && full.margin().isPresent()) {
                assertThat(sample).containsKey(entry.getKey());
                Finding drawn = Objects.requireNonNull(sample.get(entry.getKey()));
                assertThat(List.of(drawn.status(), drawn.value(), drawn.limit(), drawn.margin()))
                        .as(entry.getKey().toString())
                        .isEqualTo(List.of(full.status(), full.value(), full.limit(), full.margin()));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(10);
    }

    /** Tables of the ground change no verdict, and no value by more than they say. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "brackenmire-mistakes.yaml",
                "cobblers-mere-neutral.yaml",
                "fellmark-single-wire.yaml",
                "harrowfell-steel-rock.yaml",
                "millgarth-two-wires.yaml",
                "ollinford-concrete-lv.yaml",
                "pellwharf-plate-concrete.yaml",
                "quernholm-resonant.yaml",
                "ravensike-readings.yaml",
                "skarrowen-antenna.yaml",
                "ternhook-wood-separate.yaml",
                "ternhook-wood-shared.yaml",
                "thornby-shield-wire.yaml"
            })
    void tabulatedSamplesAreThoseOfAWholeStudy(String name) {
        Site site = DemoSite.read(name);
        List<SpreadInput> inputs = SpreadInput.of(site);
        InputSampler sampler = new InputSampler(site, inputs, 20261127L);
        PointRun points = PointRun.tabulated(site, inputs);
        assertThat(points.bound()).isLessThan(1e-3);
        for (int i = 0; i < 3; i++) {
            double[] values = sampler.sample(i);
            Map<PointRun.Question, Finding> sample = points.at(values);
            findingsByQuestion(SpreadInput.at(site, values)).forEach((question, full) -> {
                if (full.value().isPresent() && full.margin().isPresent()) {
                    assertThat(sample).containsKey(question);
                    Finding drawn = Objects.requireNonNull(sample.get(question));
                    assertThat(drawn.status()).as(question.toString()).isEqualTo(full.status());
                    double margin = full.margin().getAsDouble();
                    assertThat(drawn.margin().orElseThrow())
                            .as(question.toString())
                            .isCloseTo(margin, within(2 * points.bound() * (1 + Math.abs(margin)) + 1e-6));
                }
            });
        }
    }

    private static Map<PointRun.Question, Finding> findingsByQuestion(Site point) {
        return PointRun.keyed(findings(point));
    }

    /** The gate on speed rests on tables: where they can be made they are made. */
    @Test
    void layeredGroundUnderOneElectrodeIsTabulated() {
        Site site = DemoSite.read("ternhook-wood-shared.yaml");
        assertThat(PointRun.tabulated(site, SpreadInput.of(site)).bound())
                .isPositive()
                .isLessThan(1e-4);
    }

    /**
     * The capacitive current of a small isolated network does not depend on the pole's earth (1 A: 12.7 kΩ of capacitance
     * against some 40 Ω), so that the potential rise is current times resistance. With both lognormal it is lognormal:
     * the variances of the logarithms add, with twice their covariance where the inputs are correlated (Johnson, Kotz,
     * Balakrishnan, Continuous Univariate Distributions, volume 1, 1994, chapter 14, from memory). A rank correlation r
     * belongs to 2 sin(π r/6) of the normal variables (Pearson 1907, from memory).
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.6, -0.6})
    void thePotentialRiseOfAStiffSourceInLognormalGroundIsLognormal(double rank) throws IOException {
        Site site = rod("""

                uncertainty:
                  distributions:
                    - {key: soil.resistivity, shape: lognormal, limits: no}
                    - {key: system.neutral.capacitive-current, shape: lognormal, limits: no}
                """ + (rank == 0 ? "" : """
                  correlations:
                    - {one: soil.resistivity, other: system.neutral.capacitive-current, rank: "%s"}
                """.formatted(rank)), STIFF);
        int n = 2000;
        List<SpreadInput> inputs = SpreadInput.of(site);
        InputSampler sampler = new InputSampler(site, inputs, 20261127L);
        PointRun points = PointRun.tabulated(site, inputs);
        double median =
                rise(points.at(inputs.stream().mapToDouble(SpreadInput::nominal).toArray()));
        double[] values = IntStream.range(0, n)
                .parallel()
                .mapToDouble(i -> rise(points.at(sampler.sample(i))))
                .sorted()
                .toArray();
        NormalDistribution normal = new NormalDistribution();
        double wide = 2 * normal.inverseCumulativeProbability(0.975);
        double ground = Math.log(240.0 / 60) / wide;
        double current = Math.log(1.6 / 0.625) / wide;
        double correlation = 2 * Math.sin(Math.PI * rank / 6);
        double variance = ground * ground + current * current + 2 * correlation * ground * current;
        for (double part : new double[] {0.05, 0.25, 0.5, 0.75, 0.95}) {
            double exact = median * Math.exp(Math.sqrt(variance) * normal.inverseCumulativeProbability(part));
            double below = (double)
                            IntStream.range(0, n).filter(i -> values[i] < exact).count()
                    / n;
            // The part of the samples below the exact quantile scatters by √(p(1−p)/n).
            assertThat(below).isCloseTo(part, within(3.5 * Math.sqrt(part * (1 - part) / n)));
        }
        double mean =
                IntStream.range(0, n).mapToDouble(i -> values[i]).average().orElseThrow();
        double exactMean = median * Math.exp(variance / 2);
        assertThat(mean).isCloseTo(exactMean, within(3.5 * exactMean * Math.sqrt(Math.expm1(variance) / n)));
    }

    private static final String STIFF =
            "three-phase-fault-current: 4 kA\n  neutral: {method: isolated, capacitive-current:"
                    + " {low: 0.625 A, nominal: 1 A, high: 1.6 A}}";

    private static double rise(Map<PointRun.Question, Finding> found) {
        return found.values().stream()
                .filter(f -> f.id().equals("epr.main"))
                .findFirst()
                .orElseThrow()
                .value()
                .orElseThrow();
    }

    /**
     * In uniform ground the resistance is the resistivity times a length, so that of a lognormal resistivity it is
     * lognormal: its quantiles are those of the resistivity in proportion.
     */
    @Test
    void theResistanceInLognormalGroundIsLognormal() throws IOException {
        Site site = rod("""

                uncertainty:
                  distributions:
                    - {key: soil.resistivity, shape: lognormal, limits: no}
                """);
        int n = 1000;
        List<SpreadInput> inputs = SpreadInput.of(site);
        InputSampler sampler = new InputSampler(site, inputs, 20261125L);
        PointRun points = new PointRun(site);
        double[] nominal = inputs.stream().mapToDouble(SpreadInput::nominal).toArray();
        double perNominal = resistance(points.at(nominal));
        double[] values = IntStream.range(0, n)
                .parallel()
                .mapToDouble(i -> resistance(points.at(sampler.sample(i))))
                .sorted()
                .toArray();
        NormalDistribution normal = new NormalDistribution();
        double deviation = Math.log(240.0 / 60) / (2 * normal.inverseCumulativeProbability(0.975));
        for (double part : new double[] {0.1, 0.25, 0.5, 0.75, 0.9}) {
            // The part of the samples below the exact quantile scatters by √(p(1−p)/n).
            double exact = perNominal * Math.exp(deviation * normal.inverseCumulativeProbability(part));
            double below = (double)
                            IntStream.range(0, n).filter(i -> values[i] < exact).count()
                    / n;
            assertThat(below).isCloseTo(part, within(3.5 * Math.sqrt(part * (1 - part) / n)));
        }
        double mean =
                IntStream.range(0, n).mapToDouble(i -> values[i]).average().orElseThrow();
        double exactMean = perNominal * Math.exp(deviation * deviation / 2);
        double scatter = exactMean * Math.sqrt(Math.expm1(deviation * deviation) / n);
        assertThat(mean).isCloseTo(exactMean, within(3.5 * scatter));
    }

    private static double resistance(Map<PointRun.Question, Finding> found) {
        return found.values().stream()
                .filter(f -> f.id().equals("electrode.resistance"))
                .findFirst()
                .orElseThrow()
                .value()
                .orElseThrow();
    }

    @Test
    void theSameSeedGivesTheSameWhateverTheNumberOfThreads() throws Exception {
        Site site = rod("");
        List<Finding> findings = findings(site);
        SpreadStudy many = SpreadStudy.of(site, findings, 20, 7, step -> {});
        SpreadStudy one = alone(() -> SpreadStudy.of(site, findings, 20, 7, step -> {}));
        assertThat(one.next()).isEqualTo(many.next());
        assertThat(one.search()).isEqualTo(many.search());
        assertThat(numbers(one)).isEqualTo(numbers(many));
        assertThat(numbers(SpreadStudy.of(site, findings, 20, 8, step -> {}))).isNotEqualTo(numbers(many));
        assertThat(many.checks()).isNotEmpty();
        assertThat(many.checks()).allSatisfy(check -> {
            assertThat(check.interval().getLowerBound()).isLessThanOrEqualTo(check.probability());
            assertThat(check.interval().getUpperBound()).isGreaterThanOrEqualTo(check.probability());
        });
        // A rod of 3 m has about a third of the resistivity as its resistance, so 50 ohm are met at 60 and not at 240
        // ohm.m.
        Knowledge first = many.next().get(0);
        assertThat(first.key()).isEqualTo("soil.resistivity");
        assertThat(first.furthest()).isEqualTo(1);
        assertThat(first.turns()).contains(new Knowledge.Turn("electrode.resistance", "electrode main", 0, 1));
    }

    private static <T> T alone(java.util.concurrent.Callable<T> work) throws InterruptedException, ExecutionException {
        ForkJoinPool pool = new ForkJoinPool(1);
        try {
            return pool.submit(work).get();
        } finally {
            pool.shutdown();
        }
    }

    private static List<List<Double>> numbers(SpreadStudy study) {
        return study.checks().stream()
                .map(c -> List.of(c.probability(), c.mean(), c.quantile(0.05), c.quantile(0.5), c.marginQuantile(0.95)))
                .toList();
    }

    /** A verdict that claims more than it can keep is found out, with the inputs at which it breaks. */
    @Test
    void aVerdictThatIsNotTheWorstPointIsTold() throws IOException {
        Site site = rod("");
        List<Finding> claimed = findings(site).stream()
                .map(f -> f.id().equals("electrode.resistance") ? better(f) : f)
                .toList();
        WorstSearch search = SpreadStudy.of(site, claimed, 1, 1, step -> {}).search();
        assertThat(search.allCorners()).isTrue();
        assertThat(search.corners()).isEqualTo(4);
        WorstSearch.Compared found = search.counterexamples().stream()
                .filter(c -> c.id().equals("electrode.resistance"))
                .findFirst()
                .orElseThrow();
        assertThat(found.at()).containsEntry("soil.resistivity", 240.0);
        assertThat(found.worst()).isGreaterThan(found.reported());
    }

    private static Finding better(Finding f) {
        return new Finding(
                f.id(),
                f.group(),
                f.subject(),
                Status.MET,
                OptionalDouble.of(1),
                f.limit(),
                f.unit(),
                OptionalDouble.of(0.9),
                f.circumstances(),
                f.bound(),
                f.basis(),
                f.worked(),
                f.reason(),
                f.advice());
    }

    @Test
    void whatIsNotKnownIsListedWithWhatItBlocks() {
        Site site = DemoSite.read("lowgarth-short.yaml");
        List<Finding> findings = findings(site);
        SpreadStudy study = SpreadStudy.of(site, findings, 5, 1, step -> {});
        assertThat(study.inputs()).isEmpty();
        assertThat(study.unknown()).isNotEmpty();
        Knowledge.Unknown first = study.unknown().get(0);
        assertThat(first.blocks())
                .allSatisfy(id -> assertThat(findings)
                        .anyMatch(f -> f.id().equals(id) && f.status() == Status.INSUFFICIENT_DATA));
        assertThat(study.unknown().stream().map(u -> u.blocks().size()))
                .isSortedAccordingTo(java.util.Comparator.reverseOrder());
    }
}
