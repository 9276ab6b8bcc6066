package earthing.study;

import earthing.electrode.wire.EnergisedElectrodes;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.safety.LowVoltageStress;
import earthing.site.AuxiliaryKind;
import earthing.site.AuxiliaryReference;
import earthing.site.AuxiliarySupply;
import earthing.site.LowVoltageTransformer;
import earthing.site.Neighbour;
import earthing.site.NeighbourKind;
import earthing.site.Site;
import earthing.site.YesNo;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Potentials that leave the site: to neighbours, to the low-voltage network, to the auxiliary supply. */
final class TransferredPotential {

    private static final Source SURFACE =
            Source.tool("potential of the ground at the distance of the neighbour, worst direction");
    private static final int DIRECTIONS = 24;

    private final Site site;
    private final FaultResults results;

    private TransferredPotential(Site site, FaultResults results) {
        this.site = site;
        this.results = results;
    }

    static void of(Site site, List<SolvedFault> faults, FaultResults results) {
        TransferredPotential transferred = new TransferredPotential(site, results);
        for (SolvedFault fault : faults) {
            if (fault.circuit().isPresent()) {
                transferred.neighbours(fault.power());
                transferred.lowVoltage(fault);
                transferred.auxiliary(fault.power());
            }
        }
    }

    private static Result number(String id, PowerCase power, double value, String model, Source source) {
        return Result.of(id, power.circumstances(), power.at(), value, "V", model, source);
    }

    private void neighbours(PowerCase power) {
        if (site.neighbours().isEmpty()) {
            return;
        }
        Map<String, Double> shaped = new TreeMap<>(power.electrodeCurrents());
        shaped.keySet().removeIf(name -> !power.earth().hasShape(name));
        boolean all = shaped.size() == power.electrodeCurrents().size();
        Optional<EnergisedElectrodes> field = power.earth().carrying(shaped);
        for (Neighbour neighbour : site.neighbours()) {
            String id = "transfer." + EarthPaths.key(neighbour.name());
            boolean joined = neighbour.kind() == NeighbourKind.LV_EARTH
                    && site.lvTransformer() != null
                    && site.lvTransformer().neutralJoinedToMainEarth() == YesNo.YES;
            if (joined) {
                results.add(number(
                        id + ".voltage",
                        power,
                        tank(power),
                        "the joined low-voltage neutral takes the whole potential rise",
                        FaultResults.CIRCUIT));
            } else if (field.isEmpty() || !all) {
                results.gap(new Gap(
                        id,
                        power.circumstances(),
                        "the shape of an electrode is not known, and with it the potential around it",
                        List.of("electrodes")));
                continue;
            } else if (!neighbour.distance().isKnown()) {
                results.gap(new Gap(
                        id,
                        power.circumstances(),
                        "the distance of " + neighbour.name() + " is declared unknown",
                        List.of("neighbours.distance")));
                continue;
            } else {
                results.add(number(
                        id + ".voltage",
                        power,
                        around(field.get(), neighbour.distance().at(Measure.Bound.LOW)),
                        "potential of the ground there, worst direction",
                        SURFACE));
            }
            limit(id, power, neighbour.limit(), "owner's limit of the voltage transferred", "neighbours.limit");
        }
    }

    private static double around(EnergisedElectrodes field, double distance) {
        double worst = 0;
        for (int i = 0; i < DIRECTIONS; i++) {
            double angle = 2 * Math.PI * i / DIRECTIONS;
            worst = Math.max(
                    worst, Math.abs(field.potential(distance * Math.cos(angle), distance * Math.sin(angle), 0)));
        }
        return worst;
    }

    private void limit(String id, PowerCase power, @Nullable Measure limit, String model, String key) {
        if (limit != null && limit.isKnown()) {
            results.add(number(id + ".limit", power, limit.at(Measure.Bound.LOW), model, Source.owner(key)));
        }
    }

    private static double tank(PowerCase power) {
        return Math.abs(power.rise().getOrDefault(EarthPaths.TANK, 0.0));
    }

