package earthing.cli;

import earthing.report.ArrangementPage;
import earthing.report.DifferencePage;
import earthing.report.ReportInput;
import earthing.study.SiteStudy;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Prints the four ways to earth the cubicle side by side, or two sites. */
@Command(
        name = "compare",
        header = "Compare the ways to earth the cubicle, or two site files.",
        description = {
            "",
            "With one site: what it would be like with the cubicle teed to the main earth, on an"
                    + " electrode of its own, on both, and unearthed: what each arrangement buys, and what it pays with.",
            "",
            "With two sites or revisions: the inputs, the results and the statuses that differ, the"
                    + " most telling ones on the first page.",
            "",
            "A comparison does not judge, so the exit code is 0 whenever it was printed.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing compare site.yaml",
            "  earthing compare before.yaml after.yaml",
            "  earthing compare before.yaml after.yaml --format json"
        })
final class CompareCommand extends Subcommand {

    /** Formats of a comparison. */
    static final class Formats extends Words<Format> {
        Formats() {
            super(Format.TEXT, Format.JSON);
        }
    }

    @Mixin
    private final OutputOption output = new OutputOption();

    @Mixin
    private final SiteArgument site = new SiteArgument();

    @Parameters(index = "1", arity = "0..1", paramLabel = "OTHER", description = "Another site file, or its revision.")
    private Optional<Path> other = Optional.empty();

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            converter = Formats.class,
            completionCandidates = Formats.class,
            description = "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}); json for two sites.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Override
    public Integer call() {
        if (other.isEmpty() && format == Format.JSON) {
            throw new ParameterException(
                    spec().commandLine(),
                    "--format json compares two sites; the arrangements of one are in report --format json");
        }
        output.deliver(text(), spec().commandLine().getOut());
        return ExitCode.MET.code();
    }

    private String text() {
        try (Progress progress = site.watched()) {
            if (other.isEmpty()) {
                return ArrangementPage.text(
                        SiteStudy.of(Assessment.read(site.file()).site()));
            }
            ReportInput a = Assessment.compared(site.file(), progress);
            ReportInput b = Assessment.compared(other.get(), progress);
            return format == Format.JSON ? DifferencePage.json(a, b) : DifferencePage.text(a, b);
        }
    }
}
