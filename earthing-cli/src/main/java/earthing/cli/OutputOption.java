package earthing.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Where a command puts what it made. */
final class OutputOption {

    @Option(names = "--output", paramLabel = "FILE", description = "Write to this file instead of standard output.")
    private Optional<Path> file = Optional.empty();

    Optional<Path> file() {
        return file;
    }

    /**
     * Prints the text, or writes it to the file.
     *
     * @param text the finished text
     * @param out standard output
     */
    void deliver(String text, PrintWriter out) {
        Delivery.deliver(text, file, out);
    }
}
