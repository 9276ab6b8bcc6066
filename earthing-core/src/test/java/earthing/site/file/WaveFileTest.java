package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.surge.PowerExponential;
import earthing.surge.SampledImpulse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WaveFileTest {

    private static final String GOOD = "time [us], current [kA]\n0, 0\n8, 10\n20, 5\n60, 0\n";

    private static SampledImpulse read(String text) {
        WaveFile.Outcome outcome = WaveFile.read(text, "wave.csv");
        if (outcome instanceof WaveFile.Read read) {
            return read.impulse();
        }
        throw new AssertionError(((WaveFile.Refused) outcome).problems().toString());
    }

    private static String refusal(String text) {
        WaveFile.Outcome outcome = WaveFile.read(text, "wave.csv");
        assertThat(outcome).isInstanceOf(WaveFile.Refused.class);
        return String.join(
                "\n",
                ((WaveFile.Refused) outcome)
                        .problems().stream().map(Problem::text).toList());
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
        assertThat(refusal("time [us], current [kA]\n0, 0\n1, 2\n")).contains("at least 3 rows");
        assertThat(refusal("time [us], current [kA]\n0, 0\n1, -2\n2, -1\n")).contains("above 0");
        assertThat(refusal("# decimal: comma\ntime [us], current [kA]\n0, 0\n")).contains("semicolons");
        assertThat(refusal("")).contains("0 samples");
        assertThat(refusal("time [us], current [kA], note\n0, 0, a\n")).contains("3 columns");
        assertThat(refusal("time [us], current [kA]\n0, 0\n1, 1e999\n2, 0\n")).contains("wave.csv:3:2");
    }

    @Test
    void aFileIsLookedForBesideTheSiteFile(@TempDir Path folder) throws IOException {
        Path site = folder.resolve("site.yaml");
        Files.writeString(folder.resolve("w.csv"), GOOD);
        assertThat(WaveFile.beside(site, "w.csv")).isInstanceOf(WaveFile.Read.class);
        for (String name : new String[] {"../w.csv", "/w.csv", "a\\w.csv", "..", " "}) {
            WaveFile.Outcome outcome = WaveFile.beside(site, name);
            assertThat(((WaveFile.Refused) outcome).problems().get(0).text())
                    .contains("surges.own-wave")
                    .contains("plain name");
        }
        WaveFile.Outcome absent = WaveFile.beside(site, "absent.csv");
        assertThat(((WaveFile.Refused) absent).problems().get(0).text()).contains("no such file");
    }

    @Property(seed = "20261125", tries = 300)
    void anyTextIsReadOrRefusedWithAReason(@ForAll @StringLength(max = 200) String text) {
        WaveFile.Outcome outcome = WaveFile.read(text, "wave.csv");
        assertThat(outcome instanceof WaveFile.Refused refused
                        && !refused.problems().isEmpty())
                .isTrue();
    }

    @Property(seed = "20261125", tries = 300)
    void aDamagedFileIsReadOrRefusedWithAReason(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder(GOOD);
        for (int k = 0; k < 3; k++) {
            int at = random.nextInt(text.length());
            char put = "0,.;-e[]\n\"#x ".charAt(random.nextInt(13));
            if (random.nextBoolean()) {
                text.setCharAt(at, put);
            } else {
                text.insert(at, put);
            }
        }
        WaveFile.Outcome outcome = WaveFile.read(text.toString(), "wave.csv");
        if (outcome instanceof WaveFile.Refused refused) {
            assertThat(refused.problems()).isNotEmpty();
        } else {
            assertThat(((WaveFile.Read) outcome).impulse().size()).isGreaterThanOrEqualTo(3);
        }
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
