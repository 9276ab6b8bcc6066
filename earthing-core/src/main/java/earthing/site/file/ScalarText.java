package earthing.site.file;

import java.util.Locale;
import java.util.Set;

/** A text as YAML: without quotes where no reader can take it for something else, in double quotes otherwise. */
final class ScalarText {

    /** Words that some readers take for a truth value or for nothing. */
    private static final Set<String> SPECIAL = Set.of("null", "true", "false", "yes", "no", "on", "off", "y", "n");

    private ScalarText() {}

    static String of(String text, boolean inFlow) {
        return isPlain(text, inFlow) ? text : quoted(text);
    }

    private static boolean isPlain(String text, boolean inFlow) {
        if (text.isEmpty() || SPECIAL.contains(text.toLowerCase(Locale.ROOT))) {
            return false;
        }
        char first = text.charAt(0);
        boolean word = Character.isLetter(first);
        boolean quantity =
                isDigit(first) || (text.length() > 1 && isDigit(text.charAt(1)) && (first == '-' || first == '+'));
        if (!word && !(quantity && (text.indexOf(' ') > 0 || text.indexOf('/') > 0))) {
            return isDate(text);
        }
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean allowed = Character.isLetterOrDigit(c) || " -_./()+%²µ°·;".indexOf(c) >= 0 || (c == ',' && !inFlow);
            if (!allowed || Character.isSurrogate(c)) {
                return false;
            }
        }
        return !text.endsWith(" ");
    }

    private static boolean isDate(String text) {
        return text.length() == 10
                && text.charAt(4) == '-'
                && text.charAt(7) == '-'
                && text.chars().filter(c -> c >= '0' && c <= '9').count() == 8;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                quoted.append('\\').append(c);
            } else if (c == '\n') {
                quoted.append("\\n");
            } else if (isPrinted(c)) {
                quoted.append(c);
            } else {
                String hex = Integer.toHexString(c);
                quoted.append("\\u").append("0".repeat(4 - hex.length())).append(hex);
            }
        }
        return quoted.append('"').toString();
    }

    private static boolean isPrinted(char c) {
        return (c >= ' ' && c < 0x7F) || (c > 0xA0 && (Character.isLetterOrDigit(c) || Character.isSurrogate(c)));
    }
}
