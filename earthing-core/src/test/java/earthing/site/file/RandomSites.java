package earthing.site.file;

import earthing.quantity.ColumnTable;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.site.EarthSegment;
import earthing.site.Electrode;
import earthing.site.Key;
import earthing.site.MainEarth;
import earthing.site.MeasurementKind;
import earthing.site.NeutralMethod;
import earthing.site.RelayCurve;
import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.site.SoilLaw;
import earthing.site.SoilLayer;
import earthing.site.SoilReading;
import earthing.site.Termination;
import earthing.site.TouchCriterion;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;

/** Valid sites at random, made from the keys of the records; what keys have to do with each other is put right. */
final class RandomSites {

    private static final String[] TEXTS = {
        "a plain text",
        "14",
        "true",
        "null",
        "~",
        "unknown",
        "say \"so\": yes",
        "comma, colon: and # hash",
        "[a] {b}",
        "- a",
        "naïve Ωµ²",
        "two\nlines",
        "'quoted'",
        "2026-03-02",
        "1e5",
        "* star & anchor",
        "%percent",
        "@at `tick`",
        "back\\slash",
        "end:",
        "🙂",
        "\u00A0nbsp\u2028sep",
        "no"
    };

    private final Random random;
    private final double likelihood;

    private RandomSites(Random random) {
        this.random = random;
        this.likelihood = random.nextDouble();
    }

    static Site of(long seed) {
        RandomSites sites = new RandomSites(new Random(seed));
        return (Site) sites.block(Block.site(), "");
    }

    private Record block(Block block, String path) {
        Map<String, Object> values = new HashMap<>();
        for (Entry entry : block.entries()) {
            if (entry.meaning().required() || random.nextDouble() < likelihood) {
                values.put(entry.key(), value(entry, BlockReader.join(path, entry.key())));
            }
        }
        repair(block.name(), values);
        return block.make(values);
    }

