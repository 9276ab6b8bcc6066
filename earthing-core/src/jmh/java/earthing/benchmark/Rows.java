package earthing.benchmark;

import earthing.study.PoleSurgeBenchmark;
import earthing.study.StrokesBenchmark;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs all benchmarks, our own and the peer's in turn and round after round, and prints medians by the clock and by
 * processor time, and what one call takes from the heap. Arguments: number of rounds; then words, of which a benchmark's
 * name must hold one.
 */
public final class Rows {

    /** One benchmark with what it needs. */
    private record Row(String name, Class<?> type, String method, Map<String, String> parameters, Length length) {}

    /** How long a benchmark runs: its warm-up [s], or a single call. */
    private enum Length {
        ITERATIONS(4),
        /** Much code, which the compiler reaches late, above all on a busy machine. */
        LONG(20),
        SINGLE(0);

        private final int warmUp;

        Length(int warmUp) {
            this.warmUp = warmUp;
        }
    }

    private record Figure(double wall, double processor, double allocated) {}

    private Rows() {}

    /**
     * Runs.
     *
     * @param arguments rounds and words
     * @throws RunnerException if a benchmark fails
     * @throws java.io.IOException if the load of the machine cannot be read
     */
    public static void main(String[] arguments) throws RunnerException, java.io.IOException {
        int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 3;
        List<String> words = Arrays.asList(arguments).subList(Math.min(1, arguments.length), arguments.length);
        List<Row> rows = rows().stream()
                .filter(row -> words.isEmpty() || words.stream().anyMatch(row.name()::contains))
                .toList();
        Map<String, List<Figure>> figures = new LinkedHashMap<>();
        List<String> loads = new ArrayList<>();
        for (int round = 0; round < rounds; round++) {
            for (Row row : rows) {
                if (row.length() == Length.SINGLE && round > 0) {
                    continue;
                }
                figures.computeIfAbsent(row.name(), name -> new ArrayList<>()).add(run(row));
            }
            loads.add(Files.readString(Path.of("/proc/loadavg")).trim());
        }
        StringBuilder out = new StringBuilder();
        out.append("load after each round: ").append(String.join("; ", loads)).append('\n');
        out.append("| benchmark | rounds | by the clock [ms] | processor time [ms] | allocated [MB] |\n");
        out.append("|---|---:|---:|---:|---:|\n");
        figures.forEach((name, found) -> out.append(String.format(
                Locale.ROOT,
                "| %s | %d | %.4g | %.4g | %.4g |%n",
                name,
                found.size(),
                median(found.stream().mapToDouble(Figure::wall).toArray()),
                median(found.stream().mapToDouble(Figure::processor).toArray()),
                median(found.stream().mapToDouble(Figure::allocated).toArray()))));
        System.out.print(out);
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        int middle = values.length / 2;
        return values.length % 2 == 1 ? values[middle] : 0.5 * (values[middle - 1] + values[middle]);
    }

    private static Figure run(Row row) throws RunnerException {
        boolean single = row.length() == Length.SINGLE;
        ChainedOptionsBuilder builder = new OptionsBuilder()
                .include(row.type().getName().replace(".", "\\.") + "\\." + row.method() + "$")
                .forks(1)
                .jvmArgsAppend("-Xmx2g")
                .addProfiler(ProcessorTime.class)
                .addProfiler(GCProfiler.class)
                .verbosity(VerboseMode.SILENT)
                .warmupIterations(row.length().warmUp)
                .measurementIterations(single ? 1 : 4)
                .warmupTime(TimeValue.seconds(1))
                .measurementTime(TimeValue.seconds(1))
                .timeout(TimeValue.minutes(20))
                .shouldFailOnError(true);
        row.parameters().forEach(builder::param);
        Options options = builder.build();
        RunResult result = new Runner(options).runSingle();
        double processor = Objects.requireNonNull(result.getSecondaryResults().get(ProcessorTime.LABEL))
                .getScore();
        // All that was taken from the heap for one call, not what is held at once; a peer's own memory is not in it.
        double allocated = Objects.requireNonNull(result.getSecondaryResults().get("gc.alloc.rate.norm"))
                        .getScore()
                / 1e6;
        return new Figure(result.getPrimaryResult().getScore(), processor, allocated);
    }

