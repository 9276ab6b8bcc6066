package earthing.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine.Help.Ansi;

/** One run of the program as a user sees it: exit code, standard output, standard error. */
record CommandRun(int code, String out, String err) {

    static CommandRun of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out), new PrintWriter(err), Ansi.OFF, args);
        return new CommandRun(code, out.toString(), err.toString());
    }
}
