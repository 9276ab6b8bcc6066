package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

final class ProgressTest {

    @Test
    void aLongRunShowsItsStepAndLeavesNothingBehind() throws InterruptedException {
        StringWriter err = new StringWriter();
        try (Progress progress = Progress.watching(true, new PrintWriter(err, true), "reading", 5)) {
            progress.step("studying");
            long patience = 5_000;
            while (!err.toString().contains("studying") && patience > 0) {
                Thread.sleep(10);
                patience -= 10;
            }
        }
        assertThat(err.toString()).contains("earthing: studying").endsWith(" ".repeat(79) + "\r");
    }

    @Test
    void aShortOrQuietRunShowsNothing() {
        StringWriter err = new StringWriter();
        try (Progress progress = Progress.watching(true, new PrintWriter(err, true), "reading", 60_000)) {
            progress.step("studying");
        }
        try (Progress progress = Progress.watching(false, new PrintWriter(err, true), "reading", 1)) {
            progress.step("studying");
        }
        assertThat(err.toString()).isEmpty();
    }
}
