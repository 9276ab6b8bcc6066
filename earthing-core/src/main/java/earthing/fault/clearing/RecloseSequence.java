package earthing.fault.clearing;

import earthing.fault.clearing.ClearingTime.Cleared;
import earthing.fault.clearing.ClearingTime.Never;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A reclosing scheme: what protects during each shot, and the dead times between. A permanent fault runs through all
 * shots to lockout, or until a fuse blows: fuse saving is a scheme of fast shots, then shots in which the fuse is faster.
 *
 * @param shots protection in force during each shot, at least one
 * @param deadTimes dead time after each shot but the last [s], each &gt; 0
 */
public record RecloseSequence(List<Protection> shots, List<Double> deadTimes) {

    /**
     * Refuses a scheme whose dead times do not lie between its shots.
     *
     * @param shots protection in force during each shot, at least one
     * @param deadTimes dead time after each shot but the last [s], each &gt; 0
     */
    public RecloseSequence {
        shots = List.copyOf(shots);
        deadTimes = List.copyOf(deadTimes);
        if (shots.isEmpty() || deadTimes.size() != shots.size() - 1) {
            throw new IllegalArgumentException("a reclose sequence needs one dead time between each two shots; have "
                    + shots.size() + " shots, " + deadTimes.size() + " dead times");
        }
        for (double deadTime : deadTimes) {
            if (!(deadTime > 0) || !Double.isFinite(deadTime)) {
                throw new IllegalArgumentException("a dead time must be > 0 s; have " + deadTime);
            }
        }
    }

    /**
     * No reclosing.
     *
     * @param protection the protection
     * @return a sequence of one shot
     */
    public static RecloseSequence none(Protection protection) {
        return new RecloseSequence(List.of(protection), List.of());
    }

    /**
     * The same protection during every shot.
     *
     * @param protection the protection
     * @param deadTimes dead times between the shots [s]
     * @return the scheme
     */
    public static RecloseSequence same(Protection protection, List<Double> deadTimes) {
        List<Protection> shots = new ArrayList<>();
        for (int i = 0; i <= deadTimes.size(); i++) {
            shots.add(protection);
        }
        return new RecloseSequence(shots, deadTimes);
    }

    /**
     * What a permanent fault of constant current goes through.
     *
     * @param current r.m.s. current in every shot [A], ≥ 0
     * @return lockout with all shots up to the last or to the one that a fuse ends, or the shot that never ends
     */
    public Outcome run(double current) {
        List<Shot> done = new ArrayList<>();
        for (int i = 0; i < shots.size(); i++) {
            ClearingTime time = shots.get(i).clear(current);
            if (time instanceof Never never) {
                return new Outcome.Sustained(done, never.reason());
            }
            Cleared cleared = (Cleared) time;
            boolean last = i == deadTimes.size() || shots.get(i).clearsForGood(cleared.by());
            done.add(new Shot(current, cleared.seconds(), last ? Double.POSITIVE_INFINITY : deadTimes.get(i)));
            if (last) {
                break;
            }
        }
        return new Outcome.Lockout(done);
    }

    /**
     * Breakpoints of every shot's protection.
     *
     * @return currents [A], ascending
     */
    public List<Double> breakpoints() {
        TreeSet<Double> points = new TreeSet<>();
        shots.forEach(protection -> points.addAll(protection.breakpoints()));
        return List.copyOf(points);
    }

    /** How a permanent fault ends. */
    public sealed interface Outcome {

        /**
         * The shots that end.
         *
         * @return shots in order of time
         */
        List<Shot> shots();

        /**
         * The fault is interrupted for good.
         *
         * @param shots every shot, the last with an endless dead time
         */
        record Lockout(List<Shot> shots) implements Outcome {

            /**
             * Takes a copy.
             *
             * @param shots every shot, the last with an endless dead time
             */
            public Lockout {
                shots = List.copyOf(shots);
            }
        }

        /**
         * A shot never ends.
         *
         * @param shots shots that did end before it
         * @param reason why nothing acts
         */
        record Sustained(List<Shot> shots, String reason) implements Outcome {

            /**
             * Takes a copy.
             *
             * @param shots shots that did end before it
             * @param reason why nothing acts
             */
            public Sustained {
                shots = List.copyOf(shots);
            }
        }

        /**
         * Sum over the shots that end, no cooling between them.
         *
         * @return I²t [A²s]; of no use as a criterion when the outcome is sustained
         */
        default double jouleIntegral() {
            return shots().stream().mapToDouble(Shot::jouleIntegral).sum();
        }

        /**
         * How long current flows in the shots that end.
         *
         * @return seconds
         */
        default double liveTime() {
            return shots().stream().mapToDouble(Shot::duration).sum();
        }

        /**
         * From the start of the fault to the end of the last shot that ends, dead times between included.
         *
         * @return seconds
         */
        default double elapsedTime() {
            double sum = 0;
            for (int i = 0; i < shots().size(); i++) {
                sum += shots().get(i).duration();
                if (i + 1 < shots().size()) {
                    sum += shots().get(i).deadTime();
                }
            }
            return sum;
        }

        /**
         * Constant current that heats as much in {@link #liveTime}; IEC 60909-0 for successive short circuits.
         *
         * @return current [A], zero when no shot ended
         */
        default double equivalentCurrent() {
            double time = liveTime();
            return time > 0 ? Math.sqrt(jouleIntegral() / time) : 0;
        }
    }
}
