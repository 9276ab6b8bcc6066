package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What a site's results are does not depend on the sites that shared its cache, nor on how little it keeps. */
class EarthCacheTest {

    private static final Map<String, StudyResults> ALONE = DemoSite.names().stream()
            .collect(Collectors.toMap(name -> name, name -> SiteStudy.of(DemoSite.read(name), StudyScope.AS_BUILT)));

    @Test
    void sitesInOneCacheAtTheSameTimeGiveWhatTheyGiveAlone() {
        EarthCache cache = new EarthCache();
        Map<String, StudyResults> together = new ConcurrentHashMap<>();
        DemoSite.names().parallelStream()
                .forEach(name -> together.put(name, SiteStudy.of(DemoSite.read(name), StudyScope.AS_BUILT, cache)));
        DemoSite.names().forEach(name -> same(name, together.getOrDefault(name, StudyResults.EMPTY)));
    }

    @Test
    void aCacheThatForgetsAtOnceGivesTheSame() {
        EarthCache cache = new EarthCache(1);
        for (String name :
                List.of("ternhook-wood-separate.yaml", "ternhook-wood-shared.yaml", "harrowfell-steel-rock.yaml")) {
            same(name, SiteStudy.of(DemoSite.read(name), StudyScope.AS_BUILT, cache));
        }
    }

    @Test
    void aCacheThatKeepsNothingIsRefused() {
        assertThatThrownBy(() -> new EarthCache(0)).hasMessageContaining("at least one");
    }

    private static void same(String name, StudyResults found) {
        assertThat(ALONE).containsKey(name);
        StudyResults alone = ALONE.getOrDefault(name, StudyResults.EMPTY);
        assertThat(found.results()).as(name).isEqualTo(alone.results());
        assertThat(found.gaps()).as(name).isEqualTo(alone.gaps());
        assertThat(found.assumptions()).as(name).isEqualTo(alone.assumptions());
    }
}
