package earthing.cli;

import earthing.study.Workers;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** How many threads a command studies with. */
final class ThreadsOption {

    /** More only take turns. */
    private static final int MOST = 1024;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads that study side by side; default: one for each processor. The result is the same.")
    private Optional<Integer> threads = Optional.empty();

    /** The number that was asked for, or that of the processors. */
    int number(CommandSpec spec) {
        int number = threads.orElseGet(Workers::ofThisMachine);
        if (number < 1 || number > MOST) {
            throw new ParameterException(spec.commandLine(), "--threads takes 1 to " + MOST + "; have " + number);
        }
        return number;
    }
}
