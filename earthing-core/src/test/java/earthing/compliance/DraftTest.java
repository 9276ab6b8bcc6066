package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Source;
import org.junit.jupiter.api.Test;

/** When a value keeps to its limit. */
final class DraftTest {

    private static Draft draft() {
        return new Draft("a.check", Finding.Group.SURGE, "a value", Source.tool("a test"));
    }

    private static Finding atMost(double value, double limit) {
        return draft().atMost(value, limit, "A", "");
    }

    private static Finding atLeast(double value, double limit) {
        return draft().atLeast(value, limit, "A", "");
    }

    @Test
    void roundingDecidesNoVerdict() {
        // what a site and its own tested arrangement differed by
        Finding same = atMost(3967.9171780745337, 3967.917178074529);
        assertThat(same.status()).isEqualTo(Status.MET);
        assertThat(same.margin()).hasValue(0);
        assertThat(atLeast(3967.917178074529, 3967.9171780745337).status()).isEqualTo(Status.MET);
    }

    @Test
    void whatLiesBeyondTheLimitIsNotMet() {
        assertThat(atMost(1 + 1e-8, 1).status()).isEqualTo(Status.NOT_MET);
        assertThat(atLeast(1 - 1e-8, 1).status()).isEqualTo(Status.NOT_MET);
        assertThat(atMost(1e-300, 0).status()).isEqualTo(Status.NOT_MET);
        assertThat(atMost(Double.NaN, 1).status()).isEqualTo(Status.NOT_MET);
        assertThat(atLeast(Double.NaN, 1).status()).isEqualTo(Status.NOT_MET);
        assertThat(atMost(Double.POSITIVE_INFINITY, 1).status()).isEqualTo(Status.NOT_MET);
    }

    @Test
    void nothingIsAboveNoLimit() {
        assertThat(atMost(1, Double.POSITIVE_INFINITY).status()).isEqualTo(Status.MET);
        assertThat(atMost(1, Double.POSITIVE_INFINITY).margin()).isEmpty();
        assertThat(atMost(0, 0).status()).isEqualTo(Status.MET);
    }
}
