package earthing.cli;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Expectations;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.decision.RemedyCatalogue;
import earthing.decision.RemedySearch;
import earthing.decision.Sensitivity;
import earthing.decision.SpreadStudy;
import earthing.report.ReportInput;
import earthing.site.Site;
import earthing.site.file.Problem;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.EarthCache;
import earthing.study.PlanStudy;
import earthing.study.Recheck;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import earthing.study.SurgeOutlook;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The way from a site file to findings, one call a station. */
final class Assessment {

    private Assessment() {}

    /**
     * Reads a site file.
     *
     * @param file the file
     * @return the site with its text and hash
     * @throws CommandFailure with every problem, if the file is refused
     */
    static ReadOutcome.Valid read(Path file) {
        ReadOutcome outcome = SiteFile.read(file);
        if (outcome instanceof ReadOutcome.Invalid invalid) {
            throw refused(file, invalid.problems());
        }
        return (ReadOutcome.Valid) outcome;
    }

    /** How much is found out about a site. */
    private enum Depth {
        VERDICTS,
        ARRANGEMENTS,
        REPORT,
        SENSITIVITY
    }

    /**
     * Reads, studies and checks a site, for its verdicts alone.
     *
     * @param file the site file
     * @param progress is told each step
     * @return what the verdicts are read from
     */
    static ReportInput verdicts(Path file, Progress progress) {
        return of(file, progress, Depth.VERDICTS);
    }

    /**
     * Reads, studies and checks a site, with the arrangements that it does not have.
     *
     * @param file the site file
     * @param progress is told each step
     * @return what two sites are compared by
     */
    static ReportInput compared(Path file, Progress progress) {
        return of(file, progress, Depth.ARRANGEMENTS);
    }

    /**
     * Reads, studies and checks a site, with all that a report tells.
     *
     * @param file the site file
     * @param progress is told each step
     * @return what a report is made of
     */
    static ReportInput of(Path file, Progress progress) {
        return of(file, progress, Depth.REPORT);
    }

    /**
     * Reads, studies and checks a site, with all that a report tells and what each bounded input alone would change.
     *
     * @param file the site file
     * @param progress is told each step
     * @return what a report is made of
     */
    static ReportInput withSensitivity(Path file, Progress progress) {
        return of(file, progress, Depth.SENSITIVITY);
    }

    /**
     * The same with the results verified by code that did not produce them.
     *
     * @param input what was found
     * @param progress is told the step
     * @return what was found and how far it holds
     */
    static ReportInput rechecked(ReportInput input, Progress progress) {
        progress.step("verifying the results of " + input.siteFileName());
        return input.with(Recheck.added(input.site(), input.results()));
    }

    /**
     * The same with remedies for what is not met.
     *
     * @param input what was found
     * @param progress is told the steps
     * @return what was found and what would mend it
     */
    static ReportInput withRemedies(ReportInput input, Progress progress) {
        return input.with(
                RemedySearch.of(input.site(), RemedyCatalogue.all(), RemedySearch.Plan.USUAL, progress::step));
    }

    /** The same with the bounded inputs spread. */
    static ReportInput withSpread(ReportInput input, int samples, long seed, Progress progress) {
        try {
            return input.with(SpreadStudy.of(input.site(), input.findings(), samples, seed, progress::step));
        } catch (IllegalArgumentException impossible) {
            throw new CommandFailure(
                    ExitCode.INVALID_INPUT,
                    List.of("earthing: " + input.siteFileName() + ": " + impossible.getMessage()));
        }
    }

    private static ReportInput of(Path file, Progress progress, Depth depth) {
        ReadOutcome.Valid read = read(file);
        Site site = read.site();
        progress.step("studying " + file.getFileName());
        EarthCache cache = new EarthCache();
        boolean asBuilt = depth == Depth.VERDICTS && !Expectations.needArrangements(site);
        StudyResults results = SiteStudy.of(site, asBuilt ? StudyScope.AS_BUILT : StudyScope.ALL_ARRANGEMENTS, cache);
        progress.step("checking " + file.getFileName());
        List<Finding> findings = ComplianceRun.of(site, results);
        if (depth == Depth.REPORT || depth == Depth.SENSITIVITY) {
            progress.step("counting strokes at " + file.getFileName());
            results = SurgeOutlook.added(site, results, cache);
            results = PlanStudy.added(site, results);
        }
        if (depth == Depth.SENSITIVITY) {
            progress.step("varying the inputs of " + file.getFileName());
            results = Sensitivity.added(site, results, findings);
        }
        // The name without its folder: the report does not depend on where it was asked for.
        String name = String.valueOf(file.getFileName());
        return new ReportInput(site, name, read.text(), read.sha256(), results, findings, RootCommand.Version.text());
    }

    /**
     * The exit code that findings and expectations stand for.
     *
     * @param input what was found
     * @return not met before not assessed before met; what is due later does not count; an expected result that is
     *     another one counts as not met
     */
    static ExitCode outcome(ReportInput input) {
        if (input.expectations().stream().anyMatch(held -> !held.holds())) {
            return ExitCode.NOT_MET;
        }
        ExitCode worst = ExitCode.MET;
        for (Finding finding : input.findings()) {
            Status status = finding.status();
            if (status == Status.NOT_MET) {
                return ExitCode.NOT_MET;
            }
            if (status == Status.NOT_ASSESSED || status == Status.INSUFFICIENT_DATA) {
                worst = ExitCode.NOT_ASSESSED;
            }
        }
        return worst;
    }

    private static CommandFailure refused(Path file, List<Problem> problems) {
        List<String> lines = new ArrayList<>();
        problems.forEach(problem -> lines.add(problem.text()));
        lines.add("earthing: " + file + " is not a valid site file: " + problems.size()
                + (problems.size() == 1 ? " problem" : " problems"));
        return new CommandFailure(ExitCode.INVALID_INPUT, lines);
    }
}
