package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A surface covering at the operator's position. */
public record Covering(
        @Key(unit = Dimension.RESISTIVITY, required = true, example = "3000 ohm.m", doc = "Resistivity when wet.")
        Measure resistivity,

        @Key(unit = Dimension.LENGTH, required = true, example = "0.1 m", doc = "Thickness.")
        Measure thickness) {}
