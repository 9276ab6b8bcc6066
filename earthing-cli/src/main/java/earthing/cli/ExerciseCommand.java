package earthing.cli;

import earthing.exercise.AnswerSheet;
import earthing.exercise.Exercise;
import earthing.exercise.ExerciseBook;
import earthing.exercise.Marking;
import earthing.quantity.UnitException;
import earthing.report.render.TextRenderer;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Asks, and tells whether the answer is right. */
@Command(
        name = "exercise",
        header = "Ask a question with a blank; say whether the answer is right.",
        description = {
            "",
            "Alone it lists the exercises; with a name it asks; with --answer it judges, and"
                    + " tells which mistake an answer shows if it is a known one. A room (soil, electrode, fault ...)"
                    + " stands for all exercises of it. An answer is a number with its unit.",
            ""
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:asked, or every answer is right",
            " 1:an answer is wrong",
            " 2:the command was not understood",
            " 3:no answer is wrong, some blanks are empty",
            "65:the sheet is unreadable, or an answer on it is no number with a unit"
        },
        footer = {
            "",
            "Examples:",
            "  earthing exercise",
            "  earthing exercise rod",
            "  earthing exercise rod --answer \"32 ohm\"",
            "  earthing exercise soil --sheet --output soil.md",
            "  earthing exercise --check soil.md"
        })
final class ExerciseCommand extends Subcommand {

    private static final int WIDTH = 80;
    private static final int INDENT = 12;

    @Parameters(arity = "0..*", paramLabel = "NAME", description = "Names of exercises or rooms.")
    private List<String> names = new ArrayList<>();

    @Option(names = "--answer", paramLabel = "ANSWER", description = "Judge this answer to the one exercise named.")
    private Optional<String> answer = Optional.empty();

    @Option(names = "--sheet", description = "Write the exercises named, or all, as a sheet to fill in (Markdown).")
    private boolean sheet;

    @Option(names = "--check", paramLabel = "FILE", description = "Judge the answers on a filled sheet.")
    private Optional<Path> filled = Optional.empty();

    @Mixin
    private final OutputOption output = new OutputOption();

    @Override
    public Integer call() {
        PrintWriter out = spec().commandLine().getOut();
        if ((answer.isPresent() ? 1 : 0) + (sheet ? 1 : 0) + (filled.isPresent() ? 1 : 0) > 1) {
            throw usage("--answer, --sheet and --check exclude each other");
        }
        if (filled.isPresent()) {
            if (!names.isEmpty()) {
                throw usage("--check judges what stands on the sheet; name no exercise beside it");
            }
            return check(filled.get(), out);
        }
        List<Exercise> named = named();
        if (answer.isPresent()) {
            if (named.size() != 1) {
                throw usage("--answer needs the name of one exercise");
            }
            return judge(named.get(0), answer.get(), out);
        }
        if (sheet) {
            output.deliver(AnswerSheet.of(named), out);
        } else if (named.size() == 1) {
            output.deliver(question(named.get(0)), out);
        } else {
            output.deliver(list(named), out);
        }
        return ExitCode.MET.code();
    }

    private ParameterException usage(String message) {
        return new ParameterException(spec().commandLine(), message);
    }

    /** The exercises that the names stand for; all if there is no name. */
    private List<Exercise> named() {
        List<Exercise> all = ExerciseBook.all();
        if (names.isEmpty()) {
            return all;
        }
        Set<Exercise> named = new LinkedHashSet<>();
        for (String name : names) {
            String word = name.strip().toLowerCase(Locale.ROOT);
            List<Exercise> meant = all.stream()
                    .filter(each -> each.id().equals(word) || each.room().equals(word))
                    .toList();
            if (meant.isEmpty()) {
                throw unknown(name, word, all);
            }
            named.addAll(meant);
        }
        return List.copyOf(named);
    }

    private static CommandFailure unknown(String name, String word, List<Exercise> all) {
        String alike = all.stream()
                .map(Exercise::id)
                .filter(id -> word.length() > 1 && (id.contains(word) || word.contains(id)))
                .limit(5)
                .collect(Collectors.joining(", "));
        return new CommandFailure(
                ExitCode.USAGE,
                List.of(
                        "earthing: there is no exercise \"" + name + "\""
                                + (alike.isEmpty() ? "" : "; did you mean " + alike + "?"),
                        "\"earthing exercise\" lists them all."));
    }

