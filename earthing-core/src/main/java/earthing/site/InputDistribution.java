package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** How the values of one bounded input are spread. */
public record InputDistribution(
        @Key(
                required = true,
                example = "soil.resistivity",
                doc = "Path of a key with low and high; items of a list by their number or name in brackets.")
        String key,

        @Key(required = true, example = "lognormal", doc = "Shape of the distribution.")
        DistributionShape shape,

        @Key(
                unit = Dimension.RATIO,
                example = "95 %",
                doc = "Of normal and lognormal: the part of all values between low and high; 95 % if not given.")
        @Nullable
        Measure share,

        @Key(
                example = "yes",
                doc = "Of normal and lognormal: whether low and high are limits beyond which there is no value; yes if"
                        + " not given.")
        @Nullable
        YesNo limits) {}
