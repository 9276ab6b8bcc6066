package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** One horizontal layer. */
public record SoilLayer(
        @Key(unit = Dimension.RESISTIVITY, required = true, example = "300 ohm.m", doc = "Resistivity of the layer.")
        Measure resistivity,

        @Key(example = "2.5 m", unit = Dimension.LENGTH, doc = "Thickness; absent for the lowest layer.") @Nullable
        Measure thickness) {}
