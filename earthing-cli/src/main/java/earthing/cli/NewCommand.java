package earthing.cli;

import earthing.site.file.SiteTemplate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes a site file to start from. */
@Command(
        name = "new",
        header = "Write a commented site file to start from.",
        description = {
            "",
            "The file is valid as it stands and names every key. A file" + " that is already there is not overwritten.",
            ""
        },
        footer = {"", "Examples:", "  earthing new", "  earthing new --output my-site.yaml"})
final class NewCommand extends Subcommand {

    @Option(names = "--output", paramLabel = "FILE", description = "Write to this new file instead of standard output.")
    private Optional<Path> output = Optional.empty();

    @Override
    public Integer call() {
        if (output.isPresent() && Files.isRegularFile(output.get())) {
            throw new CommandFailure(
                    ExitCode.USAGE, List.of("earthing: " + output.get() + " is there already; it was left as it is"));
        }
        Delivery.deliver(SiteTemplate.text(), output, spec().commandLine().getOut());
        return ExitCode.MET.code();
    }
}
