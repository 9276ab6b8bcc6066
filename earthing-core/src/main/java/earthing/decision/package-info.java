/** What changes a verdict: two states of a site side by side, and each bounded input alone. */
@NullMarked
package earthing.decision;

import org.jspecify.annotations.NullMarked;
