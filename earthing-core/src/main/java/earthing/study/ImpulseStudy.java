package earthing.study;

import earthing.electrode.GrownBars;
import earthing.electrode.ImpulseResponse;
import earthing.electrode.SoilIonisation;
import earthing.electrode.formula.EffectiveLengthGrcev;
import earthing.electrode.formula.FormulaResult;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.network.Waveform;
import earthing.quantity.Dimension;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Electrode;
import earthing.site.FrequencyDependence;
import earthing.site.Site;
import earthing.site.SoilLaw;
import earthing.site.Surges;
import earthing.soil.FixedSoil;
import earthing.soil.LongmireSmithSoil;
import earthing.soil.MessierSoil;
import earthing.soil.PowerLawSoil;
import earthing.soil.SoilDispersion;
import earthing.soil.VisacroAlipioSoil;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The electrodes under impulse in ground that moves with frequency, where the site file names a law. */
final class ImpulseStudy {

    private static final Source PERMITTIVITY = Source.tool("relative permittivity of ground that does not disperse");

    /** A chain that misses the impedance by more than this is not used [1]. */
    private static final double WORST_FIT = 0.05;

    private final Site site;
    private final EarthCache cache;
    private final FrequencyDependence ground;
    private final SoilDispersion law;
    private final Inputs in;
    private final List<Result> results = new ArrayList<>();
    private final List<Curve.Trace> spectra = new ArrayList<>();
    private final List<Curve.Trace> voltages = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();

    private static final String OPTION =
            "option: ground breaks down at the declared field; no time lag, never for touch or step";

    private ImpulseStudy(Site site, EarthCache cache, FrequencyDependence ground, Inputs in) throws MissingInput {
        this.site = site;
        this.cache = cache;
        this.ground = ground;
        this.in = in;
        law = law(ground, in);
    }

    static StudyResults of(Site site, EarthCache cache) {
        FrequencyDependence ground = site.soil() == null ? null : site.soil().frequencyDependence();
        if (ground == null) {
            return StudyResults.EMPTY;
        }
        Inputs in = new Inputs();
        try {
            return new ImpulseStudy(site, cache, ground, in).run();
        } catch (MissingInput missing) {
            return new StudyResults(
                    List.of(),
                    List.of(),
                    List.of(missing.gap("electrode.impulse", Case.NONE)),
                    in.assumptions(),
                    List.of());
        }
    }

    static SoilDispersion law(FrequencyDependence ground, Inputs in) throws MissingInput {
        SoilLaw law = ground.law();
        return switch (law) {
            case ALIPIO_VISACRO_2014 -> PowerLawSoil.MEAN;
            case ALIPIO_VISACRO_2014_CONSERVATIVE -> PowerLawSoil.CONSERVATIVE;
            case VISACRO_ALIPIO_2012 -> new VisacroAlipioSoil();
            case LONGMIRE_SMITH_1975 -> new LongmireSmithSoil();
            case MESSIER_1985 -> new MessierSoil();
            case NONE ->
                new FixedSoil(in.orElse(
                        ground.relativePermittivity(),
                        "soil.frequency-dependence.relative-permittivity",
                        10,
                        Dimension.RATIO,
                        PERMITTIVITY));
        };
    }

