package earthing.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;

/** Entry of the command line. */
public final class Main {

    private Main() {}

    /**
     * Runs one command and ends the process with its exit code.
     *
     * @param args the words after the program's name
     */
    public static void main(String[] args) {
        // UTF-8 whatever the machine's locale: the same input gives the same bytes.
        PrintWriter out = utf8(FileDescriptor.out);
        PrintWriter err = utf8(FileDescriptor.err);
        int code = run(out, err, Ansi.AUTO, args);
        out.flush();
        err.flush();
        System.exit(code);
    }

    /**
     * Runs one command in this process.
     *
     * @param out takes the result
     * @param err takes problems
     * @param ansi whether help may be coloured
     * @param args the words after the program's name
     * @return the exit code
     */
    public static int run(PrintWriter out, PrintWriter err, Ansi ansi, String... args) {
        int code = prepared(new CommandLine(new RootCommand()), out, err, ansi).execute(args);
        out.flush();
        err.flush();
        return code;
    }

    /** What is set here reaches the subcommands that are there by then. */
    static CommandLine prepared(CommandLine bare, PrintWriter out, PrintWriter err, Ansi ansi) {
        return bare.setOut(out)
                .setErr(err)
                .setColorScheme(CommandLine.Help.defaultColorScheme(ansi))
                .setUsageHelpWidth(80)
                .setUsageHelpAutoWidth(false)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler(Main::explainUsage)
                .setExecutionExceptionHandler(Main::explainFailure);
    }

    private static int explainUsage(ParameterException problem, String[] args) {
        CommandLine command = problem.getCommandLine();
        PrintWriter err = command.getErr();
        err.println("earthing: " + problem.getMessage());
        if (!CommandLine.UnmatchedArgumentException.printSuggestions(problem, err)) {
            err.println("Try \"" + command.getCommandSpec().qualifiedName() + " --help\".");
        }
        return ExitCode.USAGE.code();
    }

    private static int explainFailure(Exception failure, CommandLine command, CommandLine.ParseResult parsed) {
        PrintWriter err = command.getErr();
        boolean trace = command.getCommandSpec().root().userObject() instanceof RootCommand root && root.trace();
        if (trace) {
            failure.printStackTrace(err);
        }
        if (failure instanceof CommandFailure told) {
            told.lines().forEach(err::println);
            return told.exitCode().code();
        }
        err.println("earthing: internal error: " + failure);
        if (!trace) {
            err.println("Run the command again with --trace to see where.");
        }
        return ExitCode.INTERNAL.code();
    }

    private static PrintWriter utf8(FileDescriptor descriptor) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), false);
    }
}
