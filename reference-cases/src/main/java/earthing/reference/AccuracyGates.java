package earthing.reference;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.Discretisation;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.ElementLeakage;
import earthing.electrode.wire.EnergisedElectrodes;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How far electrodes with the standard elements lie from the same equation refined, over shapes and grounds of a pole. It
 * says nothing of the equation itself; that is what the reference cases are for.
 */
public final class AccuracyGates {

    /**
     * One shape, the worst over its grounds.
     *
     * @param quantity what is compared
     * @param shape the electrode
     * @param ground where it was worst
     * @param worst greatest relative difference [-]
     * @param gate what it has to stay below [-]
     */
    public record Line(String quantity, String shape, String ground, double worst, double gate) {}

    /** The same electrodes with the standard elements and refined. */
    private record Solved(EarthElectrodes standard, EarthElectrodes refined) {

        static Solved of(SoilModel soil, List<Bar> bars) {
            return new Solved(EarthElectrodes.of(soil, bars), EarthElectrodes.of(soil, bars, finer(bars)));
        }

        /** Finer by two where the bars are many, else by four or twelve, also beside others; down to a quarter of a radius. */
        private static Discretisation finer(List<Bar> bars) {
            return new Discretisation(bars.size() > 20 ? 16 : bars.size() > 4 ? 32 : 96, 0.75, 0.25, 0.25);
        }
    }

    /** What was compared in one ground. */
    private interface Difference {
        double of(Solved solved, SoilModel soil);
    }

    private static final String ONE = "main";
    private static final String OTHER = "other";
    private static final double STRAIGHT = 0.005;
    private static final double THICK = 0.01;
    private static final double POTENTIAL = 0.01;
    private static final double SHARES = 0.01;
    /** Distance from the bars at which the potential of the surface is compared [m]. */
    private static final double BESIDE = 0.5;

    /** Diameter of a pole butt that stands beside other electrodes [m]. */
    private static final double BUTT = 0.32;

    private static final Map<String, SoilModel> GROUNDS = grounds();

    private AccuracyGates() {}

    private static Map<String, SoilModel> grounds() {
        Map<String, SoilModel> grounds = new LinkedHashMap<>();
        grounds.put("100 Ω·m", SoilModel.uniform(100));
        grounds.put("100 over 1000 Ω·m, 2 m", SoilModel.twoLayer(100, 2, 1000));
        grounds.put("1000 over 100 Ω·m, 2 m", SoilModel.twoLayer(1000, 2, 100));
        grounds.put("100 over 1000 Ω·m, 0.8 m", SoilModel.twoLayer(100, 0.8, 1000));
        grounds.put("1000 over 100 Ω·m, 0.8 m", SoilModel.twoLayer(1000, 0.8, 100));
        return grounds;
    }

