package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.EnergisedElectrodes;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.Electrode;
import earthing.site.Season;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.SoilLayer;
import earthing.site.SoilState;
import earthing.site.Stay;
import earthing.soil.Layer;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * The ground and the electrodes of a site at one bound of the soil. {@code low} takes the low resistivities, {@code
 * high} the high ones with the worst season on the top depth.
 */
final class SiteEarth {

    private static final Source SEASON = Source.tool("the season scales a top depth, not the whole ground");

    private final Bound bound;
    private final String at;
    private final SoilModel soil;
    private final Optional<EarthElectrodes> solved;
    private final Optional<TabulatedGround.Point> tabulated;
    private final Map<String, Double> declared;
    private final List<String> names;
    private final Buried buried;

    /** What was solved, with where the earth leads arrive, for other solutions of the same. */
    private record Buried(
            List<Bar> bars, Map<String, double[]> terminals, Map<String, Complex> added, EarthCache cache) {}

    private SiteEarth(
            Bound bound,
            String at,
            SoilModel soil,
            Optional<EarthElectrodes> solved,
            Optional<TabulatedGround.Point> tabulated,
            Map<String, Double> declared,
            Buried buried) {
        this.buried = buried;
        this.bound = bound;
        this.at = at;
        this.soil = soil;
        this.solved = solved;
        this.tabulated = tabulated;
        this.declared = declared;
        List<String> all = new ArrayList<>(solved.map(EarthElectrodes::names)
                .or(() -> tabulated.map(TabulatedGround.Point::names))
                .orElse(List.of()));
        all.addAll(declared.keySet());
        this.names = List.copyOf(all);
    }

    /** Solves the electrodes of a site. */
    static SiteEarth of(Site site, Bound bound, Inputs inputs, EarthCache cache) throws MissingInput {
        return of(site, bound, soil(site.soil(), bound, inputs), inputs, cache);
    }

    /** The bounds at which the ground differs: of a point the states of its season. */
    static List<Bound> bounds(Site site, StudyScope scope) {
        if (scope != StudyScope.POINT) {
            return List.of(Bound.values());
        }
        Season season = site.soil() == null ? null : site.soil().season();
        return season == null
                ? List.of(Bound.NOMINAL)
                : worst(season.surveyState()) ? List.of(Bound.LOW, Bound.NOMINAL) : List.of(Bound.NOMINAL, Bound.HIGH);
    }

    /** The same in one state of the ground, moist or in its worst season, at any bound of the resistivities. */
    static SiteEarth inState(Site site, Bound bound, boolean worstSeason, Inputs inputs, EarthCache cache)
            throws MissingInput {
        Soil soil = site.soil();
        SoilModel model = asSurveyed(soil, bound, inputs);
        Season season = soil == null ? null : soil.season();
        if (season != null) {
            boolean surveyedAtWorst = worst(season.surveyState());
            double depth = inputs.need(season.depth(), "soil.season.depth");
            double factor = inputs.need(season.factor(), "soil.season.factor");
            if (worstSeason != surveyedAtWorst) {
                model = model.seasonal(depth, worstSeason ? factor : 1 / factor);
            }
        }
        return of(site, bound, model, inputs, cache);
    }

    private static SiteEarth of(Site site, Bound bound, SoilModel soil, Inputs inputs, EarthCache cache)
            throws MissingInput {
        Metal metal = metal(site, bound, inputs);
        List<Bar> bars = metal.bars();
        try {
            Optional<TabulatedGround.Point> tabulated = bars.isEmpty() ? Optional.empty() : cache.tabulated(soil, bars);
            Optional<EarthElectrodes> solved =
                    bars.isEmpty() || tabulated.isPresent() ? Optional.empty() : Optional.of(cache.solve(soil, bars));
            Map<String, Complex> added = SeriesImpedance.added(site, soil, bars, metal.terminals(), inputs, cache);
            return new SiteEarth(
                    bound,
                    bound.name().toLowerCase(Locale.ROOT),
                    soil,
                    solved,
                    tabulated,
                    metal.declared(),
                    new Buried(List.copyOf(bars), metal.terminals(), added, cache));
        } catch (IllegalArgumentException impossible) {
            // Bars in one place, for example a rod inside the butt of the pole: no answer rather than no report.
            throw new MissingInput(
                    "the buried metal as placed has no solution: " + impossible.getMessage(), "electrodes.at");
        }
    }

