package earthing.decision;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.decision.RemedyTrial.Change;
import earthing.site.Site;
import earthing.site.file.SiteEdit;
import earthing.study.EarthCache;
import earthing.study.FixedGround;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import earthing.study.Workers;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/**
 * Looks for changes of a catalogue that meet the findings of a site. Every change is tried alone at every step of its
 * range, by the whole study and every check on the changed site; then sets of changes by size, each as far as to the first
 * part of the studies in which it fails, and whole where none tells against it. What is tried and
 * what is not is described in {@code docs/decisions/0009-remedies.md}.
 */
public final class RemedySearch {

    /** Largest set that is searched for. */
    public static final int LARGEST = 3;

    /**
     * Studies that are made for sets at most, unless told otherwise: more than all sets of up to three of 15 changes can need,
     * whose two parts are counted apart.
     */
    public static final int BUDGET = 1200;

    /** Most studies that one set needs: both parts, and all of it where these let it pass. */
    private static final int STUDIES_A_SET = 3;

    /** Found sets whose steps are brought down. */
    private static final int BROUGHT_DOWN = 6;

    private final Site site;
    private final List<Finding> before;
    private final EarthCache cache = EarthCache.ofManySites();
    /** Of equal sites only one is studied. */
    private final Map<Site, List<Finding>> known = new ConcurrentHashMap<>();

    private final TrialParts parts;

    private final Consumer<String> progress;

    /**
     * How a search is done.
     *
     * @param allowed permissions of the owner, for example {@code neutral}
     * @param largest largest set, ≥ 1
     * @param budget studies that are made for sets at most, ≥ 0; a part of the studies counts as one
     * @param everyStep whether sets are tried with every step of each change, not with the strongest alone
     * @param costs what changes cost
     */
    public record Plan(Set<String> allowed, int largest, int budget, boolean everyStep, RemedyCosts costs) {
        /** The usual search. */
        public static final Plan USUAL = new Plan(Set.of(), LARGEST, BUDGET, false, RemedyCosts.NONE);

        /**
         * Refuses what is no size.
         *
         * @param allowed permissions of the owner
         * @param largest largest set, ≥ 1
         * @param budget studies that are made for sets at most, ≥ 0
         * @param everyStep whether sets are tried with every step of each change
         * @param costs what changes cost
         */
        public Plan {
            allowed = Set.copyOf(allowed);
            if (largest < 1 || budget < 0) {
                throw new IllegalArgumentException("a search needs sets of at least 1 and a budget of at least 0; have "
                        + largest + " and " + budget);
            }
        }
    }

    private RemedySearch(Site site, Consumer<String> progress) {
        this.site = site;
        this.progress = progress;
        this.before = findings(site);
        this.parts = new TrialParts(site, before, cache);
    }

    /**
     * Searches, by the pool of the caller or by as many workers as the machine has processors.
     *
     * @param site the site
     * @param catalogue the changes
     * @param plan how far to go
     * @param progress told in words what is being tried
     * @return what was found; without trials where every finding is met
     */
    public static Remedies of(Site site, List<Remedy> catalogue, Plan plan, Consumer<String> progress) {
        // In a pool of its own, so that each worker takes whole sites.
        return Workers.here(() -> new RemedySearch(site, progress).run(catalogue, plan));
    }

    /**
     * One set of named changes, whatever it leads to.
     *
     * @param site the site
     * @param catalogue the changes
     * @param chosen step of each change by its id, counted from 1; 0 for the one that does most alone
     * @param plan what the owner allows, and costs
     * @return the set, among {@link Remedies#sets} if it meets every finding, else {@link Remedies#further}
     * @throws IllegalArgumentException when one of them does not apply to this site or is not allowed
     */
    public static Remedies chosen(Site site, List<Remedy> catalogue, Map<String, Integer> chosen, Plan plan) {
        return Workers.here(() -> new RemedySearch(site, step -> {}).run(catalogue, chosen, plan));
    }

    private Remedies run(List<Remedy> catalogue, Map<String, Integer> chosen, Plan plan) {
        List<Remedy> named =
                catalogue.stream().filter(one -> chosen.containsKey(one.id())).toList();
        for (Remedy remedy : named) {
            if (!remedy.permission().map(plan.allowed::contains).orElse(true)) {
                throw new IllegalArgumentException(
                        remedy.id() + " needs --allow " + remedy.permission().orElse(""));
            }
        }
        List<RemedyTrial> singles = singles(named);
        List<RemedyTrial> strongest = strongest(singles);
        List<Change> changes = new ArrayList<>();
        for (Remedy remedy : named) {
            int step = chosen.getOrDefault(remedy.id(), 0);
            // What applies only behind another change has no trial of its own.
            changes.add(
                    step > 0
                            ? new Change(remedy, step - 1)
                            : strongest.stream()
                                    .map(trial -> trial.changes().get(0))
                                    .filter(change -> change.remedy().equals(remedy))
                                    .findFirst()
                                    .orElse(new Change(remedy, remedy.steps().size() - 1)));
        }
        RemedyTrial trial = tried(changes)
                .orElseThrow(() -> new IllegalArgumentException("these changes do not apply here as a set; "
                        + String.join(
                                "; ",
                                named.stream()
                                        .map(one -> one.id() + " applies where " + one.applies()
                                                + " and the step is a change")
                                        .toList())));
        boolean met = trial.meetsAll();
        return new Remedies(
                before,
                List.of(),
                singles,
                strongest,
                met ? List.of(trial) : List.of(),
                List.of(),
                met ? Optional.empty() : Optional.of(trial),
                plan.costs,
                known.size());
    }

