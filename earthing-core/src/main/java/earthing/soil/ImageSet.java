package earthing.soil;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleSupplier;

/**
 * Point-source potential between two layers as a sum of images: V/I = Σ c / √(r² + (b + s·z + t·d)²), where z is the
 * depth of the point in the upper of the two layers and d of the one in the lower. Source and point of observation may
 * be exchanged (reciprocity holds term by term). Within one layer the first term is the source itself, b = 0, s = 1,
 * t = −1.
 */
public final class ImageSet {

    private final double[] coefficient;
    private final double[] offset;
    private final double[] upperSign;
    private final double[] lowerSign;
    private final List<DoubleSupplier> bounds;

    private ImageSet(Builder builder) {
        coefficient = Arrays.copyOf(builder.coefficient, builder.size);
        offset = Arrays.copyOf(builder.offset, builder.size);
        upperSign = Arrays.copyOf(builder.upperSign, builder.size);
        lowerSign = Arrays.copyOf(builder.lowerSign, builder.size);
        bounds = List.copyOf(builder.bounds);
    }

    /**
     * Number of terms.
     *
     * @return number of images, the source itself among them
     */
    public int size() {
        return coefficient.length;
    }

    /**
     * Weight of a term.
     *
     * @param term index
     * @return c [Ω·m]
     */
    public double coefficient(int term) {
        return coefficient[term];
    }

    /**
     * Fixed part of the vertical distance of a term.
     *
     * @param term index
     * @return b [m]
     */
    public double offset(int term) {
        return offset[term];
    }

    /**
     * Sign of the upper depth in a term.
     *
     * @param term index
     * @return s, −1 or 1
     */
    public double upperSign(int term) {
        return upperSign[term];
    }

    /**
     * Sign of the lower depth in a term.
     *
     * @param term index
     * @return t, −1 or 1
     */
    public double lowerSign(int term) {
        return lowerSign[term];
    }

    /**
     * Bound on the error of the sum, the same for every pair of points in the two layers. Found when asked for: where
     * functions were fitted it costs more than the images.
     *
     * @return greatest error of the potential [V/A]
     */
    public double bound() {
        return bounds.stream().mapToDouble(DoubleSupplier::getAsDouble).sum();
    }

    /**
     * Potential per ampere.
     *
     * @param r horizontal distance [m], ≥ 0
     * @param upper depth of the point in the upper layer [m]
     * @param lower depth of the point in the lower layer [m]
     * @return potential [V/A]; infinite where both points are the same
     */
    public double potential(double r, double upper, double lower) {
        double sum = 0;
        for (int i = 0; i < coefficient.length; i++) {
            double vertical = offset[i] + upperSign[i] * upper + lowerSign[i] * lower;
            sum += coefficient[i] / Math.sqrt(r * r + vertical * vertical);
        }
        return sum;
    }

    /** Gathers terms. */
    static final class Builder {
        private double[] coefficient = new double[32];
        private double[] offset = new double[32];
        private double[] upperSign = new double[32];
        private double[] lowerSign = new double[32];
        private int size;
        private final List<DoubleSupplier> bounds = new ArrayList<>();

        Builder add(double c, double b, int upper, int lower) {
            if (c == 0) {
                return this;
            }
            if (size == coefficient.length) {
                coefficient = Arrays.copyOf(coefficient, 2 * size);
                offset = Arrays.copyOf(offset, 2 * size);
                upperSign = Arrays.copyOf(upperSign, 2 * size);
                lowerSign = Arrays.copyOf(lowerSign, 2 * size);
            }
            coefficient[size] = c;
            offset[size] = b;
            upperSign[size] = upper;
            lowerSign[size] = lower;
            size++;
            return this;
        }

        Builder bound(DoubleSupplier added) {
            bounds.add(added);
            return this;
        }

        ImageSet build() {
            return new ImageSet(this);
        }
    }
}