    /** What is buried: bars of known shape, resistances of the others, places where the earth leads arrive. */
    private record Metal(List<Bar> bars, Map<String, Double> declared, Map<String, double[]> terminals) {}

    /** The ground and the bars in it, not solved. */
    record Ground(SoilModel soil, List<Bar> bars) {}

    /** The ground and the bars of a site at a bound. */
    static Ground ground(Site site, Bound bound) throws MissingInput {
        Inputs inputs = new Inputs();
        return new Ground(
                soil(site.soil(), bound, inputs),
                List.copyOf(metal(site, bound, inputs).bars()));
    }

    private static Metal metal(Site site, Bound bound, Inputs inputs) throws MissingInput {
        if (site.electrodes().isEmpty()) {
            throw new MissingInput("the file describes no electrode", "electrodes");
        }
        List<Bar> bars = new ArrayList<>();
        Map<String, Double> declared = new LinkedHashMap<>();
        Map<String, double[]> terminals = new LinkedHashMap<>();
        for (Electrode electrode : site.electrodes()) {
            List<Bar> shape = ElectrodeBars.of(electrode, site.pole(), bound, inputs);
            if (!shape.isEmpty()) {
                bars.addAll(shape);
                terminals.put(electrode.name(), ElectrodeBars.terminal(electrode, site.pole(), inputs));
            } else {
                declared.put(electrode.name(), inputs.need(electrode.resistance(), "electrodes.resistance", bound));
            }
        }
        Optional<String> bonded = OperatorPlace.bondedTo(site);
        if (bonded.isPresent() && site.cubicle() != null && site.cubicle().operatorMat() != null) {
            String to = bonded.get();
            if (declared.containsKey(to)) {
                throw new MissingInput(
                        "the operator's mat is bonded to electrode " + to + ", whose shape is not known",
                        "electrodes.rod");
            }
            bars.addAll(ElectrodeBars.operatorMat(site.cubicle().operatorMat(), to, inputs));
        }
        bars.addAll(ElectrodeBars.poleButt(site.pole(), bound, inputs));
        for (Stay stay : StayAnchors.bonded(site)) {
            String anchor = StayAnchors.electrode(stay);
            if (site.electrodes().stream().anyMatch(e -> e.name().equals(anchor))) {
                throw new MissingInput("an electrode has the name of the anchor of " + stay.name(), "electrodes.name");
            }
            bars.addAll(StayAnchors.bars(stay, inputs));
        }
        // Butt and anchors are joined where they leave the ground.
        bars.forEach(b -> terminals.putIfAbsent(b.electrode(), new double[] {b.x1(), b.y1()}));
        return new Metal(bars, declared, terminals);
    }

    private static SoilModel asSurveyed(@org.jspecify.annotations.Nullable Soil soil, Bound bound, Inputs inputs)
            throws MissingInput {
        if (soil == null) {
            throw new MissingInput("the file does not describe the soil", "soil.resistivity");
        }
        List<Layer> layers = new ArrayList<>();
        if (soil.layers().isEmpty()) {
            layers.add(Layer.below(inputs.need(soil.resistivity(), "soil.resistivity", bound)));
        }
        for (int i = 0; i < soil.layers().size(); i++) {
            SoilLayer layer = soil.layers().get(i);
            double resistivity = inputs.need(layer.resistivity(), "soil.layers.resistivity", bound);
            layers.add(
                    i == soil.layers().size() - 1
                            ? Layer.below(resistivity)
                            : new Layer(resistivity, inputs.need(layer.thickness(), "soil.layers.thickness")));
        }
        return SoilModel.of(layers);
    }

    /** Whether a state is the one of the highest resistance. */
    static boolean worst(@org.jspecify.annotations.Nullable SoilState state) {
        return state == SoilState.DRY || state == SoilState.FROZEN;
    }

    private static SoilModel soil(@org.jspecify.annotations.Nullable Soil soil, Bound bound, Inputs inputs)
            throws MissingInput {
        SoilModel model = asSurveyed(soil, bound, inputs);
        Season season = soil == null ? null : soil.season();
        if (season == null) {
            return model;
        }
        SoilState state = season.surveyState();
        if (state == null || state == SoilState.UNKNOWN) {
            inputs.choice("soil.season.survey-state", "wet: the survey is taken as the moist state", SEASON);
        }
        double depth = inputs.need(season.depth(), "soil.season.depth");
        double factor = inputs.need(season.factor(), "soil.season.factor");
        boolean surveyedAtWorst = worst(state);
        if (bound == Bound.HIGH && !surveyedAtWorst) {
            return model.seasonal(depth, factor);
        }
        return bound == Bound.LOW && surveyedAtWorst ? model.seasonal(depth, 1 / factor) : model;
    }

