package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.network.KirchhoffCheck;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import org.junit.jupiter.api.Test;

/** The stroke to a phase conductor against the divider of surge impedances and exact limits. */
class LineEntryStudyTest {

    private static final String ENTERS = "surge.down-lead.current.peak";
    private static final String SITE = """
            file-version: 1
            site: {name: stroke to the line, stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              neutral: {method: solid}
            soil: {resistivity: 100 ohm.m}
            tank: {height: 9 m%s}
            pole: {material: wood, height: 10.5 m, diameter: 0.26 m}
            line:
              spans: %d
              span-length: %s
              height: 10 m
              phase-spacing: 1.1 m
              surge-impedance: 450 ohm
              neighbours-have-arresters: %s
              neighbour-earth-resistance: %s ohm
            arresters: {phases: %d, side: %s, residual-voltage: 75 kV, line-lead: 0.3 m, earth-lead: 0.3 m, earthed-at: tank}
            main-earth:
              conductor: {material: copper, area: 89.92 mm2}
              offset: 0.15 m
              electrode: main
            electrodes:
              - {name: main, rod: {length: 3 m, diameter: 16 mm, top-depth: 0 m}}
            cubicle: {height: 3 m, earth: shared, tee-length: 0.3 m}
            control-cable:
              separation: 0.2 m
              diameter: 14 mm
              core-diameter: 1.5 mm
              screen: {bond: none, area: 6 mm2}
              cores:
                - {name: trip, tank-end: tank, cubicle-end: unknown}
            """;

    private static Site site(int spans, String length, boolean neighbours, double earth, int phases, String side) {
        return site("150 kV", spans, length, neighbours, earth, phases, side);
    }

    private static Site site(
            String level, int spans, String length, boolean neighbours, double earth, int phases, String side) {
        return DeckSite.read(SITE.formatted(
                ", impulse-level: " + level, spans, length, neighbours ? "yes" : "no", earth, phases, side));
    }

    private static StudyResults study(Site site) {
        return LineEntryStudy.of(site, new EarthCache());
    }

    private static double value(StudyResults results, String id, String strike, String state) {
        return results.one(id, Case.NONE.with("strike", strike).with("switch", state), "nominal")
                .orElseThrow()
                .value();
    }

    /** I_l = (Z I − U_r)/(Z + R): Z of two directions 225 Ω, R of the 3 m rod in 100 Ω·m 33.5 Ω (decks). */
    @Test
    void dividerOfSurgeImpedancesBeforeReflectionsReturn() {
        // Bushings of the phases without arresters that hold: no arc takes a share.
        StudyResults results = study(site("1000 kV", 2, "75 m", false, 40, 1, "both"));
        double hand = (225 * 10e3 - 75e3) / (225 + 33.4927);
        assertThat(hand).isCloseTo(8414, within(0.5));
        assertThat(value(results, ENTERS, "here", "closed")).isCloseTo(hand, withinPercentage(0.5));
        Result entering = results.of(ENTERS).get(0);
        assertThat(entering.handValue().orElseThrow()).isCloseTo(hand, withinPercentage(0.5));
        // The strike at an end pole has one direction to leave by.
        StudyResults end = study(site("1000 kV", 1, "75 m", false, 40, 1, "both"));
        assertThat(value(end, ENTERS, "here", "closed"))
                .isCloseTo((450 * 10e3 - 75e3) / (450 + 33.4927), withinPercentage(0.5));
    }

