package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A conducting thing nearby. */
public record Neighbour(
        @Key(required = true, example = "field fence", doc = "What it is.")
        String name,

        @Key(required = true, example = "fence", doc = "lv-earth, telecom, fence, pipe or building.")
        NeighbourKind kind,

        @Key(unit = Dimension.LENGTH, required = true, example = "12 m", doc = "Distance from the pole.")
        Measure distance,

        @Key(unit = Dimension.VOLTAGE, doc = "The owner's limit of the voltage transferred to it, r.m.s.") @Nullable
        Measure limit) {}
