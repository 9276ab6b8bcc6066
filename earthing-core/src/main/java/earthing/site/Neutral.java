package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** How the neutral of the source is earthed. */
public record Neutral(
        @Key(required = true, example = "solid", doc = "How the neutral is earthed.")
        NeutralMethod method,

        @Key(example = "40 ohm", unit = Dimension.RESISTANCE, doc = "Resistance of the neutral resistor.") @Nullable
        Measure resistance,

        @Key(
                example = "12 ohm",
                unit = Dimension.RESISTANCE,
                doc = "Reactance of the neutral reactor at system frequency.")
        @Nullable
        Measure reactance,

        @Key(
                example = "12 A",
                unit = Dimension.CURRENT,
                doc = "Residual earth-fault current of a resonant-earthed network, r.m.s.")
        @Nullable
        Measure residualCurrent,

        @Key(
                example = "110 A",
                unit = Dimension.CURRENT,
                doc =
                        "Capacitive earth-fault current of the whole connected network, r.m.s.; for isolated and resonant networks.")
        @Nullable
        Measure capacitiveCurrent,

        @Key(
                example = "0.5 ohm",
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE,
                doc =
                        "Resistance of the earth electrode of the source station; of a single-wire line, of its isolating transformer.")
        @Nullable
        Measure stationEarthResistance,

        @Key(
                unit = Dimension.CURRENT,
                example = "2 A",
                doc =
                        "Load current that returns through the earth of this pole in normal service, of a single-wire line.")
        @Nullable
        Measure earthReturnLoad,

        @Key(doc = "The multi-earthed neutral conductor of this line.") @Nullable
        ReturnWire conductor) {}