    private static List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        Map<String, String> none = Map.of();
        for (String sections : List.of("60", "200")) {
            Map<String, String> size = Map.of("sections", sections);
            Length peer = sections.equals("60") ? Length.ITERATIONS : Length.SINGLE;
            rows.add(new Row("surge-own-steps-" + sections, SurgeBenchmark.class, "ownSteps", size, Length.ITERATIONS));
            rows.add(new Row(
                    "surge-own-steps-ngspice-" + sections, SurgeBenchmark.class, "simulatorOwnSteps", size, peer));
        }
        Map<String, String> sixty = Map.of("sections", "60");
        rows.add(new Row("surge-start-ngspice", SurgeBenchmark.class, "simulatorStart", sixty, Length.ITERATIONS));
        rows.add(new Row("surge-equal-steps", SurgeBenchmark.class, "equalSteps", sixty, Length.ITERATIONS));
        rows.add(new Row(
                "surge-equal-steps-ngspice", SurgeBenchmark.class, "simulatorEqualSteps", sixty, Length.SINGLE));
        rows.add(new Row("pole-surge", PoleSurgeBenchmark.class, "study", none, Length.LONG));
        rows.add(new Row("surge-strokes", StrokesBenchmark.class, "strokes", none, Length.LONG));
        rows.add(new Row("pole-surge-frequency", PoleSurgeBenchmark.class, "studyOverFrequency", none, Length.LONG));
        rows.add(new Row("sweep", SweepBenchmark.class, "sweep", none, Length.ITERATIONS));
        rows.add(new Row("sweep-numpy", SweepBenchmark.class, "numpy", none, Length.ITERATIONS));
        rows.add(new Row("ladder", LadderBenchmark.class, "ladder", none, Length.ITERATIONS));
        rows.add(new Row("ladder-scipy", LadderBenchmark.class, "scipy", none, Length.ITERATIONS));
        for (String size : List.of("40", "500", "2000")) {
            Map<String, String> elements = Map.of("elements", size);
            Length peer = size.equals("2000") ? Length.SINGLE : Length.ITERATIONS;
            rows.add(new Row("electrode-" + size, ElectrodeBenchmark.class, "resistance", elements, Length.ITERATIONS));
            rows.add(new Row(
                    "electrode-numpy-tuned-" + size,
                    ElectrodeBenchmark.class,
                    "numpy",
                    Map.of("elements", size, "way", "tuned"),
                    peer));
        }
        for (String size : List.of("40", "500", "2000")) {
            rows.add(new Row(
                    "electrode-numpy-plain-" + size,
                    ElectrodeBenchmark.class,
                    "numpy",
                    Map.of("elements", size, "way", "plain"),
                    size.equals("40") ? Length.ITERATIONS : Length.SINGLE));
        }
        for (String size : List.of("100", "200", "500", "1000", "2000", "4000")) {
            Length length = size.equals("4000") ? Length.SINGLE : Length.ITERATIONS;
            rows.add(new Row(
                    "growth-" + size, ElectrodeBenchmark.class, "resistance", Map.of("elements", size), length));
        }
        rows.add(new Row(
                "surface-10000", ElectrodeBenchmark.class, "surface", Map.of("elements", "40"), Length.ITERATIONS));
        for (String layers : List.of("1", "2", "3")) {
            Map<String, String> ground = Map.of("layers", layers);
            rows.add(new Row(
                    "harmonic-prepared-" + layers, HarmonicBenchmark.class, "prepared", ground, Length.ITERATIONS));
            rows.add(new Row("harmonic-ports-" + layers, HarmonicBenchmark.class, "ports", ground, Length.ITERATIONS));
        }
        rows.add(new Row("inversion", InversionBenchmark.class, "inversion", none, Length.ITERATIONS));
        for (String site : List.of(
                "ternhook-wood-shared",
                "ternhook-wood-separate",
                "cobblers-mere-neutral",
                "quernholm-resonant",
                "skarrowen-antenna",
                "harrowfell-steel-rock",
                "ollinford-concrete-lv")) {
            rows.add(new Row(
                    "site-" + site, SiteBenchmark.class, "studiesAndChecks", Map.of("name", site), Length.ITERATIONS));
        }
        return rows;
    }
}
