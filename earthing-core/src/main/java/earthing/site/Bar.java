package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A straight bar at coordinates. */
public record Bar(
        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "0 m",
                doc = "Coordinate x of the first end.")
        Measure x1,

        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "0 m",
                doc = "Coordinate y of the first end.")
        Measure y1,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                required = true,
                example = "0.5 m",
                doc = "Depth of the first end.")
        Measure depth1,

        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "0 m",
                doc = "Coordinate x of the second end.")
        Measure x2,

        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "0 m",
                doc = "Coordinate y of the second end.")
        Measure y2,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                required = true,
                example = "3.5 m",
                doc = "Depth of the second end.")
        Measure depth2,

        @Key(unit = Dimension.LENGTH, required = true, example = "16 mm", doc = "Diameter.")
        Measure diameter) {}
