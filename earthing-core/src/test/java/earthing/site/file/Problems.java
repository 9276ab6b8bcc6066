package earthing.site.file;

import java.util.List;

/** The problems of an outcome as a user sees them. */
final class Problems {

    private Problems() {}

    static List<String> of(ReadOutcome outcome) {
        return outcome instanceof ReadOutcome.Invalid invalid
                ? invalid.problems().stream().map(Problem::text).toList()
                : List.of();
    }
}
