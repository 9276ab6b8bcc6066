package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a user is told about a broken file, word for word. */
final class BrokenFilesTest {

    private static final String HEAD = """
            file-version: 1
            site: {name: Test, stage: design}
            system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
            """;

    private static void told(String text, String... problems) {
        assertThat(Problems.of(SiteFile.read(text, "x.yaml"))).containsExactly(problems);
    }

    private static void toldBelowHead(String text, String... problems) {
        told(HEAD + text, problems);
    }

    @Test
    void headAloneIsAValidFile() {
        toldBelowHead("");
    }

    @Test
    void unknownKeyNamesTheNearestOne() {
        toldBelowHead(
                "soil:\n  resistivty: 100 ohm.m\n",
                "x.yaml:5:3: soil.resistivty: unknown key; did you mean \"resistivity\"?");
    }

    @Test
    void unknownKeyDoesNotNameOneThatStandsThereAlready() {
        toldBelowHead(
                "pole: {material: wood, height: 11 m}\nsole: {resistivity: 100 ohm.m}\n",
                "x.yaml:5:1: sole: unknown key; did you mean \"soil\"?");
    }

    @Test
    void thicknessThatIsRefusedIsNotMissing() {
        toldBelowHead("""
                soil:
                  layers:
                    - {resistivity: 100 ohm.m, thickness: -1 m}
                    - {resistivity: 50 ohm.m}
                """, "x.yaml:6:43: soil.layers[1].thickness: \"-1 m\" is not above zero");
    }

    @Test
    void unknownKeyInTheWrongWritingNamesTheNearestOne() {
        toldBelowHead(
                "protection: {clearing_time: 1 s}\n",
                "x.yaml:4:14: protection.clearing_time: unknown key; did you mean \"clearing-time\"?");
    }

    @Test
    void keyInTheWrongBlockNamesItsHome() {
        toldBelowHead(
                "clearing-time: 1 s\n",
                "x.yaml:4:1: clearing-time: unknown key; expected it as protection.clearing-time");
    }

    @Test
    void keyNearNothingNamesAllKeysOfTheBlock() {
        toldBelowHead(
                "season: {}\nprotection: {colour: red}\n",
                "x.yaml:4:1: season: unknown key; expected it as soil.season",
                "x.yaml:5:14: protection.colour: unknown key; expected one of clearing-time, relay, fuse, sensitive,"
                        + " back-up, back-up-for, reclose, detection-factor");
    }

    @Test
    void bareNumberNeedsAUnit() {
        toldBelowHead(
                "tank: {height: 9}\n",
                "x.yaml:4:16: tank.height: \"9\" has no unit; expected a length such as 2.4 m, 200 mm, 8 ft");
    }

    @Test
    void wrongUnitNamesTheUnitsThatAreRead() {
        toldBelowHead(
                "tank:\n  height: 9 kV\n",
                "x.yaml:5:11: tank.height: \"9 kV\": unit \"kV\" is not one of m, mm, cm, km, ft, in; expected a length such as"
                        + " 2.4 m, 200 mm, 8 ft");
    }

    @Test
    void decimalCommaIsNamed() {
        toldBelowHead(
                "tank: {height: \"9,5 m\"}\n",
                "x.yaml:4:16: tank.height: \"9,5 m\" has a decimal comma; write a decimal point; expected a length such as"
                        + " 2.4 m, 200 mm, 8 ft");
    }

    @Test
    void notANumberAndInfinityAreNoNumbers() {
        toldBelowHead(
                "tank: {height: .nan}\ncubicle: {height: inf m, earth: shared}\npole: {material: wood, height: 1e999 m}\n",
                "x.yaml:4:16: tank.height: \".nan\" is no number with a unit; expected a length such as 2.4 m, 200 mm, 8 ft",
                "x.yaml:5:19: cubicle.height: \"inf m\" is no number with a unit; expected a length such as 2.4 m, 200 mm,"
                        + " 8 ft",
                "x.yaml:6:32: pole.height: \"1e999 m\" is too large; expected a length such as 2.4 m, 200 mm, 8 ft");
    }

    @Test
    void negativeAndZeroValuesAreRefusedWhereTheyAreNonsense() {
        toldBelowHead(
                "tank: {height: 0 m}\nmain-earth: {conductor: {material: copper, area: -70 mm2}, guard-height: -1 m}\n",
                "x.yaml:4:16: tank.height: \"0 m\" is not above zero",
                "x.yaml:5:50: main-earth.conductor.area: \"-70 mm2\" is not above zero",
                "x.yaml:5:74: main-earth.guard-height: \"-1 m\" is below zero");
    }

