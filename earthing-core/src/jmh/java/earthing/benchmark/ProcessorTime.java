package earthing.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Processor time an operation, of this process and of the peers it started: on a machine that is never quiet this says
 * more than the time by the clock. Linux only, in ticks of 10 ms over a whole iteration.
 */
public final class ProcessorTime implements InternalProfiler {

    /** Name of the figure. */
    static final String LABEL = "processor";

    private static final double TICK = 0.01;
    private double before;

    /** Made by the harness. */
    public ProcessorTime() {}

    @Override
    public String getDescription() {
        return "processor time of this process and its children";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        before = used();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double each =
                1000 * (used() - before) / Math.max(1, result.getMetadata().getMeasuredOps());
        return List.of(new ScalarResult(LABEL, each, "ms/op", AggregationPolicy.AVG));
    }

    /** Processor time of this process, of children that ended and of children that live [s]. */
    private static double used() {
        var own = (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        double children = ProcessHandle.current()
                .children()
                .mapToDouble(child -> ticks(child.pid(), 11) + ticks(child.pid(), 12))
                .sum();
        long self = ProcessHandle.current().pid();
        return own.getProcessCpuTime() * 1e-9 + TICK * (children + ticks(self, 13) + ticks(self, 14));
    }

    /** A field of /proc/PID/stat counted from behind the name, 0 for a process that is gone. */
    private static long ticks(long pid, int field) {
        try {
            String stat = Files.readString(Path.of("/proc", Long.toString(pid), "stat"));
            return Long.parseLong(stat.substring(stat.lastIndexOf(')') + 2).split(" ", -1)[field]);
        } catch (NoSuchFileException e) {
            return 0;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
