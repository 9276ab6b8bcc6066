package earthing.soil;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * Least squares over the logarithms of one layer count, from several starts, within the bounds of what the survey could
 * see; readings that contradict all others are found by leaving each out in turn.
 */
final class LayerSearch {

    private static final int DEPTHS = 5;
    /** Depths of the first boundaries where every step is dear. */
    private static final int FEWER_DEPTHS = 3;

    private static final int MOST_STEPS = 60;
    /** Relative decrease of a step below which a start is given up, and the best one is finished. */
    private static final double ROUGH = 1e-3;

    /** Boundaries are moved by this part to get over a kink. */
    private static final double SHAKEN = 0.1;

    private static final double SETTLED = 1e-9;
    /** The same, and the most steps, where every step is dear. */
    private static final double NEARLY_SETTLED = 1e-4;

    private static final int FEWER_STEPS = 25;
    /** A fit to one in a million is no longer improved by a step. */
    private static final double EXACT = 1e-6;
    /** Suspects of a round: a reading of great leverage may hide behind a small residual. */
    private static final int SUSPECTS = 3;

    private final List<Reading> readings;
    private final double[] measured;
    private final int layers;
    private final LogModel model;
    private final int depths;
    /** Whether readings have kinks over a thickness: those of a rod whose tip meets a boundary. */
    private final boolean kinked;

    private final double[] least;
    private final double[] most;
    private double[] best = {};
    private double bestSum;

    /** A point of the search: logarithms of the parameters, readings that took part, sum of squares. */
    static final class Found {
        private final double[] logs;
        private final boolean[] kept;
        private final double sum;

        private Found(double[] logs, boolean[] kept, double sum) {
            this.logs = logs;
            this.kept = kept;
            this.sum = sum;
        }

        double[] logs() {
            return logs;
        }

        boolean[] kept() {
            return kept;
        }

        double sum() {
            return sum;
        }
    }

    LayerSearch(SoundingFilter filter, Sounding sounding, int layers) {
        this(
                new FilteredLogModel(filter, sounding.readings().size(), layers),
                DEPTHS,
                false,
                filter.thinnest(),
                sounding,
                layers);
    }

    LayerSearch(SoundingForward forward, Sounding sounding, int layers) {
        this(
                new SteppedLogModel(
                        forward::apparentResistivities, sounding.readings().size(), layers),
                FEWER_DEPTHS,
                true,
                forward.thinnest(),
                sounding,
                layers);
    }

    private LayerSearch(LogModel model, int depths, boolean kinked, double thinnest, Sounding sounding, int layers) {
        this.model = model;
        this.depths = depths;
        this.kinked = kinked;
        this.readings = sounding.readings();
        this.layers = layers;
        measured = readings.stream()
                .mapToDouble(reading -> Math.log(reading.apparentResistivity()))
                .toArray();
        least = new double[model.parameters()];
        most = new double[model.parameters()];
        double low = Arrays.stream(measured).min().orElseThrow();
        double high = Arrays.stream(measured).max().orElseThrow();
        for (int p = 0; p < least.length; p++) {
            boolean resistivity = p < layers;
            least[p] = resistivity ? low - Math.log(SoundingInversion.BEYOND) : Math.log(thinnest);
            most[p] = resistivity ? high + Math.log(SoundingInversion.BEYOND) : Math.log(2 * sounding.longest());
        }
    }

    LogModel model() {
        return model;
    }

    /** Parameters that lie at an end of the search and cannot move. */
    boolean[] held(double[] logs) {
        boolean[] held = new boolean[logs.length];
        for (int p = 0; p < held.length && layers > 1; p++) {
            held[p] = atBound(logs, p);
        }
        return held;
    }

    private boolean atBound(double[] logs, int parameter) {
        return logs[parameter] <= least[parameter] + 1e-3 || logs[parameter] >= most[parameter] - 1e-3;
    }

    double least(int parameter) {
        return least[parameter];
    }

    double most(int parameter) {
        return most[parameter];
    }

    /** The best fit with all readings that do not contradict the others. */
    Found search(double shortest, double longest) {
        boolean[] kept = new boolean[measured.length];
        Arrays.fill(kept, true);
        Found all = fromAllStarts(kept, shortest, longest);
        int allowance = measured.length / SoundingInversion.READINGS_PER_BAD_ONE;
        while (allowance-- > 0) {
            int bad = contradicting(all);
            if (bad < 0) {
                break;
            }
            boolean[] fewer = all.kept().clone();
            fewer[bad] = false;
            // The bad reading may have drawn the fit into a false minimum: search again.
            all = fromAllStarts(fewer, shortest, longest);
        }
        return all;
    }

    private Found fromAllStarts(boolean[] kept, double shortest, double longest) {
        best = start(new double[0], shortest);
        bestSum = Double.POSITIVE_INFINITY;
        double[] depth = new double[depths];
        for (int i = 0; i < depths; i++) {
            depth[i] = 0.5 * shortest * Math.pow(1.6 * longest / shortest, (double) i / (depths - 1));
        }
        for (int chosen = 0; chosen < 1 << depths; chosen++) {
            if (Integer.bitCount(chosen) == layers - 1) {
                double[] boundary = new double[layers - 1];
                int next = 0;
                for (int i = 0; i < depths; i++) {
                    if ((chosen >> i & 1) == 1) {
                        boundary[next++] = depth[i];
                    }
                }
                refine(start(boundary, shortest), kept, ROUGH);
            }
        }
        double settled = kinked ? NEARLY_SETTLED : SETTLED;
        refine(best.clone(), kept, settled);
        for (int side = kinked && layers > 1 ? -1 : 2; side <= 1; side += 2) {
            double[] shaken = best.clone();
            for (int p = layers; p < shaken.length; p++) {
                shaken[p] += side * SHAKEN;
            }
            refine(shaken, kept, settled);
        }
        return new Found(best.clone(), kept, bestSum);
    }

