package earthing.site;

import org.jspecify.annotations.Nullable;

/** The body behind the criterion {@code iec-60479-1}. */
public record BodyModel(
        @Key(required = true, example = "water-wet", doc = "State of the skin, table of IEC/TS 60479-1:2005.")
        SkinState skin,

        @Key(
                required = true,
                example = "five-percent",
                doc = "Share of persons with a lower body impedance than the one reckoned with.")
        BodyShare share,

        @Key(
                required = true,
                example = "c1",
                doc = "Body current that is permissible: curve c1 of IEC/TS 60479-1, or the body currents of EN 50522.")
        CurrentCurve current,

        @Key(example = "left-hand-to-feet", doc = "Path of the current in a touch; absent for left-hand-to-feet.")
        @Nullable
        TouchPath path) {}
