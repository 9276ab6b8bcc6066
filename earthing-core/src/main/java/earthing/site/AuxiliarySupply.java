package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The low-voltage supply of the cubicle. */
public record AuxiliarySupply(
        @Key(required = true, example = "lv-network", doc = "Where the supply comes from.")
        AuxiliaryKind kind,

        @Key(required = true, example = "isolated", doc = "Whose earth it is referenced to.")
        AuxiliaryReference earthReference,

        @Key(
                unit = Dimension.VOLTAGE,
                example = "4 kV",
                doc = "Power-frequency withstand of its isolation, one minute, r.m.s.")
        @Nullable
        Measure isolationLevel,

        @Key(example = "6 kV", unit = Dimension.VOLTAGE, doc = "Impulse withstand of its isolation, peak.") @Nullable
        Measure impulseLevel) {}
