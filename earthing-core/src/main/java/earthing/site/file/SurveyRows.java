package earthing.site.file;

import earthing.quantity.Numbers;
import earthing.soil.Reading;
import earthing.soil.Sounding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The rows of a survey by traverse, and what they say about one another. */
final class SurveyRows {

    /** A reading this many times above or below both its neighbours has a slipped decimal point. */
    private static final double SLIPPED = 10;

    /** Above this median the unit is more often ohm.cm than the ground is rock [Ω·m]; common practice. */
    private static final double SELDOM = 20_000;

    private record Row(int line, Reading reading) {}

    private final String file;
    private final ProblemList problems;
    private final Map<String, List<Row>> traverses = new LinkedHashMap<>();
    private final List<String> warnings = new ArrayList<>();

    SurveyRows(String file, ProblemList problems) {
        this.file = file;
        this.problems = problems;
    }

    void add(int line, String traverse, Reading reading) {
        List<Row> rows = traverses.computeIfAbsent(traverse, name -> new ArrayList<>());
        for (Row other : rows) {
            if (other.reading().equals(reading)) {
                problems.add(
                        new Place(line, 1),
                        "",
                        "",
                        "the same reading stands in line " + other.line(),
                        "another reading; a repeated measurement hardly gives all the same digits");
                return;
            }
        }
        rows.add(new Row(line, reading));
    }

    void check() {
        if (traverses.isEmpty() && problems.isEmpty()) {
            problems.add(Place.WHOLE_FILE, "there is no reading in this file");
        }
        List<Double> all = new ArrayList<>();
        for (List<Row> rows : traverses.values()) {
            List<Row> sorted = new ArrayList<>(rows);
            sorted.sort(Comparator.comparingDouble(row -> row.reading().spacing()));
            for (int i = 0; i < sorted.size(); i++) {
                all.add(sorted.get(i).reading().apparentResistivity());
                slipped(sorted, i);
            }
        }
        all.sort(Comparator.naturalOrder());
        if (!all.isEmpty() && all.get(all.size() / 2) > SELDOM) {
            warnings.add(file + ": the median apparent resistivity is "
                    + Numbers.brief(all.get(all.size() / 2))
                    + " ohm.m, which is seldom; were the readings in ohm.cm?");
        }
    }

    private void slipped(List<Row> sorted, int i) {
        Row row = sorted.get(i);
        if (sorted.size() < 3) {
            return;
        }
        // At an end the two readings next to it stand for its neighbours.
        Row before = sorted.get(i == 0 ? 1 : i - 1);
        Row after = sorted.get(i == 0 ? 2 : i == sorted.size() - 1 ? i - 2 : i + 1);
        double toBefore = row.reading().apparentResistivity() / before.reading().apparentResistivity();
        double toAfter = row.reading().apparentResistivity() / after.reading().apparentResistivity();
        boolean high = toBefore > SLIPPED && toAfter > SLIPPED;
        boolean low = toBefore < 1 / SLIPPED && toAfter < 1 / SLIPPED;
        if (high || low) {
            problems.add(
                    new Place(row.line(), 1),
                    "",
                    "",
                    Numbers.brief(row.reading().apparentResistivity()) + " ohm.m is more than ten times "
                            + (high ? "above" : "below") + " both neighbouring readings",
                    "a reading without slipped decimal point, or # before the row to leave it out");
        }
    }

    List<Sounding> soundings() {
        List<Sounding> list = new ArrayList<>();
        traverses.forEach((name, rows) ->
                list.add(new Sounding(name, rows.stream().map(Row::reading).toList())));
        return list;
    }

    List<String> warnings() {
        return List.copyOf(warnings);
    }
}
