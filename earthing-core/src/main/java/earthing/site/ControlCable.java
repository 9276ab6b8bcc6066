package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The cable between tank and cubicle. */
public record ControlCable(
        @Key(
                brief = true,
                unit = Dimension.LENGTH,
                example = "0.2 m",
                doc = "Distance between the cable and the main earth conductor.")
        @Nullable
        Measure separation,

        @Key(example = "7.4 m", unit = Dimension.LENGTH, doc = "Length of the cable as cut.") @Nullable
        Measure length,

        @Key(example = "6 m", unit = Dimension.LENGTH, doc = "Length of the route along the pole.") @Nullable
        Measure routeLength,

        @Key(sign = Key.Sign.NOT_NEGATIVE, unit = Dimension.LENGTH, example = "0.6 m", doc = "Length of the drip loop.")
        @Nullable
        Measure dripLoop,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0.4 m",
                doc = "Length of the curves at the entries.")
        @Nullable
        Measure entryCurve,

        @Key(example = "no", doc = "Whether surplus cable is coiled.") @Nullable
        YesNo coiled,

        @Key(unit = Dimension.LENGTH, example = "18 mm", doc = "Diameter over the screen.") @Nullable
        Measure diameter,

        @Key(doc = "The cores, each with what it ends on.") List<Core> cores,

        @Key(unit = Dimension.LENGTH, example = "1.8 mm", doc = "Diameter of a core's conductor.") @Nullable
        Measure coreDiameter,

        @Key(brief = true, doc = "The screen.") @Nullable Screen screen,

        @Key(
                unit = Dimension.VOLTAGE,
                example = "2 kV",
                doc = "Power-frequency withstand of the cable and what it ends on, one minute, r.m.s.")
        @Nullable
        Measure insulationLevel) {

    /**
     * Copies the lists.
     *
     */
    public ControlCable {
        cores = List.copyOf(cores);
    }
}
