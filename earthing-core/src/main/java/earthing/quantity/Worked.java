package earthing.quantity;

import java.util.ArrayList;
import java.util.List;

/**
 * A line of working that a reader can redo with a pocket calculator: formula, numbers with units, result. The formula
 * uses {@code + - * / ^ ( )}, {@code sqrt ln exp abs min max}, {@code pi} and the names of the terms, nothing else, so
 * that it can be evaluated again independently.
 *
 * @param symbol symbol of the result
 * @param formula right-hand side
 * @param terms every name of the formula with its value in SI
 * @param value the result in SI, as the library computed it
 * @param unit SI unit of the result, empty for a pure number
 */
public record Worked(String symbol, String formula, List<Term> terms, double value, String unit) {

    /**
     * One named number of a formula.
     *
     * @param name symbol used in the formula: letters, digits and underscore
     * @param value value in SI
     * @param unit SI unit, empty for a pure number
     */
    public record Term(String name, double value, String unit) {}

    /**
     * Copies the terms.
     *
     * @param symbol symbol of the result
     * @param formula right-hand side
     * @param terms every name of the formula with its value in SI
     * @param value the result in SI, as the library computed it
     * @param unit SI unit of the result, empty for a pure number
     */
    public Worked {
        terms = List.copyOf(terms);
    }

    /**
     * Starts a line.
     *
     * @param symbol symbol of the result
     * @param formula right-hand side
     * @return a line under construction
     */
    public static Builder of(String symbol, String formula) {
        return new Builder(symbol, formula);
    }

    /**
     * The line as printed; the numbers carry five significant digits.
     *
     * @return for example {@code U = I * R with I = 320.00 A, R = 33.500 ohm gives U = 10720 V}
     */
    public String text() {
        StringBuilder text = new StringBuilder(symbol).append(" = ").append(formula);
        String separator = " with ";
        for (Term term : terms) {
            text.append(separator).append(term.name()).append(" = ").append(number(term.value(), term.unit()));
            separator = ", ";
        }
        return text.append(" gives ")
                .append(symbol)
                .append(" = ")
                .append(number(value, unit))
                .toString();
    }

    private static String number(double value, String unit) {
        String digits = Numbers.significant(value, 5);
        return unit.isEmpty() ? digits : digits + " " + unit;
    }

    /** Collects the terms of a line. */
    public static final class Builder {
        private final String symbol;
        private final String formula;
        private final List<Term> terms = new ArrayList<>();

        private Builder(String symbol, String formula) {
            this.symbol = symbol;
            this.formula = formula;
        }

        /**
         * Adds a number.
         *
         * @param name symbol used in the formula
         * @param value value in SI
         * @param unit SI unit
         * @return this builder
         */
        public Builder with(String name, double value, String unit) {
            terms.add(new Term(name, value, unit));
            return this;
        }

        /**
         * Ends the line.
         *
         * @param value the result in SI
         * @param unit its SI unit
         * @return the line
         */
        public Worked gives(double value, String unit) {
            return new Worked(symbol, formula, terms, value, unit);
        }
    }
}
