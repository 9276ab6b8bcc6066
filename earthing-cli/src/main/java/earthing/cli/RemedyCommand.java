package earthing.cli;

import earthing.decision.Remedies;
import earthing.decision.Remedy;
import earthing.decision.RemedyCatalogue;
import earthing.decision.RemedyCostFile;
import earthing.decision.RemedyCosts;
import earthing.decision.RemedySearch;
import earthing.decision.RemedyTrial;
import earthing.report.RemedyPage;
import earthing.report.ReportInput;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SideFiles;
import earthing.site.file.SiteFile;
import earthing.study.StudyResults;
import earthing.study.Workers;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Looks for changes that meet what is not met. */
@Command(
        name = "remedy",
        header = "Find changes that meet what is not met.",
        description = {
            "",
            "Each change of a catalogue is tried alone at every step of its range, then the"
                    + " smallest sets that meet every finding. Each row is the whole study and every check on the"
                    + " changed site; what a change worsens elsewhere stands first.",
            "",
            "The exit code is 0 when nothing calls for a remedy or a set was found, 1 when none was.",
            "",
            "A decision aid: a competent, licensed person is responsible, and local codes and"
                    + " the owner's rules govern. No row is a permission to disconnect an earth.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  earthing remedy site.yaml",
            "  earthing remedy site.yaml --write mended.yaml && earthing check mended.yaml",
            "  earthing remedy site.yaml --set longer-rods=3,ring --write mended.yaml",
            "  earthing remedy site.yaml --costs costs.csv --format json",
            "  earthing remedy --catalogue"
        })
final class RemedyCommand extends Subcommand {

    /** Formats of remedies. */
    static final class Formats extends Words<Format> {
        Formats() {
            super(Format.TEXT, Format.JSON);
        }
    }

    /** What an owner can allow. */
    enum Permission {
        NEUTRAL
    }

    /** Words of what an owner can allow. */
    static final class Permissions extends Words<Permission> {
        Permissions() {
            super(Permission.values());
        }
    }

    @Parameters(paramLabel = "SITE", arity = "0..1", description = "The site file; --catalogue does without it.")
    private Optional<Path> site = Optional.empty();

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            converter = Formats.class,
            completionCandidates = Formats.class,
            description = "One of: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Format format;

    @Option(names = "--catalogue", description = "Print the changes that can be tried, with their ranges.")
    private boolean catalogue;

    @Option(
            names = "--set",
            paramLabel = "ID[=STEP]",
            split = ",",
            description =
                    "Try only this set of changes, each at a step of its range counted from 1, or at the step that"
                            + " does most alone.")
    private List<String> set = List.of();

    @Option(
            names = "--write",
            paramLabel = "FILE",
            description = "Save the changed site, by default that of the first smallest set. Comments of the site file"
                    + " are not kept.")
    private Optional<Path> write = Optional.empty();

    @Option(
            names = "--allow",
            paramLabel = "WORD",
            split = ",",
            converter = Permissions.class,
            completionCandidates = Permissions.class,
            description = "Try changes too that only the owner can allow: ${COMPLETION-CANDIDATES}.")
    private List<Permission> allow = List.of();

    @Option(
            names = "--costs",
            paramLabel = "FILE",
            description = "Rank sets by cost: a file with the head line \"change,cost in <your unit>\".")
    private Optional<Path> costs = Optional.empty();

    @Option(
            names = "--sets",
            paramLabel = "N",
            defaultValue = "3",
            description = "Largest set that is searched for (default ${DEFAULT-VALUE}).")
    private int largest;

    @Option(
            names = "--runs",
            paramLabel = "N",
            defaultValue = "1200",
            description =
                    "Most studies that are made for sets, power frequency and surge counted apart (default ${DEFAULT-VALUE}).")
    private int runs;

    @Option(
            names = "--every-step",
            description = "Try sets with every step of each change, not only with the one that does most alone.")
    private boolean everyStep;

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    @Mixin
    private final OutputOption output = new OutputOption();

