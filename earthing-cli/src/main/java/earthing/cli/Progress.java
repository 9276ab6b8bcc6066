package earthing.cli;

import java.io.PrintWriter;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** One line on a terminal that says what a run of more than a second is doing; it is gone when the run ends. */
final class Progress implements AutoCloseable {

    /** Set by the launcher if standard error is a terminal; Java alone cannot tell. */
    static final String TERMINAL = "earthing.terminal";

    private static final long PERIOD_MILLIS = 250;
    private static final int WIDTH = 79;

    private final PrintWriter err;
    private final @Nullable ScheduledExecutorService clock;
    private volatile String step;
    private int ticks;
    private boolean shown;

    private Progress(PrintWriter err, @Nullable ScheduledExecutorService clock, String step) {
        this.err = err;
        this.clock = clock;
        this.step = step;
    }

    /**
     * Begins to watch a run.
     *
     * @param root the command line, which knows {@code --quiet}
     * @param err standard error
     * @param step what is done first
     * @return the line; closing it wipes it out
     */
    static Progress of(RootCommand root, PrintWriter err, String step) {
        return watching(!root.quiet() && onTerminal(), err, step, PERIOD_MILLIS);
    }

    static Progress watching(boolean wanted, PrintWriter err, String step, long periodMillis) {
        if (!wanted) {
            // Nothing to schedule: a short run pays for no thread.
            return new Progress(err, null, step);
        }
        ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "progress");
            thread.setDaemon(true);
            return thread;
        });
        Progress progress = new Progress(err, clock, step);
        var unused = clock.scheduleAtFixedRate(progress::show, 4 * periodMillis, periodMillis, TimeUnit.MILLISECONDS);
        return progress;
    }

    private static boolean onTerminal() {
        return Boolean.getBoolean(TERMINAL);
    }

    /**
     * Says what is done next.
     *
     * @param next a few words
     */
    void step(String next) {
        step = next;
    }

    private synchronized void show() {
        String line = "earthing: " + step + " " + ".".repeat(1 + ticks % 3);
        ticks++;
        shown = true;
        err.print("\r" + (line + " ".repeat(WIDTH)).substring(0, WIDTH));
        err.flush();
    }

    @Override
    public void close() {
        if (clock != null) {
            clock.shutdownNow();
            wipe();
        }
    }

    private synchronized void wipe() {
        if (shown) {
            err.print("\r" + " ".repeat(WIDTH) + "\r");
            err.flush();
            shown = false;
        }
    }
}
