package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A core, or a group of like cores. */
public record Core(
        @Key(text = Key.Text.NAME, required = true, example = "trip coil", doc = "What it serves.")
        String name,

        @Key(required = true, example = "coil", doc = "What it ends on in the tank; tank means bonded to it.")
        Termination tankEnd,

        @Key(required = true, example = "protector", doc = "What it ends on in the cubicle.")
        Termination cubicleEnd,

        @Key(doc = "Surge protector at the tank end.") @Nullable
        Protector tankProtector,

        @Key(doc = "Surge protector at the cubicle end.") @Nullable
        Protector cubicleProtector,

        @Key(doc = "What the device at the tank end is to a surge: coil or winding with its burden.") @Nullable
        EndImpedance tankImpedance,

        @Key(doc = "What the device at the cubicle end is to a surge: coil or winding with its burden.") @Nullable
        EndImpedance cubicleImpedance,

        @Key(example = "6 kV", unit = Dimension.VOLTAGE, doc = "Declared withstand to chassis on the wave below, peak.")
        @Nullable
        Measure withstand,

        @Key(
                words = {"1.2/50", "10/700", "8/20", "4/10", "10/350", "1/200", "0.25/100"},
                example = "1.2/50",
                doc = "Wave on which the withstand was proved.")
        @Nullable
        String withstandWave) {}