    String at() {
        return at;
    }

    /** The same earth under the name of a point between or beside the bounds. */
    SiteEarth named(String point) {
        return new SiteEarth(bound, point, soil, solved, tabulated, declared, buried);
    }

    Bound bound() {
        return bound;
    }

    SoilModel soil() {
        return soil;
    }

    /** Electrodes in order; {@link ElectrodeBars#POLE_BUTT} among them where the pole's metal reaches the soil. */
    List<String> names() {
        return names;
    }

    /** The solved bars; empty where only resistances were declared. */
    Optional<EarthElectrodes> fields() {
        return tabulated.isPresent() ? Optional.of(buried.cache().solve(soil, buried.bars())) : solved;
    }

    /** Whether the shape of any electrode is known. */
    boolean hasFields() {
        return solved.isPresent() || tabulated.isPresent();
    }

    /** The numbers of this ground from a table, where samples have one. */
    Optional<TabulatedGround.Point> tabulated() {
        return tabulated;
    }

    /** The field around electrodes that carry currents [A]. */
    Optional<EnergisedElectrodes> carrying(Map<String, Double> currents) {
        Optional<EarthElectrodes> reference = tabulated.flatMap(TabulatedGround.Point::reference);
        if (reference.isPresent()) {
            // The same ground but for a factor: as much more current gives the same potentials.
            double factor = tabulated.get().scale();
            Map<String, Double> scaled = new LinkedHashMap<>();
            currents.forEach((name, current) -> scaled.put(name, factor * current));
            return Optional.of(reference.get().carrying(scaled));
        }
        return fields().map(f -> f.carrying(currents));
    }

    /** Whether the shape of an electrode is known. */
    boolean hasShape(String name) {
        return solved.map(EarthElectrodes::names)
                .or(() -> tabulated.map(TabulatedGround.Point::names))
                .map(shaped -> shaped.contains(name))
                .orElse(false);
    }

    /** All bars of known shape. */
    List<Bar> bars() {
        return buried.bars();
    }

    /** Where the earth lead of each electrode of known shape arrives, x and y [m]. */
    Map<String, double[]> terminals() {
        return buried.terminals();
    }

    /** Holds what has been solved of the same bars. */
    EarthCache cache() {
        return buried.cache();
    }

    /** Self or mutual resistance [Ω]; between electrodes of which one has no shape the mutual is taken as 0. */
    double resistance(String one, String other) {
        if (hasShape(one) && hasShape(other)) {
            return tabulated.isPresent()
                    ? tabulated.get().resistance(one, other)
                    : solved.orElseThrow().resistances().mutual(one, other);
        }
        return one.equals(other) ? declaredResistance(one) : 0;
    }

    /** What the impedance along its conductors adds to an electrode at power frequency [Ω]; nothing where not asked for. */
    Complex added(String name) {
        return buried.added().getOrDefault(name, Complex.ZERO);
    }

    /**
     * What stands in series with the resistance of an electrode in the circuits of earth faults [Ω]: so much that both
     * together are as great as its impedance. Potentials are told in phase with the electrode's current.
     */
    double inSeries(String name) {
        Complex added = added(name);
        double own = resistance(name, name);
        return added.equals(Complex.ZERO) ? 0 : Math.max(0, added.add(own).abs() - own);
    }

    /** Resistance of an electrode of known shape by the average potential of even leakage, an upper bound [Ω]. */
    double evenLeakage(String name) {
        return tabulated.isPresent()
                ? tabulated.get().evenLeakage(name)
                : solved.orElseThrow().evenLeakage(name);
    }

    /** Resistance of an electrode of known shape with the others taken out of the ground, not merely floating [Ω]. */
    double withoutOthers(String name) {
        return tabulated.isPresent()
                ? tabulated.get().withoutOthers(name)
                : solved.orElseThrow().resistanceWithoutOthers(name);
    }

    private double declaredResistance(String name) {
        Double value = declared.get(name);
        if (value == null) {
            throw new IllegalArgumentException("no electrode \"" + name + "\"; have " + names);
        }
        return value;
    }
}
