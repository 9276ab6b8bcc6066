package earthing.conductor;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/** The current that melts a conductor in a given time. It is the end of the conductor and no design limit. */
public final class FusingCurrent {

    /** Onderdonk's rule for copper. */
    public static final Source ONDERDONK = Source.publication(
            "Onderdonk equation for copper, as the trade's handbooks print it",
            "33 (I/A)² t = log10((Tm − Ta)/(234 + Ta) + 1), A in circular mils",
            Status.FROM_MEMORY);

    private FusingCurrent() {}

    /**
     * By IEEE Std 80 eq. 37, up to the fusing temperature of the table.
     *
     * @param metal constants with a fusing temperature
     * @param area area [m²], &gt; 0
     * @param duration duration [s], &gt; 0
     * @param decrement decrement factor of the loop, ≥ 1
     * @param ambient initial temperature [°C]
     * @return symmetrical r.m.s. current [A]
     * @throws IllegalArgumentException if the table prints no fusing temperature
     */
    public static double ieee(ThermalConstants metal, double area, double duration, double decrement, double ambient) {
        if (!(decrement >= 1)) {
            throw new IllegalArgumentException("decrement factor must be >= 1; have " + decrement);
        }
        double fusing = metal.fusing()
                .orElseThrow(
                        () -> new IllegalArgumentException(metal.source().text() + " prints no fusing temperature"));
        return AdiabaticHeating.permissibleCurrent(metal, area, duration, ambient, fusing) / decrement;
    }

    /**
     * By Onderdonk's rule, copper only; valid for short times without loss of heat, about 10 s at most.
     *
     * @param area area [m²], &gt; 0
     * @param duration duration [s], &gt; 0 and ≤ 10
     * @param ambient initial temperature [°C]
     * @return r.m.s. current [A]
     */
    public static double onderdonk(double area, double duration, double ambient) {
        if (!(area > 0)) {
            throw new IllegalArgumentException("conductor area must be > 0 m²; have " + area);
        }
        if (!(duration > 0 && duration <= 10)) {
            throw new IllegalArgumentException("Onderdonk's rule holds for 0 to 10 s; have " + duration);
        }
        if (!(ambient > -234 && ambient < 1083)) {
            throw new IllegalArgumentException("ambient must be between -234 and 1083 °C; have " + ambient);
        }
        double circularMils = area / AdiabaticHeating.KCMIL * 1e3;
        return circularMils * Math.sqrt(Math.log10((1083 - ambient) / (234 + ambient) + 1) / (33 * duration));
    }
}
