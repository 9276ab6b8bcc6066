package earthing.decision;

import earthing.study.Workers;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;

/** Looks every few milliseconds which threads are inside a study while something runs. */
public final class BusyThreads {

    private BusyThreads() {}

    /**
     * Runs something and tells the threads that were seen inside a study.
     *
     * @param work what is run
     * @return names and numbers of the threads
     * @throws Exception whatever the work throws
     */
    public static Set<String> during(Callable<?> work) throws Exception {
        Set<String> seen = new TreeSet<>();
        boolean[] over = {false};
        Thread watch = new Thread(() -> {
            while (!over[0]) {
                look(seen);
                try {
                    Thread.sleep(3);
                } catch (InterruptedException end) {
                    return;
                }
            }
        });
        watch.start();
        try {
            work.call();
        } finally {
            over[0] = true;
            watch.interrupt();
            watch.join();
        }
        return seen;
    }

    private static void look(Set<String> seen) {
        for (Map.Entry<Thread, StackTraceElement[]> thread :
                Thread.getAllStackTraces().entrySet()) {
            for (StackTraceElement frame : thread.getValue()) {
                // Whoever waits for workers stands in Workers himself.
                if (frame.getClassName().startsWith("earthing.study.")
                        && !frame.getClassName().equals(Workers.class.getName())) {
                    seen.add(thread.getKey().getName() + " " + thread.getKey().getId());
                }
            }
        }
    }
}
