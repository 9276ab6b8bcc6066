package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** Antenna and feeder. */
public record Antenna(
        @Key(unit = Dimension.LENGTH, required = true, example = "10.5 m", doc = "Height of the antenna.")
        Measure height,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0.3 m",
                doc = "Distance between the feeder and the main earth.")
        @Nullable
        Measure feederSeparation,

        @Key(
                required = true,
                example = "bulkhead",
                doc =
                        "Surge suppressor of the feeder: bulkhead is in the cubicle wall and bonded to the cubicle reference, loose is inside on a lead of its own.")
        AntennaSuppressor suppressor,

        @Key(example = "no", doc = "Whether the antenna's bracket is bonded to the main earth.") @Nullable
        YesNo bracketBondedToMainEarth) {}
