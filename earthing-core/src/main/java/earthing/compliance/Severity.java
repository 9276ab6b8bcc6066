package earthing.compliance;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Which status weighs more, and the groups that make the headline. */
public final class Severity {

    /** Groups whose worst finding is the headline. */
    public static final List<Finding.Group> HEADLINE_GROUPS = List.of(
            Finding.Group.PERSONAL_SAFETY,
            Finding.Group.CONDUCTOR_HEATING,
            Finding.Group.SURGE,
            Finding.Group.CONTINGENCY);

    /** The heaviest first; of like ones the smallest margin first, then by group and id. */
    public static final Comparator<Finding> HEAVIEST_FIRST = Comparator.comparingInt(
                    (Finding f) -> -f.status().weight())
            .thenComparingDouble(f -> f.margin().orElse(Double.POSITIVE_INFINITY))
            .thenComparing(Finding::group)
            .thenComparing(Finding::id);

    private Severity() {}

    /**
     * The heaviest finding of a group; of like ones that with the smallest margin.
     *
     * @param findings the findings of a site
     * @param group the group
     * @return that finding, none if no check looked at the group
     */
    public static Optional<Finding> worst(List<Finding> findings, Finding.Group group) {
        return findings.stream().filter(f -> f.group() == group).min(HEAVIEST_FIRST);
    }

    /**
     * Status of a group; a group that no check looked at is not assessed.
     *
     * @param findings the findings of a site
     * @param group the group
     * @return the heaviest status
     */
    public static Status status(List<Finding> findings, Finding.Group group) {
        return worst(findings, group).map(Finding::status).orElse(Status.NOT_ASSESSED);
    }

    /**
     * The worst status of the groups that make the headline.
     *
     * @param findings the findings of a site
     * @return the heaviest status
     */
    public static Status headline(List<Finding> findings) {
        Status worst = Status.NOT_APPLICABLE;
        for (Finding.Group group : HEADLINE_GROUPS) {
            Status status = status(findings, group);
            worst = status.weight() > worst.weight() ? status : worst;
        }
        return worst;
    }

    /**
     * The name of a group.
     *
     * @param group the group
     * @return for example {@code Protection of persons}
     */
    public static String words(Finding.Group group) {
        return switch (group) {
            case PERSONAL_SAFETY -> "Protection of persons";
            case CONDUCTOR_HEATING -> "Heating of conductors";
            case SURGE -> "Surge";
            case CONTINGENCY -> "Broken earth paths";
            case EARTH_PATHS -> "Rules about earth paths";
            case ELECTRODE -> "Soil and electrode";
            case OTHER -> "Other";
        };
    }
}
