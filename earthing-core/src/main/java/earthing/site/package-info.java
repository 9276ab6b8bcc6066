/**
 * The records of a site: everything the site file can say, immutable, every value with its bounds and origin. A
 * component that is {@code null} stands for a key that is absent from the file; a {@link earthing.quantity.Measure}
 * without bounds, or the word {@code UNKNOWN}, for one that the author declared unknown. Coordinates: heights from
 * ground up, depths down, both positive; x and y horizontal from the pole's axis.
 */
@NullMarked
package earthing.site;

import org.jspecify.annotations.NullMarked;
