package earthing.fleet;

import earthing.compliance.Finding.Group;
import earthing.compliance.Status;
import earthing.fleet.PoleResult.Governing;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** What the results of a run say together: counts, margins, what is missing, and the work in its order. */
public final class FleetSummary {

    /** Name of the file that {@link #workList} fills. */
    public static final String WORK_LIST = "work-list.csv";

    private final TableForm form;
    private final Map<Group, Map<Status, Integer>> statuses = new EnumMap<>(Group.class);
    private final Map<Status, Integer> headlines = new EnumMap<>(Status.class);
    private final Map<Group, List<Double>> margins = new EnumMap<>(Group.class);
    private final Map<String, Integer> missing = new HashMap<>();
    private final List<Work> work = new ArrayList<>();
    private int assessed;
    private int refused;

    private FleetSummary(TableForm form) {
        this.form = form;
    }

    /** Why a pole is on the work list. */
    public enum Why {
        /** A requirement is not met. */
        NOT_MET,
        /** An input is missing, or a model gave no answer. */
        NOT_ASSESSED,
        /** The row has no value. */
        REFUSED
    }

    /**
     * One pole with work to do.
     *
     * @param row number of the row in the table
     * @param pole number or name of the pole
     * @param why why it is here
     * @param check the check that decides its place, empty for a refused row
     * @param margin margin of that check, where there is one
     * @param keys keys to fill in, the one that most poles lack first
     * @param reason why a row was refused, else empty
     */
    public record Work(
            int row, String pole, Why why, String check, OptionalDouble margin, List<String> keys, String reason) {
        /**
         * Copies the keys.
         *
         * @param row number of the row in the table
         * @param pole number or name of the pole
         * @param why why it is here
         * @param check the check that decides its place, empty for a refused row
         * @param margin margin of that check, where there is one
         * @param keys keys to fill in, the one that most poles lack first
         * @param reason why a row was refused, else empty
         */
        public Work {
            keys = List.copyOf(keys);
        }
    }

    /**
     * A key with the number of poles that lack it.
     *
     * @param key dotted key
     * @param poles how many
     */
    public record Lack(String key, int poles) {}

    /**
     * Sums up a run.
     *
     * @param folder folder of the run
     * @param form how its table, and so its results, are written
     * @return the summary
     * @throws IOException if the results cannot be read
     */
    public static FleetSummary of(Path folder, TableForm form) throws IOException {
        FleetSummary summary = new FleetSummary(form);
        results(folder, form, summary::add);
        summary.rank();
        return summary;
    }

    /**
     * Goes through the results of a run.
     *
     * @param folder folder of the run
     * @param form how its table, and so its results, are written
     * @param visitor is told each row
     * @throws IOException if the results cannot be read
     */
    public static void results(Path folder, TableForm form, Consumer<PoleResult> visitor) throws IOException {
        new ResultsTable(form).read(folder.resolve(FleetStore.RESULTS), visitor);
    }

    private void add(PoleResult result) {
        if (!result.isAssessed()) {
            refused++;
            work.add(new Work(
                    result.row(), result.pole(), Why.REFUSED, "", OptionalDouble.empty(), List.of(), result.reason()));
            return;
        }
        assessed++;
        headlines.merge(result.headline().orElseThrow(), 1, Integer::sum);
        result.governing().forEach((group, governing) -> {
            statuses.computeIfAbsent(group, g -> new EnumMap<>(Status.class))
                    .merge(governing.status(), 1, Integer::sum);
            governing
                    .margin()
                    .ifPresent(margin -> margins.computeIfAbsent(group, g -> new ArrayList<>())
                            .add(margin));
        });
        result.missingKeys().forEach(key -> missing.merge(key.intern(), 1, Integer::sum));
        result.governing().values().stream()
                .filter(governing -> isWork(governing.status()))
                .min(Comparator.comparingInt((Governing g) -> -g.status().weight())
                        .thenComparingDouble(g -> g.margin().orElse(Double.POSITIVE_INFINITY)))
                .ifPresent(worst -> work.add(new Work(
                        result.row(),
                        result.pole(),
                        worst.status() == Status.NOT_MET ? Why.NOT_MET : Why.NOT_ASSESSED,
                        worst.check(),
                        worst.margin(),
                        result.missingKeys(),
                        "")));
    }

