package earthing.report;

import earthing.quantity.Source;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The sources that a report cites. While it is built, in another order than it is read, a citation is a mark; in the end the
 * marks become numbers in the order of their first mention.
 */
final class References {

    /** Anchor of the table of sources. */
    static final String TABLE = "references-table";

    /** No character of any language: nobody types it into a site file. */
    private static final String MARK = "\uE000";

    private static final Pattern CITATION = Pattern.compile("\\[" + MARK + "(\\d{1,6})\\]");

    private final Map<Source, Integer> numbers = new LinkedHashMap<>();

    String cite(Source source) {
        Integer number = numbers.get(source);
        if (number == null) {
            number = numbers.size() + 1;
            numbers.put(source, number);
        }
        return mark(number);
    }

    private static String mark(int number) {
        return "[" + MARK + number + "]";
    }

    /**
     * The blocks with numbers for marks, rising as they are first read, and the table of sources in that order; it has no row
     * for a source that nothing cites.
     *
     * @param blocks blocks in reading order
     */
    List<Block> numbered(List<Block> blocks) {
        Map<String, String> cited = new LinkedHashMap<>();
        Rewording.of(
                blocks,
                text -> {
                    CITATION.matcher(text)
                            .results()
                            .forEach(mark -> cited.putIfAbsent(mark.group(), "[" + (cited.size() + 1) + "]"));
                    return text;
                },
                table -> table.id().equals(TABLE));
        List<Block> read = blocks.stream().map(block -> sorted(block, cited)).toList();
        return Rewording.of(
                read,
                text -> CITATION.matcher(text)
                        .replaceAll(mark -> Matcher.quoteReplacement(cited.getOrDefault(mark.group(), mark.group()))),
                table -> false);
    }

    private static Block sorted(Block block, Map<String, String> cited) {
        if (block instanceof Block.Section section) {
            return new Block.Section(
                    section.id(),
                    section.level(),
                    section.title(),
                    section.blocks().stream().map(each -> sorted(each, cited)).toList());
        }
        if (block instanceof Block.Table table && table.id().equals(TABLE)) {
            List<String> order = List.copyOf(cited.keySet());
            return new Block.Table(
                    table.id(),
                    table.caption(),
                    table.columns(),
                    table.rows().stream()
                            .filter(row -> order.contains(row.get(0)))
                            .sorted(Comparator.comparingInt(row -> order.indexOf(row.get(0))))
                            .toList());
        }
        return block;
    }

    List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        numbers.forEach((source, number) -> rows.add(
                List.of(mark(number), kind(source.kind()), source.title(), source.locus(), status(source.status()))));
        return rows;
    }

    /** A source in the few words that fit beside a limit, with its number. */
    String brief(Source source) {
        String words = switch (source.kind()) {
            case STANDARD, PUBLICATION ->
                source.locus().isEmpty() ? source.title() : source.title() + ", " + source.locus();
            case COMMON_PRACTICE -> "common practice";
            case OWNER -> "owner, " + source.locus();
            case TOOL -> "this tool";
        };
        return words + Amount.NO_BREAK + cite(source);
    }

    static String kind(Source.Kind kind) {
        return switch (kind) {
            case STANDARD -> "standard";
            case PUBLICATION -> "publication";
            case COMMON_PRACTICE -> "common practice";
            case OWNER -> "owner";
            case TOOL -> "this tool";
        };
    }

    private static String status(Source.Status status) {
        return switch (status) {
            case READ -> "print was read";
            case FROM_MEMORY -> "from memory";
            case NOT_PRINTED -> "–";
        };
    }
}
