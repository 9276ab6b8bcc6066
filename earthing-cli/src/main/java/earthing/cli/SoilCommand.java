package earthing.cli;

import earthing.report.SurveyReport;
import earthing.site.file.SurveyFile;
import earthing.site.file.SurveyOutcome;
import earthing.study.SurveyStudy;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Turns the readings of a soil survey into layers. */
@Command(
        name = "soil",
        header = "Find the layers of the ground from a soil survey.",
        description = {
            "",
            "Fits one to four layers to Wenner or Schlumberger readings, or one to three to the"
                    + " resistances of a rod driven deeper step by step, with 90 %% intervals, names"
                    + " readings that contradict the others, and prints the soil block of a site file.",
            "",
            "A survey file has a head line with units and one reading a line:",
            "",
            "  traverse, spacing [m], resistance [ohm]",
            "  north, 2, 11.4",
            ""
        },
        footer = {
            "",
            "Columns: traverse; spacing, or AB/2 and MN/2, or rod depth and rod diameter;",
            "probe depth; resistance or resistivity. Decimal commas need the line",
            "# decimal: comma.",
            "",
            "Examples:",
            "  earthing soil survey.csv",
            "  earthing soil survey.csv --layers 2 --format json"
        })
final class SoilCommand extends Subcommand {

    /** Probe arrangements. */
    enum Array {
        WENNER,
        SCHLUMBERGER,
        DRIVEN_ROD
    }

    /** Words of the probe arrangements. */
    static final class Arrays extends Words<Array> {
        Arrays() {
            super(Array.WENNER, Array.SCHLUMBERGER, Array.DRIVEN_ROD);
        }
    }

    /** Formats of the outcome. */
    static final class Formats extends Words<Format> {
        Formats() {
            super(Format.TEXT, Format.JSON);
        }
    }

    @Parameters(paramLabel = "SURVEY", description = "The survey file.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path survey;

    @Option(
            names = "--array",
            paramLabel = "ARRAY",
            converter = Arrays.class,
            completionCandidates = Arrays.class,
            description = "One of: ${COMPLETION-CANDIDATES}; refuses a file with the columns of the other.")
    private Optional<Array> array = Optional.empty();

    @Option(
            names = "--layers",
            paramLabel = "COUNT",
            description = "Fit so many layers, 1 to 4, instead of as many as the readings support.")
    private Optional<Integer> layers = Optional.empty();

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            converter = Formats.class,
            completionCandidates = Formats.class,
            description = "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Mixin
    private final OutputOption output = new OutputOption();

    @Override
    public Integer call() {
        if (layers.isPresent() && (layers.get() < 1 || layers.get() > 4)) {
            throw new ParameterException(spec().commandLine(), "--layers takes 1 to 4; have " + layers.get());
        }
        SurveyOutcome outcome = SurveyFile.read(survey, array.map(Words::text));
        if (outcome instanceof SurveyOutcome.Invalid invalid) {
            List<String> lines = new ArrayList<>();
            invalid.problems().forEach(problem -> lines.add(problem.text()));
            lines.add("earthing: " + survey + " is not a valid survey file: " + lines.size()
                    + (lines.size() == 1 ? " problem" : " problems"));
            throw new CommandFailure(ExitCode.INVALID_INPUT, lines);
        }
        SurveyOutcome.Valid read = (SurveyOutcome.Valid) outcome;
        SurveyStudy study = study(read);
        String name = String.valueOf(survey.getFileName());
        String text = switch (format) {
            case TEXT -> SurveyReport.text(name, read.array(), study, read.warnings());
            case JSON -> SurveyReport.json(name, read.array(), study, read.warnings());
            default -> throw new IllegalStateException("no survey as " + format);
        };
        output.deliver(text, spec().commandLine().getOut());
        return ExitCode.MET.code();
    }

    private SurveyStudy study(SurveyOutcome.Valid read) {
        try {
            return SurveyStudy.of(
                    read.traverses(), layers.isPresent() ? OptionalInt.of(layers.get()) : OptionalInt.empty());
        } catch (IllegalArgumentException tooFew) {
            throw new CommandFailure(
                    ExitCode.INVALID_INPUT, List.of("earthing: " + survey + ": " + tooFew.getMessage()));
        }
    }
}
