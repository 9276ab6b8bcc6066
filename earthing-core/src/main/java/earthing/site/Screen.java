package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The screen of the control cable. */
public record Screen(
        @Key(
                required = true,
                example = "both",
                doc = "Which ends are bonded; none is a screen bonded nowhere, absent is a cable without a screen.")
        ScreenBond bond,

        @Key(unit = Dimension.AREA, example = "4 mm2", doc = "Cross-section of the screen.") @Nullable
        Measure area,

        @Key(example = "copper", doc = "What it is made of.") @Nullable
        ConductorMaterial material,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0 m",
                doc = "Length of the lead that bonds the screen at the tank; 0 m for an all-round gland.")
        @Nullable
        Measure tankBondLead,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0 m",
                doc = "Length of the lead that bonds it at the cubicle; 0 m for an all-round gland.")
        @Nullable
        Measure cubicleBondLead) {}
