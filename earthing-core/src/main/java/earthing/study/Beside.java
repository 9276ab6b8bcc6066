package earthing.study;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Supplier;

/** Studies of one site side by side, or one after another where many sites are studied side by side already. */
final class Beside {

    private Beside() {}

    /**
     * Begins a study. A worker of a pool does it at once and itself: the pool has as many workers as are wanted, and threads
     * beyond them would only take turns.
     */
    static <T> CompletableFuture<T> of(Supplier<T> study) {
        if (!ForkJoinTask.inForkJoinPool()) {
            return CompletableFuture.supplyAsync(study);
        }
        try {
            return CompletableFuture.completedFuture(study.get());
        } catch (RuntimeException | Error failed) {
            // Told where the study is asked for, as from another thread.
            return CompletableFuture.failedFuture(failed);
        }
    }

    /** The same for what is done for its effect. */
    static CompletableFuture<Boolean> doing(Runnable work) {
        return of(() -> {
            work.run();
            return true;
        });
    }
}
