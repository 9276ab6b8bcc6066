package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The control cubicle. */
public record Cubicle(
        @Key(unit = Dimension.LENGTH, required = true, example = "3 m", doc = "Height of its earth terminal.")
        Measure height,

        @Key(
                required = true,
                example = "shared",
                doc =
                        "How it is earthed: shared is teed to the main earth, separate has an electrode of its own only, both has both.")
        CubicleEarth earth,

        @Key(
                unit = Dimension.LENGTH,
                example = "0.2 m",
                doc = "Length of the tee between the main earth and the cubicle.")
        @Nullable
        Measure teeLength,

        @Key(doc = "The tee's conductor, where it differs from the main earth.") @Nullable
        Conductor tee,

        @Key(
                example = "cubicle",
                text = Key.Text.ELECTRODE,
                doc = "Name of the cubicle's own electrode, for separate and both.")
        @Nullable
        String electrode,

        @Key(doc = "The lead to the cubicle's own electrode.") @Nullable
        Conductor ownLead,

        @Key(unit = Dimension.LENGTH, example = "0.3 m", doc = "Distance of that lead from the main earth.") @Nullable
        Measure ownLeadOffset,

        @Key(
                example = "90 pF",
                unit = Dimension.CAPACITANCE,
                doc = "Capacitance of the cubicle to earth, needed if it is unearthed.")
        @Nullable
        Measure capacitanceToEarth,

        @Key(
                example = "400 pF",
                unit = Dimension.CAPACITANCE,
                doc = "Capacitance of the cubicle's electronics to the cable's cores, needed if it is unearthed.")
        @Nullable
        Measure capacitanceToCable,

        @Key(unit = Dimension.LENGTH, example = "1 m", doc = "Reach of a person at the cubicle.") @Nullable
        Measure reach,

        @Key(
                doc =
                        "A metal mat on which the operator stands at cubicle and tank handle, bonded to the earth of the cubicle.")
        @Nullable
        OperatorMat operatorMat,

        @Key(
                example = "[steel conduit to a well pump]",
                doc =
                        "Other metallic ways from the cubicle to earth, such as a water pipe or a fence; each is an unintended path.")
        List<String> otherPaths) {

    /**
     * Copies the lists.
     *
     */
    public Cubicle {
        otherPaths = List.copyOf(otherPaths);
    }
}
