/** Exercises with a blank: what is asked, and whether an answer is right. They are pressed from the reference cases. */
@NullMarked
package earthing.exercise;

import org.jspecify.annotations.NullMarked;
