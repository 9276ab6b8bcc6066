package earthing.cli;

import earthing.report.FieldSheet;
import earthing.report.Report;
import earthing.report.ReportInput;
import earthing.report.document.Document;
import earthing.site.file.Problem;
import earthing.site.file.ReadOutcome;
import earthing.site.file.ReadingsFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Writes the sheets that go to the pole, and reads a filled one back. */
@Command(
        name = "sheet",
        header = "Write a sheet to build from or to test by; read it back.",
        description = {
            "",
            "The build sheet tells paths, conductors, joints and electrodes as designed; the test"
                    + " sheet names each reading with its expected value. With --format csv the test sheet is a table to fill"
                    + " in; --read puts the filled one into the site file, as measurements, and leaves the rest of it as it is.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing sheet site.yaml --kind build --format pdf --output build.pdf",
            "  earthing sheet site.yaml --format csv --output readings.csv",
            "  earthing sheet site.yaml --read readings.csv --output as-built.yaml"
        })
final class SheetCommand extends Subcommand {

    /** Kinds of sheets. */
    enum Kind {
        BUILD,
        TEST
    }

    /** Words of the kinds. */
    static final class Kinds extends Words<Kind> {
        Kinds() {
            super(Kind.BUILD, Kind.TEST);
        }
    }

    /** Formats of a sheet. */
    static final class Formats extends Words<Format> {
        Formats() {
            super(Format.TEXT, Format.HTML, Format.PDF, Format.CSV);
        }
    }

    @Mixin
    private final SiteArgument site = new SiteArgument();

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            defaultValue = "test",
            converter = Kinds.class,
            completionCandidates = Kinds.class,
            description = "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Kind kind;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            converter = Formats.class,
            completionCandidates = Formats.class,
            description = "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}). Pdf needs --output.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Option(
            names = "--read",
            paramLabel = "FILLED",
            description = "Write the site file with the readings of this filled table.")
    private Optional<Path> filled = Optional.empty();

    @Mixin
    private final OutputOption output = new OutputOption();

    @Override
    public Integer call() {
        if (filled.isPresent()) {
            output.deliver(merged(filled.get()), spec().commandLine().getOut());
            return ExitCode.MET.code();
        }
        if (format == Format.PDF && output.file().isEmpty()) {
            throw new ParameterException(spec().commandLine(), "--format pdf needs --output with a file");
        }
        if (format == Format.CSV && kind == Kind.BUILD) {
            throw new ParameterException(
                    spec().commandLine(), "--format csv is for the test sheet; it can be read back");
        }
        try (Progress progress = site.watched()) {
            write(Assessment.of(site.file(), progress));
        }
        return ExitCode.MET.code();
    }

    private void write(ReportInput input) {
        if (format == Format.CSV) {
            output.deliver(FieldSheet.readingsTable(input), spec().commandLine().getOut());
            return;
        }
        Document sheet = kind == Kind.BUILD ? FieldSheet.build(input) : FieldSheet.test(input);
        if (format == Format.PDF) {
            Delivery.deliver(Report.pdf(sheet), output.file().orElseThrow());
        } else {
            output.deliver(
                    format == Format.HTML ? Report.html(sheet) : Report.text(sheet),
                    spec().commandLine().getOut());
        }
    }

    private String merged(Path table) {
        ReadOutcome.Valid read = Assessment.read(site.file());
        ReadingsFile.Outcome outcome = ReadingsFile.addTo(table, read.text(), site.file());
        if (outcome instanceof ReadingsFile.Outcome.Refused refused) {
            List<String> lines = new ArrayList<>();
            for (Problem problem : refused.problems()) {
                lines.add(problem.text());
            }
            lines.add("earthing: " + table + " is not a valid table of readings: " + lines.size()
                    + (lines.size() == 1 ? " problem" : " problems"));
            throw new CommandFailure(ExitCode.INVALID_INPUT, lines);
        }
        return ((ReadingsFile.Outcome.Added) outcome).text();
    }
}
