package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The pole. */
public record Pole(
        @Key(required = true, example = "wood", doc = "What it is made of.")
        PoleMaterial material,

        @Key(unit = Dimension.LENGTH, required = true, example = "11 m", doc = "Height above ground.")
        Measure height,

        @Key(sign = Key.Sign.NOT_NEGATIVE, unit = Dimension.LENGTH, example = "1.8 m", doc = "Depth of the butt.")
        @Nullable
        Measure burial,

        @Key(unit = Dimension.LENGTH, example = "0.28 m", doc = "Diameter at working height.") @Nullable
        Measure diameter,

        @Key(example = "bare", doc = "Contact of a conducting butt with the soil.") @Nullable
        ButtContact buttContact,

        @Key(doc = "Concrete foundation around a steel butt, as deep as the butt.") @Nullable
        ConcreteShell foundation,

        @Key(example = "yes", doc = "Whether the steel or reinforcement is bonded to the main earth.") @Nullable
        YesNo bondedToMainEarth,

        @Key(
                unit = Dimension.LENGTH,
                example = "40 mm",
                doc =
                        "Insulating distance between the metal of a conducting pole and what is mounted on it: insulated brackets, or the concrete cover.")
        @Nullable
        Measure mountingClearance) {

    /**
     * Whether the pole holds metal from top to butt.
     *
     * @return true for steel and for concrete with its reinforcement
     */
    public boolean conducts() {
        return material == PoleMaterial.STEEL || material == PoleMaterial.CONCRETE;
    }
}
