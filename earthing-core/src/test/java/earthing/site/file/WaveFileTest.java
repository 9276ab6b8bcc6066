package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.ColumnTable;
import earthing.site.Key;
import earthing.site.Surges;
import earthing.surge.PowerExponential;
import earthing.surge.SampledImpulse;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.StringLength;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class WaveFileTest {

    private static final String GOOD = "time [us], current [kA]\n0, 0\n8, 10\n20, 5\n60, 0\n";

    private static @Nullable ColumnTable table(String text, ProblemList problems) {
        Key key = Block.of(Surges.class).entries().stream()
                .filter(entry -> entry.key().equals("own-wave"))
                .findFirst()
                .orElseThrow()
                .meaning();
        return TableFile.checked("wave.csv", text.getBytes(StandardCharsets.UTF_8), key, problems);
    }

    private static SampledImpulse read(String text) {
        return WaveFile.impulse(Objects.requireNonNull(table(text, new ProblemList("wave.csv"))));
    }

    private static String refusal(String text) {
        ProblemList problems = new ProblemList("wave.csv");
        assertThat(table(text, problems)).isNull();
        return String.join(
                "\n", problems.inOrderOfFile().stream().map(Problem::text).toList());
    }

    @Test
    void readsUnitsColumnsInEitherOrderAndComments() {
        SampledImpulse wave = read(GOOD);
        assertThat(wave.at(8e-6)).isCloseTo(10e3, within(1e-9));
        assertThat(wave.at(4e-6)).isCloseTo(5e3, within(1e-9));
        assertThat(wave.duration()).isCloseTo(60e-6, within(1e-18));
        SampledImpulse turned = read("# of a generator\ncurrent [A]; time [s]\n0;0\n10e3;8e-6\n5e3;20e-6\n0;60e-6\n");
        assertThat(turned.at(8e-6)).isCloseTo(10e3, within(1e-9));
        SampledImpulse comma = read("# decimal: comma\ntime [us];current [kA]\n0;0\n0,5;1,25\n3;0\n");
        assertThat(comma.at(0.5e-6)).isCloseTo(1250, within(1e-9));
    }

    @Test
    void everyProblemNamesFileRowAndColumn() {
        assertThat(refusal("time [us], current [kA]\n0, 0\n1, x\n2, 3\n3, 0\n"))
                .contains("wave.csv:3:2")
                .contains("\"x\" is no number");
        assertThat(refusal("time [us]; current [kA]\n0;0\n1,5;2\n3;0\n"))
                .contains("wave.csv:3:1")
                .contains("comma");
        assertThat(refusal("time, current [kA]\n0, 0\n"))
                .contains("wave.csv:1:1")
                .contains("unit");
        assertThat(refusal("time [us], voltage [kV]\n0, 0\n")).contains("wave.csv:1:2");
        assertThat(refusal("time [us], time [us]\n0, 0\n")).contains("twice");
        assertThat(refusal("time [us], current [kA]\n0, 0\n2, 3\n1, 4\n3, 0\n"))
                .contains("wave.csv:4:1")
                .contains("rise");
        assertThat(refusal("time [us], current [kA]\n-1, 0\n2, 3\n3, 4\n")).contains("wave.csv:2:1");
        assertThat(refusal("time [us], current [kA]\n0, 0, 3\n")).contains("3 values");
        assertThat(refusal("time [us], current [kA]\n0, 0\n1, 2\n")).contains("fewer than 3 rows");
        assertThat(refusal("time [us], current [kA]\n0, 0\n1, -2\n2, -1\n")).contains("above 0");
        assertThat(refusal("# decimal: comma\ntime [us], current [kA]\n0, 0\n")).contains("semicolons");
        assertThat(refusal("")).contains("nothing in this file");
        assertThat(refusal("time [us], current [kA], note\n0, 0, a\n")).contains("wave.csv:1:3", "unknown column");
        assertThat(refusal("time [us], current [kA]\n0, 0\n1, 1e999\n2, 0\n")).contains("wave.csv:3:2");
    }

    @Property(seed = "20261125", tries = 300)
    void anyTextIsReadOrRefusedWithAReason(@ForAll @StringLength(max = 200) String text) {
        assertThat(refusal(text)).isNotEmpty();
    }

    @Property(seed = "20261125", tries = 20)
    void aWrittenWaveComesBack(@ForAll @LongRange(min = 1, max = 50) long peak) {
        PowerExponential wave = PowerExponential.impulse820(peak * 1e3);
        StringBuilder text = new StringBuilder("time [us], current [A]\n");
        for (int k = 0; k <= 200; k++) {
            text.append(String.format(Locale.ROOT, "%.3f, %.6f%n", k * 0.5, wave.at(k * 0.5e-6)));
        }
        SampledImpulse read = read(text.toString());
        assertThat(read.shape().peak()).isCloseTo(peak * 1e3, within(peak * 2.0));
        assertThat(read.shape().charge())
                .isCloseTo(wave.shape().charge(), within(0.001 * wave.shape().charge()));
    }
}
