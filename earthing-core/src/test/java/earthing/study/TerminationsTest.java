package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.site.Site;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** What a core ends on, in the solution: protectors, the neighbouring core, and the gaps that strike first. */
class TerminationsTest {

    private static final String END = "surge.cable-end.trip.cubicle.";
    private static final Case SLOW = Case.NONE.with("wave", "8/20");
    private static final Case FAST = Case.NONE.with("wave", "0.25/100");

    private static Site site(String earth, String core) {
        String text = DeckSite.text("100 ohm.m", earth, "none")
                .replace("{name: trip, tank-end: tank, cubicle-end: unknown}", core);
        return DeckSite.read(text);
    }

    private static String protector(String more) {
        return "{name: trip, tank-end: coil, cubicle-end: protector, cubicle-protector: {level: 600 V, current: 10 kA"
                + more + "}}";
    }

    private static StudyResults study(String earth, String core) {
        return SurgeStudy.of(site(earth, core), new EarthCache());
    }

    private static double value(StudyResults results, String id, Case wave, String arrangement) {
        return results.one(id, wave.with("arrangement", arrangement).with("screen-bond", "none"), "nominal")
                .orElseThrow()
                .value();
    }

    /**
     * The loop in closed form: L i' + R i + v = M I' + R_u I, v constant at 0.95 of the level while the current rises.
     * Independent of the solver: forward steps of 1 ns. The element values are those of the deck's list, as in
     * SurgeStudyTest.
     */
    @Test
    void clampingProtectorAgainstForwardSteps() {
        StudyResults results = study("shared", protector(", kind: clamping"));
        double current = 0;
        double peak = 0;
        double step = 1e-9;
        for (double t = 0; t < 30e-6; t += step) {
            // The curve of usual shape through 600 V at 10 kA, on double-logarithmic axes between 1 and 5 kA.
            double drop = current <= 1
                    ? current * 400
                    : 600 * 0.84 * Math.pow(current / 1e3, Math.log(0.94 / 0.84) / Math.log(5));
            double rate = (emf(t) - RING * current - drop) / LOOP;
            current = Math.max(0, current + step * rate);
            peak = Math.max(peak, current);
        }
        assertThat(value(results, END + "protector-current", SLOW, "shared"))
                .isCloseTo(peak, Percentage.withPercentage(0.5));
        double through = value(results, END + "let-through", SLOW, "shared");
        assertThat(through)
                .isCloseTo(
                        600 * 0.84 * Math.pow(peak / 1e3, Math.log(0.94 / 0.84) / Math.log(5)),
                        Percentage.withPercentage(0.5));
        assertThat(value(results, END + "protector-current", SLOW, "shared"))
                .isLessThan(value(results, END + "short-circuit-current", SLOW, "shared"));
    }

    private static final double LOOP = 8.059748e-6 + 10.416563e-6 - 2 * 3.752880e-6 + 0.224255e-6;
    private static final double FLUX = 8.059748e-6 + 0.572328e-6 - 3.752880e-6 - 0.553251e-6;
    private static final double COPPER = 1.7241e-8;
    private static final double UPPER = 6 * COPPER / 89.92e-6;
    private static final double RING = UPPER + 0.3 * COPPER / 89.92e-6 + 6 * COPPER / (Math.PI * 0.75e-3 * 0.75e-3);

    /** Emf that the 8/20 of 10 kA drives around the loop: M I' + R_u I. */
    private static double emf(double t) {
        double x = t / 1e-6;
        double wave = 10e3 * 0.01243 * x * x * x * Math.exp(-t / 3.911e-6);
        return wave == 0 ? 0 : FLUX * wave * (3 / t - 1 / 3.911e-6) + UPPER * wave;
    }

