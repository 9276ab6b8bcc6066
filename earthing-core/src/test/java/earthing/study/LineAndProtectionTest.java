package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.fault.EarthFault;
import earthing.fault.EarthFaultResult;
import earthing.fault.PoleEarth;
import earthing.fault.SingleWireEarthReturn;
import earthing.site.Site;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Shield wire, line from its conductors, single wire, fuse, sensitive stage and back-up of whole sites. */
class LineAndProtectionTest {

    private static final Case LARGEST = Case.NONE.with("fault", "maximum");

    private static final String SITE = """
            file-version: 1
            site: {name: line study, stage: design}
            system:
              voltage: %s
              highest-voltage: 24 kV
              frequency: %s
              earth-fault-current: 1 kA
              %s
            protection: {%s}
            soil: {resistivity: 100 ohm.m}
            tank: {height: 9 m}
            pole: {material: wood, height: 10.5 m, diameter: 0.26 m}
            main-earth: {conductor: {material: copper, area: 70 mm2}, offset: 0.15 m, guard-height: 2.6 m, guard-voltage: 50 kV, electrode: main}
            electrodes:
              - {name: main, resistance: 20 ohm}
            cubicle: {height: 3 m, earth: shared, tee-length: 0.3 m}
            """;

    private static final String SOLID =
            "three-phase-fault-current: 1 kA\n  neutral: {method: solid, station-earth-resistance: 1 ohm}";

    private static Site site(String voltage, String frequency, String network, String protection) {
        return DemoSite.parse(SITE.formatted(voltage, frequency, network, protection));
    }

    private static StudyResults faults(Site site) {
        return FaultStudy.of(site, new EarthCache()).results();
    }

    private static double value(StudyResults results, String id) {
        return results.one(id, LARGEST, "nominal").orElseThrow().value();
    }

    /** Kersting, Distribution System Modeling and Analysis, example 4.1: Z1 = 0.3061 + j0.6270 ohm/mi (from memory). */
    @Test
    void kerstingExample41FromTheSiteFile() {
        String wire = "{name: %s, use: %s, offset: %s ft, height: %s ft, resistance: %s ohm/mi, diameter: %s in,"
                + " geometric-mean-radius: %s ft}";
        String line = String.join(
                ", ",
                wire.formatted("a", "phase", "0", "29", "0.306", "0.721", "0.0244"),
                wire.formatted("b", "phase", "2.5", "29", "0.306", "0.721", "0.0244"),
                wire.formatted("c", "phase", "7", "29", "0.306", "0.721", "0.0244"),
                wire.formatted("n", "return", "4", "25", "0.592", "0.563", "0.00814"));
        StudyResults results = faults(site(
                "12.47 kV",
                "60 Hz",
                SOLID + "\n  source-line: {length: 1609.344 m, earth-resistivity: 100 ohm.m, conductors: [" + line
                        + "]}",
                "clearing-time: 0.2 s"));
        String carson = "line.carson-series.";
        double r1 = results.of(carson + "positive-sequence-resistance").get(0).value();
        double x1 = results.of(carson + "positive-sequence-reactance").get(0).value();
        // The print has the neutral reduced into the phases, which moves the positive sequence by a few 1e-4.
        assertThat(r1).isCloseTo(0.3061, within(0.0008));
        assertThat(x1).isCloseTo(0.6270, within(0.0012));
        // Neutral: 0.6873 + j1.5465 ohm/mi (problem 4.1 of the same book) with the first term of the series alone; the
        // next
        // one takes 0.6002 a of the earth's 0.0953 ohm/mi, a = 0.0332 at 25 ft, 60 Hz and 100 ohm.m.
        assertThat(results.of(carson + "return-wire-resistance").get(0).value())
                .isCloseTo(0.592 + 0.0953 * (1 - 0.6002 * 0.0332), within(0.0002));
        assertThat(results.of(carson + "return-wire-reactance").get(0).value()).isCloseTo(1.5465, within(0.005));
        // The two forms of the earth return differ in the earth's part, not in the positive sequence.
        assertThat(Math.abs(results.of("line.difference.positive-sequence-reactance")
                        .get(0)
                        .value()))
                .isLessThan(1e-4);
        assertThat(Math.abs(results.of("line.difference.zero-sequence-reactance")
                        .get(0)
                        .value()))
                .isBetween(1e-5, 0.02);
    }

