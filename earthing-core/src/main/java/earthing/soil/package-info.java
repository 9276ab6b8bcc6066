/**
 * The ground as a set of horizontal layers: models, the potential of a point source in them, what a sounding would
 * read over them, and the season acting on a top depth. Depths are counted down from the surface, positive, in metres;
 * potentials are to remote earth.
 */
@NullMarked
package earthing.soil;

import org.jspecify.annotations.NullMarked;
