package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A high-voltage cable that ends at this pole. */
public record HighVoltageCable(
        @Key(required = true, example = "tank-earth-point", doc = "Where its screen is earthed at this pole.")
        EquipmentEarth screenEarthedAt,

        @Key(
                example = "2 ohm",
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE,
                doc = "Resistance of the earth at the far end of the screen; absent if the far end is open.")
        @Nullable
        Measure screenRemoteEarthResistance,

        @Key(unit = Dimension.LENGTH, example = "300 m", doc = "Length of the cable.") @Nullable
        Measure length,

        @Key(
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.7 ohm/km",
                doc = "Impedance of the screen per length.")
        @Nullable
        Measure screenImpedance) {}