    @Test
    void shieldWireTakesItsPartAndLeavesTheRestToTheElectrode() {
        StudyResults with = faults(DemoSite.read("thornby-shield-wire.yaml"));
        double total = value(with, "fault.maximum.current");
        double wire = value(with, "fault.maximum.shield-wire-current");
        double electrode = value(with, "fault.maximum.electrode-current");
        assertThat(wire).isBetween(0.5 * total, total * 1.05);
        assertThat(electrode).isEqualTo(value(with, "fault.maximum.pole-share") * total, within(0.01 * electrode));
        // As phasors the two add to the whole.
        assertThat(total).isBetween(Math.abs(wire - electrode), wire + electrode);
        assertThat(value(with, "epr.main"))
                .isLessThan(0.3
                                * with.one("epr.main", Case.NONE.with("fault", "shield-wire-broken"), "nominal")
                                        .orElseThrow()
                                        .value()
                        + value(with, "epr.main"));
        assertThat(with.curves()).anyMatch(c -> c.id().equals("fault.rise-along-the-wire"));
    }

    /** The single-wire loop as a network of one phase gives what Ohm's law of the loop gives. */
    @Property(seed = "20261125", tries = 100)
    void singleWireLoopIsOhmsLaw(
            @ForAll @DoubleRange(min = 1, max = 100) double electrode,
            @ForAll @DoubleRange(min = 0.5, max = 20) double sourceEarth,
            @ForAll @DoubleRange(min = 0, max = 500) double fault,
            @ForAll @DoubleRange(min = 1, max = 80) double reactance) {
        SingleWireEarthReturn wire = new SingleWireEarthReturn(
                12_700, new Complex(5, 20), new Complex(10, reactance), new Complex(sourceEarth, 0));
        SingleWireEarthReturn.Result byHand = wire.fault(new Complex(electrode, 0), fault);
        EarthFaultResult solved = EarthFault.solve(
                wire.system(50), PoleEarth.ofResistance("main", electrode), EarthFault.Kind.singlePhase(fault));
        assertThat(solved.totalCurrent().subtract(byHand.current()).abs())
                .isLessThan(1e-9 * byHand.current().abs());
        assertThat(solved.earthPotentialRise().abs())
                .isCloseTo(byHand.earthPotentialRise().abs(), Percentage.withPercentage(1e-7));
    }

    /** Hand calculation of docs/theory/fault.md: 12.7 kV, source 127 ohm at X/R = 0, wire 30 + j12 ohm, earths 2 and 20. */
    @Test
    void singleWireSiteByHand() {
        Site site = site(
                "12.7 kV",
                "50 Hz",
                "x-over-r: \"0\"\n  neutral: {method: single-wire-earth-return, station-earth-resistance: 2 ohm,"
                        + " earth-return-load: 3 A}\n"
                        + "  source-line: {length: 10 km, resistance: 3 ohm/km, reactance: 1.2 ohm/km}",
                "clearing-time: 0.2 s");
        StudyResults results = faults(site);
        double voltage = 1.1 * 12_700;
        double loop = Math.hypot(voltage / 1000 + 30 + 2 + 20, 12);
        assertThat(value(results, "fault.maximum.current")).isCloseTo(voltage / loop, Percentage.withPercentage(0.1));
        assertThat(value(results, "epr.main")).isCloseTo(20 * voltage / loop, Percentage.withPercentage(0.1));
        // 3 A of load through 20 ohm, all the time.
        assertThat(results.one("epr.main", Case.NONE.with("fault", FaultStudy.NORMAL_LOAD), "nominal")
                        .orElseThrow()
                        .value())
                .isCloseTo(60, within(0.1));
    }

