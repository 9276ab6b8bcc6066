package earthing.cli;

import earthing.report.Report;
import earthing.report.ReportInput;
import earthing.report.VerdictTable;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the verdicts only. */
@Command(
        name = "check",
        header = "Check a site and print the verdicts.",
        description = {
            "",
            "One line a requirement, the heaviest first, then what to do"
                    + " about those that are not met or could not be assessed. The exit code tells the outcome.",
            ""
        },
        parameterListHeading = "Parameters:%n",
        optionListHeading = "Options:%n",
        footer = {
            "",
            "Examples:",
            "  earthing check site.yaml",
            "  earthing check site.yaml > /dev/null && echo all requirements met"
        },
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class)
final class CheckCommand implements Callable<Integer> {

    /** Formats of the verdicts. */
    enum Format {
        TEXT,
        JSON;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(paramLabel = "SITE", description = "The site file.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path site;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            description =
                    "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}). The json is that of the report.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Override
    public Integer call() {
        ReportInput input = Assessment.of(site);
        String text = switch (format) {
            case TEXT -> VerdictTable.text(input.findings());
            case JSON -> Report.json(input);
        };
        spec.commandLine().getOut().print(text);
        return Assessment.outcome(input.findings()).code();
    }
}
