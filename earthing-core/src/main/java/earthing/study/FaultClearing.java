package earthing.study;

import earthing.fault.clearing.Characteristic;
import earthing.fault.clearing.InverseCurve;
import earthing.fault.clearing.ProtectionStage;
import earthing.fault.clearing.RecloseSequence;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.Fuse;
import earthing.site.FusePoint;
import earthing.site.Protection;
import earthing.site.Reclose;
import earthing.site.Relay;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * How an earth fault at this pole ends.
 *
 * @param sequence shots to lockout
 * @param pickup smallest pickup of all stages [A]; empty where a time is declared for every current
 * @param inversePickups pickups of the stages with an inverse curve [A]
 * @param backUp the protection that acts if the first one fails, one shot
 */
record FaultClearing(
        RecloseSequence sequence,
        OptionalDouble pickup,
        List<Double> inversePickups,
        Optional<RecloseSequence> backUp) {

    /** An inverse curve is trusted from this multiple of its pickup; closer to it no relay promises a time [1]. */
    static final double LEAST_MULTIPLE = 1.1;

    private static final Source BREAKER = Source.commonPractice("interrupting time of a medium-voltage breaker");
    private static final Source BREAKS =
            Source.tool("no breaking current is stated; compare it with the largest current");
    private static final Source NO_MARGIN = Source.tool("no time is added that the file does not state");

    static FaultClearing of(Site site, Inputs in) throws MissingInput {
        Protection protection = site.protection();
        if (protection == null
                || (protection.relay() == null
                        && protection.clearingTime() == null
                        && protection.fuse() == null
                        && protection.sensitive() == null)) {
            throw new MissingInput("how fast an earth fault is cleared is not given", "protection.clearing-time");
        }
        List<ProtectionStage> stages = new ArrayList<>();
        Relay relay = protection.relay();
        Optional<ProtectionStage> fuse =
                protection.fuse() == null ? Optional.empty() : Optional.of(fuse(protection.fuse(), in));
        if (relay != null) {
            stages.add(stage("the earth-fault protection", relay, "protection.relay", in));
        }
        fuse.ifPresent(stages::add);
        if (stages.isEmpty() && protection.clearingTime() != null) {
            stages.add(new ProtectionStage(
                    "declared clearing time",
                    new Characteristic.DefiniteTime(
                            Double.MIN_NORMAL,
                            in.need(protection.clearingTime(), "protection.clearing-time", Bound.HIGH)),
                    0,
                    0));
        }
        List<ProtectionStage> always = new ArrayList<>();
        fuse.ifPresent(always::add);
        if (protection.sensitive() != null) {
            ProtectionStage sensitive =
                    stage("the sensitive earth-fault stage", protection.sensitive(), "protection.sensitive", in);
            always.add(sensitive);
            stages.add(sensitive);
        }
        boolean declared = protection.clearingTime() != null;
        Optional<RecloseSequence> backUp = protection.backUp() == null
                ? Optional.empty()
                : Optional.of(RecloseSequence.none(earthing.fault.clearing.Protection.of(
                        stage("the back-up protection", protection.backUp(), "protection.back-up", in))));
        earthing.fault.clearing.Protection slow = new earthing.fault.clearing.Protection(stages);
        return new FaultClearing(
                sequence(stages.get(0), slow, always, protection.reclose(), in),
                declared ? OptionalDouble.empty() : OptionalDouble.of(slow.pickup()),
                stages.stream()
                        .map(ProtectionStage::characteristic)
                        .filter(Characteristic.InverseTime.class::isInstance)
                        .map(Characteristic::pickup)
                        .toList(),
                backUp);
    }

    private static ProtectionStage fuse(Fuse fuse, Inputs in) throws MissingInput {
        List<Characteristic.Points.Point> points = new ArrayList<>();
        for (FusePoint point : fuse.points()) {
            points.add(new Characteristic.Points.Point(
                    in.need(point.current(), "protection.fuse.points.current"),
                    in.need(point.time(), "protection.fuse.points.time", Bound.HIGH)));
        }
        double breaking = fuse.breakingCurrent() == null
                ? Double.POSITIVE_INFINITY
                : in.need(fuse.breakingCurrent(), "protection.fuse.breaking-current", Bound.LOW);
        if (fuse.breakingCurrent() == null) {
            in.choice("protection.fuse.breaking-current", "above every fault current here", BREAKS);
        }
        return new ProtectionStage(
                "the fuse",
                new Characteristic.Points(points, breaking),
                0,
                in.orElse(fuse.margin(), "protection.fuse.margin", 0, Dimension.TIME, NO_MARGIN));
    }

    /** The sensitive stage and a fuse stay in force during fast shots. */
    private static RecloseSequence sequence(
            ProtectionStage main,
            earthing.fault.clearing.Protection slow,
            List<ProtectionStage> always,
            @Nullable Reclose reclose,
            Inputs in)
            throws MissingInput {
        if (reclose == null) {
            return RecloseSequence.none(slow);
        }
        int fast = reclose.fastShots() == null ? 0 : reclose.fastShots();
        List<earthing.fault.clearing.Protection> shots = new ArrayList<>();
        List<Double> deadTimes = new ArrayList<>();
        for (int i = 0; i <= reclose.deadTimes().size(); i++) {
            if (i >= fast) {
                shots.add(slow);
                continue;
            }
            List<ProtectionStage> quick = new ArrayList<>(List.of(new ProtectionStage(
                    "the fast shot",
                    new Characteristic.DefiniteTime(
                            main.characteristic().pickup(),
                            in.need(reclose.fastTime(), "protection.reclose.fast-time", Bound.HIGH)),
                    0,
                    0)));
            quick.addAll(always);
            shots.add(new earthing.fault.clearing.Protection(quick));
        }
        for (Measure deadTime : reclose.deadTimes()) {
            deadTimes.add(in.need(deadTime, "protection.reclose.dead-times", Bound.LOW));
        }
        return new RecloseSequence(shots, deadTimes);
    }

    private static ProtectionStage stage(String name, Relay relay, String key, Inputs in) throws MissingInput {
        double pickup = in.need(relay.pickup(), key + ".pickup");
        Characteristic characteristic = switch (relay.curve()) {
            case DEFINITE_TIME ->
                new Characteristic.DefiniteTime(pickup, in.need(relay.delay(), key + ".delay", Bound.HIGH));
            case IEC_NORMAL_INVERSE -> inverse(InverseCurve.IEC_NORMAL_INVERSE, pickup, relay, key, in);
            case IEC_VERY_INVERSE -> inverse(InverseCurve.IEC_VERY_INVERSE, pickup, relay, key, in);
            case IEC_EXTREMELY_INVERSE -> inverse(InverseCurve.IEC_EXTREMELY_INVERSE, pickup, relay, key, in);
            case IEEE_MODERATELY_INVERSE -> inverse(InverseCurve.IEEE_MODERATELY_INVERSE, pickup, relay, key, in);
            case IEEE_VERY_INVERSE -> inverse(InverseCurve.IEEE_VERY_INVERSE, pickup, relay, key, in);
            case IEEE_EXTREMELY_INVERSE -> inverse(InverseCurve.IEEE_EXTREMELY_INVERSE, pickup, relay, key, in);
        };
        return new ProtectionStage(
                name,
                characteristic,
                in.orElse(relay.breakerTime(), key + ".breaker-time", 0.1, Dimension.TIME, BREAKER),
                in.orElse(relay.margin(), key + ".margin", 0, Dimension.TIME, NO_MARGIN));
    }

    private static Characteristic inverse(InverseCurve curve, double pickup, Relay relay, String key, Inputs in)
            throws MissingInput {
        return new Characteristic.InverseTime(
                pickup,
                in.need(relay.timeMultiplier(), key + ".time-multiplier", Bound.HIGH),
                curve,
                LEAST_MULTIPLE,
                Characteristic.InverseTime.USUAL_CEILING,
                0);
    }

    /** The back-up in the place of the protection that failed. */
    Optional<FaultClearing> asBackUp() {
        return backUp.map(other -> new FaultClearing(other, pickup, List.of(), Optional.empty()));
    }

    /** Currents at which the time changes its course, a little above, within a range [A]. */
    List<Double> between(double low, double high) {
        List<Double> currents = new ArrayList<>();
        for (double point : sequence.breakpoints()) {
            double current = point * (1 + 1e-9);
            if (current > low && current < high) {
                currents.add(current);
            }
        }
        return currents;
    }

    /** The shots of a current; a single endless one if it is never cleared. */
    static List<PowerCase.FaultShot> shots(RecloseSequence.Outcome outcome) {
        if (outcome instanceof RecloseSequence.Outcome.Sustained) {
            return List.of(new PowerCase.FaultShot(Double.POSITIVE_INFINITY, 0));
        }
        List<PowerCase.FaultShot> shots = new ArrayList<>();
        for (int i = 0; i < outcome.shots().size(); i++) {
            shots.add(new PowerCase.FaultShot(
                    outcome.shots().get(i).duration(),
                    i + 1 < outcome.shots().size() ? outcome.shots().get(i).deadTime() : 0));
        }
        return shots;
    }
}
