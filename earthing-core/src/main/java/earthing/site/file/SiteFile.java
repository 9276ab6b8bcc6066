package earthing.site.file;

import earthing.quantity.Dimension;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.site.Site;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Reads and writes site files: YAML 1.2 in UTF-8, one document, no tags, anchors or aliases, at most {@value #LARGEST}
 * bytes. The keys are documented in {@code docs/site-file.md}. A key may name a file of columns in the same folder. Nothing in a file is ever replaced by a default.
 */
public final class SiteFile {

    /** The largest file that is read [bytes]; a site file has a few thousand. */
    public static final int LARGEST = 1_000_000;

    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private SiteFile() {}

    /**
     * Reads a file.
     *
     * @param path the file; its text names it in problems
     * @return the site, or every problem
     */
    public static ReadOutcome read(Path path) {
        ProblemList problems = new ProblemList(path.toString());
        byte[] bytes = bytes(path, problems);
        return bytes == null
                ? new ReadOutcome.Invalid(problems.inOrderOfFile())
                : read(bytes, path.toString(), SideFiles.beside(path));
    }

    /** The content of a file, one byte more than is allowed at most. */
    static byte @Nullable [] bytes(Path path, ProblemList problems) {
        return bytes(
                () -> {
                    try (InputStream in = Files.newInputStream(path)) {
                        // One byte more than is allowed tells a file that is too large, however large it is.
                        return in.readNBytes(LARGEST + 1);
                    } catch (IOException e) {
                        if (Files.isDirectory(path)) {
                            throw new FolderException(e);
                        }
                        throw e;
                    }
                },
                why -> problems.add(Place.WHOLE_FILE, why));
    }

    /** A folder where a file was expected. */
    private static final class FolderException extends IOException {

        private static final long serialVersionUID = 1L;

        FolderException(IOException cause) {
            super(cause);
        }
    }

    /** A way to the bytes of a file. */
    interface Access {

        byte[] bytes() throws IOException;
    }

    /** The bytes, or the reason why there are none. */
    static byte @Nullable [] bytes(Access access, Consumer<String> problem) {
        try {
            return access.bytes();
        } catch (NoSuchFileException e) {
            problem.accept("there is no such file");
        } catch (AccessDeniedException e) {
            problem.accept("this file may not be read");
        } catch (FolderException e) {
            problem.accept("this is a folder, not a file");
        } catch (IOException e) {
            problem.accept("this file cannot be read");
        }
        return null;
    }

    /**
     * Reads the bytes of a file that names no other file.
     *
     * @param bytes content of the file
     * @param name name of the file for problems
     * @return the site, or every problem
     */
    public static ReadOutcome read(byte[] bytes, String name) {
        return read(bytes, name, SideFiles.NONE);
    }

    /**
     * Reads the bytes of a file.
     *
     * @param bytes content of the file
     * @param name name of the file for problems
     * @param sideFiles where the files are that it names
     * @return the site, or every problem
     */
    public static ReadOutcome read(byte[] bytes, String name, SideFiles sideFiles) {
        if (bytes.length > LARGEST) {
            return refused(name, "this file is larger than " + LARGEST + " bytes and no site file");
        }
        ProblemList problems = new ProblemList(name);
        String text = decode(bytes, problems);
        Site site = text == null ? null : site(text, problems, sideFiles);
        if (site == null || text == null || !problems.isEmpty()) {
            return new ReadOutcome.Invalid(problems.inOrderOfFile());
        }
        return new ReadOutcome.Valid(site, name, text, sha256(bytes));
    }

    /**
     * Reads a text.
     *
     * @param text content of a file
     * @param name name of the file for problems
     * @return the site, or every problem
     */
    public static ReadOutcome read(String text, String name) {
        return read(text.getBytes(StandardCharsets.UTF_8), name);
    }

    /**
     * Writes a site: canonical order of keys, units and numbers as their author wrote them. Reading the text gives an
     * equal site.
     *
     * @param site the site
     * @return text of a file
     */
    public static String write(Site site) {
        return SiteWriter.write(site);
    }

    private static ReadOutcome refused(String name, String why) {
        ProblemList problems = new ProblemList(name);
        problems.add(Place.WHOLE_FILE, why);
        return new ReadOutcome.Invalid(problems.inOrderOfFile());
    }

    private static @Nullable Site site(String text, ProblemList problems, SideFiles sideFiles) {
        TreeReader.Result tree = TreeReader.read(text, problems);
        Tree root = tree.root();
        if (root == null || (root instanceof Tree.Scalar scalar && scalar.isEmpty())) {
            if (problems.isEmpty()) {
                problems.add(Place.WHOLE_FILE, "there is nothing in this file");
            }
            return null;
        }
        return site(root, new Place(1, 1), tree.complete(), problems, sideFiles);
    }

    /** The site that a tree describes; null if there is a problem. */
    static @Nullable Site site(Tree root, Place top, boolean complete, ProblemList problems, SideFiles sideFiles) {
        Facts facts = new Facts();
        ValueReader values = new ValueReader(problems, facts, frequency(root), sideFiles);
        BlockReader blocks = new BlockReader(problems, facts, values, complete);
        Record site = blocks.block(Block.site(), root, "", top);
        if (site != null) {
            blocks.checkReferences();
            SiteRules.check(facts, problems, complete);
        }
        return problems.isEmpty() ? (Site) site : null;
    }

    /** Tells what is wrong with the keys that stand in a part of a site file; what they have to do with others comes later. */
    static void readPart(Tree root, ProblemList problems, SideFiles sideFiles) {
        Facts facts = new Facts();
        ValueReader values = new ValueReader(problems, facts, frequency(root), sideFiles);
        new BlockReader(problems, facts, values, false).block(Block.site(), root, "", new Place(1, 1));
    }

    /** A time in cycles may stand before the frequency that it needs, so the frequency is looked up first. */
    private static OptionalDouble frequency(Tree root) {
        Tree frequency = child(child(root, "system"), "frequency");
        if (frequency instanceof Tree.Pairs) {
            frequency = child(frequency, ValueReader.NOMINAL);
        }
        if (frequency instanceof Tree.Scalar scalar && scalar.text().length() < 30) {
            try {
                double hertz = Quantity.parse(scalar.text(), Dimension.FREQUENCY, OptionalDouble.empty())
                        .si();
                return hertz > 0 ? OptionalDouble.of(hertz) : OptionalDouble.empty();
            } catch (UnitException e) {
                return OptionalDouble.empty();
            }
        }
        return OptionalDouble.empty();
    }

    private static @Nullable Tree child(@Nullable Tree tree, String key) {
        if (tree instanceof Tree.Pairs pairs) {
            for (Tree.Pair pair : pairs.pairs()) {
                if (pair.key().equals(key)) {
                    return pair.value();
                }
            }
        }
        return null;
    }

    static @Nullable String decode(byte[] bytes, ProblemList problems) {
        if (startsWith(bytes, 0xFE, 0xFF) || startsWith(bytes, 0xFF, 0xFE)) {
            problems.add(Place.WHOLE_FILE, "this file is in UTF-16; save it as UTF-8");
            return null;
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length + 1);
        CoderResult result = decoder.decode(in, out, true);
        out.flip();
        String text = out.toString();
        if (result.isError()) {
            problems.add(end(text), "this is not UTF-8 from here on; save the file as UTF-8");
            return null;
        }
        if (!text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK) {
            text = text.substring(1);
        }
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if ((c < ' ' && c != '\n' && c != '\r' && c != '\t') || c == 0x7F) {
                problems.add(end(text.substring(0, i)), "there is a control character here; this is no text file");
                return null;
            }
        }
        return text;
    }

    private static boolean startsWith(byte[] bytes, int first, int second) {
        return bytes.length >= 2 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
    }

    /** The place just behind a text. */
    private static Place end(String text) {
        int line = 1;
        int start = 0;
        for (int i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) {
            line++;
            start = i + 1;
        }
        return new Place(line, text.length() - start + 1);
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
