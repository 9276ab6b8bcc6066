package earthing.decision;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads what changes cost: a file of two columns, comma or semicolon, whose head line is {@code change,cost} or, with the
 * owner's own unit, {@code change,cost in days}. A change that is not named has no known cost. What is wrong is told all
 * at once.
 */
public final class RemedyCostFile {

    private static final String HEAD = "change,cost in days";
    private static final int LONGEST = 100_000;

    private RemedyCostFile() {}

    /**
     * Reads a file.
     *
     * @param text content of the file
     * @param name its name, for problems
     * @param catalogue the changes that can be named
     * @param problems where problems go: file, line, what was found and what was expected
     * @return the costs, as far as they could be read
     */
    public static RemedyCosts read(String text, String name, List<Remedy> catalogue, List<String> problems) {
        if (text.length() > LONGEST) {
            problems.add(name + ": this file is too long for a list of costs");
            return RemedyCosts.NONE;
        }
        String whole = text.startsWith("\uFEFF") ? text.substring(1) : text;
        List<String> lines = whole.lines().toList();
        if (whole.isBlank()) {
            problems.add(name + ": there is nothing in this file; expected the head line " + HEAD);
            return RemedyCosts.NONE;
        }
        String separator = lines.get(0).contains(";") ? ";" : ",";
        String[] head = lines.get(0).strip().split(separator, -1);
        if (head.length != 2
                || !head[0].strip().equals("change")
                || !(head[1].strip().equals("cost") || head[1].strip().startsWith("cost in "))) {
            problems.add(name + ":1: \"" + shortened(lines.get(0)) + "\" is no head line; expected change" + separator
                    + "cost, or change" + separator + "cost in <your unit>");
            return RemedyCosts.NONE;
        }
        String column = head[1].strip();
        String unit = column.equals("cost")
                ? ""
                : column.substring("cost in ".length()).strip();
        List<String> ids = catalogue.stream().map(Remedy::id).toList();
        Map<String, Double> costs = new HashMap<>();
        List<String> seen = new ArrayList<>();
        for (int i = 1; i < lines.size(); i++) {
            if (!lines.get(i).isBlank()) {
                row(lines.get(i), separator, name + ":" + (i + 1) + ": ", ids, seen, costs, problems);
            }
        }
        return new RemedyCosts(unit, costs);
    }

    private static void row(
            String line,
            String separator,
            String place,
            List<String> ids,
            List<String> seen,
            Map<String, Double> costs,
            List<String> problems) {
        String[] cells = line.split(separator, -1);
        if (cells.length != 2) {
            problems.add(place + "there are " + cells.length + " cells in this line; expected a change and its cost");
            return;
        }
        String id = cells[0].strip();
        String cost = cells[1].strip();
        if (!ids.contains(id)) {
            problems.add(place + '"' + shortened(id) + "\" is no change of the catalogue; expected one of "
                    + String.join(", ", ids));
        } else if (seen.contains(id)) {
            problems.add(place + id + " has a cost already; expected each change once");
        } else if (!cost.matches("[0-9]{1,12}(\\.[0-9]{1,6})?")) {
            problems.add(
                    place + '"' + shortened(cost) + "\" is no cost; expected a number >= 0 with a decimal point, its"
                            + " unit stands in the head line");
        } else {
            costs.put(id, Double.parseDouble(cost));
        }
        seen.add(id);
    }

    private static String shortened(String text) {
        return text.length() > 40 ? text.substring(0, 40) + "..." : text;
    }
}
