package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import earthing.site.SiteRewrite;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;

/**
 * No input inside low…high is worse than the reported governing point: the bounded inputs of a site are drawn at random,
 * each within its range, and the site of those exact values is studied as if it were known.
 */
class GoverningPointTest {

    private static final double ROUNDING = 1e-6;
    /** Where the permissible voltage rises with the resistivity of the surface, soils between the bounds are a grid. */
    private static final double GRID = 1e-2;

    private static final int DRAWS = 12;

    static final Map<String, String> NEUTRALS = neutrals();

    private static Map<String, String> neutrals() {
        Map<String, String> neutrals = new LinkedHashMap<>();
        String single = "earth-fault-current: {low: 0.9 kA, nominal: 1.6 kA, high: 2.4 kA}\n  ";
        neutrals.put(
                "solid",
                single + "neutral: {method: solid, station-earth-resistance: {low: 0.1 ohm, nominal: 0.4 ohm, high: 1"
                        + " ohm}}");
        neutrals.put(
                "resistor", "neutral: {method: resistor, resistance: {low: 10 ohm, nominal: 20 ohm, high: 40 ohm}}");
        neutrals.put("reactor", "neutral: {method: reactor, reactance: {low: 6 ohm, nominal: 12 ohm, high: 20 ohm}}");
        neutrals.put(
                "resonant",
                "neutral: {method: resonant, capacitive-current: {low: 60 A, nominal: 110 A, high: 140 A},"
                        + " residual-current: {low: 6 A, nominal: 12 A, high: 20 A}}");
        neutrals.put(
                "isolated", "neutral: {method: isolated, capacitive-current: {low: 20 A, nominal: 35 A, high: 60 A}}");
        neutrals.put("multi-earthed", single + """
                neutral:
                    method: multi-earthed
                    station-earth-resistance: {low: 0.2 ohm, nominal: 0.5 ohm, high: 1 ohm}
                    conductor:
                      spans-to-source: 60
                      spans-beyond: 20
                      span: 60 m
                      earthed-every: 4
                      pole-earth-resistance: {low: 15 ohm, nominal: 30 ohm, high: 80 ohm}
                      impedance: 0.5 ohm/km
                      reactance: 0.75 ohm/km
                      mutual-resistance: 0.05 ohm/km
                      mutual-reactance: 0.4 ohm/km
                      bonded-to-main-earth: yes
                      bond-height: 8 m""");
        neutrals.put(
                "neutral and shield wire",
                neutrals.get("multi-earthed")
                        + "\n  shield-wire: {spans-to-source: 60, spans-beyond: 3, span: 60 m, impedance: 1.1 ohm/km,"
                        + " reactance: 0.8 ohm/km, mutual-resistance: 0.05 ohm/km, mutual-reactance: 0.36 ohm/km,"
                        + " bonded-to-main-earth: yes, bond-height: 10 m}\n  return-wires: {bonded: yes,"
                        + " mutual-resistance: 0.05 ohm/km, mutual-reactance: 0.33 ohm/km}");
        return neutrals;
    }

    static final List<String> PROTECTIONS = List.of(
            "relay: {pickup: {low: 15 A, nominal: 20 A, high: 25 A}, curve: definite-time, delay: {low: 0.2 s, nominal: 0.3"
                    + " s, high: 0.5 s}, breaker-time: {low: 50 ms, nominal: 60 ms, high: 100 ms}}",
            "relay: {pickup: 30 A, curve: iec-normal-inverse, time-multiplier: \"0.1\", breaker-time: 60 ms}\n  reclose:"
                    + " {dead-times: [0.4 s, 12 s], fast-shots: 1, fast-time: 0.1 s}",
            "relay: {pickup: 40 A, curve: iec-very-inverse, time-multiplier: \"0.2\", breaker-time: 60 ms}\n  reclose:"
                    + " {dead-times: [{low: 0.3 s, nominal: 0.6 s, high: 1 s}]}",
            "relay: {pickup: 60 A, curve: iec-extremely-inverse, time-multiplier: \"0.5\", breaker-time: 60 ms}",
            "relay: {pickup: 50 A, curve: ieee-moderately-inverse, time-multiplier: \"2\"}",
            "relay: {pickup: 30 A, curve: iec-very-inverse, time-multiplier: \"1\", breaker-time: 60 ms}\n  fuse: {points:"
                    + " [{current: 40 A, time: 20 s}, {current: 300 A, time: 0.4 s}, {current: 2 kA, time: 20 ms}]}\n"
                    + "  reclose: {dead-times: [0.4 s, 12 s], fast-shots: 2, fast-time: 0.1 s}",
            "relay: {pickup: 30 A, curve: definite-time, delay: 0.2 s, breaker-time: 60 ms}\n  back-up: {pickup: 35 A,"
                    + " curve: iec-very-inverse, time-multiplier: \"0.3\", breaker-time: 60 ms}\n  back-up-for:"
                    + " heating-and-touch");