    private static final String FUSE =
            "fuse: {points: [{current: 100 A, time: 10 s}, {current: 1 kA, time: 0.1 s}], breaking-current: 1 kA}";

    /** Between its points a fuse is straight on logarithmic axes: at 550 A of 100 A to 1 kA, 10 s to 0.1 s. */
    @Test
    void fuseIsReadLogLogAndNeverBelowItsCurve() {
        StudyResults results = faults(site("22 kV", "50 Hz", SOLID, FUSE));
        double current = value(results, "fault.maximum.current");
        assertThat(current).isBetween(300.0, 900.0);
        double expected = 10 * Math.pow(10, -2 * Math.log10(current / 100));
        assertThat(value(results, "fault.maximum.clearing-time")).isCloseTo(expected, Percentage.withPercentage(1e-6));
        StudyResults never = faults(site("22 kV", "50 Hz", SOLID + "\n  fault-resistance: 900 ohm", FUSE));
        assertThat(never.gaps())
                .anyMatch(g -> g.id().equals("fault.minimum.clearing-time")
                        && g.reason().startsWith("never")
                        && g.reason().contains("below where the fuse acts"));
    }

    /**
     * Fuse saving: two fast shots of the recloser, then the fuse of 550 A at the time of its curve, and the rest of the
     * sequence does not come. Above the current at which the fuse is faster than the fast shot it blows in the first one.
     */
    @Test
    void fastShotsSpareTheFuseAndItEndsTheSequence() {
        String scheme = FUSE.replace("breaking-current: 1 kA", "breaking-current: 8 kA")
                + ", relay: {pickup: 80 A, curve: definite-time, delay: 20 s, breaker-time: 0 s}"
                + ", reclose: {dead-times: [0.5 s, 2 s, 5 s], fast-shots: 2, fast-time: 0.15 s}";
        Site site = site("22 kV", "50 Hz", SOLID, scheme);
        FaultStudy.Outcome outcome = FaultStudy.of(site, new EarthCache());
        PowerCase largest = outcome.cases().stream()
                .filter(c ->
                        c.circumstances().equals(LARGEST.with("arrangement", "shared")) && c.at().equals("nominal"))
                .findFirst()
                .orElseThrow();
        double byCurve = 10 * Math.pow(10, -2 * Math.log10(largest.current() / 100));
        assertThat(largest.shots().stream().map(PowerCase.FaultShot::duration).toList())
                .hasSize(3)
                .startsWith(0.15, 0.15);
        assertThat(largest.shots().get(2).duration()).isCloseTo(byCurve, Percentage.withPercentage(1e-6));
        FaultClearing clearing = outcome.clearing().orElseThrow();
        assertThat(FaultClearing.shots(clearing.sequence().run(950))).hasSize(1);
        assertThat(FaultClearing.shots(clearing.sequence().run(90))).hasSize(4);
        double equal = 100 * Math.pow(10 / 0.15, 0.5);
        assertThat(clearing.sequence().breakpoints()).anyMatch(p -> Math.abs(p - equal) < 1e-6 * equal);
    }

