package earthing.electrode.wire;

import java.util.Arrays;

/** Room for the terms of a sum over images, kept from pair to pair. One instance serves one thread. */
final class ImageTerms {

    private static final int USUAL = 256;

    private double[] terms = {};

    /** An array of at least so many entries; what it holds is left from before. */
    double[] of(int count) {
        if (count > terms.length) {
            terms = Arrays.copyOf(terms, Math.max(count, USUAL));
        }
        return terms;
    }
}