    static final List<String> SOILS = List.of(
            "resistivity: {low: 30 ohm.m, nominal: 120 ohm.m, high: 900 ohm.m}",
            "layers: [{resistivity: {low: 60 ohm.m, nominal: 150 ohm.m, high: 500 ohm.m}, thickness: 1.5 m}, {resistivity:"
                    + " {low: 20 ohm.m, nominal: 60 ohm.m, high: 300 ohm.m}}]\n  season: {depth: 0.6 m, factor: \"3\"}");

    private static final String TEXT = """
            file-version: 1
            site: {name: governing point, stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              three-phase-fault-current: {low: 2.5 kA, nominal: 4 kA, high: 6 kA}
              x-over-r: {low: "3", nominal: "8", high: "15"}
              fault-resistance: {low: 0 ohm, nominal: 2 ohm, high: 15 ohm}
              %s
            protection:
              %s
            soil:
              %s
            tank: {height: 9 m}
            pole: {material: wood, height: 10.5 m, diameter: 0.26 m}
            main-earth:
              conductor: {material: copper, area: {low: 23 mm2, nominal: 25 mm2, high: 26 mm2}}
              electrode: main
            electrodes:
              - {name: main, rod: {length: 3 m, diameter: 16 mm, top-depth: 0.2 m}}
              - {name: own, at: {x: 4 m, y: 0 m}, rod: {length: 1.5 m, diameter: 16 mm, top-depth: 0.2 m}}
            cubicle: {height: 3 m, earth: %s, tee-length: 0.3 m%s, reach: {low: 0.8 m, nominal: 1 m, high: 1.1 m}}
            control-cable: {separation: 0.2 m, screen: {bond: both, area: 4 mm2}, insulation-level: 2 kV}
            arresters: {phases: 3, side: both, continuous-voltage: 19 kV, temporary-overvoltage: 24 kV,
              temporary-overvoltage-time: 10 s, residual-voltage: 75 kV, earthed-at: tank}
            criteria:
              touch: %s
              footwear-resistance: {low: 0 ohm, nominal: 500 ohm, high: 2 kohm}
              initial-temperature: {low: 20 degC, nominal: 30 degC, high: 45 degC}
              final-temperature: {low: 180 degC, nominal: 200 degC, high: 250 degC}
            """;

    /** Worst number of each kind over the cases of the site as it is; larger is worse. */
    static Map<String, Double> worst(Site site) {
        StudyResults results = PowerStudy.of(site, new EarthCache());
        Map<String, Double> worst = new LinkedHashMap<>();
        String arrangement = Arrangement.of(
                        Objects.requireNonNull(site.cubicle()).earth())
                .orElseThrow()
                .word();
        List<Result> own = results.results().stream()
                .filter(r -> r.circumstances()
                                .keys()
                                .getOrDefault("arrangement", arrangement)
                                .equals(arrangement)
                        && !r.circumstances().keys().containsKey("broken")
                        && !r.circumstances().keys().containsKey("screen-bond"))
                .toList();
        for (Result r : own) {
            if (r.id().startsWith("epr.") || r.id().equals("cable.power-frequency.voltage")) {
                worst.merge(r.id(), r.value(), Math::max);
            } else if (r.id().equals(ArresterDuty.TEMPORARY)) {
                limit(own, r, "", ".rating").ifPresent(bears -> worst.merge(r.id(), r.value() / bears, Math::max));
            } else if (r.id().endsWith(".detection-ratio")) {
                worst.merge("detection", -r.value(), Math::max);
            } else if (r.id().startsWith("touch.") && r.id().endsWith(".voltage")) {
                limit(own, r, ".voltage", ".permissible")
                        .ifPresent(limit -> worst.merge(name(r), r.value() / limit, Math::max));
            } else if (r.id().endsWith(".final-temperature")) {
                limit(own, r, ".final-temperature", ".temperature-limit")
                        .ifPresent(limit -> worst.merge(name(r), r.value() - limit, Math::max));
            }
        }
        boolean never = results.gaps().stream()
                .anyMatch(g -> g.reason().startsWith("never")
                        && !g.circumstances().keys().containsKey("broken"));
        worst.put("never cleared", never ? 1.0 : 0.0);
        return worst;
    }

