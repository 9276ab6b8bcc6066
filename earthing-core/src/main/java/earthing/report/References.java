package earthing.report;

import earthing.quantity.Source;
import earthing.report.document.Amount;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The sources that a report cites, numbered in the order of their first mention. */
final class References {

    private final Map<Source, Integer> numbers = new LinkedHashMap<>();

    String cite(Source source) {
        Integer number = numbers.get(source);
        if (number == null) {
            number = numbers.size() + 1;
            numbers.put(source, number);
        }
        return "[" + number + "]";
    }

    List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        numbers.forEach((source, number) -> rows.add(List.of(
                "[" + number + "]", kind(source.kind()), source.title(), source.locus(), status(source.status()))));
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
