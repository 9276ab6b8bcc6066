package earthing.report.render;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.report.document.Block;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

final class TextRendererTest {

    @Test
    void numbersStandToTheRightAndPipesAreEscaped() {
        Block.Table table = new Block.Table(
                "t",
                "t",
                List.of(Block.Column.text("What"), Block.Column.number("How much")),
                List.of(List.of("a|b", "1 V")));
        assertThat(TextRenderer.table(table, 80)).isEqualTo("""
                | What | How much |
                |------|---------:|
                | a\\|b |      1 V |
                """);
    }

    @Property(seed = "20261125", tries = 100)
    void linesOfATableAreOfOneLengthAndLoseNoLetter(
            @ForAll @Size(min = 1, max = 6) List<@AlphaChars @StringLength(min = 1, max = 60) String> words,
            @ForAll @IntRange(min = 60, max = 100) int width) {
        List<Block.Column> columns = new ArrayList<>();
        words.forEach(word -> columns.add(Block.Column.text("H")));
        String text = TextRenderer.table(new Block.Table("t", "t", columns, List.of(words)), width);
        List<String> lines = text.lines().toList();
        assertThat(lines).allMatch(line -> line.length() == lines.get(0).length());
        assertThat(letters(text)).isEqualTo(letters(String.join("", words)) + columns.size());
    }

    private static long letters(String text) {
        return text.chars().filter(Character::isLetter).count();
    }

    @Property(seed = "20261125", tries = 100)
    void foldedWordsAreTheSameWords(
            @ForAll @Size(max = 30) List<@AlphaChars @StringLength(min = 1, max = 12) String> words) {
        String text = String.join(" ", words);
        List<String> lines = TextRenderer.lines(text, 20);
        assertThat(String.join(" ", lines)).isEqualTo(text);
        assertThat(lines).allMatch(line -> line.length() <= 20);
    }
}
