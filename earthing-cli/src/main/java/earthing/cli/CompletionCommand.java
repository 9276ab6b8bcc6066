package earthing.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** Prints the script that lets a shell complete commands and options. */
@Command(
        name = "completion",
        header = "Print the completion script for bash and zsh.",
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:", "  source <(earthing completion)"})
final class CompletionCommand extends Subcommand {

    @Override
    public Integer call() {
        spec().commandLine()
                .getOut()
                .print(AutoComplete.bash("earthing", spec().root().commandLine()));
        return ExitCode.MET.code();
    }
}
