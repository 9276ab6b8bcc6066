package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A neutral or shield wire along the line, earthed at its poles. */
public record ReturnWire(
        @Key(
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.55 ohm/km",
                doc =
                        "Series resistance per length of the wire with earth return; absent where the line's conductors give it.")
        @Nullable
        Measure impedance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.75 ohm/km",
                doc = "Series reactance per length with earth return.")
        @Nullable
        Measure reactance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.05 ohm/km",
                doc = "Mutual resistance per length between phase and wire.")
        @Nullable
        Measure mutualResistance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.38 ohm/km",
                doc = "Mutual reactance per length between phase and wire.")
        @Nullable
        Measure mutualReactance,

        @Key(unit = Dimension.LENGTH, example = "80 m", doc = "Distance between poles.") @Nullable
        Measure span,

        @Key(
                unit = Dimension.RESISTANCE,
                example = "{low: 20 ohm, nominal: 40 ohm, high: 100 ohm}",
                doc = "Resistance of the wire's earth at each pole.")
        @Nullable
        Measure poleEarthResistance,

        @Key(most = 1000, example = "4", doc = "The wire is earthed at every n-th pole.") @Nullable
        Integer earthedEvery,

        @Key(example = "40", doc = "Spans between this pole and the source.") @Nullable
        Integer spansToSource,

        @Key(least = 0, example = "10", doc = "Spans beyond this pole.") @Nullable
        Integer spansBeyond,

        @Key(example = "yes", doc = "Whether the wire is bonded to the main earth at this pole.") @Nullable
        YesNo bondedToMainEarth,

        @Key(unit = Dimension.LENGTH, example = "7.5 m", doc = "Height of that bond.") @Nullable
        Measure bondHeight) {}