    /**
     * A coil at the tank end, R–L with its capacitance across, the core bonded at the cubicle. Independent of the solver:
     * the loop L i' + R i + v = M I' + R_u I, C v' = i − j, L_c j' + R_c j = v, by steps of 0.5 ns.
     */
    @Test
    void coilAgainstForwardSteps() {
        StudyResults results = study(
                "shared",
                "{name: trip, tank-end: coil, cubicle-end: tank, tank-impedance: {resistance: 40 ohm, inductance: 2 mH,"
                        + " capacitance: 4 nF}}");
        double loop = 0;
        double winding = 0;
        double voltage = 0;
        double most = 0;
        double current = 0;
        double step = 0.5e-9;
        for (double t = 0; t < 40e-6; t += step) {
            loop += step * (emf(t) - RING * loop - voltage) / LOOP;
            winding += step * (voltage - 40 * winding) / 2e-3;
            voltage += step * (loop - winding) / 4e-9;
            most = Math.max(most, Math.abs(voltage));
            current = Math.max(current, Math.abs(loop));
        }
        String tank = "surge.cable-end.trip.tank.";
        assertThat(value(results, tank + "terminal-voltage", SLOW, "shared"))
                .isCloseTo(most, Percentage.withPercentage(0.1));
        assertThat(value(results, tank + "terminal-current", SLOW, "shared"))
                .isCloseTo(current, Percentage.withPercentage(0.1));
        assertThat(results.of(END + "terminal-voltage")).isEmpty();
    }

    /** An instrument transformer with its burden takes a current between none and the short-circuit one. */
    @Test
    void burdenAgainstForwardSteps() {
        StudyResults results = study(
                "shared",
                "{name: trip, tank-end: instrument-transformer, cubicle-end: unknown, tank-impedance: {resistance: 2 ohm}}");
        double current = 0;
        double most = 0;
        double step = 1e-9;
        for (double t = 0; t < 40e-6; t += step) {
            current += step * (emf(t) - (RING + 2) * current) / LOOP;
            most = Math.max(most, Math.abs(current));
        }
        String tank = "surge.cable-end.trip.tank.";
        assertThat(value(results, tank + "terminal-current", SLOW, "shared"))
                .isCloseTo(most, Percentage.withPercentage(0.1));
        assertThat(value(results, tank + "terminal-voltage", SLOW, "shared"))
                .isCloseTo(2 * most, Percentage.withPercentage(0.1));
        assertThat(most).isLessThan(value(results, tank + "short-circuit-current", SLOW, "shared"));
    }

    /** A contact that stands open at one end keeps the current away: the whole open voltage stands there. */
    @Test
    void openContactTakesTheVoltage() {
        StudyResults results = study(
                "shared",
                "{name: trip, tank-end: coil, cubicle-end: contact, tank-impedance: {resistance: 40 ohm, inductance: 0.1 H}}");
        assertThat(value(results, END + "terminal-voltage", SLOW, "shared"))
                .isCloseTo(value(results, END + "open-voltage", SLOW, "shared"), Percentage.withPercentage(1));
        assertThat(value(results, "surge.cable-end.trip.tank.terminal-voltage", SLOW, "shared"))
                .isLessThan(0.01 * value(results, END + "open-voltage", SLOW, "shared"));
    }

    /**
     * The leads of a protector by the formula of every textbook for go and return, (µ0/π) l ln(d/r), within the ends it
     * leaves out (here 4 %), and about 1 µH/m where they run apart (IEC 62305-4, from memory; 6 mm²).
     */
    @Test
    void inductanceOfTheLeads() {
        double radius = Math.sqrt(6e-6 / Math.PI);
        assertThat(CoreProtector.leadInductance(1, 0.02))
                .isCloseTo(4e-7 * 0.5 * Math.log(0.02 / radius), Percentage.withPercentage(4));
        assertThat(CoreProtector.leadInductance(0.5, Double.POSITIVE_INFINITY)).isBetween(0.9e-6 * 0.5, 1.3e-6 * 0.5);
    }

