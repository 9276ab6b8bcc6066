package earthing.fleet;

/**
 * How a table of separated values is written.
 *
 * @param separator between cells, comma or semicolon
 * @param decimalComma whether numbers have a decimal comma; only beside semicolons
 */
public record TableForm(char separator, boolean decimalComma) {

    /** Commas and decimal points. */
    public static final TableForm COMMA = new TableForm(',', false);

    /**
     * Refuses a decimal comma between commas.
     *
     * @param separator between cells, comma or semicolon
     * @param decimalComma whether numbers have a decimal comma; only beside semicolons
     */
    public TableForm {
        if (separator != ',' && separator != ';') {
            throw new IllegalArgumentException("cells are separated by comma or semicolon; have " + separator);
        }
        if (decimalComma && separator == ',') {
            throw new IllegalArgumentException("a decimal comma needs semicolons between cells");
        }
    }

    /**
     * The line at the head of a table that declares this form.
     *
     * @return comment lines without their ends
     */
    public String declaration() {
        return "# separator: " + (separator == ',' ? "comma" : "semicolon")
                + (decimalComma ? "\n# decimal: comma" : "");
    }
}
