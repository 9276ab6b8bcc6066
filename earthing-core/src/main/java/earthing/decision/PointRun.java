package earthing.decision;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.site.Site;
import earthing.study.SampleStudy;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The findings of a site at single points of its inputs, matched by id, subject and order.
 *
 * <p>What depends on the ground alone comes from tables where they can be made. Whether a requirement is met is not left to
 * them: a point with a margin so small that the tables could turn it is studied again without them.
 */
final class PointRun {

    /** What makes two findings of two runs the same question. */
    record Question(String id, String subject, int number) {}

    /** Most inputs of the ground whose ends are tabulated in every combination. */
    private static final int MOST_OF_GROUND = 4;

    /** Part of the samples that a table leaves out at each end of a distribution without limits. */
    private static final double BEYOND = 1e-4;

    /** Times the greatest difference of the tables that a margin has to be to be left to them. */
    private static final double TIMES = 5;

    /** Inputs that move the buried metal itself; tables hold it fixed. */
    private static final List<String> METAL =
            List.of("electrodes", "pole.", "stays", "cubicle.operator-mat", "soil.layers[");

    /** Inputs that a surge into the tank does not know, but for the ground. */
    private static final List<String> NO_SURGE =
            List.of("system.", "protection.", "soil.", "surges.ground-flash-density");

    private final Site site;
    private final SampleStudy study;
    private final Set<Question> ofGround;
    private final AtomicInteger again = new AtomicInteger();

    PointRun(Site site) {
        this(site, new SampleStudy(), Set.of());
    }

    private PointRun(Site site, SampleStudy study, Set<Question> ofGround) {
        this.site = site;
        this.study = study;
        this.ofGround = ofGround;
    }

    /** With tables of the ground where they can be made. */
    static PointRun tabulated(Site site, List<SpreadInput> inputs) {
        boolean surges = inputs.stream().allMatch(input -> NO_SURGE.stream().anyMatch(input.key()::startsWith));
        List<Site> ends = ends(site, inputs);
        SampleStudy study = new SampleStudy(ends, surges);
        return new PointRun(site, study, study.bound() == 0 ? Set.of() : ofGround(ends, study));
    }

    /** The findings whose margin moves with the ground. */
    private static Set<Question> ofGround(List<Site> ends, SampleStudy study) {
        Map<Question, Set<OptionalDouble>> margins = new HashMap<>();
        for (Site end : ends) {
            keyed(ComplianceRun.of(end, study.exactly(end)))
                    .forEach((question, finding) -> margins.computeIfAbsent(question, q -> new HashSet<>())
                            .add(finding.margin()));
        }
        Set<Question> moving = new HashSet<>();
        margins.forEach((question, seen) -> {
            if (seen.size() > 1) {
                moving.add(question);
            }
        });
        return moving;
    }

    /** The site at the ends of what varies of its ground; none where its metal or its thicknesses vary too. */
    private static List<Site> ends(Site site, List<SpreadInput> inputs) {
        List<SpreadInput> ground = new ArrayList<>();
        for (SpreadInput input : inputs) {
            boolean resistivity = input.key().startsWith("soil.") && input.key().endsWith("resistivity");
            if (resistivity || input.key().equals("soil.season.factor")) {
                ground.add(input);
            } else if (METAL.stream().anyMatch(input.key()::startsWith)) {
                return List.of();
            }
        }
        if (ground.size() > MOST_OF_GROUND) {
            return List.of();
        }
        List<Site> ends = new ArrayList<>();
        for (int corner = 0; corner < 1 << ground.size(); corner++) {
            double[] values = inputs.stream().mapToDouble(SpreadInput::nominal).toArray();
            for (int i = 0; i < ground.size(); i++) {
                SpreadInput input = ground.get(i);
                values[input.number()] = (corner >> i & 1) == 1
                        ? Math.max(input.high(), input.quantile(1 - BEYOND))
                        : Math.min(input.low(), input.quantile(BEYOND));
            }
            ends.add(SpreadInput.at(site, values));
        }
        return ends;
    }

    /** The findings at a point. */
    Map<Question, Finding> at(double[] values) {
        Site point = SpreadInput.at(site, values);
        Map<Question, Finding> found = keyed(ComplianceRun.of(point, study.of(point)));
        for (Question question : ofGround) {
            Finding finding = found.get(question);
            if (finding != null && mayTurn(finding)) {
                again.incrementAndGet();
                return exactly(values);
            }
        }
        return found;
    }

    /** The findings at a point without any table. */
    Map<Question, Finding> exactly(double[] values) {
        Site point = SpreadInput.at(site, values);
        return keyed(ComplianceRun.of(point, study.exactly(point)));
    }

    /** Greatest relative difference of the tables from exact solutions that was seen [1]. */
    double bound() {
        return study.bound();
    }

    /** How many points were studied again because a margin was small. */
    int again() {
        return again.get();
    }

    private boolean mayTurn(Finding finding) {
        return finding.margin().isPresent()
                && Math.abs(finding.margin().getAsDouble())
                        <= TIMES
                                * study.bound()
                                * (1 + Math.abs(finding.margin().getAsDouble()));
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
