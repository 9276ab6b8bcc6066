package earthing.reference;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as it is printed in the source, with the unit of its last printed digit. {@code 0.120} is not the same as
 * {@code 0.12}; the zeros at the end of {@code 1200} count as printed digits. The word {@code infinite} stands for an
 * event that never comes.
 *
 * @param text as written, number and unit
 * @param value the number in the printed unit; infinite for {@code infinite}
 * @param lastDigit one unit of the last printed digit, in the printed unit
 * @param unit the printed unit
 */
public record PrintedNumber(String text, double value, double lastDigit, CaseUnit unit) {

    static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("(?<number>[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,3})?)\\s*(?<unit>.*)");

    /**
     * Reads a printed number.
     *
     * @param text for example {@code 32 ohm}, {@code 1.20e5 A2.s}, {@code 0.05}, {@code infinite}
     * @return the number
     * @throws IllegalArgumentException if the text is no number with a unit
     */
    public static PrintedNumber parse(String text) {
        String trimmed = text.strip();
        if (trimmed.equals("infinite") || trimmed.startsWith("infinite ")) {
            return new PrintedNumber(
                    trimmed,
                    Double.POSITIVE_INFINITY,
                    0,
                    CaseUnit.parse(trimmed.substring("infinite".length()).strip()));
        }
        Matcher matcher = NUMBER_AND_UNIT.matcher(trimmed);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("\"" + trimmed + "\" is no number with a unit");
        }
        String number = matcher.group("number");
        BigDecimal decimal = new BigDecimal(number.endsWith(".") ? number.substring(0, number.length() - 1) : number);
        return new PrintedNumber(
                trimmed,
                decimal.doubleValue(),
                decimal.ulp().doubleValue(),
                CaseUnit.parse(matcher.group("unit").strip()));
    }

    /**
     * A computed value in the printed unit.
     *
     * @param si the value in SI
     * @return the value in the printed unit
     */
    public double inPrintedUnit(double si) {
        return si / unit.factor();
    }
}
