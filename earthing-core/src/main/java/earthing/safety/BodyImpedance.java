package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Total impedance of the body from hand to hand, alternating current 50 or 60 Hz, over touch voltage. Between printed
 * points it is straight; below 25 V the value at 25 V, above 1000 V the value at 1000 V holds, which is low, so on the
 * cautious side, in the first case and what the tables tend to in the second.
 */
@SuppressWarnings("ImmutableEnumChecker") // the arrays never leave
public enum BodyImpedance {
    /** Dry, large areas of contact, editions 2005 and 2018. */
    DRY_2005(
            "dry, large area",
            Source.standard("IEC/TS 60479-1:2005", "table 1", Status.FROM_MEMORY),
            new double[] {25, 50, 75, 100, 125, 150, 175, 200, 225, 400, 500, 700, 1000},
            new double[] {1750, 1375, 1125, 990, 900, 850, 825, 800, 775, 700, 625, 575, 575},
            new double[] {3250, 2500, 2000, 1725, 1550, 1400, 1325, 1275, 1225, 950, 850, 775, 775},
            new double[] {6100, 4600, 3600, 3125, 2675, 2350, 2175, 2050, 1900, 1275, 1150, 1050, 1050}),
    /** Water-wet, large areas of contact, editions 2005 and 2018. */
    WATER_WET_2005(
            "water-wet, large area",
            Source.standard("IEC/TS 60479-1:2005", "table 2", Status.FROM_MEMORY),
            new double[] {25, 50, 75, 100, 125, 150, 175, 200, 225, 400, 500, 700, 1000},
            new double[] {1175, 1100, 1025, 975, 900, 850, 825, 800, 775, 700, 625, 575, 575},
            new double[] {2175, 2000, 1825, 1675, 1550, 1400, 1325, 1275, 1225, 950, 850, 775, 775},
            new double[] {4100, 3675, 3275, 2950, 2675, 2350, 2175, 2050, 1900, 1275, 1150, 1050, 1050}),
    /** Saltwater-wet, large areas of contact, editions 2005 and 2018. */
    SALTWATER_WET_2005(
            "saltwater-wet, large area",
            Source.standard("IEC/TS 60479-1:2005", "table 3", Status.FROM_MEMORY),
            new double[] {25, 50, 75, 100, 125, 150, 175, 200, 225, 400, 500, 700, 1000},
            new double[] {960, 940, 920, 880, 850, 830, 810, 790, 770, 700, 625, 575, 575},
            new double[] {1300, 1275, 1250, 1225, 1200, 1180, 1155, 1135, 1115, 950, 850, 775, 775},
            new double[] {1755, 1720, 1685, 1655, 1620, 1590, 1560, 1530, 1505, 1275, 1150, 1050, 1050}),
    /** Dry, large areas of contact, editions 1984 and 1994; 5 to 35 % off the later ones. */
    DRY_1984(
            "dry, large area",
            Source.standard("IEC 479-1:1984", "table 1", Status.READ),
            new double[] {25, 50, 75, 100, 125, 220, 700, 1000},
            new double[] {1750, 1450, 1250, 1200, 1125, 1000, 750, 700},
            new double[] {3250, 2625, 2200, 1875, 1625, 1350, 1100, 1050},
            new double[] {6100, 4375, 3500, 3200, 2875, 2125, 1550, 1500});

    /** How many of a hundred persons have a lower impedance. */
    public enum Percentile {
        /** Five of a hundred. */
        P5,
        /** Half. */
        P50,
        /** Ninety-five of a hundred. */
        P95
    }

    private final String label;
    private final Source source;
    private final double[] voltages;
    private final double[] p5;
    private final double[] p50;
    private final double[] p95;

    BodyImpedance(String label, Source source, double[] voltages, double[] p5, double[] p50, double[] p95) {
        this.label = label;
        this.source = source;
        this.voltages = voltages;
        this.p5 = p5;
        this.p50 = p50;
        this.p95 = p95;
    }

    /**
     * Words for the report.
     *
     * @return condition of the skin and area of contact
     */
    public String label() {
        return label;
    }

    /**
     * Where the table stands.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    /**
     * Impedance hand to hand.
     *
     * @param voltage touch voltage across the body [V], ≥ 0
     * @param percentile share of persons with a lower impedance
     * @return impedance [Ω]
     */
    public double handToHand(double voltage, Percentile percentile) {
        if (!(voltage >= 0)) {
            throw new IllegalArgumentException("touch voltage must be >= 0 V; have " + voltage);
        }
        double[] column = switch (percentile) {
            case P5 -> p5;
            case P50 -> p50;
            case P95 -> p95;
        };
        int last = voltages.length - 1;
        if (voltage <= voltages[0]) {
            return column[0];
        }
        if (voltage >= voltages[last]) {
            return column[last];
        }
        int i = 1;
        while (voltages[i] < voltage) {
            i++;
        }
        double part = (voltage - voltages[i - 1]) / (voltages[i] - voltages[i - 1]);
        return column[i - 1] + part * (column[i] - column[i - 1]);
    }

    /**
     * Impedance on a path.
     *
     * @param path the path
     * @param voltage touch voltage across the body [V], ≥ 0
     * @param percentile share of persons with a lower impedance
     * @return impedance [Ω]
     */
    public double on(BodyPath path, double voltage, Percentile percentile) {
        return path.impedanceShare() * handToHand(voltage, percentile);
    }

    /**
     * The voltage across the body that drives a current along a path: U = I Z(U).
     *
     * @param path the path
     * @param current current on this path [A], &gt; 0
     * @param percentile share of persons with a lower impedance
     * @return voltage [V]
     */
    public double voltage(BodyPath path, double current, Percentile percentile) {
        if (!(current > 0 && current < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("body current must be > 0 A; have " + current);
        }
        // Z never rises with U, so U − I Z(U) rises and has one root.
        UnivariateFunction excess = u -> u - current * on(path, u, percentile);
        double high = current * on(path, 0, percentile) * (1 + 1e-9);
        return new BrentSolver(1e-12, 1e-9).solve(1000, excess, 0, high);
    }
}
