package earthing.cli;

import java.util.List;

/** A command that cannot go on, for a reason the user can mend. */
final class CommandFailure extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final ExitCode exitCode;
    private final transient List<String> lines;

    CommandFailure(ExitCode exitCode, List<String> lines) {
        super(String.join("; ", lines));
        this.exitCode = exitCode;
        this.lines = List.copyOf(lines);
    }

    ExitCode exitCode() {
        return exitCode;
    }

    List<String> lines() {
        return lines;
    }
}
