package earthing.cli;

import earthing.fleet.FleetRefusal;
import earthing.fleet.FleetRun;
import earthing.fleet.FleetSummary;
import earthing.fleet.FleetTable;
import earthing.fleet.FleetTemplate;
import earthing.fleet.TableForm;
import earthing.report.FleetLines;
import earthing.report.FleetPage;
import earthing.report.Report;
import earthing.site.file.Problem;
import earthing.site.file.SiteFile;
import earthing.site.file.SiteTemplate;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Assesses many poles from a table, one a row. */
@Command(
        name = "fleet",
        header = "Check many poles from a table, one a row.",
        description = {
            "",
            "Each column is a key of the site file with its unit, such as tank.height [m]. A blank cell is"
                    + " unknown, a - says that there is no such value. Each row gives a value or a reason; a bad row"
                    + " does not stop the run. What stands between the cells is declared: by the line # separator: comma"
                    + " or # separator: semicolon above the head, or by --separator.",
            "",
            "The folder that --output names gets results.csv, results.jsonl, work-list.csv, summary.html and, where"
                    + " site.latitude and site.longitude are given, poles.geojson. A run that was stopped goes on with"
                    + " --resume; its files are then the same as without the stop.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing fleet --new --output poles.csv",
            "  earthing fleet poles.csv --base shared.yaml --output poles-results",
            "  earthing fleet poles.csv --base shared.yaml --output poles-results --resume",
            "  earthing fleet --table north/*.yaml --output poles.csv",
            "  earthing fleet poles.csv --write-site P-0117 --output p-0117.yaml"
        })
final class FleetCommand extends Subcommand {

    /** What may stand between cells. */
    enum Separator {
        COMMA,
        SEMICOLON
    }

    /** Words of the separators. */
    static final class Separators extends Words<Separator> {
        Separators() {
            super(Separator.COMMA, Separator.SEMICOLON);
        }
    }

    /** What a number may be parted by. */
    enum Decimal {
        POINT,
        COMMA
    }

    /** Words of the decimal marks. */
    static final class Decimals extends Words<Decimal> {
        Decimals() {
            super(Decimal.POINT, Decimal.COMMA);
        }
    }

    @Parameters(paramLabel = "FILE", arity = "0..*", description = "The table; with --table the site files.")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--new", description = "Write a table to start from, valid as it stands.")
    private boolean fresh;

    @Option(names = "--table", description = "Write the table of these site files.")
    private boolean table;

    @Option(names = "--write-site", paramLabel = "POLE", description = "Write the site file of this pole of the table.")
    private Optional<String> pole = Optional.empty();

    @Option(
            names = "--base",
            paramLabel = "SITE",
            description = "A site file, complete or not, with what all rows share; cells go first.")
    private Optional<Path> base = Optional.empty();

    @Option(
            names = "--separator",
            paramLabel = "WORD",
            converter = Separators.class,
            completionCandidates = Separators.class,
            description = "What stands between cells, one of: ${COMPLETION-CANDIDATES}.")
    private Optional<Separator> separator = Optional.empty();

    @Option(
            names = "--decimal",
            paramLabel = "WORD",
            converter = Decimals.class,
            completionCandidates = Decimals.class,
            description = "What parts a number, one of: ${COMPLETION-CANDIDATES}; comma only beside semicolons.")
    private Optional<Decimal> decimal = Optional.empty();

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Poles that are assessed at a time; default: one for each processor.")
    private Optional<Integer> threads = Optional.empty();

    @Option(names = "--resume", description = "Go on with the run in the folder of --output.")
    private boolean resume;

    @Option(
            names = "--output",
            paramLabel = "PLACE",
            description = "The folder of the results, which must be new or empty; the file of the others.")
    private Optional<Path> output = Optional.empty();

    @Override
    public Integer call() {
        if (fresh) {
            return fresh();
        }
        if (files.isEmpty()) {
            throw usage(table ? "--table needs site files" : "Missing required parameter: 'FILE'");
        }
        if (table) {
            return table();
        }
        if (files.size() > 1) {
            throw usage("one table at a time; have " + files.size() + " files");
        }
        if (pole.isPresent()) {
            return site(pole.get());
        }
        if (output.isEmpty()) {
            throw usage("a run needs --output with a folder for its results");
        }
        if (threads.isPresent() && threads.get() < 1) {
            throw usage("--threads takes 1 or more; have " + threads.get());
        }
        return run(opened(), output.get());
    }

    private ParameterException usage(String message) {
        return new ParameterException(spec().commandLine(), message);
    }

    private Integer fresh() {
        if (!files.isEmpty()) {
            throw usage("--new takes no file; --output names where it is written");
        }
        if (output.isPresent() && Files.isRegularFile(output.get())) {
            throw new CommandFailure(
                    ExitCode.USAGE, List.of("earthing: " + output.get() + " is there already; it was left as it is"));
        }
        deliver(FleetTemplate.text(SiteTemplate.site(), form()));
        return ExitCode.MET.code();
    }

