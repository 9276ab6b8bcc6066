package earthing.reference;

import earthing.network.Circuit;
import earthing.network.FrequencySolution;
import earthing.network.NonlinearResistance;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.network.Waveform;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.math3.complex.Complex;

/**
 * A circuit deck turned into a circuit of the library: R, L, K, C, current sources with an expression in time
 * or a phasor, and curves {@code pwl(v(a,b), …)}; {@code .tran} gives the end and the largest step, {@code let} the
 * quantities that are measured. Anything else in the deck is refused, but for options of the simulator.
 */
final class Deck {

    private static final Pattern PAIR = Pattern.compile("v\\((?<a>\\w+)(?:,(?<b>\\w+))?\\)");
    private static final Pattern LET = Pattern.compile("let x_(?<name>\\w+)=(?<what>.*)");
    private static final Pattern DIFFERENCE = Pattern.compile("v\\((?<a>\\w+)\\)-v\\((?<b>\\w+)\\)");
    private static final Pattern CURRENT = Pattern.compile("i\\((?<branch>\\w+)\\)");

    /** Lines that tell the simulator how to run and to print, not what the circuit is. */
    private static final Set<String> SIMULATOR_ONLY =
            Set.of(".options", ".ac", ".control", "set", "run", "meas", "print", "quit", ".endc", ".end");

    private final Circuit.Builder builder = new Circuit.Builder();
    private final Map<String, Double> inductances = new LinkedHashMap<>();
    private final Map<String, String> quantities = new LinkedHashMap<>();
    private double end;
    private double step;

    private Deck(String text) {
        List<String> couplings = new ArrayList<>();
        List<String> lines = text.lines().skip(1).toList();
        for (String each : lines) {
            int comment = each.indexOf(';');
            String line = (comment < 0 ? each : each.substring(0, comment)).strip();
            if (line.startsWith("K")) {
                couplings.add(line);
            } else if (!line.isEmpty() && !line.startsWith("*")) {
                read(line);
            }
        }
        couplings.forEach(this::coupling);
    }

    /**
     * Reads a deck.
     *
     * @param text its content; the first line is its title
     * @return the deck
     * @throws IllegalArgumentException if a line is not understood
     */
    static Deck parse(String text) {
        return new Deck(text);
    }

    /**
     * Solves the circuit and measures what the deck measures.
     *
     * @return {@code <quantity>_max}, {@code <quantity>_min} and their times {@code …_at}, in SI
     */
    Map<String, Double> solve() {
        TransientSolution solution = TransientSolution.solve(builder.build(), TimeGrid.equal(end, step));
        Map<String, Double> measures = new LinkedHashMap<>();
        quantities.forEach((name, what) -> {
            Waveform wave = quantity(solution, what);
            put(measures, name + "_max", wave.maximum());
            put(measures, name + "_min", wave.minimum());
        });
        return measures;
    }

    /**
     * Solves the circuit for one ampere of its source.
     *
     * @param frequency frequency [Hz]
     * @return {@code <quantity>-real} and {@code <quantity>-imag} in SI
     */
    Map<String, Double> solve(double frequency) {
        FrequencySolution solution = FrequencySolution.solve(builder.build(), frequency);
        Map<String, Double> phasors = new LinkedHashMap<>();
        quantities.forEach((name, what) -> {
            Complex phasor = phasor(solution, what);
            phasors.put(name + "-real", phasor.getReal());
            phasors.put(name + "-imag", phasor.getImaginary());
        });
        return phasors;
    }

    private static Complex phasor(FrequencySolution solution, String what) {
        Matcher difference = DIFFERENCE.matcher(what);
        if (difference.matches()) {
            return solution.voltage(difference.group("a"), difference.group("b"));
        }
        Matcher current = CURRENT.matcher(what);
        if (current.matches()) {
            return solution.current(current.group("branch"));
        }
        return solution.potential(node(what));
    }

    private static void put(Map<String, Double> measures, String name, Waveform.Extreme extreme) {
        measures.put(name, extreme.value());
        measures.put(name + "_at", extreme.time());
    }

