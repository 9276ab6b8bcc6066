package earthing.site.file;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A good file, damaged at random the way files are damaged: by editors, spreadsheets, transfers and malice. */
final class DamagedFile {

    private static final Pattern TOKEN = Pattern.compile("[^\\s,;:{}\\[\\]\"]+");
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(?:\\.\\d+)?");
    private static final Pattern DIGIT = Pattern.compile("\\d(?![^\\n]*#)");
    private static final Pattern DECIMAL = Pattern.compile("(\\d)\\.(\\d)");
    private static final Pattern UNIT = Pattern.compile("(?<=\\d )[A-Za-z][A-Za-z0-9./]*|(?<=\\[)[A-Za-z.]+(?=])");

    private static final List<String> NUMBERS = List.of(
            "1e308",
            "1e999",
            "-1e999",
            "1e-999",
            "4.9e-324",
            "NaN",
            ".inf",
            "Infinity",
            "-0",
            "0",
            "-1",
            "0x10",
            "0o17",
            "1_000",
            "1,000.5",
            "1.000,5",
            "1 000",
            "1'000",
            "1.2.3",
            "1e",
            "e5",
            "+5",
            "5.",
            ".5",
            "٣",
            "３",
            "½",
            "1d",
            "1f",
            "0x1p3",
            "2147483648",
            "9".repeat(59),
            "9".repeat(400),
            "0." + "0".repeat(300) + "1");

    private static final List<String> UNITS = List.of(
            "m", "mm", "km", "ft", "in", "mm2", "m2", "AWG", "kcmil", "ohm", "kohm", "mohm", "ohm.m", "ohm.cm", "A",
            "kA", "V", "kV", "MV", "s", "ms", "us", "cycles", "Hz", "degC", "degF", "%", "C", "kJ", "Ω", "µs", "M", "K",
            "KV", "ka", "metre", "");

    private static final List<String> SIGNS = List.of(
            "\0",
            "\uFEFF",
            "\r",
            "\r\n",
            "\n",
            "\u0085",
            "\u2028",
            "\u00A0",
            "\u001b[31m",
            "\t",
            "\u200B",
            "\u202E",
            "\"",
            "'",
            "#",
            " #",
            ": ",
            ":",
            "- ",
            "|",
            ">",
            "|\n",
            "&a ",
            "*a",
            "!!str ",
            "!",
            "%",
            "@",
            "`",
            "? ",
            "{",
            "}",
            "[",
            "]",
            ",",
            ";",
            "<<: *a",
            "---\n",
            "...\n",
            "\\",
            "\"\"",
            "null",
            "~",
            "# decimal: comma\n",
            "+",
            "-",
            "e",
            "E",
            ".",
            "0",
            "9");

    private static final List<Charset> OTHER_CODES = List.of(
            StandardCharsets.UTF_16,
            StandardCharsets.UTF_16LE,
            StandardCharsets.UTF_16BE,
            StandardCharsets.ISO_8859_1,
            Charset.forName("windows-1252"),
            Charset.forName("UTF-32"),
            Charset.forName("IBM037"));

    private final Random random;
    private final List<String> others;

    private DamagedFile(Random random, List<String> others) {
        this.random = random;
        this.others = others;
    }

    /**
     * Damages a file.
     *
     * @param good content of a good file
     * @param others good files of the same kind, from which pieces are taken
     * @param random where chance comes from
     * @return its bytes after one kind of damage, or some
     */
    static byte[] of(String good, List<String> others, Random random) {
        DamagedFile file = new DamagedFile(random, others);
        String text = good;
        do {
            text = file.damaged(text);
        } while (random.nextInt(4) == 0);
        return file.coded(text);
    }

