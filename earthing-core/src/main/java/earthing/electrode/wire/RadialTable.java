package earthing.electrode.wire;

import org.jspecify.annotations.Nullable;

/**
 * Functions of the horizontal distance r from a source at a depth, as polynomials in q = r² + depth² on octaves of q, each
 * found when first asked for.
 *
 * <p>Every image acts through 1/√(q + s), s ≥ 0, which is smooth about the middle of an octave of q up to three
 * times its half length.
 * Degree 8 at the zeros of a Chebyshev polynomial then leaves (3 + √8)^−9 = 1.3e-7 of it. Each piece is checked
 * against the function itself at the end of its interval, where the error is greatest; a piece that misses by more than
 * {@link #TOLERANCE} of the greatest of the functions is not used.
 */
final class RadialTable {

    /** Greatest relative error of a piece that is used. */
    static final double TOLERANCE = 5e-7;

    private static final int TERMS = 9;
    private static final int CELLS = 48;
    /** Exponent field of 1.0, below which no piece lies. */
    private static final int FIRST = 1023;

    private static final double[] NODE = new double[TERMS];
    private static final double[][] POWERS = new double[TERMS][TERMS];
    private static final Piece REFUSED = new Piece(new double[0]);

    /** Coefficients of all functions on one octave, none where it is not used. Whoever sees a piece sees it whole: its field is final. */
    private static final class Piece {
        private final double[] coefficients;

        Piece(double[] coefficients) {
            this.coefficients = coefficients;
        }
    }

    static {
        // Chebyshev series through the nodes, rewritten in powers.
        double[][] chebyshev = new double[TERMS][TERMS];
        chebyshev[0][0] = 1;
        chebyshev[1][1] = 1;
        for (int k = 2; k < TERMS; k++) {
            for (int p = 0; p < TERMS; p++) {
                chebyshev[k][p] = (p > 0 ? 2 * chebyshev[k - 1][p - 1] : 0) - chebyshev[k - 2][p];
            }
        }
        for (int i = 0; i < TERMS; i++) {
            double angle = Math.PI * (2 * i + 1) / (2 * TERMS);
            NODE[i] = Math.cos(angle);
            for (int k = 0; k < TERMS; k++) {
                double share = (k == 0 ? 1.0 : 2.0) / TERMS * Math.cos(k * angle);
                for (int p = 0; p < TERMS; p++) {
                    POWERS[p][i] += share * chebyshev[k][p];
                }
            }
        }
    }

    /** The functions to be tabulated. */
    interface Functions {
        /** Puts all values at one squared horizontal distance [m²] into the array; the room serves one piece after the other. */
        void at(double r2, double[] values, ImageTerms room);
    }

    private final double depth2;
    private final double scale;
    private final double perScale;
    private final int count;
    private final Functions functions;
    /** Not guarded: two threads that find a piece find the same. */
    private final @Nullable Piece[] pieces = new Piece[CELLS];

    /**
     * An empty table.
     *
     * @param depth2 squared depth of the nearest singularity [m²]
     * @param scale least q that is tabulated [m²], ≥ depth2
     * @param count number of functions
     * @param functions the functions
     */
    RadialTable(double depth2, double scale, int count, Functions functions) {
        this.depth2 = depth2;
        this.scale = scale;
        perScale = 1 / scale;
        this.count = count;
        this.functions = functions;
    }

    /** Value of the first function; NaN where there is no piece. */
    double value(double r2) {
        long bits = Double.doubleToRawLongBits((r2 + depth2) * perScale);
        double[] c = piece(bits).coefficients;
        return c.length == 0 ? Double.NaN : polynomial(c, 0, place(bits));
    }

    /** Sum with weights of as many functions from one on; NaN where there is no piece. */
    double sum(double r2, int from, double[] weights) {
        long bits = Double.doubleToRawLongBits((r2 + depth2) * perScale);
        double[] c = piece(bits).coefficients;
        if (c.length == 0) {
            return Double.NaN;
        }
        double t = place(bits);
        double sum = 0;
        for (int f = 0; f < weights.length; f++) {
            sum += weights[f] * polynomial(c, (from + f) * TERMS, t);
        }
        return sum;
    }

    /** Place −1 … 1 in the octave, from the mantissa. */
    private static double place(long bits) {
        return 2 * Double.longBitsToDouble((bits & 0x000F_FFFF_FFFF_FFFFL) | 0x3FF0_0000_0000_0000L) - 3;
    }

    private static double polynomial(double[] c, int from, double t) {
        double t2 = t * t;
        double odd = c[from + 1] + t2 * (c[from + 3] + t2 * (c[from + 5] + t2 * c[from + 7]));
        double even = c[from] + t2 * (c[from + 2] + t2 * (c[from + 4] + t2 * (c[from + 6] + t2 * c[from + 8])));
        return even + t * odd;
    }

    private Piece piece(long bits) {
        int cell = (int) (bits >>> 52) - FIRST;
        if (cell < 0 || cell >= CELLS) {
            return REFUSED;
        }
        Piece known = pieces[cell];
        return known == null ? fill(cell) : known;
    }

    private Piece fill(int cell) {
        double low = Math.scalb(1.0, cell);
        double middle = 1.5 * low;
        double[] c = new double[count * TERMS];
        double[] values = new double[count];
        ImageTerms room = new ImageTerms();
        for (int i = 0; i < TERMS; i++) {
            functions.at(squaredDistance(middle + NODE[i] * (middle - low)), values, room);
            for (int f = 0; f < count; f++) {
                for (int p = 0; p < TERMS; p++) {
                    c[f * TERMS + p] += POWERS[p][i] * values[f];
                }
            }
        }
        functions.at(squaredDistance(middle + (middle - low)), values, room);
        double greatest = 0;
        double error = 0;
        for (int f = 0; f < count; f++) {
            greatest = Math.max(greatest, Math.abs(values[f]));
            error = Math.max(error, Math.abs(polynomial(c, f * TERMS, 1) - values[f]));
        }
        Piece piece = error <= TOLERANCE * greatest ? new Piece(c) : REFUSED;
        pieces[cell] = piece;
        return piece;
    }

    private double squaredDistance(double place) {
        return Math.max(0, place * scale - depth2);
    }
}
