package earthing.decision;

import earthing.compliance.ComplianceRun;
import earthing.compliance.ComplianceRun.Basis;
import earthing.compliance.Finding;
import earthing.site.Site;
import earthing.study.EarthCache;
import earthing.study.PartStudy;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Judges changed sites part by part and stops at the first part in which something stands against them: what the file says
 * alone, then power frequency and surge, that first in which the site as it was fails. A part is studied once for all sites
 * that do not differ in what it reads.
 */
final class TrialParts {

    private final List<Finding> before;
    private final EarthCache cache;
    private final List<PartStudy> order;
    private final Map<PartStudy, Map<Site, List<Finding>>> known =
            Map.of(PartStudy.POWER_FREQUENCY, new ConcurrentHashMap<>(), PartStudy.SURGE, new ConcurrentHashMap<>());

    /** Parts of changes of a site with these findings. */
    TrialParts(Site site, List<Finding> before, EarthCache cache) {
        this.before = before;
        this.cache = cache;
        boolean onlySurges = left(of(site, PartStudy.POWER_FREQUENCY)) == 0 && left(of(site, PartStudy.SURGE)) > 0;
        this.order = onlySurges
                ? List.of(PartStudy.SURGE, PartStudy.POWER_FREQUENCY)
                : List.of(PartStudy.POWER_FREQUENCY, PartStudy.SURGE);
    }

    /** Whether no part stands against a changed site; what rests on several parts is not asked. */
    boolean mayMeet(Site changed) {
        return left(described(changed)) == 0 && order.stream().allMatch(part -> left(of(changed, part)) == 0);
    }

    /** The findings of all parts. */
    List<Finding> all(Site changed) {
        List<Finding> all = new ArrayList<>(described(changed));
        order.forEach(part -> all.addAll(of(changed, part)));
        return all;
    }

    /** Studies of a part that were made; the same for the same trials, however they were shared among threads. */
    int studied() {
        return known.values().stream().mapToInt(Map::size).sum();
    }

    private int left(List<Finding> now) {
        return RemedyTrial.countAgainst(before, now);
    }

    private static List<Finding> described(Site changed) {
        return ComplianceRun.of(changed, StudyResults.EMPTY, Set.of(Basis.DESCRIPTION));
    }

    private List<Finding> of(Site changed, PartStudy part) {
        Site asked = part.asked(changed);
        Map<Site, List<Finding>> findings = known.getOrDefault(part, Map.of());
        List<Finding> found = findings.get(asked);
        if (found == null) {
            Basis basis = part == PartStudy.SURGE ? Basis.SURGE : Basis.POWER_FREQUENCY;
            // Studied twice rather than waited for; the results are the same.
            found = ComplianceRun.of(asked, part.of(asked, cache), Set.of(basis));
            findings.put(asked, found);
        }
        return found;
    }
}
