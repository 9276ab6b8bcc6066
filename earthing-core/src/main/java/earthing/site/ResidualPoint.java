package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** One point of the residual curve. */
public record ResidualPoint(
        @Key(unit = Dimension.CURRENT, required = true, example = "5 kA", doc = "Peak of the 8/20 current.")
        Measure current,

        @Key(unit = Dimension.VOLTAGE, required = true, example = "61.8 kV", doc = "Residual voltage, peak.")
        Measure voltage) {}