    @Test
    void wrongWordListsTheWords() {
        toldBelowHead(
                "cubicle: {height: 3 m, earth: common}\n",
                "x.yaml:4:31: cubicle.earth: \"common\" is not known here; expected one of shared, separate, both, unearthed,"
                        + " unknown");
    }

    @Test
    void truthValuesAreNotYesAndNo() {
        toldBelowHead(
                "control-cable: {coiled: false}\n",
                "x.yaml:4:25: control-cable.coiled: \"false\" is not known here; expected one of yes, no, unknown");
    }

    @Test
    void missingRequiredKeysAreNamedWithTheirForm() {
        told(
                "file-version: 1\nsite: {stage: design}\nsystem:\n  voltage: 22 kV\n  frequency: 50 Hz\n",
                "x.yaml:2:1: site.name: this key is missing; expected a text such as Ternhook ridge switch 14",
                "x.yaml:3:1: system.neutral: this key is missing; expected a block with keys of its own");
    }

    @Test
    void duplicateKeyNamesTheFirstOne() {
        toldBelowHead(
                "tank:\n  height: 9 m\n  height: 8 m\n",
                "x.yaml:6:3: tank.height: duplicate key; it stands already in line 5");
    }

    @Test
    void duplicateBoundIsRefused() {
        toldBelowHead(
                "tank: {height: {nominal: 9 m, nominal: 8 m}}\n", "x.yaml:4:31: tank.height.nominal: duplicate key");
    }

    @Test
    void boundsOutOfOrderAreNamed() {
        toldBelowHead(
                "soil: {resistivity: {low: 2 kohm.m, nominal: 100 ohm.m, high: 90 ohm.m}}\n",
                "x.yaml:4:27: soil.resistivity.low: \"2 kohm.m\" is above nominal \"100 ohm.m\"; expected low <= nominal <= high",
                "x.yaml:4:63: soil.resistivity.high: \"90 ohm.m\" is below nominal \"100 ohm.m\"; expected low <= nominal <="
                        + " high");
    }

    @Test
    void boundsNeedANominalValue() {
        toldBelowHead(
                "soil: {resistivity: {low: 10 ohm.m, high: 90 ohm.m}}\n",
                "x.yaml:4:21: soil.resistivity.nominal: this key is missing; expected the best estimate, a resistivity such as"
                        + " 120 ohm.m, 12000 ohm.cm");
    }

    @Test
    void originAndDateAreChecked() {
        toldBelowHead(
                "soil: {resistivity: {nominal: 90 ohm.m, origin: guessed, date: 2026-02-30, from: me}}\n",
                "x.yaml:4:49: soil.resistivity.origin: \"guessed\" is not known here; expected one of measured, drawing,"
                        + " setting-sheet, data-sheet, standard, assumed",
                "x.yaml:4:64: soil.resistivity.date: \"2026-02-30\" is no calendar date; expected a date such as 2026-03-02",
                "x.yaml:4:76: soil.resistivity.from: unknown key; expected one of low, nominal, high, origin, date, by");
    }

    @Test
    void heightsHaveToBeInOrder() {
        toldBelowHead(
                "pole: {material: wood, height: 8.5 m}\ntank: {height: 9 m}\ncubicle: {height: 900 cm, earth: shared}\n",
                "x.yaml:5:16: tank.height: \"9 m\" is above pole.height \"8.5 m\"",
                "x.yaml:6:19: cubicle.height: \"900 cm\" is not below tank.height \"9 m\"");
    }

    @Test
    void electrodeHasExactlyOneShapeAndANameOfItsOwn() {
        toldBelowHead(
                """
                electrodes:
                  - name: main
                    rod: {length: 3 m, diameter: 16 mm}
                    resistance: 20 ohm
                  - name: main
                  - name: thick
                    rod: {length: 16 mm, diameter: 3 m}
                """,
                "x.yaml:5:5: electrodes[1]: this electrode has 2 shapes: rod, resistance; expected one shape; give each part an"
                        + " electrode of its own or use bars",
                "x.yaml:8:5: electrodes[2]: this electrode has no shape; expected one of rod, rods-in-line, rods-in-ring, wire,"
                        + " star, ring, mat, plate, bars, resistance",
                "x.yaml:8:11: electrodes[2].name: \"main\" is already the name of electrodes[1]; expected a name of its own",
                "x.yaml:10:36: electrodes[3].rod.diameter: \"3 m\" is not below electrodes[3].rod.length \"16 mm\"");
    }

