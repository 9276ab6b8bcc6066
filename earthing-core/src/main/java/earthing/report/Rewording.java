package earthing.report;

import earthing.report.document.Block;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/** Every text of some blocks put into other words, in reading order; files, headings, lines of working and drawings stay. */
final class Rewording {

    private final UnaryOperator<String> words;
    private final Predicate<Block.Table> spared;

    private Rewording(UnaryOperator<String> words, Predicate<Block.Table> spared) {
        this.words = words;
        this.spared = spared;
    }

    /**
     * The same blocks in other words.
     *
     * @param blocks blocks in reading order
     * @param words what to do with each text
     * @param spared tables that stay as they are
     */
    static List<Block> of(List<Block> blocks, UnaryOperator<String> words, Predicate<Block.Table> spared) {
        return new Rewording(words, spared).in(blocks);
    }

    private List<Block> in(List<Block> blocks) {
        return blocks.stream().map(this::in).toList();
    }

    private Block in(Block block) {
        if (block instanceof Block.Section section) {
            return new Block.Section(section.id(), section.level(), section.title(), in(section.blocks()));
        } else if (block instanceof Block.Paragraph paragraph) {
            return new Block.Paragraph(words.apply(paragraph.text()));
        } else if (block instanceof Block.Headline headline) {
            return new Block.Headline(headline.status(), words.apply(headline.text()));
        } else if (block instanceof Block.Bullets bullets) {
            return new Block.Bullets(lines(bullets.items()));
        } else if (block instanceof Block.Caution caution) {
            return new Block.Caution(caution.title(), lines(caution.lines()));
        } else if (block instanceof Block.Facts facts) {
            return new Block.Facts(facts.facts().stream()
                    .map(fact -> new Block.Fact(fact.name(), words.apply(fact.value())))
                    .toList());
        } else if (block instanceof Block.Table table) {
            return in(table);
        } else if (block instanceof Block.Choice choice) {
            return new Block.Choice(in(choice.table()), choice.keys());
        } else if (block instanceof Block.Working working) {
            return new Block.Working(words.apply(working.subject()), working.line(), words.apply(working.basis()));
        } else if (block instanceof Block.Figure figure) {
            return new Block.Figure(
                    figure.id(),
                    words.apply(figure.caption()),
                    words.apply(figure.alternative()),
                    figure.svg(),
                    figure.data());
        }
        return block;
    }

    private Block.Table in(Block.Table table) {
        if (spared.test(table)) {
            return table;
        }
        return new Block.Table(
                table.id(),
                words.apply(table.caption()),
                table.columns().stream()
                        .map(column -> new Block.Column(words.apply(column.head()), column.unit(), column.kind()))
                        .toList(),
                table.rows().stream().map(this::lines).toList());
    }

    private List<String> lines(List<String> lines) {
        return lines.stream().map(words).toList();
    }
}
