package earthing.decision;

import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Quantity;
import earthing.site.DistributionShape;
import earthing.site.InputDistribution;
import earthing.site.Site;
import earthing.site.SiteRewrite;
import earthing.site.Uncertainty;
import earthing.site.YesNo;
import earthing.site.file.SiteTree;
import earthing.study.SiteStudy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * One bounded input of a site and how its values are spread. Without a distribution of its own it is a triangle over low,
 * nominal and high.
 *
 * @param number its place among the bounded measures of the site, from 0
 * @param key path in the site file; members of a list by their name or number
 * @param low low value in SI
 * @param nominal nominal value in SI
 * @param high high value in SI
 * @param unit SI unit
 * @param shape shape of the distribution
 * @param share of normal and lognormal: part of the values between low and high
 * @param limits of normal and lognormal: whether nothing lies beyond low and high
 * @param declared whether the file says so, or the triangle is taken
 * @param held whether the verdicts take this input at its nominal value, whatever its bounds
 */
public record SpreadInput(
        int number,
        String key,
        double low,
        double nominal,
        double high,
        String unit,
        DistributionShape shape,
        double share,
        boolean limits,
        boolean declared,
        boolean held) {

    /** Part of the values between low and high where the file does not say. */
    public static final double USUAL_SHARE = 0.95;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /**
     * The bounded inputs of a site.
     *
     * @param site the site
     * @return the inputs in the order of the site file
     */
    public static List<SpreadInput> of(Site site) {
        List<String> held = SiteStudy.heldNominal(site);
        List<String> general = new ArrayList<>();
        SiteRewrite.of(site, (path, measure) -> {
            if (measure.hasSpread()) {
                general.add(path);
            }
            return measure;
        });
        List<SpreadInput> inputs = new ArrayList<>();
        for (SiteTree.Entry entry : SiteTree.entries(site)) {
            if (entry.value() instanceof Measure measure && measure.hasSpread()) {
                int number = inputs.size();
                inputs.add(of(
                        number,
                        entry.path(),
                        measure,
                        declared(site, entry.path()),
                        held.contains(general.get(number))));
            }
        }
        return List.copyOf(inputs);
    }

    private static SpreadInput of(
            int number, String key, Measure measure, Optional<InputDistribution> declared, boolean held) {
        return new SpreadInput(
                number,
                key,
                measure.at(Bound.LOW),
                measure.nominal(),
                measure.at(Bound.HIGH),
                measure.dimension().siUnit(),
                declared.map(InputDistribution::shape).orElse(DistributionShape.TRIANGULAR),
                declared.map(InputDistribution::share).map(Measure::nominal).orElse(USUAL_SHARE),
                declared.map(InputDistribution::limits).map(YesNo.YES::equals).orElse(true),
                declared.isPresent(),
                held);
    }

    private static Optional<InputDistribution> declared(Site site, String key) {
        Uncertainty uncertainty = site.uncertainty();
        return uncertainty == null
                ? Optional.empty()
                : uncertainty.distributions().stream()
                        .filter(d -> SiteTree.names(site, d.key(), key))
                        .findFirst();
    }

    /**
     * The value below which a part of all values lies.
     *
     * @param part the part, above 0 and below 1
     * @return the value in SI
     * @throws IllegalArgumentException if the distribution cannot be: bounds that a logarithm does not have, or values
     *     below zero of something that has none
     */
    public double quantile(double part) {
        return switch (shape) {
            case UNIFORM -> low + part * (high - low);
            case TRIANGULAR -> triangle(part);
            case NORMAL -> normal(part, low, nominal, high);
            case LOGNORMAL -> {
                if (!(low > 0)) {
                    throw new IllegalArgumentException(
                            key + ": a lognormal distribution needs a low value above zero; have " + low);
                }
                yield Math.exp(normal(part, Math.log(low), Math.log(nominal), Math.log(high)));
            }
        };
    }

    private double triangle(double part) {
        double rise = (nominal - low) / (high - low);
        return part < rise
                ? low + Math.sqrt(part * (high - low) * (nominal - low))
                : high - Math.sqrt((1 - part) * (high - low) * (high - nominal));
    }

    private double normal(double part, double from, double middle, double to) {
        double deviation = (to - from) / (2 * NORMAL.inverseCumulativeProbability((1 + share) / 2));
        double below = limits ? NORMAL.cumulativeProbability((from - middle) / deviation) : 0;
        double above = limits ? NORMAL.cumulativeProbability((to - middle) / deviation) : 1;
        double value = middle + deviation * NORMAL.inverseCumulativeProbability(below + part * (above - below));
        return limits ? Math.min(to, Math.max(from, value)) : value;
    }

    /**
     * Whether two texts mean the key of this input.
     *
     * @param site the site
     * @param written a path as the site file writes it
     * @return true if it is this one
     */
    boolean isNamed(Site site, String written) {
        return SiteTree.names(site, written, key);
    }

    /** The site with its bounded measures at these values, in order; no bounds are left. */
    static Site at(Site site, double[] values) {
        int[] next = {0};
        return SiteRewrite.of(site, (path, measure) -> {
            if (!measure.hasSpread()) {
                return measure;
            }
            Quantity value = Quantity.of(measure.dimension(), values[next[0]]);
            next[0]++;
            return new Measure(
                    measure.dimension(),
                    Optional.of(new Measure.Bounds(value, value, value)),
                    measure.origin(),
                    measure.date(),
                    measure.by());
        });
    }
}
