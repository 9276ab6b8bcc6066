package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Site;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A reader is told where the foot of a pole would stand on better ground, which the model of a tube without an end leaves out. */
class FootOnBetterGroundTest {

    @ParameterizedTest
    @CsvSource({
        "1000, 100, 1.9, true",
        "1000, 100, 2.0, true",
        "1000, 100, 2.2, false",
        "1000, 100, 1.7, false",
        "100, 1000, 1.9, false",
        "110, 100, 1.9, false"
    })
    void isTold(double above, double below, double thickness, boolean told) {
        Site site = DemoSite.parse(DemoSite.text("ollinford-concrete-lv.yaml")
                .replaceFirst(
                        "(?m)^  resistivity: .*$",
                        "  layers:\n    - {resistivity: " + above + " ohm.m, thickness: " + thickness
                                + " m}\n    - {resistivity: " + below + " ohm.m}"));
        List<String> notes = SiteStudy.electrodes(site, new EarthCache(), StudyScope.AS_BUILT)
                .notes();
        assertThat(notes.stream().anyMatch(note -> note.contains("the flat of a foot is not in the model")))
                .isEqualTo(told);
    }
}
