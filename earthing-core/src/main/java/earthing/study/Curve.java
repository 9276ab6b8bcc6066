package earthing.study;

import java.util.List;

/**
 * Data of a figure: traces over a common axis.
 *
 * @param id stable id, for example {@code surge.cable-end.waveforms}
 * @param title what is shown
 * @param xLabel quantity along x
 * @param xUnit SI unit along x
 * @param yLabel quantity along y
 * @param yUnit SI unit along y
 * @param traces the traces
 */
public record Curve(
        String id, String title, String xLabel, String xUnit, String yLabel, String yUnit, List<Trace> traces) {

    /**
     * Copies the traces.
     *
     * @param id stable id, for example {@code surge.cable-end.waveforms}
     * @param title what is shown
     * @param xLabel quantity along x
     * @param xUnit SI unit along x
     * @param yLabel quantity along y
     * @param yUnit SI unit along y
     * @param traces the traces
     */
    public Curve {
        traces = List.copyOf(traces);
    }

    /** One line of a figure. */
    public static final class Trace {
        private final String name;
        private final double[] x;
        private final double[] y;

        /**
         * Copies the points.
         *
         * @param name name in the legend
         * @param x abscissae in SI
         * @param y ordinates in SI, as many
         */
        public Trace(String name, double[] x, double[] y) {
            if (x.length != y.length) {
                throw new IllegalArgumentException(
                        "a trace needs as many y as x; have " + y.length + " and " + x.length);
            }
            this.name = name;
            this.x = x.clone();
            this.y = y.clone();
        }

        /**
         * Name in the legend.
         *
         * @return the name
         */
        public String name() {
            return name;
        }

        /**
         * Number of points.
         *
         * @return the number
         */
        public int size() {
            return x.length;
        }

        /**
         * An abscissa.
         *
         * @param i index
         * @return x in SI
         */
        public double x(int i) {
            return x[i];
        }

        /**
         * An ordinate.
         *
         * @param i index
         * @return y in SI
         */
        public double y(int i) {
            return y[i];
        }
    }
}