    private static boolean isWork(Status status) {
        return status == Status.NOT_MET || status == Status.INSUFFICIENT_DATA || status == Status.NOT_ASSESSED;
    }

    /** The worst margin first; then by the key that most poles lack; then the rows without value. */
    private void rank() {
        Comparator<String> mostMissing = Comparator.comparingInt((String key) -> -missing.getOrDefault(key, 0))
                .thenComparing(Comparator.naturalOrder());
        work.replaceAll(item -> new Work(
                item.row(),
                item.pole(),
                item.why(),
                item.check(),
                item.margin(),
                item.keys().stream().sorted(mostMissing).toList(),
                item.reason()));
        work.sort(Comparator.comparing(Work::why)
                .thenComparingDouble(
                        item -> item.why() == Why.NOT_MET ? item.margin().orElse(Double.POSITIVE_INFINITY) : 0)
                .thenComparingInt(
                        item -> item.why() != Why.NOT_ASSESSED || item.keys().isEmpty()
                                ? 0
                                : -missing.getOrDefault(item.keys().get(0), 0))
                .thenComparing(
                        item -> item.why() == Why.NOT_ASSESSED && !item.keys().isEmpty()
                                ? item.keys().get(0)
                                : "")
                .thenComparingInt(Work::row));
    }

    /**
     * Rows that were assessed.
     *
     * @return their number
     */
    public int assessed() {
        return assessed;
    }

    /**
     * Rows that have only a reason.
     *
     * @return their number
     */
    public int refused() {
        return refused;
    }

    /**
     * Poles by their headline.
     *
     * @param status a status
     * @return how many have it as their headline
     */
    public int headlines(Status status) {
        return headlines.getOrDefault(status, 0);
    }

    /**
     * Poles by the status of a group.
     *
     * @param group the group
     * @param status the status
     * @return how many have it
     */
    public int poles(Group group, Status status) {
        return statuses.getOrDefault(group, Map.of()).getOrDefault(status, 0);
    }

    /**
     * Margins of the governing findings of a group.
     *
     * @param group the group
     * @return relative margins in rising order; empty where no finding has one
     */
    public double[] margins(Group group) {
        double[] values = margins.getOrDefault(group, List.of()).stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        Arrays.sort(values);
        return values;
    }

    /**
     * What poles lack.
     *
     * @return the key that most lack first
     */
    public List<Lack> lacks() {
        return missing.entrySet().stream()
                .map(entry -> new Lack(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparingInt((Lack lack) -> -lack.poles()).thenComparing(Lack::key))
                .toList();
    }

    /**
     * The poles with work to do.
     *
     * @return the worst margin first, then by the key that most poles lack, then rows without value
     */
    public List<Work> work() {
        return List.copyOf(work);
    }

    /**
     * The heaviest reason why a pole is on the work list.
     *
     * @return the reason, none if no pole is
     */
    public Optional<Why> outcome() {
        return work.stream().map(Work::why).min(Comparator.naturalOrder());
    }

    /**
     * The work as a table.
     *
     * @return separated values with a head line
     */
    public String workList() {
        ResultsTable table = new ResultsTable(form);
        StringBuilder text = new StringBuilder(
                table.line(List.of("rank", "row", "pole", "why", "check", "margin", "keys to fill in", "reason")));
        int rank = 0;
        for (Work item : work) {
            text.append(table.line(List.of(
                    Integer.toString(++rank),
                    Integer.toString(item.row()),
                    item.pole(),
                    switch (item.why()) {
                        case NOT_MET -> "not met";
                        case NOT_ASSESSED -> "not assessed";
                        case REFUSED -> "row refused";
                    },
                    item.check(),
                    item.margin().isPresent() ? table.number(item.margin().getAsDouble()) : "",
                    String.join(" ", item.keys()),
                    item.reason())));
        }
        return text.toString();
    }
}
