package earthing.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program itself: names the commands and holds what is common to all. */
@Command(
        name = "earthing",
        synopsisHeading = "Usage: ",
        customSynopsis = "earthing COMMAND [OPTIONS] [FILE]",
        description = {
            "",
            "Models the earthing of a pole-mounted medium-voltage switchgear site from one"
                    + " site file and reports it against declared requirements.",
            ""
        },
        optionListHeading = "Options:%n",
        commandListHeading = "%nCommands:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "  0:ran; every applicable requirement is met",
            "  1:ran; a requirement is not met, or an expected result is another",
            "  2:the command was not understood",
            "  3:ran; nothing failed, something could not be assessed",
            " 65:the input file is unreadable or invalid",
            " 70:internal error",
            "130:a run of many poles was interrupted; what was done is kept"
        },
        footer = {
            "",
            "A decision aid: a competent, licensed person is responsible, and local codes and",
            "the owner's rules govern. Never disconnect an earth on energised plant."
        },
        subcommands = {
            ReportCommand.class,
            CheckCommand.class,
            CompareCommand.class,
            SpreadCommand.class,
            RemedyCommand.class,
            SoilCommand.class,
            SheetCommand.class,
            FleetCommand.class,
            NewCommand.class,
            ExerciseCommand.class,
            CompletionCommand.class
        },
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class)
final class RootCommand implements Callable<Integer> {

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Option(
            names = "--trace",
            scope = ScopeType.INHERIT,
            description = "On an error, show where in the program it arose.")
    private boolean trace;

    @Option(
            names = "--quiet",
            scope = ScopeType.INHERIT,
            description = "Show no progress; check then prints nothing and tells the outcome by its exit code.")
    private boolean quiet;

    boolean quiet() {
        return quiet;
    }

    boolean trace() {
        return trace;
    }

    /** The root of the command line that a command belongs to. */
    static RootCommand of(CommandSpec command) {
        return (RootCommand) command.root().userObject();
    }

    @Override
    public Integer call() {
        throw new CommandLine.ParameterException(spec.commandLine(), "a command is missing");
    }

    /** Reads the version from the jar, so that it is written in one place only. */
    static final class Version implements CommandLine.IVersionProvider {

        @Override
        public String[] getVersion() {
            return new String[] {"earthing " + text()};
        }

        static String text() {
            String version = RootCommand.class.getPackage().getImplementationVersion();
            return version == null ? "(not packaged)" : version;
        }
    }
}