    private StudyResults run() throws MissingInput {
        double peak = in.orElse(
                site.surges() == null ? null : site.surges().current(),
                "surges.current",
                SurgeStudy.CURRENT,
                Dimension.CURRENT,
                SurgeStudy.STANDARD_CURRENT);
        for (Electrode electrode : site.electrodes()) {
            if (ElectrodeBars.of(electrode, site.pole(), in).isEmpty()) {
                gaps.add(new Gap(
                        "electrode." + electrode.name() + ".impulse",
                        Case.NONE,
                        "electrode " + electrode.name()
                                + " has no shape; its resistance tells nothing about an impulse",
                        List.of("electrodes.rod")));
                continue;
            }
            double[] terminal = ElectrodeBars.terminal(electrode, site.pole(), in);
            for (Bound bound : Bound.values()) {
                try {
                    SiteEarth earth = SiteEarth.of(site, bound, in, cache);
                    electrode(electrode, ElectrodeBars.of(electrode, site.pole(), bound, in), terminal, earth, peak);
                } catch (IllegalArgumentException impossible) {
                    gaps.add(new Gap(
                            "electrode." + electrode.name() + ".impulse",
                            Case.NONE,
                            "no solution over frequency: " + impossible.getMessage(),
                            List.of()));
                }
            }
        }
        if (site.electrodes().stream().anyMatch(electrode -> electrode.concrete() != null)) {
            notes.add(
                    "the electrode under impulse: concrete around metal is a resistance at all frequencies; its displacement"
                            + " current, which lowers the impedance of dry concrete above some 1 MHz, is left out");
        }
        notes.add("the electrode under impulse: " + law.title() + ", a mean of measured soils, from "
                + Numbers.brief(HarmonicElectrode.LOWEST) + " Hz to 4 MHz; other electrodes are taken out of the ground"
                + ", conductors are perfect; these values are never used for touch or step");
        List<Curve> curves = new ArrayList<>();
        if (!spectra.isEmpty()) {
            curves.add(new Curve(
                    "electrode.impulse.impedance",
                    "Impedance of the electrodes over frequency, soil law " + law.title(),
                    "frequency",
                    "Hz",
                    "magnitude",
                    "ohm",
                    spectra));
            curves.add(new Curve(
                    "electrode.impulse.voltage",
                    "Voltage of the electrodes to remote earth, " + Numbers.brief(peak / 1e3) + " kA imposed, soil law "
                            + law.title(),
                    "time",
                    "s",
                    "voltage",
                    "V",
                    voltages));
        }
        return new StudyResults(results, curves, gaps, in.assumptions(), List.copyOf(notes));
    }

    private void electrode(Electrode electrode, List<Bar> bars, double[] terminal, SiteEarth earth, double peak)
            throws MissingInput {
        String id = "electrode." + electrode.name() + ".impulse.";
        ImpulseResponse response =
                ImpulseResponse.of(HarmonicElectrode.of(earth.soil(), law, bars, terminal[0], terminal[1]));
        double error = response.network().error();
        if (!(error <= WORST_FIT)) {
            gaps.add(new Gap(
                    id,
                    Case.NONE,
                    "the passive chain misses the impedance over frequency by " + Numbers.brief(100 * error) + " %",
                    List.of()));
            return;
        }
        double resistance = response.impedances().get(0).abs();
        results.add(result(id + "chain-error", Case.NONE, earth.at(), error, ""));
        if (earth.bound() == Bound.NOMINAL) {
            spectrum(electrode, response);
        }
        Set<String> waves = new LinkedHashSet<>(SurgeStudy.SHOWN_WAVES);
        waves.addAll(Surges.verdictWaves(site.surges()));
        for (String name : waves) {
            SurgeWave wave = SurgeWave.named(name);
            Case circumstances = Case.NONE.with("wave", name);
            Waveform voltage = response.voltage(wave.current(peak), wave.end(), wave.firstStep());
            double top = Math.abs(voltage.peak().value());
            double impedance = top / peak;
            results.add(result(id + "voltage", circumstances, earth.at(), top, "V")
                    .withHandValue(resistance * peak)
                    .withWorked(Worked.of("V", "R * I")
                            .with("R", resistance, "ohm")
                            .with("I", peak, "A")
                            .gives(resistance * peak, "V")));
            results.add(result(id + "impedance", circumstances, earth.at(), impedance, "ohm")
                    .withHandValue(resistance));
            results.add(result(id + "coefficient", circumstances, earth.at(), impedance / resistance, "")
                    .withWorked(Worked.of("A", "Z / R")
                            .with("Z", impedance, "ohm")
                            .with("R", resistance, "ohm")
                            .gives(impedance / resistance, "")));
            if (earth.bound() == Bound.NOMINAL) {
                trace(
                        electrode.name() + ", " + name,
                        voltage,
                        5 * voltage.peak().time());
            }
            length(id, electrode, earth, wave, circumstances);
        }
        ionisation(id, bars, earth, resistance, peak);
    }

