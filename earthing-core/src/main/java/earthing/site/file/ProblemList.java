package earthing.site.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects the problems of one file; beyond a bound they are not kept. */
final class ProblemList {

    private static final int MOST = 1000;

    private final String file;
    private final List<Problem> problems = new ArrayList<>();
    private final List<Problem> beside = new ArrayList<>();
    private boolean more;

    ProblemList(String file) {
        this.file = file;
    }

    void add(Place place, String key, String text, String found, String expected, String nearest) {
        if (problems.size() >= MOST) {
            more = true;
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

    /** Whether something is wrong with a key already. */
    boolean mentions(String key) {
        return problems.stream().anyMatch(problem -> problem.key().equals(key));
    }

    String file() {
        return file;
    }

    /** A list for a file in the same folder. */
    ProblemList beside(String name) {
        int folder = Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1;
        return new ProblemList(file.substring(0, folder) + name);
    }

    /** Takes over the problems of another file; they are told behind those of this one. */
    void include(ProblemList other) {
        beside.addAll(other.inOrderOfFile());
    }

    /** Whether more problems would not be listed, so that looking for them is idle. */
    boolean isFull() {
        return problems.size() >= MOST;
    }

    boolean isEmpty() {
        return problems.isEmpty() && beside.isEmpty();
    }

    List<Problem> inOrderOfFile() {
        List<Problem> sorted = new ArrayList<>(problems);
        sorted.sort(Comparator.comparingInt(Problem::line).thenComparingInt(Problem::column));
        if (more) {
            sorted.add(new Problem(
                    file, 0, 0, "", "", "there are more problems than the " + MOST + " that are listed", "", ""));
        }
        sorted.addAll(beside);
        return sorted;
    }
}
