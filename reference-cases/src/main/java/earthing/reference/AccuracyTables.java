package earthing.reference;

import earthing.conductor.AdiabaticHeating;
import earthing.conductor.FusingCurrent;
import earthing.conductor.HeatTransfer;
import earthing.conductor.Metal;
import earthing.conductor.Shot;
import earthing.conductor.SolidRound;
import earthing.conductor.TemperatureHistory;
import earthing.conductor.ThermalConstants;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import earthing.conductor.inductance.FilamentInductance;
import earthing.conductor.inductance.SelfInductance;
import earthing.conductor.inductance.SkinEffect;
import earthing.electrode.formula.FormulaResult;
import earthing.electrode.formula.GridSverak;
import earthing.electrode.formula.HorizontalWireDwight;
import earthing.electrode.formula.HorizontalWireSunde;
import earthing.electrode.formula.PipeIs3043;
import earthing.electrode.formula.RingDwight;
import earthing.electrode.formula.RodDwight;
import earthing.electrode.formula.RodTwoLayer;
import earthing.electrode.formula.RulesOfThumb;
import earthing.electrode.formula.TwoRodsDwight;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.EarthElectrodes;
import earthing.fault.line.EarthReturn;
import earthing.fault.line.LineConductor;
import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.quantity.Numbers;
import earthing.soil.SoilModel;
import earthing.soil.Wenner;
import earthing.surge.DoubleExponential;
import earthing.surge.Heidler;
import earthing.surge.Impulse;
import earthing.surge.ImpulseParameters;
import earthing.surge.PowerExponential;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.apache.commons.math3.complex.Complex;

/**
 * How far a formula lies from a better value over a range, beyond its validity too. A formula that the library refuses
 * outside its range is shown as refused there.
 */
public final class AccuracyTables {