    @Test
    void electrodeThatIsNamedHasToExist() {
        toldBelowHead(
                """
                main-earth: {conductor: {material: copper, area: 70 mm2}, electrode: mian}
                electrodes:
                  - {name: main, resistance: 20 ohm}
                cubicle: {height: 3 m, earth: separate, electrode: elsewhere}
                """,
                "x.yaml:4:70: main-earth.electrode: \"mian\" is not the name of an electrode; did you mean \"main\"?",
                "x.yaml:7:52: cubicle.electrode: \"elsewhere\" is not the name of an electrode; expected one of main");
    }

    @Test
    void layersEndWithoutAThickness() {
        toldBelowHead(
                """
                soil:
                  resistivity: 90 ohm.m
                  layers:
                    - {resistivity: 90 ohm.m}
                    - {resistivity: 30 ohm.m, thickness: 2 m}
                """,
                "x.yaml:7:5: soil.layers: this says again what soil.resistivity says; expected one of the two",
                "x.yaml:7:7: soil.layers[1]: this layer has no thickness; expected one for every layer but the lowest",
                "x.yaml:8:42: soil.layers[2].thickness: this key does not belong here; expected no thickness, the lowest layer"
                        + " has no end");
    }

    @Test
    void oneLayerIsUniformSoil() {
        toldBelowHead(
                "soil: {layers: [{resistivity: 90 ohm.m}]}\n",
                "x.yaml:4:16: soil.layers: there are 1 layers; expected 2 to 5; uniform soil is written as soil.resistivity");
    }

    @Test
    void segmentsFollowEachOtherToTheGround() {
        toldBelowHead(
                """
                tank: {height: 9 m}
                main-earth:
                  conductor: {material: copper, area: 70 mm2}
                  segments:
                    - {name: upper, from-height: 8 m, to-height: 3 m}
                    - {name: lower, from-height: 2 m, to-height: 1 m}
                """,
                "x.yaml:8:34: main-earth.segments[1].from-height: \"8 m\" is not where tank.height ends; expected 9 m",
                "x.yaml:9:34: main-earth.segments[2].from-height: \"2 m\" is not where main-earth.segments[1].to-height ends;"
                        + " expected 3 m",
                "x.yaml:9:50: main-earth.segments[2].to-height: the lowest segment ends at \"1 m\"; expected 0 m, the ground");
    }

    @Test
    void quantitiesOfAnotherMethodDoNotBelong() {
        told(
                """
                file-version: 1
                site: {name: Test, stage: design}
                system:
                  voltage: 22 kV
                  frequency: 50 Hz
                  neutral: {method: solid, resistance: 40 ohm}
                protection:
                  clearing-time: 1 s
                  relay: {curve: definite-time, time-multiplier: 0.2}
                  reclose: {dead-times: [1 s], fast-shots: 3}
                """,
                "x.yaml:6:40: system.neutral.resistance: this key does not belong here; expected it with the method resistor",
                "x.yaml:9:10: protection.relay: this says again what protection.clearing-time says; expected one of the two",
                "x.yaml:9:50: protection.relay.time-multiplier: this key does not belong here; expected a delay with the curve"
                        + " definite-time",
                "x.yaml:10:44: protection.reclose.fast-shots: \"3\" is more than the number of shots; expected at most 2, one more"
                        + " than there are dead times");
    }

    @Test
    void wholeNumbersHaveARange() {
        toldBelowHead(
                "arresters: {phases: 4, side: both, earthed-at: tank}\nline: {spans: two}\n",
                "x.yaml:4:21: arresters.phases: \"4\" is out of range; expected a whole number from 1 to 3",
                "x.yaml:5:15: line.spans: \"two\" is no whole number; expected a whole number from 1 to 4");
    }

    @Test
    void otherVersionsOfTheFormatAreRefused() {
        told(
                HEAD.replace("file-version: 1", "file-version: 2"),
                "x.yaml:1:15: file-version: \"2\" is out of range; expected the number 1");
    }

    @Test
    void unknownIsRefusedOnlyWhereNothingCanBeComputedWithoutTheValue() {
        told(
                HEAD.replace("50 Hz", "unknown") + "tank: {height: unknown}\n",
                "x.yaml:3:37: system.frequency: nothing can be computed while this is unknown; expected a frequency such as"
                        + " 50 Hz");
    }

