package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Programs of the machine that look at what we write: a browser, page tools. */
final class Programs {

    private static final int SECONDS = 90;

    private static final List<String> BROWSER = List.of(
            "chromium",
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--window-size=1100,1400",
            "--virtual-time-budget=4000");

    private final Path folder;

    /** They write into this folder. */
    Programs(Path folder) {
        this.folder = folder;
    }

    static boolean onPath(String tool) {
        String path = System.getenv("PATH");
        return path != null
                && Stream.of(path.split(File.pathSeparator, -1))
                        .anyMatch(place -> Files.isExecutable(Path.of(place, tool)));
    }

    /** The page as it is after its scripts have run. */
    String dom(String html) throws IOException, InterruptedException {
        return browser(html, "--dump-dom");
    }

    /** The page on paper, after its scripts have run. */
    Path printed(String html) throws IOException, InterruptedException {
        Path pdf = folder.resolve("printed.pdf");
        browser(html, "--print-to-pdf=" + pdf);
        return pdf;
    }

    private String browser(String html, String wanted) throws IOException, InterruptedException {
        Path page = folder.resolve("page.html");
        Files.writeString(page, html);
        List<String> words = new ArrayList<>(BROWSER);
        words.add("--user-data-dir=" + folder.resolve("profile"));
        words.add(wanted);
        words.add(page.toUri().toString());
        return run(words.toArray(String[]::new));
    }

    /** What a program writes to its standard output. */
    String run(String... words) throws IOException, InterruptedException {
        Path out = folder.resolve("out.txt");
        Process process = new ProcessBuilder(List.of(words))
                .redirectOutput(out.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            assertThat(process.waitFor(SECONDS, TimeUnit.SECONDS))
                    .as(words[0] + " ended in time")
                    .isTrue();
        } finally {
            process.destroyForcibly();
        }
        return Files.readString(out, StandardCharsets.UTF_8);
    }
}
