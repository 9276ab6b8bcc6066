package earthing.cli;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The site file that a command works on. */
final class SiteArgument {

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec command;

    @Parameters(index = "0", paramLabel = "SITE", description = "The site file.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path file;

    Path file() {
        return file;
    }

    /** Begins to watch the run of the command; the line says that the site is read. */
    Progress watched() {
        return watched(command, file);
    }

    /**
     * Begins to watch a run.
     *
     * @param command the command
     * @param file the site file
     * @return the line of a run of more than a second
     */
    static Progress watched(CommandSpec command, Path file) {
        return Progress.of(RootCommand.of(command), command.commandLine().getErr(), "reading " + file.getFileName());
    }

    /** The file as a URI reference: relative where it was named so, so that it holds within a repository. */
    static String uri(Path file) {
        if (file.isAbsolute()) {
            return file.toUri().toString();
        }
        String path = file.normalize().toString().replace(file.getFileSystem().getSeparator(), "/");
        try {
            return new URI(null, null, path, null).toASCIIString();
        } catch (URISyntaxException e) {
            return file.toUri().toString();
        }
    }
}