    @Test
    void cyclesNeedTheFrequency() {
        told(
                HEAD.replace("frequency: 50 Hz, ", "") + "protection: {clearing-time: 10 cycles}\n",
                "x.yaml:3:1: system.frequency: this key is missing; expected a frequency such as 50 Hz",
                "x.yaml:4:29: protection.clearing-time: \"10 cycles\": cycles need the frequency of the system; give"
                        + " system.frequency or write seconds");
    }

    @Test
    void soundingsThatGiveNoLayersAreTold() {
        toldBelowHead(
                """
                soil:
                  soundings:
                    - {spacing: 1 m, resistance: 10 ohm, half-current-spacing: 3 m}
                    - {spacing: 2 m, resistance: 5 ohm, resistivity: 60 ohm.m}
                    - {half-current-spacing: 3 m, half-potential-spacing: 5 m, resistance: 5 ohm}
                """,
                "x.yaml:6:7: soil.soundings[1]: this reading has the spacings of two arrays; expected spacing, or"
                        + " half-current-spacing and half-potential-spacing, or rod-depth and rod-diameter",
                "x.yaml:7:7: soil.soundings[2]: this reading has not one value; expected either resistance or resistivity",
                "x.yaml:8:7: soil.soundings[3]: a Schlumberger array needs 0 < MN/2 < AB/2; have MN/2 5.0 m, AB/2 3.0 m");
    }

    @Test
    void soundingsByADrivenRodThatGiveNoLayersAreTold() {
        toldBelowHead(
                """
                soil:
                  soundings:
                    - {rod-depth: 1 m, resistance: 80 ohm}
                    - {rod-depth: 2 m, rod-diameter: 16 mm, spacing: 2 m, resistance: 50 ohm}
                    - {rod-depth: 10 mm, rod-diameter: 16 mm, resistance: 40 ohm}
                    - {rod-depth: 3 m, rod-diameter: 16 mm, probe-depth: 0.1 m, resistance: 30 ohm}
                """,
                "x.yaml:6:7: soil.soundings[1]: a value of this reading is missing or unknown; expected numbers with units",
                "x.yaml:7:7: soil.soundings[2]: this reading has the spacings of two arrays; expected spacing, or"
                        + " half-current-spacing and half-potential-spacing, or rod-depth and rod-diameter",
                "x.yaml:8:7: soil.soundings[3]: a bar must be at least as long as thick; have length 0.01 m, radius 0.008 m",
                "x.yaml:9:58: soil.soundings[4].probe-depth: this key does not belong here; expected the"
                        + " depth of the probes is allowed for in Wenner arrays only");
        toldBelowHead(
                """
                soil:
                  soundings:
                    - {rod-depth: 1 m, rod-diameter: 16 mm, resistance: 80 ohm}
                    - {spacing: 2 m, resistance: 8 ohm}
                    - {rod-depth: 3 m, rod-diameter: 16 mm, resistance: 30 ohm}
                """,
                "x.yaml:6:5: soil.soundings: there are readings of 2 kinds of arrays; expected readings of one kind");
    }

    @Test
    void keyWithoutAValueIsTold() {
        toldBelowHead(
                "soil:\nelectrodes:\ntank:\n  height:\n",
                "x.yaml:4:6: soil: there is no value behind this key; expected keys of its own: resistivity, layers,"
                        + " soundings, survey-file, season, calibrate-by, frequency-dependence, survey, survey-date",
                "x.yaml:5:12: electrodes: there is no value behind this key; expected a list, each item behind a hyphen",
                "x.yaml:7:10: tank.height: there is no value behind this key; expected a length such as 2.4 m, 200 mm, 8 ft");
    }

    @Test
    void valuesOfAnotherShapeAreTold() {
        toldBelowHead(
                "tank: 9 m\nelectrodes: main\nsoil: {resistivity: [1 ohm.m]}\nsurges: {waves: [8/20, {a: b}, 9/21]}\n",
                "x.yaml:4:7: tank: \"9 m\" does not fit here; expected keys of its own: height, impulse-level,"
                        + " chopped-wave-level, handle-height, handle-bonded, switch-state",
                "x.yaml:5:13: electrodes: \"main\" does not fit here; expected a list, each item behind a hyphen",
                "x.yaml:6:21: soil.resistivity: a list does not fit here; expected a resistivity such as 120 ohm.m, 12000"
                        + " ohm.cm",
                "x.yaml:7:24: surges.waves[2]: a block of keys does not fit here; expected one of 8/20, 4/10, 10/350, 1/200,"
                        + " 0.25/100",
                "x.yaml:7:32: surges.waves[3]: \"9/21\" is not known here; expected one of 8/20, 4/10, 10/350, 1/200, 0.25/100");
    }

