package earthing.cli;

import earthing.decision.CriteriaComparison;
import earthing.report.Report;
import earthing.report.ReportIncomplete;
import earthing.report.ReportInput;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Writes the compliance report of a site. */
@Command(
        name = "report",
        header = "Write the compliance report of a site.",
        description = {
            "",
            "It holds the verdicts, the inputs as they were understood, the criteria, the results"
                    + " with the calculation beside them, what was assumed and what was not assessed.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing report site.yaml",
            "  earthing report site.yaml --format html --output site.html",
            "  earthing report site.yaml --format pdf --output site.pdf",
            "  earthing report site.yaml --format csv --output site-tables",
            "  earthing report site.yaml --format json | less"
        })
final class ReportCommand extends Subcommand {

    /** Formats of the report. */
    static final class Formats extends Words<Format> {
        Formats() {
            super(Format.TEXT, Format.HTML, Format.PDF, Format.JSON, Format.CSV);
        }
    }

    @Mixin
    private final SiteArgument site = new SiteArgument();

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            converter = Formats.class,
            completionCandidates = Formats.class,
            description = "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}). Text is also Markdown; html is"
                    + " one self-contained page; pdf is printed from it; json is for machines; csv is a folder of"
                    + " figure data and tables. Pdf and csv need --output.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Option(
            names = "--no-sensitivity",
            description =
                    "Leave out how far each bounded input alone moves the governing checks. It takes two studies of the"
                            + " site for each of them; a reviewer will ask for it.")
    private boolean withoutSensitivity;

    @Option(
            names = "--recheck",
            description = "Tell too how far the results hold against code that did not produce them.")
    private boolean recheck;

    @Option(
            names = "--remedies",
            description = "Tell too which changes of a catalogue meet what is not met, alone and in sets; the site is"
                    + " studied hundreds of times.")
    private boolean remedies;

    @Option(
            names = "--spread",
            paramLabel = "N",
            description =
                    "Tell too how likely each requirement is not met, from N samples of the bounded inputs, and what to"
                            + " measure next.")
    private @Nullable Integer samples;

    @Option(
            names = "--seed",
            paramLabel = "SEED",
            defaultValue = "1",
            description = "Seed of these samples (default ${DEFAULT-VALUE}).")
    private long seed;

    @Option(
            names = "--all-criteria",
            description = "Tell too what every set of touch criteria gives that the file describes.")
    private boolean allCriteria;

    @Mixin
    private final OutputOption output = new OutputOption();

    @Override
    public Integer call() {
        boolean needsPlace = format == Format.PDF || format == Format.CSV;
        if (needsPlace && output.file().isEmpty()) {
            throw new ParameterException(
                    spec().commandLine(),
                    "--format " + Words.text(format) + " needs --output with a "
                            + (format == Format.PDF ? "file" : "folder"));
        }
        if (samples != null && (samples < 1 || samples > SpreadCommand.MOST_SAMPLES)) {
            throw new ParameterException(
                    spec().commandLine(), "--spread is from 1 to " + SpreadCommand.MOST_SAMPLES + "; have " + samples);
        }
        try (Progress progress = site.watched()) {
            ReportInput input = withoutSensitivity
                    ? Assessment.of(site.file(), progress)
                    : Assessment.withSensitivity(site.file(), progress);
            if (recheck) {
                input = Assessment.rechecked(input, progress);
            }
            if (remedies) {
                input = Assessment.withRemedies(input, progress);
            }
            if (samples != null) {
                input = Assessment.withSpread(input, samples, seed, progress);
            }
            if (allCriteria) {
                progress.step("checking under all sets of criteria");
                input = input.with(CriteriaComparison.of(input.site()));
            }
            progress.step("writing the report");
            write(input);
            return Assessment.outcome(input).code();
        }
    }

    private void write(ReportInput input) {
        PrintWriter out = spec().commandLine().getOut();
        try {
            switch (format) {
                case TEXT -> output.deliver(Report.text(input), out);
                case HTML -> output.deliver(Report.html(input), out);
                case JSON -> output.deliver(Report.json(input), out);
                case PDF -> Delivery.deliver(Report.pdf(input), output.file().orElseThrow());
                case CSV ->
                    Delivery.deliver(
                            Report.csv(input), Report.CSV_INDEX, output.file().orElseThrow());
                case JUNIT, SARIF -> throw new IllegalStateException(format + " is no format of a report");
            }
        } catch (ReportIncomplete e) {
            List<String> lines = new ArrayList<>();
            e.problems().forEach(problem -> lines.add("earthing: " + site.file() + ": " + problem));
            lines.add("earthing: no report was written; fill in what is missing, or ask for --format json");
            throw new CommandFailure(ExitCode.INVALID_INPUT, lines);
        }
    }
}
