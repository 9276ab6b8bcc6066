package earthing.study;

import earthing.electrode.formula.ConcreteEncasedRod;
import earthing.electrode.formula.FormulaResult;
import earthing.electrode.formula.FoundationHemisphere;
import earthing.electrode.formula.HorizontalWireSunde;
import earthing.electrode.formula.RingDwight;
import earthing.electrode.formula.RodDwight;
import earthing.electrode.formula.RodTwoLayer;
import earthing.electrode.formula.RodsEqualCurrents;
import earthing.electrode.formula.RoundPlateDwight;
import earthing.electrode.formula.StarDwight;
import earthing.quantity.Measure.Bound;
import earthing.site.ConcreteShell;
import earthing.site.Electrode;
import earthing.site.PlateLie;
import earthing.site.PlateShape;
import earthing.site.Pole;
import earthing.site.RingShape;
import earthing.site.RodShape;
import earthing.site.RodsInLine;
import earthing.site.StarShape;
import earthing.site.WireShape;
import earthing.soil.SoilModel;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The published closed form that covers the shape of an electrode and the ground, where there is one. */
final class ElectrodeFormula {

    /** Closed forms of a driven rod start at the surface; a top deeper than this part of the length is another case. */
    private static final double SHALLOW = 0.25;

    /** Sides of a plate beyond this ratio are no likeness of a disc [1]. */
    private static final double MOST_OBLONG = 1.5;

    private ElectrodeFormula() {}

    static Optional<FormulaResult> of(Electrode electrode, SoilModel soil, Bound bound, Inputs in) throws MissingInput {
        if (electrode.concrete() != null) {
            return encased(electrode, electrode.concrete(), soil, bound, in);
        }
        RodShape rod = electrode.rod();
        if (rod != null) {
            double length = in.need(rod.length(), "electrodes.rod.length");
            return top(rod.topDepth(), in) <= SHALLOW * length
                    ? single(soil, length, in.need(rod.diameter(), "electrodes.rod.diameter") / 2)
                    : Optional.empty();
        }
        if (soil.layerCount() > 1) {
            return Optional.empty();
        }
        return uniform(electrode, soil.resistivity(0), in).filter(FormulaResult::holds);
    }

    /** The concrete foundation of a pole; the source knows uniform ground only. */
    static Optional<FormulaResult> foundation(@Nullable Pole pole, SoilModel soil, Inputs in) throws MissingInput {
        if (pole == null || pole.foundation() == null || soil.layerCount() > 1) {
            return Optional.empty();
        }
        return Optional.of(FoundationHemisphere.resistance(
                        soil.resistivity(0),
                        in.need(pole.foundation().diameter(), "pole.foundation.diameter"),
                        in.need(pole.burial(), "pole.burial")))
                .filter(FormulaResult::holds);
    }

    private static Optional<FormulaResult> encased(
            Electrode electrode, ConcreteShell shell, SoilModel soil, Bound bound, Inputs in) throws MissingInput {
        RodShape rod = electrode.rod();
        if (rod == null || soil.layerCount() > 1) {
            return Optional.empty();
        }
        double length = in.need(rod.length(), "electrodes.rod.length");
        if (top(rod.topDepth(), in) > SHALLOW * length) {
            return Optional.empty();
        }
        return Optional.of(ConcreteEncasedRod.resistance(
                        soil.resistivity(0),
                        in.need(shell.resistivity(), "electrodes.concrete.resistivity", bound),
                        length,
                        in.need(rod.diameter(), "electrodes.rod.diameter"),
                        in.need(shell.diameter(), "electrodes.concrete.diameter")))
                .filter(FormulaResult::holds);
    }

    private static double top(earthing.quantity.@Nullable Measure measure, Inputs in) throws MissingInput {
        return measure == null ? 0 : in.need(measure, "electrodes.top-depth");
    }

    private static Optional<FormulaResult> single(SoilModel soil, double length, double radius) {
        if (soil.layerCount() == 1) {
            return Optional.of(RodDwight.resistance(soil.resistivity(0), length, radius))
                    .filter(FormulaResult::holds);
        }
        if (soil.layerCount() > 2) {
            return Optional.empty();
        }
        double upper = soil.resistivity(0);
        double lower = soil.resistivity(1);
        double thickness = soil.thickness(0);
        if (length < thickness) {
            return Optional.of(RodTwoLayer.withinUpper(upper, lower, thickness, length, radius))
                    .filter(FormulaResult::holds);
        }
        // For a rod through both layers only rules of parallel layers are published; they miss by a quarter.
        return Optional.empty();
    }

    private static Optional<FormulaResult> uniform(Electrode electrode, double resistivity, Inputs in)
            throws MissingInput {
        RodsInLine line = electrode.rodsInLine();
        WireShape wire = electrode.wire();
        StarShape star = electrode.star();
        RingShape ring = electrode.ring();
        if (line != null && line.wireDiameter() == null) {
            double length = in.need(line.length(), "electrodes.rods-in-line.length");
            FormulaResult one = RodDwight.resistance(
                    resistivity, length, in.need(line.diameter(), "electrodes.rods-in-line.diameter") / 2);
            if (!one.holds() || top(line.topDepth(), in) > SHALLOW * length) {
                return Optional.empty();
            }
            return Optional.of(RodsEqualCurrents.resistance(
                    resistivity, one.get(), line.count(), in.need(line.spacing(), "electrodes.rods-in-line.spacing")));
        }
        if (wire != null) {
            return Optional.of(HorizontalWireSunde.resistance(
                    resistivity,
                    in.need(wire.length(), "electrodes.wire.length"),
                    in.need(wire.diameter(), "electrodes.wire.diameter") / 2,
                    in.need(wire.depth(), "electrodes.wire.depth")));
        }
        if (star != null) {
            int arms = star.arms();
            Optional<StarDwight.Arms> covered = Arrays.stream(StarDwight.Arms.values())
                    .filter(a -> a != StarDwight.Arms.RIGHT_ANGLE && a.count() == arms)
                    .findFirst();
            return covered.isEmpty()
                    ? Optional.empty()
                    : Optional.of(StarDwight.resistance(
                            covered.get(),
                            resistivity,
                            in.need(star.length(), "electrodes.star.length"),
                            in.need(star.diameter(), "electrodes.star.diameter") / 2,
                            in.need(star.depth(), "electrodes.star.depth")));
        }
        if (ring != null) {
            return Optional.of(RingDwight.resistance(
                    resistivity,
                    2 * in.need(ring.radius(), "electrodes.ring.radius"),
                    in.need(ring.diameter(), "electrodes.ring.diameter") / 2,
                    in.need(ring.depth(), "electrodes.ring.depth")));
        }
        PlateShape plate = electrode.plate();
        if (plate != null) {
            double width = in.need(plate.width(), "electrodes.plate.width");
            double length = in.need(plate.length(), "electrodes.plate.length");
            // The source knows the round plate; a compact one of the same area is within 2 %.
            return Math.max(width, length) > MOST_OBLONG * Math.min(width, length)
                    ? Optional.empty()
                    : Optional.of(RoundPlateDwight.resistance(
                            plate.lie() == PlateLie.VERTICAL
                                    ? RoundPlateDwight.Lie.VERTICAL
                                    : RoundPlateDwight.Lie.HORIZONTAL,
                            resistivity,
                            Math.sqrt(width * length / Math.PI),
                            in.need(plate.depth(), "electrodes.plate.depth")));
        }
        return Optional.empty();
    }
}
