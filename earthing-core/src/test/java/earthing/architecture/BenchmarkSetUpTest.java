package earthing.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Benchmarks run on demand only, so a build would not notice that one no longer starts. Here each is made and set up
 * once, at its smallest size and without its peer, which needs programs that a build may lack.
 */
final class BenchmarkSetUpTest {

    private static final Path COMPILED = Path.of("target", "benchmark-classes");

    @TestFactory
    Stream<DynamicTest> everyBenchmarkCanBeSetUp() throws IOException {
        return benchmarks().stream().map(type -> DynamicTest.dynamicTest(type.getSimpleName(), () -> setUp(type)));
    }

    /** Else the test above passes because it finds nothing. */
    @Test
    void benchmarksAreFound() throws IOException {
        assertThat(benchmarks())
                .extracting(Class::getSimpleName)
                .contains("ElectrodeBenchmark", "SurgeBenchmark", "StrokesBenchmark")
                .hasSizeGreaterThanOrEqualTo(9);
    }

    private static void setUp(Class<?> type) throws ReflectiveOperationException {
        Constructor<?> constructor = type.getDeclaredConstructor();
        constructor.setAccessible(true);
        Object benchmark = constructor.newInstance();
        for (Method method : type.getDeclaredMethods()) {
            if (method.isAnnotationPresent(Setup.class)) {
                assertThat(method.getParameterCount())
                        .as("set-up with a peer belongs into a state of its own: " + method)
                        .isZero();
                method.setAccessible(true);
                method.invoke(benchmark);
            }
        }
    }

    /** All classes that hold benchmarks; nested states, the peers among them, are left out. */
    private static List<Class<?>> benchmarks() throws IOException {
        assertThat(COMPILED).as("benchmarks, compiled by mvn test-compile").isDirectory();
        ClassLoader loader = loader();
        try (Stream<Path> files = Files.walk(COMPILED)) {
            return files.map(file -> COMPILED.relativize(file).toString())
                    .filter(name -> name.endsWith("Benchmark.class"))
                    .sorted()
                    .<Class<?>>map(name -> load(loader, name))
                    .filter(type -> type.isAnnotationPresent(State.class)
                            && Arrays.stream(type.getDeclaredMethods())
                                    .anyMatch(method -> method.isAnnotationPresent(Benchmark.class)))
                    .toList();
        }
    }

    private static Class<?> load(ClassLoader loader, String name) {
        try {
            return loader.loadClass(
                    name.substring(0, name.length() - ".class".length()).replace(File.separatorChar, '.'));
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Benchmarks and library by one loader: some benchmarks reach what only their own package sees. */
    private static ClassLoader loader() throws IOException {
        ClassLoader others = new ClassLoader(BenchmarkSetUpTest.class.getClassLoader()) {
            @Override
            protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
                if (name.startsWith("earthing.")) {
                    throw new ClassNotFoundException(name);
                }
                return super.loadClass(name, resolve);
            }
        };
        URL[] folders = {
            COMPILED.toUri().toURL(), Path.of("target", "classes").toUri().toURL()
        };
        return new URLClassLoader(folders, others);
    }
}
