/**
 * Published closed forms for earth electrodes, one class a formula, each with its source and the range in which it
 * holds; outside it there is no value. They cross-check the numeric solution, which is the reference. SI throughout.
 */
@NullMarked
package earthing.electrode.formula;

import org.jspecify.annotations.NullMarked;
