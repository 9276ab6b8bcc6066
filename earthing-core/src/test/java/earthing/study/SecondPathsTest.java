package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.site.Site;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** What leads a surge away beside the main earth: its current in every entry, and the metal of a conducting pole. */
class SecondPathsTest {

    private static final Case SLOW = Case.NONE.with("wave", "8/20");
    private static final Case SHARED = SLOW.with("arrangement", "shared").with("screen-bond", "none");

    private static final String LINE =
            "line: {spans: 2, span-length: 80 m, height: 10 m, phase-spacing: 1 m, conductor-diameter: 12 mm}\n";

    private static StudyResults study(String more) {
        return SurgeStudy.of(DeckSite.read(DeckSite.text("1000 ohm.m", "shared", "none") + more), new EarthCache());
    }

    private static double current(StudyResults results, String member, Case circumstances) {
        return results.one("surge." + member + ".current.peak", circumstances, "nominal")
                .orElseThrow()
                .value();
    }

    private static String stay(String resistance, String more) {
        return "stays:\n  - {name: stay east, top-height: 9 m, anchor-distance: 6 m, insulated: no,"
                + " bonded-to-main-earth: yes" + resistance + "}\n" + more;
    }

    /**
     * The tail of a long wave divides by resistances alone: an anchor of 200 ohm beside an electrode that the study
     * reports. At its peak the wave is no steeper than nothing, so Ohm's law is what is left (4 % for the front).
     */
    @Test
    void stayTakesItsShareByOhmsLaw() {
        StudyResults results = study(stay(", anchor-resistance: 200 ohm", "surges: {waves: [10/350]}\n"));
        Case slow =
                Case.NONE.with("wave", "10/350").with("arrangement", "shared").with("screen-bond", "none");
        double main = current(results, "earth-of-main", slow);
        double stay = current(results, "stay-east", slow);
        double electrode =
                results.one("surge.tank.peak", slow, "nominal").orElseThrow().value() / main;
        assertThat(stay / main).isCloseTo(electrode / 200, Percentage.withPercentage(4));
        assertThat(stay + main).isCloseTo(10e3, Percentage.withPercentage(2));
        assertThat(current(results, "anchor-of-stay-east", slow)).isCloseTo(stay, Percentage.withPercentage(1e-6));
    }

    /** An anchor that is not described earths like a rod of 1.5 m: 1000/(2 pi 1.5) (ln(4 x 1.5/0.008) - 1), Dwight 1936. */
    @Test
    void anchorLikeARod() {
        StudyResults results = study(stay("", ""));
        double rod = 1000 / (2 * Math.PI * 1.5) * (Math.log(4 * 1.5 / 0.008) - 1);
        assertThat(results.assumptions().stream()
                        .filter(a -> a.key().equals("stays.anchor-resistance"))
                        .mapToDouble(a -> Double.parseDouble(a.text().replace(" ohm", "")))
                        .findFirst()
                        .orElseThrow())
                // as printed, to four digits
                .isCloseTo(rod, within(0.05));
    }

    /** A shaped anchor is an electrode with its mutual resistances; the wire carries what the anchor does. */
    @Test
    void aShapedAnchorIsAnElectrode() {
        StudyResults results = study(stay(", anchor: {rod-length: 2 m, rod-diameter: 19 mm}", ""));
        assertThat(current(results, "earth-of-stay-east-anchor", SHARED))
                .isCloseTo(current(results, "stay-east", SHARED), Percentage.withPercentage(1e-6));
        assertThat(results.of("surge.anchor-of-stay-east.current.peak")).isEmpty();
    }

    @Test
    void anInsulatedStayIsNoPath() {
        StudyResults results = study(stay("", "").replace("insulated: no", "insulated: yes"));
        assertThat(results.of("surge.stay-east.current.peak")).isEmpty();
    }

    @Property(tries = 6, seed = "20261125")
    void aBetterAnchorTakesMore(@ForAll @DoubleRange(min = 20, max = 500) double resistance) {
        StudyResults better = study(stay(", anchor-resistance: " + resistance + " ohm", ""));
        StudyResults worse = study(stay(", anchor-resistance: " + 1.5 * resistance + " ohm", ""));
        assertThat(current(better, "stay-east", SHARED)).isGreaterThan(current(worse, "stay-east", SHARED));
        assertThat(current(better, "earth-of-main", SHARED)).isLessThan(current(worse, "earth-of-main", SHARED));
    }

    /** The feeder's screen is followed in every entry and with each path broken; what runs up the bracket comes down it. */
    @Test
    void feederInEveryEntry() {
        EarthCache cache = new EarthCache();
        Site site = DeckSite.read(DeckSite.text("100 ohm.m", "shared", "both")
                + "antenna: {height: 10 m, feeder-separation: 0.3 m, suppressor: bulkhead, bracket-bonded-to-main-earth: yes}\n"
                + LINE
                + "arresters: {side: both, phases: 3, rated-voltage: 30 kV, continuous-voltage: 24.4 kV, residual-voltage: 75 kV,"
                + " line-lead: 0.3 m, earth-lead: 0.3 m, earthed-at: tank}\n");
        StudyResults standard = SurgeStudy.of(site, cache);
        StudyResults line = LineEntryStudy.of(site, cache);
        StudyResults beside = InducedStudy.of(site, cache);
        for (StudyResults results : new StudyResults[] {standard, line, beside}) {
            assertThat(results.of("surge.antenna-feeder-screen.current.peak")).isNotEmpty();
            results.of("surge.antenna-feeder-screen.current.peak")
                    .forEach(r -> assertThat(current(results, "antenna-bracket-lead", r.circumstances()))
                            .isCloseTo(r.value(), within(1e-6 * 10e3)));
        }
        assertThat(current(standard, "antenna-feeder-screen", SLOW.with("broken", "upper lead")))
                .isGreaterThan(current(
                        standard,
                        "antenna-feeder-screen",
                        SLOW.with("arrangement", "shared").with("screen-bond", "both")));
    }

