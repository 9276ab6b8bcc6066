package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The standard elements stay below their gates on every shape and ground. */
class AccuracyGatesTest {

    @Test
    void everyGateIsMet() {
        List<AccuracyGates.Line> lines = AccuracyGates.lines();
        assertThat(lines).hasSizeGreaterThan(60);
        assertThat(lines)
                .allSatisfy(line -> assertThat(line.worst())
                        .as(line.quantity() + ", " + line.shape() + ", " + line.ground())
                        .isLessThan(line.gate()));
    }
}
