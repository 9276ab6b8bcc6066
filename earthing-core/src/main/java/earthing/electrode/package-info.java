/**
 * Buried earth electrodes: what closed forms and the numeric solution have in common, and the electrode under impulse.
 */
@NullMarked
package earthing.electrode;

import org.jspecify.annotations.NullMarked;
