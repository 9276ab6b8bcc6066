package earthing.electrode;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.ElementLeakage;
import earthing.quantity.Source;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Resistance of bars in layered ground while the ground around them breaks down: each piece of a bar within one layer
 * counts as a bar whose radius has grown until the field at its surface is the breakdown field, r = ρ·i/(2π·E₀), i being
 * its current a metre. The current of each piece follows from the grown radii, so that both are found in turn.
 *
 * <p>An option like {@link SoilIonisation}: no time lag, the broken ground counts as metal, one field for all layers;
 * never for touch or step.
 */
public final class GrownBars {

    /** Where the model comes from. */
    public static final Source SOURCE = Source.publication(
            "Bellaschi, Armington, Snowden, Impulse and 60-cycle characteristics of driven grounds II, AIEE Transactions 61,"
                    + " 1942; Petropoulos, J. IEE 95, 1948",
            "broken ground as an electrode grown to the breakdown field",
            Source.Status.FROM_MEMORY);

    private static final int MOST_STEPS = 60;
    private static final double SETTLED = 1e-4;
    /** A bar may not grow thicker than it is long. */
    private static final double THICKEST = 0.5;

    private GrownBars() {}

    /**
     * Resistance at a current that stays long enough for the ground to break down.
     *
     * @param soil the ground
     * @param bars bare bars of one electrode
     * @param current I into the electrode [A], ≥ 0
     * @param field breakdown field E₀ of every layer [V/m], &gt; 0
     * @return resistance [Ω]
     * @throws IllegalArgumentException if the broken ground would be no likeness of a bar any more: as thick as a piece is
     *     long, or up to the surface; or if a bar has a sleeve
     */
    public static double resistance(SoilModel soil, List<Bar> bars, double current, double field) {
        if (!(current >= 0) || !(field > 0) || Double.isInfinite(current + field)) {
            throw new IllegalArgumentException(
                    "current must be >= 0 A and the field > 0 V/m; have " + current + " A, " + field + " V/m");
        }
        if (bars.stream().anyMatch(bar -> bar.sleeve() > 0)) {
            throw new IllegalArgumentException("at which field a sleeve around a bar breaks down is not known");
        }
        List<Bar> pieces = new ArrayList<>();
        for (Bar bar : bars) {
            pieces.addAll(byLayers(soil, bar));
        }
        double[] radius = pieces.stream().mapToDouble(Bar::radius).toArray();
        String name = bars.get(0).electrode();
        double before = Double.NaN;
        for (int step = 0; step < MOST_STEPS; step++) {
            List<Bar> grown = new ArrayList<>();
            for (int i = 0; i < radius.length; i++) {
                grown.add(thicker(pieces.get(i), radius[i]));
            }
            EarthElectrodes solved = EarthElectrodes.of(soil, grown);
            double resistance = solved.resistances().alone(name);
            if (Math.abs(resistance - before) <= SETTLED * resistance) {
                return resistance;
            }
            before = resistance;
            double[] amperes =
                    byPiece(grown, solved.carrying(Map.of(name, current)).leakage());
            for (int i = 0; i < radius.length; i++) {
                Bar piece = pieces.get(i);
                double rho = soil.resistivity(soil.layerAt((piece.depth1() + piece.depth2()) / 2));
                double wanted = Math.max(piece.radius(), rho * amperes[i] / piece.length() / (2 * Math.PI * field));
                // Half way each time: a piece that grows takes more current, and the next step would overshoot.
                radius[i] = Math.sqrt(radius[i] * wanted);
            }
        }
        throw new IllegalArgumentException("the broken ground finds no balance of field and current");
    }

    private static Bar thicker(Bar piece, double radius) {
        if (!(radius <= THICKEST * piece.length())) {
            throw new IllegalArgumentException("the broken ground would be " + 2 * radius + " m thick on a piece of "
                    + piece.length() + " m, which is no bar any more");
        }
        return new Bar(
                piece.electrode(),
                piece.x1(),
                piece.y1(),
                piece.depth1(),
                piece.x2(),
                piece.y2(),
                piece.depth2(),
                radius);
    }

    /** The pieces of a bar within the layers. */
    private static List<Bar> byLayers(SoilModel soil, Bar bar) {
        List<Double> cuts = new ArrayList<>(List.of(0.0, 1.0));
        double fall = bar.depth2() - bar.depth1();
        for (int layer = 1; layer < soil.layerCount(); layer++) {
            double t = (soil.top(layer) - bar.depth1()) / fall;
            // A sliver shorter than the bar is thick stays with its neighbour.
            double least = 2 * bar.radius() / bar.length();
            if (t > least && t < 1 - least) {
                cuts.add(t);
            }
        }
        cuts.sort(Double::compare);
        List<Bar> pieces = new ArrayList<>();
        for (int i = 0; i + 1 < cuts.size(); i++) {
            double a = cuts.get(i);
            double b = cuts.get(i + 1);
            pieces.add(new Bar(
                    bar.electrode(),
                    between(bar.x1(), bar.x2(), a),
                    between(bar.y1(), bar.y2(), a),
                    between(bar.depth1(), bar.depth2(), a),
                    between(bar.x1(), bar.x2(), b),
                    between(bar.y1(), bar.y2(), b),
                    between(bar.depth1(), bar.depth2(), b),
                    bar.radius()));
        }
        return pieces;
    }

    private static double between(double first, double second, double t) {
        return t == 1 ? second : first + (second - first) * t;
    }

    /** Sums the currents of elements into those of the bars, whose elements follow each other. */
    private static double[] byPiece(List<Bar> bars, List<ElementLeakage> leakage) {
        double[] amperes = new double[bars.size()];
        int bar = 0;
        double length = 0;
        for (ElementLeakage element : leakage) {
            if (length > bars.get(bar).length() * (1 - 1e-9)) {
                bar++;
                length = 0;
            }
            amperes[bar] += element.current();
            length += element.length();
        }
        return amperes;
    }
}
