package earthing.cli;

import earthing.compliance.Explanation;
import earthing.report.ExplanationPage;
import earthing.report.RecheckSection;
import earthing.report.Report;
import earthing.report.ReportInput;
import earthing.report.VerdictTable;
import earthing.study.Recheck;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Prints the verdicts only. */
@Command(
        name = "check",
        header = "Check a site and print the verdicts.",
        description = {
            "",
            "One line a requirement, the heaviest first, then what to do"
                    + " about those that are not met or could not be assessed. What the file expects is held: a"
                    + " departure is told with its line. The exit code tells the outcome.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing check site.yaml",
            "  earthing check --explain touch.cubicle",
            "  earthing check site.yaml --recheck",
            "  earthing check site.yaml --format junit --output site.xml",
            "  earthing check site.yaml --quiet && echo all requirements met"
        })
final class CheckCommand extends Subcommand {

    /** Formats of the verdicts. */
    static final class Formats extends Words<Format> {
        Formats() {
            super(Format.TEXT, Format.JSON, Format.JUNIT, Format.SARIF);
        }
    }

    @Parameters(paramLabel = "SITE", arity = "0..1", description = "The site file; --explain does without it.")
    private Optional<Path> site = Optional.empty();

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            converter = Formats.class,
            completionCandidates = Formats.class,
            description =
                    "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}). The json is that of the report; junit is"
                            + " XML with a test case for each finding, sarif tells each with a line of the site file.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Option(
            names = "--explain",
            paramLabel = "ID",
            description = "Say what a check means, why it matters and what to do; with a site also what was found.")
    private Optional<String> explain = Optional.empty();

    @Option(
            names = "--recheck",
            description = "Verify the results by code that did not produce them, and print the differences too.")
    private boolean recheck;

    @Mixin
    private final OutputOption output = new OutputOption();

    @Override
    public Integer call() {
        if (site.isEmpty() && explain.isEmpty()) {
            throw new ParameterException(spec().commandLine(), "Missing required parameter: 'SITE'");
        }
        if (explain.isPresent() && Explanation.of(explain.get()).isEmpty()) {
            throw new ParameterException(
                    spec().commandLine(),
                    "there is no check " + explain.get() + "; the ids are "
                            + String.join(
                                    ", ",
                                    Explanation.all().stream()
                                            .map(Explanation::id)
                                            .toList()));
        }
        if (site.isEmpty()) {
            output.deliver(
                    ExplanationPage.text(explain.get(), List.of()),
                    spec().commandLine().getOut());
            return ExitCode.MET.code();
        }
        ReportInput input = assessed(site.get());
        if (explain.isPresent()) {
            output.deliver(
                    ExplanationPage.text(explain.get(), input.findings()),
                    spec().commandLine().getOut());
        } else if (output.file().isPresent() || !RootCommand.of(spec()).quiet()) {
            output.deliver(text(input, site.get()), spec().commandLine().getOut());
        }
        boolean off = Recheck.lines(input.results()).stream().anyMatch(line -> !line.holds());
        return (off ? ExitCode.INTERNAL : Assessment.outcome(input)).code();
    }

    private String text(ReportInput input, Path file) {
        return switch (format) {
            case JSON -> Report.json(input);
            case JUNIT -> Report.testCases(input);
            case SARIF -> Report.sarif(input, SiteArgument.uri(file));
            default ->
                VerdictTable.text(input.findings())
                        + VerdictTable.expectations(input)
                        + (recheck ? "\n" + RecheckSection.text(input.results()) : "");
        };
    }

    private ReportInput assessed(Path file) {
        try (Progress progress = SiteArgument.watched(spec(), file)) {
            // The json is that of the report, with all that it tells.
            ReportInput input = format == Format.JSON && explain.isEmpty()
                    ? Assessment.of(file, progress)
                    : Assessment.verdicts(file, progress);
            return recheck ? Assessment.rechecked(input, progress) : input;
        }
    }
}
