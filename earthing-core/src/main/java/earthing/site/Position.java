package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A place on the ground. */
public record Position(
        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "5 m",
                doc = "Distance from the pole's axis to the side of the main earth.")
        Measure x,

        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "0 m",
                doc = "Distance at right angles to it.")
        Measure y) {}
