package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Values that each are possible and together are not. The second of two that say the same is told, the less of an order. */
final class ContradictionsTest {

    private static final String HEAD = """
            file-version: 1
            site: {name: Test, stage: design}
            """;

    private static final String SYSTEM = "system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}\n";

    private static final String CONDUCTOR = "conductor: {material: copper, area: 70 mm2}";

    private static Arguments system(String keys, String... found) {
        return Arguments.of("system: {frequency: 50 Hz, " + keys + "}\n", List.of(found));
    }

    private static Arguments of(String text, String... found) {
        return Arguments.of(SYSTEM + text + "\n", List.of(found));
    }

    private static final String AGAIN = ": this says again what ";
    private static final String STRAY = ": this key does not belong here";

    static Stream<Arguments> network() {
        return Stream.of(
                system("voltage: 22 kV, highest-voltage: 22 kV, neutral: {method: solid}"),
                system(
                        "voltage: 22 kV, highest-voltage: 21 kV, neutral: {method: solid}",
                        "system.voltage: \"22 kV\" is above system.highest-voltage \"21 kV\""),
                system("voltage: 22 kV, neutral: {method: resistor, resistance: 40 ohm}"),
                system(
                        "voltage: 22 kV, neutral: {method: resistor, reactance: 40 ohm, residual-current: 5 A}",
                        "system.neutral.reactance" + STRAY,
                        "system.neutral.residual-current" + STRAY),
                system("voltage: 22 kV, neutral: {method: unknown, reactance: 40 ohm}"),
                system("voltage: 22 kV, neutral: {method: resonant, residual-current: 5 A, capacitive-current: 60 A}"),
                system(
                        "voltage: 22 kV, neutral: {method: resonant, residual-current: 60 A, capacitive-current: 60 A}",
                        "system.neutral.residual-current: \"60 A\" is not below system.neutral.capacitive-current \"60 A\""),
                system(
                        "voltage: 19 kV, three-phase-fault-current: 900 A, neutral: {method: single-wire-earth-return}",
                        "system.three-phase-fault-current" + STRAY),
                system(
                        "voltage: 22 kV, return-wires: {bonded: yes}, neutral: {method: solid}",
                        "system.return-wires" + STRAY),
                of("protection: {clearing-time: 1 s}"),
                of(
                        "protection: {clearing-time: 1 s, fuse: {points: [{current: 20 A, time: 9 s}, {current: 90 A, time: 1 s}]}}",
                        "protection.fuse" + AGAIN + "protection.clearing-time says"),
                of(
                        "protection: {fuse: {points: [{current: 20 A, time: 9 s}]}}",
                        "protection.fuse: a curve has two or more points"),
                of(
                        "protection: {fuse: {points: [{current: 20 A, time: 1 s}, {current: 20 A, time: 9 s}]}}",
                        "protection.fuse.points[1].current: \"20 A\" is not below protection.fuse.points[2].current \"20 A\"",
                        "protection.fuse.points[2].time: \"9 s\" is above protection.fuse.points[1].time \"1 s\""),
                of(
                        "protection: {fuse: {points: [{current: 20 A, time: 9 s}, {current: 90 A, time: 1 s}], breaking-current: 80 A}}",
                        "protection.fuse.points[2].current: \"90 A\" is above protection.fuse.breaking-current \"80 A\""),
                of("protection: {relay: {curve: iec-normal-inverse, time-multiplier: 0.1, pickup: 50 A}}"),
                of(
                        "protection: {relay: {curve: iec-normal-inverse, delay: 1 s, pickup: 50 A}}",
                        "protection.relay.delay" + STRAY),
                of(
                        "protection: {relay: {curve: definite-time, delay: 1 s, pickup: 50 A}, reclose: {dead-times: [1 s], fast-shots: 2}}"),
                of(
                        "protection: {relay: {curve: definite-time, delay: 1 s, pickup: 50 A}, reclose: {dead-times: [1 s], fast-time: 0.1 s}}",
                        "protection.reclose.fast-time" + STRAY));
    }

    static Stream<Arguments> soil() {
        String layers = "layers: [{resistivity: 90 ohm.m, thickness: 2 m}, {resistivity: 30 ohm.m}]";
        String readings = "soundings: [{spacing: 1 m, resistance: 10 ohm}, {spacing: 2 m, resistance: 5 ohm},"
                + " {spacing: 4 m, resistance: 2 ohm}]";
        return Stream.of(
                of("soil: {" + layers + "}"),
                of("soil: {" + readings + "}"),
                of("soil: {resistivity: 90 ohm.m, " + layers + "}", "soil.layers" + AGAIN + "soil.resistivity says"),
                of("soil: {" + readings + ", " + layers + "}", "soil.layers" + AGAIN + "soil.soundings says"),
                of(
                        "soil: {" + readings + ", resistivity: 90 ohm.m}",
                        "soil.resistivity" + AGAIN + "soil.soundings says"),
                of(
                        "soil: {soundings: [{spacing: 1 m, resistance: 10 ohm}, {spacing: 2 m, resistance: 5 ohm}]}",
                        "soil.soundings: there are 2 readings"),
                of(
                        "soil: {resistivity: 90 ohm.m, frequency-dependence: {law: none, relative-permittivity: 0.9}}",
                        "soil.frequency-dependence.relative-permittivity: no matter has a permittivity below 1"),
                of("soil: {resistivity: 90 ohm.m, frequency-dependence: {law: none, relative-permittivity: 1}}"));
    }