    private static Waveform quantity(TransientSolution solution, String what) {
        Matcher difference = DIFFERENCE.matcher(what);
        if (difference.matches()) {
            return solution.voltage(difference.group("a"), difference.group("b"));
        }
        Matcher current = CURRENT.matcher(what);
        if (current.matches()) {
            return solution.current(current.group("branch"));
        }
        return solution.potential(node(what));
    }

    private static String node(String what) {
        Matcher potential = PAIR.matcher(what);
        if (potential.matches() && potential.group("b") == null) {
            return potential.group("a");
        }
        throw new IllegalArgumentException("\"" + what + "\" is no quantity of a deck");
    }

    private void read(String line) {
        String[] words = line.split("\\s+", -1);
        switch (line.charAt(0)) {
            case 'R' -> builder.resistor(words[0], words[1], words[2], DeckExpression.number(words[3]));
            case 'C' -> builder.capacitor(words[0], words[1], words[2], DeckExpression.number(words[3]));
            case 'L' -> {
                double inductance = DeckExpression.number(words[3]);
                inductances.put(words[0], inductance);
                builder.inductor(words[0], words[1], words[2], 0, inductance);
            }
            case 'I' -> phasorSource(line, words);
            case 'B' -> behavioural(words[0], words[1], words[2], line.substring(line.indexOf('=') + 1));
            default -> command(line, words);
        }
    }

    private void command(String line, String[] words) {
        Matcher let = LET.matcher(line.replace(" = ", "="));
        if (words[0].equals(".tran")) {
            end = DeckExpression.number(words[2]);
            step = DeckExpression.number(words[4]);
        } else if (let.matches()) {
            quantities.put(let.group("name"), let.group("what"));
        } else if (!SIMULATOR_ONLY.contains(words[0])) {
            throw new IllegalArgumentException("the line \"" + line + "\" of the deck is not understood");
        }
    }

    private void phasorSource(String line, String[] words) {
        if (words.length != 7 || !words[3].equals("dc") || !words[5].equals("ac")) {
            throw new IllegalArgumentException("the line \"" + line + "\" of the deck is not understood");
        }
        Complex phasor = new Complex(DeckExpression.number(words[6]));
        builder.currentSource(words[0], words[1], words[2], phasor);
    }

    private void coupling(String line) {
        String[] words = line.split("\\s+", -1);
        double first = inductances.getOrDefault(words[1], Double.NaN);
        double second = inductances.getOrDefault(words[2], Double.NaN);
        builder.mutual(words[1], words[2], DeckExpression.number(words[3]) * Math.sqrt(first * second));
    }

    private void behavioural(String name, String from, String to, String expression) {
        String text = expression.replace(" ", "").toLowerCase(Locale.ROOT);
        if (text.startsWith("pwl(")) {
            builder.nonlinear(name, from, to, curve(from, to, text.substring(4, text.length() - 1)));
            return;
        }
        DoubleUnaryOperator wave = DeckExpression.parse(text);
        Wave current = wave::applyAsDouble;
        builder.currentSource(name, from, to, current);
    }

    /** The library's curves are odd, so the half with positive currents tells all; the other half is checked. */
    private static NonlinearResistance curve(String from, String to, String arguments) {
        Matcher pair = PAIR.matcher(arguments);
        String reference = to.equals(Circuit.REFERENCE) ? null : to;
        if (!pair.lookingAt() || !pair.group("a").equals(from) || !Objects.equals(pair.group("b"), reference)) {
            throw new IllegalArgumentException("a curve must depend on its own voltage; have " + arguments);
        }
        double[] numbers = Arrays.stream(arguments.substring(pair.end() + 1).split(",", -1))
                .mapToDouble(DeckExpression::number)
                .toArray();
        int points = numbers.length / 2;
        int half = points / 2;
        double[] voltages = new double[half];
        double[] currents = new double[half];
        for (int k = 0; k < half; k++) {
            voltages[k] = numbers[2 * (half + 1 + k)];
            currents[k] = numbers[2 * (half + 1 + k) + 1];
            boolean odd =
                    numbers[2 * (half - 1 - k)] == -voltages[k] && numbers[2 * (half - 1 - k) + 1] == -currents[k];
            if (!odd) {
                throw new IllegalArgumentException("the curve of a deck must be odd; have " + arguments);
            }
        }
        return new NonlinearResistance.PiecewiseLinear(currents, voltages);
    }
}
