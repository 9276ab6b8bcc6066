package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A protection with its breaker. */
public record Relay(
        @Key(
                unit = Dimension.CURRENT,
                example = "80 A",
                doc = "Smallest earth-fault current that starts the protection, primary.")
        @Nullable
        Measure pickup,

        @Key(
                required = true,
                example = "iec-normal-inverse",
                doc = "Time-current curve: definite time, or an inverse curve of IEC 60255-151 or IEEE C37.112.")
        RelayCurve curve,

        @Key(unit = Dimension.RATIO, example = "0.15", doc = "Time multiplier or time dial of an inverse curve.")
        @Nullable
        Measure timeMultiplier,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.TIME,
                example = "0.3 s",
                doc = "Time of a definite-time protection.")
        @Nullable
        Measure delay,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.TIME,
                example = "60 ms",
                doc = "Interrupting time of the breaker.")
        @Nullable
        Measure breakerTime,

        @Key(sign = Key.Sign.NOT_NEGATIVE, unit = Dimension.TIME, example = "0 ms", doc = "Time added for tolerances.")
        @Nullable
        Measure margin) {}
