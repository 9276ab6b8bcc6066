/** Numerical methods that the libraries in use lack: modified Bessel functions of a complex argument. */
@NullMarked
package earthing.numeric;

import org.jspecify.annotations.NullMarked;
