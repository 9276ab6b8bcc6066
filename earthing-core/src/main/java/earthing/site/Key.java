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
}