    private Object value(Entry entry, String path) {
        if (!entry.isList()) {
            return one(entry, path, 0);
        }
        List<Object> items = new ArrayList<>();
        int count = 1 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            items.add(one(entry, path, i));
        }
        return items;
    }

    private Object one(Entry entry, String path, int index) {
        Key meaning = entry.meaning();
        return switch (entry.kind()) {
            case QUANTITY -> measure(meaning);
            case NUMBER -> meaning.least() + random.nextInt(Math.min(50, meaning.most() - meaning.least() + 1));
            case WORD -> Objects.requireNonNull(entry.constant(pick(entry.words())));
            case TEXT -> text(entry);
            case TABLE -> random(meaning);
            case BLOCK -> {
                Record block = block(entry.block(), path);
                yield named(entry.block(), block, index);
            }
        };
    }

    /** What lies beside a random site: a file for each key that names one. */
    static SideFiles files(Site site) {
        Map<String, byte[]> files = new HashMap<>();
        collect(site, files);
        return name -> {
            byte[] bytes = files.get(name);
            if (bytes == null) {
                throw new NoSuchFileException(name);
            }
            return bytes;
        };
    }

    private static void collect(Record block, Map<String, byte[]> files) {
        for (Entry entry : Block.of(block.getClass()).entries()) {
            Object value = entry.value(block);
            if (value instanceof ColumnTable table) {
                files.put(table.file(), table(entry.meaning()));
            }
            for (Object one : value instanceof List<?> list ? list : Arrays.asList(value)) {
                if (one instanceof Record inner && entry.kind() == Entry.Kind.BLOCK) {
                    collect(inner, files);
                }
            }
        }
    }

    private static ColumnTable random(Key key) {
        String name = columns(key).stream()
                .map(column -> column.name().replace('/', ' '))
                .collect(Collectors.joining(" ", "table ", ".csv"));
        return Objects.requireNonNull(TableFile.checked(name, table(key), key, new ProblemList(name)));
    }

    /** A small file with the columns of a key; of a survey those of one array. */
    static byte[] table(Key key) {
        List<Key.Column> columns = columns(key);
        StringBuilder text = new StringBuilder(columns.stream()
                        .map(column -> column.name() + " [" + column.unit().siUnit() + ']')
                        .collect(Collectors.joining(",")))
                .append('\n');
        for (int row = 1; row <= 3; row++) {
            List<String> cells = new ArrayList<>();
            for (Key.Column column : columns) {
                boolean rises =
                        column.order() == Key.Order.RISING || column.name().equals("spacing");
                cells.add(Integer.toString(rises ? row : 9 - row));
            }
            text.append(String.join(",", cells)).append('\n');
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static List<Key.Column> columns(Key key) {
        return Arrays.stream(key.columns())
                .filter(column ->
                        column.required() || List.of("spacing", "resistance").contains(column.name()))
                .toList();
    }

    /** Names are unique in a list. */
    private static Record named(Block block, Record record, int index) {
        Map<String, Object> values = values(block, record);
        for (Entry entry : block.entries()) {
            if (entry.meaning().text() == Key.Text.NAME) {
                values.put(entry.key(), index == 0 ? "first" : "next " + index);
            }
        }
        return block.make(values);
    }

    private static Map<String, Object> values(Block block, Record record) {
        Map<String, Object> values = new HashMap<>();
        for (Entry entry : block.entries()) {
            Object value = entry.value(record);
            if (value != null) {
                values.put(entry.key(), value);
            }
        }
        return values;
    }

    private String text(Entry entry) {
        if (!entry.words().isEmpty()) {
            return pick(entry.words());
        }
        return switch (entry.meaning().text()) {
            case FREE -> TEXTS[random.nextInt(TEXTS.length)].strip();
            case NAME, ELECTRODE -> "first";
            case DATE -> "20" + (10 + random.nextInt(20)) + "-0" + (1 + random.nextInt(9)) + "-1" + random.nextInt(10);
        };
    }

    private Measure measure(Key meaning) {
        Dimension dimension = meaning.unit();
        if (!meaning.known() && random.nextInt(8) == 0) {
            return random.nextBoolean()
                    ? Measure.unknown(dimension)
                    : new Measure(dimension, Optional.empty(), Measure.Origin.ASSUMED, "", "planner");
        }
        List<Quantity> three = new ArrayList<>(List.of(quantity(meaning), quantity(meaning), quantity(meaning)));
        three.sort(Comparator.comparingDouble(Quantity::si));
        return switch (random.nextInt(3)) {
            case 0 -> Measure.exactly(three.get(0));
            case 1 -> measure(dimension, three.get(0), three.get(1), three.get(1));
            default -> measure(dimension, three.get(0), three.get(1), three.get(2));
        };
    }

    private Measure measure(Dimension dimension, Quantity low, Quantity nominal, Quantity high) {
        Measure.Origin[] origins = Measure.Origin.values();
        return new Measure(
                dimension,
                Optional.of(new Measure.Bounds(low, nominal, high)),
                origins[random.nextInt(origins.length)],
                random.nextBoolean() ? "" : "2026-03-02",
                random.nextBoolean() ? "" : TEXTS[random.nextInt(11)]);
    }

    private Quantity quantity(Key meaning) {
        List<String> units = new ArrayList<>(meaning.unit().factors().keySet());
        String unit = pick(units);
        String number = (1 + random.nextInt(999)) + (random.nextBoolean() ? "" : "." + random.nextInt(100));
        if (meaning.sign() == Key.Sign.ANY && random.nextBoolean()) {
            number = '-' + number;
        } else if (meaning.sign() == Key.Sign.NOT_NEGATIVE && random.nextInt(4) == 0) {
            number = "0";
        } else if (random.nextInt(5) == 0) {
            number = random.nextInt(9) + 1 + "e-" + random.nextInt(3);
        }
        return parse(number + (random.nextBoolean() ? " " : "") + unit, meaning.unit());
    }

    private static Quantity parse(String text, Dimension dimension) {
        try {
            return Quantity.parse(text, dimension, OptionalDouble.of(50));
        } catch (UnitException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Measure fixed(String text, Dimension dimension) {
        return Measure.exactly(parse(text, dimension));
    }

    private String pick(List<String> texts) {
        return texts.get(random.nextInt(texts.size()));
    }

    /** What keys have to do with each other. */
    private void repair(String block, Map<String, Object> values) {
        switch (block) {
            case "site" -> site(values);
            case "site-identity" -> {
                values.remove(values.containsKey("latitude") ? "" : "longitude");
                set(values, "latitude", random.nextBoolean() ? "54.6120 deg" : "-90 deg", Dimension.ANGLE);
                if (values.containsKey("latitude")) {
                    values.put("longitude", fixed(random.nextBoolean() ? "-2.1480 deg" : "3.1 rad", Dimension.ANGLE));
                }
            }
            case "system-data" -> {
                set(values, "voltage", random.nextBoolean() ? "22 kV" : "22000 V", Dimension.VOLTAGE);
                set(values, "highest-voltage", "24 kV", Dimension.VOLTAGE);
                set(values, "frequency", "50 Hz", Dimension.FREQUENCY);
                values.remove("return-wires");
            }
            case "expectation" -> {
                values.put("value", random.nextBoolean() ? "31.9 ohm" : "-3");
                values.computeIfPresent("within", (key, text) -> random.nextBoolean() ? "2 %" : "0.1 ohm");
                values.computeIfPresent("in-case", (key, text) -> "fault=maximum, wave=8/20");
                if (values.containsKey("at") || values.containsKey("in-case")) {
                    values.remove("subject");
                }
            }
            // Its keys name bounded values of the same file, which a random file may not have.
            case "uncertainty" -> values.clear();
            case "neutral" -> {
                for (String key :
                        List.of("resistance", "reactance", "residual-current", "conductor", "earth-return-load")) {
                    values.remove(key);
                }
                if (values.get("method") == NeutralMethod.SINGLE_WIRE_EARTH_RETURN) {
                    values.put("method", NeutralMethod.SOLID);
                }
            }
            case "return-wire" -> {
                set(values, "bond-height", "7 m", Dimension.LENGTH);
                set(values, "span", "80 m", Dimension.LENGTH);
                values.computeIfPresent("spans-to-source", (key, spans) -> 20);
            }
            case "criteria" -> {
                if (values.get("touch") != TouchCriterion.OWNER) {
                    values.remove("owner");
                }
                if (values.get("touch") != TouchCriterion.IEC_60479_1 && !values.containsKey("exposure")) {
                    values.remove("body");
                }
            }
            case "source-line" -> {
                for (String key : List.of("conductors", "earth-resistivity", "earth-return")) {
                    values.remove(key);
                }
            }
            case "protection" -> {
                if (values.containsKey("relay")) {
                    values.remove("clearing-time");
                }
                values.remove("fuse");
                if (!values.containsKey("back-up")) {
                    values.remove("back-up-for");
                }
            }
            case "relay" -> {
                boolean definite = values.get("curve") == RelayCurve.DEFINITE_TIME;
                values.remove(definite ? "time-multiplier" : "delay");
            }
            case "reclose" -> {
                values.computeIfPresent("fast-shots", (key, shots) -> 1);
                if (!values.containsKey("fast-shots")) {
                    values.remove("fast-time");
                }
            }
            case "soil" -> {
                if (values.containsKey("layers")) {
                    values.remove("resistivity");
                    values.put("layers", List.of(layer(true), layer(true), layer(false)));
                }
                if (values.containsKey("survey-file")) {
                    values.keySet().removeAll(List.of("resistivity", "layers", "soundings"));
                }
                if (values.containsKey("soundings")) {
                    values.remove("resistivity");
                    values.remove("layers");
                    values.put(
                            "soundings",
                            List.of(reading("1 m", "20 ohm"), reading("2 m", "9 ohm"), reading("4 m", "3 ohm")));
                }
            }
            case "frequency-dependence" -> {
                if (values.get("law") == SoilLaw.NONE) {
                    set(values, "relative-permittivity", "10", Dimension.RATIO);
                } else {
                    values.remove("relative-permittivity");
                }
            }
            case "concrete-shell" -> set(values, "diameter", "2 m", Dimension.LENGTH);
            case "pole" -> {
                set(values, "height", "11 m", Dimension.LENGTH);
                set(values, "diameter", "0.3 m", Dimension.LENGTH);
            }
            case "tank" -> {
                set(values, "height", "9 m", Dimension.LENGTH);
                set(values, "handle-height", "2.2 m", Dimension.LENGTH);
                if (!values.containsKey("handle-height")) {
                    values.remove("handle-bonded");
                }
            }
            case "cubicle" -> set(values, "height", "120 in", Dimension.LENGTH);
            case "stay" -> {
                set(values, "top-height", "9 m", Dimension.LENGTH);
                if (values.containsKey("anchor")) {
                    values.remove("anchor-resistance");
                }
            }
            case "stay-anchor" -> {
                set(values, "rod-diameter", "20 mm", Dimension.LENGTH);
                set(values, "plate-diameter", "0.3 m", Dimension.LENGTH);
            }
            case "main-earth" -> mainEarth(values);
            case "arresters" -> {
                set(values, "continuous-voltage", "17 kV", Dimension.VOLTAGE);
                set(values, "rated-voltage", "21 kV", Dimension.VOLTAGE);
                set(values, "residual-voltage", "56 kV", Dimension.VOLTAGE);
                set(values, "steep-residual-voltage", "62 kV", Dimension.VOLTAGE);
                if (!values.containsKey("temporary-overvoltage")) {
                    values.remove("temporary-overvoltage-time");
                }
                values.remove("residual-curve");
            }
            case "screen" -> {
                if (values.get("bond") == ScreenBond.ABSENT) {
                    values.keySet().retainAll(List.of("bond"));
                }
            }
            case "core" -> {
                if (!values.containsKey("withstand")) {
                    values.remove("withstand-wave");
                }
                for (String end : List.of("tank", "cubicle")) {
                    if (values.get(end + "-end") == Termination.TANK) {
                        values.remove(end + "-impedance");
                    }
                }
            }
            case "protector" -> {
                if (!values.containsKey("lead-length")) {
                    values.remove("lead-spacing");
                }
            }
            case "measurement" -> {
                boolean bond = values.get("kind") == MeasurementKind.BOND_CONTINUITY;
                values.put("of", bond ? "main-earth" : "first");
                set(values, "current-probe-distance", "60 m", Dimension.LENGTH);
                set(values, "potential-probe-distance", "37 m", Dimension.LENGTH);
            }
            case "electrode" -> electrode(values);
            default -> {
                // Nothing to put right.
            }
        }
    }

    private void site(Map<String, Object> values) {
        // References need an electrode of that name, so there is always one.
        Map<String, Object> electrode = new HashMap<>();
        electrode.put("name", "first");
        electrode.put("resistance", fixed("20 ohm", Dimension.RESISTANCE));
        Block block = Block.of(Electrode.class);
        List<Object> electrodes = new ArrayList<>(List.of(block.make(electrode)));
        if (random.nextBoolean()) {
            electrodes.add(named(block, block(block, "electrodes"), 1));
            values.computeIfPresent("main-earth", (key, record) -> {
                Block main = Block.of(MainEarth.class);
                Map<String, Object> changed = values(main, (Record) record);
                changed.put("electrode", "next 1");
                return main.make(changed);
            });
        }
        values.put("electrodes", electrodes);
    }

    private static Record reading(String spacing, String resistance) {
        Map<String, Object> values = new HashMap<>();
        values.put("spacing", fixed(spacing, Dimension.LENGTH));
        values.put("resistance", fixed(resistance, Dimension.RESISTANCE));
        return Block.of(SoilReading.class).make(values);
    }

    private Record layer(boolean thick) {
        Map<String, Object> values = new HashMap<>();
        values.put("resistivity", fixed(1 + random.nextInt(500) + " ohm.m", Dimension.RESISTIVITY));
        if (thick) {
            values.put("thickness", fixed("2 m", Dimension.LENGTH));
        }
        return Block.of(SoilLayer.class).make(values);
    }

    private void mainEarth(Map<String, Object> values) {
        set(values, "guard-height", random.nextBoolean() ? "0 m" : "8 ft", Dimension.LENGTH);
        if (values.containsKey("segments")) {
            Block block = Block.of(EarthSegment.class);
            List<Object> segments = new ArrayList<>();
            String[] heights = {"9 m", "300 cm", "0 m"};
            for (int i = 0; i < 2; i++) {
                Map<String, Object> segment = values(block, block(block, "segments"));
                segment.put("name", "segment " + i);
                segment.put("from-height", fixed(heights[i], Dimension.LENGTH));
                segment.put("to-height", fixed(heights[i + 1], Dimension.LENGTH));
                segments.add(block.make(segment));
            }
            values.put("segments", segments);
        }
    }

    private void electrode(Map<String, Object> values) {
        List<String> shapes = List.of(
                "rod", "wire", "ring", "star", "mat", "plate", "rods-in-line", "rods-in-ring", "bars", "resistance");
        String shape = pick(shapes);
        shapes.forEach(values::remove);
        Entry entry = Objects.requireNonNull(Block.of(Electrode.class).entry(shape));
        Object value = value(entry, shape);
        if (entry.kind() == Entry.Kind.BLOCK && value instanceof Record record) {
            Map<String, Object> changed = values(entry.block(), record);
            set(changed, "length", "10 ft", Dimension.LENGTH);
            set(changed, "width", "4 m", Dimension.LENGTH);
            set(changed, "mesh", "0.5 m", Dimension.LENGTH);
            set(changed, "spacing", "3 m", Dimension.LENGTH);
            set(changed, "radius", "2 m", Dimension.LENGTH);
            set(changed, "diameter", "0.625 in", Dimension.LENGTH);
            value = entry.block().make(changed);
        }
        values.put(shape, value);
        if (List.of("plate", "resistance").contains(shape)) {
            values.remove("concrete");
        }
    }

    private static void set(Map<String, Object> values, String key, String text, Dimension dimension) {
        if (values.containsKey(key)) {
            values.put(key, fixed(text, dimension));
        }
    }
}
