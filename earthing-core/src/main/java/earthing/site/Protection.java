package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** How and how fast an earth fault is cleared. */
public record Protection(
        @Key(
                brief = true,
                unit = Dimension.TIME,
                example = "0.5 s",
                doc =
                        "Time from the fault to the interruption, each shot, for every current; use relay where the time depends on the current.")
        @Nullable
        Measure clearingTime,

        @Key(doc = "The earth-fault protection that clears the fault.") @Nullable
        Relay relay,

        @Key(doc = "The protection that clears it if the first one fails.") @Nullable
        Relay backUp,

        @Key(doc = "Automatic reclosing.") @Nullable Reclose reclose,

        @Key(
                unit = Dimension.RATIO,
                example = "1.5",
                doc = "The owner's factor between the smallest earth-fault current and the pickup.")
        @Nullable
        Measure detectionFactor) {}
