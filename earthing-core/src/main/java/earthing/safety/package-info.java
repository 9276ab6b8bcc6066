/**
 * What a person may be exposed to: permissible touch and step voltages by curve and edition, the body as an impedance
 * with heart-current factors, what stands under the feet, exposures under automatic reclosing, and the gates that say
 * when a touch voltage has to be proven. Permissible means by the named curve, for the named body and path; it is no
 * promise to any one person, and local codes and licensed practice come first.
 */
@NullMarked
package earthing.safety;

import org.jspecify.annotations.NullMarked;