    /** Neutral and shield wire from the site file give what the ladder of both gives, and each stands in the results. */
    @Test
    void neutralAndShieldWireTogether() {
        String network = "three-phase-fault-current: 1 kA\n"
                + "  neutral: {method: multi-earthed, station-earth-resistance: 1 ohm, conductor: {impedance: 0.5 ohm/km,"
                + " reactance: 0.8 ohm/km, mutual-resistance: 0.05 ohm/km, mutual-reactance: 0.4 ohm/km, span: 80 m,"
                + " pole-earth-resistance: 30 ohm, earthed-every: 3, spans-to-source: 20, spans-beyond: 4,"
                + " bonded-to-main-earth: yes, bond-height: 7 m}}\n"
                + "  shield-wire: {impedance: 0.9 ohm/km, reactance: 0.82 ohm/km, mutual-resistance: 0.05 ohm/km,"
                + " mutual-reactance: 0.36 ohm/km, span: 80 m, spans-to-source: 20, spans-beyond: 2,"
                + " pole-earth-resistance: 50 ohm, earthed-every: 4, bonded-to-main-earth: yes, bond-height: 10 m}\n"
                + "  return-wires: {bonded: no, mutual-resistance: 0.05 ohm/km, mutual-reactance: 0.33 ohm/km}";
        StudyResults both = faults(site("22 kV", "50 Hz", network, "clearing-time: 0.2 s"));
        assertThat(both.gaps()).allMatch(g -> g.id().equals("epr.cubicle"));
        double total = value(both, "fault.maximum.current");
        double neutral = value(both, "fault.maximum.line-neutral-current");
        double shield = value(both, "fault.maximum.shield-wire-current");
        assertThat(neutral).isBetween(0.2 * total, total);
        assertThat(shield).isBetween(0.1 * total, neutral);
        StudyResults alone = faults(site(
                "22 kV", "50 Hz", network.substring(0, network.indexOf("\n  shield-wire")), "clearing-time: 0.2 s"));
        assertThat(value(both, "epr.main")).isLessThan(value(alone, "epr.main"));
        for (String word : List.of("neutral-broken", "shield-wire-broken")) {
            assertThat(both.one("epr.main", Case.NONE.with("fault", word), "nominal")
                            .orElseThrow()
                            .value())
                    .isGreaterThan(value(both, "epr.main"));
        }
        assertThat(both.curves())
                .anyMatch(c ->
                        c.id().equals("fault.rise-along-the-wire") && c.traces().size() == 2);
        // Above both bonds the lead carries the whole current; between them it is what the shield wire left.
        FaultStudy.Outcome outcome =
                FaultStudy.of(site("22 kV", "50 Hz", network, "clearing-time: 0.2 s"), new EarthCache());
        PowerCase largest = outcome.cases().get(3);
        assertThat(largest.memberCurrents().get("upper lead")).isLessThan(0.9 * total);
        StudyResults unsaid = faults(site(
                "22 kV", "50 Hz", network.substring(0, network.indexOf("\n  return-wires")), "clearing-time: 0.2 s"));
        assertThat(unsaid.gaps()).anyMatch(g -> g.missingKeys().contains("system.return-wires.bonded"));
    }

    /**
     * Two phases on this tank: the bonds carry the phase-to-phase current √3·E/|Z1 + Z2|, which on an isolated network leaves
     * nothing but half the capacitive current for the electrode (IEC 60909-3, from memory). 1.1·22 kV, 1 kA of three-phase
     * level at 1.1: 12.7 kV·1.1/1 kA = 13.97 ohm each of Z1 and Z2, so 866 A.
     */
    @Test
    void twoPhasesOnOneTankLeaveTheEarthLeadAlone() {
        StudyResults results = faults(site(
                "22 kV",
                "50 Hz",
                "three-phase-fault-current: 1 kA\n  neutral: {method: isolated, capacitive-current: 20 A}",
                "clearing-time: 0.2 s")); // earth-fault-current of the template belongs to no isolated network
        Case tank = Case.NONE.with("fault", FaultStudy.TWO_PHASES);
        String id = "fault." + FaultStudy.TWO_PHASES + ".";
        Result bond = results.one(id + "bond-current", tank, "nominal").orElseThrow();
        assertThat(bond.handValue().orElseThrow()).isCloseTo(866, within(0.5));
        assertThat(bond.value()).isCloseTo(866, within(15.0));
        double earth =
                results.one(id + "earth-current", tank, "nominal").orElseThrow().value();
        double single = value(results, "fault.maximum.current");
        assertThat(earth).isCloseTo(single / 2, Percentage.withPercentage(3));
        double rise = results.one(
                        "fault." + FaultStudy.DOUBLE_FAULT + ".potential-rise",
                        Case.NONE.with("fault", FaultStudy.DOUBLE_FAULT),
                        "nominal")
                .orElseThrow()
                .value();
        // 24.2 kV over 27.9 ohm of reactance and 20 ohm of electrode, the other earth without resistance.
        assertThat(rise).isBetween(10_000.0, 24_200.0);
    }