    private Integer table() {
        List<FleetTemplate.Source> sites = new ArrayList<>();
        for (Path file : files) {
            sites.add(new FleetTemplate.Source(Assessment.read(file).site(), file));
        }
        FleetTemplate.Rows rows = FleetTemplate.of(sites, form());
        List<String> lost = new ArrayList<>();
        rows.lost()
                .forEach((index, key) -> lost.add("earthing: " + files.get(index) + ": a row cannot say this: " + key));
        if (!lost.isEmpty()) {
            throw new CommandFailure(ExitCode.INVALID_INPUT, lost);
        }
        deliver(rows.text());
        return ExitCode.MET.code();
    }

    private Integer site(String wanted) {
        FleetTable.Found found = opened().find(wanted);
        if (found instanceof FleetTable.Found.Refused refused) {
            throw new CommandFailure(ExitCode.INVALID_INPUT, refused.reasons());
        }
        deliver(SiteFile.write(((FleetTable.Found.One) found).site()));
        return ExitCode.MET.code();
    }

    private void deliver(String text) {
        Delivery.deliver(text, output, spec().commandLine().getOut());
    }

    /** How a table is written that has none before it. */
    private TableForm form() {
        boolean comma = decimal.filter(d -> d == Decimal.COMMA).isPresent();
        boolean semicolon = separator.map(s -> s == Separator.SEMICOLON).orElse(comma);
        if (comma && !semicolon) {
            throw usage("--decimal comma needs --separator semicolon");
        }
        return new TableForm(semicolon ? ';' : ',', comma);
    }

    private FleetTable opened() {
        FleetTable.Opened opened = FleetTable.open(
                files.get(0),
                separator.map(s -> s == Separator.SEMICOLON ? ';' : ','),
                decimal.map(d -> d == Decimal.COMMA),
                base);
        if (opened instanceof FleetTable.Opened.Refused refused) {
            List<String> lines = new ArrayList<>();
            for (Problem problem : refused.problems()) {
                lines.add(problem.text());
            }
            lines.add("earthing: " + files.get(0) + " is not a valid table of sites: " + lines.size()
                    + (lines.size() == 1 ? " problem" : " problems"));
            throw new CommandFailure(ExitCode.INVALID_INPUT, lines);
        }
        return ((FleetTable.Opened.Good) opened).table();
    }

    private Integer run(FleetTable poles, Path folder) {
        FleetRun.Order order = new FleetRun.Order(
                base,
                folder,
                threads.orElseGet(() -> Runtime.getRuntime().availableProcessors()),
                resume,
                RootCommand.Version.text(),
                FleetLines::json);
        try (RowWatch watch = new RowWatch(poles.size())) {
            int done;
            try (Progress progress = Progress.of(
                    RootCommand.of(spec()),
                    spec().commandLine().getErr(),
                    "reading " + poles.path().getFileName())) {
                watch.tells(progress);
                done = FleetRun.of(poles, order, watch);
            }
            if (done < poles.size()) {
                // Said here: an interrupted process ends as soon as the watch is closed.
                spec().commandLine()
                        .getErr()
                        .println("earthing: stopped; " + done + " of " + poles.size() + " rows are kept in " + folder
                                + ", --resume goes on with them");
                spec().commandLine().getErr().flush();
                return ExitCode.INTERRUPTED.code();
            }
            return told(poles, folder);
        } catch (FleetRefusal refusal) {
            throw new CommandFailure(ExitCode.USAGE, List.of("earthing: " + refusal.getMessage()));
        } catch (IOException e) {
            throw new CommandFailure(
                    ExitCode.USAGE, List.of("earthing: cannot write to " + folder + ": " + e.getMessage()));
        }
    }

    private Integer told(FleetTable poles, Path folder) throws IOException {
        FleetSummary summary = FleetSummary.of(folder, poles.form());
        String name = String.valueOf(poles.path().getFileName());
        Delivery.deliver(bytes(summary.workList()), folder.resolve(FleetSummary.WORK_LIST));
        Delivery.deliver(
                bytes(Report.html(FleetPage.document(name, summary, RootCommand.Version.text()))),
                folder.resolve(FleetPage.FILE));
        if (poles.isLocated()) {
            StringWriter map = new StringWriter();
            FleetLines.map(folder, poles.form(), map);
            Delivery.deliver(bytes(map.toString()), folder.resolve(FleetLines.MAP));
        }
        if (!RootCommand.of(spec()).quiet()) {
            spec().commandLine().getOut().print(FleetPage.text(name, summary));
        }
        return summary.outcome().map(FleetCommand::code).orElse(ExitCode.MET).code();
    }

    private static ExitCode code(FleetSummary.Why worst) {
        return worst == FleetSummary.Why.NOT_MET ? ExitCode.NOT_MET : ExitCode.NOT_ASSESSED;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
