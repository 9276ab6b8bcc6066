/**
 * The overhead line as an earth-fault path: series impedances with earth return from the geometry of the conductors,
 * reduction of earthed or bonded conductors, sequence impedances, capacitance to earth, and the impedance of a chain of
 * pole earths.
 */
@NullMarked
package earthing.fault.line;

import org.jspecify.annotations.NullMarked;
