/**
 * Numeric solution of buried straight bars in layered ground: thin-wire Galerkin method with the images of the layers,
 * resistance matrix of several electrodes, potential anywhere, touch and step voltages. Depths are counted down from
 * the surface, positive, in metres; potentials are to remote earth.
 */
@NullMarked
package earthing.electrode.wire;

import org.jspecify.annotations.NullMarked;
