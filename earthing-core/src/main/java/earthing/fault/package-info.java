/**
 * Earth-fault current with the electrode in the loop: source, neutral earthing method, line with earth return, neutral or
 * shield wire as a ladder of pole earths, and the branches to earth at the pole. Gives currents, earth potential rise,
 * healthy-phase voltages and the ratio X/R of the whole loop, never a product of fault level and resistance.
 */
@NullMarked
package earthing.fault;

import org.jspecify.annotations.NullMarked;