    /** The figures that docs/theory/surge-entry.md prints beside the hand values, to their last digit. */
    @Test
    void figuresOfTheTheoryPage() {
        StudyResults ternhook = study(DemoSite.read("ternhook-wood-shared.yaml"));
        assertThat(value(ternhook, ENTERS, "here", "closed")).isCloseTo(9.51e3, within(5.0));
        assertThat(value(ternhook, ENTERS, "here", "open")).isCloseTo(9.74e3, within(5.0));
        assertThat(value(ternhook, "surge.arrester.a.current.peak", "here", "closed"))
                .isCloseTo(4.76e3, within(5.0));
        StudyResults deck = study(site(2, "75 m", false, 40, 3, "source"));
        assertThat(value(deck, ENTERS, "here", "closed")).isCloseTo(8.01e3, within(5.0));
        assertThat(value(deck, "surge.tank.peak", "here", "closed")).isCloseTo(267e3, within(500.0));
        assertThat(value(deck, "surge.arrester.b.reverse-current.peak", "here", "closed"))
                .isCloseTo(264, within(0.5));
        assertThat(value(deck, "surge.arrester.c.reverse-current.peak", "here", "closed"))
                .isCloseTo(441, within(0.5));
        StudyResults chain = study(site(2, "75 m", true, 33.5, 3, "source"));
        assertThat(value(chain, ENTERS, "here", "closed")).isCloseTo(2.97e3, within(5.0));
        assertThat(value(chain, ENTERS, "one-span", "closed")).isCloseTo(1.75e3, within(5.0));
        StudyResults poor = study(site(2, "75 m", true, 100, 3, "source"));
        assertThat(value(poor, ENTERS, "here", "closed")).isCloseTo(3.9e3, within(50.0));
    }

    /** Arresters on every pole of a line of 75 m spans leave about a third of the current to this lead. */
    @Test
    void neighboursWithArrestersRelieveTheLead() {
        double alone = value(study(site(2, "75 m", false, 33.5, 3, "both")), ENTERS, "here", "closed");
        StudyResults shared = study(site(2, "75 m", true, 33.5, 3, "both"));
        double relieved = value(shared, ENTERS, "here", "closed");
        assertThat(relieved).isBetween(2.8e3, 3.3e3).isLessThan(0.4 * alone);
        assertThat(value(shared, ENTERS, "one-span", "closed")).isLessThan(relieved);
        double far = value(study(site(2, "300 m", true, 33.5, 3, "both")), ENTERS, "here", "closed");
        assertThat(far).isBetween(relieved, alone);
        double poor = value(study(site(2, "75 m", true, 200, 3, "both")), ENTERS, "here", "closed");
        assertThat(poor).isBetween(relieved, alone);
    }

    /** The tank at 267 kV drives the healthy phases' arresters backwards; the coupled phase less than the far one. */
    @Test
    void arrestersOfHealthyPhasesConductBackwards() {
        StudyResults results = study(site(2, "75 m", false, 40, 3, "both"));
        double near = value(results, "surge.arrester.b.reverse-current.peak", "here", "closed");
        double far = value(results, "surge.arrester.c.reverse-current.peak", "here", "closed");
        assertThat(near).isGreaterThan(50);
        assertThat(far).isGreaterThan(near);
        assertThat(value(results, "surge.arrester.a.reverse-current.peak", "here", "closed"))
                .isLessThan(1e-9);
        double single = value(study(site(2, "75 m", false, 40, 1, "both")), "surge.tank.peak", "here", "closed");
        assertThat(value(results, "surge.tank.peak", "here", "closed")).isLessThan(single);
    }

    /** Without arresters on its side an open switch meets a wave that flashes the bushing over. */
    @Test
    void openSwitchWithoutArrestersFlashesOver() {
        StudyResults results = study(site(2, "75 m", false, 40, 3, "source"));
        // Prospective: the whole current on one direction of 450 Ω, the tank at rest.
        assertThat(value(results, "surge.bushing.struck.voltage", "here", "open"))
                .isCloseTo(450 * 10e3, withinPercentage(5));
        assertThat(value(results, "surge.bushing.struck.voltage", "here", "closed"))
                .isLessThan(150e3);
        assertThat(results.notes()).anyMatch(note -> note.contains("prospective") && note.contains("open"));
        assertThat(value(results, "surge.flashover.bushing-phase-a-load.voltage", "here", "open"))
                .isCloseTo(150e3, withinPercentage(1e-3));
        // The bare side hangs on nothing else: 450 ohm take 150 kV when the wave stands at 333 A.
        double time = value(results, "surge.flashover.bushing-phase-a-load.time", "here", "open");
        double wave = 10e3 * 0.01243 * Math.pow(time * 1e6, 3) * Math.exp(-time / 3.911e-6);
        assertThat(450 * wave).isCloseTo(150e3, withinPercentage(0.05));
        assertThat(value(results, "surge.gap.open-switch.voltage", "here", "open"))
                .isGreaterThan(1e6);
        assertThat(value(results, ENTERS, "here", "open")).isGreaterThan(8e3);
    }

