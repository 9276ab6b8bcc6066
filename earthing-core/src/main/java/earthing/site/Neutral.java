package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** How the neutral of the source is earthed. */
public record Neutral(
        @Key(required = true, example = "solid", doc = "solid, resistor, reactor, resonant, isolated or multi-earthed.")
        NeutralMethod method,

        @Key(unit = Dimension.RESISTANCE, doc = "Resistance of the neutral resistor.") @Nullable
        Measure resistance,

        @Key(unit = Dimension.RESISTANCE, doc = "Reactance of the neutral reactor at system frequency.") @Nullable
        Measure reactance,

        @Key(unit = Dimension.CURRENT, doc = "Residual earth-fault current of a resonant-earthed network, r.m.s.")
        @Nullable
        Measure residualCurrent,

        @Key(
                unit = Dimension.CURRENT,
                doc =
                        "Capacitive earth-fault current of the whole connected network, r.m.s.; for isolated and resonant networks.")
        @Nullable
        Measure capacitiveCurrent,

        @Key(unit = Dimension.RESISTANCE, doc = "Resistance of the earth electrode of the source station.") @Nullable
        Measure stationEarthResistance,

        @Key(doc = "The multi-earthed neutral conductor of this line.") @Nullable
        NeutralConductor conductor) {}