    /**
     * One table.
     *
     * @param room the room it belongs to
     * @param title what is compared
     * @param meaning against what, and what to read from it
     * @param columns headings
     * @param rows cells
     * @param beyond differences that lie beyond what the table promises; empty unless something is wrong
     */
    public record Table(
            String room,
            String title,
            String meaning,
            List<String> columns,
            List<List<String>> rows,
            List<String> beyond) {
        /**
         * Keeps copies.
         *
         * @param room the room it belongs to
         * @param title what is compared
         * @param meaning against what, and what to read from it
         * @param columns headings
         * @param rows cells
         * @param beyond differences that lie beyond what the table promises; empty unless something is wrong
         */
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            beyond = List.copyOf(beyond);
        }
    }

    private static final String REFUSED = "refused";
    private static final String NAME = "electrode";
    private static final double RHO = 100;

    private final List<Table> tables = new ArrayList<>();
    private List<List<String>> rows = new ArrayList<>();
    private List<String> beyond = new ArrayList<>();

    private AccuracyTables() {}

    /**
     * Computes all tables.
     *
     * @return the tables, room by room
     */
    public static List<Table> all() {
        AccuracyTables all = new AccuracyTables();
        all.rods();
        all.twoRods();
        all.horizontalWires();
        all.rings();
        all.layeredRods();
        all.grids();
        all.soundings();
        all.straightWires();
        all.nearWires();
        all.skin();
        all.cooling();
        all.editions();
        all.earthReturn();
        all.body();
        all.steps();
        all.shapes();
        return List.copyOf(all.tables);
    }

    private void table(String room, String title, String meaning, String... columns) {
        tables.add(new Table(room, title, meaning, List.of(columns), rows, beyond));
        rows = new ArrayList<>();
        beyond = new ArrayList<>();
    }

    private void row(String... cells) {
        rows.add(List.of(cells));
    }

    /**
     * A difference as a cell.
     *
     * @param value the value in question
     * @param reference the better one
     * @param promised what the table promises of it [-]; infinite where it promises nothing
     */
    private String off(double value, double reference, double promised) {
        double difference = value / reference - 1;
        if (!(Math.abs(difference) <= promised)) {
            beyond.add(Numbers.significant(value, 6) + " beside " + Numbers.significant(reference, 6));
        }
        return percent(difference);
    }

    private String off(FormulaResult formula, double reference, double promised) {
        return formula.holds() ? off(formula.get(), reference, promised) : REFUSED;
    }

    /** Two decimals below 10 %, none above; the last digit of another machine's arithmetic does not show. */
    private static String percent(double part) {
        double percent = 100 * part;
        if (Math.abs(percent) < 0.005) {
            return "< 0.01 %";
        }
        BigDecimal rounded =
                BigDecimal.valueOf(percent).setScale(Math.abs(percent) < 9.995 ? 2 : 0, RoundingMode.HALF_UP);
        return (rounded.signum() > 0 ? "+" : "") + rounded.toPlainString() + " %";
    }

    private static String number(double value) {
        return Numbers.full(Double.parseDouble(Numbers.significant(value, 3)));
    }

    private static double solved(SoilModel soil, List<Bar> bars) {
        return EarthElectrodes.of(soil, bars).resistances().alone(NAME);
    }

    private static double solved(List<Bar> bars) {
        return solved(SoilModel.uniform(RHO), bars);
    }

    private void rods() {
        for (double ratio : new double[] {3, 5, 10, 30, 100, 190, 400, 1000}) {
            double length = 3;
            double diameter = length / ratio;
            double reference = solved(BarShapes.rod(NAME, 0, 0, 0, length, diameter / 2));
            row(
                    number(ratio),
                    off(RodDwight.resistance(RHO, length, diameter / 2), reference, ratio >= 10 ? 0.03 : 0.15),
                    off(PipeIs3043.resistance(RHO, length, diameter), reference, 0.3),
                    off(RulesOfThumb.rod(RHO, length), reference, Double.POSITIVE_INFINITY));
        }
        table(
                "electrode",
                "A rod in uniform ground",
                "Closed forms against the solved rod of 3 m. Slender rods are 1 % high with ln(8L/d) - 1, and 5 to 6 % with"
                        + " ln(4L/d); the rule of thumb holds near L/d = 200 only.",
                "L/d",
                "ln(8L/d) − 1",
                "ln(4L/d)",
                "rho/L");
    }

    private void twoRods() {
        double length = 3;
        double radius = 0.008;
        for (double ratio : new double[] {0.05, 0.1, 0.3, 0.6, 1, 1.5, 2, 4, 10}) {
            double spacing = ratio * length;
            double one = solved(BarShapes.rod(NAME, 0, 0, 0, length, radius));
            double both = solved(BarShapes.rodsInLine(NAME, 0, 0, 2, spacing, 0, length, radius));
            row(
                    number(ratio),
                    off(TwoRodsDwight.resistance(RHO, length, radius, spacing), both, 0.05),
                    off(one / 2, both, Double.POSITIVE_INFINITY),
                    off((one + RHO / (2 * Math.PI * spacing)) / 2, both, Double.POSITIVE_INFINITY));
        }
        table(
                "electrode",
                "Two joined rods by their spacing",
                "Against the solved pair of 3 m and 16 mm. Half of one rod is the student's answer: it is a third low for"
                        + " rods that nearly touch and still 2 % low ten lengths apart. Rods taken for points are right to 3 %"
                        + " from one length on and useless below.",
                "s/L",
                "Dwight",
                "half of one rod",
                "rods as points");
    }

    private void horizontalWires() {
        double depth = 0.5;
        double radius = 0.005;
        for (double length : new double[] {1, 2, 4, 5, 10, 20, 50, 100}) {
            double reference = solved(BarShapes.wire(NAME, 0, 0, length, 0, depth, radius));
            row(
                    number(length),
                    off(HorizontalWireDwight.resistance(RHO, length, radius, depth), reference, 0.03),
                    off(HorizontalWireSunde.resistance(RHO, length, radius, depth), reference, 0.05),
                    off(RulesOfThumb.strip(RHO, length), reference, Double.POSITIVE_INFINITY));
        }
        table(
                "electrode",
                "A straight wire 0.5 m deep by its length",
                "Closed forms against the solved wire of 10 mm. They are refused where the wire is short for its depth.",
                "length, m",
                "Dwight",
                "Sunde",
                "2 rho/L");
    }

    private void rings() {
        double radius = 0.005;
        double diameter = 4;
        for (double depth : new double[] {0.1, 0.3, 0.6, 1, 2, 4, 6}) {
            double reference = solved(BarShapes.ring(NAME, 0, 0, diameter / 2, 48, depth, radius));
            row(number(depth / diameter), off(RingDwight.resistance(RHO, diameter, radius, depth), reference, 0.01));
        }
        table(
                "electrode",
                "A ring by its depth",
                "Against the solved ring of 4 m and 10 mm wire, 48 chords. The form is good to 1 % down to a depth of its own"
                        + " diameter, and refused below.",
                "depth/D",
                "Dwight");
    }

    private void layeredRods() {
        double length = 3;
        double radius = 0.008;
        for (double lower : new double[] {1000, 300, 30, 10}) {
            for (double thickness : new double[] {0.5, 1, 2, 2.7, 4}) {
                SoilModel soil = SoilModel.twoLayer(RHO, thickness, lower);
                double reference = solved(soil, BarShapes.rod(NAME, 0, 0, 0, length, radius));
                FormulaResult through = RodTwoLayer.apparentResistivity(RHO, lower, thickness, length);
                FormulaResult within = RodTwoLayer.withinUpper(RHO, lower, thickness, length, radius);
                row(
                        number(lower / RHO),
                        number(thickness / length),
                        off(within, reference, 0.02),
                        through.holds()
                                ? off(
                                        RodDwight.resistance(through.get(), length, radius)
                                                .get(),
                                        reference,
                                        Double.POSITIVE_INFINITY)
                                : REFUSED);
            }
        }
        table(
                "electrode",
                "A rod in two layers",
                "Against the solved rod of 3 m and 16 mm. The series holds as long as the rod ends in the upper layer. Adding the"
                        + " conductances of both parts, as is often done by hand, is low over a poorer lower layer and high over"
                        + " a better one: no more than an estimate.",
                "rho2/rho1",
                "h/L",
                "series, rod within",
                "conductances added, rod through");
    }

    private void grids() {
        for (int meshes : new int[] {1, 2, 4, 8}) {
            for (double side : new double[] {5, 20}) {
                double length = 2 * side * (meshes + 1);
                double reference = solved(BarShapes.mat(NAME, 0, 0, side, side, meshes, meshes, 0.5, 0.005));
                row(
                        number(side),
                        meshes + " × " + meshes,
                        off(GridSverak.resistance(RHO, side * side, length, 0.5), reference, 0.3));
            }
        }
        table(
                "electrode",
                "A square grid 0.5 m deep",
                "Sverak's form against the solved grid of 10 mm wire. It was made for grids of substations, and lies 9 to 29 %"
                        + " high, on the cautious side, for the few meshes and small sides of a pole or a small station.",
                "side, m",
                "meshes",
                "Sverak");
    }

    private void soundings() {
        for (double contrast : new double[] {-0.95, -0.5, 0.5, 0.95}) {
            for (double ratio : new double[] {0.1, 1, 10, 100}) {
                double lower = (1 + contrast) / (1 - contrast);
                double library = Wenner.of(ratio).apparentResistivity(SoilModel.twoLayer(1, 1, lower));
                double images = images(contrast, ratio);
                row(
                        number(contrast),
                        number(ratio),
                        Numbers.significant(images, 5),
                        off(library, images, 1e-4),
                        off(1, images, Double.POSITIVE_INFINITY));
            }
        }
        table(
                "soil",
                "Wenner curves of two layers",
                "The library against the plain sum of images, as many as it takes. The last column is what one takes for granted who"
                        + " measures at one spacing and believes it is the upper layer.",
                "reflection",
                "a/h",
                "rho_a/rho1",
                "library",
                "upper layer taken for all");
    }

    /** ρa/ρ1 = 1 + 4 Σ kⁿ (1/√(1+(2n/r)²) − 1/√(4+(2n/r)²)) with r = a/h, terms until they no longer count. */
    private static double images(double contrast, double ratio) {
        double sum = 0;
        double power = 1;
        for (int n = 1; n <= 2_000_000; n++) {
            power *= contrast;
            double q = 2 * n / ratio;
            double term = power * (1 / Math.sqrt(1 + q * q) - 1 / Math.sqrt(4 + q * q));
            sum += term;
            if (Math.abs(power) < 1e-15) {
                break;
            }
        }
        return 1 + 4 * sum;
    }

    private void straightWires() {
        for (double ratio : new double[] {2, 5, 10, 30, 100, 1000, 10000}) {
            double radius = 1 / ratio;
            double reference = SelfInductance.solid(1, radius);
            row(
                    number(ratio),
                    off(
                            SelfInductance.rosaSolid(1, radius),
                            reference,
                            ratio >= 100 ? 0.003 : Double.POSITIVE_INFINITY),
                    off(2e-7 * Math.log(2 * ratio), reference, Double.POSITIVE_INFINITY),
                    off(1e-6, reference, Double.POSITIVE_INFINITY));
        }
        table(
                "inductance",
                "Own inductance of a straight round wire",
                "Against the exact integral over the section (case IN-01). Rosa's form is made for slender wires. 1 uH a metre is the"
                        + " usual rule: right for leads of some metres, too low for long ones.",
                "l/r",
                "Rosa",
                "0.2 ln(2l/r)",
                "1 uH/m");
    }

    private void nearWires() {
        for (double ratio : new double[] {2.5, 3, 4, 6, 10, 30, 100}) {
            double exact = 4e-7 * acoshOfHalf(ratio);
            double length = 1000;
            double library = 2
                    * (SelfInductance.tube(length, 1e-3) - FilamentInductance.sideBySide(length, ratio * 1e-3))
                    / length;
            row(number(ratio), off(library, exact, ratio >= 10 ? 0.005 : 0.4));
        }
        table(
                "inductance",
                "Two near wires at high frequency",
                "The library, which lets the current flow evenly round each wire, against acosh(D/2r) of the exact solution, where"
                        + " both currents draw together. Below ten radii between the axes the difference counts.",
                "D/r",
                "library");
    }

    /** acosh(x/2). */
    private static double acoshOfHalf(double ratio) {
        double x = ratio / 2;
        return Math.log(x + Math.sqrt(x * x - 1));
    }

    private void skin() {
        double radius = 5e-3;
        double resistivity = 1.7241e-8;
        double direct = resistivity / (Math.PI * radius * radius);
        for (double ratio : new double[] {0.2, 0.5, 1, 1.5, 2, 3, 5, 10, 20}) {
            double depth = radius / ratio;
            double omega = 2 * resistivity / (4e-7 * Math.PI * depth * depth);
            double library = SkinEffect.solid(omega, radius, resistivity, 1).getReal() / direct;
            double series = ratio <= 5 ? kelvin(ratio) : Double.NaN;
            row(
                    number(ratio),
                    Numbers.significant(library, 5),
                    Double.isNaN(series) ? "–" : off(library, series, 1e-8),
                    off(1 + Math.pow(ratio, 4) / 48, library, Double.POSITIVE_INFINITY),
                    off(ratio / 2 + 0.25, library, ratio >= 5 ? 0.02 : Double.POSITIVE_INFINITY));
        }
        table(
                "inductance",
                "Skin effect of a solid round wire",
                "Resistance over that at zero frequency. The library against the power series of the Bessel functions, and two hand"
                        + " formulas against the library: the first term of low frequency, and the edge of depth delta of high"
                        + " frequency.",
                "r/δ",
                "R/R0",
                "library − series",
                "1 + (r/δ)⁴/48",
                "r/2δ + 1/4");
    }

    /** Re of (z/2) I0(z)/I1(z) with z = (1 + j) r/δ, by the power series of both. */
    private static double kelvin(double ratio) {
        Complex z = new Complex(ratio, ratio);
        Complex quarter = z.multiply(z).divide(4);
        Complex zero = Complex.ONE;
        Complex one = Complex.ONE;
        Complex term = Complex.ONE;
        for (int k = 1; k < 80; k++) {
            term = term.multiply(quarter).divide((double) k * k);
            zero = zero.add(term);
            one = one.add(term.divide(k + 1.0));
        }
        // I1(z) = z/2 (1 + …), so that the factor z/2 cancels.
        return zero.divide(one).getReal();
    }

    private void cooling() {
        ThermalConstants copper = ThermalTable.require(Metal.COPPER, ThermalEdition.IEC_60949);
        double area = 35e-6;
        for (double duration : new double[] {0.1, 0.5, 1, 3, 5, 10, 30, 60}) {
            double current = AdiabaticHeating.permissibleCurrent(copper, area, duration, 30, 300);
            double cooled = TemperatureHistory.of(
                            copper,
                            SolidRound.ofArea(area),
                            30,
                            30,
                            HeatTransfer.STILL_AIR,
                            List.of(Shot.of(current, duration)),
                            1)
                    .peak();
            double adiabatic = AdiabaticHeating.finalTemperature(copper, area, current * current * duration, 30);
            row(number(duration), off(adiabatic - 30, cooled - 30, duration <= 5 ? 0.06 : Double.POSITIVE_INFINITY));
        }
        table(
                "conductor",
                "Heat that leaves a bare conductor",
                "Rise without loss of heat against the rise with loss to still air, copper of 35 mm2 to 300 degC. To leave the loss"
                        + " out is on the cautious side, and a matter of per cent up to five seconds, the limit that the standards"
                        + " set to it.",
                "duration, s",
                "adiabatic rise");
    }

    private void editions() {
        ThermalConstants iec = ThermalTable.require(Metal.COPPER, ThermalEdition.IEC_60949);
        ThermalConstants ieee = ThermalTable.require(Metal.COPPER, ThermalEdition.IEEE_80_2000);
        double area = 35e-6;
        for (double end : new double[] {160, 250, 300, 500, 1083}) {
            double current = AdiabaticHeating.permissibleCurrent(ieee, area, 1, 40, end);
            row(
                    number(end),
                    off(AdiabaticHeating.permissibleCurrent(iec, area, 1, 40, end), current, 0.02),
                    end == 1083 ? off(FusingCurrent.onderdonk(area, 1, 40), current, 0.02) : "–");
        }
        table(
                "conductor",
                "The same heating by two standards",
                "Current that copper bears from 40 degC for a second, IEC 60949 and, to the melting point, Onderdonk's formula,"
                        + " against IEEE Std 80. The equations are one; the constants of the metal differ.",
                "end, degC",
                "IEC 60949",
                "Onderdonk");
    }

    private void earthReturn() {
        LineConductor wire = new LineConductor("a", 0, 10, 0, 5e-3, 5e-3);
        for (String text : List.of("50 Hz", "1 kHz", "10 kHz", "100 kHz", "1 MHz", "10 MHz")) {
            double frequency = CaseQuantity.si(text);
            Complex series = of(() -> EarthReturn.CARSON_SERIES.self(wire, frequency, RHO));
            Complex depth = EarthReturn.COMPLEX_DEPTH.self(wire, frequency, RHO);
            Complex first = EarthReturn.CARSON_FIRST_TERMS.self(wire, frequency, RHO);
            boolean known = !series.isNaN();
            row(
                    text,
                    known ? off(depth.getReal(), series.getReal(), 0.05) : REFUSED,
                    known ? off(depth.getImaginary(), series.getImaginary(), 0.01) : REFUSED,
                    known ? off(first.getReal(), series.getReal(), Double.POSITIVE_INFINITY) : REFUSED,
                    known
                            ? off(
                                    first.getImaginary(),
                                    series.getImaginary(),
                                    frequency <= 50 ? 0.01 : Double.POSITIVE_INFINITY)
                            : REFUSED);
        }
        table(
                "fault",
                "Earth return of a line by frequency",
                "Wire 10 m above 100 ohm.m. Two short forms against the series, which itself agrees with the quadrature of the"
                        + " integral (cases SC-F30 and GR-02) and is refused beyond its reach. The first terms are for power"
                        + " frequency; the complex depth serves surges too.",
                "frequency",
                "complex depth, R",
                "complex depth, X",
                "first terms, R",
                "first terms, X");
    }

    private static Complex of(Supplier<Complex> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            return Complex.NaN;
        }
    }

    private void body() {
        ReferenceModel model = ReferenceModels.all().get("safety.mean-of-paths");
        ReferenceModel table = ReferenceModels.all().get("safety.touch-table");
        if (model == null || table == null) {
            throw new IllegalStateException("the models of the body are not bound");
        }
        for (String duration : List.of("0.05 s", "0.1 s", "0.2 s", "0.5 s", "1.0 s", "2.0 s", "5.0 s", "10.0 s")) {
            double computed = result(model, "duration", duration, "", "");
            double printed = result(table, "duration", duration, "edition", "EN 50522:2010");
            boolean reproduced = !duration.equals("0.1 s") && !duration.equals("0.2 s");
            row(duration, Numbers.full(printed), off(computed, printed, reproduced ? 0.01 : Double.POSITIVE_INFINITY));
        }
        table(
                "safety",
                "Permissible touch voltage from the impedance of the body",
                "Mean of four body paths by the method of EN 50522:2010 annex B against the table that the standard prints. At 0.1 and"
                        + " 0.2 s the print does not follow from the method; checks take the table.",
                "duration",
                "printed, V",
                "method");
    }

    private static double result(ReferenceModel model, String name, String text, String other, String otherText) {
        java.util.Map<String, Given.Value> given = new java.util.LinkedHashMap<>();
        given.put(name, new Given.Value.Text(text));
        if (!other.isEmpty()) {
            given.put(other, new Given.Value.Text(otherText));
        }
        Double touch = model.compute(new Given(given)).get("touch");
        if (touch == null) {
            throw new IllegalStateException("the model gives no touch voltage");
        }
        return touch;
    }

    private void steps() {
        double inductance = 10e-6;
        double capacitance = 1e-9;
        double resistance = 20;
        double damping = resistance / (2 * inductance);
        double omega = Math.sqrt(1 / (inductance * capacitance) - damping * damping);
        double period = 2 * Math.PI / omega;
        Circuit circuit = new Circuit.Builder()
                .voltageSource("source", "in", Circuit.REFERENCE, Wave.constant(1))
                .inductor("coil", "in", "out", resistance, inductance)
                .capacitor("store", "out", Circuit.REFERENCE, capacitance)
                .build();
        double exact = 1 + Math.exp(-damping * period / 2);
        for (int steps : new int[] {6, 10, 20, 50, 100, 500}) {
            double peak = TransientSolution.solve(circuit, TimeGrid.equal(2 * period, period / steps))
                    .potential("out")
                    .maximum()
                    .value();
            row(Integer.toString(steps), off(peak, exact, steps >= 100 ? 0.002 : Double.POSITIVE_INFINITY));
        }
        double adaptive = TransientSolution.solve(circuit, TimeGrid.adaptive(2 * period, period / 100))
                .potential("out")
                .maximum()
                .value();
        row("adaptive", off(adaptive, exact, 0.002));
        table(
                "network",
                "Peak of a ringing circuit by the time step",
                "Step on 20 ohm, 10 uH and 1 nF against the closed solution. The studies use adaptive steps.",
                "steps in a period",
                "peak");
    }

    private void shapes() {
        shape("8/20", PowerExponential.impulse820(1), 8, 20, false, 0.2, 0.2);
        shape("1.2/50", DoubleExponential.impulse1250(1), 1.2, 50, true, 0.3, 0.2);
        shape("10/350", Heidler.firstPositive(1), 10, 350, false, 0.2, 0.2);
        shape("1/200", Heidler.firstNegative(1), 1, 200, false, 0.2, 0.2);
        shape("0.25/100", Heidler.subsequent(1), 0.25, 100, false, 0.2, 0.2);
        table(
                "surge",
                "Standard waves by their nominal times",
                "Front and tail of each analytic form, found by the rule for currents (voltages for 1.2/50), against the name of the"
                        + " wave. The standards allow 20 to 30 % in a laboratory.",
                "wave, us",
                "peak",
                "front",
                "tail");
    }

    private void shape(
            String name,
            Impulse wave,
            double front,
            double tail,
            boolean voltage,
            double frontLimit,
            double tailLimit) {
        ImpulseParameters p = wave.shape();
        row(
                name,
                off(p.peak(), 1, 0.01),
                off((voltage ? p.voltageFront() : p.currentFront()) * 1e6, front, frontLimit),
                off((voltage ? p.voltageTail() : p.currentTail()) * 1e6, tail, tailLimit));
    }
}