    /** What the protection and what its back-up leaves are governed each by points of its own. */
    private static String name(Result r) {
        return r.id() + (r.circumstances().keys().containsKey(Case.PROTECTION) ? ", back-up" : "");
    }

    private static java.util.Optional<Double> limit(List<Result> own, Result value, String end, String otherEnd) {
        String id = value.id().substring(0, value.id().length() - end.length()) + otherEnd;
        return own.stream()
                .filter(r -> r.id().equals(id)
                        && r.at().equals(value.at())
                        && r.circumstances().equals(value.circumstances()))
                .map(Result::value)
                .findFirst();
    }

    static Measure drawn(Measure measure, Random random) {
        double low = measure.at(Bound.LOW);
        double high = measure.at(Bound.HIGH);
        double at = switch (random.nextInt(6)) {
            case 0 -> 0;
            case 1 -> 1;
            default -> random.nextDouble();
        };
        double value = low > 0 ? low * Math.pow(high / low, at) : low + (high - low) * at;
        return Measure.of(measure.dimension(), Math.min(high, Math.max(low, value)));
    }

    @Provide
    Arbitrary<String> neutralMethods() {
        return Arbitraries.of(NEUTRALS.keySet());
    }

    @Provide
    Arbitrary<String> protections() {
        return Arbitraries.of(PROTECTIONS);
    }

    @Provide
    Arbitrary<String> soils() {
        return Arbitraries.of(SOILS);
    }

    static Site site(String neutral, String protection, String soil, String earth, String touch) {
        return DemoSite.parse(TEXT.formatted(
                NEUTRALS.get(neutral),
                protection,
                soil,
                earth,
                earth.equals("shared") ? "" : ", electrode: own",
                touch));
    }

    @Property(seed = "20261125", tries = 26, shrinking = ShrinkingMode.OFF)
    void noInputWithinItsBoundsIsWorseThanTheGoverningPoint(
            @ForAll("neutralMethods") String neutral,
            @ForAll("protections") String protection,
            @ForAll("soils") String soil,
            @ForAll boolean separate,
            @ForAll boolean american,
            @ForAll long seed) {
        Site site = site(
                neutral,
                protection,
                soil,
                separate ? "separate" : "shared",
                american ? "ieee-80-50kg" : "en-50522-2022");
        Map<String, Double> reported = worst(site);
        assertThat(reported).containsKeys("epr.tank", "cable.power-frequency.voltage", "never cleared");
        Random random = new Random(seed);
        for (int i = 0; i < DRAWS; i++) {
            Map<String, Double> inside = worst(SiteRewrite.of(site, (path, m) -> m.hasSpread() ? drawn(m, random) : m));
            inside.forEach((id, value) -> {
                if (!reported.containsKey(id)) {
                    assertThat(reported)
                            .as(id + " is answered in full or told as a gap")
                            .containsEntry("never cleared", 1.0);
                    return;
                }
                double bound = reported.get(id);
                assertThat(value)
                        .as(id + " of " + neutral + ", " + protection)
                        .isLessThanOrEqualTo(bound + (american ? GRID : ROUNDING) * Math.abs(bound));
            });
        }
    }
}
