package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** Neutral and shield wire on the same poles. */
public record ReturnWirePair(
        @Key(
                required = true,
                example = "yes",
                doc =
                        "Whether both are bonded to each other at every pole where the neutral is earthed; the shield wire then has no earths of its own.")
        YesNo bonded,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.05 ohm/km",
                doc = "Mutual resistance per length of both; absent where the line's conductors give it.")
        @Nullable
        Measure mutualResistance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.33 ohm/km",
                doc = "Mutual reactance per length of both; absent where the line's conductors give it.")
        @Nullable
        Measure mutualReactance) {}
