package earthing.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A page of {@code docs/experiments} taken apart: commands with what they print, the hand calculation, and the table that
 * holds hand and library side by side.
 */
record ExperimentPage(
        String name, String text, List<Command> commands, List<HandLine> hand, List<Row> rows, String exercise) {

    static final Path ROOT = Path.of("..");
    static final Path FOLDER = ROOT.resolve(Path.of("docs", "experiments"));
    private static final Pattern FENCE = Pattern.compile("^```(\\w*)\\n(.*?)^```$", Pattern.MULTILINE | Pattern.DOTALL);
    private static final Pattern ROW = Pattern.compile(
            "^\\| (?<what>[^|]+) \\| (?<site>[\\w-]+) \\| `(?<id>[^`|]+)`(?: \\((?<where>[^)|]*)\\))? \\| "
                    + "(?<hand>[^|]+) \\| (?<library>[^|]+) \\| (?<within>[0-9.]+) % \\|$",
            Pattern.MULTILINE);

    private static final Pattern EXERCISE = Pattern.compile("earthing-cli/bin/earthing exercise ([\\w-]+)");

    /** A command and the lines that stand below it on the page. */
    record Command(String line, List<String> printed) {}

    /** {@code symbol = … = expression = value unit}. */
    record HandLine(String symbol, String expression, String value) {}

    /** A row of the table: where the library's value is found, both values, and how far apart they may be. */
    record Row(String what, String site, String id, String where, String hand, String library, double within) {}

    static List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(".md") && !file.equals("README.md"))
                    .map(file -> file.substring(0, file.length() - ".md".length()))
                    .sorted()
                    .toList();
        }
    }

    static ExperimentPage read(String name) throws IOException {
        String text = Files.readString(FOLDER.resolve(name + ".md"));
        List<Command> commands = new ArrayList<>();
        List<HandLine> hand = new ArrayList<>();
        String pending = "";
        Matcher fence = FENCE.matcher(text);
        while (fence.find()) {
            List<String> lines = fence.group(2).lines().toList();
            switch (fence.group(1)) {
                case "hand" -> lines.forEach(line -> hand.add(handLine(line)));
                case "sh" -> {
                    refuseUnprinted(name, pending);
                    pending = String.join("\n", lines);
                }
                case "output" -> {
                    commands.add(new Command(pending, lines));
                    pending = "";
                }
                default ->
                    throw new IllegalArgumentException(
                            name + ": a fenced block is hand, sh or output; have \"" + fence.group(1) + "\"");
            }
        }
        Matcher exercise = EXERCISE.matcher(pending);
        if (!exercise.matches()) {
            throw new IllegalArgumentException(name + ": the last command asks an exercise; have \"" + pending + "\"");
        }
        List<Row> rows = new ArrayList<>();
        Matcher row = ROW.matcher(text);
        while (row.find()) {
            rows.add(new Row(
                    row.group("what").strip(),
                    row.group("site"),
                    row.group("id"),
                    row.group("where") == null ? "" : row.group("where"),
                    row.group("hand").strip(),
                    row.group("library").strip(),
                    Double.parseDouble(row.group("within"))));
        }
        return new ExperimentPage(name, text, commands, hand, rows, exercise.group(1));
    }

    private static void refuseUnprinted(String name, String command) {
        if (!command.isEmpty()) {
            throw new IllegalArgumentException(name + ": what it prints has to stand below \"" + command + "\"");
        }
    }

    private static HandLine handLine(String line) {
        String[] sides = line.split(" = ", -1);
        if (sides.length < 3) {
            throw new IllegalArgumentException("\"" + line + "\" is not symbol = expression = value");
        }
        return new HandLine(sides[0].strip(), sides[sides.length - 2], sides[sides.length - 1].strip());
    }
}
