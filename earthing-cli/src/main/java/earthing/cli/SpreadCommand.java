package earthing.cli;

import earthing.decision.SpreadStudy;
import earthing.report.Report;
import earthing.report.ReportInput;
import earthing.report.SpreadReport;
import earthing.report.document.Document;
import earthing.study.Workers;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Prints how likely each requirement is not met where the bounded inputs are spread. */
@Command(
        name = "spread",
        header = "Spread the bounded inputs: how likely is a requirement not met?",
        description = {
            "",
            "Draws every input that has low and high from its distribution, studies the site at each sample, and tells"
                    + " how likely each requirement is not met, whether any point is worse than the verdicts say, and"
                    + " what to measure next. Distributions stand in the file under uncertainty; an input without one is"
                    + " a triangle over low, nominal and high. The same seed gives the same bytes.",
            "",
            "The exit code is 0 when it was printed, and 1 if a point was found that is worse than a verdict says.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing spread site.yaml",
            "  earthing spread site.yaml --samples 10000 --seed 7",
            "  earthing spread site.yaml --format html --output spread.html"
        })
final class SpreadCommand extends Subcommand {

    static final int MOST_SAMPLES = 1_000_000;

    /** Formats of the page. */
    static final class Formats extends Words<Format> {
        Formats() {
            super(Format.TEXT, Format.HTML, Format.PDF, Format.JSON);
        }
    }

    @Mixin
    private final SiteArgument site = new SiteArgument();

    @Option(
            names = "--samples",
            paramLabel = "N",
            defaultValue = "1000",
            description = "How many samples are drawn (default ${DEFAULT-VALUE}).")
    private int samples;

    @Option(
            names = "--seed",
            paramLabel = "SEED",
            defaultValue = "1",
            description = "Seed of the random numbers (default ${DEFAULT-VALUE}).")
    private long seed;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            converter = Formats.class,
            completionCandidates = Formats.class,
            description = "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}). Pdf needs --output.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    @Mixin
    private final OutputOption output = new OutputOption();

    @Override
    public Integer call() {
        if (samples < 1 || samples > MOST_SAMPLES) {
            throw new ParameterException(
                    spec().commandLine(), "--samples is from 1 to " + MOST_SAMPLES + "; have " + samples);
        }
        if (format == Format.PDF && output.file().isEmpty()) {
            throw new ParameterException(spec().commandLine(), "--format pdf needs --output with a file");
        }
        int workers = threads.number(spec());
        try (Progress progress = site.watched()) {
            return Workers.of(workers, () -> spread(progress)).code();
        }
    }

    private ExitCode spread(Progress progress) {
        ReportInput input = Assessment.verdicts(site.file(), progress);
        SpreadStudy spread;
        try {
            spread = SpreadStudy.of(input.site(), input.findings(), samples, seed, progress::step);
        } catch (IllegalArgumentException impossible) {
            throw new CommandFailure(
                    ExitCode.INVALID_INPUT, List.of("earthing: " + site.file() + ": " + impossible.getMessage()));
        }
        write(input, spread);
        return spread.search().counterexamples().isEmpty() ? ExitCode.MET : ExitCode.NOT_MET;
    }

    private void write(ReportInput input, SpreadStudy spread) {
        if (format == Format.JSON) {
            output.deliver(
                    SpreadReport.json(input, spread), spec().commandLine().getOut());
            return;
        }
        Document page = SpreadReport.document(input, spread);
        if (format == Format.PDF) {
            Delivery.deliver(Report.pdf(page), output.file().orElseThrow());
        } else {
            output.deliver(
                    format == Format.HTML ? Report.html(page) : Report.text(page),
                    spec().commandLine().getOut());
        }
    }
}