    @Test
    void tabsAreNamed() {
        toldBelowHead(
                "tank:\n\theight: 9 m\n# a\ttab in a comment does no harm\n",
                "x.yaml:5:1: there is a tab here; expected spaces");
    }

    @Test
    void brokenWritingTellsAlsoWhatWasReadBefore() {
        List<String> problems = Problems.of(SiteFile.read("file-version: 7\nsite: {name: a\n", "x.yaml"));
        assertThat(problems).hasSize(2);
        assertThat(problems.get(0)).startsWith("x.yaml:1:15: file-version: \"7\" is out of range");
        assertThat(problems.get(1)).startsWith("x.yaml:3:1: this is not YAML: ");
    }

    @Test
    void aliasesAnchorsAndTagsAreRefused() {
        toldBelowHead(
                "tank: {height: &h 9 m}\npole: {material: wood, height: *h}\nsoil: {resistivity: !!str 9 ohm.m}\n",
                "x.yaml:4:16: anchors are not used in a site file; write the value out where it is needed",
                "x.yaml:5:32: aliases are not used in a site file; write the value out",
                "x.yaml:6:21: tags are not used in a site file; write the value as text");
    }

    @Test
    void secondDocumentIsRefused() {
        toldBelowHead("---\nfile-version: 1\n", "x.yaml:4:1: a second document starts here; a site file is one");
    }

    @Test
    void emptyFilesAreToldApartFromWrongOnes() {
        told("", "x.yaml: there is nothing in this file");
        told("# only a comment\n", "x.yaml: there is nothing in this file");
        told(
                "just words\n",
                "x.yaml:1:1: \"just words\" does not fit here; expected keys of its own: "
                        + String.join(
                                ", ",
                                Block.site().entries().stream().map(Entry::key).toList()));
    }

    @Test
    void otherEncodingsAreNamed() {
        byte[] latin = (HEAD + "# Höhe\n").getBytes(StandardCharsets.ISO_8859_1);
        assertThat(Problems.of(SiteFile.read(latin, "x.yaml")))
                .containsExactly("x.yaml:4:4: this is not UTF-8 from here on; save the file as UTF-8");
        byte[] wide = HEAD.getBytes(StandardCharsets.UTF_16);
        assertThat(Problems.of(SiteFile.read(wide, "x.yaml")))
                .containsExactly("x.yaml: this file is in UTF-16; save it as UTF-8");
        assertThat(Problems.of(SiteFile.read(HEAD + "\0", "x.yaml")))
                .containsExactly("x.yaml:4:1: there is a control character here; this is no text file");
    }

    @Test
    void byteOrderMarkIsTolerated() {
        ReadOutcome outcome = SiteFile.read('\uFEFF' + HEAD, "x.yaml");
        assertThat(Problems.of(outcome)).isEmpty();
        assertThat(((ReadOutcome.Valid) outcome).text()).isEqualTo(HEAD);
    }

    @Test
    void windowsLineEndsAreTolerated() {
        ReadOutcome outcome = SiteFile.read(HEAD.replace("\n", "\r\n") + "tank: {height: 9}\r\n", "x.yaml");
        assertThat(Problems.of(outcome))
                .containsExactly(
                        "x.yaml:4:16: tank.height: \"9\" has no unit; expected a length such as 2.4 m, 200 mm, 8 ft");
    }

    @Test
    void filesThatCannotBeReadAreNamed(@TempDir Path folder) throws Exception {
        Path missing = folder.resolve("missing.yaml");
        assertThat(Problems.of(SiteFile.read(missing))).containsExactly(missing + ": there is no such file");
        assertThat(Problems.of(SiteFile.read(folder))).containsExactly(folder + ": this is a folder, not a file");
        Path huge = folder.resolve("huge.yaml");
        Files.writeString(huge, "#".repeat(SiteFile.LARGEST + 1));
        assertThat(Problems.of(SiteFile.read(huge)))
                .containsExactly(huge + ": this file is larger than 1000000 bytes and no site file");
    }

