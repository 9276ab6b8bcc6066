package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Site;
import java.nio.charset.StandardCharsets;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Random valid sites; damaged files are the matter of {@link ReaderFuzzTest}. */
final class SiteFilePropertyTest {

    @Property(seed = "20261125", tries = 200)
    void everyValidSiteReadsBackAsItWasWritten(@ForAll long seed) {
        Site site = RandomSites.of(seed);
        String written = SiteFile.write(site);
        ReadOutcome outcome =
                SiteFile.read(written.getBytes(StandardCharsets.UTF_8), "random.yaml", RandomSites.files(site));
        assertThat(Problems.of(outcome)).as(written).isEmpty();
        assertThat(((ReadOutcome.Valid) outcome).site()).as(written).isEqualTo(site);
        assertThat(SiteFile.write(((ReadOutcome.Valid) outcome).site())).isEqualTo(written);
    }
}
