package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher on a copy of the project in a folder with a space in its name, started from elsewhere through links. The
 * tests run in order because the first one builds.
 */
@EnabledOnOs({OS.LINUX, OS.MAC})
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
final class LauncherTest {

    private static final Set<String> NOT_SOURCES = Set.of("target", ".cache", ".git", "docs", "test");

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    static Path folder;

    @SuppressWarnings("NullAway.Init") // set below
    private static Path project;

    @SuppressWarnings("NullAway.Init") // set below
    private static Path link;

    private record Ended(int code, String out, String err) {}

    private record Started(Process process, Path out, Path err) {

        Ended ended() throws IOException, InterruptedException {
            assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
            return new Ended(
                    process.exitValue(),
                    Files.readString(out, StandardCharsets.UTF_8),
                    Files.readString(err, StandardCharsets.UTF_8));
        }
    }

    @BeforeAll
    static void copyTheSources() throws IOException {
        Path root = Path.of("..").toAbsolutePath().normalize();
        project = folder.resolve("a folder").resolve("with spaces");
        copy(root, project);
        Path direct = Files.createSymbolicLink(
                folder.resolve("direct"),
                project.resolve("earthing-cli").resolve("bin").resolve("earthing"));
        link = Files.createSymbolicLink(folder.resolve("linked"), direct.getFileName());
        Files.createDirectory(folder.resolve("elsewhere"));
    }

    @Test
    @Order(1)
    void twoStartedAtOnceBuildOnceAndBothRun() throws IOException, InterruptedException {
        Started first = start(Map.of(), "--version");
        Started second = start(Map.of(), "--version");
        List<Ended> both = List.of(first.ended(), second.ended());
        assertThat(both).allSatisfy(run -> {
            assertThat(run.code()).as(run.err()).isZero();
            assertThat(run.out()).matches("earthing \\d+\\.\\d+\\.\\d+\\R");
        });
        assertThat(both.stream().filter(run -> run.err().contains("earthing: built")))
                .hasSize(1);
        assertThat(builds()).isEqualTo(1);
    }

    @Test
    @Order(2)
    void afterwardsItStartsWithoutAWord() throws IOException, InterruptedException {
        Ended run = start(Map.of(), "--help").ended();
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).startsWith("Usage: earthing");
    }

    @Test
    @Order(3)
    void theExitCodeIsThatOfTheCommand() throws IOException, InterruptedException {
        Ended run = start(Map.of(), "no-such-command").ended();
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("no-such-command");
    }

    @Test
    @Order(4)
    void javaIsFoundThroughItsHomeFolder() throws IOException, InterruptedException {
        Ended run = start(Map.of("JAVA_HOME", System.getProperty("java.home"), "PATH", "/usr/bin:/bin"), "--version")
                .ended();
        assertThat(run.code()).as(run.err()).isZero();
    }

    @Test
    @Order(5)
    void theArchiveOfClassesIsInUse() throws IOException {
        try (var files = Files.walk(project.resolve("earthing-cli").resolve(".cache"))) {
            assertThat(files.filter(file -> file.toString().endsWith(".jsa")))
                    .singleElement()
                    .satisfies(archive -> assertThat(Files.size(archive)).isGreaterThan(1_000_000));
        }
    }

    @Test
    @Order(6)
    void aChangedSourceIsBuiltAgain() throws IOException, InterruptedException {
        Path source = project.resolve("earthing-cli/src/main/java/earthing/cli/Main.java");
        Files.setLastModifiedTime(source, FileTime.from(Instant.now()));
        // What Maven makes of these sources the first test has shown; here it hands over the same build once more.
        Path bin = Files.createDirectory(folder.resolve("bin"));
        Path maven = Files.writeString(bin.resolve("mvn"), """
                #!/bin/sh
                for arg; do case $arg in -Dearthing.target=*) work=earthing-cli/${arg#*=} ;; esac; done
                mkdir -p "$work"
                cp earthing-cli/.cache/build-*/earthing-cli.jar "$work/earthing-cli-again.jar"
                cp -R earthing-cli/.cache/build-*/lib "$work/lib"
                """, StandardCharsets.UTF_8);
        assertThat(maven.toFile().setExecutable(true)).isTrue();
        String path = bin + ":" + System.getenv("PATH");
        Ended run = start(Map.of("PATH", path), "--version").ended();
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.err()).contains("earthing: built");
        assertThat(builds()).isEqualTo(2);
    }

    private static Started start(Map<String, String> environment, String... args) throws IOException {
        List<String> command = new ArrayList<>(List.of(link.toString()));
        command.addAll(List.of(args));
        Path out = Files.createTempFile(folder, "out", "");
        Path err = Files.createTempFile(folder, "err", "");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.resolve("elsewhere").toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        builder.environment().putAll(environment);
        return new Started(builder.start(), out, err);
    }

    private static long builds() throws IOException {
        try (var files = Files.list(project.resolve("earthing-cli").resolve(".cache"))) {
            return files.filter(file -> file.getFileName().toString().startsWith("build-"))
                    .count();
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.walkFileTree(from, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) throws IOException {
                if (!dir.equals(from) && NOT_SOURCES.contains(dir.getFileName().toString())) {
                    return FileVisitResult.SKIP_SUBTREE;
                }
                Files.createDirectories(to.resolve(from.relativize(dir)));
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.copy(file, to.resolve(from.relativize(file)), StandardCopyOption.COPY_ATTRIBUTES);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
