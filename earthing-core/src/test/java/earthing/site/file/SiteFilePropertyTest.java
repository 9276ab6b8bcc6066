package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Site;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Random valid sites, and random damage to the demo sites. */
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

    /** A file with a line dropped, doubled, swapped or altered is refused with reasons, or loses no key that it has. */
    @Property(seed = "20261125", tries = 150)
    void damagedLinesAreToldOrReadInFull(@ForAll long seed) throws IOException {
        Random random = new Random(seed);
        List<String> lines = new ArrayList<>(Arrays.asList(demo(random).split("\n", -1)));
        for (int n = random.nextInt(3); n >= 0; n--) {
            int at = random.nextInt(lines.size());
            switch (random.nextInt(5)) {
                case 0 -> lines.remove(at);
                case 1 -> lines.add(at, lines.get(at));
                case 2 -> lines.add(at, lines.get(random.nextInt(lines.size())));
                case 3 -> lines.set(at, ' ' + lines.get(at));
                default -> lines.set(at, altered(lines.get(at), random));
            }
        }
        toldOrReadInFull(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }

    @Property(seed = "20261125", tries = 150)
    void damagedBytesAreToldOrReadInFull(@ForAll long seed) throws IOException {
        Random random = new Random(seed);
        byte[] bytes = demo(random).getBytes(StandardCharsets.UTF_8);
        for (int n = random.nextInt(4); n >= 0; n--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        toldOrReadInFull(random.nextBoolean() ? bytes : Arrays.copyOf(bytes, random.nextInt(bytes.length)));
    }

    private static String altered(String line, Random random) {
        String signs = "{}[]:,#&*!|>%@\"'-? \t\n0129.eE+";
        int at = random.nextInt(line.length() + 1);
        return line.substring(0, at) + signs.charAt(random.nextInt(signs.length())) + line.substring(at);
    }

    private static String demo(Random random) throws IOException {
        List<Path> sites = DemoSitesTest.sites();
        return Files.readString(sites.get(random.nextInt(sites.size())));
    }

    private static void toldOrReadInFull(byte[] bytes) {
        ReadOutcome outcome = SiteFile.read(bytes, "damaged.yaml");
        if (outcome instanceof ReadOutcome.Valid valid) {
            // Whatever the file still says as YAML is in the site, and nothing else.
            assertThat(paths(SiteFile.write(valid.site()))).isEqualTo(paths(valid.text()));
        } else {
            assertThat(Problems.of(outcome)).isNotEmpty().allMatch(problem -> !problem.contains("\n"));
        }
    }

    /** Every key of a file with its value, as the tree of the file has it. */
    private static Set<String> paths(String text) {
        Set<String> paths = new TreeSet<>();
        ProblemList problems = new ProblemList("paths");
        Tree root = TreeReader.read(text, problems).root();
        assertThat(problems.isEmpty()).isTrue();
        if (root != null) {
            collect(root, "", paths);
        }
        return paths;
    }

    private static void collect(Tree tree, String path, Set<String> paths) {
        if (tree instanceof Tree.Pairs pairs) {
            List<Tree.Pair> said = said(pairs);
            boolean nominalOnly = said.size() == 1 && said.get(0).key().equals("nominal");
            for (Tree.Pair pair : said) {
                collect(pair.value(), nominalOnly ? path : BlockReader.join(path, pair.key()), paths);
            }
        } else if (tree instanceof Tree.Items items) {
            for (int i = 0; i < items.items().size(); i++) {
                collect(items.items().get(i), path + '[' + i + ']', paths);
            }
        } else if (tree instanceof Tree.Scalar scalar) {
            paths.add(path + '=' + scalar.text().strip());
        }
    }

    /** A bound that says the same as the nominal value is not written again. */
    private static List<Tree.Pair> said(Tree.Pairs pairs) {
        String nominal = pairs.pairs().stream()
                .filter(pair -> pair.key().equals("nominal"))
                .map(pair -> pair.value() instanceof Tree.Scalar scalar
                        ? scalar.text().strip()
                        : "")
                .findFirst()
                .orElse("");
        return pairs.pairs().stream()
                .filter(pair -> nominal.isEmpty()
                        || !List.of("low", "high").contains(pair.key())
                        || !(pair.value() instanceof Tree.Scalar scalar
                                && scalar.text().strip().equals(nominal)))
                .toList();
    }
}
