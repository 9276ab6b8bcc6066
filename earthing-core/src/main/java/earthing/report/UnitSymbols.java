package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Units behind a number as they are printed everywhere else: what the studies tell in words has the ASCII units of the site
 * file. What the file itself says, and lines of working, stay as they are.
 */
final class UnitSymbols {

    private static final Pattern UNIT =
            Pattern.compile("(?<=\\d)[ \\u00a0]([mkMµ]?)(ohm\\.m|ohm|degC|mm2|us)(?![A-Za-z0-9.]*[A-Za-z0-9])");

    private UnitSymbols() {}

    static List<Block> in(List<Block> blocks) {
        return blocks.stream().map(UnitSymbols::in).toList();
    }

    private static Block in(Block block) {
        if (block instanceof Block.Section section) {
            return new Block.Section(section.id(), section.level(), section.title(), in(section.blocks()));
        } else if (block instanceof Block.Paragraph paragraph) {
            return new Block.Paragraph(words(paragraph.text()));
        } else if (block instanceof Block.Bullets bullets) {
            return new Block.Bullets(lines(bullets.items()));
        } else if (block instanceof Block.Facts facts) {
            return new Block.Facts(facts.facts().stream()
                    .map(fact -> new Block.Fact(fact.name(), words(fact.value())))
                    .toList());
        } else if (block instanceof Block.Table table && !ofTheFile(table)) {
            return in(table);
        } else if (block instanceof Block.Choice choice) {
            return new Block.Choice(in(choice.table()), choice.keys());
        } else if (block instanceof Block.Figure figure) {
            return new Block.Figure(
                    figure.id(), words(figure.caption()), words(figure.alternative()), figure.svg(), figure.data());
        }
        return block;
    }

    private static Block.Table in(Block.Table table) {
        return new Block.Table(
                table.id(),
                words(table.caption()),
                table.columns(),
                table.rows().stream().map(UnitSymbols::lines).toList());
    }

    private static boolean ofTheFile(Block.Table table) {
        return table.id().startsWith("inputs-") && !table.id().equals("inputs-effective");
    }

    private static List<String> lines(List<String> lines) {
        return lines.stream().map(UnitSymbols::words).toList();
    }

    static String words(String text) {
        return UNIT.matcher(text).replaceAll(match -> Amount.NO_BREAK + match.group(1) + symbol(match.group(2)));
    }

    private static String symbol(String unit) {
        return switch (unit) {
            case "ohm.m" -> "Ω·m";
            case "ohm" -> "Ω";
            case "degC" -> "°C";
            case "mm2" -> "mm²";
            default -> "µs";
        };
    }
}