    /** The wires of a steel pole's wall are one member: what passes the cubicle below leaves through the butt. */
    @Test
    void steelOfThePoleIsOneMember() {
        StudyResults results = SurgeStudy.of(DemoSite.read("harrowfell-steel-rock.yaml"), new EarthCache());
        Case both = SLOW.with("arrangement", "shared").with("screen-bond", "both");
        assertThat(current(results, "pole-steel-below-cubicle", both))
                .isCloseTo(current(results, "earth-of-pole-butt", both), Percentage.withPercentage(1e-6));
        assertThat(results.under("surge.pole-steel-1.")).isEmpty();
    }

    private static String concrete(String pole) {
        return DeckSite.text("1000 ohm.m", "shared", "none")
                .replace(
                        "{material: wood, height: 10.5 m, diameter: 0.26 m}",
                        "{height: 10.5 m, diameter: 0.26 m, burial: 1.8 m, butt-contact: bare, " + pole + "}");
    }

    /** Metal that nothing strikes to changes nothing; where an arc strikes, it does at the strength of the cover. */
    @Test
    void concreteBearsItsCoverOnly() {
        StudyResults concrete = SurgeStudy.of(
                DeckSite.read(concrete("material: concrete, mounting-clearance: 30 mm")), new EarthCache());
        Case fast =
                Case.NONE.with("wave", "0.25/100").with("arrangement", "shared").with("screen-bond", "none");
        for (String gap : new String[] {"tank-pole", "pole-surface"}) {
            assertThat(concrete.one("surge.gap." + gap + ".strength", fast, "nominal")
                            .orElseThrow()
                            .value())
                    .isCloseTo(0.03 * 500e3, within(1e-6));
        }
        assertThat(concrete.one("surge.flashover.tank-pole.voltage", fast, "nominal")
                        .orElseThrow()
                        .value())
                .isCloseTo(15e3, Percentage.withPercentage(1e-3));
        StudyResults wood = SurgeStudy.of(
                DeckSite.read(concrete("material: concrete")
                        .replace("material: concrete", "material: wood")
                        .replace("butt-contact: bare, ", "")),
                new EarthCache());
        String open = "surge.cable-end.trip.cubicle.open-voltage";
        assertThat(concrete.one(open, fast, "nominal").orElseThrow().value())
                .isCloseTo(wood.one(open, fast, "nominal").orElseThrow().value(), Percentage.withPercentage(0.01));
    }

    /** Steel bears nothing by itself: no strength is shown until the mounting's clearance is given, and that is said. */
    @Test
    void steelBearsTheClearanceOfItsMounting() {
        StudyResults bolted =
                SurgeStudy.of(DeckSite.read(concrete("material: steel, bonded-to-main-earth: yes")), new EarthCache());
        assertThat(bolted.of("surge.gap.pole-surface.strength")).isEmpty();
        assertThat(bolted.notes()).anyMatch(note -> note.contains("pole.mounting-clearance"));
        StudyResults clear = SurgeStudy.of(
                DeckSite.read(concrete("material: steel, bonded-to-main-earth: yes, mounting-clearance: 50 mm")),
                new EarthCache());
        assertThat(clear.one("surge.gap.pole-surface.strength", SHARED, "nominal")
                        .orElseThrow()
                        .value())
                .isCloseTo(25e3, within(1e-6));
        assertThat(clear.of("surge.gap.tank-pole.strength")).isEmpty();
    }

    /**
     * Without arresters nothing flows into the tank until the bushing strikes, so the wave at that moment stands at the
     * impulse level; it is Rusck's with the front of the stroke, hence not at the start.
     */
    @Test
    void inducedSurgeStrikesAsAnEvent() {
        String text = DeckSite.text("1000 ohm.m", "shared", "none")
                        .replace("tank: {height: 9 m}", "tank: {height: 9 m, impulse-level: 95 kV}")
                + LINE
                + "arresters: {side: none, earthed-at: tank}\n"
                + "surges: {induced-distance: 60 m}\n";
        StudyResults results = InducedStudy.of(DeckSite.read(text), new EarthCache());
        assertThat(results.of("surge.induced.voltage").get(0).value()).isGreaterThan(95e3);
        assertThat(results.of("surge.bushing.healthy.voltage").get(0).value())
                .isCloseTo(results.of("surge.induced.voltage").get(0).value(), Percentage.withPercentage(0.1));
        for (String phase : new String[] {"a", "b", "c"}) {
            String id = "surge.flashover.bushing-phase-" + phase + ".";
            assertThat(results.of(id + "voltage")).hasSize(1);
        }
        // The first arc raises the tank, so the later ones may strike later or not at all; the first is at the level.
        assertThat(results.of("surge.flashover.bushing-phase-a.voltage").get(0).value())
                .isCloseTo(95e3, Percentage.withPercentage(1e-3));
        double struck =
                results.of("surge.flashover.bushing-phase-a.time").get(0).value();
        assertThat(struck).isBetween(60 / 299792458.0, 20e-6);
        assertThat(results.of("surge.down-lead.current.peak").get(0).value()).isGreaterThan(100);
    }
}
