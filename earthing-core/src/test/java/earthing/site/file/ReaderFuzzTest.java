package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import earthing.quantity.ColumnTable;
import earthing.quantity.Numbers;
import earthing.site.Key;
import earthing.site.Measurement;
import earthing.site.OwnerCriteria;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.Surges;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Damaged files by the thousand. Each is refused with reasons, or read so that nothing it says is lost or altered; no
 * error of the library, no hang, no memory without bound. {@code -Dfuzz.inputs} sets how many, {@code -Dfuzz.seed} where
 * chance starts, {@code -Dfuzz.only} repeats one of them.
 */
final class ReaderFuzzTest {

    private static final int INPUTS = Integer.getInteger("fuzz.inputs", 5_000);
    private static final long SEED = Long.getLong("fuzz.seed", 20261125L);
    private static final int ONLY = Integer.getInteger("fuzz.only", -1);

    /** Far above what any input takes on a busy machine; a hang takes longer. */
    private static final int MOST_SECONDS = 20;

    /** All that one input may allocate, what is collected meanwhile included [bytes]. */
    private static final long MOST_MEMORY = 64L << 20;

    private static final Path FOLDER = Path.of("..", "earthing-cli", "sites");

    private static final String LOWGARTH = lowgarth();

    private static String lowgarth() {
        try {
            return Files.readString(FOLDER.resolve("lowgarth-short.yaml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What is read, and its share of the inputs [%]. */
    enum Kind {
        SITE(55, Site.class, ""),
        SURVEY(16, Soil.class, "survey-file"),
        WAVE(16, Surges.class, "own-wave"),
        LIMITS(8, OwnerCriteria.class, "touch-curve"),
        /** A filled test sheet, whose readings go into a site file. */
        READINGS(5, Site.class, "");

        private final int percent;
        private final Class<? extends Record> block;
        private final String key;

        Kind(int percent, Class<? extends Record> block, String key) {
            this.percent = percent;
            this.block = block;
            this.key = key;
        }

        private Key key() {
            return Objects.requireNonNull(Block.of(block).entry(key)).meaning();
        }
    }

    /** What came of one input. */
    private record Result(boolean valid, long allocated) {}

    @ParameterizedTest
    @EnumSource
    void everyInputIsToldOrReadInFull(Kind kind) throws Exception {
        List<String> good = good(kind);
        int count = INPUTS * kind.percent / 100;
        int valid = 0;
        int run = 0;
        ExecutorService reader = Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task, "reader under test");
            thread.setDaemon(true);
            return thread;
        });
        try {
            for (int i = Math.max(ONLY, 0); i < (ONLY < 0 ? count : ONLY + 1); i++) {
                byte[] input = input(kind, good, i);
                valid += watched(kind, i, input, reader) ? 1 : 0;
                run++;
            }
        } finally {
            reader.shutdownNow();
        }
        if (run >= 200) {
            // Damage that is always told, or never, would test one side only.
            assertThat(valid).as("valid ones of " + run).isBetween(run / 20, run * 4 / 5);
        }
    }

    /** One input in a thread of its own, so that a hang or an overflow of the stack is told with the input. */
    private static boolean watched(Kind kind, int number, byte[] input, ExecutorService reader) throws Exception {
        Future<Result> future = reader.submit(() -> measured(kind, input));
        try {
            Result result = future.get(MOST_SECONDS, TimeUnit.SECONDS);
            if (result.allocated() > MOST_MEMORY) {
                throw failure(kind, number, input, "allocated " + result.allocated() + " bytes", null);
            }
            return result.valid();
        } catch (TimeoutException e) {
            throw failure(kind, number, input, "not read within " + MOST_SECONDS + " s", e);
        } catch (ExecutionException e) {
            throw failure(kind, number, input, String.valueOf(e.getCause()), e.getCause());
        }
    }

    private static AssertionError failure(Kind kind, int number, byte[] input, String what, @Nullable Throwable cause)
            throws IOException {
        Path kept = Path.of("target", "fuzz", kind + "-" + SEED + "-" + number + ".txt");
        Files.createDirectories(Objects.requireNonNull(kept.getParent()));
        Files.write(kept, input);
        return new AssertionError(
                kind + " input " + number + " of seed " + SEED + " (repeat with -Dfuzz.seed=" + SEED + " -Dfuzz.only="
                        + number + "; kept as " + kept + "): " + what,
                cause);
    }

    private static Result measured(Kind kind, byte[] input) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        boolean valid = switch (kind) {
            case SITE -> site(input);
            case READINGS -> readings(input);
            default -> table(kind, input);
        };
        return new Result(valid, threads.getCurrentThreadAllocatedBytes() - before);
    }