    /** With leads of 0.5 m apart: their inductance adds to the loop, their voltage to what reaches the port. */
    @Test
    void leadsOfTheProtector() {
        StudyResults results = study("shared", protector(", kind: clamping, lead-length: 0.5 m"));
        // Rosa 1908, filament at radius: 0.2 uH/m (l asinh(l/r) - sqrt(l^2 + r^2) + r).
        double r = Math.sqrt(6e-6 / Math.PI);
        double q = 0.5 / r;
        double leads = 2e-7 * (0.5 * Math.log(q + Math.sqrt(q * q + 1)) - Math.sqrt(0.25 + r * r) + r);
        double current = 0;
        double most = 0;
        double inductive = 0;
        double step = 1e-9;
        for (double t = 0; t < 30e-6; t += step) {
            double drop = current <= 1
                    ? current * 400
                    : 600 * 0.84 * Math.pow(current / 1e3, Math.log(0.94 / 0.84) / Math.log(5));
            double rate = (emf(t) - RING * current - drop) / (LOOP + leads);
            current = Math.max(0, current + step * rate);
            most = Math.max(most, drop + leads * rate);
            inductive = Math.max(inductive, Math.abs(leads * rate));
        }
        assertThat(value(results, END + "let-through", SLOW, "shared")).isCloseTo(most, Percentage.withPercentage(0.5));
        assertThat(value(results, END + "protector-lead-voltage", SLOW, "shared"))
                .isCloseTo(inductive, Percentage.withPercentage(1));
        assertThat(study("shared", protector("")).of(END + "protector-lead-voltage"))
                .isEmpty();
    }

    @Property(tries = 8, seed = "20261125")
    void longerLeadsLetMoreThrough(@ForAll @DoubleRange(min = 0.1, max = 1) double length) {
        StudyResults shorter = study("shared", protector(", lead-length: " + length + " m"));
        StudyResults longer = study("shared", protector(", lead-length: " + 1.5 * length + " m"));
        StudyResults together =
                study("shared", protector(", lead-spacing: 10 mm, lead-length: " + 1.5 * length + " m"));
        String id = END + "let-through";
        assertThat(value(longer, id, FAST, "shared")).isGreaterThan(value(shorter, id, FAST, "shared"));
        assertThat(value(together, id, FAST, "shared")).isLessThan(value(longer, id, FAST, "shared"));
    }

    /** A protector that fires lets its level through, no more, and then hinders the current hardly at all. */
    @Test
    void switchingProtectorLetsItsLevelThrough() {
        StudyResults results = study("shared", protector(", kind: switching"));
        assertThat(value(results, END + "let-through", SLOW, "shared")).isCloseTo(600, within(0.1));
        double shorted = value(results, END + "short-circuit-current", SLOW, "shared");
        assertThat(value(results, END + "protector-current", SLOW, "shared")).isBetween(0.95 * shorted, shorted);
    }

    /** Two protectors in one loop share its voltage and carry one current. */
    @Test
    void bothEndsProtected() {
        StudyResults results = study(
                "shared",
                "{name: trip, tank-end: protector, cubicle-end: protector, tank-protector: {level: 400 V, current: 10 kA},"
                        + " cubicle-protector: {level: 600 V, current: 10 kA}}");
        String tank = "surge.cable-end.trip.tank.";
        assertThat(value(results, tank + "protector-current", SLOW, "shared"))
                .isCloseTo(value(results, END + "protector-current", SLOW, "shared"), Percentage.withPercentage(1e-6));
        assertThat(value(results, tank + "let-through", SLOW, "shared"))
                .isCloseTo(
                        value(results, END + "let-through", SLOW, "shared") * 400 / 600,
                        Percentage.withPercentage(0.1));
        assertThat(value(results, END + "protector-energy", SLOW, "shared"))
                .isGreaterThan(value(results, tank + "protector-energy", SLOW, "shared"));
    }

    @Test
    void anEndWithoutProtectorHasNoLetThrough() {
        StudyResults results = study("shared", protector(""));
        assertThat(results.of("surge.cable-end.trip.tank.let-through")).isEmpty();
        assertThat(results.of(END + "let-through")).isNotEmpty();
    }

    @Property(tries = 8, seed = "20261125")
    void moreLevelLessCurrentMoreLetThrough(@ForAll @DoubleRange(min = 300, max = 1500) double level) {
        StudyResults low = study("shared", protector("").replace("600 V", level + " V"));
        StudyResults high = study("shared", protector("").replace("600 V", 1.3 * level + " V"));
        assertThat(value(high, END + "protector-current", SLOW, "shared"))
                .isLessThan(value(low, END + "protector-current", SLOW, "shared"));
        assertThat(value(high, END + "let-through", SLOW, "shared"))
                .isGreaterThan(value(low, END + "let-through", SLOW, "shared"));
    }

