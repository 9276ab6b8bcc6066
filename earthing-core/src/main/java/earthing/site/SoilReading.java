package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** One reading of a sounding: spacing of the probes, or depth of a driven rod, and a resistance or apparent resistivity. */
public record SoilReading(
        @Key(example = "along the line", doc = "Traverse; readings of one name belong together.") @Nullable
        String traverse,

        @Key(unit = Dimension.LENGTH, example = "2 m", doc = "Wenner array: distance between neighbouring probes.")
        @Nullable
        Measure spacing,

        @Key(
                unit = Dimension.LENGTH,
                sign = Key.Sign.NOT_NEGATIVE,
                example = "0.2 m",
                doc = "Wenner array: depth to which the probes were driven; two thirds of it is taken.")
        @Nullable
        Measure probeDepth,

        @Key(
                unit = Dimension.LENGTH,
                example = "10 m",
                doc = "Schlumberger array: half the distance of the current probes.")
        @Nullable
        Measure halfCurrentSpacing,

        @Key(
                unit = Dimension.LENGTH,
                example = "1 m",
                doc = "Schlumberger array: half the distance of the potential probes.")
        @Nullable
        Measure halfPotentialSpacing,

        @Key(
                unit = Dimension.LENGTH,
                example = "2.4 m",
                doc = "Rod that is driven deeper step by step: how deep it stood in the ground.")
        @Nullable
        Measure rodDepth,

        @Key(unit = Dimension.LENGTH, example = "16 mm", doc = "Diameter of that rod.") @Nullable
        Measure rodDiameter,

        @Key(unit = Dimension.RESISTANCE, example = "8.4 ohm", doc = "What the instrument showed.") @Nullable
        Measure resistance,

        @Key(
                unit = Dimension.RESISTIVITY,
                example = "105 ohm.m",
                doc = "Apparent resistivity, in place of the resistance.")
        @Nullable
        Measure resistivity) {}