    /** Whether a finding is on a reading; after a change of the pole it is measured anew. */
    static boolean isReading(Finding finding) {
        return finding.id().startsWith("test.");
    }

    private Remedies run(List<Remedy> catalogue, Plan plan) {
        List<Remedy> withheld = new ArrayList<>();
        List<Remedy> open = new ArrayList<>();
        for (Remedy remedy : catalogue) {
            boolean may = remedy.permission().map(plan.allowed::contains).orElse(true);
            if (may) {
                open.add(remedy);
            } else if (remedy.steps().stream()
                    .anyMatch(step -> remedy.applied(site, step).isPresent())) {
                withheld.add(remedy);
            }
        }
        boolean nothingToDo = before.stream().noneMatch(f -> f.status() == Status.NOT_MET && !isReading(f));
        if (nothingToDo) {
            return new Remedies(
                    before, withheld, List.of(), List.of(), List.of(), List.of(), Optional.empty(), plan.costs, 1);
        }
        List<RemedyTrial> singles = singles(open);
        List<RemedyTrial> strongest = strongest(singles);
        List<RemedyTrial> choices = plan.everyStep ? singles : strongest;
        SetSearch search = search(choices, plan);
        List<RemedyTrial> sets = ranked(search, choices, plan.costs);
        Optional<RemedyTrial> further = sets.isEmpty() ? further(open, strongest) : Optional.empty();
        return new Remedies(
                before,
                withheld,
                singles,
                strongest,
                sets,
                search.sizes().stream()
                        .map(s -> new Remedies.Size(s.size(), s.possible(), s.tried()))
                        .toList(),
                further,
                plan.costs,
                known.size());
    }

    private List<RemedyTrial> singles(List<Remedy> remedies) {
        List<Change> changes = new ArrayList<>();
        for (Remedy remedy : remedies) {
            for (int step = 0; step < remedy.steps().size(); step++) {
                changes.add(new Change(remedy, step));
            }
        }
        progress.accept("trying " + remedies.size() + " changes alone");
        return changes.parallelStream()
                .map(change -> tried(List.of(change)))
                .flatMap(Optional::stream)
                .toList();
    }

    /** Of each change the step that leaves least unmet; of like ones that with the larger margins, then the lesser. */
    private List<RemedyTrial> strongest(List<RemedyTrial> singles) {
        Map<String, RemedyTrial> best = new LinkedHashMap<>();
        Comparator<RemedyTrial> better =
                Comparator.comparingInt(RemedyTrial::left).thenComparingDouble(trial -> -margins(trial));
        for (RemedyTrial trial : singles) {
            best.merge(
                    trial.changes().get(0).remedy().id(),
                    trial,
                    (old, now) -> better.compare(now, old) < 0 ? now : old);
        }
        return List.copyOf(best.values());
    }

    /** Sum of what is missing to the limits; a finding without a margin counts as a whole limit. */
    private double margins(RemedyTrial trial) {
        double sum = 0;
        for (Finding finding : before) {
            if (finding.status() == Status.NOT_MET && !trial.meets(finding)) {
                double margin =
                        trial.now(finding).map(f -> f.margin().orElse(-1)).orElse(0.0);
                // On a scale of ratios, so that one far miss does not hide the rest.
                sum -= Math.log1p(Math.max(0, -margin));
            }
        }
        return sum;
    }

    private SetSearch search(List<RemedyTrial> choices, Plan plan) {
        Map<String, Integer> groups = new LinkedHashMap<>();
        int[] group = choices.stream()
                .mapToInt(choice ->
                        groups.computeIfAbsent(choice.changes().get(0).remedy().id(), id -> groups.size()))
                .toArray();
        List<Finding> notMet = before.stream()
                .filter(f -> f.status() == Status.NOT_MET && !isReading(f))
                .toList();
        return SetSearch.of(
                group,
                plan.largest,
                new SetSearch.Budget(plan.budget, STUDIES_A_SET, () -> parts.studied() + known.size()),
                set -> notMet.stream()
                        .filter(f -> set.stream()
                                .noneMatch(choice -> choices.get(choice).meets(f)))
                        .count(),
                set -> meets(changes(choices, set)),
                progress);
    }

    private static List<Change> changes(List<RemedyTrial> choices, Collection<Integer> set) {
        return set.stream().map(choice -> choices.get(choice).changes().get(0)).toList();
    }

