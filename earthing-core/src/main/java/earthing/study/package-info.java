/**
 * The studies: from a site to results. Each study computes the numbers of one piece of physics once, over the bounds of
 * the inputs; results travel on as values with an id, the case they belong to and their source.
 */
@NullMarked
package earthing.study;

import org.jspecify.annotations.NullMarked;
