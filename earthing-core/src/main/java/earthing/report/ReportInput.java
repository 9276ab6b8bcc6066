package earthing.report;

import earthing.compliance.Expectations;
import earthing.compliance.Finding;
import earthing.decision.CriteriaComparison;
import earthing.decision.Remedies;
import earthing.decision.SpreadStudy;
import earthing.site.Site;
import earthing.study.StudyResults;
import java.util.List;
import java.util.Optional;

/**
 * Everything a report is made of; the same input gives the same bytes.
 *
 * @param site the site
 * @param siteFileName name of its file, as the user knows it
 * @param siteFileText the file verbatim
 * @param sha256 its hash, 64 hexadecimal digits
 * @param results what the studies found
 * @param findings what the checks found
 * @param toolVersion version of this program
 * @param remedies what a search for remedies found, where one was asked for
 * @param spread what the spread inputs gave, where that was asked for
 * @param criteria what every set of criteria gives, where that was asked for
 */
public record ReportInput(
        Site site,
        String siteFileName,
        String siteFileText,
        String sha256,
        StudyResults results,
        List<Finding> findings,
        String toolVersion,
        Optional<Remedies> remedies,
        Optional<SpreadStudy> spread,
        Optional<CriteriaComparison> criteria) {

    /** Name of the program as it stands in a report. */
    public static final String TOOL_NAME = "earthing";

    /**
     * Copies the findings.
     *
     * @param site the site
     * @param siteFileName name of its file, as the user knows it
     * @param siteFileText the file verbatim
     * @param sha256 its hash, 64 hexadecimal digits
     * @param results what the studies found
     * @param findings what the checks found
     * @param toolVersion version of this program
     * @param remedies what a search for remedies found
     * @param spread what the spread inputs gave
     * @param criteria what every set of criteria gives
     */
    public ReportInput {
        findings = List.copyOf(findings);
    }

    /**
     * Without a search for remedies.
     *
     * @param site the site
     * @param siteFileName name of its file, as the user knows it
     * @param siteFileText the file verbatim
     * @param sha256 its hash, 64 hexadecimal digits
     * @param results what the studies found
     * @param findings what the checks found
     * @param toolVersion version of this program
     */
    public ReportInput(
            Site site,
            String siteFileName,
            String siteFileText,
            String sha256,
            StudyResults results,
            List<Finding> findings,
            String toolVersion) {
        this(
                site,
                siteFileName,
                siteFileText,
                sha256,
                results,
                findings,
                toolVersion,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * The same with more results.
     *
     * @param more the results
     * @return the input
     */
    public ReportInput with(StudyResults more) {
        return with(more, remedies, spread, criteria);
    }

    /**
     * The same with remedies.
     *
     * @param found what a search for them found
     * @return the input
     */
    public ReportInput with(Remedies found) {
        return with(results, Optional.of(found), spread, criteria);
    }

    /**
     * The same with the inputs spread.
     *
     * @param found what the samples gave
     * @return the input
     */
    public ReportInput with(SpreadStudy found) {
        return with(results, remedies, Optional.of(found), criteria);
    }

    /**
     * The same with all sets of criteria.
     *
     * @param found what each set gives
     * @return the input
     */
    public ReportInput with(CriteriaComparison found) {
        return with(results, remedies, spread, Optional.of(found));
    }

    private ReportInput with(
            StudyResults studied,
            Optional<Remedies> tried,
            Optional<SpreadStudy> drawn,
            Optional<CriteriaComparison> sets) {
        return new ReportInput(
                site, siteFileName, siteFileText, sha256, studied, findings, toolVersion, tried, drawn, sets);
    }

    /**
     * What the author of the file expected, held against what was found.
     *
     * @return one entry for each expectation, in the order of the file
     */
    public List<Expectations.Held> expectations() {
        return Expectations.of(site, results, findings);
    }
}
