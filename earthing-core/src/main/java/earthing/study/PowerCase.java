package earthing.study;

import earthing.site.Site;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One solved earth fault: what the touch and the heating study need to know of it. All values r.m.s.; currents into
 * electrodes and potentials are the parts in phase with the current into the main electrode, which at a pole is nearly
 * all of them.
 *
 * @param circumstances fault, arrangement, broken path
 * @param at bound of the soil
 * @param site the site as arranged in this case
 * @param paths its earth paths as broken in this case
 * @param earth its electrodes
 * @param current total earth-fault current [A]
 * @param electrodeCurrents current into each electrode that is joined [A]
 * @param rise potential to remote earth by node: {@code tank}, {@code cubicle} and the node of each electrode [V]
 * @param memberCurrents current in each member of the earth paths [A]
 * @param xOverR ratio of reactance to resistance of the whole loop, electrode included
 * @param frequency frequency of the network [Hz]
 * @param shots the shots to lockout; a single one of infinite duration if the fault is never cleared
 */
record PowerCase(
        Case circumstances,
        String at,
        Site site,
        EarthPaths paths,
        SiteEarth earth,
        double current,
        Map<String, Double> electrodeCurrents,
        Map<String, Double> rise,
        Map<String, Double> memberCurrents,
        double xOverR,
        double frequency,
        List<FaultShot> shots) {

    /**
     * One shot of the sequence.
     *
     * @param duration time to interruption [s], infinite if never
     * @param deadTime time until the next shot [s], 0 after the last
     */
    record FaultShot(double duration, double deadTime) {}

    /** Copies lists and maps. */
    PowerCase {
        electrodeCurrents = Collections.unmodifiableMap(new LinkedHashMap<>(electrodeCurrents));
        rise = Collections.unmodifiableMap(new LinkedHashMap<>(rise));
        memberCurrents = Collections.unmodifiableMap(new LinkedHashMap<>(memberCurrents));
        shots = List.copyOf(shots);
    }

    /** The same fault, ended by the back-up protection. */
    PowerCase clearedByBackUp(List<FaultShot> backUpShots) {
        return ended(circumstances.with(Case.PROTECTION, Case.BACK_UP), backUpShots);
    }

    /** The same currents without end. */
    PowerCase standing() {
        return ended(circumstances, List.of(new FaultShot(Double.POSITIVE_INFINITY, 0)));
    }

    private PowerCase ended(Case changed, List<FaultShot> other) {
        return new PowerCase(
                changed,
                at,
                site,
                paths,
                earth,
                current,
                electrodeCurrents,
                rise,
                memberCurrents,
                xOverR,
                frequency,
                other);
    }

    /** Whether the protection never clears the fault. */
    boolean neverCleared() {
        return shots.stream().anyMatch(s -> Double.isInfinite(s.duration()));
    }
}