    private static String list(List<Exercise> exercises) {
        StringBuilder list = new StringBuilder();
        int widest = exercises.stream().mapToInt(each -> each.id().length()).reduce(0, Integer::max);
        String room = "";
        for (Exercise each : exercises) {
            if (!each.room().equals(room)) {
                list.append(room.isEmpty() ? "" : "\n").append(each.room()).append('\n');
                room = each.room();
            }
            list.append("  ")
                    .append(each.id())
                    .append(" ".repeat(widest - each.id().length() + 2))
                    .append(each.title())
                    .append('\n');
        }
        return list.append("\nAsk one: earthing exercise ")
                .append(exercises.get(0).id())
                .append('\n')
                .toString();
    }

    private static String question(Exercise exercise) {
        StringBuilder text = new StringBuilder(exercise.title()).append("\n\n");
        TextRenderer.lines(exercise.question(), WIDTH)
                .forEach(line -> text.append(line).append('\n'));
        text.append('\n');
        for (int i = 0; i < exercise.given().size(); i++) {
            Exercise.GivenValue given = exercise.given().get(i);
            field(text, i == 0 ? "given" : "", given.name() + ": " + given.text());
        }
        field(text, "formula", exercise.formula());
        String unit = exercise.answer().unit();
        field(
                text,
                "answer",
                exercise.asked() + " ________" + (unit.isEmpty() ? "" : " " + unit) + ", within "
                        + exercise.answer().tolerance());
        field(text, "source", exercise.source());
        return text.append("\nJudge it: earthing exercise ")
                .append(exercise.id())
                .append(" --answer \"...")
                .append(unit.isEmpty() ? "" : " " + unit)
                .append("\"\n")
                .toString();
    }

    private static void field(StringBuilder text, String name, String content) {
        String label = name;
        for (String line : TextRenderer.lines(content, WIDTH - INDENT)) {
            text.append("  ")
                    .append(label)
                    .append(" ".repeat(INDENT - 2 - label.length()))
                    .append(line)
                    .append('\n');
            label = "";
        }
    }

    private int judge(Exercise exercise, String answer, PrintWriter out) {
        Marking marking;
        try {
            marking = Marking.of(exercise, answer);
        } catch (UnitException e) {
            throw new CommandFailure(ExitCode.USAGE, List.of("earthing: " + exercise.id() + ": " + e.getMessage()));
        }
        output.deliver(verdict(exercise, answer, marking), out);
        return (marking.right() ? ExitCode.MET : ExitCode.NOT_MET).code();
    }

    private static String verdict(Exercise exercise, String answer, Marking marking) {
        StringBuilder text = new StringBuilder();
        String first = (marking.right() ? "Right: " : "Not right: ") + answer.strip() + " is " + marking.distance()
                + (marking.right() ? "" : "; " + exercise.answer().tolerance() + " would be near enough") + ".";
        TextRenderer.lines(first, WIDTH).forEach(line -> text.append(line).append('\n'));
        TextRenderer.lines(marking.comment(), WIDTH)
                .forEach(line -> text.append(line).append('\n'));
        return text.toString();
    }

    private int check(Path file, PrintWriter out) {
        AnswerSheet.Content content = AnswerSheet.read(text(file));
        if (!content.problems().isEmpty()) {
            throw new CommandFailure(
                    ExitCode.INVALID_INPUT,
                    content.problems().stream()
                            .map(problem -> file + ":" + problem)
                            .toList());
        }
        StringBuilder text = new StringBuilder();
        int right = 0;
        int wrong = 0;
        int blank = 0;
        for (AnswerSheet.Filled each : content.answers()) {
            if (each.text().isEmpty()) {
                blank++;
                continue;
            }
            Marking marking = marked(each);
            text.append(each.exercise().id()).append('\n');
            TextRenderer.lines(verdict(each.exercise(), each.text(), marking), WIDTH - 2)
                    .forEach(line -> text.append("  ").append(line).append('\n'));
            if (marking.right()) {
                right++;
            } else {
                wrong++;
            }
        }
        text.append(text.isEmpty() ? "" : "\n")
                .append(right + " right, " + wrong + " not right, " + blank + " left blank\n");
        output.deliver(text.toString(), out);
        return (wrong > 0 ? ExitCode.NOT_MET : blank > 0 ? ExitCode.NOT_ASSESSED : ExitCode.MET).code();
    }

    /** The sheet was read before: every answer on it can be judged. */
    private static Marking marked(AnswerSheet.Filled filled) {
        try {
            return filled.mark();
        } catch (UnitException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (NoSuchFileException e) {
            throw unreadable(file, "there is no such file");
        } catch (CharacterCodingException e) {
            throw unreadable(file, "it is not UTF-8 text");
        } catch (IOException e) {
            throw unreadable(file, Files.isDirectory(file) ? "it is a folder" : String.valueOf(e.getMessage()));
        }
    }

    private static CommandFailure unreadable(Path file, String reason) {
        return new CommandFailure(ExitCode.INVALID_INPUT, List.of("earthing: cannot read " + file + ": " + reason));
    }
}
