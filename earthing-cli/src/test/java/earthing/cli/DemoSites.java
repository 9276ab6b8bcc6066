package earthing.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The demonstration sites that come with the program. */
final class DemoSites {

    private static final Path FOLDER = Path.of("sites");

    private DemoSites() {}

    static List<Path> all() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(file -> file.toString().endsWith(".yaml"))
                    .sorted()
                    .toList();
        }
    }

    static Path named(String name) {
        return FOLDER.resolve(name + ".yaml");
    }
}
