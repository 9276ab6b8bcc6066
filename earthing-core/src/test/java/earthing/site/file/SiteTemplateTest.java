package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Dimension;
import earthing.site.Key;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class SiteTemplateTest {

    @Test
    void templateIsValidAsItStands() {
        assertThat(Problems.of(SiteFile.read(SiteTemplate.text(), "new.yaml"))).isEmpty();
    }

    @Test
    void templateShowsEveryKeyWithItsMeaning() {
        String text = SiteTemplate.text();
        String joined = text.replaceAll("\\n#? *# ", " ");
        for (Entry entry : everyEntry()) {
            assertThat(text).containsPattern("(?m)^#? *(- )?" + entry.key() + ":");
            assertThat(joined).contains(entry.meaning().doc());
        }
    }

    @Test
    void everyKeyThatTakesAValueHasAnExampleThatItsReaderTakes() {
        for (Entry entry : everyEntry()) {
            if (entry.kind() != Entry.Kind.BLOCK) {
                assertThat(entry.meaning().example()).as(entry.key()).isNotEmpty();
                ProblemList problems = new ProblemList("example");
                ValueReader reader = new ValueReader(
                        problems, new Facts(), OptionalDouble.of(50), name -> RandomSites.table(entry.meaning()));
                Tree tree = TreeReader.read("x: " + SiteTemplate.example(entry), problems)
                        .root();
                Tree value = ((Tree.Pairs) Objects.requireNonNull(tree))
                        .pairs()
                        .get(0)
                        .value();
                List<Tree> values = entry.isList() ? ((Tree.Items) value).items() : List.of(value);
                for (Tree one : values) {
                    assertThat(reader.read(entry, one, entry.key()))
                            .as(entry.key())
                            .isNotNull();
                }
                assertThat(problems.inOrderOfFile()).isEmpty();
            }
        }
    }

    @Test
    void everyBlockThatIsSwitchedOffReadsWhenItIsSwitchedOn() {
        String[] lines = SiteTemplate.text().split("\n", -1);
        int switchedOn = 0;
        for (Entry entry : Block.site().entries()) {
            int start = List.of(lines).indexOf("#" + entry.key() + ":");
            if (start >= 0) {
                List<String> changed = new ArrayList<>(List.of(lines));
                for (int i = start; i < lines.length && lines[i].startsWith("#"); i++) {
                    changed.set(i, lines[i].substring(1));
                }
                // The template has one electrode and no files beside it; further ones are for the author to define. It
                // shows shape and reading of an anchor, of which a file has one, and all keys of an
                // expectation, and has no two bounded values.
                assertThat(Problems.of(SiteFile.read(String.join("\n", changed), entry.key())))
                        .allMatch(problem -> problem.contains("is not the name of an electrode")
                                || problem.endsWith("expected one of the two")
                                || problem.contains("there is no such file")
                                || problem.contains("a result has a case")
                                || problem.contains("uncertainty."));
                switchedOn++;
            }
        }
        assertThat(switchedOn).isGreaterThan(8);
    }

    @Test
    void onlyQuantitiesNameADimensionAndASign() {
        for (Entry entry : everyEntry()) {
            Key key = entry.meaning();
            if (entry.kind() != Entry.Kind.QUANTITY) {
                assertThat(key.unit()).as(entry.key()).isEqualTo(Dimension.RATIO);
                assertThat(key.sign()).as(entry.key()).isEqualTo(Key.Sign.POSITIVE);
            }
            if (entry.kind() != Entry.Kind.TEXT) {
                assertThat(key.words()).as(entry.key()).isEmpty();
                assertThat(key.text()).as(entry.key()).isEqualTo(Key.Text.FREE);
            }
        }
    }

    @Test
    void headOfTheTemplateSendsTheReaderToWhoIsResponsible() {
        assertThat(SiteTemplate.text())
                .contains("licensed person is responsible")
                .contains("codes and the owner's");
        assertThat(Files.exists(Path.of("..", "docs", "site-file.md"))).isTrue();
    }

    static List<Entry> everyEntry() {
        List<Entry> entries = new ArrayList<>();
        collect(Block.site(), entries, new HashSet<>());
        assertThat(entries).hasSizeGreaterThan(200);
        return entries;
    }

    private static void collect(Block block, List<Entry> entries, Set<Block> seen) {
        if (seen.add(block)) {
            for (Entry entry : block.entries()) {
                entries.add(entry);
                if (entry.kind() == Entry.Kind.BLOCK) {
                    collect(entry.block(), entries, seen);
                }
            }
        }
    }
}
