package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A metal stay. */
public record Stay(
        @Key(text = Key.Text.NAME, required = true, example = "stay east", doc = "Name.")
        String name,

        @Key(unit = Dimension.LENGTH, required = true, example = "9 m", doc = "Height of its upper end.")
        Measure topHeight,

        @Key(unit = Dimension.LENGTH, required = true, example = "6 m", doc = "Distance of its anchor from the pole.")
        Measure anchorDistance,

        @Key(required = true, example = "yes", doc = "Whether an insulator is fitted.")
        YesNo insulated,

        @Key(example = "no", doc = "Whether it is bonded to the main earth.") @Nullable
        YesNo bondedToMainEarth,

        @Key(example = "galvanised-steel", doc = "What the buried anchor is made of.") @Nullable
        ConductorMaterial anchorMaterial) {}
