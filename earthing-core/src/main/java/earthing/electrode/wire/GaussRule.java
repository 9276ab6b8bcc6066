package earthing.electrode.wire;

/** Gauss–Legendre points on −1 … 1 with weights that sum up to 1, for 2, 3, 4 and 8 points. */
final class GaussRule {

    private static final double[][] NODES = {
        {},
        {},
        {-0.5773502691896258, 0.5773502691896258},
        {-0.7745966692414834, 0, 0.7745966692414834},
        {-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526},
        {},
        {},
        {},
        {
            -0.9602898564975363,
            -0.7966664774136267,
            -0.5255324099163290,
            -0.1834346424956498,
            0.1834346424956498,
            0.5255324099163290,
            0.7966664774136267,
            0.9602898564975363
        }
    };
    private static final double[][] WEIGHTS = {
        {},
        {},
        {0.5, 0.5},
        {5.0 / 18, 8.0 / 18, 5.0 / 18},
        {0.1739274225687269, 0.3260725774312731, 0.3260725774312731, 0.1739274225687269},
        {},
        {},
        {},
        {
            0.0506142681451881,
            0.1111905172266872,
            0.1568533229389437,
            0.1813418916891810,
            0.1813418916891810,
            0.1568533229389437,
            0.1111905172266872,
            0.0506142681451881
        }
    };

    private GaussRule() {}

    static double[] nodes(int points) {
        return NODES[points];
    }

    static double[] weights(int points) {
        return WEIGHTS[points];
    }

    /**
     * Number of points that leave about 3e-7 of the mean of 1/R over an element.
     *
     * @param distance2 squared distance from its middle [m²]
     * @param length2 squared length [m²]
     * @return 2, 3, 4 or 8; 0 where the element is too near for any of them
     */
    static int points(double distance2, double length2) {
        if (distance2 > 140 * length2) {
            return 2;
        }
        if (distance2 > 10 * length2) {
            return 3;
        }
        if (distance2 > 3 * length2) {
            return 4;
        }
        return distance2 > 0.6 * length2 ? 8 : 0;
    }
}
