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
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

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
        deliver(text.getBytes(StandardCharsets.UTF_8), target.get());
    }

    /**
     * Writes bytes to a file.
     *
     * @param bytes the finished content
     * @param target the file
     * @throws CommandFailure when the file cannot be written; what was there before is then untouched
     */
    static void deliver(byte[] bytes, Path target) {
        try {
            write(bytes, target.toAbsolutePath());
        } catch (IOException e) {
            throw new CommandFailure(ExitCode.USAGE, List.of("earthing: cannot write " + target + ": " + reason(e)));
        }
    }

    /**
     * Writes files into a folder that is new, empty, or holds what this program wrote there before.
     *
     * @param files name and content of each
     * @param index name of the file that lists the others, by which such a folder is known
     * @param target the folder
     * @throws CommandFailure when a file cannot be written, or the folder holds something else
     */
    static void deliver(Map<String, String> files, String index, Path target) {
        Path folder = target.toAbsolutePath();
        try {
            Set<String> old = Files.exists(folder) ? earlier(folder, index) : Set.of();
            Files.createDirectories(folder);
            for (Map.Entry<String, String> file : files.entrySet()) {
                write(file.getValue().getBytes(StandardCharsets.UTF_8), folder.resolve(file.getKey()));
            }
            for (String name : old) {
                if (!files.containsKey(name)) {
                    Files.deleteIfExists(folder.resolve(name));
                }
            }
        } catch (IOException e) {
            throw new CommandFailure(ExitCode.USAGE, List.of("earthing: cannot write " + target + ": " + reason(e)));
        }
    }

    /** The files that an earlier run left in a folder: those that its index names. */
    private static Set<String> earlier(Path folder, String index) throws IOException {
        if (!Files.isDirectory(folder)) {
            throw new IOException("it is not a folder");
        }
        try (Stream<Path> content = Files.list(folder)) {
            if (content.findAny().isEmpty()) {
                return Set.of();
            }
        }
        Path list = folder.resolve(index);
        if (!Files.isRegularFile(list)) {
            throw new IOException("the folder holds other files; name a new or an empty one");
        }
        Set<String> names = new LinkedHashSet<>();
        for (String line : Files.readAllLines(list, StandardCharsets.UTF_8)) {
            String name = line.substring(0, line.indexOf(',') < 0 ? line.length() : line.indexOf(','));
            if (name.endsWith(".csv") && name.indexOf('/') < 0 && name.indexOf('\\') < 0) {
                names.add(name);
            }
        }
        return names;
    }

    private static void write(byte[] content, Path file) throws IOException {
        Path folder = file.getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new IOException("there is no folder " + folder);
        }
        if (Files.isDirectory(file)) {
            throw new IOException("it is a folder");
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            // A pipe or a device cannot be replaced, only written to.
            Files.write(file, content);
            return;
        }
        // A link stays a link: what it points to is replaced.
        Path real = Files.exists(file) ? file.toRealPath() : file;
        Path draft = real.resolveSibling(
                "." + real.getFileName() + "." + ProcessHandle.current().pid() + ".part");
        try {
            Files.write(draft, content);
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