    private static boolean site(byte[] input) {
        SideFiles beside = SideFiles.beside(FOLDER.resolve("damaged.yaml"));
        ReadOutcome outcome = SiteFile.read(input, "damaged.yaml", beside);
        if (outcome instanceof ReadOutcome.Invalid invalid) {
            told(invalid.problems());
            return false;
        }
        ReadOutcome.Valid valid = (ReadOutcome.Valid) outcome;
        assertThat(SaidAndRead.differences(text(input), valid.site())).isEmpty();
        String written = SiteFile.write(valid.site());
        ReadOutcome again = SiteFile.read(written.getBytes(StandardCharsets.UTF_8), "again.yaml", beside);
        assertThat(Problems.of(again)).as(written).isEmpty();
        assertThat(((ReadOutcome.Valid) again).site()).as(written).isEqualTo(valid.site());
        assertThat(SiteFile.write(((ReadOutcome.Valid) again).site())).isEqualTo(written);
        return true;
    }

    private static boolean table(Kind kind, byte[] input) {
        ProblemList problems = new ProblemList("damaged.csv");
        ColumnTable table = TableFile.checked("damaged.csv", input, kind.key(), problems);
        if (table == null) {
            told(problems.inOrderOfFile());
            return false;
        }
        assertThat(TableRows.differences(text(input), table)).isEmpty();
        String written = written(kind.key(), table);
        ProblemList none = new ProblemList("again.csv");
        ColumnTable again = TableFile.checked("again.csv", written.getBytes(StandardCharsets.UTF_8), kind.key(), none);
        assertThat(none.inOrderOfFile()).as(written).isEmpty();
        assertThat(written(kind.key(), Objects.requireNonNull(again))).isEqualTo(written);
        if (kind == Kind.SURVEY) {
            SurveyOutcome own = SurveyFile.read(text(input), "damaged.csv", Optional.empty());
            assertThat(((SurveyOutcome.Valid) own).traverses()).isEqualTo(SurveyFile.soundings(table));
        } else if (kind == Kind.WAVE) {
            assertThat(WaveFile.impulse(table).size()).isEqualTo(table.rows());
        }
        return true;
    }

    /** The site file keeps every line, and the readings in it are the rows of the sheet that have a value. */
    private static boolean readings(byte[] input) {
        Path path = FOLDER.resolve("lowgarth-short.yaml");
        ProblemList problems = new ProblemList("damaged.csv");
        String sheet = SiteFile.decode(input, problems);
        if (sheet == null) {
            told(problems.inOrderOfFile());
            return false;
        }
        ReadingsFile.Outcome outcome = ReadingsFile.addTo(sheet, "damaged.csv", LOWGARTH, path);
        if (outcome instanceof ReadingsFile.Outcome.Refused refused) {
            told(refused.problems());
            return false;
        }
        ReadingsFile.Outcome.Added added = (ReadingsFile.Outcome.Added) outcome;
        List<String> kept = new ArrayList<>(added.text().lines().toList());
        assertThat(kept).containsSubsequence(LOWGARTH.lines().toList());
        Site site = ((ReadOutcome.Valid) SiteFile.read(added.text(), "merged.yaml")).site();
        List<Measurement> read = site.measurements();
        List<Map<String, String>> said = said(text(input));
        assertThat(read).hasSize(said.size()).hasSize(added.readings());
        for (int i = 0; i < said.size(); i++) {
            assertThat(read.get(i).of()).isEqualTo(said.get(i).get("of"));
            assertThat(read.get(i).date()).isEqualTo(said.get(i).get("date"));
            assertThat(read.get(i).value().bounds().orElseThrow().nominal().text())
                    .isEqualTo(said.get(i).get("value"));
        }
        return true;
    }