    private void lowVoltage(SolvedFault fault) {
        LowVoltageTransformer transformer = site.lvTransformer();
        if (transformer == null) {
            return;
        }
        PowerCase power = fault.power();
        double rise = tank(power);
        if (transformer.neutralJoinedToMainEarth() == YesNo.YES) {
            results.add(number(
                            "transfer.low-voltage.voltage",
                            power,
                            rise,
                            "the joined neutral carries the whole potential rise into the low-voltage network",
                            FaultResults.CIRCUIT)
                    .withWorked(Worked.of("U_f", "U_T").with("U_T", rise, "V").gives(rise, "V")));
            stressLimit("transfer.low-voltage", power);
            return;
        }
        double neutral = neutral(fault, transformer);
        results.add(number(
                        "transfer.low-voltage.voltage",
                        power,
                        Math.abs(rise - neutral),
                        "from the tank to the low-voltage neutral, across the transformer's insulation",
                        FaultResults.CIRCUIT)
                .withWorked(Worked.of("U", "U_T - U_N")
                        .with("U_T", rise, "V")
                        .with("U_N", neutral, "V")
                        .gives(Math.abs(rise - neutral), "V")));
        Measure level = transformer.insulationLevel();
        if (level == null || !level.isKnown()) {
            results.gap(new Gap(
                    "transfer.low-voltage",
                    power.circumstances(),
                    "the withstand between the transformer's windings is not given",
                    List.of("lv-transformer.insulation-level")));
        } else {
            limit(
                    "transfer.low-voltage",
                    power,
                    level,
                    "withstand between the windings",
                    "lv-transformer.insulation-level");
        }
        results.add(number(
                "transfer.low-voltage-neutral.voltage",
                power,
                Math.abs(neutral),
                "potential of the low-voltage neutral, through the ground or a supply that joins it",
                FaultResults.CIRCUIT));
        stressLimit("transfer.low-voltage-neutral", power);
    }

    /** Potential of the low-voltage neutral; remote earth where no electrode of it is named. */
    private static double neutral(SolvedFault fault, LowVoltageTransformer transformer) {
        String electrode = transformer.electrode();
        if (electrode != null) {
            return fault.power().rise().getOrDefault(PoleNetwork.node(electrode), 0.0);
        }
        org.apache.commons.math3.complex.Complex unit =
                fault.pole().potentials().get(PoleNetwork.LOW_VOLTAGE_EARTH);
        double impedance = fault.pole().impedance().abs();
        return unit == null || impedance == 0 ? 0 : tank(fault.power()) * unit.abs() / impedance;
    }

    private void stressLimit(String id, PowerCase power) {
        double longest = power.shots().stream()
                .mapToDouble(PowerCase.FaultShot::duration)
                .max()
                .orElse(Double.POSITIVE_INFINITY);
        results.add(number(
                id + ".limit",
                power,
                LowVoltageStress.limit(longest),
                LowVoltageStress.brief(longest)
                        ? "stress of low-voltage equipment above its own voltage, cleared within 5 s"
                        : "stress of low-voltage equipment above its own voltage, longer than 5 s",
                LowVoltageStress.SOURCE));
    }

    private void auxiliary(PowerCase power) {
        AuxiliarySupply supply = site.auxiliarySupply();
        Double cubicle = power.rise().get(EarthPaths.CUBICLE);
        if (supply == null || supply.earthReference() != AuxiliaryReference.ISOLATED) {
            return;
        }
        if (cubicle == null) {
            results.gap(new Gap(
                    "aux-supply.isolation",
                    power.circumstances(),
                    "the cubicle floats and its capacitances are not given: its voltage cannot be computed",
                    List.of("cubicle.capacitance-to-earth", "cubicle.capacitance-to-cable")));
            return;
        }
        double reference = reference(power, supply.kind(), cubicle);
        double stress = Math.abs(cubicle - reference);
        results.add(number("aux-supply.isolation.voltage", power, stress, where(supply.kind()), FaultResults.CIRCUIT)
                .withWorked(Worked.of("U", "abs(U_C - U_R)")
                        .with("U_C", cubicle, "V")
                        .with("U_R", reference, "V")
                        .gives(stress, "V")));
    }

    private double reference(PowerCase power, AuxiliaryKind kind, double cubicle) {
        return switch (kind) {
            case LV_NETWORK -> 0;
            case TRANSFORMER_ON_POLE -> {
                String electrode = site.lvTransformer() == null
                        ? null
                        : site.lvTransformer().electrode();
                yield electrode == null ? 0 : power.rise().getOrDefault(PoleNetwork.node(electrode), 0.0);
            }
            case SOLAR -> power.rise().getOrDefault(EarthPaths.TANK, cubicle);
            case BATTERY -> cubicle;
        };
    }

    private static String where(AuxiliaryKind kind) {
        return switch (kind) {
            case LV_NETWORK -> "from the cubicle to the low-voltage network at remote earth";
            case TRANSFORMER_ON_POLE -> "from the cubicle to the low-voltage neutral";
            case SOLAR -> "from the cubicle to a panel higher on the pole, which stands at the tank's potential";
            case BATTERY -> "a battery in the cubicle follows the cubicle; nothing refers it to another earth";
        };
    }
}
