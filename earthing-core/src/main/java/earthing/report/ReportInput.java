package earthing.report;

import earthing.compliance.Expectations;
import earthing.compliance.Finding;
import earthing.decision.Remedies;
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
 */
public record ReportInput(
        Site site,
        String siteFileName,
        String siteFileText,
        String sha256,
        StudyResults results,
        List<Finding> findings,
        String toolVersion,
        Optional<Remedies> remedies) {

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
        this(site, siteFileName, siteFileText, sha256, results, findings, toolVersion, Optional.empty());
    }

    /**
     * The same with more results.
     *
     * @param more the results
     * @return the input
     */
    public ReportInput with(StudyResults more) {
        return new ReportInput(site, siteFileName, siteFileText, sha256, more, findings, toolVersion, remedies);
    }

    /**
     * The same with remedies.
     *
     * @param found what a search for them found
     * @return the input
     */
    public ReportInput with(Remedies found) {
        return new ReportInput(
                site, siteFileName, siteFileText, sha256, results, findings, toolVersion, Optional.of(found));
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
