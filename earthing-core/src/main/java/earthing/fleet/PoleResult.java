package earthing.fleet;

import earthing.compliance.Finding.Group;
import earthing.compliance.Status;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A row of the results: the headline and the governing finding of each group, or the reason why there is none.
 *
 * @param row number of the row in the table
 * @param pole number or name of the pole, empty if the row does not say
 * @param name name of the site, empty if the row has no value
 * @param latitude latitude [deg], if it is given
 * @param longitude longitude [deg], if it is given
 * @param headline the worst of the headline groups; empty if the row has no value
 * @param governing the governing finding of each group that has one
 * @param missingKeys keys whose absence left a check open
 * @param reason why the row has no value, empty if it has
 */
public record PoleResult(
        int row,
        String pole,
        String name,
        OptionalDouble latitude,
        OptionalDouble longitude,
        Optional<Status> headline,
        Map<Group, Governing> governing,
        List<String> missingKeys,
        String reason) {

    /**
     * Copies the findings.
     *
     * @param row number of the row in the table
     * @param pole number or name of the pole, empty if the row does not say
     * @param name name of the site, empty if the row has no value
     * @param latitude latitude [deg], if it is given
     * @param longitude longitude [deg], if it is given
     * @param headline the worst of the headline groups; empty if the row has no value
     * @param governing the governing finding of each group that has one
     * @param missingKeys keys whose absence left a check open
     * @param reason why the row has no value, empty if it has
     */
    public PoleResult {
        Map<Group, Governing> copy = new EnumMap<>(Group.class);
        copy.putAll(governing);
        governing = Collections.unmodifiableMap(copy);
        missingKeys = List.copyOf(missingKeys);
    }

    /**
     * The heaviest finding of a group; of like ones that with the smallest margin.
     *
     * @param check id of the finding
     * @param status what it says
     * @param value value in SI, where there is one
     * @param limit limit in SI, where there is one
     * @param unit SI unit of both
     * @param margin relative margin, where there is one
     * @param circumstances the governing case in words
     * @param bound where in the range of the inputs it governs
     */
    public record Governing(
            String check,
            Status status,
            OptionalDouble value,
            OptionalDouble limit,
            String unit,
            OptionalDouble margin,
            String circumstances,
            String bound) {}

    /**
     * Whether the row was assessed.
     *
     * @return false if there is only a reason
     */
    public boolean isAssessed() {
        return headline.isPresent();
    }
}
