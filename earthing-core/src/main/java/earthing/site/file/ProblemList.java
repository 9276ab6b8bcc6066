package earthing.site.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects the problems of one file; beyond a bound only their number is kept. */
final class ProblemList {

    private static final int MOST = 1000;

    private final String file;
    private final List<Problem> problems = new ArrayList<>();
    private int notListed;

    ProblemList(String file) {
        this.file = file;
    }

    void add(Place place, String key, String text, String found, String expected, String nearest) {
        if (problems.size() >= MOST) {
            notListed++;
            return;
        }
        problems.add(new Problem(file, place.line(), place.column(), key, text, found, expected, nearest));
    }

    void add(Place place, String key, String text, String found, String expected) {
        add(place, key, text, found, expected, "");
    }

    /** A problem of the file's writing, not of a key. */
    void add(Place place, String found) {
        add(place, "", "", found, "", "");
    }

    boolean isEmpty() {
        return problems.isEmpty();
    }

    List<Problem> inOrderOfFile() {
        List<Problem> sorted = new ArrayList<>(problems);
        sorted.sort(Comparator.comparingInt(Problem::line).thenComparingInt(Problem::column));
        if (notListed > 0) {
            sorted.add(new Problem(file, 0, 0, "", "", notListed + " more problems are not listed", "", ""));
        }
        return sorted;
    }
}
