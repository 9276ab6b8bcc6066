package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TriangularDistribution;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.junit.jupiter.api.Test;

/** Drawn inputs against the closed forms of their distributions, within what the number of samples allows. */
class InputSamplerTest {

    private static final int SAMPLES = 20_000;

    /** Two layers: 90, 110, 140 and 35, 45, 60 ohm.m. */
    private static Site site(String uncertainty) throws IOException {
        String text = Files.readString(Path.of("..", "earthing-cli", "sites", "ternhook-wood-shared.yaml"));
        ReadOutcome outcome = SiteFile.read(text + uncertainty, "site.yaml");
        assertThat(outcome).as(outcome.toString()).isInstanceOf(ReadOutcome.Valid.class);
        return ((ReadOutcome.Valid) outcome).site();
    }

    private static int number(List<SpreadInput> inputs, String key) {
        return inputs.stream()
                .filter(i -> i.key().equals(key))
                .findFirst()
                .orElseThrow()
                .number();
    }

    private static double[] column(InputSampler sampler, int input) {
        double[] column = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            column[i] = sampler.sample(i)[input];
        }
        return column;
    }

    /** Greatest distance of distribution functions; above 1.95/√n only once in a thousand (Kolmogorov). */
    private static void follows(double[] sample, DoubleUnaryOperator distribution) {
        double[] sorted = sample.clone();
        Arrays.sort(sorted);
        double most = 0;
        for (int i = 0; i < sorted.length; i++) {
            double exact = distribution.applyAsDouble(sorted[i]);
            most = Math.max(
                    most, Math.max(Math.abs(exact - (double) i / SAMPLES), Math.abs(exact - (i + 1.0) / SAMPLES)));
        }
        assertThat(most).isLessThan(1.95 / Math.sqrt(SAMPLES));
    }

    @Test
    void eachShapeFollowsItsClosedForm() throws IOException {
        Site site = site("""

                uncertainty:
                  distributions:
                    - {key: "soil.layers[1].resistivity", shape: lognormal, share: 90 %, limits: no}
                    - {key: "soil.layers[2].resistivity", shape: uniform}
                    - {key: system.earth-fault-current, shape: normal, share: 80 %}
                """);
        List<SpreadInput> inputs = SpreadInput.of(site);
        InputSampler sampler = new InputSampler(site, inputs, 20261125L);
        double z90 = new NormalDistribution().inverseCumulativeProbability(0.95);
        follows(
                column(sampler, number(inputs, "soil.layers[1].resistivity")),
                new LogNormalDistribution(Math.log(110), Math.log(140.0 / 90) / (2 * z90))::cumulativeProbability);
        follows(column(sampler, number(inputs, "soil.layers[2].resistivity")), x -> (x - 35) / 25);
        follows(
                column(sampler, number(inputs, "system.three-phase-fault-current")),
                new TriangularDistribution(3200, 4000, 4800)::cumulativeProbability);
        double z80 = new NormalDistribution().inverseCumulativeProbability(0.9);
        NormalDistribution whole = new NormalDistribution(99, (102.0 - 95) / (2 * z80));
        double below = whole.cumulativeProbability(95);
        double kept = whole.cumulativeProbability(102) - below;
        double[] truncated = column(sampler, number(inputs, "system.earth-fault-current"));
        assertThat(Arrays.stream(truncated).allMatch(x -> x >= 95 && x <= 102)).isTrue();
        follows(truncated, x -> (whole.cumulativeProbability(x) - below) / kept);
    }

    /** The logarithm of a product of two lognormal values is normal; its variance is s₁² + s₂² + 2·r·s₁·s₂. */
    @Test
    void correlatedInputsHaveTheDeclaredRanksAndTheirProductItsClosedForm() throws IOException {
        Site site = site("""

                uncertainty:
                  distributions:
                    - {key: "soil.layers[1].resistivity", shape: lognormal, limits: no}
                    - {key: "soil.layers[2].resistivity", shape: lognormal, limits: no}
                  correlations:
                    - {one: "soil.layers[1].resistivity", other: "soil.layers[2].resistivity", rank: "-0.6"}
                    - {one: system.earth-fault-current, other: "soil.layers[2].resistivity", rank: "0.5"}
                """);
        List<SpreadInput> inputs = SpreadInput.of(site);
        InputSampler sampler = new InputSampler(site, inputs, 20261125L);
        double[] upper = column(sampler, number(inputs, "soil.layers[1].resistivity"));
        double[] lower = column(sampler, number(inputs, "soil.layers[2].resistivity"));
        double[] current = column(sampler, number(inputs, "system.earth-fault-current"));
        double[] other = column(sampler, number(inputs, "system.three-phase-fault-current"));
        SpearmansCorrelation ranks = new SpearmansCorrelation();
        double error = 4 / Math.sqrt(SAMPLES);
        assertThat(ranks.correlation(upper, lower)).isCloseTo(-0.6, within(error));
        assertThat(ranks.correlation(current, lower)).isCloseTo(0.5, within(error));
        assertThat(ranks.correlation(upper, other)).isCloseTo(0, within(error));
        double z = new NormalDistribution().inverseCumulativeProbability(0.975);
        double s1 = Math.log(140.0 / 90) / (2 * z);
        double s2 = Math.log(60.0 / 35) / (2 * z);
        double r = 2 * Math.sin(-0.6 * Math.PI / 6);
        double[] product = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            product[i] = upper[i] * lower[i];
        }
        follows(
                product,
                new LogNormalDistribution(Math.log(110 * 45.0), Math.sqrt(s1 * s1 + s2 * s2 + 2 * r * s1 * s2))
                        ::cumulativeProbability);
    }

    @Test
    void correlationsThatContradictEachOtherAreRefused() throws IOException {
        Site site = site("""

                uncertainty:
                  correlations:
                    - {one: "soil.layers[1].resistivity", other: "soil.layers[2].resistivity", rank: "0.9"}
                    - {one: system.earth-fault-current, other: "soil.layers[2].resistivity", rank: "0.9"}
                    - {one: system.earth-fault-current, other: "soil.layers[1].resistivity", rank: "-0.9"}
                """);
        assertThatThrownBy(() -> new InputSampler(site, SpreadInput.of(site), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("uncertainty.correlations");
    }

    @Test
    void aSampleHangsOnSeedAndNumberOnly() throws IOException {
        Site site = site("");
        List<SpreadInput> inputs = SpreadInput.of(site);
        InputSampler one = new InputSampler(site, inputs, 5);
        one.sample(3);
        assertThat(one.sample(7)).isEqualTo(new InputSampler(site, inputs, 5).sample(7));
        assertThat(one.sample(7)).isNotEqualTo(one.sample(8));
        assertThat(one.sample(7)).isNotEqualTo(new InputSampler(site, inputs, 6).sample(7));
    }

    @Test
    void mistakesInTheBlockAreToldWithLineAndKey() throws IOException {
        String text = Files.readString(Path.of("..", "earthing-cli", "sites", "ternhook-wood-shared.yaml")) + """

                uncertainty:
                  distributions:
                    - {key: soil.resistivity, shape: uniform}
                    - {key: tank.height, shape: uniform}
                    - {key: system.earth-fault-current, shape: uniform, share: 90 %}
                    - {key: system.earth-fault-current, shape: normal, share: 100 %}
                  correlations:
                    - {one: system.earth-fault-current, other: system.earth-fault-current, rank: "0.5"}
                    - {one: system.earth-fault-current, other: system.three-phase-fault-current, rank: "1"}
                """;
        ReadOutcome.Invalid refused = (ReadOutcome.Invalid) SiteFile.read(text, "site.yaml");
        assertThat(refused.problems()).extracting(p -> p.line() > 0).containsOnly(true);
        assertThat(refused.problems().stream().map(p -> p.key() + ": " + p.found()))
                .containsExactly(
                        "uncertainty.distributions[1].key: there is no key \"soil.resistivity\" in this file",
                        "uncertainty.distributions[2].key: \"tank.height\" has no low and high",
                        "uncertainty.distributions[3].share: this key does not belong here",
                        "uncertainty.distributions[4].key: this input has a distribution already",
                        "uncertainty.distributions[4].share: no part is as large as the whole",
                        "uncertainty.correlations[1].other: an input goes together with itself",
                        "uncertainty.correlations[2].rank: this is no rank correlation");
    }
}
