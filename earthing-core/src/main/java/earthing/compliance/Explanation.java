package earthing.compliance;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * What a check looks at, in plain words.
 *
 * @param id id of the check; {@code <x>} stands for one or more parts
 * @param meaning what is compared with what
 * @param why why it matters
 * @param action what to do if it is not met
 */
public record Explanation(String id, String meaning, String why, String action) {

    private static final String DATA = "explanations.yaml";

    /**
     * Every explanation.
     *
     * @return the explanations in the order of the checks
     */
    public static List<Explanation> all() {
        return Read.ALL;
    }

    /** Read when first asked for. */
    private static final class Read {
        static final List<Explanation> ALL = read();
    }

    private static List<Explanation> read() {
        try (InputStream in = Explanation.class.getResourceAsStream(DATA)) {
            if (in == null) {
                throw new IllegalStateException("the explanations are missing from the library");
            }
            Object tree = new Load(LoadSettings.builder().setLabel(DATA).build()).loadFromInputStream(in);
            List<Explanation> all = new ArrayList<>();
            for (Object entry : (List<?>) tree) {
                Map<?, ?> keys = (Map<?, ?>) entry;
                all.add(new Explanation(
                        text(keys, "id"), text(keys, "meaning"), text(keys, "why"), text(keys, "action")));
            }
            return List.copyOf(all);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Map<?, ?> keys, String key) {
        if (keys.get(key) instanceof String text && !text.isBlank()) {
            return text;
        }
        throw new IllegalStateException(DATA + ": an entry has no " + key + ": " + keys);
    }

    /**
     * The explanation of a check.
     *
     * @param finding id of a finding, for example {@code touch.cubicle}, or of a check, {@code touch.<part>}
     * @return the explanation whose id says most of it literally, if there is one
     */
    public static Optional<Explanation> of(String finding) {
        @Nullable Explanation best = null;
        for (Explanation one : all()) {
            if (one.covers(finding)
                    && (best == null || one.id.indexOf('<') < 0 || literal(one.id) > literal(best.id))) {
                best = one;
            }
        }
        return Optional.ofNullable(best);
    }

    private boolean covers(String finding) {
        return id.equals(finding) || matches(id.split("\\.", -1), 0, finding.split("\\.", -1), 0);
    }

    private static boolean matches(String[] pattern, int i, String[] parts, int j) {
        if (i == pattern.length || j == parts.length) {
            return i == pattern.length && j == parts.length;
        }
        if (!pattern[i].startsWith("<")) {
            return pattern[i].equals(parts[j]) && matches(pattern, i + 1, parts, j + 1);
        }
        return matches(pattern, i + 1, parts, j + 1) || matches(pattern, i, parts, j + 1);
    }

    private static int literal(String id) {
        return id.replaceAll("<[^>]*>", "").length();
    }
}
