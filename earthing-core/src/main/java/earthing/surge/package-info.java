/**
 * Lightning: standard impulse shapes, stroke statistics, surge arresters as circuits, and protective margins.
 */
@NullMarked
package earthing.surge;

import org.jspecify.annotations.NullMarked;
