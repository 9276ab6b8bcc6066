package earthing.cli;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** A line of a hand calculation: numbers, {@code + − · / ^ ( )}, π and the functions of a pocket calculator. */
final class Arithmetic {

    private final String text;
    private int at;

    private Arithmetic(String text) {
        this.text = text;
    }

    /** The value of an expression; an {@link IllegalArgumentException} tells where it cannot be read. */
    static double value(String expression) {
        String plain = expression
                .replace('·', '*')
                .replace('×', '*')
                .replace('−', '-')
                .replace("π", "pi")
                .replace("√", "sqrt")
                .replaceAll("\\s+", "");
        Arithmetic arithmetic = new Arithmetic(plain);
        double value = arithmetic.sum();
        if (arithmetic.at < plain.length()) {
            throw arithmetic.unreadable("the end");
        }
        return value;
    }

    private double sum() {
        double value = product();
        while (true) {
            if (take('+')) {
                value += product();
            } else if (take('-')) {
                value -= product();
            } else {
                return value;
            }
        }
    }

    private double product() {
        double value = power();
        while (true) {
            if (take('*')) {
                value *= power();
            } else if (take('/')) {
                value /= power();
            } else {
                return value;
            }
        }
    }

    private double power() {
        if (take('-')) {
            return -power();
        }
        double base = atom();
        return take('^') ? Math.pow(base, power()) : base;
    }

    private double atom() {
        if (take('(')) {
            double value = sum();
            if (!take(')')) {
                throw unreadable("a closing bracket");
            }
            return value;
        }
        int from = at;
        while (at < text.length() && Character.isLetter(text.charAt(at))) {
            at++;
        }
        if (at > from) {
            String word = text.substring(from, at).toLowerCase(Locale.ROOT);
            return word.equals("pi") ? Math.PI : function(word).applyAsDouble(atom());
        }
        while (at < text.length() && belongsToNumber(from)) {
            at++;
        }
        try {
            return Double.parseDouble(text.substring(from, at));
        } catch (NumberFormatException notANumber) {
            throw unreadable("a number");
        }
    }

    private boolean belongsToNumber(int from) {
        char here = text.charAt(at);
        boolean afterExponent = at > from && text.charAt(at - 1) == 'e';
        return Character.isDigit(here) || here == '.' || (here == 'e' && at > from) || (here == '-' && afterExponent);
    }

    private DoubleUnaryOperator function(String word) {
        return switch (word) {
            case "sqrt" -> Math::sqrt;
            case "ln" -> Math::log;
            case "exp" -> Math::exp;
            case "asinh" -> x -> Math.log(x + Math.sqrt(x * x + 1));
            default -> throw unreadable("one of sqrt, ln, exp, asinh, pi");
        };
    }

    private boolean take(char wanted) {
        if (at < text.length() && text.charAt(at) == wanted) {
            at++;
            return true;
        }
        return false;
    }

    private IllegalArgumentException unreadable(String expected) {
        return new IllegalArgumentException("\"" + text + "\" at character " + (at + 1) + ": expected " + expected);
    }
}