    private List<RemedyTrial> ranked(SetSearch search, List<RemedyTrial> choices, RemedyCosts costs) {
        List<RemedyTrial> found = new ArrayList<>();
        for (List<Integer> set : search.sets()) {
            found.add(tried(changes(choices, set)).orElseThrow());
        }
        Comparator<RemedyTrial> order = Comparator.comparingDouble(
                        (RemedyTrial trial) -> costs.of(trial).orElse(Double.POSITIVE_INFINITY))
                .thenComparingInt(trial -> trial.worsened().size());
        found.sort(order);
        List<RemedyTrial> brought = new ArrayList<>();
        Set<List<Change>> seen = new HashSet<>();
        for (int i = 0; i < found.size(); i++) {
            RemedyTrial trial = i < BROUGHT_DOWN ? broughtDown(found.get(i)) : found.get(i);
            if (seen.add(trial.changes())) {
                brought.add(trial);
            }
        }
        brought.sort(order);
        return brought;
    }

    /** Each change in turn at the least step with which the set still meets everything. */
    private RemedyTrial broughtDown(RemedyTrial trial) {
        RemedyTrial least = trial;
        for (int i = 0; i < trial.changes().size(); i++) {
            Change change = trial.changes().get(i);
            for (int step = 0; step < change.step(); step++) {
                List<Change> lower = new ArrayList<>(least.changes());
                lower.set(i, new Change(change.remedy(), step));
                if (meets(lower)) {
                    least = tried(lower).orElseThrow();
                    break;
                }
            }
        }
        return least;
    }

    /**
     * A larger set that leaves fewer findings than the site as it is; empty if none was come upon. One that meets everything
     * has its steps brought down.
     */
    private Optional<RemedyTrial> further(List<Remedy> open, List<RemedyTrial> strongest) {
        List<Change> all = new ArrayList<>();
        open.forEach(remedy -> {
            for (int step = 0; step < remedy.steps().size(); step++) {
                all.add(new Change(remedy, step));
            }
        });
        long now = before.stream()
                .filter(f -> f.status() == Status.NOT_MET && !isReading(f))
                .count();
        List<Change> helping = strongest.stream()
                .filter(trial -> trial.left() < now
                        || before.stream().anyMatch(f -> f.status() == Status.NOT_MET && trial.meets(f)))
                .map(trial -> trial.changes().get(0))
                .toList();
        List<Change> each =
                strongest.stream().map(trial -> trial.changes().get(0)).toList();
        return new LargerSet(all, this::missing, progress)
                .from(List.of(List.of(), applying(helping)), each)
                .flatMap(this::tried)
                .map(trial -> trial.meetsAll() ? broughtDown(trial) : trial)
                .filter(trial -> trial.left() < now);
    }

    /** What stands against a set, by the parts of the studies; what rests on several of them is asked when the set is there. */
    private Optional<List<Finding>> missing(List<Change> changes) {
        return changed(changes)
                .map(changed -> RemedyTrial.against(before, parts.all(changed)).toList());
    }

    /** The changes one after another, without those that no longer apply behind the others. */
    private List<Change> applying(List<Change> changes) {
        List<Change> taken = new ArrayList<>();
        Site changed = site;
        for (Change change : changes) {
            Optional<Site> next = apply(changed, change);
            if (next.isPresent()) {
                changed = next.get();
                taken.add(change);
            }
        }
        return taken;
    }

    /** Whether a set meets everything; a part that does not is enough to say no. */
    private boolean meets(List<Change> changes) {
        Optional<Site> changed = changed(changes);
        return changed.isPresent()
                && parts.mayMeet(changed.get())
                && trial(changes, changed.get()).meetsAll();
    }

    private Optional<RemedyTrial> tried(List<Change> changes) {
        return changed(changes).map(changed -> trial(changes, changed));
    }

    private RemedyTrial trial(List<Change> changes, Site changed) {
        return RemedyTrial.of(changes, changed, before, findings(changed));
    }

    /** The site with the changes one after another; empty if one of them does not apply behind the others. */
    private Optional<Site> changed(List<Change> changes) {
        Site changed = site;
        for (Change change : changes) {
            Optional<Site> next = apply(changed, change);
            if (next.isEmpty()) {
                return next;
            }
            changed = next.get();
        }
        return Optional.of(SiteEdit.unset(changed, "expect"));
    }

    /**
     * What the author expected of the site as it was is not expected of another. Readings belong to the electrodes that
     * were measured; where those change, the readings go.
     */
    private Optional<Site> apply(Site site, Change change) {
        Remedy remedy = change.remedy();
        Optional<Site> changed = remedy.applied(site, remedy.steps().get(change.step()));
        if (changed.isPresent() && !changed.get().electrodes().equals(site.electrodes())) {
            return remedy.applied(FixedGround.of(site, cache), remedy.steps().get(change.step()));
        }
        return changed;
    }

    private List<Finding> findings(Site changed) {
        List<Finding> found = known.get(changed);
        if (found == null) {
            // Studied twice rather than waited for; the results are the same.
            found = ComplianceRun.of(changed, SiteStudy.of(changed, StudyScope.AS_BUILT, cache));
            known.put(changed, found);
        }
        return found;
    }
}
