/**
 * Figures as scalable drawings: the elevation of the pole with its earth paths, and line charts. Lines are told apart
 * by pattern and written label, so that a figure can be read without colour.
 */
@NullMarked
package earthing.report.figure;

import org.jspecify.annotations.NullMarked;