    private static Arguments electrode(String shape, String... found) {
        return of("electrodes: [{name: main, " + shape + "}]", found);
    }

    static Stream<Arguments> electrodes() {
        String e = "electrodes[1].";
        return Stream.of(
                electrode("rod: {length: 2 m, diameter: 16 mm}, concrete: {resistivity: 60 ohm.m, diameter: 300 mm}"),
                electrode(
                        "rod: {length: 2 m, diameter: 16 mm}, concrete: {resistivity: 60 ohm.m, diameter: 16 mm}",
                        e + "rod.diameter: \"16 mm\" is not below " + e + "concrete.diameter \"16 mm\""),
                electrode(
                        "rod: {length: 2 m, diameter: 16 mm}, concrete: {resistivity: 60 ohm.m, diameter: 2 m}",
                        e + "concrete.diameter: \"2 m\" is not below " + e + "rod.length \"2 m\""),
                electrode(
                        "resistance: 20 ohm, concrete: {resistivity: 60 ohm.m, diameter: 300 mm}",
                        e + "concrete" + STRAY),
                electrode(
                        "ring: {radius: 8 mm, diameter: 8 mm, depth: 0.5 m}",
                        e + "ring.diameter: \"8 mm\" is not below " + e + "ring.radius \"8 mm\""),
                electrode("mat: {width: 1 m, length: 1 m, mesh: 1 m, diameter: 8 mm, depth: 0.3 m}"),
                electrode(
                        "mat: {width: 1 m, length: 0.4 m, mesh: 1.1 m, diameter: 1.2 m, depth: 1 m}",
                        e + "mat.mesh: \"1.1 m\" is above " + e + "mat.width \"1 m\"",
                        e + "mat.mesh: \"1.1 m\" is above " + e + "mat.length \"0.4 m\"",
                        e + "mat.diameter: \"1.2 m\" is not below " + e + "mat.mesh \"1.1 m\""),
                electrode(
                        "rods-in-line: {count: 3, spacing: 16 mm, length: 2 m, diameter: 16 mm}",
                        e + "rods-in-line.diameter: \"16 mm\" is not below " + e + "rods-in-line.spacing \"16 mm\""),
                electrode(
                        "rods-in-ring: {count: 3, radius: 16 mm, length: 2 m, diameter: 16 mm}",
                        e + "rods-in-ring.diameter: \"16 mm\" is not below " + e + "rods-in-ring.radius \"16 mm\""));
    }

    static Stream<Arguments> pole() {
        return Stream.of(
                of("pole: {material: wood, height: 9 m}\ntank: {height: 9 m}\ncubicle: {height: 8.9 m, earth: shared}"),
                of(
                        "tank: {height: 9 m}\ncubicle: {height: 9 m, earth: shared}",
                        "cubicle.height: \"9 m\" is not below tank.height \"9 m\""),
                of(
                        "pole: {material: wood, height: 9 m}\ncubicle: {height: 9 m, earth: shared}",
                        "cubicle.height: \"9 m\" is not below pole.height \"9 m\""),
                of(
                        "tank: {height: 9 m, handle-height: 9 m}",
                        "tank.handle-height: \"9 m\" is not below tank.height \"9 m\""),
                of("tank: {height: 9 m, handle-bonded: yes}", "tank.handle-bonded" + STRAY),
                of("tank: {height: 9 m}\nmain-earth: {" + CONDUCTOR + ", guard-height: 9 m}"),
                of(
                        "tank: {height: 9 m}\nmain-earth: {" + CONDUCTOR + ", guard-height: 10 m}",
                        "main-earth.guard-height: \"10 m\" is above tank.height \"9 m\""),
                of(
                        "arresters: {phases: 3, side: both, earthed-at: tank, continuous-voltage: 19 kV, rated-voltage: 24 kV,"
                                + " residual-voltage: 64 kV, steep-residual-voltage: 64 kV}"),
                of(
                        "arresters: {phases: 3, side: both, earthed-at: tank, continuous-voltage: 24 kV, rated-voltage: 24 kV,"
                                + " residual-voltage: 24 kV, steep-residual-voltage: 23 kV}",
                        "arresters.continuous-voltage: \"24 kV\" is not below arresters.rated-voltage \"24 kV\"",
                        "arresters.rated-voltage: \"24 kV\" is not below arresters.residual-voltage \"24 kV\"",
                        "arresters.residual-voltage: \"24 kV\" is above arresters.steep-residual-voltage \"23 kV\""),
                of(
                        "arresters: {phases: 3, side: both, earthed-at: tank, residual-curve: [{current: 10 kA, voltage: 64 kV},"
                                + " {current: 10 kA, voltage: 63 kV}]}",
                        "arresters.residual-curve[1].current: \"10 kA\" is not below arresters.residual-curve[2].current \"10 kA\"",
                        "arresters.residual-curve[1].voltage: \"64 kV\" is above arresters.residual-curve[2].voltage \"63 kV\""),
                of(
                        "arresters: {phases: 3, side: both, earthed-at: tank, temporary-overvoltage-time: 10 s}",
                        "arresters.temporary-overvoltage-time" + STRAY));
    }

