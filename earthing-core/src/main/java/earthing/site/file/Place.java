package earthing.site.file;

/**
 * A place in the file.
 *
 * @param line line, from 1; 0 for the file as a whole
 * @param column column, from 1; 0 for the file as a whole
 */
record Place(int line, int column) {

    /** The file as a whole. */
    static final Place WHOLE_FILE = new Place(0, 0);
}
