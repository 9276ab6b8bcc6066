package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** One conductor of the line, seen along the line. */
public record LineWire(
        @Key(text = Key.Text.NAME, required = true, example = "phase a", doc = "Name of the conductor.")
        String name,

        @Key(
                required = true,
                example = "phase",
                doc =
                        "What it is for; wires of one use are bonded to each other. A line with neutral and shield wire names which is which.")
        WireUse use,

        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "-1.1 m",
                doc = "Horizontal position.")
        Measure offset,

        @Key(
                unit = Dimension.LENGTH,
                required = true,
                example = "9.8 m",
                doc = "Mean height above ground, two thirds of the sag below the supports.")
        Measure height,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                required = true,
                example = "0.34 ohm/km",
                doc = "Resistance per length at the temperature of interest.")
        Measure resistance,

        @Key(unit = Dimension.LENGTH, required = true, example = "14 mm", doc = "Outer diameter.")
        Measure diameter,

        @Key(
                unit = Dimension.LENGTH,
                example = "5.4 mm",
                doc = "Geometric mean radius; absent for a solid wire of non-magnetic metal, 0.7788 times the radius.")
        @Nullable
        Measure geometricMeanRadius) {}