    private static final String RELAY = "relay: {pickup: 100 A, curve: definite-time, delay: 0.1 s, breaker-time: 0 s}";

    @Test
    void sensitiveStageSeesWhatTheFirstStageDoesNot() {
        String weak = SOLID + "\n  fault-resistance: 900 ohm";
        assertThat(faults(site("22 kV", "50 Hz", weak, RELAY)).gaps())
                .anyMatch(g -> g.reason().startsWith("never"));
        StudyResults seen = faults(site(
                "22 kV",
                "50 Hz",
                weak,
                RELAY + ", sensitive: {pickup: 5 A, curve: definite-time, delay: 3 s, breaker-time: 0 s}"));
        assertThat(seen.gaps()).noneMatch(g -> g.reason().startsWith("never"));
        assertThat(value(seen, "fault.maximum.clearing-time")).isCloseTo(3, within(1e-9));
        assertThat(value(seen, "fault.maximum.detection-ratio"))
                .isCloseTo(value(seen, "fault.maximum.current") / 5, Percentage.withPercentage(1e-6));
    }

    private static Finding finding(Site site, String id) {
        List<Finding> findings = ComplianceRun.of(site, SiteStudy.of(site));
        return findings.stream().filter(f -> f.id().equals(id)).findFirst().orElseThrow();
    }

    @Test
    void backUpIsACaseOfItsOwnAndHeatsOnlyWhereTheFileSaysSo() {
        String backUp = RELAY + ", back-up: {pickup: %s, curve: definite-time, delay: 600 s, breaker-time: 0 s}";
        Site shown = site("22 kV", "50 Hz", SOLID, backUp.formatted("50 A"));
        String heating = "conductor.lower-lead.heating";
        Finding plain = finding(shown, heating);
        assertThat(finding(shown, "fault.back-up").status()).isEqualTo(Status.MET);
        Site judged = site("22 kV", "50 Hz", SOLID, backUp.formatted("50 A") + ", back-up-for: heating");
        Finding backed = finding(judged, heating);
        assertThat(backed.value().orElseThrow()).isGreaterThan(plain.value().orElseThrow() + 10);
        assertThat(backed.circumstances().keys()).containsEntry(Case.PROTECTION, Case.BACK_UP);
        Site blind = site("22 kV", "50 Hz", SOLID, backUp.formatted("5 kA"));
        assertThat(finding(blind, "fault.back-up").status()).isEqualTo(Status.NOT_MET);
        assertThat(finding(blind, "fault.detection").status()).isNotEqualTo(Status.NOT_MET);
    }

    /**
     * Just above its pickup a steep curve lets through more heat than at any large current; where the smallest current lies
     * below the pickup only a sweep through the back-up's own curve finds that point, 1.1 times the pickup.
     */
    @Test
    void backUpIsSweptThroughItsOwnCurve() {
        String spread = SOLID.replace("1 kA\n", "{low: 0.05 kA, nominal: 0.5 kA, high: 3 kA}\n");
        String file = SITE.formatted(
                        "22 kV",
                        "50 Hz",
                        spread,
                        RELAY.replace("100 A", "2 A")
                                + ", back-up: {pickup: 100 A, curve: ieee-extremely-inverse, time-multiplier: 20,"
                                + " breaker-time: 0 s}, back-up-for: heating")
                .replace(
                        "earth-fault-current: 1 kA", "earth-fault-current: {low: 0.04 kA, nominal: 0.5 kA, high: 3 kA}")
                .replace("resistance: 20 ohm", "resistance: 2 ohm");
        StudyResults results = PowerStudy.of(DemoSite.parse(file), new EarthCache());
        String id = "conductor.lower-lead.final-temperature";
        double atBounds = results.of(id).stream()
                .filter(r -> r.circumstances().keys().containsKey(Case.PROTECTION))
                .filter(r -> !r.at().startsWith("current="))
                .mapToDouble(Result::value)
                .max()
                .orElseThrow();
        List<Result> between = results.of(id).stream()
                .filter(r -> r.circumstances().keys().containsKey(Case.PROTECTION))
                .filter(r -> r.at().startsWith("current="))
                .toList();
        assertThat(between).isNotEmpty().anyMatch(r -> r.value() > atBounds && r.at().startsWith("current=110"));
    }

