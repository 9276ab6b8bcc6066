package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said about keys of the network and its protection that contradict each other. */
final class NetworkKeysTest {

    private static final String FILE = """
            file-version: 1
            site: {name: Test pole, stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              neutral: {method: %s}
            %s
            """;

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    solid | protection: {fuse: {points: [{current: 20 A, time: 1 s}]}} | a curve has two or more points
                    solid | protection: {fuse: {points: [{current: 20 A, time: 1 s}, {current: 10 A, time: 0.5 s}]}} | points[1].current: "20 A" is not below protection.fuse.points[2].current "10 A"
                    solid | protection: {fuse: {points: [{current: 20 A, time: 1 s}, {current: 30 A, time: 2 s}]}} | points[2].time: "2 s" is above protection.fuse.points[1].time
                    solid | protection: {fuse: {points: [{current: 20 A, time: 1 s}, {current: 30 A, time: 0.5 s}], breaking-current: 25 A}} | points[2].current: "30 A" is above protection.fuse.breaking-current
                    solid | protection: {fuse: {points: [{current: unknown, time: 1 s}]}} | nothing can be computed while this is unknown
                    solid | protection: {clearing-time: 1 s, fuse: {points: [{current: 20 A, time: 1 s}, {current: 30 A, time: 1 s}]}} | protection.fuse: this says again what protection.clearing-time says
                    solid | protection: {reclose: {dead-times: [1 s]}, fuse: {points: [{current: 20 A, time: 1 s}, {current: 30 A, time: 1 s}]}} | protection.reclose: this key does not belong here; expected protection.relay beside the fuse: a fuse clears once
                    solid | protection: {clearing-time: 1 s, back-up-for: heating} | protection.back-up-for: this key does not belong here
                    solid | protection: {sensitive: {pickup: 5 A, curve: definite-time, time-multiplier: 1}} | protection.sensitive.time-multiplier: this key does not belong here
                    solid | criteria: {touch: en-50522-2022, owner: {name: a, reference: b}} | criteria.owner: this key does not belong here; expected it with touch: owner
                    solid | criteria: {touch: en-50522-2022, body: {skin: dry, share: five-percent, current: c1}} | criteria.body: this key does not belong here
                    solid | criteria: {touch: iec-60479-1, body: {skin: damp, share: five-percent, current: c1}} | "damp" is not known here; expected one of dry, water-wet, saltwater-wet
                    solid | criteria: {touch: en-50522-2022, exposure: {fault-rate: 1, contact-rate: 1 /a, contact-duration: 1 s}} | criteria.exposure.fault-rate: "1" has no unit
                    """)
    void contradictionsAreTold(String method, String block, String expected) {
        String file = FILE.formatted(method, block);
        assertThat(Problems.of(SiteFile.read(file, "a.yaml"))).anyMatch(p -> p.contains(expected));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    solid | conductors: [%A], earth-resistivity: 100 ohm.m | conductors: there are 1 phases among them; expected 3
                    single-wire-earth-return | conductors: [%A, %B], earth-resistivity: 100 ohm.m | there are 2 phases among them; expected 1
                    solid | conductors: [%A, %B, %C], resistance: 1 ohm/km | resistance: this key does not belong here; expected either impedances or conductors
                    solid | resistance: 1 ohm/km, earth-resistivity: 100 ohm.m | earth-resistivity: this key does not belong here
                    single-wire-earth-return | zero-sequence-reactance: 1 ohm/km | zero-sequence-reactance: this key does not belong here
                    solid | conductors: [%A, %A, %B] | "a" is already the name of
                    solid | conductors: [{name: a, use: phase, offset: 0 m, height: 8 m, resistance: 1 ohm/km}] | diameter: this key is missing
                    solid | conductors: [{name: a, use: phase, offset: 0 m, height: 8 m, resistance: 1 ohm/km, diameter: 9 m}] | diameter: "9 m" is not below
                    """)
    void linesAreChecked(String method, String line, String expected) {
        String wire = "{name: %s, use: phase, offset: %d m, height: 9 m, resistance: 1 ohm/km, diameter: 10 mm}";
        String text = line.replace("%A", wire.formatted("a", 0))
                .replace("%B", wire.formatted("b", 1))
                .replace("%C", wire.formatted("c", 2));
        String file = """
                file-version: 1
                site: {name: Test pole, stage: design}
                system:
                  voltage: 22 kV
                  frequency: 50 Hz
                  neutral: {method: %s}
                  source-line: {length: 4 km, %s}
                """.formatted(method, text);
        assertThat(Problems.of(SiteFile.read(file, "a.yaml"))).anyMatch(p -> p.contains(expected));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    single-wire-earth-return | three-phase-fault-current: 1 kA | three-phase-fault-current: this key does not belong here
                    single-wire-earth-return | shield-wire: {span: 80 m} | shield-wire: this key does not belong here
                    multi-earthed, conductor: {span: 80 m, spans-to-source: 10} | shield-wire: {spans-to-source: 11} | system.shield-wire.spans-to-source: "11" is not the neutral's 10
                    multi-earthed, conductor: {span: 80 m, spans-to-source: 10} | shield-wire: {span: 90 m} | system.shield-wire.span: "90 m" is not the neutral's span; expected the same length
                    multi-earthed, conductor: {span: 80 m, spans-to-source: 10} | return-wires: {bonded: no} | system.return-wires: this key does not belong here; expected a neutral conductor and a shield wire
                    multi-earthed, conductor: {span: 80 m, spans-to-source: 10} | shield-wire: {earthed-every: 2} ; return-wires: {bonded: yes} | system.shield-wire.earthed-every: this key does not belong here; expected the neutral's earths serve both
                    solid | shield-wire: {bond-height: 12 m} | shield-wire.bond-height: "12 m" is above pole.height
                    """)
    void wiresBelongToTheirNetwork(String method, String key, String expected) {
        String file = """
                file-version: 1
                site: {name: Test pole, stage: design}
                pole: {material: wood, height: 11 m}
                system:
                  voltage: 22 kV
                  frequency: 50 Hz
                  neutral: {method: %s}
                  %s
                """.formatted(method, key.replace(" ; ", "\n  "));
        assertThat(Problems.of(SiteFile.read(file, "a.yaml"))).anyMatch(p -> p.contains(expected));
    }
}
