package earthing.electrode.wire;

import earthing.soil.ImageSet;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/** The images of a pair of layers, sorted by sign pattern and by distance, in plain arrays for the inner loops. */
final class LayerKernel {

    /** Families: upper and lower sign of all terms in one row of the arrays. */
    final int families;

    final int[] upperSign;
    final int[] lowerSign;
    final double[][] offset;
    final double[][] coefficient;

    private LayerKernel(int families) {
        this.families = families;
        upperSign = new int[families];
        lowerSign = new int[families];
        offset = new double[families][];
        coefficient = new double[families][];
    }

    static LayerKernel of(ImageSet images) {
        int[][] patterns = {{1, -1}, {1, 1}, {-1, -1}, {-1, 1}};
        int[][] members = new int[patterns.length][];
        int used = 0;
        for (int p = 0; p < patterns.length; p++) {
            int upper = patterns[p][0];
            int lower = patterns[p][1];
            members[p] = IntStream.range(0, images.size())
                    .filter(i -> images.upperSign(i) == upper && images.lowerSign(i) == lower)
                    .boxed()
                    .sorted(Comparator.comparingDouble(images::offset))
                    .mapToInt(Integer::intValue)
                    .toArray();
            used += members[p].length > 0 ? 1 : 0;
        }
        LayerKernel kernel = new LayerKernel(used);
        int f = 0;
        for (int p = 0; p < patterns.length; p++) {
            if (members[p].length == 0) {
                continue;
            }
            kernel.upperSign[f] = patterns[p][0];
            kernel.lowerSign[f] = patterns[p][1];
            kernel.offset[f] =
                    Arrays.stream(members[p]).mapToDouble(images::offset).toArray();
            kernel.coefficient[f] =
                    Arrays.stream(members[p]).mapToDouble(images::coefficient).toArray();
            f++;
        }
        return kernel;
    }
}
