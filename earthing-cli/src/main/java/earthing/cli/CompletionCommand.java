package earthing.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints the script that lets a shell complete commands and options. */
@Command(
        name = "completion",
        header = "Print the completion script for bash and zsh.",
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:", "  source <(earthing completion)"})
final class CompletionCommand implements Callable<Integer> {

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Mixin
    private final HelpLayout help = new HelpLayout();

    @Override
    public Integer call() {
        spec.commandLine()
                .getOut()
                .print(AutoComplete.bash("earthing", spec.root().commandLine()));
        return ExitCode.MET.code();
    }
}