    /** Bounds of a length that no study sweeps are told, not passed over. */
    @Test
    void boundedLengthsAreToldToBeHeldAtTheirNominalValue() {
        String file = SITE.formatted("22 kV", "50 Hz", SOLID, "clearing-time: 0.2 s")
                .replace("tank: {height: 9 m}", "tank: {height: {low: 8.8 m, nominal: 9 m, high: 9.3 m}}");
        assertThat(PowerStudy.of(DemoSite.parse(file), new EarthCache()).notes())
                .anyMatch(n -> n.contains("nominal value") && n.contains("tank.height"));
        String exact = SITE.formatted("22 kV", "50 Hz", SOLID, "clearing-time: 0.2 s");
        assertThat(PowerStudy.of(DemoSite.parse(exact), new EarthCache()).notes())
                .noneMatch(n -> n.contains("nominal value"));
    }

    /** A mat under the feet, bonded to what the hand touches; off the mat the voltage is that of the ground around it. */
    @Test
    void matLowersTheVoltageOfWhoStandsOnItAndIsPartOfItsElectrode() {
        String text = DemoSite.text("ternhook-wood-shared.yaml");
        Site bare = DemoSite.parse(text);
        Site laid = DemoSite.parse(text.replace(
                "  reach: 1 m\n",
                "  reach: 1 m\n  operator-mat: {at: {x: 1.4 m, y: 0 m}, shape: {width: 1 m, length: 1 m, mesh: 0.25 m,"
                        + " diameter: 8 mm, depth: 0.05 m}}\n"));
        StudyResults without = PowerStudy.of(bare, new EarthCache());
        StudyResults with = PowerStudy.of(laid, new EarthCache());
        String touch = "touch.cubicle.voltage";
        double before = value(without, touch);
        double beside = value(with, "touch.cubicle.beside-the-mat");
        double on = value(with, touch);
        assertThat(on).isLessThan(0.5 * before).isLessThan(beside);
        assertThat(value(with, "epr.main")).isLessThan(value(without, "epr.main"));
        Finding finding = finding(laid, "touch.cubicle");
        assertThat(finding.reason()).contains("for nobody who reaches it from off the mat");
        // Unearthed, the mat leads nowhere and is not reckoned with.
        assertThat(with.of("touch.cubicle.beside-the-mat").stream()
                        .map(r -> r.circumstances().keys().get("arrangement")))
                .doesNotContain("unearthed");
    }

    /** A guard counts only as far as the voltage that it bears. */
    @Test
    void guardThatBearsLessThanThePotentialRiseIsNotCredited() {
        String text = DemoSite.text("ternhook-wood-shared.yaml");
        assertThat(PowerStudy.of(DemoSite.parse(text), new EarthCache()).of("touch.down-lead.voltage"))
                .isEmpty();
        Site weak = DemoSite.parse(text.replace("guard-voltage: 20 kV", "guard-voltage: 100 V"));
        StudyResults results = PowerStudy.of(weak, new EarthCache());
        assertThat(results.of("touch.down-lead.voltage")).isNotEmpty();
        assertThat(results.notes()).anyMatch(n -> n.contains("the guard of the main earth bears less"));
    }
}
