package earthing.network;

/**
 * The four pole circuits whose peaks were computed with ngspice 39 (decks of this project, element values to the last
 * printed digit). Shared earth with and without arrester and screen; separate earths with and without arrester.
 */
final class PoleDecks {

    static final double[] A0_CURRENT = {
        10, 100, 1000, 2000, 4000, 6000, 8000, 10000, 12000, 14000, 16000, 18000, 20000, 30000
    };
    static final double[] A0_VOLTAGE = {
        57750, 63558, 69300, 71808, 74250, 75108, 77154, 78408, 79596, 81246, 82500, 84546, 86658, 97218
    };
    static final double[] A1_CURRENT = {
        100, 1000, 2000, 4000, 6000, 8000, 10000, 12000, 14000, 16000, 18000, 20000, 30000
    };
    static final double[] A1_VOLTAGE = {
        50754, 56100, 59004, 61050, 61908, 63096, 63954, 64350, 65208, 65604, 66000, 66396, 68376
    };

    private PoleDecks() {}

    static Wave impulse820() {
        return t -> {
            double us = t * 1e6;
            return 1e4 * 0.01243 * us * us * us * Math.exp(-us / 3.911);
        };
    }

    static Wave impulseFast() {
        return t -> {
            double x = Math.pow(t / 0.454e-6, 10);
            return 1e4 / 0.993 * x / (1 + x) * Math.exp(-t / 143e-6);
        };
    }

    static Circuit.Builder shared(Wave wave) {
        return new Circuit.Builder()
                .currentSource("source", "0", "tank", wave)
                .inductor("DL1", "tank", "tee", 0.018, 8.059748203e-6)
                .inductor("DL2", "tee", "g", 0.009, 3.614520435e-6)
                .inductor("tee lead", "tee", "cub", 0, 0.224255e-6)
                .inductor("core", "tank", "corend", 0.12, 10.416562797e-6)
                .resistor("open", "corend", "cub", 1e6)
                .mutual("DL1", "DL2", 0.106037367348 * Math.sqrt(8.059748203e-6 * 3.614520435e-6))
                .mutual("DL1", "core", 0.409582831830 * Math.sqrt(8.059748203e-6 * 10.416562797e-6))
                .mutual("DL2", "core", 0.090164378179 * Math.sqrt(3.614520435e-6 * 10.416562797e-6));
    }

    static Circuit ng1(Wave wave) {
        return shared(wave).resistor("g", "g", "0", 33.492674).build();
    }

    static Circuit.Builder separate(Wave wave) {
        double dl1 = 8.059748203e-6;
        double dl2 = 3.614520435e-6;
        double core = 10.416562797e-6;
        return new Circuit.Builder()
                .currentSource("source", "0", "tank", wave)
                .inductor("DL1", "tank", "mid", 0.018, dl1)
                .inductor("DL2", "mid", "g", 0.009, dl2)
                .inductor("SEP", "cub", "gs", 0.009, dl2)
                .inductor("core", "tank", "corend", 0.12, core)
                .resistor("open", "corend", "cub", 1e6)
                .mutual("DL1", "DL2", 0.106037367348 * Math.sqrt(dl1 * dl2))
                .mutual("DL1", "SEP", 0.100740150546 * Math.sqrt(dl1 * dl2))
                .mutual("DL1", "core", 0.409582831830 * Math.sqrt(dl1 * core))
                .mutual("DL2", "SEP", 0.347471056086 * dl2)
                .mutual("DL2", "core", 0.090164378179 * Math.sqrt(dl2 * core))
                .mutual("SEP", "core", 0.085606719764 * Math.sqrt(dl2 * core));
    }

    /** Two electrodes with a mutual resistance instead of the star of the deck. */
    static Circuit ng2(Wave wave) {
        double rm = 2.905099;
        return separate(wave)
                .resistor("g1", "g", "0", 30.587576 + rm)
                .resistor("g2", "gs", "0", 30.587576 + rm)
                .mutual("g1", "g2", rm)
                .build();
    }

    private static Circuit.Builder withArrester(Circuit.Builder builder) {
        return builder.remove("source")
                .currentSource("source", "0", "line", impulse820())
                .inductor("lead1", "line", "an", 0, 0.5e-6)
                .resistor("AR", "an", "tanka", 1e6)
                .inductor("A0 inductance", "an", "a0", 0, 0.212121e-6)
                .nonlinear("A0", "a0", "tanka", new NonlinearResistance.PiecewiseLinear(A0_CURRENT, A0_VOLTAGE))
                .inductor("A1 inductance", "a0", "a1", 0, 0.636364e-6)
                .nonlinear("A1", "a1", "tanka", new NonlinearResistance.PiecewiseLinear(A1_CURRENT, A1_VOLTAGE))
                .capacitor("a0 capacitance", "a0", "tanka", 1e-12)
                .capacitor("a1 capacitance", "a1", "tanka", 1e-12)
                .inductor("lead2", "tanka", "tank", 0, 0.5e-6);
    }

    static Circuit ng3() {
        double scr = 7.737501727e-6;
        return withArrester(shared(impulse820()))
                .inductor("screen", "tank", "cub", 0.011580, scr)
                .mutual("DL1", "screen", 0.475229709326 * Math.sqrt(8.059748203e-6 * scr))
                .mutual("DL2", "screen", 0.104615691635 * Math.sqrt(3.614520435e-6 * scr))
                .mutual("core", "screen", 0.861862850305 * Math.sqrt(10.416562797e-6 * scr))
                .inductor("g inductance", "g", "g1", 0, 3.372044e-6)
                .resistor("g", "g1", "0", 33.492674)
                .capacitor("g capacitance", "g1", "0", 264.3619e-12)
                .build();
    }

    static Circuit ng4() {
        return withArrester(separate(impulse820()))
                .inductor("g inductance", "g", "g1", 0, 3.372044e-6)
                .capacitor("g capacitance", "g1", "0", 264.3619e-12)
                .resistor("g1", "g1", "gx", 30.587576)
                .inductor("gs inductance", "gs", "gs1", 0, 3.372044e-6)
                .capacitor("gs capacitance", "gs1", "0", 264.3619e-12)
                .resistor("g2", "gs1", "gx", 30.587576)
                .resistor("gm", "gx", "0", 2.905099)
                .build();
    }
}
