/**
 * Compliance: checks look at a site and its results and give findings with limit, margin, basis and a line of working.
 * Nothing is computed here that belongs to a study.
 */
@NullMarked
package earthing.compliance;

import org.jspecify.annotations.NullMarked;
