package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.study.DemoSite;
import earthing.study.SiteStudy;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A back-up that does not count for touch and heating may not hide what governs them. */
class BackUpMaskTest {

    private static final String BACK_UP = """
              back-up:
                pickup: 40 A
                curve: definite-time
                delay: 1.2 s
                breaker-time: 60 ms
            """;

    @Test
    void marginsStayWhenTheBackUpIsTakenOutOfTheFile() {
        String with = DemoSite.text("harrowfell-steel-rock.yaml");
        assertThat(with).contains(BACK_UP);
        Map<String, OptionalDouble> margins = margins(with);
        assertThat(margins.keySet()).anyMatch(key -> key.startsWith("touch.pole"));
        assertThat(margins).isEqualTo(margins(with.replace(BACK_UP, "")));
    }

    private static Map<String, OptionalDouble> margins(String text) {
        var site = DemoSite.parse(text);
        List<Finding> findings = ComplianceRun.of(site, SiteStudy.of(site));
        return findings.stream()
                .filter(f -> f.id().startsWith("touch.") || f.id().startsWith("conductor."))
                .collect(Collectors.toMap(f -> f.id() + " " + f.subject(), Finding::margin, (a, b) -> a));
    }
}
