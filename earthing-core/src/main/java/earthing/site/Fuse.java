package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A fuse that clears the fault, by the points of its data sheet. */
public record Fuse(
        @Key(
                required = true,
                doc =
                        "Points of the total-clearing curve, current rising; read log-log between them. Below the first current the fuse never acts; above the last the last time stands.")
        List<FusePoint> points,

        @Key(
                unit = Dimension.CURRENT,
                example = "8 kA",
                doc = "Largest current that the fuse breaks; a larger one is not cleared by it.")
        @Nullable
        Measure breakingCurrent,

        @Key(sign = Key.Sign.NOT_NEGATIVE, unit = Dimension.TIME, example = "0 ms", doc = "Time added for tolerances.")
        @Nullable
        Measure margin) {

    /**
     * Copies the lists.
     *
     */
    public Fuse {
        points = List.copyOf(points);
    }
}