    @Override
    public Integer call() {
        List<Remedy> all = RemedyCatalogue.all();
        if (catalogue) {
            output.deliver(RemedyPage.catalogue(all), spec().commandLine().getOut());
            return ExitCode.MET.code();
        }
        if (site.isEmpty()) {
            throw usage("Missing required parameter: 'SITE'");
        }
        if (largest < 1 || largest > 6 || runs < 0) {
            throw usage("--sets takes 1 to 6 and --runs 0 or more; have " + largest + " and " + runs);
        }
        int workers = threads.number(spec());
        Map<String, Integer> chosen = chosen(all);
        RemedyCosts prices = costs.map(file -> prices(file, all)).orElse(RemedyCosts.NONE);
        Set<String> allowed = Set.copyOf(allow.stream().map(Words::text).toList());
        RemedySearch.Plan plan = new RemedySearch.Plan(allowed, largest, runs, everyStep, prices);
        Path file = site.get();
        ReadOutcome.Valid read;
        Remedies remedies;
        try (Progress progress = SiteArgument.watched(spec(), file)) {
            read = Assessment.read(file);
            Site asked = read.site();
            remedies = Workers.of(
                    workers,
                    () -> chosen.isEmpty()
                            ? RemedySearch.of(asked, all, plan, progress::step)
                            : RemedySearch.chosen(asked, all, chosen, plan));
        } catch (IllegalArgumentException refused) {
            throw usage("--set: " + refused.getMessage());
        }
        ReportInput input = new ReportInput(
                read.site(),
                String.valueOf(file.getFileName()),
                read.text(),
                read.sha256(),
                StudyResults.EMPTY,
                remedies.before(),
                RootCommand.Version.text());
        if (output.file().isPresent() || !RootCommand.of(spec()).quiet()) {
            output.deliver(
                    format == Format.JSON
                            ? RemedyPage.json(input, remedies)
                            : RemedyPage.text(read.site().site().name(), remedies),
                    spec().commandLine().getOut());
        }
        write.ifPresent(target -> save(remedies, chosen, file, target));
        boolean found = remedies.notMet().isEmpty() || remedies.best().isPresent();
        return (found ? ExitCode.MET : ExitCode.NOT_MET).code();
    }

    /** Step of each change that was named, 0 for the one that does most. */
    private Map<String, Integer> chosen(List<Remedy> all) {
        Map<String, Integer> chosen = new LinkedHashMap<>();
        for (String part : set) {
            int equals = part.indexOf('=');
            String id = (equals < 0 ? part : part.substring(0, equals)).strip();
            Optional<Remedy> remedy =
                    all.stream().filter(one -> one.id().equals(id)).findFirst();
            if (remedy.isEmpty()) {
                throw usage("--set: there is no change " + id + "; the ids are "
                        + String.join(", ", all.stream().map(Remedy::id).toList()));
            }
            int steps = remedy.get().steps().size();
            String number = equals < 0 ? "0" : part.substring(equals + 1).strip();
            boolean named = number.matches("[1-9][0-9]{0,2}") && Integer.parseInt(number) <= steps;
            if (equals >= 0 && !named) {
                throw usage("--set: " + id + " has the steps 1 to " + steps + "; have " + number);
            }
            if (chosen.put(id, Integer.parseInt(number)) != null) {
                throw usage("--set: " + id + " is named twice");
            }
        }
        return chosen;
    }

    private ParameterException usage(String message) {
        return new ParameterException(spec().commandLine(), message);
    }

    private static RemedyCosts prices(Path file, List<Remedy> all) {
        List<String> problems = new ArrayList<>();
        RemedyCosts prices = RemedyCosts.NONE;
        try {
            prices =
                    RemedyCostFile.read(Files.readString(file, StandardCharsets.UTF_8), file.toString(), all, problems);
        } catch (IOException e) {
            problems.add(file + ": this file cannot be read as UTF-8 text, or is not there");
        }
        if (!problems.isEmpty()) {
            problems.add("earthing: " + file + " is no valid list of costs");
            throw new CommandFailure(ExitCode.INVALID_INPUT, problems);
        }
        return prices;
    }

    private void save(Remedies remedies, Map<String, Integer> chosen, Path source, Path target) {
        Optional<RemedyTrial> trial = chosen.isEmpty()
                ? remedies.best()
                : remedies.sets().stream().findFirst().or(remedies::further);
        if (trial.isEmpty()) {
            throw new CommandFailure(
                    remedies.notMet().isEmpty() ? ExitCode.USAGE : ExitCode.NOT_MET,
                    List.of("earthing: nothing was written to " + target + ": "
                            + (remedies.notMet().isEmpty()
                                    ? "no finding calls for a remedy"
                                    : "no set meets every finding; name one with --set")));
        }
        Site changed = trial.get().site();
        StringBuilder text =
                new StringBuilder("# Proposed by a search for remedies, from " + source.getFileName() + ":\n");
        trial.get()
                .changes()
                .forEach(change -> text.append("#   ")
                        .append(change.remedy().id())
                        .append(": ")
                        .append(change.remedy().title())
                        .append(", ")
                        .append(change.text())
                        .append('\n'));
        text.append("# A competent, licensed person has to review it; it is no permission to disconnect an earth.\n");
        text.append(SiteFile.write(changed));
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        // A file that does not say what was checked is worse than none.
        boolean same = SiteFile.read(bytes, target.toString(), SideFiles.beside(target.toAbsolutePath()))
                        instanceof ReadOutcome.Valid again
                && again.site().equals(changed);
        if (!same) {
            throw new CommandFailure(
                    ExitCode.USAGE,
                    List.of("earthing: nothing was written to " + target
                            + ": read from there it would be another site; the"
                            + " tables that the site names have to lie in the same folder"));
        }
        Delivery.deliver(bytes, target);
    }
}