    static Stream<Arguments> uncertainty() {
        String bounded = """
                soil:
                  layers:
                    - {resistivity: {low: 50 ohm.m, nominal: 90 ohm.m, high: 150 ohm.m}, thickness: 2 m}
                    - {resistivity: {low: 20 ohm.m, nominal: 30 ohm.m, high: 40 ohm.m}}
                electrodes: [{name: main, resistance: {low: 5 ohm, nominal: 9 ohm, high: 20 ohm}}]
                """;
        String upper = "soil.layers[1].resistivity";
        String lower = "soil.layers[2].resistivity";
        String named = "\"electrodes[main].resistance\"";
        String distributions = bounded + "uncertainty: {distributions: [%s]}";
        String correlations = bounded + "uncertainty: {correlations: [%s]}";
        return Stream.of(
                of(distributions.formatted("{key: \"" + upper + "\", shape: lognormal, share: 90 %}, {key: " + named
                        + ", shape: uniform}")),
                of(
                        distributions.formatted("{key: \"" + upper + "\", shape: uniform, share: 90 %}"),
                        "uncertainty.distributions[1].share" + STRAY),
                of(
                        distributions.formatted("{key: \"" + upper + "\", shape: normal, share: 100 %}"),
                        "uncertainty.distributions[1].share: no part is as large as the whole"),
                of(
                        distributions.formatted("{key: " + named
                                + ", shape: uniform}, {key: \"electrodes[1].resistance\", shape: uniform}"),
                        "uncertainty.distributions[2].key: this input has a distribution already"),
                of(
                        distributions.formatted("{key: \"soil.layers[1].thickness\", shape: uniform}"),
                        "uncertainty.distributions[1].key: \"soil.layers[1].thickness\" has no low and high"),
                of(
                        distributions.formatted("{key: \"soil.layers[3].resistivity\", shape: uniform}"),
                        "uncertainty.distributions[1].key: there is no key \"soil.layers[3].resistivity\" in this file"),
                of(
                        distributions.formatted("{key: \"electrodes[cubicle].resistance\", shape: uniform}"),
                        "uncertainty.distributions[1].key: there is no key \"electrodes[cubicle].resistance\" in this file"),
                of(correlations.formatted("{one: \"" + upper + "\", other: \"" + lower + "\", rank: -0.99}")),
                of(
                        correlations.formatted("{one: \"" + upper + "\", other: \"" + lower + "\", rank: 1}"),
                        "uncertainty.correlations[1].rank: this is no rank correlation"),
                of(
                        correlations.formatted("{one: " + named + ", other: \"electrodes[1].resistance\", rank: 0.5}"),
                        "uncertainty.correlations[1].other: an input goes together with itself"),
                of(
                        correlations.formatted("{one: \"" + upper + "\", other: \"" + lower + "\", rank: 0.5},"
                                + " {one: \"" + lower + "\", other: \"" + upper + "\", rank: 0.4}"),
                        "uncertainty.correlations[2].other: this pair has a correlation already"));
    }

    static Stream<Arguments> expectations() {
        String result = "expect: [{result: main.epr, value: 900 V, %s}]";
        return Stream.of(
                of(result.formatted("within: 2 %, in-case: fault=maximum")),
                of(result.formatted("within: 5 V")),
                of(result.formatted("within: -2 %"), "expect[1].within: \"-2 %\" is no tolerance"),
                of(result.formatted("within: little"), "expect[1].within: \"little\" is no tolerance"),
                of(result.formatted("in-case: the greatest"), "expect[1].in-case: \"the greatest\" is no case"));
    }

    @ParameterizedTest
    @MethodSource({"network", "soil", "electrodes", "pole", "uncertainty", "expectations"})
    void isTold(String text, List<String> found) {
        List<String> told = Problems.of(SiteFile.read(HEAD + text, "x.yaml")).stream()
                .map(line ->
                        line.replaceFirst("^x\\.yaml:\\d+:\\d+: ", "").replaceFirst("; (expected|did you mean).*", ""))
                .toList();
        assertThat(told).containsExactlyInAnyOrderElementsOf(found);
    }
}
