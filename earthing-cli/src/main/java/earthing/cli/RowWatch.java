package earthing.cli;

import earthing.fleet.FleetRun;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Shows how far a run of many rows is and how long it still takes; an interrupt lets it keep what is done. */
final class RowWatch implements FleetRun.Watcher, AutoCloseable {

    private static final int BAR = 20;

    /** So long an interrupted process waits for the run to put away what is done. */
    private static final long PATIENCE_SECONDS = 20;

    private final int rows;
    private final Thread interrupt = new Thread(this::stop, "interrupt");
    private final CountDownLatch ended = new CountDownLatch(1);
    private volatile boolean stopped;
    private @Nullable Progress progress;
    private int before = -1;
    private long began;

    RowWatch(int rows) {
        this.rows = rows;
        Runtime.getRuntime().addShutdownHook(interrupt);
    }

    /** Shows the rows on this line. */
    void tells(Progress line) {
        progress = line;
    }

    private void stop() {
        stopped = true;
        try {
            var unused = ended.await(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public boolean isStopped() {
        return stopped;
    }

    @Override
    public void done(int done) {
        if (before < 0) {
            before = done;
            began = System.nanoTime();
        }
        if (progress != null) {
            progress.step(line(done, rows, before, (System.nanoTime() - began) / 1e9));
        }
    }

    /** For example {@code [########------------] 412 of 1000 rows, about 3 min left}. */
    static String line(int done, int rows, int before, double seconds) {
        int filled = rows == 0 ? BAR : (int) ((long) BAR * done / rows);
        String bar = "[" + "#".repeat(filled) + "-".repeat(BAR - filled) + "] " + done + " of " + rows + " rows";
        if (done <= before || seconds < 1) {
            return bar;
        }
        double left = seconds * (rows - done) / (done - before);
        String time = left < 90
                ? (long) (left + 0.5) + " s"
                : left < 5400 ? (long) (left / 60 + 0.5) + " min" : (long) (left / 3600 + 0.5) + " h";
        return bar + ", about " + time + " left";
    }

    @Override
    public void close() {
        ended.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(interrupt);
        } catch (IllegalStateException goingDown) {
            // The process ends by an interrupt; the hook has done its work.
            return;
        }
    }
}
