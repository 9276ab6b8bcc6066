package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** Antenna and feeder. */
public record Antenna(
        @Key(unit = Dimension.LENGTH, required = true, example = "10.5 m", doc = "Height of the antenna.")
        Measure height,

        @Key(unit = Dimension.LENGTH, example = "0.3 m", doc = "Distance between the feeder and the main earth.")
        @Nullable
        Measure feederSeparation,

        @Key(
                required = true,
                example = "bulkhead",
                doc = "bulkhead (on the cubicle wall, bonded to the cubicle reference), loose, none or unknown.")
        AntennaSuppressor suppressor,

        @Key(example = "no", doc = "Whether the antenna's bracket is bonded to the main earth.") @Nullable
        YesNo bracketBondedToMainEarth) {}
