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

        @Key(
                doc =
                        "A fuse that clears the fault; beside relay, the recloser before it, whichever is faster ends the shot, and the fuse ends the sequence.")
        @Nullable
        Fuse fuse,

        @Key(doc = "A sensitive earth-fault stage beside it, with a lower pickup and a longer time.") @Nullable
        Relay sensitive,

        @Key(doc = "The protection that clears it if the first one fails.") @Nullable
        Relay backUp,

        @Key(
                example = "heating",
                doc = "Which verdicts rest on the clearing time of the back-up; absent for information only.")
        @Nullable
        BackUpUse backUpFor,

        @Key(doc = "Automatic reclosing.") @Nullable Reclose reclose,

        @Key(
                unit = Dimension.RATIO,
                example = "1.5",
                doc = "The owner's factor between the smallest earth-fault current and the pickup.")
        @Nullable
        Measure detectionFactor) {}
