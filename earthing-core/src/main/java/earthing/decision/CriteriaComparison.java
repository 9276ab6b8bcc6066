package earthing.decision;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.decision.PointRun.Question;
import earthing.site.Criteria;
import earthing.site.Site;
import earthing.site.SiteRewrite;
import earthing.site.TouchCriterion;
import earthing.site.file.SiteTree;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * The same site under each set of touch criteria that the library has and the file describes.
 *
 * @param sets the sets that were used, in the order of the site file's words
 * @param left sets that were not used, with the key that the file lacks
 * @param rows the checks on which the sets do not agree, in the order of the report
 * @param agreed number of checks with a value on which they do
 */
public record CriteriaComparison(List<Used> sets, Map<String, String> left, List<Row> rows, int agreed) {

    /** Two limits that are no further apart than this part are the same one. */
    private static final double SAME = 1e-9;

    /**
     * Copies the lists.
     *
     * @param sets the sets that were used, in the order of the site file's words
     * @param left sets that were not used, with the key that the file lacks
     * @param rows the checks on which the sets do not agree, in the order of the report
     * @param agreed number of checks with a value on which they do
     */
    public CriteriaComparison {
        sets = List.copyOf(sets);
        rows = List.copyOf(rows);
    }

    /**
     * A set that was used.
     *
     * @param word its word in the site file
     * @param own whether it is the one that the file names
     * @param why what its permissible voltage at the governing part rests on; a phrase of the criteria set itself
     */
    public record Used(String word, boolean own, String why) {}

    /**
     * One check.
     *
     * @param id id of the finding
     * @param subject what was looked at
     * @param findings what each set finds, in the order of the sets; empty where it has no such finding
     */
    public record Row(String id, String subject, List<Optional<Finding>> findings) {

        /**
         * Copies the list.
         *
         * @param id id of the finding
         * @param subject what was looked at
         * @param findings what each set finds, in the order of the sets; empty where it has no such finding
         */
        public Row {
            findings = List.copyOf(findings);
        }

        /**
         * The set with the least margin.
         *
         * @return its number from 0; none if no set has a margin
         */
        public OptionalInt governing() {
            int governing = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < findings.size(); i++) {
                double margin = findings.get(i)
                        .map(f -> f.margin().orElse(Double.POSITIVE_INFINITY))
                        .orElse(Double.POSITIVE_INFINITY);
                if (margin < least) {
                    least = margin;
                    governing = i;
                }
            }
            return governing < 0 ? OptionalInt.empty() : OptionalInt.of(governing);
        }

        private boolean differs() {
            Set<Object> seen = new LinkedHashSet<>();
            for (Optional<Finding> finding : findings) {
                seen.add(finding.map(f -> List.of(f.status(), rounded(f.limit().orElse(Double.NaN))))
                        .orElse(List.of()));
            }
            return seen.size() > 1;
        }

        private static double rounded(double limit) {
            return Math.rint(Math.log(Math.abs(limit)) / SAME);
        }
    }

    /**
     * Studies a site under each set.
     *
     * @param site the site, its criteria given
     * @return the sets side by side
     * @throws IllegalArgumentException if the site names no criteria
     */
    public static CriteriaComparison of(Site site) {
        Criteria criteria = site.criteria();
        if (criteria == null) {
            throw new IllegalArgumentException("the file has no block criteria, which would say what all sets share");
        }
        Map<String, String> left = new LinkedHashMap<>();
        List<TouchCriterion> usable = new ArrayList<>();
        for (TouchCriterion touch : TouchCriterion.values()) {
            if (touch == TouchCriterion.IEC_60479_1 && criteria.body() == null) {
                left.put(SiteTree.word(touch), "criteria.body");
            } else if (touch == TouchCriterion.OWNER && criteria.owner() == null) {
                left.put(SiteTree.word(touch), "criteria.owner");
            } else {
                usable.add(touch);
            }
        }
        List<Used> sets = new ArrayList<>();
        List<Map<Question, Finding>> found = new ArrayList<>();
        for (TouchCriterion touch : usable) {
            Site under = SiteRewrite.with(site, with(criteria, touch));
            StudyResults results = SiteStudy.of(under, StudyScope.AS_BUILT);
            List<Finding> findings = ComplianceRun.of(under, results);
            found.add(PointRun.keyed(findings));
            sets.add(new Used(SiteTree.word(touch), touch == criteria.touch(), why(findings, results)));
        }
        return compared(sets, left, found);
    }

    private static Criteria with(Criteria c, TouchCriterion touch) {
        return new Criteria(
                touch,
                c.body(),
                c.owner(),
                c.exposure(),
                c.footwearResistance(),
                c.covering(),
                c.shockMergingTime(),
                c.electrodeResistance(),
                c.initialTemperature(),
                c.finalTemperature(),
                c.protectiveMargin(),
                c.departures());
    }

    private static CriteriaComparison compared(
            List<Used> sets, Map<String, String> left, List<Map<Question, Finding>> found) {
        Set<Question> keys = new LinkedHashSet<>();
        found.forEach(one -> keys.addAll(one.keySet()));
        List<Row> rows = new ArrayList<>();
        int agreed = 0;
        for (Question key : keys) {
            Row row = new Row(
                    key.id(),
                    key.subject(),
                    found.stream().map(one -> Optional.ofNullable(one.get(key))).toList());
            if (row.differs()) {
                rows.add(row);
            } else {
                agreed += row.findings()
                                .get(0)
                                .flatMap(f -> f.value().stream().boxed().findFirst())
                                .isPresent()
                        ? 1
                        : 0;
            }
        }
        return new CriteriaComparison(sets, left, rows, agreed);
    }

    /** What the limit of the tightest touch finding rests on, in the words of the set. */
    private static String why(List<Finding> findings, StudyResults results) {
        Optional<Finding> tightest = findings.stream()
                .filter(f -> f.id().startsWith("touch.") && f.limit().isPresent())
                .min(Comparator.comparingDouble(f -> f.margin().orElse(Double.POSITIVE_INFINITY)));
        return tightest.flatMap(f -> results.one(f.id() + ".permissible", f.circumstances(), f.bound()))
                .map(r -> r.id() + ", " + r.model() + " (" + r.source().text() + ")")
                .orElseGet(() -> results.gapsOf("touch").stream()
                        .findFirst()
                        .map(gap -> "no permissible touch voltage: " + gap.reason())
                        .orElse("no touch voltage is to be judged"));
    }
}
