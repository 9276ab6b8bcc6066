package earthing.fleet;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The folder of a run: results as they come, in the order of the rows, and a journal of a few lines that says how far each
 * file is good. What stands behind that is cut off when the run goes on.
 */
final class FleetStore implements Closeable {

    static final String RESULTS = "results.csv";
    static final String LINES = "results.jsonl";
    static final String JOURNAL = "journal.txt";

    private static final String FORMAT = "earthing-fleet-journal/1";

    private static final Pattern JOURNAL_TEXT = Pattern.compile(
            FORMAT + "\ninputs ([0-9a-f]{64})\nrows (\\d{1,9})\nresults (\\d{1,15})\nlines (\\d{1,15})\n");

    private final Path folder;
    private final String inputs;
    private final Growing results;
    private final Growing lines;
    private int rows;

    /** A file that only grows. */
    private static final class Growing implements Closeable {
        private final OutputStream out;
        private long length;

        Growing(Path file, long good) throws IOException {
            FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            channel.truncate(good);
            channel.position(good);
            out = new BufferedOutputStream(java.nio.channels.Channels.newOutputStream(channel), 1 << 16);
            length = good;
        }

        void append(String text) throws IOException {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            out.write(bytes);
            length += bytes.length;
        }

        @Override
        public void close() throws IOException {
            out.close();
        }
    }

    private record Journal(String inputs, int rows, long results, long lines) {}

    private FleetStore(Path folder, Journal journal) throws IOException {
        this.folder = folder;
        this.inputs = journal.inputs();
        this.rows = journal.rows();
        this.results = new Growing(folder.resolve(RESULTS), journal.results());
        this.lines = new Growing(folder.resolve(LINES), journal.lines());
    }

    /** Begins a run in a folder that is new or empty. */
    static FleetStore begin(Path folder, String inputs, String head) throws IOException, FleetRefusal {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new FleetRefusal(folder + " is a file; name a folder for the results");
        }
        if (Files.isDirectory(folder)) {
            try (Stream<Path> content = Files.list(folder)) {
                if (content.findAny().isPresent()) {
                    throw new FleetRefusal(
                            Files.exists(folder.resolve(JOURNAL))
                                    ? folder + " holds an earlier run; --resume goes on with it, or name a new folder"
                                    : folder + " holds other files; name a new or an empty folder");
                }
            }
        }
        Files.createDirectories(folder);
        FleetStore store = new FleetStore(folder, new Journal(inputs, 0, 0, 0));
        store.results.append(head);
        store.settle();
        return store;
    }

    /** Goes on with a run. */
    static FleetStore resume(Path folder, String inputs) throws IOException, FleetRefusal {
        Path file = folder.resolve(JOURNAL);
        if (!Files.isRegularFile(file)) {
            throw new FleetRefusal(folder + " holds no run to go on with: there is no " + JOURNAL);
        }
        Optional<Journal> journal = journal(file);
        if (journal.isEmpty()) {
            throw new FleetRefusal(file + " is no journal of a run");
        }
        if (!journal.get().inputs().equals(inputs)) {
            throw new FleetRefusal("the table, the base, the separator or the program is not that of the run in "
                    + folder + "; begin a new run in a new folder");
        }
        for (Path part : List.of(folder.resolve(RESULTS), folder.resolve(LINES))) {
            long good = part.endsWith(RESULTS)
                    ? journal.get().results()
                    : journal.get().lines();
            if (!Files.isRegularFile(part) || Files.size(part) < good) {
                throw new FleetRefusal(part + " is shorter than the journal says; begin a new run in a new folder");
            }
        }
        return new FleetStore(folder, journal.get());
    }

    private static Optional<Journal> journal(Path file) throws IOException {
        byte[] bytes;
        try (var in = Files.newInputStream(file)) {
            bytes = in.readNBytes(1000);
        }
        Matcher matcher = JOURNAL_TEXT.matcher(new String(bytes, StandardCharsets.UTF_8));
        return matcher.matches()
                ? Optional.of(new Journal(
                        matcher.group(1),
                        Integer.parseInt(matcher.group(2)),
                        Long.parseLong(matcher.group(3)),
                        Long.parseLong(matcher.group(4))))
                : Optional.empty();
    }

    /** How many rows are done. */
    int rows() {
        return rows;
    }

    void append(String result, String line) throws IOException {
        results.append(result);
        lines.append(line);
        rows++;
    }

    /** From here on what has been appended is kept, whatever happens. */
    void settle() throws IOException {
        results.out.flush();
        lines.out.flush();
        List<String> text = new ArrayList<>();
        text.add(FORMAT);
        text.add("inputs " + inputs);
        text.add("rows " + rows);
        text.add("results " + results.length);
        text.add("lines " + lines.length);
        Path draft = folder.resolve(JOURNAL + ".part");
        Files.writeString(draft, String.join("\n", text) + "\n");
        Files.move(draft, folder.resolve(JOURNAL), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    @Override
    public void close() throws IOException {
        results.close();
        lines.close();
    }
}
