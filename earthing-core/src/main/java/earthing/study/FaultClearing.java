package earthing.study;

import earthing.fault.clearing.Characteristic;
import earthing.fault.clearing.InverseCurve;
import earthing.fault.clearing.ProtectionStage;
import earthing.fault.clearing.RecloseSequence;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
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
 * @param pickup pickup of the first relay [A]; empty where a time is declared for every current
 * @param inverse whether its time depends on the current
 * @param backUp the protection that acts if the first one fails, one shot
 */
record FaultClearing(
        RecloseSequence sequence, OptionalDouble pickup, boolean inverse, Optional<RecloseSequence> backUp) {

    /** An inverse curve is looked at from this multiple of its pickup; closer to it no relay promises a time [1]. */
    static final double LEAST_MULTIPLE = 1.1;

    private static final Source BREAKER = Source.commonPractice("interrupting time of a medium-voltage breaker");
    private static final Source NO_MARGIN = Source.tool("no time is added that the file does not state");

    static FaultClearing of(Site site, Inputs in) throws MissingInput {
        Protection protection = site.protection();
        if (protection == null || (protection.relay() == null && protection.clearingTime() == null)) {
            throw new MissingInput("how fast an earth fault is cleared is not given", "protection.clearing-time");
        }
        Relay relay = protection.relay();
        ProtectionStage stage;
        OptionalDouble pickup = OptionalDouble.empty();
        if (relay != null) {
            stage = stage("the earth-fault protection", relay, "protection.relay", in);
            pickup = OptionalDouble.of(stage.characteristic().pickup());
        } else {
            stage = new ProtectionStage(
                    "declared clearing time",
                    new Characteristic.DefiniteTime(
                            Double.MIN_NORMAL,
                            in.need(protection.clearingTime(), "protection.clearing-time", Bound.HIGH)),
                    0,
                    0);
        }
        Optional<RecloseSequence> backUp = protection.backUp() == null
                ? Optional.empty()
                : Optional.of(RecloseSequence.none(earthing.fault.clearing.Protection.of(
                        stage("the back-up protection", protection.backUp(), "protection.back-up", in))));
        return new FaultClearing(
                sequence(stage, protection.reclose(), in),
                pickup,
                stage.characteristic() instanceof Characteristic.InverseTime,
                backUp);
    }

    private static RecloseSequence sequence(ProtectionStage stage, @Nullable Reclose reclose, Inputs in)
            throws MissingInput {
        earthing.fault.clearing.Protection slow = earthing.fault.clearing.Protection.of(stage);
        if (reclose == null) {
            return RecloseSequence.none(slow);
        }
        int fast = reclose.fastShots() == null ? 0 : reclose.fastShots();
        List<earthing.fault.clearing.Protection> shots = new ArrayList<>();
        List<Double> deadTimes = new ArrayList<>();
        for (int i = 0; i <= reclose.deadTimes().size(); i++) {
            shots.add(
                    i < fast
                            ? earthing.fault.clearing.Protection.of(new ProtectionStage(
                                    "the fast shot",
                                    new Characteristic.DefiniteTime(
                                            stage.characteristic().pickup(),
                                            in.need(reclose.fastTime(), "protection.reclose.fast-time", Bound.HIGH)),
                                    0,
                                    0))
                            : slow);
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
                pickup, in.need(relay.timeMultiplier(), key + ".time-multiplier", Bound.HIGH), curve);
    }

    /** Currents at which the time changes its course, a little above, within a range [A]. */
    List<Double> between(double low, double high) {
        List<Double> currents = new ArrayList<>();
        for (double point : sequence.breakpoints()) {
            boolean atPickup = pickup.isPresent() && point <= pickup.getAsDouble();
            double current = point * (atPickup && inverse ? LEAST_MULTIPLE : 1 + 1e-9);
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
