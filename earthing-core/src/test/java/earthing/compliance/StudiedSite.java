package earthing.compliance;

import earthing.site.Site;
import earthing.study.DemoSite;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** A demonstration site with its results and findings; studied once for all tests. */
record StudiedSite(Site site, StudyResults results, List<Finding> findings) {

    private static final Map<String, StudiedSite> STUDIED = new ConcurrentHashMap<>();

    static StudiedSite of(String name) {
        return STUDIED.computeIfAbsent(name, key -> of(DemoSite.read(key)));
    }

    static StudiedSite of(Site site) {
        StudyResults results = SiteStudy.of(site);
        return new StudiedSite(site, results, ComplianceRun.of(site, results));
    }
}
