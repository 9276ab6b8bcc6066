package earthing.decision;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.decision.Knowledge.Turn;
import earthing.decision.Knowledge.Unknown;
import earthing.decision.PointRun.Question;
import earthing.decision.WorstSearch.Compared;
import earthing.site.Site;
import earthing.study.Workers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A site with its bounded inputs spread: probability that each requirement is not met, a search for points that are worse
 * than the verdicts, and what to measure next. The same seed gives the same numbers, whatever the number of threads.
 *
 * @param inputs the bounded inputs with their distributions
 * @param samples number of samples
 * @param seed seed of the generators
 * @param checks what becomes of each check that has a value and a limit in every sample
 * @param search the search for a worse point
 * @param next the bounded inputs, the one that it pays most to know first
 * @param unknown keys that are not known, with what they block
 * @param tables how far tables of the ground were used
 */
public record SpreadStudy(
        List<SpreadInput> inputs,
        int samples,
        long seed,
        List<CheckSpread> checks,
        WorstSearch search,
        List<Knowledge> next,
        List<Unknown> unknown,
        Tables tables) {

    /**
     * Tables of what depends on the ground alone. No verdict of a sample rests on them where they could turn it.
     *
     * @param bound greatest relative difference from exact solutions that was seen between their points; zero where
     *     nothing is interpolated
     * @param again points with so small a margin that they were studied again without tables
     */
    public record Tables(double bound, int again) {}

    /** Up to this many varied inputs all corners are tried. */
    public static final int MOST_CORNERED = 8;

    /** Most points within the bounds that are tried, and most corners where there are more inputs; never more than samples. */
    public static final int TRIED = 256;

    /** Most samples at each end of an input that is taken as known; never more than a tenth of all. */
    public static final int RUNS_AT_AN_END = 100;

    private static final int LEAST_RUNS = 10;

    /** Samples that are studied before their findings are counted. */
    private static final int BLOCK = 4096;

    /** Findings that hold something against the band of the bounds themselves, of which a point has none. */
    public static final Set<String> OF_THE_BOUNDS = Set.of("test.agreement");

    /** How the advice of a finding without data begins; keys follow. */
    private static final String FILL_IN = "fill in ";

    /**
     * Copies the lists.
     *
     * @param inputs the bounded inputs with their distributions
     * @param samples number of samples
     * @param seed seed of the generators
     * @param checks what becomes of each check that has a value and a limit in every sample
     * @param search the search for a worse point
     * @param next the bounded inputs, the one that it pays most to know first
     * @param unknown keys that are not known, with what they block
     * @param tables how far tables of the ground were used
     */
    public SpreadStudy {
        inputs = List.copyOf(inputs);
        checks = List.copyOf(checks);
        next = List.copyOf(next);
        unknown = List.copyOf(unknown);
    }

    /**
     * Studies a site.
     *
     * @param site the site
     * @param findings what the checks found with its bounds
     * @param samples number of samples, at least 1
     * @param seed seed of the generators
     * @param watch is told each step
     * @return what was found
     * @throws IllegalArgumentException if a distribution or the correlations are impossible; the message names the key
     */
    public static SpreadStudy of(Site site, List<Finding> findings, int samples, long seed, Consumer<String> watch) {
        List<SpreadInput> inputs = SpreadInput.of(site);
        if (inputs.isEmpty()) {
            WorstSearch nothing = new WorstSearch(0, true, 0, List.of(), List.of());
            return new SpreadStudy(
                    inputs, samples, seed, List.of(), nothing, List.of(), unknown(findings), new Tables(0, 0));
        }
        return Workers.here(
                () -> new Run(site, findings, inputs, new InputSampler(site, inputs, seed), watch).all(samples, seed));
    }

    /** The search for a worse point alone. */
    static WorstSearch search(Site site, List<Finding> findings, int tried, long seed) {
        List<SpreadInput> inputs = SpreadInput.of(site);
        return new Run(site, findings, inputs, new InputSampler(site, inputs, seed), step -> {}).search(tried);
    }

    private static List<Unknown> unknown(List<Finding> findings) {
        Map<String, Set<String>> blocked = new TreeMap<>();
        for (Finding finding : findings) {
            if (finding.status() == Status.INSUFFICIENT_DATA && finding.advice().startsWith(FILL_IN)) {
                for (String key : finding.advice().substring(FILL_IN.length()).split(", ", -1)) {
                    blocked.computeIfAbsent(key, k -> new LinkedHashSet<>()).add(finding.id());
                }
            }
        }
        List<Unknown> unknown = new ArrayList<>();
        blocked.forEach((key, ids) -> unknown.add(new Unknown(key, List.copyOf(ids))));
        unknown.sort(Comparator.comparingInt((Unknown u) -> -u.blocks().size()));
        return unknown;
    }

    private static final class Run {

        private final List<SpreadInput> inputs;
        private final InputSampler sampler;
        private final Consumer<String> watch;
        private final PointRun points;
        private final Map<Question, Finding> verdicts;

        Run(Site site, List<Finding> findings, List<SpreadInput> inputs, InputSampler sampler, Consumer<String> watch) {
            this.inputs = inputs;
            this.sampler = sampler;
            this.watch = watch;
            this.points = PointRun.tabulated(site, inputs);
            this.verdicts = PointRun.keyed(findings);
        }

        SpreadStudy all(int samples, long seed) {
            watch.accept("trying corners and points within the bounds");
            WorstSearch search = search(Math.min(TRIED, samples));
            watch.accept("drawing " + samples + " samples");
            List<CheckSpread> checks = checks(samples);
            watch.accept("asking what to measure next");
            List<Knowledge> next = new ArrayList<>();
            for (SpreadInput input : inputs) {
                next.add(known(input, Math.min(RUNS_AT_AN_END, Math.max(LEAST_RUNS, samples / 10))));
            }
            next.sort(Knowledge.FURTHEST_FIRST);
            return new SpreadStudy(
                    inputs,
                    samples,
                    seed,
                    checks,
                    search,
                    next,
                    unknown(List.copyOf(verdicts.values())),
                    new Tables(points.bound(), points.again()));
        }

        /** The followed findings of many points, one array a finding; those that a point lacks are null. */
        private Map<Question, @Nullable Finding[]> run(int count, IntFunction<double[]> values) {
            List<Map<Question, Finding>> all = IntStream.range(0, count)
                    .parallel()
                    .mapToObj(i -> followed(points.at(values.apply(i))))
                    .toList();
            Map<Question, @Nullable Finding[]> byKey = new LinkedHashMap<>();
            for (Question key : verdicts.keySet()) {
                @Nullable Finding[] row = new @Nullable Finding[count];
                boolean any = false;
                for (int i = 0; i < count; i++) {
                    row[i] = all.get(i).get(key);
                    any |= row[i] != null;
                }
                if (any) {
                    byKey.put(key, row);
                }
            }
            return byKey;
        }

        /** Findings with a value and a margin, without their texts, which would fill the memory. */
        private static Map<Question, Finding> followed(Map<Question, Finding> found) {
            Map<Question, Finding> kept = new LinkedHashMap<>();
            found.forEach((key, finding) -> {
                boolean judged = finding.value().isPresent() && finding.margin().isPresent();
                if (judged && !OF_THE_BOUNDS.contains(finding.id())) {
                    kept.put(key, bare(finding));
                }
            });
            return kept;
        }

        private static Finding bare(Finding f) {
            return new Finding(
                    f.id(),
                    f.group(),
                    "",
                    f.status(),
                    f.value(),
                    f.limit(),
                    f.unit(),
                    f.margin(),
                    f.circumstances(),
                    f.bound(),
                    f.basis(),
                    Optional.empty(),
                    "",
                    "");
        }

        /** Block by block, in the order of the samples, so that a million of them take no more room than a block. */
        private List<CheckSpread> checks(int samples) {
            Map<Question, CheckSpread> checks = new LinkedHashMap<>();
            verdicts.forEach((key, verdict) -> checks.put(key, new CheckSpread(verdict)));
            for (int from = 0; from < samples; from += BLOCK) {
                int first = from;
                List<Map<Question, Finding>> found = IntStream.range(from, Math.min(samples, from + BLOCK))
                        .parallel()
                        .mapToObj(i -> followed(points.at(sampler.sample(i))))
                        .toList();
                checks.keySet().removeIf(key -> !found.stream().allMatch(sample -> sample.containsKey(key)));
                checks.forEach(
                        (key, check) -> found.forEach(sample -> check.add(Objects.requireNonNull(sample.get(key)))));
                if (samples > BLOCK) {
                    watch.accept("drawing " + samples + " samples: " + (first + found.size()) + " done");
                }
            }
            return checks.values().stream().map(CheckSpread::settled).toList();
        }

        private WorstSearch search(int tried) {
            List<SpreadInput> varied = inputs.stream().filter(i -> !i.held()).toList();
            List<String> held = inputs.stream()
                    .filter(SpreadInput::held)
                    .map(SpreadInput::key)
                    .toList();
            if (varied.isEmpty()) {
                return new WorstSearch(0, true, 0, held, List.of());
            }
            boolean all = varied.size() <= MOST_CORNERED;
            int corners = all ? 1 << varied.size() : tried;
            int count = corners + tried;
            IntFunction<double[]> values = i -> {
                double[] point =
                        i >= corners ? sampler.within(i - corners) : all ? corner(varied, i) : sampler.corner(i);
                for (SpreadInput input : inputs) {
                    if (input.held()) {
                        point[input.number()] = input.nominal();
                    }
                }
                return point;
            };
            List<Compared> compared = new ArrayList<>();
            run(count, values).forEach((key, row) -> {
                Finding verdict = Objects.requireNonNull(verdicts.get(key));
                if (verdict.value().isPresent() && verdict.margin().isPresent()) {
                    compared.add(compared(key, verdict, row, values));
                }
            });
            return new WorstSearch(corners, all, tried, held, compared);
        }

        private double[] corner(List<SpreadInput> varied, int bits) {
            double[] values = inputs.stream().mapToDouble(SpreadInput::nominal).toArray();
            for (int i = 0; i < varied.size(); i++) {
                SpreadInput input = varied.get(i);
                values[input.number()] = (bits >> i & 1) == 1 ? input.high() : input.low();
            }
            return values;
        }

        private Compared compared(
                Question key, Finding verdict, @Nullable Finding[] row, IntFunction<double[]> values) {
            int worst = -1;
            double least = Double.POSITIVE_INFINITY;
            double value = Double.NaN;
            for (int i = 0; i < row.length; i++) {
                Finding finding = row[i];
                if (finding != null && finding.margin().orElseThrow() < least) {
                    worst = i;
                    least = finding.margin().getAsDouble();
                    value = finding.value().orElseThrow();
                }
            }
            Map<String, Double> at = new LinkedHashMap<>();
            double[] point = values.apply(worst);
            if (points.bound() > 0 && least < verdict.margin().orElseThrow() - WorstSearch.TOLERANCE) {
                // A counterexample is not left to a table.
                Finding exact = points.exactly(point).get(key);
                if (exact != null && exact.margin().isPresent()) {
                    least = exact.margin().getAsDouble();
                    value = exact.value().orElseThrow();
                }
            }
            inputs.forEach(input -> at.put(input.key(), point[input.number()]));
            return new Compared(
                    verdict.id(),
                    verdict.subject(),
                    verdict.unit(),
                    verdict.value().orElseThrow(),
                    verdict.margin().orElseThrow(),
                    value,
                    least,
                    at);
        }

        private Knowledge known(SpreadInput input, int runs) {
            Map<Question, @Nullable Finding[]> rows = run(2 * runs, i -> {
                double[] values = sampler.sample(i / 2);
                values[input.number()] = i % 2 == 0 ? input.low() : input.high();
                return values;
            });
            List<Turn> turns = new ArrayList<>();
            rows.forEach((key, row) -> {
                int[] notMet = new int[2];
                int[] judged = new int[2];
                for (int i = 0; i < row.length; i++) {
                    Finding finding = row[i];
                    if (finding != null) {
                        judged[i % 2]++;
                        notMet[i % 2] += CheckSpread.isNotMet(finding) ? 1 : 0;
                    }
                }
                if (judged[0] > 0 && judged[1] > 0) {
                    Turn turn = new Turn(
                            key.id(), key.subject(), (double) notMet[0] / judged[0], (double) notMet[1] / judged[1]);
                    if (turn.swing() > 0) {
                        turns.add(turn);
                    }
                }
            });
            return new Knowledge(input.key(), runs, turns);
        }
    }
}
