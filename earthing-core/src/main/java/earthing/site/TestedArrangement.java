package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The arrangement in which tank, cable and cubicle passed an impulse test together, with the shared single earth. */
public record TestedArrangement(
        @Key(example = "type test record T-3", doc = "The test record.") @Nullable
        String reference,

        @Key(unit = Dimension.CURRENT, required = true, example = "10 kA", doc = "Peak of the current into the tank.")
        Measure current,

        @Key(
                words = {"8/20", "4/10", "10/350", "1/200", "0.25/100"},
                required = true,
                example = "8/20",
                doc = "Wave of the current.")
        String wave,

        @Key(unit = Dimension.LENGTH, required = true, example = "7 m", doc = "Length of the control cable.")
        Measure cableLength,

        @Key(
                unit = Dimension.LENGTH,
                required = true,
                example = "0.2 m",
                doc = "Distance between the cable and the earthing conductor.")
        Measure separation) {}