    /** A text without sense: of any characters, or of those that mean something to the reader. */
    static byte[] noise(List<String> others, Random random) {
        DamagedFile file = new DamagedFile(random, others);
        int length = 1 << random.nextInt(12);
        byte[] bytes = new byte[length];
        random.nextBytes(bytes);
        if (random.nextInt(4) == 0) {
            return bytes;
        }
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < length / 4 + 1; i++) {
            text.append(
                    switch (random.nextInt(6)) {
                        case 0 -> file.pick(SIGNS);
                        case 1 -> file.pick(NUMBERS);
                        case 2 -> ' ' + file.pick(UNITS);
                        case 3 -> "\n" + " ".repeat(random.nextInt(5));
                        case 4 -> new String(Character.toChars(random.nextInt(0xD800)));
                        default -> file.token(file.pick(others));
                    });
        }
        return file.coded(text.toString());
    }

    private byte[] coded(String text) {
        byte[] bytes = text.getBytes(random.nextInt(40) == 0 ? pick(OTHER_CODES) : StandardCharsets.UTF_8);
        if (bytes.length == 0 || random.nextInt(8) > 0) {
            return bytes;
        }
        int at = random.nextInt(bytes.length);
        switch (random.nextInt(4)) {
            case 0 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
            case 1 -> bytes[at] = (byte) random.nextInt(256);
            case 2 -> bytes = Arrays.copyOf(bytes, at);
            default -> bytes = Arrays.copyOfRange(bytes, at, bytes.length);
        }
        return bytes;
    }

    private String damaged(String text) {
        return switch (random.nextInt(16)) {
            case 0 -> cut(text, "");
            case 1 -> cut(text, cutting(text) + cutting(pick(others)));
            case 2 -> swapped(text);
            case 3 -> replaced(text, TOKEN, token(pick(others)));
            case 4, 5 -> replaced(text, NUMBER, pick(NUMBERS));
            case 6 -> replaced(text, NUMBER, Integer.toString(random.nextInt(200)));
            case 7 -> digit(text);
            case 8 -> replaced(text, UNIT, pick(UNITS));
            case 9 -> replaced(text, DECIMAL, random.nextBoolean() ? "1,5" : "1.5.");
            case 10 -> text.replaceAll("(\\d)\\.(\\d)", "$1,$2");
            case 11 -> lines(text);
            case 12 -> indented(text);
            case 13 -> inserted(text, pick(SIGNS));
            case 14 -> random.nextInt(4) == 0 ? hostile(text) : inserted(text, pick(SIGNS));
            default -> replaced(text, TOKEN, quoted(token(text)));
        };
    }

    /** Another digit in a number: the slip that is least often seen. */
    private String digit(String text) {
        return replaced(text, DIGIT, Integer.toString(random.nextInt(10)));
    }

    private String quoted(String token) {
        return switch (random.nextInt(4)) {
            case 0 -> '"' + token + '"';
            case 1 -> '\'' + token + '\'';
            case 2 -> '"' + token;
            default -> token + '"';
        };
    }

    /** Depth, length and references without end. */
    private String hostile(String text) {
        int many = 1 << random.nextInt(15);
        return switch (random.nextInt(7)) {
            case 0 -> replaced(text, TOKEN, "[".repeat(many));
            case 1 -> replaced(text, TOKEN, "{a: ".repeat(many));
            case 2 -> inserted(text, "- ".repeat(many));
            case 3 -> replaced(text, TOKEN, "x".repeat(many));
            case 4 -> replaced(text, NUMBER, "9".repeat(many));
            case 5 -> inserted(text, "\n" + cutting(text).repeat(Math.min(many, 500_000 / (text.length() + 1))));
            default -> {
                StringBuilder bomb = new StringBuilder("\na0: &a0 [x, x, x, x, x, x, x, x, x]\n");
                for (int i = 1; i < 20; i++) {
                    bomb.append("a")
                            .append(i)
                            .append(": &a")
                            .append(i)
                            .append(" [*a")
                            .append(i - 1);
                    bomb.append((", *a" + (i - 1)).repeat(8)).append("]\n");
                }
                yield random.nextBoolean() ? text + bomb : bomb + text;
            }
        };
    }

    private String lines(String text) {
        List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
        int at = random.nextInt(lines.size());
        int other = random.nextInt(lines.size());
        switch (random.nextInt(5)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(at));
            case 2 -> lines.add(at, lines.get(other));
            case 3 -> lines.set(at, lines.set(other, lines.get(at)));
            default -> {
                List<String> foreign = Arrays.asList(pick(others).split("\n", -1));
                lines.add(at, foreign.get(random.nextInt(foreign.size())));
            }
        }
        return String.join("\n", lines);
    }

    private String indented(String text) {
        String[] lines = text.split("\n", -1);
        int at = random.nextInt(lines.length);
        int last = Math.min(lines.length, at + 1 + random.nextInt(3));
        boolean more = random.nextBoolean();
        for (int i = at; i < last; i++) {
            lines[i] = more ? (random.nextInt(8) == 0 ? "\t" : "  ") + lines[i] : lines[i].replaceFirst("^ {1,2}", "");
        }
        return String.join("\n", lines);
    }

    private String swapped(String text) {
        List<MatchResult> tokens = TOKEN.matcher(text).results().toList();
        if (tokens.size() < 2) {
            return text;
        }
        int first = random.nextInt(tokens.size() - 1);
        MatchResult a = tokens.get(first);
        MatchResult b =
                tokens.get(random.nextBoolean() ? first + 1 : first + 1 + random.nextInt(tokens.size() - first - 1));
        return text.substring(0, a.start())
                + b.group()
                + text.substring(a.end(), b.start())
                + a.group()
                + text.substring(b.end());
    }

    private String replaced(String text, Pattern pattern, String by) {
        List<MatchResult> found = pattern.matcher(text).results().toList();
        if (found.isEmpty()) {
            return text;
        }
        MatchResult one = pick(found);
        return text.substring(0, one.start()) + by + text.substring(one.end());
    }

    private String inserted(String text, String what) {
        int at = random.nextInt(text.length() + 1);
        return text.substring(0, at) + what + text.substring(at);
    }

    private String cut(String text, String put) {
        int from = random.nextInt(text.length() + 1);
        int to = Math.min(text.length(), from + random.nextInt(random.nextInt(4) == 0 ? 200 : 6));
        return text.substring(0, from) + put + text.substring(to);
    }

    private String cutting(String text) {
        int from = random.nextInt(text.length() + 1);
        return text.substring(from, Math.min(text.length(), from + random.nextInt(40)));
    }

    private String token(String text) {
        Matcher matcher = TOKEN.matcher(text);
        List<MatchResult> tokens = matcher.results().toList();
        return tokens.isEmpty() ? "" : pick(tokens).group();
    }

    private <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }
}
