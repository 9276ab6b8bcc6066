package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A buried electrode. Give exactly one shape. */
public record Electrode(
        @Key(
                text = Key.Text.NAME,
                required = true,
                example = "main",
                doc = "Name; the main earth, the cubicle and others refer to it.")
        String name,

        @Key(doc = "Where it is; absent for the foot of the pole.") @Nullable
        Position at,

        @Key(brief = true, doc = "One rod.") @Nullable RodShape rod,

        @Key(doc = "Several rods in a line, joined by a bare wire.") @Nullable
        RodsInLine rodsInLine,

        @Key(doc = "Several rods on a circle.") @Nullable RodsInRing rodsInRing,

        @Key(doc = "A straight horizontal wire or tape.") @Nullable
        WireShape wire,

        @Key(doc = "Horizontal wires from a centre.") @Nullable
        StarShape star,

        @Key(doc = "A closed horizontal ring of wire.") @Nullable
        RingShape ring,

        @Key(doc = "A horizontal mat of wires.") @Nullable MatShape mat,
        @Key(doc = "A thin plate.") @Nullable PlateShape plate,
        @Key(doc = "Any straight bars at coordinates.") List<Bar> bars,

        @Key(
                example = "{low: 15 ohm, nominal: 20 ohm, high: 40 ohm, origin: measured}",
                unit = Dimension.RESISTANCE,
                doc = "Measured or declared resistance to remote earth, in place of a shape that is not known.")
        @Nullable
        Measure resistance,

        @Key(doc = "Concrete or backfill around every bar or wire of this electrode.") @Nullable
        ConcreteShell concrete,

        @Key(example = "copper-clad-steel", doc = "What it is made of.") @Nullable
        ConductorMaterial material,

        @Key(
                example = "yes",
                doc =
                        "Whether the impedance along its conductors at power frequency is added to its resistance: for wires"
                                + " longer than about 50 m, poor conductors, good ground. Needs the material. Absent for no.")
        @Nullable
        YesNo seriesImpedance) {

    /**
     * Copies the lists.
     *
     */
    public Electrode {
        bars = List.copyOf(bars);
    }
}