    /** The resistivity of a layer is first taken from the readings whose spacing is about its depth. */
    private double[] start(double[] boundary, double shortest) {
        double[] logs = new double[model.parameters()];
        for (int i = 0; i < layers && boundary.length == layers - 1; i++) {
            double top = i == 0 ? 0.3 * Math.min(shortest, boundary.length > 0 ? boundary[0] : 1) : boundary[i - 1];
            double bottom = i < boundary.length ? boundary[i] : 4 * top;
            logs[i] = smoothed(1.2 * Math.sqrt(top * bottom));
            if (i < layers - 1) {
                logs[layers + i] = Math.log(bottom - (i == 0 ? 0 : boundary[i - 1]));
            }
        }
        return logs;
    }

    private double smoothed(double spacing) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < measured.length; i++) {
            double distance = Math.log(readings.get(i).spacing() / spacing);
            double weight = 1e-6 + 1 / (0.05 + distance * distance * distance * distance);
            sum += weight * measured[i];
            weights += weight;
        }
        return sum / weights;
    }

    private double clamp(double log, int parameter) {
        return Math.max(least[parameter], Math.min(most[parameter], log));
    }

    /** Follows one start; keeps the best point that was seen. */
    private void refine(double[] start, boolean[] kept, double settled) {
        int count = kept(kept);
        int steps = kinked ? FEWER_STEPS : MOST_STEPS;
        MultivariateJacobianFunction function = new MultivariateJacobianFunction() {
            @Override
            public Pair<RealVector, RealMatrix> value(RealVector point) {
                double[] logs = point.toArray();
                for (int p = 0; p < logs.length; p++) {
                    logs[p] = clamp(logs[p], p);
                }
                model.evaluate(logs);
                double[] residual = new double[count];
                double[][] jacobian = new double[count][logs.length];
                double sum = 0;
                int row = 0;
                for (int i = 0; i < kept.length; i++) {
                    if (kept[i]) {
                        residual[row] = model.value(i) - measured[i];
                        sum += residual[row] * residual[row];
                        for (int p = 0; p < logs.length; p++) {
                            jacobian[row][p] = model.derivative(i, p);
                        }
                        row++;
                    }
                }
                if (sum < bestSum) {
                    bestSum = sum;
                    best = logs;
                }
                return new Pair<>(new ArrayRealVector(residual, false), new Array2DRowRealMatrix(jacobian, false));
            }
        };
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .model(function)
                .start(start)
                .target(new double[count])
                .maxEvaluations(4 * steps)
                .maxIterations(steps)
                .checker((step, before, now) ->
                        before.getCost() - now.getCost() <= settled * before.getCost() || now.getCost() <= EXACT)
                .build();
        try {
            new LevenbergMarquardtOptimizer().withInitialStepBoundFactor(10).optimize(problem);
        } catch (MathIllegalStateException noFurther) {
            // Steps used up or no decrease left in double precision: the best point seen has been kept.
            return;
        }
    }

    private static int kept(boolean[] kept) {
        int count = 0;
        for (boolean one : kept) {
            count += one ? 1 : 0;
        }
        return count;
    }

    /** The reading that the fit to the others refutes, by the deleted residual after Cook and Weisberg; -1 if none. */
    private int contradicting(Found found) {
        int count = kept(found.kept());
        int freedom = count - 1 - model.parameters();
        if (freedom < 2) {
            return -1;
        }
        double limit = new TDistribution(freedom)
                .inverseCumulativeProbability(1 - SoundingInversion.FALSE_ALARM / (2 * count));
        int worst = -1;
        double worstRatio = 1;
        for (int suspect : suspects(found)) {
            boolean[] fewer = found.kept().clone();
            fewer[suspect] = false;
            bestSum = Double.POSITIVE_INFINITY;
            refine(found.logs(), fewer, ROUGH);
            Spread spread = Spread.of(model, best, fewer, held(best));
            double sigma = Math.max(Math.sqrt(bestSum / freedom), SoundingInversion.READING_ERROR);
            double[] gradient = spread.gradient(suspect);
            double deleted = Math.abs(measured[suspect] - model.value(suspect));
            double ratio = deleted / (limit * sigma * Math.sqrt(1 + spread.variance(gradient)));
            if (ratio > worstRatio && deleted > SoundingInversion.GROSS * SoundingInversion.READING_ERROR) {
                worstRatio = ratio;
                worst = suspect;
            }
        }
        return worst;
    }

    private List<Integer> suspects(Found found) {
        Spread spread = Spread.of(model, found.logs(), found.kept(), held(found.logs()));
        double[] size = new double[measured.length];
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < measured.length; i++) {
            if (found.kept()[i]) {
                double leverage = Math.min(0.99, spread.variance(spread.gradient(i)));
                size[i] = Math.abs(measured[i] - model.value(i)) / (1 - leverage);
                order.add(i);
            }
        }
        if (kinked) {
            // Every suspect costs a search; one that the linear estimate puts far inside the limit cannot be bad.
            order.removeIf(i -> size[i] < SoundingInversion.GROSS * SoundingInversion.READING_ERROR / 2);
        }
        order.sort((a, b) -> Double.compare(size[b], size[a]));
        return order.subList(0, Math.min(SUSPECTS, order.size()));
    }
}
