/**
 * Physical values at the edge of the program: unit text, bounded values with their origin, locale-free number text,
 * and {@link earthing.quantity.Source}, the note of where a formula, constant or limit comes from. Inside the library
 * everything is an SI double.
 */
@NullMarked
package earthing.quantity;

import org.jspecify.annotations.NullMarked;