    /** Bushings without arresters break down from the raised tank into the healthy phases, which relieves the lead. */
    @Test
    void healthyBushingsWithoutArrestersFlashOverBackwards() {
        StudyResults hold = study(site("1000 kV", 2, "75 m", false, 40, 1, "both"));
        StudyResults strike = study(site(2, "75 m", false, 40, 1, "both"));
        assertThat(hold.under("surge.flashover.")).isEmpty();
        assertThat(value(strike, "surge.flashover.bushing-phase-c.voltage", "here", "closed"))
                .isCloseTo(150e3, withinPercentage(1e-3));
        assertThat(value(strike, "surge.tank.peak", "here", "closed"))
                .isLessThan(value(hold, "surge.tank.peak", "here", "closed"));
        assertThat(value(strike, "surge.bushing.healthy.voltage", "here", "closed"))
                .isCloseTo(value(hold, "surge.bushing.healthy.voltage", "here", "closed"), withinPercentage(1e-6));
    }

    /** A stroke one span away on a line without arresters at the neighbours: the same, a time of travel later. */
    @Test
    void strokeOneSpanAwayOnABareLineComesLaterAndUnchanged() throws MissingInput {
        Site site = site(2, "150 m", false, 40, 3, "both");
        Inputs in = new Inputs();
        SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, in, new EarthCache());
        SurgeWave wave = SurgeWave.named("8/20");
        PoleCircuit.Built pole = PoleCircuit.of(site, EarthPaths.of(site), earth, wave.current(10e3), false, in);
        EntryInputs line = EntryInputs.of(site, in);
        double[] peaks = new double[2];
        double[] times = new double[2];
        for (int k = 0; k < 2; k++) {
            TransientSolution s = TransientSolution.solve(
                    LineEntry.join(
                                    pole.circuit(),
                                    line,
                                    new LineEntry.Situation(k == 0, false, java.util.OptionalDouble.empty()),
                                    wave.current(10e3))
                            .circuit(),
                    new TimeGrid(40e-6, 20e-9, 1e-5));
            peaks[k] = s.potential(EarthPaths.TANK).peak().value();
            times[k] = s.potential(EarthPaths.TANK).peak().time();
            KirchhoffCheck check = KirchhoffCheck.of(s);
            assertThat(check.nodeResidual()).as(check.toString()).isLessThan(1e-7);
            assertThat(check.energyResidual()).as(check.toString()).isLessThan(1e-3);
        }
        assertThat(peaks[1]).isCloseTo(peaks[0], withinPercentage(0.02));
        assertThat(times[1] - times[0]).isCloseTo(150 / 299_792_458.0, within(0.05e-6));
    }

    /** The energy is the voltage over the arrester times its current: above U at 1 kA times charge, below U at 10 kA. */
    @Test
    void energyOfTheStruckArresterLiesBetweenItsResidualVoltagesTimesTheCharge() {
        StudyResults results = study(site(2, "75 m", false, 40, 3, "source"));
        double charge = value(results, "surge.arrester.a.charge", "here", "closed");
        double energy = value(results, "surge.arrester.a.energy", "here", "closed");
        assertThat(energy).isBetween(0.84 * 75e3 * charge, 75e3 * charge);
    }

    @Test
    void missingInputsAreGapsWithTheirKeys() {
        String bare = SITE.replaceAll("line:\n(  .*\n)+", "");
        Site noLine = DeckSite.read(bare.formatted("", 3, "both"));
        assertThat(study(noLine).results()).isEmpty();
        assertThat(study(noLine).gaps()).singleElement().satisfies(gap -> {
            assertThat(gap.missingKeys()).containsExactly("line");
            assertThat(gap.circumstances().keys()).containsEntry("entry", "line-conductor");
        });
        Site noArresters =
                DeckSite.read(SITE.replaceAll("arresters: \\{.*\\}\n", "").formatted("", 2, "75 m", "no", 40.0));
        assertThat(study(noArresters).gaps())
                .singleElement()
                .satisfies(gap -> assertThat(gap.missingKeys()).containsExactly("arresters.side"));
        Site noLevel = DeckSite.read(SITE.formatted("", 2, "75 m", "no", 40.0, 3, "none"));
        assertThat(study(noLevel).gaps())
                .singleElement()
                .satisfies(gap -> assertThat(gap.missingKeys()).containsExactly("tank.impulse-level"));
    }
}
