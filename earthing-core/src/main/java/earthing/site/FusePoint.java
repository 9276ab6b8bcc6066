package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** One point of a fuse's curve. */
public record FusePoint(
        @Key(known = true, unit = Dimension.CURRENT, required = true, example = "60 A", doc = "Current, r.m.s.")
        Measure current,

        @Key(
                known = true,
                unit = Dimension.TIME,
                required = true,
                example = "10 s",
                doc = "Total clearing time, largest.")
        Measure time) {}
