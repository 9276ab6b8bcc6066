package earthing.study;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/** Work in a pool of its own: what it does side by side, at any depth, is done by the workers of that pool alone. */
public final class Workers {

    private Workers() {}

    /**
     * As many workers as the machine has processors.
     *
     * @return the number, at least 1
     */
    public static int ofThisMachine() {
        return Runtime.getRuntime().availableProcessors();
    }

    /**
     * Does work and waits for it; what it throws is thrown as it is.
     *
     * @param <T> what comes of it
     * @param workers number of workers, 1 or more
     * @param work the work
     * @return what comes of it
     */
    public static <T> T of(int workers, Supplier<T> work) {
        ForkJoinPool pool = new ForkJoinPool(workers);
        // A future of its own, since a pool throws a copy of what was thrown, with another message.
        FutureTask<T> task = new FutureTask<>(work::get);
        try {
            pool.execute(task);
            return task.get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException reason) {
                throw reason;
            }
            if (failed.getCause() instanceof Error reason) {
                throw reason;
            }
            throw new IllegalStateException(failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while waiting for work", stopped);
        } finally {
            pool.shutdown();
        }
    }

    /**
     * Does work in the pool that the caller belongs to, or in one as wide as the machine where it belongs to none.
     *
     * @param <T> what comes of it
     * @param work the work
     * @return what comes of it
     */
    public static <T> T here(Supplier<T> work) {
        return ForkJoinTask.inForkJoinPool() ? work.get() : of(ofThisMachine(), work);
    }
}
