package earthing.cli;

import earthing.decision.CriteriaComparison;
import earthing.report.ArrangementPage;
import earthing.report.CriteriaPage;
import earthing.report.DifferencePage;
import earthing.report.ReportInput;
import earthing.site.Site;
import earthing.study.SiteStudy;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Prints the four ways to earth the cubicle side by side, or two sites. */
@Command(
        name = "compare",
        header = "Compare the ways to earth the cubicle, criteria, or two files.",
        description = {
            "",
            "With one site: what it would be like with the cubicle teed to the main earth, on an"
                    + " electrode of its own, on both, and unearthed: what each arrangement buys, and what it pays with.",
            "",
            "With two sites or revisions: the inputs, the results and the statuses that differ, the"
                    + " most telling ones on the first page.",
            "",
            "With one site and --criteria: which set of touch criteria governs each check, values, limits and what they"
                    + " rest on.",
            "",
            "A comparison does not judge, so the exit code is 0 whenever it was printed.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing compare site.yaml",
            "  earthing compare site.yaml --criteria",
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
            description =
                    "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}); json for two sites or criteria.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Option(
            names = "--criteria",
            description = "One site under every set of touch criteria that the file describes, side by side.")
    private boolean criteria;

    @Override
    public Integer call() {
        if (criteria && other.isPresent()) {
            throw new ParameterException(spec().commandLine(), "--criteria is for one site; have two");
        }
        if (!criteria && other.isEmpty() && format == Format.JSON) {
            throw new ParameterException(
                    spec().commandLine(),
                    "--format json compares two sites, or criteria; the arrangements of one are in report --format json");
        }
        output.deliver(text(), spec().commandLine().getOut());
        return ExitCode.MET.code();
    }

    private String text() {
        try (Progress progress = site.watched()) {
            if (criteria) {
                return criteria(progress);
            }
            if (other.isEmpty()) {
                return ArrangementPage.text(
                        SiteStudy.of(Assessment.read(site.file()).site()));
            }
            ReportInput a = Assessment.compared(site.file(), progress);
            ReportInput b = Assessment.compared(other.get(), progress);
            return format == Format.JSON ? DifferencePage.json(a, b) : DifferencePage.text(a, b);
        }
    }

    private String criteria(Progress progress) {
        Site read = Assessment.read(site.file()).site();
        if (read.criteria() == null) {
            throw new CommandFailure(
                    ExitCode.INVALID_INPUT,
                    List.of("earthing: " + site.file()
                            + ": criteria: this block is missing; it says what all sets of criteria share"));
        }
        progress.step("studying " + site.file().getFileName() + " under each set of criteria");
        CriteriaComparison compared = CriteriaComparison.of(read);
        return format == Format.JSON
                ? CriteriaPage.json(String.valueOf(site.file().getFileName()), compared)
                : CriteriaPage.text(read, compared);
    }
}
