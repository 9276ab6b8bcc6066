/**
 * Self and mutual partial inductance of straight conductors at any position, and the impedance inside a conductor over
 * frequency. Inductances are those of free space unless a perfectly conducting ground plane is asked for.
 */
@NullMarked
package earthing.conductor.inductance;

import org.jspecify.annotations.NullMarked;
