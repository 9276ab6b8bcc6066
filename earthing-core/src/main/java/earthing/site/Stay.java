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

        @Key(
                sign = Key.Sign.ANY,
                unit = Dimension.LENGTH,
                required = true,
                example = "6 m",
                doc =
                        "Distance from the pole to where its anchor enters the ground, along x; negative on the other side.")
        Measure anchorDistance,

        @Key(required = true, example = "yes", doc = "Whether an insulator is fitted.")
        YesNo insulated,

        @Key(example = "no", doc = "Whether it is bonded to the main earth.") @Nullable
        YesNo bondedToMainEarth,

        @Key(example = "galvanised-steel", doc = "What the buried anchor is made of.") @Nullable
        ConductorMaterial anchorMaterial,

        @Key(doc = "The buried metal of the anchor, for its resistance and its share of a fault current.") @Nullable
        StayAnchor anchor,

        @Key(
                unit = Dimension.RESISTANCE,
                example = "{low: 60 ohm, nominal: 90 ohm, high: 200 ohm, origin: measured}",
                doc = "Measured resistance of the anchor to remote earth, in place of its shape.")
        @Nullable
        Measure anchorResistance,

        @Key(doc = "The stay wire as a conductor, to show what its share of the fault current heats.") @Nullable
        Conductor conductor) {}
