package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The tank of the switchgear. */
public record Tank(
        @Key(unit = Dimension.LENGTH, required = true, example = "9 m", doc = "Height of the tank's earth terminal.")
        Measure height,

        @Key(
                unit = Dimension.VOLTAGE,
                example = "125 kV",
                doc = "Lightning impulse withstand level of the bushings to the tank, peak.")
        @Nullable
        Measure impulseLevel,

        @Key(
                example = "145 kV",
                unit = Dimension.VOLTAGE,
                doc = "Withstand on a chopped or front-of-wave impulse, peak.")
        @Nullable
        Measure choppedWaveLevel,

        @Key(
                example = "2.2 m",
                unit = Dimension.LENGTH,
                doc = "Height of a metal operating handle within reach; absent if there is none.")
        @Nullable
        Measure handleHeight,

        @Key(example = "yes", doc = "Whether the handle is bonded to the main earth.") @Nullable
        YesNo handleBonded,

        @Key(example = "closed", doc = "State of the switch; unknown studies both.") @Nullable
        SwitchState switchState) {}
