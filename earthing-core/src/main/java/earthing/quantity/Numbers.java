package earthing.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Number text that does not depend on the machine's locale. */
public final class Numbers {

    private Numbers() {}

    /**
     * A number rounded to significant digits, trailing zeros kept, plain notation between 1e-4 and 1e6.
     *
     * @param value any value
     * @param digits significant digits, 1 to 15
     * @return for example {@code 33.5}, {@code 0.00120}, {@code 1.20e-7}
     */
    public static String significant(double value, int digits) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "not a number" : value > 0 ? "infinite" : "-infinite";
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        int exponent = rounded.precision() - rounded.scale() - 1;
        if (exponent < -4 || exponent >= 6) {
            BigDecimal mantissa = rounded.movePointLeft(exponent);
            return mantissa.setScale(digits - 1, RoundingMode.HALF_EVEN).toPlainString() + "e" + exponent;
        }
        return rounded.setScale(Math.max(0, digits - 1 - exponent), RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    /**
     * Three significant digits, the report's rule for tables.
     *
     * @param value any value
     * @return the text
     */
    public static String brief(double value) {
        return significant(value, 3);
    }

    /**
     * The shortest text that reads back to the same double, without exponent between 1e-3 and 1e7 and without a
     * trailing ".0".
     *
     * @param value a finite value
     * @return the text
     */
    public static String full(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
