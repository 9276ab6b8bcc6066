/** What changes a verdict: two states of a site side by side. */
@NullMarked
package earthing.decision;

import org.jspecify.annotations.NullMarked;
