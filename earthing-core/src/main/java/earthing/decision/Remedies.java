package earthing.decision;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.decision.RemedyTrial.Change;
import java.util.List;
import java.util.Optional;

/**
 * What a search for remedies found.
 *
 * @param before the findings of the site as it is
 * @param withheld changes that apply but that the owner has not allowed
 * @param singles every change alone, at every step of its range, in the order of the catalogue
 * @param strongest of each change the step that is tried in sets
 * @param sets the sets that meet every finding, the best first
 * @param sizes how many sets there are and how many were tried
 * @param further where no set was found: a larger one, of which no change can be spared; it may leave findings unmet
 * @param costs what changes cost
 * @param runs sites studied
 */
public record Remedies(
        List<Finding> before,
        List<Remedy> withheld,
        List<RemedyTrial> singles,
        List<RemedyTrial> strongest,
        List<RemedyTrial> sets,
        List<Size> sizes,
        Optional<RemedyTrial> further,
        RemedyCosts costs,
        int runs) {

    /**
     * Sets of one size.
     *
     * @param size changes in a set
     * @param possible how many there are
     * @param tried how many were tried
     */
    public record Size(int size, int possible, int tried) {}

    /**
     * Copies the lists.
     *
     * @param before the findings of the site as it is
     * @param withheld changes that the owner has not allowed
     * @param singles every change alone
     * @param strongest of each change the step that is tried in sets
     * @param sets the sets that meet every finding
     * @param sizes how many sets there are and how many were tried
     * @param further a larger set
     * @param costs what changes cost
     * @param runs sites studied
     */
    public Remedies {
        before = List.copyOf(before);
        withheld = List.copyOf(withheld);
        singles = List.copyOf(singles);
        strongest = List.copyOf(strongest);
        sets = List.copyOf(sets);
        sizes = List.copyOf(sizes);
    }

    /**
     * The findings that call for a remedy.
     *
     * @return those not met, but for readings: a reading belongs to the pole that was measured, and no change answers it
     */
    public List<Finding> notMet() {
        return before.stream()
                .filter(f -> f.status() == Status.NOT_MET && !RemedySearch.isReading(f))
                .toList();
    }

    /**
     * The findings on readings that are not met.
     *
     * @return those that only a new reading answers
     */
    public List<Finding> readings() {
        return before.stream()
                .filter(f -> f.status() == Status.NOT_MET && RemedySearch.isReading(f))
                .toList();
    }

    /**
     * The findings that want an input, which nothing done to the pole gives.
     *
     * @return those of the site as it is, but for readings
     */
    public List<Finding> open() {
        return before.stream()
                .filter(f -> f.status() == Status.INSUFFICIENT_DATA && !RemedySearch.isReading(f))
                .toList();
    }

    /**
     * Whether some set was not tried.
     *
     * @return true if the search was cut short
     */
    public boolean cutShort() {
        return sizes.stream().anyMatch(size -> size.tried() < size.possible());
    }

    /**
     * The changes that meet a finding alone, each at the least step that does.
     *
     * @param finding a finding that is not met
     * @return in the order of the catalogue
     */
    public List<RemedyTrial> meeting(Finding finding) {
        return singles.stream()
                .filter(trial -> trial.meets(finding))
                .filter(trial -> singles.stream()
                        .noneMatch(other -> sameRemedy(other, trial)
                                && change(other).step() < change(trial).step()
                                && other.meets(finding)))
                .toList();
    }

    /**
     * Of the changes that do not meet a finding alone, the one that brings it furthest.
     *
     * @param finding a finding that is not met
     * @return the trial with the largest margin, empty if none moves it to a larger one
     */
    public Optional<RemedyTrial> furthest(Finding finding) {
        if (finding.margin().isEmpty()) {
            return Optional.empty();
        }
        double best = finding.margin().getAsDouble() + 1e-3;
        RemedyTrial found = null;
        for (RemedyTrial trial : singles) {
            double margin = trial.now(finding)
                    .map(f -> f.margin().orElse(Double.NEGATIVE_INFINITY))
                    .orElse(Double.NEGATIVE_INFINITY);
            if (margin > best && !trial.meets(finding)) {
                best = margin;
                found = trial;
            }
        }
        return Optional.ofNullable(found);
    }

    /**
     * The set to write if none is named.
     *
     * @return the best of the smallest sets, else the larger one if it meets every finding
     */
    public Optional<RemedyTrial> best() {
        return sets.isEmpty() ? further.filter(RemedyTrial::meetsAll) : Optional.of(sets.get(0));
    }

    private static Change change(RemedyTrial trial) {
        return trial.changes().get(0);
    }

    private static boolean sameRemedy(RemedyTrial a, RemedyTrial b) {
        return change(a).remedy().equals(change(b).remedy());
    }
}
