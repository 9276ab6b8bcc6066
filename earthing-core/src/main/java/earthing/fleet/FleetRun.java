package earthing.fleet;

import earthing.compliance.ComplianceRun;
import earthing.fleet.FleetTable.PoleSite;
import earthing.fleet.FleetTable.TableRow;
import earthing.site.Site;
import earthing.study.EarthCache;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;

/**
 * Assesses the rows of a table by several threads and writes what came of them in the order of the table, so that the files
 * are the same for any number of threads, and the same again after a run was stopped and has gone on.
 */
public final class FleetRun {

    /** Rows that are under way beyond the one that is written next, for each thread. */
    private static final int AHEAD = 16;

    /** The journal is renewed after so many rows. */
    private static final int SETTLED = 50;

    private static final long PATIENCE_MILLIS = 100;

    private final FleetTable table;
    private final Order order;
    private final Watcher watcher;
    private final ResultsTable results;
    private final EarthCache cache = EarthCache.ofManySites();

    private FleetRun(FleetTable table, Order order, Watcher watcher) {
        this.table = table;
        this.order = order;
        this.watcher = watcher;
        this.results = new ResultsTable(table.form());
    }

    /**
     * What is to be done.
     *
     * @param base the site file below the rows, if there is one
     * @param folder folder of the results
     * @param threads number of rows that are assessed at a time, 1 or more
     * @param resume whether the run in the folder goes on
     * @param toolVersion version of the program; a run goes on with the same only
     * @param json turns an outcome into one line of JSON with its end
     */
    public record Order(
            Optional<Path> base,
            Path folder,
            int threads,
            boolean resume,
            String toolVersion,
            Function<PoleOutcome, String> json) {
        /**
         * Refuses a run without threads.
         *
         * @param base the site file below the rows, if there is one
         * @param folder folder of the results
         * @param threads number of rows that are assessed at a time, 1 or more
         * @param resume whether the run in the folder goes on
         * @param toolVersion version of the program; a run goes on with the same only
         * @param json turns an outcome into one line of JSON with its end
         */
        public Order {
            if (threads < 1) {
                throw new IllegalArgumentException("a run needs 1 thread or more; have " + threads);
            }
        }
    }

    /** Who follows a run. */
    public interface Watcher {
        /**
         * Is told each row that is written.
         *
         * @param rows number of rows that are done, with those of an earlier run
         */
        void done(int rows);

        /**
         * Whether the run is to stop; it then keeps what is done.
         *
         * @return true to stop
         */
        boolean isStopped();
    }

    /**
     * Runs.
     *
     * @param table the table
     * @param order what is to be done
     * @param watcher who follows it
     * @return number of rows that are done, fewer than the table has if the run was stopped
     * @throws FleetRefusal if the folder does not fit
     * @throws IOException if a file cannot be written
     */
    public static int of(FleetTable table, Order order, Watcher watcher) throws IOException, FleetRefusal {
        FleetRun run = new FleetRun(table, order, watcher);
        String inputs = run.inputs();
        try (FleetStore store = order.resume()
                ? FleetStore.resume(order.folder(), inputs)
                : FleetStore.begin(order.folder(), inputs, run.results.head())) {
            // What a row does side by side is done by these workers too.
            ForkJoinPool workers = new ForkJoinPool(order.threads());
            try {
                run.rows(store, workers);
            } finally {
                workers.shutdownNow();
                store.settle();
            }
            return store.rows();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void rows(FleetStore store, ForkJoinPool workers) {
        Deque<Future<PoleOutcome>> underWay = new ArrayDeque<>();
        int done = store.rows();
        watcher.done(done);
        table.rows((index, row) -> {
            if (index < done) {
                return true;
            }
            underWay.add(workers.submit(() -> outcome(row)));
            return underWay.size() < AHEAD * order.threads() || written(underWay.remove(), store);
        });
        boolean going = !watcher.isStopped();
        while (going && !underWay.isEmpty()) {
            going = written(underWay.remove(), store);
        }
    }

    /** Writes an outcome when it is there; false if the run is to stop. */
    private boolean written(Future<PoleOutcome> outcome, FleetStore store) {
        try {
            while (!watcher.isStopped()) {
                try {
                    PoleOutcome there = outcome.get(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
                    store.append(
                            results.line(ResultsTable.result(there)),
                            order.json().apply(there));
                    if (store.rows() % SETTLED == 0) {
                        store.settle();
                    }
                    watcher.done(store.rows());
                    return !watcher.isStopped();
                } catch (TimeoutException notYet) {
                    // Asked again, so that a stop is heard.
                }
            }
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        } catch (ExecutionException e) {
            throw new IllegalStateException("a row ended the run", e.getCause());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A value or a reason, whatever the row is. */
    private PoleOutcome outcome(TableRow row) {
        PoleSite read = table.site(row);
        Site site = read.site();
        if (site == null) {
            return new PoleOutcome.Refused(row.number(), row.pole(), table.name(), read.reasons());
        }
        try {
            return new PoleOutcome.Assessed(
                    row.number(),
                    row.pole(),
                    site,
                    ComplianceRun.of(site, SiteStudy.of(site, StudyScope.AS_BUILT, cache)));
        } catch (RuntimeException | StackOverflowError fault) {
            // One pole that the program fails on must not cost the others their answer.
            Reason reason = new Reason(0, "", "internal error: " + fault, "");
            return new PoleOutcome.Refused(row.number(), row.pole(), table.name(), List.of(reason));
        }
    }

    /** What the results depend on; files that cells name are not among it. */
    private String inputs() throws IOException {
        MessageDigest digest = FleetTable.sha256();
        digest.update(table.contentSha256().getBytes(StandardCharsets.UTF_8));
        digest.update((byte) table.form().separator());
        digest.update((byte) (table.form().decimalComma() ? 1 : 0));
        digest.update(order.toolVersion().getBytes(StandardCharsets.UTF_8));
        if (order.base().isPresent()) {
            try (InputStream in = Files.newInputStream(order.base().get())) {
                digest.update(in.readAllBytes());
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }
}