    /** The rows with a value, taken apart by the rules of RFC 4180 and not by the library of the reader under test. */
    private static List<Map<String, String>> said(String text) {
        List<Map<String, String>> rows = new ArrayList<>();
        List<String> head = List.of();
        char separator = 0;
        for (String line : text.split("\r\n|\r|\n", -1)) {
            if (line.isEmpty()) {
                continue;
            }
            if (separator == 0) {
                separator = line.contains(";") ? ';' : ',';
                head = TableRows.cells(line, separator);
                continue;
            }
            List<String> cells = TableRows.cells(line, separator);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < Math.min(cells.size(), head.size()); i++) {
                row.put(head.get(i), cells.get(i));
            }
            if (!row.getOrDefault("value", "").isEmpty()) {
                rows.add(row);
            }
        }
        return rows;
    }

    private static void told(List<Problem> problems) {
        assertThat(problems).isNotEmpty().hasSizeLessThanOrEqualTo(1001);
        for (Problem problem : problems) {
            String text = problem.text();
            assertThat(text.length()).as(text).isLessThan(2000);
            assertThat(text.chars().noneMatch(Character::isISOControl)).as(text).isTrue();
        }
    }

    private static String text(byte[] input) {
        String text = new String(input, StandardCharsets.UTF_8);
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    /** A table as a file in SI units. */
    private static String written(Key key, ColumnTable table) {
        List<Key.Column> columns = Arrays.stream(key.columns())
                .filter(column -> column.text() || table.has(column.name()))
                .toList();
        StringBuilder text = new StringBuilder(columns.stream()
                .map(c -> c.text() ? c.name() : c.name() + " [" + c.unit().siUnit() + "]")
                .collect(Collectors.joining(",")));
        for (int row = 0; row < table.rows(); row++) {
            int at = row;
            text.append('\n')
                    .append(columns.stream()
                            .map(c -> c.text()
                                    ? '"' + table.text(c.name(), at).replace("\"", "\"\"") + '"'
                                    : Numbers.full(table.column(c.name()).get(at)))
                            .collect(Collectors.joining(",")));
        }
        return text.append('\n').toString();
    }

    private static byte[] input(Kind kind, List<String> good, int number) {
        // Seeds that differ by one give first numbers that are much alike.
        Random random =
                new Random((SEED * 31 + kind.name().hashCode()) * 0x9E3779B97F4A7C15L + number * 0xBF58476D1CE4E5B9L);
        return random.nextInt(10) == 0
                ? DamagedFile.noise(good, random)
                : DamagedFile.of(good.get(random.nextInt(good.size())), good, random);
    }

    private static List<String> good(Kind kind) throws IOException {
        List<String> good = new ArrayList<>();
        switch (kind) {
            case SITE -> {
                for (Path path : DemoSitesTest.sites()) {
                    good.add(Files.readString(path));
                }
            }
            case SURVEY -> {
                good.add(Files.readString(FOLDER.resolve("ternhook-survey.csv")));
                good.add(Files.readString(FOLDER.resolve("skarrowen-survey.csv")));
                good.add("AB/2 [m],MN/2 [cm],resistivity [ohm.cm]\n3,50,9000\n5,50,8100\n10,100,7000\n");
                good.add("rod depth [m],rod diameter [mm],resistance [ohm]\n1,16,90\n2,16,52\n3,16,38\n");
                good.add(
                        "# decimal: comma\nspacing [ft];resistance [ohm];traverse\n5;20,5;\"a;b\"\n10;9,1;c\n20;4;c\n");
            }
            case WAVE -> {
                good.add(Files.readString(FOLDER.resolve("quernholm-recorded.csv")));
                good.add("# decimal: comma\ntime [us];current [kA]\n0;0\n0,5;1,25\n3;0\n");
            }
            case READINGS -> {
                good.add("""
                        kind,of,value,method,isolated,current-probe-distance,potential-probe-distance,date,soil-state,expected
                        electrode-resistance,main,18 ohm,fall-of-potential,yes,60 m,37 m,2026-03-02,wet,15 to 25 ohm
                        bond-continuity,main-earth,"0.02 ohm",four-wire,no,,,2026-03-02,,
                        electrode-resistance,main,,fall-of-potential,,,,,,
                        """);
                good.add(
                        "kind;of;value;method;isolated;date\nelectrode-resistance;main;21.5 ohm;clamp-on;no;2026-09-30\n");
            }
            case LIMITS -> {
                good.add(Files.readString(FOLDER.resolve("thornby-owner-limits.csv")));
                good.add("voltage [kV]; time [ms]\n0.7; 50\n0.1; 1000\n");
            }
        }
        return good;
    }

    /** The comparisons can fail: what is altered behind their back is seen. */
    @Test
    void comparisonsSeeWhatIsLostOrAltered() throws IOException {
        String said = Files.readString(FOLDER.resolve("lowgarth-short.yaml"));
        Site site = ((ReadOutcome.Valid) SiteFile.read(said, "x.yaml")).site();
        assertThat(SaidAndRead.differences(said, site)).isEmpty();
        List<String> lines = said.lines().toList();
        int seen = 0;
        for (int i = 0; i < lines.size(); i++) {
            String altered = lines.get(i).replaceFirst("(\\d)(?=[^#]*$)", "1$1");
            if (!altered.equals(lines.get(i)) && !altered.startsWith("#")) {
                List<String> other = new ArrayList<>(lines);
                other.set(i, altered);
                // A value without bounds stands for three.
                assertThat(SaidAndRead.differences(String.join("\n", other), site))
                        .as(altered)
                        .hasSizeBetween(1, 3);
                seen++;
            }
        }
        assertThat(seen).isGreaterThan(10);
        String rows = "time [ms],voltage [V]\n50,700\n100,300\n";
        ColumnTable table = Objects.requireNonNull(TableFile.checked(
                "x.csv", rows.getBytes(StandardCharsets.UTF_8), Kind.LIMITS.key(), new ProblemList("x.csv")));
        assertThat(TableRows.differences(rows, table)).isEmpty();
        assertThat(TableRows.differences(rows.replace("ms", "s"), table)).hasSize(2);
        assertThat(TableRows.differences(rows.replace("300", "301"), table)).hasSize(1);
        assertThat(TableRows.differences(rows + "200,100\n", table)).hasSize(1);
    }
}
