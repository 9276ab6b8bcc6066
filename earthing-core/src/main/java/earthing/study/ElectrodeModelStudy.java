package earthing.study;

import earthing.electrode.ElectrodePorts;
import earthing.network.Branch;
import earthing.network.Waveform;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.ElectrodeModel;
import earthing.site.Site;
import earthing.site.Surges;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The surge into the tank with each model of the electrodes, for the arrangement at hand and nominal soil: what the models
 * differ by. Done where the site file describes the ground over frequency or asks for more than resistances.
 */
final class ElectrodeModelStudy {

    private static final Source MODEL = Source.tool(
            "electrodes in the surge circuit as resistances, lumped, or as rational functions of frequency, docs/theory/surge-path.md");

    /** The wave whose potential of the tank is drawn: the fast front tells the models apart. */
    private static final String DRAWN = "0.25/100";

    private static final double DRAWN_TIME = 1.2e-6;
    private static final int DRAWN_POINTS = 240;

    private final EarthCache cache;
    private final Inputs in;
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final List<Curve.Trace> traces = new ArrayList<>();

    private ElectrodeModelStudy(EarthCache cache, Inputs in) {
        this.cache = cache;
        this.in = in;
    }

    /** Whether the site file gives reason to compare. */
    static boolean asked(Site site) {
        return Surges.circuitModel(site.surges()) != ElectrodeModel.RESISTANCE
                || (site.soil() != null && site.soil().frequencyDependence() != null);
    }

    static StudyResults of(Site own, EarthCache cache, double peak, Inputs in) {
        return new ElectrodeModelStudy(cache, in).run(own, peak);
    }

    private StudyResults run(Site own, double peak) {
        boolean dispersive = own.soil() != null && own.soil().frequencyDependence() != null;
        for (ElectrodeModel model : ElectrodeModel.values()) {
            boolean described = switch (model) {
                case RESISTANCE, LUMPED -> true;
                case FREQUENCY -> dispersive;
                case IONISED ->
                    own.soil() != null
                            && own.soil().frequencyDependence() != null
                            && own.soil().frequencyDependence().ionisationField() != null;
            };
            if (described) {
                try {
                    model(SiteVariant.modelled(own, model), model, peak);
                } catch (MissingInput missing) {
                    gaps.add(missing.gap(id(model), Case.NONE));
                }
            }
        }
        List<Curve> curves = traces.isEmpty()
                ? List.of()
                : List.of(new Curve(
                        "surge.electrode-model.tank",
                        "Potential of the tank with each model of the electrodes, " + DRAWN + " into the tank",
                        "time",
                        "s",
                        "voltage",
                        "V",
                        traces));
        String note =
                "the models of the electrodes are compared for information; all other surge results hold the model "
                        + Surges.circuitModel(own.surges()).name().toLowerCase(Locale.ROOT);
        return new StudyResults(results, curves, gaps, List.of(), List.of(note));
    }

    private static String id(ElectrodeModel model) {
        return "surge.electrode-model." + model.name().toLowerCase(Locale.ROOT);
    }

    private void model(Site site, ElectrodeModel model, double peak) throws MissingInput {
        Set<String> waves = new LinkedHashSet<>(SurgeStudy.SHOWN_WAVES);
        waves.addAll(Surges.verdictWaves(site.surges()));
        EarthPaths paths = EarthPaths.of(site);
        for (String name : waves) {
            Case circumstances = Case.NONE.with("wave", name);
            SurgeCase.Outcome outcome =
                    SurgeCase.solve(site, paths, cache, Bound.NOMINAL, SurgeWave.named(name), peak, in);
            add(id(model) + ".tank.peak", circumstances, outcome.tank(), "V");
            add(id(model) + ".open-voltage", circumstances, outcome.open().voltage(), "V");
            add(id(model) + ".short-circuit-current", circumstances, outcome.shortCurrent(), "A");
            add(id(model) + ".energy-residual", circumstances, outcome.recheck().energyResidual(), "");
            if (name.equals(DRAWN)) {
                trace(model, outcome.tankWave());
            }
        }
        particulars(site, model);
    }

    /** What belongs to a model alone: inductances of the lumped one, order and error of the rational functions. */
    private void particulars(Site site, ElectrodeModel model) throws MissingInput {
        if (model == ElectrodeModel.RESISTANCE || model == ElectrodeModel.IONISED) {
            return;
        }
        SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, in, cache);
        List<String> names =
                PoleCircuit.of(site, EarthPaths.of(site), earth, t -> 0, false, in).circuit().branches().stream()
                        .map(Branch::name)
                        .filter(b -> b.startsWith("earth of ") && !ElectrodeCircuit.inner(b))
                        .map(b -> b.substring("earth of ".length()))
                        .filter(earth::hasShape)
                        .toList();
        if (names.isEmpty()) {
            return;
        }
        ElectrodeCircuit electrodes = new ElectrodeCircuit(site, earth, in);
        if (model == ElectrodeModel.LUMPED) {
            double[][] inductances = electrodes.inductances(names);
            for (int k = 0; k < names.size(); k++) {
                add(id(model) + "." + EarthPaths.key(names.get(k)) + ".inductance", Case.NONE, inductances[k][k], "H");
            }
        } else {
            ElectrodePorts ports = electrodes.ports(names);
            add(id(model) + ".fit-error", Case.NONE, ports.error(), "");
            add(id(model) + ".order", Case.NONE, ports.admittance().order(), "");
        }
    }

    private void trace(ElectrodeModel model, Waveform tank) {
        double[] x = new double[DRAWN_POINTS];
        double[] y = new double[DRAWN_POINTS];
        for (int i = 0; i < DRAWN_POINTS; i++) {
            x[i] = DRAWN_TIME * i / (DRAWN_POINTS - 1);
            y[i] = tank.at(x[i]);
        }
        traces.add(new Curve.Trace(model.name().toLowerCase(Locale.ROOT), x, y));
    }

    private void add(String id, Case circumstances, double value, String unit) {
        results.add(Result.of(
                id,
                circumstances,
                "nominal",
                value,
                unit,
                "current into the tank, arrangement at hand, one model of the electrodes",
                MODEL));
    }
}
