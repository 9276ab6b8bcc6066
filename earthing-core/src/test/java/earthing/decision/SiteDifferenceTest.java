package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.ComplianceRun;
import earthing.decision.SiteDifference.FindingChange;
import earthing.decision.SiteDifference.ResultChange;
import earthing.decision.SiteDifference.Side;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

final class SiteDifferenceTest {

    private static final Path FILE = Path.of("../earthing-cli/sites/ternhook-wood-shared.yaml");

    @Test
    void aSiteDoesNotDifferFromItself() throws IOException {
        Side side = side(Files.readString(FILE));
        SiteDifference none = SiteDifference.between(side, side(Files.readString(FILE)));
        assertThat(none.inputs()).isEmpty();
        assertThat(none.results()).isEmpty();
        assertThat(none.findings()).isEmpty();
        assertThat(none.sameResults()).isGreaterThan(100);
    }

    @Test
    void oneChangedInputIsNamedWithWhatItMoves() throws IOException {
        String text = Files.readString(FILE);
        String thinner = text.replaceFirst("area: 70 mm2", "area: 10 mm2");
        assertThat(thinner).isNotEqualTo(text);
        SiteDifference difference = SiteDifference.between(side(text), side(thinner));
        assertThat(difference.inputs()).hasSize(1);
        assertThat(difference.inputs().get(0).before()).startsWith("70 mm2");
        assertThat(difference.inputs().get(0).after()).startsWith("10 mm2");
        assertThat(difference.results()).isNotEmpty().allSatisfy(SiteDifferenceTest::reallyDiffers);
        assertThat(difference.findings().stream()
                        .filter(FindingChange::ofStatus)
                        .map(FindingChange::id))
                .anyMatch(id -> id.endsWith(".minimum-area"));
    }

    @Test
    void theOtherWayRoundTheSameThingsDiffer() throws IOException {
        Side a = side(Files.readString(FILE));
        Side b = side(Files.readString(Path.of("../earthing-cli/sites/ternhook-wood-separate.yaml")));
        SiteDifference there = SiteDifference.between(a, b);
        SiteDifference back = SiteDifference.between(b, a);
        assertThat(back.inputs()).hasSameSizeAs(there.inputs());
        assertThat(back.results()).hasSameSizeAs(there.results());
        assertThat(back.findings()).hasSameSizeAs(there.findings());
        assertThat(back.sameResults()).isEqualTo(there.sameResults());
        assertThat(there.inputs())
                .anyMatch(change -> change.key().equals("cubicle.earth")
                        && change.before().equals("shared")
                        && change.after().equals("separate"));
    }

    private static void reallyDiffers(ResultChange change) {
        assertThat(change.before().equals(change.after())).as(change.id()).isFalse();
        change.ratio().ifPresent(ratio -> assertThat(Math.abs(ratio - 1)).isGreaterThan(0.9 * SiteDifference.RELATIVE));
    }

    private static Side side(String text) {
        Site site = ((ReadOutcome.Valid) SiteFile.read(text, FILE.toString())).site();
        StudyResults results = SiteStudy.of(site);
        return new Side(site, results, ComplianceRun.of(site, results));
    }
}
