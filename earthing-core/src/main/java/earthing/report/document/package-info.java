/**
 * The report as a document that belongs to no format: sections of blocks, and the text of amounts with their units. A
 * renderer turns it into Markdown or HTML; nothing is computed here.
 */
@NullMarked
package earthing.report.document;

import org.jspecify.annotations.NullMarked;
