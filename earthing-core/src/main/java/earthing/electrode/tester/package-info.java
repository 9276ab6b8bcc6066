/**
 * Readings of earth testers: what an instrument shows on a given electrode, soil and place of its probes, and what the
 * methods of evaluation make of it.
 */
@NullMarked
package earthing.electrode.tester;

import org.jspecify.annotations.NullMarked;
