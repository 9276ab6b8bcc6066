package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A conductor. */
public record Conductor(
        @Key(required = true, example = "copper", doc = "What it is made of.")
        ConductorMaterial material,

        @Key(unit = Dimension.AREA, required = true, example = "70 mm2", doc = "Cross-section.")
        Measure area,

        @Key(example = "no", doc = "Whether it is insulated.") @Nullable
        YesNo insulated,

        @Key(example = "stranded", doc = "Form of the conductor.") @Nullable
        ConductorForm form) {}