    /** Grcev's effective length, for ground without layers. */
    private void length(String id, Electrode electrode, SiteEarth earth, SurgeWave wave, Case circumstances) {
        if (earth.soil().layerCount() > 1
                || electrode.concrete() != null
                || (electrode.rod() == null && electrode.wire() == null)) {
            return;
        }
        FormulaResult formula = EffectiveLengthGrcev.length(
                earth.soil().resistivity(0), wave.unit().shape().currentFront());
        if (formula.holds()) {
            results.add(Result.of(
                    id + "effective-length",
                    circumstances,
                    earth.at(),
                    formula.get(),
                    "m",
                    formula.expression() + ", valid for " + formula.range() + "; authors differ by a factor 2 to 6",
                    formula.source()));
        }
    }

    private void ionisation(String id, List<Bar> bars, SiteEarth earth, double resistance, double peak)
            throws MissingInput {
        if (ground.ionisationField() == null) {
            return;
        }
        if (bars.stream().anyMatch(bar -> bar.sleeve() > 0)) {
            gaps.add(new Gap(
                    id + "ionised-resistance",
                    Case.NONE,
                    "no ionised resistance: at which field concrete breaks down is not known",
                    List.of()));
            return;
        }
        double field = in.need(ground.ionisationField(), "soil.frequency-dependence.ionisation-field", earth.bound());
        if (earth.soil().layerCount() > 1) {
            layeredIonisation(id, bars, earth, field, peak);
            return;
        }
        double limit = SoilIonisation.limitCurrent(resistance, earth.soil().resistivity(0), field);
        double ionised = SoilIonisation.resistance(resistance, peak, limit);
        results.add(Result.of(
                        id + "ionised-resistance", Case.NONE, earth.at(), ionised, "ohm", OPTION, SoilIonisation.SOURCE)
                .withWorked(Worked.of("R_i", "R / sqrt(1 + I / I_g)")
                        .with("R", resistance, "ohm")
                        .with("I", peak, "A")
                        .with("I_g", limit, "A")
                        .gives(ionised, "ohm")));
    }

    /** The law of a concentrated electrode knows one resistivity; over layers the bars grow, each piece in its own. */
    private void layeredIonisation(String id, List<Bar> bars, SiteEarth earth, double field, double peak) {
        try {
            results.add(Result.of(
                    id + "ionised-resistance",
                    Case.NONE,
                    earth.at(),
                    GrownBars.resistance(earth.soil(), bars, peak, field),
                    "ohm",
                    OPTION + "; bars grown to that field, one field for all layers",
                    GrownBars.SOURCE));
        } catch (IllegalArgumentException impossible) {
            gaps.add(new Gap(
                    id + "ionised-resistance",
                    Case.NONE,
                    "no ionised resistance: " + impossible.getMessage(),
                    List.of()));
        }
    }

    private void spectrum(Electrode electrode, ImpulseResponse response) {
        int n = response.frequencies().size();
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = response.frequencies().get(i);
            y[i] = response.impedances().get(i).abs();
        }
        spectra.add(new Curve.Trace(electrode.name(), x, y));
    }

    private void trace(String name, Waveform voltage, double end) {
        int points = 200;
        double[] x = new double[points];
        double[] y = new double[points];
        for (int i = 0; i < points; i++) {
            x[i] = end * i / (points - 1);
            y[i] = voltage.at(x[i]);
        }
        voltages.add(new Curve.Trace(name, x, y));
    }

    private Result result(String id, Case circumstances, String at, double value, String unit) {
        return Result.of(
                id,
                circumstances,
                at,
                value,
                unit,
                "thin wire over frequency, soil law " + law.title() + " ("
                        + law.source().text() + "), passive chain in the time domain",
                HarmonicElectrode.SOURCE);
    }
}
