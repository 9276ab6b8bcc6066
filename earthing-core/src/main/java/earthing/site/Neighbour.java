package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A conducting thing nearby. */
public record Neighbour(
        @Key(text = Key.Text.NAME, required = true, example = "field fence", doc = "What it is.")
        String name,

        @Key(required = true, example = "fence", doc = "What kind of thing it is.")
        NeighbourKind kind,

        @Key(unit = Dimension.LENGTH, required = true, example = "12 m", doc = "Distance from the pole.")
        Measure distance,

        @Key(
                example = "430 V",
                unit = Dimension.VOLTAGE,
                doc = "The owner's limit of the voltage transferred to it, r.m.s.")
        @Nullable
        Measure limit) {}
