package earthing.study;

import earthing.conductor.Metal;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import earthing.conductor.inductance.SkinEffect;
import earthing.electrode.formula.LongWireSunde;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.SeriesElectrodes;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.ConductorMaterial;
import earthing.site.Electrode;
import earthing.site.Site;
import earthing.site.WireShape;
import earthing.site.YesNo;
import earthing.soil.SoilModel;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/** The impedance along the conductors of long electrodes at power frequency, where the site file asks for it. */
final class SeriesImpedance {

    private static final Source STEEL = Source.commonPractice(
            "steel wires and tapes carry earth fault currents with a relative permeability of about 100");

    private static final double PERMEABILITY_OF_STEEL = 100;

    /** Part of the resistance that the impedance may add unheard [1]. */
    private static final double WORTH_TELLING = 0.02;

    private SeriesImpedance() {}

    static boolean asked(Electrode electrode) {
        return electrode.seriesImpedance() == YesNo.YES;
    }

    /** What the impedance along its conductors adds to each electrode that asks for it [Ω]. */
    static Map<String, Complex> added(
            Site site, SoilModel soil, List<Bar> bars, Map<String, double[]> terminals, Inputs in, EarthCache cache)
            throws MissingInput {
        Map<String, SeriesElectrodes.Conductor> conductors = new LinkedHashMap<>();
        for (Electrode electrode : site.electrodes()) {
            if (asked(electrode) && terminals.containsKey(electrode.name())) {
                conductors.put(electrode.name(), conductor(electrode, in));
            }
        }
        if (conductors.isEmpty()) {
            return Map.of();
        }
        double frequency = frequency(site, in);
        Map<String, Complex> added = new LinkedHashMap<>();
        try {
            SeriesElectrodes solved = cache.series(soil, bars, terminals, conductors, frequency);
            conductors.keySet().forEach(name -> added.put(name, solved.added(name)));
        } catch (IllegalArgumentException impossible) {
            throw new MissingInput(
                    "the impedance along the electrodes has no solution: " + impossible.getMessage(),
                    "electrodes.series-impedance");
        }
        return added;
    }

    static double frequency(Site site, Inputs in) throws MissingInput {
        if (site.system() == null) {
            throw new MissingInput("the frequency is not given", "system.frequency");
        }
        return in.need(site.system().frequency(), "system.frequency");
    }

    private static SeriesElectrodes.Conductor conductor(Electrode electrode, Inputs in) throws MissingInput {
        ConductorMaterial material = electrode.material();
        if (material == null || material == ConductorMaterial.UNKNOWN) {
            throw new MissingInput(
                    "the impedance along electrode " + electrode.name() + " needs its material", "electrodes.material");
        }
        if (material == ConductorMaterial.STEEL || material == ConductorMaterial.GALVANISED_STEEL) {
            in.choice(
                    "electrodes.material",
                    "steel of " + electrode.name() + " has a relative permeability of 100",
                    STEEL);
        }
        return of(material);
    }

    private static SeriesElectrodes.Conductor of(ConductorMaterial material) {
        Metal metal = PoleGeometry.metal(material);
        double resistivity =
                ThermalTable.require(metal, ThermalEdition.IEEE_80_2013).resistivity(20);
        boolean magnetic = material == ConductorMaterial.STEEL || material == ConductorMaterial.GALVANISED_STEEL;
        return new SeriesElectrodes.Conductor(resistivity, magnetic ? PERMEABILITY_OF_STEEL : 1);
    }

    /** The closed form of a single wire that is short or long beside its attenuation; none between. */
    static Optional<Complex> formula(
            Electrode electrode, SiteEarth earth, double resistance, double frequency, Inputs in) throws MissingInput {
        WireShape wire = electrode.wire();
        if (wire == null || earth.soil().layerCount() > 1 || electrode.concrete() != null) {
            return Optional.empty();
        }
        SeriesElectrodes.Conductor metal = conductor(electrode, in);
        double radius = in.need(wire.diameter(), "electrodes.wire.diameter") / 2;
        Complex inside =
                SkinEffect.solid(2 * Math.PI * frequency, radius, metal.resistivity(), metal.relativePermeability());
        return LongWireSunde.wire(
                earth.soil().resistivity(0),
                resistance,
                in.need(wire.length(), "electrodes.wire.length"),
                radius,
                in.need(wire.depth(), "electrodes.wire.depth"),
                inside,
                frequency);
    }

    /**
     * A sentence where an electrode is so long that its impedance is worth asking for: z·l/3 of the way from the lead to its
     * farthest bar, as if all current took it, beside the resistance.
     */
    static Optional<String> hint(Site site, Electrode electrode, SiteEarth earth) {
        if (asked(electrode) || site.system() == null || !earth.hasShape(electrode.name())) {
            return Optional.empty();
        }
        double[] lead = earth.terminals().getOrDefault(electrode.name(), new double[2]);
        double reach = 0;
        double radius = 0;
        for (Bar bar : earth.bars()) {
            if (bar.electrode().equals(electrode.name())) {
                double far = Math.max(
                        Math.hypot(bar.x1() - lead[0], bar.y1() - lead[1]),
                        Math.hypot(bar.x2() - lead[0], bar.y2() - lead[1]));
                if (far > reach) {
                    reach = far;
                    radius = bar.radius();
                }
            }
        }
        if (!(reach > 100 * radius) || !site.system().frequency().isKnown()) {
            return Optional.empty();
        }
        double omega = 2 * Math.PI * site.system().frequency().nominal();
        ConductorMaterial material = electrode.material() == null ? ConductorMaterial.COPPER : electrode.material();
        SeriesElectrodes.Conductor metal = of(material);
        Complex along = SkinEffect.solid(omega, radius, metal.resistivity(), metal.relativePermeability())
                .add(new Complex(0, LongWireSunde.reactance(reach, radius, omega / (2 * Math.PI))));
        double resistance = earth.resistance(electrode.name(), electrode.name());
        double part = along.multiply(reach / 3).add(resistance).abs() / resistance - 1;
        return part < WORTH_TELLING
                ? Optional.empty()
                : Optional.of("electrode " + electrode.name() + " reaches " + Numbers.brief(reach)
                        + " m; the impedance along its conductors, left out, would add about "
                        + Numbers.significant(100 * part, 2)
                        + " % to its resistance: electrodes.series-impedance: yes takes it in");
    }
}
