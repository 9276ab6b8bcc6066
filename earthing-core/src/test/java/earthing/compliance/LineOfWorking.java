package earthing.compliance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * A printed line of working, read and evaluated as a reader with a pocket calculator would, by code that did not print
 * it. Formula grammar: sums of products of powers, names, numbers, {@code pi} and six functions.
 */
final class LineOfWorking {

    private final String formula;
    private final Map<String, Double> terms = new LinkedHashMap<>();
    private final double printed;
    private final TreeSet<String> used = new TreeSet<>();
    private int at;
    private Map<String, Double> values = Map.of();

    private LineOfWorking(String formula, String terms, double printed) {
        this.formula = formula;
        this.printed = printed;
        if (!terms.isEmpty()) {
            for (String term : terms.split(", ", -1)) {
                String[] sides = term.split(" = ", 2);
                this.terms.put(sides[0].strip(), number(sides[1]));
            }
        }
    }

    /** Reads {@code symbol = formula with a = 1 unit, b = 2 gives symbol = value unit}. */
    static LineOfWorking of(String text) {
        String[] ends = text.split(" gives ", 2);
        String[] sides = ends[0].split(" with ", 2);
        String[] head = sides[0].split(" = ", 2);
        String[] tail = ends[1].split(" = ", 2);
        if (!head[0].equals(tail[0])) {
            throw new IllegalArgumentException("the line begins with " + head[0] + " and ends with " + tail[0]);
        }
        return new LineOfWorking(head[1], sides.length == 2 ? sides[1] : "", number(tail[1]));
    }

    /** The number before the unit. */
    private static double number(String text) {
        return Double.parseDouble(text.strip().split(" ", 2)[0]);
    }

    double printed() {
        return printed;
    }

    /** Names that are given and do not stand in the formula. */
    List<String> unused() {
        value();
        List<String> unused = new ArrayList<>(terms.keySet());
        unused.removeAll(used);
        return unused;
    }

    /** The formula with the printed numbers. */
    double value() {
        return value(terms);
    }

    /** By how much the value can be off because every printed number is rounded to five digits. */
    double rounding() {
        double middle = value();
        double sum = half(printed);
        for (Map.Entry<String, Double> term : terms.entrySet()) {
            Map<String, Double> moved = new LinkedHashMap<>(terms);
            moved.put(term.getKey(), term.getValue() + half(term.getValue()));
            sum += Math.abs(value(moved) - middle);
        }
        return sum;
    }

    /** Half a unit of the fifth digit. */
    private static double half(double number) {
        return number == 0 ? 0 : 0.5 * Math.pow(10, Math.floor(Math.log10(Math.abs(number))) - 4);
    }

    private double value(Map<String, Double> given) {
        values = given;
        at = 0;
        double value = sum();
        if (at != formula.length()) {
            throw new IllegalArgumentException("left over in " + formula + ": " + formula.substring(at));
        }
        return value;
    }

    private void blanks() {
        while (at < formula.length() && formula.charAt(at) == ' ') {
            at++;
        }
    }

    private boolean take(char wanted) {
        blanks();
        if (at < formula.length() && formula.charAt(at) == wanted) {
            at++;
            return true;
        }
        return false;
    }

    private void need(char wanted) {
        if (!take(wanted)) {
            throw new IllegalArgumentException("expected " + wanted + " at " + at + " of " + formula);
        }
    }

    private double sum() {
        double value = product();
        while (true) {
            if (take('+')) {
                value += product();
            } else if (take('-')) {
                value -= product();
            } else {
                blanks();
                return value;
            }
        }
    }

    private double product() {
        double value = signed();
        while (true) {
            if (take('*')) {
                value *= signed();
            } else if (take('/')) {
                value /= signed();
            } else {
                return value;
            }
        }
    }

    private double signed() {
        return take('-') ? -signed() : power();
    }

    private double power() {
        double base = atom();
        return take('^') ? Math.pow(base, signed()) : base;
    }

    private double atom() {
        if (take('(')) {
            double value = sum();
            need(')');
            return value;
        }
        int start = at;
        if (at < formula.length() && (Character.isDigit(formula.charAt(at)) || formula.charAt(at) == '.')) {
            while (at < formula.length() && partOfNumber()) {
                at++;
            }
            return Double.parseDouble(formula.substring(start, at));
        }
        while (at < formula.length() && (Character.isLetterOrDigit(formula.charAt(at)) || formula.charAt(at) == '_')) {
            at++;
        }
        String name = formula.substring(start, at);
        if (take('(')) {
            List<Double> arguments = new ArrayList<>(List.of(sum()));
            while (take(',')) {
                arguments.add(sum());
            }
            need(')');
            return function(name, arguments);
        }
        if (name.equals("pi")) {
            return Math.PI;
        }
        Double value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException("\"" + name + "\" of " + formula + " is not given; have " + terms);
        }
        used.add(name);
        return value;
    }

    private boolean partOfNumber() {
        char c = formula.charAt(at);
        char before = formula.charAt(Math.max(0, at - 1));
        return Character.isDigit(c) || c == '.' || c == 'e' || ((c == '-' || c == '+') && before == 'e');
    }

    private static double function(String name, List<Double> arguments) {
        double first = arguments.get(0);
        return switch (name) {
            case "sqrt" -> Math.sqrt(first);
            case "ln" -> Math.log(first);
            case "exp" -> Math.exp(first);
            case "abs" -> Math.abs(first);
            case "min" -> arguments.stream().mapToDouble(d -> d).min().orElseThrow();
            case "max" -> arguments.stream().mapToDouble(d -> d).max().orElseThrow();
            default -> throw new IllegalArgumentException("\"" + name + "\" is none of the functions of a line");
        };
    }
}
