package earthing.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** A running Python that does one piece of work whenever asked, so that it is timed warm as our own code is. */
final class NumpyPeer implements AutoCloseable {

    private final Process process;
    private final Writer to;
    private final BufferedReader from;

    NumpyPeer(String work) {
        try {
            ProcessBuilder builder = new ProcessBuilder(
                    "python3",
                    Path.of(System.getProperty("peer.folder", "src/jmh/peer"), "peer.py")
                            .toString());
            builder.environment().put("OPENBLAS_NUM_THREADS", "1");
            builder.redirectError(ProcessBuilder.Redirect.INHERIT);
            process = builder.start();
        } catch (IOException e) {
            throw new UncheckedIOException("python3 with numpy and scipy is needed as the peer", e);
        }
        to = process.outputWriter(StandardCharsets.US_ASCII);
        from = process.inputReader(StandardCharsets.US_ASCII);
        ask("prepare " + work);
    }

    /** One piece of work. */
    double run() {
        return Double.parseDouble(ask("run"));
    }

    private String ask(String line) {
        try {
            to.write(line + "\n");
            to.flush();
            String answer = from.readLine();
            if (answer == null) {
                throw new IllegalStateException("the peer ended at: " + line);
            }
            return answer;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        process.destroy();
    }
}
