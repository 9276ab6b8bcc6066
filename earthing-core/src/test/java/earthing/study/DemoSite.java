package earthing.study;

import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The demonstration sites of the command line, the short one among them. */
public final class DemoSite {

    private static final Path FOLDER = Path.of("..", "earthing-cli", "sites");

    private DemoSite() {}

    /**
     * File names of all sites.
     *
     * @return the names in order
     */
    public static List<String> names() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".yaml"))
                    .sorted()
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /**
     * Reads a site.
     *
     * @param name file name
     * @return the site
     */
    public static Site read(String name) {
        return read(SiteFile.read(FOLDER.resolve(name)));
    }

    /**
     * The text of a site file.
     *
     * @param name file name
     * @return its text
     */
    public static String text(String name) {
        try {
            return Files.readString(FOLDER.resolve(name));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /**
     * Reads a site from text.
     *
     * @param text the text of a site file
     * @return the site
     */
    public static Site parse(String text) {
        return read(SiteFile.read(text, "test.yaml"));
    }

    private static Site read(ReadOutcome outcome) {
        if (outcome instanceof ReadOutcome.Valid valid) {
            return valid.site();
        }
        throw new AssertionError(((ReadOutcome.Invalid) outcome).problems().toString());
    }
}
