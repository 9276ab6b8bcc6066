package earthing.study;

import earthing.network.Breakdown;
import earthing.network.Circuit;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.quantity.Dimension;
import earthing.quantity.Source;
import earthing.site.Antenna;
import earthing.site.Cubicle;
import earthing.site.Pole;
import earthing.site.PoleMaterial;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A place of the pole where an arc can strike, with the strength of what lies between.
 *
 * @param key part of its result ids
 * @param from node on one side
 * @param to node on the other
 * @param distance along air or surface [m]
 * @param perMetre strength of that medium [V/m]
 * @param words what is compared, for the reader
 * @param source where the strength comes from
 * @param air whether it is air, for which there is a volt–time curve
 */
record PoleGap(
        String key,
        String from,
        String to,
        double distance,
        double perMetre,
        String words,
        Source source,
        boolean air) {

    private static final Source AIR =
            Source.standard("IEC 60071-2", "positive lightning impulse, rod gap, 500 kV/m", Source.Status.FROM_MEMORY);
    static final Source WOOD = Source.standard(
            "IEEE Std 1410", "critical flashover of a wood pole alone, wet, 330 kV/m", Source.Status.FROM_MEMORY);

    private static final Source METAL = Source.commonPractice(
            "concrete and steel poles add nothing to the impulse strength; counted is the way to their metal alone");
    private static final Source COVER_SOURCE = Source.commonPractice("concrete cover of the reinforcement of a pole");
    /** Concrete over the reinforcement where it is not described [m]. */
    private static final double COVER = 0.025;

    /** The volt–time curve of an air gap. */
    static final Source VOLT_TIME = Source.publication(
            "M. Darveniza, F. Popolansky, E. R. Whitehead, Electra 41 (1975) 39-69",
            "volt-time curve 400 + 710 / t^0.75 kV/m, t in us, full standard impulses of 0.5 us to 16 us",
            Source.Status.FROM_MEMORY);

    /** Impulse strength of air along a gap [V/m]. */
    static final double AIR_STRENGTH = 500e3;
    /** Impulse strength along the surface of a wooden pole, wet [V/m]. */
    static final double WOOD_STRENGTH = 330e3;
    /** Arc over an air gap after breakdown [Ω]; small against every impedance beside it. */
    static final double ARC = 1;

    /** The gaps of a pole: main earth to control cable and to cubicle, tank to cubicle and cubicle to ground over the wood or to the metal of a conducting pole. */
    static List<PoleGap> of(Site site, PoleCircuit.Built built, Inputs in) throws MissingInput {
        String lead = leadNode(built.circuit(), built.geometry().cubicleHeight());
        double separation = built.geometry().separation();
        String air = "voltage from the main earth across the separation against the impulse strength of air, 500 kV/m";
        List<PoleGap> gaps = new ArrayList<>();
        gaps.add(new PoleGap("lead-cable", PoleCircuit.CORE_END, lead, separation, AIR_STRENGTH, air, AIR, true));
        gaps.add(new PoleGap(
                "lead-cubicle",
                EarthPaths.CUBICLE,
                lead,
                cubicleDistance(site, separation, in),
                AIR_STRENGTH,
                air,
                AIR,
                true));
        metal(site, built, in, gaps);
        Pole pole = site.pole();
        double run = built.geometry().tankHeight() - built.geometry().cubicleHeight();
        if (pole != null && pole.material() == PoleMaterial.WOOD && run > 0) {
            gaps.add(new PoleGap(
                    "pole-surface",
                    EarthPaths.TANK,
                    EarthPaths.CUBICLE,
                    run,
                    WOOD_STRENGTH,
                    "voltage from tank to cubicle along the wood against its wet impulse strength, 330 kV/m",
                    WOOD,
                    false));
        }
        if (pole != null
                && pole.material() == PoleMaterial.WOOD
                && built.geometry().cubicleHeight() > 0) {
            gaps.add(new PoleGap(
                    "cubicle-ground",
                    EarthPaths.CUBICLE,
                    Circuit.REFERENCE,
                    built.geometry().cubicleHeight(),
                    WOOD_STRENGTH,
                    "voltage from cubicle to remote earth against the wet impulse strength of the wood below it, 330 kV/m;"
                            + " high, since the ground at the pole rises too",
                    WOOD,
                    false));
        }
        return gaps;
    }

    /**
     * A conducting pole bears nothing along its surface: what insulates is the concrete cover or the clearance of an
     * insulated mounting, and the arc runs on in the metal.
     */
    private static void metal(Site site, PoleCircuit.Built built, Inputs in, List<PoleGap> gaps) throws MissingInput {
        Pole pole = site.pole();
        List<String> nodes = built.circuit().nodes();
        if (pole == null || !pole.conducts() || !nodes.contains(SecondPaths.POLE_AT_CUBICLE)) {
            return;
        }
        boolean concrete = pole.material() == PoleMaterial.CONCRETE;
        if (!concrete && pole.mountingClearance() == null) {
            // Bolted to it, hence joined to it; the circuit says so in its notes.
            return;
        }
        double clearance =
                in.orElse(pole.mountingClearance(), "pole.mounting-clearance", COVER, Dimension.LENGTH, COVER_SOURCE);
        String words = concrete
                ? " through the concrete cover to the reinforcement, counted as air, 500 kV/m; along concrete nothing insulates"
                : " over the clearance of its mounting to the steel of the pole, 500 kV/m; along steel nothing insulates";
        if (nodes.contains(SecondPaths.POLE_TOP)) {
            gaps.add(new PoleGap(
                    "tank-pole",
                    EarthPaths.TANK,
                    SecondPaths.POLE_TOP,
                    clearance,
                    AIR_STRENGTH,
                    "voltage from the tank" + words,
                    METAL,
                    false));
        }
        gaps.add(new PoleGap(
                "pole-surface",
                EarthPaths.CUBICLE,
                SecondPaths.POLE_AT_CUBICLE,
                clearance,
                AIR_STRENGTH,
                "voltage from the cubicle" + words,
                METAL,
                false));
    }

    /** From the head of an antenna whose bracket is not bonded: down the wood to the tank, or to the metal of the pole. */
    static Optional<PoleGap> ofAntenna(Site site, PoleCircuit.Built built, Inputs in) throws MissingInput {
        List<String> nodes = built.circuit().nodes();
        Pole pole = site.pole();
        Antenna antenna = site.antenna();
        if (pole == null || antenna == null || !nodes.contains(StruckMetal.ANTENNA_HEAD)) {
            return Optional.empty();
        }
        double way =
                in.need(antenna.height(), "antenna.height") - built.geometry().tankHeight();
        if (!pole.conducts()) {
            return way > 0
                    ? Optional.of(new PoleGap(
                            "antenna-tank",
                            StruckMetal.ANTENNA_HEAD,
                            EarthPaths.TANK,
                            way,
                            WOOD_STRENGTH,
                            "voltage from the antenna's bracket to the tank along the wood against its wet impulse strength,"
                                    + " 330 kV/m",
                            WOOD,
                            false))
                    : Optional.empty();
        }
        String metal = nodes.contains(StruckMetal.POLE_HEAD)
                ? StruckMetal.POLE_HEAD
                : nodes.contains(SecondPaths.POLE_TOP) ? SecondPaths.POLE_TOP : EarthPaths.TANK;
        return Optional.of(new PoleGap(
                "antenna-pole",
                StruckMetal.ANTENNA_HEAD,
                metal,
                in.orElse(pole.mountingClearance(), "pole.mounting-clearance", COVER, Dimension.LENGTH, COVER_SOURCE),
                AIR_STRENGTH,
                "voltage from the antenna's bracket to the metal of the pole, counted as air, 500 kV/m",
                METAL,
                false));
    }

    /** The cubicle stands as far from the main earth as its tee is long; where no tee is described, as the cable. */
    private static double cubicleDistance(Site site, double separation, Inputs in) throws MissingInput {
        Cubicle cubicle = site.cubicle();
        return cubicle == null || cubicle.teeLength() == null
                ? separation
                : in.need(cubicle.teeLength(), "cubicle.tee-length");
    }

    /** The node of the main earth at the cubicle's height. */
    static String leadNode(Circuit circuit, double cubicleHeight) {
        if (circuit.nodes().contains(CablePath.LEAD_AT_CUBICLE)) {
            return CablePath.LEAD_AT_CUBICLE;
        }
        // Where a declared segment ends just there, its own node is the place.
        String joint = EarthPathReader.leadNodeAt(cubicleHeight);
        if (circuit.nodes().contains(joint)) {
            return joint;
        }
        return circuit.nodes().contains(EarthPaths.TEE) ? EarthPaths.TEE : EarthPaths.TANK;
    }

    double strength() {
        return perMetre * distance;
    }

    /** Peak of the voltage across the gap while nothing flashes over [V]. */
    double prospective(TransientSolution solution) {
        return from.equals(to) ? 0 : Math.abs(solution.voltage(from, to).peak().value());
    }

    /** Whether the prospective voltage ever reaches the strength by the volt–time curve. */
    boolean reachesWithTimeLag(TransientSolution prospective) {
        Breakdown law = withTimeLag();
        Waveform voltage = prospective.voltage(from, to);
        for (int k = 1; k < voltage.size(); k++) {
            if (Math.abs(voltage.value(k)) >= law.strength(voltage.time(k))) {
                return true;
            }
        }
        return false;
    }

    private Breakdown withTimeLag() {
        return air ? new Breakdown.VoltTime(distance) : new Breakdown.Level(strength());
    }

    /** The arc strikes at the lasting strength, without time lag: the earliest moment at which it can. */
    void addTo(Circuit.Builder circuit) {
        circuit.gap(branch(), from, to, new Breakdown.Level(strength()), ARC);
    }

    /** The same by the volt–time curve, where there is one for the medium. */
    void addWithTimeLag(Circuit.Builder circuit) {
        circuit.gap(branch(), from, to, withTimeLag(), ARC);
    }

    String branch() {
        return "gap " + key;
    }
}
