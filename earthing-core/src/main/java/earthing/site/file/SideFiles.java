package earthing.site.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Where the files are that a site file names: tables of values in the same folder. */
@FunctionalInterface
public interface SideFiles {

    /** A text without a folder: nothing lies beside it. */
    SideFiles NONE = name -> {
        throw new NoSuchFileException(name);
    };

    /**
     * Content of a file.
     *
     * @param name a plain name, without folder
     * @return its bytes; a file that is larger than {@link SiteFile#LARGEST} may be cut behind that
     * @throws IOException if there is no such file or it cannot be read
     */
    byte[] read(String name) throws IOException;

    /**
     * The files in the folder of a site file.
     *
     * @param siteFile the site file
     * @return its folder
     */
    static SideFiles beside(Path siteFile) {
        return name -> {
            try (InputStream in = Files.newInputStream(siteFile.resolveSibling(name))) {
                // One byte more than is allowed tells a file that is too large, however large it is.
                return in.readNBytes(SiteFile.LARGEST + 1);
            } catch (InvalidPathException e) {
                throw new NoSuchFileException(name);
            }
        };
    }
}
