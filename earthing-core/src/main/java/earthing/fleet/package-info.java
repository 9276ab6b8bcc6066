/**
 * Many sites from a table, one pole a row: each a value or a reason. A bad row never stops the run, and a run that was
 * stopped goes on where it was.
 */
@NullMarked
package earthing.fleet;

import org.jspecify.annotations.NullMarked;
