package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A thin rectangular plate. */
public record PlateShape(
        @Key(unit = Dimension.LENGTH, required = true, example = "0.6 m", doc = "Width along x.")
        Measure width,

        @Key(
                unit = Dimension.LENGTH,
                required = true,
                example = "0.6 m",
                doc = "Length, along y where it lies flat, down where it stands.")
        Measure length,

        @Key(required = true, example = "vertical", doc = "How it lies.")
        PlateLie lie,

        @Key(unit = Dimension.LENGTH, required = true, example = "1.5 m", doc = "Depth of its centre.")
        Measure depth) {}
