package earthing.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What all commands have alike: {@code --help}, {@code --version}, the headings of their help, their place in the line. */
@Command(
        parameterListHeading = "Parameters:%n",
        optionListHeading = "Options:%n",
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class)
abstract class Subcommand implements Callable<Integer> {

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    final CommandSpec spec() {
        return spec;
    }
}
