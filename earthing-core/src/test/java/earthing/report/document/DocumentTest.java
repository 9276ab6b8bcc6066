package earthing.report.document;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class DocumentTest {

    private static Block.Section section(String id, int level, Block... blocks) {
        return new Block.Section(id, level, id, List.of(blocks));
    }

    @Test
    void headingsMustNest() {
        assertThatThrownBy(() -> section("a", 2, section("b", 4))).hasMessageContaining("must have level 3");
        assertThatThrownBy(() -> new Document("t", "en", List.of(section("a", 3))))
                .hasMessageContaining("level 2");
        assertThatThrownBy(() -> section("a", 1)).hasMessageContaining("2 to 6");
    }

    @Test
    void anchorsStandOnce() {
        assertThatThrownBy(() -> new Document("t", "en", List.of(section("a", 2, section("b", 3)), section("b", 2))))
                .hasMessageContaining("b stands twice");
    }

    @Test
    void rowsHaveAsManyCellsAsColumns() {
        assertThatThrownBy(
                        () -> new Block.Table("t", "t", List.of(Block.Column.text("one")), List.of(List.of("a", "b"))))
                .hasMessageContaining("have a row of 2 cells");
    }

    @Test
    void figuresNeedATextAlternative() {
        assertThatThrownBy(() -> new Block.Figure("f", "caption", " ", "<svg/>", Optional.empty()))
                .hasMessageContaining("text alternative");
    }
}
