package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class DeliveryTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private final StringWriter printed = new StringWriter();
    private final PrintWriter out = new PrintWriter(printed);

    @Test
    void withoutAFileTheTextIsPrinted() {
        Delivery.deliver("12 Ω\n", Optional.empty(), out);
        assertThat(printed.toString()).isEqualTo("12 Ω\n");
    }

    @Test
    void theFileIsReplacedAndNoDraftIsLeft() throws IOException {
        Path file = Files.writeString(folder.resolve("report.txt"), "old");
        Delivery.deliver("12 Ω\n", Optional.of(file), out);
        assertThat(file).hasContent("12 Ω\n");
        assertThat(printed.toString()).isEmpty();
        assertThat(names()).containsExactly("report.txt");
    }

    @Test
    void aLinkStaysALink() throws IOException {
        Path file = Files.writeString(folder.resolve("report-3.txt"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("latest.txt"), file);
        Delivery.deliver("new", Optional.of(link), out);
        assertThat(link).isSymbolicLink();
        assertThat(file).hasContent("new");
    }

    @Test
    void aMissingFolderIsTold() {
        Path file = folder.resolve("nowhere").resolve("report.txt");
        assertThatThrownBy(() -> Delivery.deliver("text", Optional.of(file), out))
                .isInstanceOfSatisfying(CommandFailure.class, failure -> {
                    assertThat(failure.exitCode()).isEqualTo(ExitCode.USAGE);
                    assertThat(failure.lines()).singleElement().asString().contains("report.txt", "there is no folder");
                });
    }

    @Test
    void aFolderIsNotOverwritten() {
        assertThatThrownBy(() -> Delivery.deliver("text", Optional.of(folder), out))
                .isInstanceOf(CommandFailure.class)
                .hasMessageContaining("it is a folder");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).toList();
        }
    }
}
