package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A core, or a group of like cores. */
public record Core(
        @Key(required = true, example = "trip coil", doc = "What it serves.")
        String name,

        @Key(
                required = true,
                example = "coil",
                doc =
                        "What it ends on in the tank: tank, coil, instrument-transformer, contact, protector, open or unknown.")
        Termination tankEnd,

        @Key(required = true, example = "protector", doc = "What it ends on in the cubicle.")
        Termination cubicleEnd,

        @Key(doc = "Surge protector at the tank end.") @Nullable
        Protector tankProtector,

        @Key(doc = "Surge protector at the cubicle end.") @Nullable
        Protector cubicleProtector,

        @Key(unit = Dimension.VOLTAGE, doc = "Declared withstand to chassis on the wave below, peak.") @Nullable
        Measure withstand,

        @Key(example = "1.2/50", doc = "Wave on which the withstand was proved.") @Nullable
        String withstandWave) {}
