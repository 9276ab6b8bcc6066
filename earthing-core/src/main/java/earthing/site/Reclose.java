package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The automatic reclosing sequence; the number of shots is one more than the number of dead times. */
public record Reclose(
        @Key(
                example = "[0.5 s, 10 s]",
                unit = Dimension.TIME,
                doc = "Dead time after each shot but the last, in order.")
        List<Measure> deadTimes,

        @Key(most = 10, least = 0, example = "1", doc = "How many of the first shots are cleared in the fast time.")
        @Nullable
        Integer fastShots,

        @Key(unit = Dimension.TIME, example = "80 ms", doc = "Clearing time of the fast shots.") @Nullable
        Measure fastTime) {

    /**
     * Copies the lists.
     *
     */
    public Reclose {
        deadTimes = List.copyOf(deadTimes);
    }
}
