package earthing.decision;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Finding.Group;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Quantity;
import earthing.quantity.Source;
import earthing.site.Site;
import earthing.site.SiteRewrite;
import earthing.site.file.SiteTree;
import earthing.study.Case;
import earthing.study.Curve;
import earthing.study.Result;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How far each bounded input alone moves the governing checks: every other input stands at its nominal value, this one at
 * its low, then at its high one, and the whole site is studied and checked again. An input without bounds is not varied,
 * since nobody said how far it may be off. Effects of two inputs together are not told.
 */
public final class Sensitivity {

    /** Beginning of the ids of its results and curves; the id of the check follows. */
    public static final String PREFIX = "sensitivity.";

    /** Bound of the result at which every input is nominal. */
    public static final String NOMINAL = "nominal";

    private static final Source ONE_AT_A_TIME =
            Source.tool("the site studied again with one input at its bound, docs/user-guide.md");

    /** Groups whose governing check is followed; the headline is the worst of them. */
    private static final List<Group> GROUPS =
            List.of(Group.PERSONAL_SAFETY, Group.CONDUCTOR_HEATING, Group.SURGE, Group.ELECTRODE);

    /** It judges the tool, not the site. */
    private static final String SECOND_METHOD = "electrode.model-agreement";

    private record Run(String at, List<Finding> findings) {}

    private Sensitivity() {}

    /**
     * Adds results and curves {@code sensitivity.<check>}: the value of the check with all inputs nominal, and with one
     * of them low or high ({@code at} is {@code <key>=low} or {@code <key>=high}). The curve has a trace for each input:
     * −1 low, 0 nominal, 1 high.
     *
     * @param site the site
     * @param studied what the other studies found
     * @param findings what the checks found; the one of least margin of each headline group, and of the electrodes, is
     *     followed
     * @return those results with these; unchanged where no input has bounds or no such check has a value
     */
    public static StudyResults added(Site site, StudyResults studied, List<Finding> findings) {
        List<String> inputs = bounded(site);
        List<Finding> governing = governing(findings);
        if (inputs.isEmpty() || governing.isEmpty()) {
            return studied;
        }
        List<Run> runs = IntStream.range(0, 1 + 2 * inputs.size())
                .parallel()
                .mapToObj(run -> run(site, inputs, run))
                .toList();
        List<Result> results = new ArrayList<>();
        List<Curve> curves = new ArrayList<>();
        for (Finding check : governing) {
            told(check, inputs, runs, results, curves);
        }
        return StudyResults.join(List.of(studied, new StudyResults(results, curves, List.of(), List.of(), List.of())));
    }

    private static List<String> bounded(Site site) {
        return SiteTree.entries(site).stream()
                .filter(entry -> entry.value() instanceof Measure measure && measure.hasSpread())
                .map(SiteTree.Entry::path)
                .toList();
    }

    private static List<Finding> governing(List<Finding> findings) {
        return GROUPS.stream()
                .flatMap(group -> findings.stream()
                        .filter(f -> f.group() == group
                                && !f.id().equals(SECOND_METHOD)
                                && f.value().isPresent()
                                && f.margin().isPresent())
                        .min(Comparator.comparingDouble(f -> f.margin().orElse(0)))
                        .stream())
                .toList();
    }

    /** Run 0 is nominal; of the others each pair belongs to one input. */
    private static Run run(Site site, List<String> inputs, int run) {
        int varied = (run - 1) / 2;
        Bound bound = run == 0 ? Bound.NOMINAL : run % 2 == 1 ? Bound.LOW : Bound.HIGH;
        String at = run == 0 ? NOMINAL : inputs.get(varied) + "=" + (bound == Bound.LOW ? "low" : "high");
        Site changed = at(site, run == 0 ? -1 : varied, bound);
        return new Run(at, ComplianceRun.of(changed, SiteStudy.of(changed, StudyScope.AS_BUILT)));
    }

    /**
     * The site without bounds.
     *
     * @param varied number of the bounded measure that stands at the bound, in the order of the file; the others are
     *     nominal
     */
    private static Site at(Site site, int varied, Bound bound) {
        int[] next = {0};
        return SiteRewrite.of(site, (path, measure) -> {
            if (!measure.hasSpread()) {
                return measure;
            }
            Bound taken = next[0] == varied ? bound : Bound.NOMINAL;
            next[0]++;
            return exactly(measure, taken);
        });
    }

    private static Measure exactly(Measure measure, Bound bound) {
        Measure.Bounds bounds = measure.bounds().orElseThrow();
        Quantity quantity = switch (bound) {
            case LOW -> bounds.low();
            case NOMINAL -> bounds.nominal();
            case HIGH -> bounds.high();
        };
        return new Measure(
                measure.dimension(),
                Optional.of(new Measure.Bounds(quantity, quantity, quantity)),
                measure.origin(),
                measure.date(),
                measure.by());
    }

    private static void told(
            Finding check, List<String> inputs, List<Run> runs, List<Result> results, List<Curve> curves) {
        List<OptionalDouble> values = runs.stream()
                .map(run -> run.findings().stream()
                        .filter(f -> f.id().equals(check.id()) && f.subject().equals(check.subject()))
                        .findFirst()
                        .map(Finding::value)
                        .orElse(OptionalDouble.empty()))
                .toList();
        if (values.get(0).isEmpty()) {
            return;
        }
        for (int run = 0; run < runs.size(); run++) {
            if (values.get(run).isPresent()) {
                results.add(Result.of(
                        PREFIX + check.id(),
                        Case.NONE,
                        runs.get(run).at(),
                        values.get(run).getAsDouble(),
                        check.unit(),
                        check.subject() + ", the worst of the cases with these inputs",
                        ONE_AT_A_TIME));
            }
        }
        double nominal = values.get(0).getAsDouble();
        List<Curve.Trace> traces = new ArrayList<>();
        for (int input = 0; input < inputs.size(); input++) {
            OptionalDouble low = values.get(1 + 2 * input);
            OptionalDouble high = values.get(2 + 2 * input);
            if (low.isPresent() && high.isPresent()) {
                traces.add(new Curve.Trace(inputs.get(input), new double[] {-1, 0, 1}, new double[] {
                    low.getAsDouble(), nominal, high.getAsDouble()
                }));
            }
        }
        traces.sort(Comparator.comparingDouble(
                trace -> -Math.abs(trace.y(2) - trace.y(1)) - Math.abs(trace.y(0) - trace.y(1))));
        curves.add(new Curve(
                PREFIX + check.id(),
                check.subject(),
                "bound of the input: -1 low, 0 nominal, 1 high",
                "",
                "value of the check",
                check.unit(),
                traces));
    }
}
