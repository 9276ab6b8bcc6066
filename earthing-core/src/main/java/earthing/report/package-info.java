/**
 * The compliance report: selects results and findings by id, arranges them in the order a reviewer reads them, and
 * prints them as text, HTML or JSON. It computes nothing, and it stops with a named problem rather than leave a
 * mandatory part blank.
 */
@NullMarked
package earthing.report;

import org.jspecify.annotations.NullMarked;
