package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.ControlCable;
import earthing.site.Stay;
import earthing.site.Tank;
import earthing.site.YesNo;
import earthing.study.DemoSite;
import earthing.study.EarthPaths;
import earthing.study.EarthPaths.Role;
import earthing.study.Gap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every check answers on every demonstration site: none is silently missing. */
class DemoFindingsTest {

    /** The questions of a review; a star stands for a part, a node, a segment, a core with its end. */
    private static final List<String> QUESTIONS = List.of(
            "electrode.resistance",
            "electrode.model-agreement",
            "soil.survey-quality",
            "soil.calibration",
            "epr.*",
            "fault.detection",
            "touch.*",
            "exposure.*",
            "fault.back-up",
            "touch.between-earths",
            "step.worst",
            "transfer.*",
            "cable.power-frequency",
            "conductor.*.heating",
            "conductor.*.minimum-area",
            "path.single-main-earth",
            "path.arresters-through-tank",
            "path.cubicle-tee",
            "path.common-point",
            "path.contingency",
            "surge.cable-end.*",
            "surge.screen",
            "surge.gap",
            "arrester.margin",
            "arrester.rating",
            "separation.control-cable",
            "cable.length",
            "antenna.suppressor",
            "aux-supply.isolation",
            "pole.conducting",
            "corrosion.couple",
            "test.validity",
            "test.agreement",
            "test.continuity");

    static List<String> sites() {
        return DemoSite.names();
    }

    private static boolean asks(String question, String id) {
        String[] parts = question.split("\\*", -1);
        return parts.length == 1
                ? id.equals(question)
                : id.startsWith(parts[0])
                        && id.endsWith(parts[1])
                        && id.length() > parts[0].length() + parts[1].length();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyQuestionIsAnswered(String name) {
        List<String> ids =
                StudiedSite.of(name).findings().stream().map(Finding::id).toList();
        for (String question : QUESTIONS) {
            assertThat(ids).as(question).anyMatch(id -> asks(question, id));
        }
        assertThat(ids)
                .as("questions that are not on the list")
                .allMatch(id -> QUESTIONS.stream().anyMatch(question -> asks(question, id)));
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyConductorCoreAndReachablePartHasAFindingOfItsOwn(String name) {
        StudiedSite studied = StudiedSite.of(name);
        Set<String> ids =
                new HashSet<>(studied.findings().stream().map(Finding::id).toList());
        EarthPaths.of(studied.site()).members().stream()
                .filter(m -> m.role() == Role.MAIN_EARTH || m.role() == Role.TEE || m.role() == Role.OWN_LEAD)
                .map(m -> "conductor." + EarthPaths.key(m.name()) + ".minimum-area")
                .forEach(id -> assertThat(ids).contains(id));
        ControlCable cable = studied.site().controlCable();
        if (cable != null) {
            cable.cores().stream()
                    .flatMap(core -> Stream.of(".tank", ".cubicle")
                            .map(end -> "surge.cable-end." + EarthPaths.key(core.name()) + end))
                    .forEach(id -> assertThat(ids).contains(id));
        }
        Tank tank = studied.site().tank();
        if (ids.contains("touch.down-lead") && tank != null && tank.handleHeight() != null) {
            assertThat(ids).contains("touch.tank-handle");
        }
        for (Stay stay : studied.site().stays()) {
            if (stay.insulated() == YesNo.NO && stay.bondedToMainEarth() == YesNo.YES) {
                assertThat(ids).contains("touch.stay-" + EarthPaths.key(stay.name()));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("sites")
    void noFindingPronouncesAnythingSafe(String name) {
        Pattern word = Pattern.compile("\\bsafe\\b", Pattern.CASE_INSENSITIVE);
        for (Finding finding : StudiedSite.of(name).findings()) {
            String text = String.join(
                    " / ",
                    finding.subject(),
                    finding.reason(),
                    finding.advice(),
                    finding.basis().text(),
                    finding.status().text());
            assertThat(word.matcher(text).find()).as(text).isFalse();
        }
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyFindingSaysWhatItRestsOnAndAnOpenOneWhatToDo(String name) {
        for (Finding finding : StudiedSite.of(name).findings()) {
            assertThat(finding.reason()).as(finding.id()).isNotBlank();
            assertThat(finding.basis().title()).as(finding.id()).isNotBlank();
            if (finding.status() == Status.NOT_MET || finding.status() == Status.INSUFFICIENT_DATA) {
                assertThat(finding.advice()).as(finding.id()).isNotBlank();
            }
            if (finding.value().isPresent() && finding.limit().isPresent() && finding.status() == Status.MET) {
                assertThat(finding.margin().orElse(0)).as(finding.id()).isNotNegative();
            }
            if (finding.margin().isPresent() && finding.margin().getAsDouble() < 0) {
                assertThat(finding.status()).as(finding.id()).isIn(Status.NOT_MET, Status.ACCEPTED_DEPARTURE);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("sites")
    void aGapNamesKeysThatTheSiteFileKnows(String name) throws IOException {
        Set<String> known = keys();
        for (Gap gap : StudiedSite.of(name).results().gaps()) {
            for (String key : gap.missingKeys()) {
                assertThat(known).as(gap.id() + ": " + key).containsAll(List.of(key.split("\\.")));
            }
        }
    }

    /** Every key of the tables in the page of the site file, which is generated from the reader. */
    private static Set<String> keys() throws IOException {
        Matcher rows = Pattern.compile("(?m)^\\| `([a-z0-9-]+)`")
                .matcher(Files.readString(Path.of("..", "docs", "site-file.md")));
        Set<String> keys = new HashSet<>();
        while (rows.find()) {
            keys.add(rows.group(1));
        }
        assertThat(keys).hasSizeGreaterThan(100);
        return keys;
    }

    /** The short site is the first day of an engineer: almost everything is open and nothing is invented. */
    @Test
    void theShortSiteAsksForDataInsteadOfFailing() {
        List<Finding> findings = StudiedSite.of("lowgarth-short.yaml").findings();
        assertThat(findings).noneMatch(f -> f.status() == Status.NOT_MET);
        assertThat(findings.stream().filter(f -> f.status() == Status.INSUFFICIENT_DATA))
                .hasSizeGreaterThan(15)
                .allSatisfy(f -> assertThat(f.advice()).startsWith("fill in "));
    }

    @Test
    void theSiteOfMistakesFailsForEachOfThem() {
        List<String> failed = StudiedSite.of("brackenmire-mistakes.yaml").findings().stream()
                .filter(f -> f.status() == Status.NOT_MET)
                .map(Finding::id)
                .toList();
        assertThat(failed)
                .contains(
                        "path.single-main-earth",
                        "path.arresters-through-tank",
                        "path.cubicle-tee",
                        "path.common-point",
                        "conductor.upper-lead.minimum-area",
                        "conductor.tee.minimum-area",
                        "separation.control-cable",
                        "cable.length",
                        "antenna.suppressor",
                        "aux-supply.isolation",
                        "corrosion.couple",
                        "electrode.resistance",
                        "touch.cubicle");
    }
}
