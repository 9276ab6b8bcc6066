/**
 * The harness that runs the reference cases: it reads the case files, hands the given values of each row to the
 * library through its public API, compares what comes back with what is printed and writes the validation page. One
 * class a room of the library binds the model names of the case files to functions of that room.
 */
@NullMarked
package earthing.reference;

import org.jspecify.annotations.NullMarked;