    @Test
    void escapesOfATerminalDoNotReachTheMessage() {
        List<String> problems = Problems.of(SiteFile.read(HEAD + "tank: {height: \"\\e[31m9 m\\n\"}\n", "x.yaml"));
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).chars().noneMatch(Character::isISOControl)).isTrue();
    }

    @Test
    void textsWithUnprintableCharactersAreRefused() {
        toldBelowHead(
                "other-equipment: [{name: \"a\\eb\", earthed-at: none}]\n",
                "x.yaml:4:26: other-equipment[1].name: \"a\uFFFDb\" contains a character that cannot be printed");
    }

    @Test
    void readingsNameWhatIsOnTheSite() {
        toldBelowHead(
                """
                electrodes: [{name: main, resistance: 20 ohm}]
                measurements:
                  - {kind: electrode-resistance, of: mian, value: 18 ohm, method: fall-of-potential, isolated: yes,
                     current-probe-distance: 60 m, potential-probe-distance: 70 m, date: 2026-3-2}
                  - {kind: bond-continuity, of: main, value: 1 mohm, method: four-wire, isolated: yes, date: 2026-03-02}
                """,
                "x.yaml:6:38: measurements[1].of: \"mian\" is not on this site; expected one of main",
                "x.yaml:7:62: measurements[1].potential-probe-distance: \"70 m\" is not below"
                        + " measurements[1].current-probe-distance \"60 m\"",
                "x.yaml:7:74: measurements[1].date: \"2026-3-2\" is no calendar date; expected a date such as 2026-03-02",
                "x.yaml:8:33: measurements[2].of: \"main\" is not on this site; expected one of main-earth, own-lead, tee");
    }

    @Test
    void severalElectrodesLeaveNoDoubtWhichIsTheMainOne() {
        toldBelowHead(
                """
                electrodes: [{name: a, resistance: 20 ohm}, {name: b, resistance: 20 ohm}]
                main-earth: {conductor: {material: copper, area: 70 mm2}}
                """,
                "x.yaml:5:13: main-earth: there are several electrodes and the main earth names none; expected the key"
                        + " electrode");
    }

    @Test
    void arresterVoltagesAreInOrder() {
        toldBelowHead(
                """
                arresters:
                  side: both
                  earthed-at: tank
                  rated-voltage: 24 kV
                  continuous-voltage: 24 kV
                  residual-voltage: 66 kV
                  steep-residual-voltage: 60 kV
                  residual-curve:
                    - {current: 5 kA, voltage: 62 kV}
                    - {current: 1 kA, voltage: 66 kV}
                """,
                "x.yaml:8:23: arresters.continuous-voltage: \"24 kV\" is not below arresters.rated-voltage \"24 kV\"",
                "x.yaml:9:21: arresters.residual-voltage: \"66 kV\" is above arresters.steep-residual-voltage \"60 kV\"",
                "x.yaml:12:17: arresters.residual-curve[1].current: \"5 kA\" is not below arresters.residual-curve[2].current"
                        + " \"1 kA\"");
    }

    @Test
    void allProblemsOfAFileAreToldInItsOrder() {
        List<String> problems = Problems.of(SiteFile.read("""
                file-version: one
                sight: {}
                system: {voltage: 22, frequency: 50 Hz, neutral: {method: loose}}
                tank: {hight: 9 m}
                """, "x.yaml"));
        assertThat(problems)
                .extracting(problem -> problem.substring(0, problem.indexOf(": ")))
                .containsExactly(
                        "x.yaml:1:1",
                        "x.yaml:1:15",
                        "x.yaml:2:1",
                        "x.yaml:3:19",
                        "x.yaml:3:59",
                        "x.yaml:4:1",
                        "x.yaml:4:8");
    }

    @Test
    void messagesDoNotDependOnTheLocale() {
        Locale before = Locale.getDefault();
        try {
            for (Locale locale :
                    List.of(Locale.GERMANY, Locale.forLanguageTag("tr-TR"), Locale.forLanguageTag("ar-EG"))) {
                Locale.setDefault(locale);
                String text = HEAD + "soil: {RESISTIVITY: 9 ohm.m}\ntank: {height: 9.5 m, impulse-level: 125 kV}\n";
                told(text, "x.yaml:4:8: soil.RESISTIVITY: unknown key; did you mean \"resistivity\"?");
                ReadOutcome outcome = SiteFile.read(text.replace("RESISTIVITY", "resistivity"), "x.yaml");
                assertThat(SiteFile.write(((ReadOutcome.Valid) outcome).site())).contains("  height: 9.5 m\n");
            }
        } finally {
            Locale.setDefault(before);
        }
    }
}
