/**
 * Reads and writes the site file. The reader, the writer, the JSON Schema, the template and the key table are driven by
 * the components of the records in {@link earthing.site} and their {@link earthing.site.Key}, so none of them can know
 * a key that another does not know. A file with problems gives all of them with line and column, and no site.
 */
@NullMarked
package earthing.site.file;

import org.jspecify.annotations.NullMarked;