    /**
     * Computes all lines.
     *
     * @return one line a quantity and shape
     */
    public static List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        shapes().forEach((name, bars) -> {
            Map<SoilModel, Solved> solved = solved(bars);
            lines.add(worst("resistance", name, STRAIGHT, solved, AccuracyGates::resistance));
            lines.add(worst("surface potential at 0.5 m", name, POTENTIAL, solved, (s, soil) -> potential(s, bars)));
        });
        lines.add(worst(
                "resistance",
                "pole butt 1.8 m × 0.3 m",
                THICK,
                solved(BarShapes.poleButt(ONE, 0, 0, 1.8, 0.3)),
                AccuracyGates::resistance));
        lines.add(worst(
                "resistance",
                "pole butt 2 m × 0.32 m, ending where a layer ends",
                THICK,
                solved(BarShapes.poleButt(ONE, 0, 0, 2, BUTT)),
                AccuracyGates::resistance));
        neighbours().forEach((name, bars) -> {
            boolean thick = bars.get(0).equals(butt().get(0));
            Map<SoilModel, Solved> solved = solved(bars);
            lines.add(worst("resistance beside another, floating", name, STRAIGHT, solved, AccuracyGates::resistance));
            lines.add(worst(
                    "resistance of that other",
                    name,
                    thick ? THICK : STRAIGHT,
                    solved,
                    (s, soil) -> difference(
                            s.standard().resistances().alone(OTHER),
                            s.refined().resistances().alone(OTHER))));
            lines.add(worst("mutual resistance", name, SHARES, solved, AccuracyGates::mutual));
        });
        List<Bar> pair = new ArrayList<>(BarShapes.rod(ONE, 0, 0, 0.5, 3, 0.008));
        pair.addAll(BarShapes.rod(OTHER, 5, 0, 0.5, 6, 0.008));
        Map<SoilModel, Solved> both = solved(pair);
        lines.add(worst("mutual resistance", "rods of 3 m and 6 m, 5 m apart", SHARES, both, AccuracyGates::mutual));
        lines.add(worst("share of each layer", "the rod of 6 m of these", SHARES, both, AccuracyGates::share));
        lines.sort(Comparator.comparing(Line::quantity));
        return List.copyOf(lines);
    }

    private static Map<SoilModel, Solved> solved(List<Bar> bars) {
        Map<SoilModel, Solved> solved = new HashMap<>();
        GROUNDS.values().forEach(soil -> solved.put(soil, Solved.of(soil, bars)));
        return solved;
    }

    private static Map<String, List<Bar>> shapes() {
        Map<String, List<Bar>> shapes = new LinkedHashMap<>();
        shapes.put("rod 1.5 m × 16 mm", BarShapes.rod(ONE, 0, 0, 0, 1.5, 0.008));
        shapes.put("rod 3 m × 16 mm", BarShapes.rod(ONE, 0, 0, 0, 3, 0.008));
        shapes.put("rod 3 m × 16 mm, 0.5 m deep", BarShapes.rod(ONE, 0, 0, 0.5, 3, 0.008));
        shapes.put("rod 6 m × 16 mm", BarShapes.rod(ONE, 0, 0, 0, 6, 0.008));
        shapes.put("rod 15 m × 20 mm", BarShapes.rod(ONE, 0, 0, 0, 15, 0.01));
        shapes.put("raked rod 3 m, 30°", BarShapes.rakedRod(ONE, 0, 0, 0.3, 3, Math.PI / 6, 0, 0.008));
        shapes.put("wire 10 m × 8 mm, 0.5 m deep", BarShapes.wire(ONE, 0, 0, 10, 0, 0.5, 0.004));
        shapes.put("wire 40 m × 8 mm, 0.6 m deep", BarShapes.wire(ONE, 0, 0, 40, 0, 0.6, 0.004));
        shapes.put("star of 3 wires of 5 m", BarShapes.star(ONE, 0, 0, 3, 5, 0.6, 0.004));
        shapes.put("ring of radius 2 m", BarShapes.ring(ONE, 0, 0, 2, 16, 0.6, 0.004));
        List<Bar> group = new ArrayList<>(BarShapes.rodsInRing(ONE, 0, 0, 4, 1.5, 0.6, 3, 0.009));
        group.addAll(BarShapes.ring(ONE, 0, 0, 1.5, 12, 0.6, 0.005));
        shapes.put("4 rods of 3 m on a ring of radius 1.5 m", List.copyOf(group));
        List<Bar> crossing = new ArrayList<>(BarShapes.wire(ONE, -7, 0, 13, 0, 0.6, 0.004));
        crossing.addAll(BarShapes.wire(ONE, 0, -4, 0, 16, 0.6, 0.004));
        shapes.put("2 wires of 20 m that cross between their ends", List.copyOf(crossing));
        List<Bar> onWire = new ArrayList<>(BarShapes.wire(ONE, -5, 0, 5, 0, 0.6, 0.004));
        onWire.addAll(BarShapes.rod(ONE, 0, 0, 0.6, 2.4, 0.008));
        shapes.put("rod of 2.4 m on the middle of a wire of 10 m", List.copyOf(onWire));
        List<Bar> inRing = new ArrayList<>(BarShapes.ring(ONE, 0, 0, 2, 16, 0.6, 0.004));
        inRing.addAll(BarShapes.rod(ONE, 0, 0, 0, 3, 0.008));
        shapes.put("rod of 3 m in the middle of a ring of radius 2 m", List.copyOf(inRing));
        shapes.put("mat 2 m × 2 m, meshes of 0.5 m", BarShapes.mat(ONE, -1, -1, 2, 2, 4, 4, 0.3, 0.004));
        return shapes;
    }

    /** Electrodes close to another one, each floating while the other carries current. */
    private static Map<String, List<Bar>> neighbours() {
        Map<String, List<Bar>> shapes = new LinkedHashMap<>();
        double clear = BUTT / 2 + 0.3;
        shapes.put(
                "star of 4 wires of 25 m beside a pole butt",
                both(butt(), BarShapes.star(ONE, clear, clear, 4, 25, 0.5, 0.005)));
        shapes.put(
                "wire of 40 m past a pole butt", both(butt(), BarShapes.wire(ONE, -20, clear, 20, clear, 0.6, 0.004)));
        shapes.put("ring of radius 1 m about a pole butt", both(butt(), BarShapes.ring(ONE, 0, 0, 1, 16, 0.6, 0.004)));
        shapes.put("rod of 3 m beside a pole butt", both(butt(), BarShapes.rod(ONE, 0, clear, 0, 3, 0.008)));
        shapes.put(
                "rod of 1.5 m, 0.5 m deep, beside a pole butt",
                both(butt(), BarShapes.rod(ONE, 0, clear, 0.5, 1.5, 0.008)));
        List<Bar> rod = BarShapes.rod(OTHER, 0, 0, 0, 3, 0.008);
        shapes.put("ring of radius 1 m about a rod of 3 m", both(rod, BarShapes.ring(ONE, 0, 0, 1, 16, 0.6, 0.004)));
        shapes.put("rod of 3 m, 0.5 m from another", both(rod, BarShapes.rod(ONE, 0.5, 0, 0, 3, 0.008)));
        shapes.put(
                "tape 40 m × 30 mm, 50 mm past a rod of 3 m",
                both(rod, BarShapes.wire(ONE, -20, 0.05, 20, 0.05, 0.6, 0.0075)));
        shapes.put(
                "tape 10 m × 30 mm, 0.1 m below a rod of 1.5 m",
                both(BarShapes.rod(OTHER, 0, 0, 0, 1.5, 0.008), BarShapes.wire(ONE, -5, 0, 5, 0, 1.6, 0.0075)));
        shapes.put(
                "wire of 20 m, 0.1 m above another across",
                both(BarShapes.wire(OTHER, 0, -4, 0, 16, 0.7, 0.004), BarShapes.wire(ONE, -7, 0, 13, 0, 0.6, 0.004)));
        return shapes;
    }

    private static List<Bar> butt() {
        return BarShapes.poleButt(OTHER, 0, 0, 2, BUTT);
    }

    private static List<Bar> both(List<Bar> some, List<Bar> others) {
        List<Bar> all = new ArrayList<>(some);
        all.addAll(others);
        return List.copyOf(all);
    }

    private static Line worst(
            String quantity, String shape, double gate, Map<SoilModel, Solved> solved, Difference difference) {
        String ground = "";
        double worst = -1;
        for (Map.Entry<String, SoilModel> each : GROUNDS.entrySet()) {
            double here = difference.of(Objects.requireNonNull(solved.get(each.getValue())), each.getValue());
            if (here > worst) {
                worst = here;
                ground = each.getKey();
            }
        }
        return new Line(quantity, shape, ground, worst, gate);
    }

    private static double difference(double standard, double refined) {
        return Math.abs(standard / refined - 1);
    }

    private static double resistance(Solved solved, SoilModel soil) {
        return difference(
                solved.standard().resistances().alone(ONE),
                solved.refined().resistances().alone(ONE));
    }

    private static double mutual(Solved solved, SoilModel soil) {
        return difference(
                solved.standard().resistances().mutual(ONE, OTHER),
                solved.refined().resistances().mutual(ONE, OTHER));
    }

    /** Greatest difference over points beside the bars, per unit of current. */
    private static double potential(Solved solved, List<Bar> bars) {
        EnergisedElectrodes standard = solved.standard().carrying(Map.of(ONE, 1.0));
        EnergisedElectrodes refined = solved.refined().carrying(Map.of(ONE, 1.0));
        double worst = 0;
        for (Bar bar : bars) {
            double dx = bar.x2() - bar.x1();
            double dy = bar.y2() - bar.y1();
            double plan = Math.sqrt(dx * dx + dy * dy);
            double nx = plan > 0 ? -dy / plan : 1;
            double ny = plan > 0 ? dx / plan : 0;
            for (double along : new double[] {0, 0.5, 1}) {
                for (double side : new double[] {-BESIDE, BESIDE}) {
                    double x = bar.x1() + along * dx + side * nx;
                    double y = bar.y1() + along * dy + side * ny;
                    worst = Math.max(worst, difference(standard.potential(x, y, 0), refined.potential(x, y, 0)));
                }
            }
        }
        return worst;
    }

    /** The part of the long rod's current that each layer takes; the greater difference of both. */
    private static double share(Solved solved, SoilModel soil) {
        if (soil.layerCount() == 1) {
            return 0;
        }
        double standard = above(solved.standard().carrying(Map.of(OTHER, 1.0)), soil.thickness(0));
        double refined = above(solved.refined().carrying(Map.of(OTHER, 1.0)), soil.thickness(0));
        return Math.max(difference(standard, refined), difference(1 - standard, 1 - refined));
    }

    private static double above(EnergisedElectrodes field, double boundary) {
        return field.leakage().stream()
                .filter(element -> element.electrode().equals(OTHER) && element.depth() < boundary)
                .mapToDouble(ElementLeakage::current)
                .sum();
    }
}
