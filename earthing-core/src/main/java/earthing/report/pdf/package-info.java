/** The report as PDF. Its libraries are large; nothing else of this program may load them. */
@NullMarked
package earthing.report.pdf;

import org.jspecify.annotations.NullMarked;
