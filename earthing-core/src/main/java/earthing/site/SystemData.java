package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The network the pole belongs to. */
public record SystemData(
        @Key(
                known = true,
                unit = Dimension.VOLTAGE,
                required = true,
                example = "22 kV",
                doc = "Nominal voltage between phases, r.m.s.; of a single-wire line, from the wire to earth.")
        Measure voltage,

        @Key(
                unit = Dimension.VOLTAGE,
                example = "24 kV",
                doc =
                        "Highest voltage between phases in normal service, r.m.s.; of a single-wire line, from the wire to earth.")
        @Nullable
        Measure highestVoltage,

        @Key(
                known = true,
                unit = Dimension.FREQUENCY,
                required = true,
                example = "50 Hz",
                doc = "Frequency of the network.")
        Measure frequency,

        @Key(
                brief = true,
                unit = Dimension.CURRENT,
                example = "{low: 2 kA, nominal: 4 kA, high: 5 kA}",
                doc =
                        "Three-phase fault current of the source, r.m.s. symmetrical; low and high are the minimum and maximum source.")
        @Nullable
        Measure threePhaseFaultCurrent,

        @Key(
                example = "{low: 0.8 kA, nominal: 1.6 kA, high: 2 kA}",
                brief = true,
                unit = Dimension.CURRENT,
                doc =
                        "Bolted single-phase earth-fault current of the source with its neutral method, r.m.s.; low and high are the minimum and maximum source.")
        @Nullable
        Measure earthFaultCurrent,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RATIO,
                example = "8",
                doc = "Ratio of reactance to resistance of the source.")
        @Nullable
        Measure xOverR,

        @Key(
                example = "planning year 5, normal switching state",
                doc = "Where the fault currents come from (study, year, switching state).")
        @Nullable
        String faultStudy,

        @Key(required = true, doc = "How the neutral of the source is earthed.")
        Neutral neutral,

        @Key(
                doc =
                        "The line between the source, where the fault currents are stated, and this pole; absent if they are stated at the pole.")
        @Nullable
        SourceLine sourceLine,

        @Key(doc = "The shield wire of this line, earthed at its poles.") @Nullable
        ReturnWire shieldWire,

        @Key(doc = "How neutral and shield wire stand to each other, on a line that has both.") @Nullable
        ReturnWirePair returnWires,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE,
                example = "0 ohm",
                doc = "Resistance of the fault itself, in series with the electrode.")
        @Nullable
        Measure faultResistance) {}
