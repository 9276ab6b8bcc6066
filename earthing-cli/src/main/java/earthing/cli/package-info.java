/** The command line: few commands, each thin; it computes nothing. */
@NullMarked
package earthing.cli;

import org.jspecify.annotations.NullMarked;
