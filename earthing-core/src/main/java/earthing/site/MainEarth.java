package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The earthing conductor from the tank to the electrode. */
public record MainEarth(
        @Key(required = true, doc = "The conductor, where a segment does not say otherwise.")
        Conductor conductor,

        @Key(unit = Dimension.LENGTH, example = "0.15 m", doc = "Distance of the conductor from the pole's axis.")
        @Nullable
        Measure offset,

        @Key(
                doc =
                        "Pieces with another conductor or with joints, from the tank down; absent for one unbroken conductor.")
        List<EarthSegment> segments,

        @Key(example = "compression", doc = "Joint at the electrode.") @Nullable
        Joint joint,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "2.5 m",
                doc = "Height to which an insulating guard covers the conductor; 0 m for none.")
        @Nullable
        Measure guardHeight,

        @Key(example = "20 kV", unit = Dimension.VOLTAGE, doc = "Voltage that the guard withstands, r.m.s.") @Nullable
        Measure guardVoltage,

        @Key(brief = true, text = Key.Text.ELECTRODE, example = "main", doc = "Name of the electrode it ends on.")
        @Nullable
        String electrode,

        @Key(
                example = "second",
                text = Key.Text.ELECTRODE,
                doc =
                        "Name of an electrode that a second, parallel lead from the tank ends on; absent if there is none.")
        @Nullable
        String secondLeadElectrode) {

    /**
     * Copies the lists.
     *
     */
    public MainEarth {
        segments = List.copyOf(segments);
    }
}
