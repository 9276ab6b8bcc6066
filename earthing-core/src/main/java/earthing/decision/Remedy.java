package earthing.decision;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Quantity;
import earthing.site.Electrode;
import earthing.site.Site;
import earthing.site.file.SiteEdit;
import earthing.study.EarthPaths;
import earthing.study.JoinedElectrode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A change of the catalogue, from the least to the greatest of its range. It changes the site's records; which keys, and
 * where it applies, stands in {@code remedies.yaml}.
 *
 * @param id stable id, for example {@code longer-rods}
 * @param title what is built, in words
 * @param method what a step does to the keys
 * @param keys paths of the keys; {@code <main>} is the main earth's electrode, a question mark behind a path changes the
 *     key only where it is given
 * @param steps its range
 * @param towards which of them are changes at all
 * @param where words that keys must have; {@code given} and {@code absent} ask for the key itself
 * @param edits what changes along with the keys
 * @param permission what the owner has to allow, for example {@code neutral}
 * @param applies in words, when it applies
 * @param caution what to mind
 */
public record Remedy(
        String id,
        String title,
        Method method,
        List<String> keys,
        List<Step> steps,
        Towards towards,
        Map<String, List<String>> where,
        Edits edits,
        Optional<String> permission,
        String applies,
        String caution) {

    private static final String MAIN = "<main>";
    private static final String GIVEN = "given";
    private static final String ABSENT = "absent";

    /** What a step does. */
    public enum Method {
        /** It is the value of the keys. */
        SET,
        /** It is the value of those keys that have none. */
        FIT,
        /** It multiplies them. */
        SCALE,
        /** It is the number of members that a list is left. */
        SHORTEN,
        /** It is a part that is bonded to the electrode of the key. */
        JOIN,
        /** The keys are taken away. */
        REMOVE
    }

    /** In which direction a step has to lead. */
    public enum Towards {
        /** To any other value. */
        OTHER,
        /** To a larger one. */
        MORE,
        /** To a smaller one. */
        LESS
    }

    /**
     * One value of the range.
     *
     * @param text in words
     * @param value as the site file writes it
     * @param also keys that get a value with this step
     */
    public record Step(String text, Object value, Map<String, Object> also) {
        /**
         * Copies the map.
         *
         * @param text in words
         * @param value as the site file writes it
         * @param also keys that get a value with this step
         */
        public Step {
            also = Collections.unmodifiableMap(new LinkedHashMap<>(also));
        }
    }

    /**
     * What changes along with the keys.
     *
     * @param also keys that get a value
     * @param unlessGiven keys that get a value where they have none
     * @param follow lengths that move by a factor of what the first key moves by
     * @param sum lengths that become the sum of others
     * @param remove keys that are taken away
     */
    public record Edits(
            Map<String, Object> also,
            Map<String, Object> unlessGiven,
            Map<String, Double> follow,
            Map<String, List<String>> sum,
            List<String> remove) {
        /**
         * Copies the maps.
         *
         * @param also keys that get a value
         * @param unlessGiven keys that get a value where they have none
         * @param follow lengths that move by a factor of what the first key moves by
         * @param sum lengths that become the sum of others
         * @param remove keys that are taken away
         */
        public Edits {
            also = Collections.unmodifiableMap(new LinkedHashMap<>(also));
            unlessGiven = Collections.unmodifiableMap(new LinkedHashMap<>(unlessGiven));
            follow = Collections.unmodifiableMap(new LinkedHashMap<>(follow));
            sum = Collections.unmodifiableMap(new LinkedHashMap<>(sum));
            remove = List.copyOf(remove);
        }
    }

    /**
     * Copies the lists.
     *
     * @param id stable id
     * @param title what is built, in words
     * @param method what a step does to the keys
     * @param keys paths of the keys
     * @param steps its range
     * @param towards which of them are changes at all
     * @param where words that keys must have
     * @param edits what changes along with the keys
     * @param permission what the owner has to allow
     * @param applies in words, when it applies
     * @param caution what to mind
     */
    public Remedy {
        keys = List.copyOf(keys);
        steps = List.copyOf(steps);
        where = Collections.unmodifiableMap(new LinkedHashMap<>(where));
    }

    /**
     * The site with this change.
     *
     * @param site the site
     * @param step one of the steps
     * @return the changed site; empty where the change does not apply, changes nothing, or would contradict what the
     *     file says elsewhere
     */
    public Optional<Site> applied(Site site, Step step) {
        if (!where.entrySet().stream().allMatch(asked -> holds(site, asked.getKey(), asked.getValue()))) {
            return Optional.empty();
        }
        Optional<Site> moved = moved(site, step);
        if (moved.isEmpty() || moved.get().equals(site)) {
            return Optional.empty();
        }
        Site changed = moved.get();
        for (Map.Entry<String, Object> other : edits.also.entrySet()) {
            changed = SiteEdit.set(changed, path(site, other.getKey()), other.getValue());
        }
        for (Map.Entry<String, Object> other : step.also.entrySet()) {
            changed = SiteEdit.set(changed, path(site, other.getKey()), other.getValue());
        }
        for (Map.Entry<String, Object> other : edits.unlessGiven.entrySet()) {
            String path = path(site, other.getKey());
            if (SiteEdit.values(changed, path).isEmpty()) {
                changed = SiteEdit.set(changed, path, other.getValue());
            }
        }
        for (String gone : edits.remove) {
            changed = SiteEdit.unset(changed, path(site, gone));
        }
        changed = followed(site, changed);
        return changed.equals(site) || !SiteEdit.problems(changed).isEmpty() ? Optional.empty() : Optional.of(changed);
    }

    private Optional<Site> moved(Site site, Step step) {
        Site changed = site;
        for (String key : keys) {
            boolean onlyGiven = key.endsWith("?");
            String path = path(site, onlyGiven ? key.substring(0, key.length() - 1) : key);
            switch (method) {
                case SET ->
                    changed =
                            SiteEdit.set(changed, path, step.value, (before, after) -> leads(onlyGiven, before, after));
                case FIT -> changed = SiteEdit.set(changed, path, step.value, (before, after) -> before == null);
                case SCALE -> changed = SiteEdit.scaled(changed, path, Double.parseDouble(step.value.toString()));
                case SHORTEN -> changed = SiteEdit.shortened(changed, path, Integer.parseInt(step.value.toString()));
                case REMOVE -> changed = SiteEdit.unset(changed, path);
                case JOIN -> {
                    Optional<Site> joined = joined(changed, step);
                    if (joined.isEmpty()) {
                        return joined;
                    }
                    changed = joined.get();
                }
            }
        }
        return Optional.of(changed);
    }

    private boolean leads(boolean onlyGiven, @Nullable Object before, Object after) {
        if (before == null) {
            return !onlyGiven;
        }
        if (towards == Towards.OTHER
                || !(before instanceof Measure from && from.isKnown())
                || !(after instanceof Measure to)) {
            return true;
        }
        return towards == Towards.MORE ? to.nominal() > from.nominal() : to.nominal() < from.nominal();
    }

    private static Optional<Site> joined(Site site, Step step) {
        String main = EarthPaths.mainElectrode(site).orElse("");
        Optional<Site> changed = Optional.of(site);
        for (Object part : step.value instanceof List<?> list ? list : List.of(step.value)) {
            Map<String, Object> named = new LinkedHashMap<>();
            named.put("name", "part");
            ((Map<?, ?>) part).forEach((key, value) -> named.put(String.valueOf(key), value));
            Electrode shape = SiteEdit.set(site, "electrodes", List.of(named))
                    .electrodes()
                    .get(0);
            changed = changed.flatMap(before -> JoinedElectrode.of(before, main, shape));
        }
        return changed;
    }

    private Site followed(Site before, Site after) {
        Site changed = after;
        for (Map.Entry<String, Double> other : edits.follow.entrySet()) {
            double moved = length(after, keys.get(0)) - length(before, keys.get(0));
            changed = SiteEdit.lengthened(changed, path(before, other.getKey()), other.getValue() * moved);
        }
        for (Map.Entry<String, List<String>> other : edits.sum.entrySet()) {
            double sum = 0;
            for (String part : other.getValue()) {
                sum += length(changed, part);
            }
            if (sum > 0) {
                double rounded = new BigDecimal(sum, new MathContext(6)).doubleValue();
                changed = SiteEdit.set(
                        changed,
                        path(before, other.getKey()),
                        Quantity.of(Dimension.LENGTH, rounded).text());
            }
        }
        return changed;
    }

    /** The length at a path [m]; NaN where it is not known. */
    private static double length(Site site, String key) {
        return SiteEdit.values(site, path(site, key)).stream()
                .filter(value -> value instanceof Measure measure && measure.isKnown())
                .mapToDouble(value -> ((Measure) value).nominal())
                .findFirst()
                .orElse(Double.NaN);
    }

    private static boolean holds(Site site, String key, List<String> words) {
        List<Object> values = SiteEdit.values(site, path(site, key));
        if (words.equals(List.of(ABSENT))) {
            return values.isEmpty();
        }
        return !values.isEmpty()
                && (words.equals(List.of(GIVEN))
                        || values.stream().allMatch(value -> words.contains(SiteEdit.text(value))));
    }

    /** The path with the number of the main electrode in it; no member of a list has the number 0. */
    private static String path(Site site, String key) {
        if (!key.contains(MAIN)) {
            return key;
        }
        String main = EarthPaths.mainElectrode(site).orElse("");
        int number = 0;
        for (int i = 0; i < site.electrodes().size(); i++) {
            if (site.electrodes().get(i).name().equals(main)) {
                number = i + 1;
            }
        }
        return key.replace(MAIN, Integer.toString(number));
    }
}
