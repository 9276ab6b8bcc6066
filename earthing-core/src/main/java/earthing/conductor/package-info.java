/**
 * Conductors as matter: metals with their thermal constants by standard and edition, cross-sections and standard sizes,
 * direct-current resistance, and heating by short-circuit and lightning current: adiabatic over a whole reclose
 * sequence as the criterion, with cooling as information.
 */
@NullMarked
package earthing.conductor;

import org.jspecify.annotations.NullMarked;