    /** Two cores in one cable enclose almost the same flux: little voltage between them, half the current each. */
    @Test
    void coreToCore() {
        StudyResults results = study("shared", protector(""));
        String pair = "surge.cable-end.core-to-core.cubicle.";
        double between = value(results, pair + "open-voltage", SLOW, "shared");
        assertThat(between).isPositive().isLessThan(0.3 * value(results, END + "open-voltage", SLOW, "shared"));
        double shorted = value(results, END + "short-circuit-current", SLOW, "shared");
        assertThat(value(results, pair + "short-circuit-current", SLOW, "shared"))
                .isBetween(0.5 * shorted, 0.75 * shorted);
    }

    /** On the fast front 0.2 m of air (100 kV) strikes; the wave meets the strength when M dI/dt does. */
    @Test
    void theGapStrikesWhenTheProspectiveVoltageReachesItsStrength() {
        StudyResults results = study("shared", protector(""));
        assertThat(value(results, "surge.gap.lead-cable.strength", FAST, "shared"))
                .isCloseTo(100e3, within(1e-6));
        assertThat(value(results, "surge.gap.lead-cable.voltage", FAST, "shared"))
                .isGreaterThan(100e3);
        assertThat(value(results, "surge.flashover.lead-cable.voltage", FAST, "shared"))
                .isCloseTo(100e3, Percentage.withPercentage(1e-4));
        double time = value(results, "surge.flashover.lead-cable.time", FAST, "shared");
        // Heidler front of 0.25/100 (IEC 62305-1 table B.1): I = 10 kA / 0.993, T1 = 0.454 us, n = 10.
        double flux = 8.059748e-6 + 0.572328e-6 - 3.752880e-6 - 0.553251e-6;
        double x = Math.pow(time / 0.454e-6, 10);
        double slope =
                10e3 / 0.993 * (10 / time * x / ((1 + x) * (1 + x)) - x / (1 + x) / 143e-6) * Math.exp(-time / 143e-6);
        assertThat(flux * slope).isCloseTo(100e3, Percentage.withPercentage(0.5));
        assertThat(value(results, "surge.flashover.cable-end.open-voltage", FAST, "shared"))
                .isLessThan(value(results, END + "open-voltage", FAST, "shared"));
        assertThat(value(results, "surge.flashover.gap-lead-cable.current.peak", FAST, "shared"))
                .isGreaterThan(1000);
        assertThat(results.under("surge.flashover.")
                        .filter(r -> r.circumstances().within(SLOW.with("arrangement", "shared"))))
                .isEmpty();
    }

    /** What lies above the first flashover is called prospective, what does not is not. */
    @Test
    void prospectiveIsSaid() {
        StudyResults results = study("shared", protector(""));
        Case shared = Case.NONE.with("arrangement", "shared").with("screen-bond", "none");
        assertThat(results.one(END + "open-voltage", shared.with("wave", "0.25/100"), "nominal")
                        .orElseThrow()
                        .model())
                .contains("prospective");
        assertThat(results.one(END + "open-voltage", shared.with("wave", "8/20"), "nominal")
                        .orElseThrow()
                        .model())
                .doesNotContain("prospective");
    }

    /** A cubicle that leads nothing on: no current along the screen, nothing at the cable end, and both exactly so. */
    @Test
    void unearthedWithTheScreenAtBothEndsIsNoVoltageAndNoCurrent() {
        StudyResults results = SurgeStudy.of(DeckSite.of("100 ohm.m", "shared", "both"), new EarthCache());
        Case unearthed = SLOW.with("arrangement", "unearthed").with("screen-bond", "both");
        for (String id : new String[] {
            END + "open-voltage", END + "short-circuit-current", END + "charge", "surge.screen.current.peak"
        }) {
            assertThat(results.one(id, unearthed, "nominal").orElseThrow().value())
                    .as(id)
                    .isZero();
        }
    }

