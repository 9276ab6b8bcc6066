package earthing.reference;

import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An expression of a circuit deck in the variable {@code time}: numbers with the scale suffixes of decks, the four
 * operations, powers, some functions, comparisons and the choice {@code condition ? a : b}. The worked lines of the
 * exercises are written in it too.
 */
final class DeckExpression {

    private static final Pattern NUMBER =
            Pattern.compile("(?<digits>\\d+\\.?\\d*(?:e[+-]?\\d+)?|\\.\\d+)(?<suffix>meg|[tgkmunpf])?");
    private static final Map<String, Double> SUFFIXES =
            Map.of("t", 1e12, "g", 1e9, "meg", 1e6, "k", 1e3, "m", 1e-3, "u", 1e-6, "n", 1e-9, "p", 1e-12, "f", 1e-15);

    private static final Map<String, DoubleUnaryOperator> FUNCTIONS = Map.of(
            "exp(",
            Math::exp,
            "ln(",
            Math::log,
            "log10(",
            Math::log10,
            "sqrt(",
            Math::sqrt,
            "asinh(",
            x -> Math.log(x + Math.sqrt(x * x + 1)));

    private final String text;
    private int at;

    private DeckExpression(String text) {
        this.text = text.replace(" ", "");
    }

    /**
     * Reads an expression.
     *
     * @param text the expression
     * @return its value as a function of time
     * @throws IllegalArgumentException if it is not understood to its end
     */
    static DoubleUnaryOperator parse(String text) {
        DeckExpression expression = new DeckExpression(text);
        DoubleUnaryOperator value = expression.choice();
        if (expression.at != expression.text.length()) {
            throw expression.unexpected();
        }
        return value;
    }

    /**
     * Reads a number with an optional suffix.
     *
     * @param text for example {@code 8.06u}
     * @return its value
     * @throws IllegalArgumentException if it is no number
     */
    static double number(String text) {
        double sign = text.startsWith("-") ? -1 : 1;
        Matcher matcher = NUMBER.matcher(sign < 0 ? text.substring(1) : text);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("\"" + text + "\" is no number of a deck");
        }
        return sign * scaled(matcher);
    }

    private static double scaled(Matcher matcher) {
        String suffix = matcher.group("suffix");
        double digits = Double.parseDouble(matcher.group("digits"));
        return suffix == null ? digits : digits * SUFFIXES.getOrDefault(suffix, Double.NaN);
    }

    private DoubleUnaryOperator choice() {
        DoubleUnaryOperator condition = comparison();
        if (!accept("?")) {
            return condition;
        }
        DoubleUnaryOperator yes = choice();
        expect(":");
        DoubleUnaryOperator no = choice();
        return t -> condition.applyAsDouble(t) > 0 ? yes.applyAsDouble(t) : no.applyAsDouble(t);
    }

    private DoubleUnaryOperator comparison() {
        DoubleUnaryOperator left = sum();
        if (accept("<")) {
            DoubleUnaryOperator right = sum();
            return t -> left.applyAsDouble(t) < right.applyAsDouble(t) ? 1 : 0;
        }
        return left;
    }

    private DoubleUnaryOperator sum() {
        DoubleUnaryOperator value = product();
        while (true) {
            DoubleUnaryOperator left = value;
            if (accept("+")) {
                DoubleUnaryOperator right = product();
                value = t -> left.applyAsDouble(t) + right.applyAsDouble(t);
            } else if (accept("-")) {
                DoubleUnaryOperator right = product();
                value = t -> left.applyAsDouble(t) - right.applyAsDouble(t);
            } else {
                return value;
            }
        }
    }

    private DoubleUnaryOperator product() {
        DoubleUnaryOperator value = factor();
        while (true) {
            DoubleUnaryOperator left = value;
            if (accept("*")) {
                DoubleUnaryOperator right = factor();
                value = t -> left.applyAsDouble(t) * right.applyAsDouble(t);
            } else if (accept("/")) {
                DoubleUnaryOperator right = factor();
                value = t -> left.applyAsDouble(t) / right.applyAsDouble(t);
            } else {
                return value;
            }
        }
    }

    private DoubleUnaryOperator factor() {
        if (accept("-")) {
            DoubleUnaryOperator value = factor();
            return t -> -value.applyAsDouble(t);
        }
        DoubleUnaryOperator base = atom();
        if (!accept("^")) {
            return base;
        }
        DoubleUnaryOperator exponent = factor();
        return t -> Math.pow(base.applyAsDouble(t), exponent.applyAsDouble(t));
    }

    private DoubleUnaryOperator atom() {
        if (accept("(")) {
            DoubleUnaryOperator value = choice();
            expect(")");
            return value;
        }
        if (accept("pow(")) {
            DoubleUnaryOperator base = choice();
            expect(",");
            DoubleUnaryOperator exponent = choice();
            expect(")");
            return t -> Math.pow(base.applyAsDouble(t), exponent.applyAsDouble(t));
        }
        for (Map.Entry<String, DoubleUnaryOperator> function : FUNCTIONS.entrySet()) {
            if (accept(function.getKey())) {
                DoubleUnaryOperator value = choice();
                expect(")");
                return t -> function.getValue().applyAsDouble(value.applyAsDouble(t));
            }
        }
        if (accept("pi")) {
            return t -> Math.PI;
        }
        if (accept("time")) {
            return t -> t;
        }
        Matcher number = NUMBER.matcher(text).region(at, text.length());
        if (number.lookingAt()) {
            at = number.end();
            double value = scaled(number);
            return t -> value;
        }
        throw unexpected();
    }

    private boolean accept(String token) {
        if (text.startsWith(token, at)) {
            at += token.length();
            return true;
        }
        return false;
    }

    private void expect(String token) {
        if (!accept(token)) {
            throw unexpected();
        }
    }

    private IllegalArgumentException unexpected() {
        return new IllegalArgumentException("expression \"" + text + "\" is not understood at place " + (at + 1));
    }
}
