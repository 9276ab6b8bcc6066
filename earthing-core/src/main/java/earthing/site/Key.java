package earthing.site;

import earthing.quantity.Dimension;
import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * What a key of the site file means. The reader, the writer, the JSON Schema, the template and the key table of the docs
 * are all driven by the components of the site's records and this annotation, so they cannot disagree. The key's text is
 * the component's name in kebab case.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Key {

    /**
     * Meaning of the key in one sentence.
     *
     * @return the text shown in the template, the schema and the docs
     */
    String doc();

    /**
     * Dimension of a value with a unit; ignored for texts, words and blocks.
     *
     * @return the dimension
     */
    Dimension unit() default Dimension.RATIO;

    /**
     * Whether a block without this key is refused.
     *
     * @return true if the key has to be there
     */
    boolean required() default false;

    /**
     * A value for the template and for error messages.
     *
     * @return the example, empty if there is none
     */
    String example() default "";

    /**
     * Whether a value may be zero or negative; ignored for anything but values with a unit.
     *
     * @return the sign that is read
     */
    Sign sign() default Sign.POSITIVE;

    /**
     * Least whole number that is read; ignored for anything but whole numbers.
     *
     * @return the least number
     */
    int least() default 1;

    /**
     * Largest whole number that is read; ignored for anything but whole numbers.
     *
     * @return the largest number
     */
    int most() default 10_000;

    /**
     * The only texts that are read.
     *
     * @return the texts, empty if any text is read
     */
    String[] words() default {};

    /**
     * What a text stands for; ignored for anything but texts.
     *
     * @return the kind of text
     */
    Text text() default Text.FREE;

    /**
     * Columns of the file that the key names; ignored for anything but tables.
     *
     * @return the columns
     */
    Column[] columns() default {};

    /**
     * Fewest rows of that file.
     *
     * @return rows under the head line
     */
    int rows() default 2;

    /**
     * What the rows of that file are together, beyond columns of numbers.
     *
     * @return what is checked when the file is read
     */
    Content content() default Content.NUMBERS;

    /**
     * Whether {@code unknown} is refused for a value with a unit, because nothing at all can be computed without it.
     *
     * @return true if the value has to be known
     */
    boolean known() default false;

    /**
     * Whether the key belongs to the short form of the file, which the template shows filled in.
     *
     * @return true for the short form
     */
    boolean brief() default false;

    /** Which signs a value may have. */
    enum Sign {
        /** Above zero. */
        POSITIVE,
        /** Zero or above. */
        NOT_NEGATIVE,
        /** Any. */
        ANY
    }

    /** How the values of a column follow each other. */
    enum Order {
        /** In any order. */
        ANY,
        /** Each above the one before. */
        RISING,
        /** None above the one before. */
        NOT_RISING
    }

    /** What the rows of a file are together. */
    enum Content {
        /** Numbers, nothing more. */
        NUMBERS,
        /** The readings of a soil survey. */
        SURVEY,
        /** A recorded current. */
        WAVE
    }

    /** One column of a file. */
    @Documented
    @Retention(RetentionPolicy.RUNTIME)
    @Target({})
    @interface Column {

        /**
         * Words in the head line, in upper or lower case; the unit stands behind them in brackets.
         *
         * @return the name
         */
        String name();

        /**
         * What the column holds; ignored for texts.
         *
         * @return the dimension
         */
        Dimension unit() default Dimension.RATIO;

        /**
         * Whether the column holds texts.
         *
         * @return true for texts, which have no unit
         */
        boolean text() default false;

        /**
         * Whether a file without the column is refused.
         *
         * @return true if the column has to be there
         */
        boolean required() default true;

        /**
         * Whether a value may be zero or negative.
         *
         * @return the sign that is read
         */
        Sign sign() default Sign.POSITIVE;

        /**
         * How the values follow each other.
         *
         * @return the order that is asked for
         */
        Order order() default Order.ANY;
    }

    /** What a text stands for. */
    enum Text {
        /** Words for the reader of the report. */
        FREE,
        /** A name on one line; unique in its list. */
        NAME,
        /** The name of one of the site's electrodes. */
        ELECTRODE,
        /** A calendar date as year-month-day. */
        DATE
    }
}
