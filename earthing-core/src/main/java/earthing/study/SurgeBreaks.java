package earthing.study;

import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.Antenna;
import earthing.site.AuxiliaryKind;
import earthing.site.AuxiliaryReference;
import earthing.site.AuxiliarySupply;
import earthing.site.PoleMaterial;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.site.YesNo;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The surge with each earth path broken in turn, and with each isolation that hides a second path broken: for each the pair
 * at the cable ends, the screen, the potentials of tank and cubicle, the gaps and what strikes first.
 */
final class SurgeBreaks {

    /** Words of a case in which the feeder's screen joins tank and cubicle. */
    static final String ANTENNA = "isolation of the antenna";
    /** Words of a case in which the supply joins the cubicle to the low-voltage earth. */
    static final String SUPPLY = "isolation of the auxiliary supply";

    private static final Source MODEL =
            Source.tool("circuit of the pole with a path broken, docs/theory/surge-path.md");
    private static final double TOLERANCE = 1e-4;

    private final Site site;
    private final EarthPaths paths;
    private final EarthCache cache;
    private final double peak;
    private final Case own;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();

    private SurgeBreaks(Site site, EarthCache cache, double peak, Case own) {
        this.site = site;
        this.paths = EarthPaths.of(site);
        this.cache = cache;
        this.peak = peak;
        this.own = own;
    }

    /**
     * Breaks each path in turn.
     *
     * @param site the site as it is, its arrangement and screen bond known
     * @param peak peak of the surge [A]
     * @param own the case of the site as it is, without the wave
     */
    static StudyResults of(Site site, EarthCache cache, double peak, Case own) {
        SurgeBreaks study = new SurgeBreaks(site, cache, peak, own);
        study.run();
        return new StudyResults(study.results, List.of(), study.gaps, study.in.assumptions(), List.copyOf(study.notes));
    }

    private void run() {
        Map<String, EarthPaths> variants = new LinkedHashMap<>();
        for (Member member : paths.members()) {
            if (member.intact() && member.role() != Role.ELECTRODE) {
                variants.put(member.name(), paths.broken(member.name()));
            }
        }
        hidden().forEach(member -> {
            List<Member> more = new ArrayList<>(paths.members());
            more.add(member.member());
            variants.put(member.words(), new EarthPaths(more));
        });
        for (String wave : Surges.verdictWaves(site.surges())) {
            variants.forEach((words, broken) -> one(wave, words, broken));
        }
    }

    private record Hidden(String words, Member member) {}

    /** Paths that an isolation keeps open as the site is described. */
    private List<Hidden> hidden() {
        List<Hidden> hidden = new ArrayList<>();
        double cubicle = site.cubicle() == null ? 0 : site.cubicle().height().nominal();
        Antenna antenna = site.antenna();
        if (antenna != null && antenna.bracketBondedToMainEarth() != YesNo.YES) {
            double height = antenna.height().isKnown() ? antenna.height().nominal() : cubicle;
            hidden.add(new Hidden(
                    ANTENNA, member("antenna feeder screen", EarthPaths.TANK, EarthPaths.CUBICLE, height, cubicle)));
        }
        AuxiliarySupply supply = site.auxiliarySupply();
        if (supply != null
                && supply.earthReference() != AuxiliaryReference.LV_NETWORK
                && (supply.kind() == AuxiliaryKind.LV_NETWORK || supply.kind() == AuxiliaryKind.TRANSFORMER_ON_POLE)) {
            hidden.add(new Hidden(
                    SUPPLY,
                    member(
                            "auxiliary supply to the low-voltage earth",
                            EarthPaths.CUBICLE,
                            EarthPaths.EARTH,
                            cubicle,
                            0)));
        }
        return hidden;
    }

    private static Member member(String name, String from, String to, double top, double foot) {
        return new Member(name, from, to, top, foot, Role.UNINTENDED, Optional.empty(), Optional.empty(), true);
    }

    private void one(String wave, String words, EarthPaths broken) {
        Case circumstances = own.with("wave", wave).with("broken", words);
        try {
            SurgeWave shape = SurgeWave.named(wave);
            try {
                SurgeCase.Outcome outcome = SurgeCase.solve(site, broken, cache, Bound.NOMINAL, shape, peak, in);
                new SurgeEmission(SurgeStudy.coreKeys(site), circumstances, Bound.NOMINAL, results, notes)
                        .emitBroken(outcome);
            } catch (MissingInput missing) {
                gaps.add(missing.gap("surge", circumstances));
                if (!broken.connected(EarthPaths.TANK, EarthPaths.EARTH)) {
                    throughTheCore(shape, circumstances, broken);
                }
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge", circumstances));
        }
    }

    /** Where no metal leads the surge away: does a conducting core do so? Then all of it passes through what it ends on. */
    private void throughTheCore(SurgeWave shape, Case circumstances, EarthPaths broken) {
        try {
            SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, in, cache);
            PoleCircuit.Built bonded = PoleCircuit.of(site, broken, earth, shape.current(peak), true, in);
            Waveform core = TransientSolution.solve(
                            bonded.circuit(), new TimeGrid(shape.end(), shape.firstStep(), TOLERANCE))
                    .current(PoleCircuit.CORE);
            for (String key : SurgeStudy.coreKeys(site)) {
                for (String end : List.of("tank", "cubicle")) {
                    String id = "surge.cable-end." + key + "." + end + ".";
                    add(
                            id + "short-circuit-current",
                            circumstances,
                            Math.abs(core.peak().value()),
                            "A");
                    add(id + "charge", circumstances, Math.abs(core.integral()), "C");
                }
            }
            notes.add("with " + circumstances.keys().getOrDefault("broken", "") + " broken the surge of "
                    + Numbers.brief(peak / 1000)
                    + " kA finds no metal but the control cable: it breaks the insulation of"
                    + " the cores and passes through what they end on");
        } catch (MissingInput none) {
            notes.add("with " + circumstances.keys().getOrDefault("broken", "")
                    + " broken no metal leads the surge to earth: it has to jump"
                    + downTheWood());
        }
    }

    private String downTheWood() {
        boolean wood = site.pole() != null && site.pole().material() == PoleMaterial.WOOD;
        double height = site.tank() != null && site.tank().height().isKnown()
                ? site.tank().height().nominal()
                : 0;
        return !wood || height <= 0
                ? ""
                : ", across the break or down " + Numbers.brief(height) + " m of wood, which wet bears some "
                        + Numbers.brief(PoleGap.WOOD_STRENGTH * height / 1e6) + " MV and may be split";
    }

    private void add(String id, Case circumstances, double value, String unit) {
        results.add(Result.of(
                id, circumstances, "nominal", value, unit, "no metal leads the surge away but the bonded core", MODEL));
    }
}
