package earthing.study;

import earthing.electrode.formula.FormulaResult;
import earthing.electrode.formula.LongWireSunde;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.SeriesElectrodes;
import earthing.quantity.Dimension;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Electrode;
import earthing.site.Site;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.complex.Complex;

/** Soil and electrode: the numbers of one bound. */
final class ElectrodeStudy {

    private static final Source WIRE = Source.publication(
            "Sunde, Earth Conduction Effects in Transmission Systems, 1949",
            "point source in layered ground; Galerkin solution of this library, docs/theory/electrode.md",
            Source.Status.FROM_MEMORY);
    private static final Source DECLARED = Source.owner("electrodes.resistance");

    private static final String FORMULA = ".formula";
    private static final String EVEN_LEAKAGE = ".even-leakage";
    private static final String WITHOUT_OTHERS = ".without-others";
    private static final double NOTICEABLE = 1e-9;

    private ElectrodeStudy() {}

    static List<Result> of(Site site, SiteEarth earth, Inputs in) throws MissingInput {
        List<Result> results = new ArrayList<>(ground(earth));
        List<String> names = earth.names();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            boolean solved = earth.hasShape(name);
            results.add(resistance(name, earth));
            results.addAll(second(site, name, earth, in));
            if (!earth.added(name).equals(Complex.ZERO)) {
                results.addAll(series(site, name, earth, in));
            }
            for (int j = i + 1; j < names.size(); j++) {
                if (solved && earth.hasShape(names.get(j))) {
                    results.add(Result.of(
                            "electrode.mutual." + name + "." + names.get(j),
                            Case.NONE,
                            earth.at(),
                            earth.resistance(name, names.get(j)),
                            "ohm",
                            "thin-wire Galerkin",
                            WIRE));
                }
            }
        }
        return results;
    }

    private static List<Result> ground(SiteEarth earth) {
        List<Result> results = new ArrayList<>();
        SoilModel soil = earth.soil();
        for (int i = 0; i < soil.layerCount(); i++) {
            String layer = "soil.layer." + (i + 1) + ".";
            results.add(number(layer + "resistivity", earth, soil.resistivity(i), Dimension.RESISTIVITY, "soil model"));
            if (i < soil.layerCount() - 1) {
                results.add(number(layer + "thickness", earth, soil.thickness(i), Dimension.LENGTH, "soil model"));
            }
        }
        return results;
    }

    private static Result resistance(String name, SiteEarth earth) {
        boolean solved = earth.hasShape(name);
        int layers = earth.soil().layerCount();
        return Result.of(
                resistanceId(name),
                Case.NONE,
                earth.at(),
                earth.resistance(name, name),
                "ohm",
                solved
                        ? "thin-wire Galerkin, " + (layers == 1 ? "uniform soil" : layers + " layers")
                        : "declared value",
                solved ? WIRE : DECLARED);
    }

    private static String resistanceId(String name) {
        return "electrode." + name + ".resistance";
    }

    /**
     * What a resistance is held against: a closed form where one covers the shape, and the bound of even leakage. Both know
     * no other metal in the ground; where there is some, the solution without it is what the closed form answers to.
     */
    private static List<Result> second(Site site, String name, SiteEarth earth, Inputs in) throws MissingInput {
        List<Result> results = new ArrayList<>();
        Optional<FormulaResult> formula = closedForm(site, name, earth, in);
        if (formula.isPresent()) {
            results.add(Result.of(
                    resistanceId(name) + FORMULA,
                    Case.NONE,
                    earth.at(),
                    formula.get().get(),
                    "ohm",
                    formula.get().expression() + ", valid for " + formula.get().range(),
                    formula.get().source()));
            if (earth.hasShape(name)
                    && earth.names().stream().filter(earth::hasShape).count() > 1) {
                results.add(Result.of(
                        resistanceId(name) + WITHOUT_OTHERS,
                        Case.NONE,
                        earth.at(),
                        earth.withoutOthers(name),
                        "ohm",
                        "thin-wire Galerkin, the other electrodes taken out of the ground",
                        WIRE));
            }
        }
        if (earth.hasShape(name)) {
            results.add(Result.of(
                    resistanceId(name) + EVEN_LEAKAGE,
                    Case.NONE,
                    earth.at(),
                    earth.evenLeakage(name),
                    "ohm",
                    "average potential of even leakage, alone in the ground; an upper bound",
                    EarthElectrodes.EVEN_LEAKAGE));
        }
        return results;
    }

    /**
     * The resistances in grounds beside the bounds in which the second method lies further away than in any at the bounds:
     * of each electrode the furthest, with the ground.
     *
     * @param found the results at the bounds
     * @param grounds grounds beside the bounds, each with the site that lies in it
     */
    static List<Result> furtherApart(List<Result> found, Map<SiteEarth, Site> grounds, Inputs in) throws MissingInput {
        List<Result> results = new ArrayList<>();
        if (grounds.isEmpty()) {
            return results;
        }
        Set<String> shown = new HashSet<>();
        for (String name : grounds.keySet().iterator().next().names()) {
            // As the check does: a closed form where one holds anywhere, else the bound of even leakage.
            boolean closed = found.stream().anyMatch(r -> r.id().equals(resistanceId(name) + FORMULA));
            double furthest = found.stream()
                    .map(Result::at)
                    .distinct()
                    .mapToDouble(at -> apart(found, name, at, closed))
                    .max()
                    .orElse(Double.NEGATIVE_INFINITY);
            List<Result> worst = List.of();
            Optional<SiteEarth> where = Optional.empty();
            for (Map.Entry<SiteEarth, Site> ground : grounds.entrySet()) {
                SiteEarth earth = ground.getKey();
                if (!earth.hasShape(name)) {
                    continue;
                }
                List<Result> here = new ArrayList<>(List.of(resistance(name, earth)));
                here.addAll(second(ground.getValue(), name, earth, in));
                double apart = apart(here, name, earth.at(), closed);
                if (apart > furthest + NOTICEABLE) {
                    furthest = apart;
                    worst = here;
                    where = Optional.of(earth);
                }
            }
            results.addAll(worst);
            where.filter(earth -> shown.add(earth.at())).ifPresent(earth -> results.addAll(ground(earth)));
        }
        return results;
    }

    /** How far a second method lies away at a point: a closed form, or how near the upper bound of even leakage is. */
    private static double apart(List<Result> results, String name, String at, boolean closed) {
        Optional<Result> own = at(results, resistanceId(name), at);
        Optional<Result> second = at(results, resistanceId(name) + (closed ? FORMULA : EVEN_LEAKAGE), at);
        if (own.isEmpty() || second.isEmpty()) {
            return Double.NEGATIVE_INFINITY;
        }
        double value = at(results, resistanceId(name) + WITHOUT_OTHERS, at)
                .filter(alone -> closed)
                .or(() -> own)
                .get()
                .value();
        double other = second.get().value();
        return closed ? Math.abs(other - value) / value : value / other;
    }

    private static Optional<Result> at(List<Result> results, String id, String at) {
        return results.stream()
                .filter(r -> r.id().equals(id) && r.at().equals(at))
                .findFirst();
    }

    /** What a reader should know of long electrodes; at the low bound, where it is most. */
    static List<String> notes(Site site, SiteEarth earth) {
        List<String> notes = new ArrayList<>();
        for (Electrode electrode : site.electrodes()) {
            SeriesImpedance.hint(site, electrode, earth).ifPresent(notes::add);
            if (!earth.added(electrode.name()).equals(Complex.ZERO)) {
                notes.add("the impedance along the conductors of electrode " + electrode.name()
                        + " stands in the circuits of earth faults; the field in the ground is that of one potential, so touch"
                        + " errs high and step beside the lead low");
            }
        }
        earth.bars().stream()
                .filter(bar -> footOnBetterGround(bar, earth.soil()))
                .map(Bar::electrode)
                .distinct()
                .forEach(name -> notes.add("the foot of " + name
                        + " stands within its radius above ground that conducts better; the flat of a foot is not in the model, so"
                        + " the resistance of " + name
                        + " reads high there, by a third where that ground is ten times better"));
        return notes;
    }

    /** Least radius over length of what stands on its foot: a rod reaches the ground by its side. */
    private static final double THICK = 0.03;
    /** Factor of resistivity from which ground is better. */
    private static final double BETTER = 1.5;

    private static boolean footOnBetterGround(Bar bar, SoilModel soil) {
        double foot = Math.max(bar.depth1(), bar.depth2());
        boolean stands = bar.x1() == bar.x2() && bar.y1() == bar.y2() && bar.radius() > THICK * bar.length();
        int layer = soil.layerAt(foot);
        return stands
                && layer + 1 < soil.layerCount()
                && soil.top(layer + 1) - foot <= bar.radius()
                && soil.resistivity(layer + 1) < soil.resistivity(layer) / BETTER;
    }

    /** The impedance with the conductors, what it is beside the resistance, and the closed form where one holds. */
    private static List<Result> series(Site site, String name, SiteEarth earth, Inputs in) throws MissingInput {
        String id = "electrode." + name + ".impedance";
        double frequency = SeriesImpedance.frequency(site, in);
        double resistance = earth.resistance(name, name);
        Complex whole = earth.added(name).add(resistance);
        String model = "resistance and impedance along the conductors at " + Numbers.brief(frequency) + " Hz";
        List<Result> results = new ArrayList<>();
        results.add(Result.of(id, Case.NONE, earth.at(), whole.abs(), "ohm", model, SeriesElectrodes.SOURCE)
                .withHandValue(resistance)
                .withWorked(Worked.of("Z", "sqrt((R_E + R_S)^2 + X_S^2)")
                        .with("R_E", resistance, "ohm")
                        .with("R_S", earth.added(name).getReal(), "ohm")
                        .with("X_S", earth.added(name).getImaginary(), "ohm")
                        .gives(whole.abs(), "ohm")));
        results.add(Result.of(
                id + ".over-resistance",
                Case.NONE,
                earth.at(),
                whole.abs() / resistance,
                "",
                model,
                SeriesElectrodes.SOURCE));
        Optional<Complex> formula = SeriesImpedance.formula(
                SiteVariant.electrode(site, name).orElseThrow(), earth, resistance, frequency, in);
        formula.ifPresent(z -> results.add(Result.of(
                id + ".as-a-line",
                Case.NONE,
                earth.at(),
                z.abs(),
                "ohm",
                "buried wire as a line, Z = sqrt(z/y) coth(sqrt(z y) l)",
                LongWireSunde.SOURCE)));
        return results;
    }

    private static Optional<FormulaResult> closedForm(Site site, String name, SiteEarth earth, Inputs in)
            throws MissingInput {
        if (OperatorPlace.bondedTo(site).filter(name::equals).isPresent()) {
            return Optional.empty(); // a mat is part of it, and no closed form knows that shape
        }
        if (name.equals(ElectrodeBars.POLE_BUTT)) {
            return ElectrodeFormula.foundation(site.pole(), earth.soil(), in);
        }
        Optional<Electrode> electrode = SiteVariant.electrode(site, name);
        return electrode.isEmpty()
                ? Optional.empty()
                : ElectrodeFormula.of(electrode.get(), earth.soil(), earth.bound(), in);
    }

    private static Result number(String id, SiteEarth earth, double value, Dimension dimension, String model) {
        return Result.of(id, Case.NONE, earth.at(), value, dimension.siUnit(), model, Source.owner("soil"));
    }
}
