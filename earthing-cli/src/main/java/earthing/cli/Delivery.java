package earthing.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;

/** Brings a finished text to where the user wants it, whole or not at all. */
final class Delivery {

    private Delivery() {}

    /**
     * Prints the text, or writes it to a file.
     *
     * @param text the finished text
     * @param target the file, or empty for standard output
     * @param out standard output
     * @throws CommandFailure when the file cannot be written; what was there before is then untouched
     */
    static void deliver(String text, Optional<Path> target, PrintWriter out) {
        if (target.isEmpty()) {
            out.print(text);
            out.flush();
            return;
        }
        Path file = target.get().toAbsolutePath();
        try {
            write(text, file);
        } catch (IOException e) {
            throw new CommandFailure(
                    ExitCode.USAGE, List.of("earthing: cannot write " + target.get() + ": " + reason(e)));
        }
    }

    private static void write(String text, Path file) throws IOException {
        Path folder = file.getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new IOException("there is no folder " + folder);
        }
        if (Files.isDirectory(file)) {
            throw new IOException("it is a folder");
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            // A pipe or a device cannot be replaced, only written to.
            Files.writeString(file, text, StandardCharsets.UTF_8);
            return;
        }
        // A link stays a link: what it points to is replaced.
        Path real = Files.exists(file) ? file.toRealPath() : file;
        Path draft = real.resolveSibling(
                "." + real.getFileName() + "." + ProcessHandle.current().pid() + ".part");
        try {
            Files.writeString(draft, text, StandardCharsets.UTF_8);
            try {
                Files.move(draft, real, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(draft, real, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(draft);
        }
    }

    /** The message of a file-system exception is often only the path. */
    private static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "permission denied";
        }
        return e instanceof FileSystemException problem && problem.getReason() != null
                ? problem.getReason()
                : String.valueOf(e.getMessage());
    }
}
