/** Writing of well-formed markup, shared by the page and the figures. */
@NullMarked
package earthing.report.markup;

import org.jspecify.annotations.NullMarked;
