/** Renderers: a document as readable Markdown and as one self-contained HTML page. Same document, same bytes. */
@NullMarked
package earthing.report.render;

import org.jspecify.annotations.NullMarked;
