package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** How two spread inputs go together. */
public record InputCorrelation(
        @Key(required = true, example = "soil.layers[1].resistivity", doc = "Path of the one key.")
        String one,

        @Key(required = true, example = "soil.layers[2].resistivity", doc = "Path of the other key.")
        String other,

        @Key(
                unit = Dimension.RATIO,
                required = true,
                known = true,
                sign = Key.Sign.ANY,
                example = "0.7",
                doc = "Rank correlation, from -1 to 1, both left out; pairs that are not named have none.")
        Measure rank) {}
