package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** Concrete or backfill around metal. */
public record ConcreteShell(
        @Key(unit = Dimension.LENGTH, required = true, example = "0.3 m", doc = "Outer diameter.")
        Measure diameter,

        @Key(
                unit = Dimension.RESISTIVITY,
                required = true,
                example = "{low: 30 ohm.m, nominal: 60 ohm.m, high: 200 ohm.m, origin: assumed}",
                doc =
                        "Resistivity; moist concrete in soil is often taken as 30 to 90 ohm.m, dry or above ground it is some thousand.")
        Measure resistivity) {}
