package earthing.conductor;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Temperature of a conductor over a reclose sequence with loss of heat between and during the shots. This is
 * information; the criterion is the adiabatic sum of {@link SequenceHeating}.
 *
 * <p>With one heat transfer coefficient h and resistance linear in temperature the heat balance per metre, q S dθ/dt =
 * I² ρ(θ)/S − h P (θ − θa), is linear and each phase has a closed solution: no step size enters.
 *
 * @param points times and temperatures, from the first instant on
 * @param peak highest temperature [°C]
 * @param heatTransfer the declared loss of heat
 */
public record TemperatureHistory(List<Point> points, double peak, HeatTransfer heatTransfer) {

    /**
     * One instant.
     *
     * @param time time from the start of the first shot [s]
     * @param temperature temperature [°C]
     */
    public record Point(double time, double temperature) {}

    /**
     * Keeps a copy of the list.
     *
     * @param points times and temperatures, from the first instant on
     * @param peak highest temperature [°C]
     * @param heatTransfer the declared loss of heat
     */
    public TemperatureHistory {
        points = List.copyOf(points);
        Objects.requireNonNull(heatTransfer);
    }

    /**
     * Follows a sequence.
     *
     * @param metal constants of the metal
     * @param shape cross-section
     * @param initial initial temperature [°C]
     * @param ambient temperature of the air [°C]
     * @param heatTransfer declared loss of heat
     * @param shots all shots; the dead time after the last one is followed too
     * @param pointsPerPhase points shown in each shot and each dead time, ≥ 1
     * @return the history
     */
    public static TemperatureHistory of(
            ThermalConstants metal,
            Shape shape,
            double initial,
            double ambient,
            HeatTransfer heatTransfer,
            List<Shot> shots,
            int pointsPerPhase) {
        if (!(initial > -metal.beta() && ambient > -metal.beta())) {
            throw new IllegalArgumentException(
                    "temperatures must be above " + -metal.beta() + " °C; have " + initial + " and " + ambient);
        }
        if (!(pointsPerPhase >= 1)) {
            throw new IllegalArgumentException("points per phase must be >= 1; have " + pointsPerPhase);
        }
        double capacity = metal.heatCapacity() * shape.area();
        double loss = heatTransfer.coefficient() * shape.perimeter() / capacity;
        List<Point> points = new ArrayList<>();
        points.add(new Point(0, initial));
        double time = 0;
        double temperature = initial;
        double peak = initial;
        for (Shot shot : shots) {
            double effective = shot.decrement() * shot.current() / (metal.constant() * shape.area());
            double heating = effective * effective;
            double[][] phases = {{heating, shot.duration()}, {0, shot.deadTime()}};
            for (double[] phase : phases) {
                if (phase[1] == 0) {
                    continue;
                }
                double start = temperature;
                for (int i = 1; i <= pointsPerPhase; i++) {
                    double elapsed = phase[1] * i / pointsPerPhase;
                    temperature = after(start, phase[0], loss, metal.beta(), ambient, elapsed);
                    points.add(new Point(time + elapsed, temperature));
                    peak = Math.max(peak, temperature);
                }
                time += phase[1];
            }
        }
        return new TemperatureHistory(points, peak, heatTransfer);
    }

    /** Solution of θ' = g (β + θ) − l (θ − θa) after a time. */
    private static double after(
            double start, double heating, double loss, double beta, double ambient, double elapsed) {
        double rate = heating - loss;
        double slope = heating * (beta + start) - loss * (start - ambient);
        double exponent = rate * elapsed;
        // (e^x − 1)/x without loss of digits near balance of heating and loss.
        double growth = Math.abs(exponent) < 1e-8 ? 1 + exponent / 2 : Math.expm1(exponent) / exponent;
        return start + slope * elapsed * growth;
    }
}
