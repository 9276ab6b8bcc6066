package earthing.decision;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.site.Site;
import earthing.study.SampleStudy;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The findings of a site at single points of its inputs, matched by id, subject and order. */
final class PointRun {

    /** What makes two findings of two runs the same question. */
    record Question(String id, String subject, int number) {}

    private final Site site;
    private final SampleStudy study;

    PointRun(Site site) {
        this.site = site;
        this.study = new SampleStudy();
    }

    Map<Question, Finding> at(double[] values) {
        Site point = SpreadInput.at(site, values);
        return keyed(ComplianceRun.of(point, study.of(point)));
    }

    static Map<Question, Finding> keyed(List<Finding> findings) {
        Map<String, Integer> times = new HashMap<>();
        Map<Question, Finding> keyed = new LinkedHashMap<>();
        for (Finding finding : findings) {
            int number = times.merge(finding.id() + '\n' + finding.subject(), 1, Integer::sum);
            keyed.put(new Question(finding.id(), finding.subject(), number), finding);
        }
        return keyed;
    }
}
