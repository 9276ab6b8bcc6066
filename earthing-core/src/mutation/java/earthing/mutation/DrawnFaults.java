package earthing.mutation;

import java.util.Collection;
import org.pitest.bytecode.analysis.ClassTree;
import org.pitest.mutationtest.build.InterceptorParameters;
import org.pitest.mutationtest.build.InterceptorType;
import org.pitest.mutationtest.build.MutationInterceptor;
import org.pitest.mutationtest.build.MutationInterceptorFactory;
import org.pitest.mutationtest.engine.Mutater;
import org.pitest.mutationtest.engine.MutationDetails;
import org.pitest.plugin.Feature;
import org.pitest.plugin.FeatureParameter;

/**
 * Draws a part of the faults at random: {@code +DRAWN(percent[10] seed[1])}. Each fault is drawn by itself, whatever its
 * class, so that the part of the drawn faults that is seen estimates the part of all.
 */
public final class DrawnFaults implements MutationInterceptorFactory {

    private static final FeatureParameter PERCENT =
            FeatureParameter.named("percent").withDescription("part of the faults that is planted, 1 to 100");
    private static final FeatureParameter SEED =
            FeatureParameter.named("seed").withDescription("whole number; the same seed draws the same faults");

    @Override
    public MutationInterceptor createInterceptor(InterceptorParameters parameters) {
        int percent = parameters.getInteger(PERCENT).orElse(100);
        if (percent < 1 || percent > 100) {
            throw new IllegalArgumentException("percent must be from 1 to 100; have " + percent);
        }
        return new Draw(percent, parameters.getInteger(SEED).orElse(1));
    }

    @Override
    public Feature provides() {
        return Feature.named("DRAWN")
                .withOnByDefault(false)
                .withDescription(description())
                .withParameter(PERCENT)
                .withParameter(SEED);
    }

    @Override
    public String description() {
        return "Plants a part of the faults, drawn at random";
    }

    private record Draw(int percent, int seed) implements MutationInterceptor {

        @Override
        public InterceptorType type() {
            return InterceptorType.FILTER;
        }

        @Override
        public void begin(ClassTree type) {
            // Nothing is kept from class to class.
        }

        @Override
        public Collection<MutationDetails> intercept(Collection<MutationDetails> faults, Mutater mutater) {
            return faults.stream().filter(this::drawn).toList();
        }

        @Override
        public void end() {
            // See begin.
        }

        /** By names, so that the draw does not depend on the order in which classes are looked at. */
        private boolean drawn(MutationDetails fault) {
            return number(fault.getId().toString()) < 100L * percent;
        }

        /** A number from 0 to 9999 that looks as if drawn, after the mixing function of SplittableRandom. */
        private long number(String name) {
            long mixed = name.hashCode() + 0x9E3779B97F4A7C15L * (seed + 1L);
            mixed = (mixed ^ mixed >>> 30) * 0xBF58476D1CE4E5B9L;
            mixed = (mixed ^ mixed >>> 27) * 0x94D049BB133111EBL;
            return Long.remainderUnsigned(mixed ^ mixed >>> 31, 10_000);
        }
    }
}