    /** A broken lead sends the whole current along the screen; without a screen through whatever the core ends on. */
    @Test
    void brokenPathsUnderSurge() {
        StudyResults screened = SurgeStudy.of(DeckSite.of("100 ohm.m", "shared", "both"), new EarthCache());
        Case broken = SLOW.with("broken", "upper lead");
        assertThat(screened.one("surge.screen.share", broken, "nominal")
                        .orElseThrow()
                        .value())
                .isCloseTo(1, Percentage.withPercentage(0.1));
        StudyResults bare = SurgeStudy.of(DeckSite.of("100 ohm.m", "shared", "none"), new EarthCache());
        assertThat(bare.one(END + "short-circuit-current", broken, "nominal")
                        .orElseThrow()
                        .value())
                .isCloseTo(10e3, Percentage.withPercentage(0.1));
        assertThat(bare.one(END + "open-voltage", broken, "nominal")).isEmpty();
        assertThat(bare.gaps())
                .anyMatch(g -> g.circumstances().within(broken) && g.reason().contains("flash over"));
        // The tee carries nothing while the cores are open; without it and without capacitances the cubicle floats.
        assertThat(bare.gaps())
                .anyMatch(g -> g.circumstances().within(SLOW.with("broken", "tee"))
                        && g.missingKeys().contains("cubicle.capacitance-to-earth"));
        // With no way to earth at all nothing is computed, not even a current.
        assertThat(bare.results()).noneMatch(r -> r.circumstances().within(SLOW.with("broken", "lower lead")));
    }

    /** With its capacitances given, an unearthed cubicle has a voltage; it follows their divider. */
    @Test
    void unearthedCubicleFollowsItsCapacitances() {
        String text = DeckSite.text("100 ohm.m", "unearthed", "none")
                .replace(
                        "own-lead-offset: 0.3 m",
                        "own-lead-offset: 0.3 m, capacitance-to-earth: 90 pF," + " capacitance-to-cable: 410 pF");
        StudyResults results = SurgeStudy.of(DeckSite.read(text), new EarthCache());
        double cubicle = value(results, "surge.cubicle.peak", SLOW, "unearthed");
        double tank = value(results, "surge.tank.peak", SLOW, "unearthed");
        // The core carries the tank's potential less what the lead's flux induces along it.
        assertThat(cubicle / tank).isBetween(0.6, 0.82);
        assertThat(value(results, END + "open-voltage", SLOW, "unearthed"))
                .isCloseTo(cubicle * 90 / 410, Percentage.withPercentage(1));
    }

    /** An isolation that hides a second path is broken too: the feeder's screen then carries its share. */
    @Test
    void hiddenPaths() {
        String text = DeckSite.text("100 ohm.m", "shared", "none")
                + "antenna: {height: 10 m, feeder-separation: 0.3 m, suppressor: bulkhead, bracket-bonded-to-main-earth: no}\n"
                + "auxiliary-supply: {kind: lv-network, earth-reference: isolated}\n";
        StudyResults results = SurgeStudy.of(DeckSite.read(text), new EarthCache());
        double plain = value(results, END + "open-voltage", SLOW, "shared");
        double antenna = results.one(END + "open-voltage", SLOW.with("broken", SurgeBreaks.ANTENNA), "nominal")
                .orElseThrow()
                .value();
        assertThat(antenna).isBetween(0.2 * plain, 0.9 * plain);
        double tank = value(results, "surge.tank.peak", SLOW, "shared");
        double supplied = results.one("surge.tank.peak", SLOW.with("broken", SurgeBreaks.SUPPLY), "nominal")
                .orElseThrow()
                .value();
        assertThat(supplied).isLessThan(0.5 * tank);
    }

    /** With the lower lead gone only the line's neutral is left: the pole rises until the wood below the cubicle strikes. */
    @Test
    void theWoodBelowTheCubicleStrikes() {
        StudyResults results = SurgeStudy.of(DemoSite.read("cobblers-mere-neutral.yaml"), new EarthCache());
        Case broken = SLOW.with("broken", "lower lead");
        double strength = 9 * 0.3048 * 330e3;
        assertThat(results.one("surge.gap.cubicle-ground.voltage", broken, "nominal")
                        .orElseThrow()
                        .value())
                .isGreaterThan(2 * strength);
        assertThat(results.one("surge.flashover.cubicle-ground.voltage", broken, "nominal")
                        .orElseThrow()
                        .value())
                .isCloseTo(strength, Percentage.withPercentage(1e-3));
    }
}
