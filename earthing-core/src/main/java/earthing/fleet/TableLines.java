package earthing.fleet;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a table one after the other, each of bounded length: a line that is too long, or is no text, is told as
 * such, and the next one is good again.
 */
final class TableLines implements Closeable {

    /** The longest line that is read [bytes]; a row with every key of a site has some thousands. */
    static final int LONGEST = 200_000;

    private final InputStream in;
    private int number;

    TableLines(InputStream in) {
        this.in = new BufferedInputStream(in, 1 << 16);
    }

    /** The next line, null behind the last. */
    @Nullable
    TableLine next() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream(256);
        boolean tooLong = false;
        int c = in.read();
        if (c < 0) {
            return null;
        }
        number++;
        for (; c >= 0 && c != '\n'; c = in.read()) {
            if (line.size() < LONGEST) {
                line.write(c);
            } else {
                tooLong = true;
            }
        }
        if (tooLong) {
            return new TableLine(number, "", "this line is longer than " + LONGEST + " bytes");
        }
        return decoded(line.toByteArray());
    }

    private TableLine decoded(byte[] bytes) {
        int start = number == 1
                        && bytes.length >= 3
                        && bytes[0] == (byte) 0xEF
                        && bytes[1] == (byte) 0xBB
                        && bytes[2] == (byte) 0xBF
                ? 3
                : 0;
        if (number == 1 && bytes.length >= 2 && (bytes[0] & 0xFE) == 0xFE && (bytes[1] & 0xFE) == 0xFE) {
            return new TableLine(number, "", "this file is in UTF-16; save it as UTF-8");
        }
        int end = bytes.length;
        if (end > start && bytes[end - 1] == '\r') {
            end--;
        }
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes, start, end - start))
                    .toString();
        } catch (CharacterCodingException e) {
            return new TableLine(number, "", "this line is not UTF-8; save the file as UTF-8");
        }
        boolean control = text.chars().anyMatch(c -> (c < ' ' && c != '\t') || c == 0x7F);
        return control
                ? new TableLine(number, "", "there is a control character in this line")
                : new TableLine(number, text, "");
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
