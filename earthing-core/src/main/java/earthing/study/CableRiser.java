package earthing.study;

import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
import earthing.network.Circuit;
import earthing.network.LosslessLine;
import earthing.quantity.Source;
import earthing.site.EquipmentEarth;
import earthing.site.HighVoltageCable;
import earthing.site.Site;
import java.util.List;

/**
 * The screen of a high-voltage cable that comes down the pole: bonded at the tank, a conductor beside the main earth, then
 * a buried line to the earth at its far end, or as what charges it where that is open. Its surge impedance and speed are those of a usual cable.
 */
final class CableRiser {

    /** Branch of the riser, and name of the earth path. */
    static final String SCREEN = "high-voltage cable screen";
    /** Branch of the earth at the far end. */
    static final String FAR_EARTH = "far earth of the high-voltage cable";
    /** Line in the ground. */
    static final String BURIED = "buried high-voltage cable";

    private static final String FOOT = "foot of the high-voltage cable";
    private static final String FAR_END = "far end of the high-voltage cable";
    private static final Source WAVE = Source.commonPractice(
            "a buried cable screen answers a surge with some 30 ohm, on which waves travel at about half the speed of light");
    private static final Source USUAL = Source.tool("a usual single-core or three-core cable; little influence");

    /** Surge impedance of the screen to the ground [Ω]. */
    private static final double IMPEDANCE = 30;
    /** Speed of waves on it [m/s]. */
    private static final double SPEED = 1.5e8;
    /** A cable not longer than this is lumped: its travel is shorter than any front here [m]. */
    private static final double LUMPED = 50;

    private static final double RADIUS = 0.02;
    /** A far earth without resistance is a joint [Ω]. */
    private static final double SMALLEST = 1e-3;

    private final Site site;
    private final SiteEarth earth;
    private final PoleGeometry geometry;
    private final Inputs in;
    private final List<PoleCircuit.Piece> pieces;
    private final Circuit.Builder circuit;
    private final List<String> notes;

    CableRiser(
            Site site,
            SiteEarth earth,
            PoleGeometry geometry,
            Inputs in,
            List<PoleCircuit.Piece> pieces,
            Circuit.Builder circuit,
            List<String> notes) {
        this.site = site;
        this.earth = earth;
        this.geometry = geometry;
        this.in = in;
        this.pieces = pieces;
        this.circuit = circuit;
        this.notes = notes;
    }

    /** The screen with the earth at its far end. */
    void add() throws MissingInput {
        HighVoltageCable cable = site.hvCable();
        if (cable == null) {
            return;
        }
        double far =
                in.need(cable.screenRemoteEarthResistance(), "hv-cable.screen-remote-earth-resistance", earth.bound());
        riser(cable);
        if (cable.length() == null) {
            circuit.resistor(BURIED, FOOT, Circuit.REFERENCE, IMPEDANCE);
            notes.add("the length of the high-voltage cable is not given: its screen answers a surge with its surge"
                    + " impedance, 30 ohm, whatever its far earth");
            return;
        }
        double length = in.need(cable.length(), "hv-cable.length");
        double along = cable.screenImpedance() == null
                ? 0
                : length * in.need(cable.screenImpedance(), "hv-cable.screen-impedance");
        double delay = length / SPEED;
        if (length > LUMPED) {
            circuit.line(BURIED, FOOT, FAR_END, LosslessLine.single(IMPEDANCE, delay));
            circuit.resistor(FAR_EARTH, FAR_END, Circuit.REFERENCE, Math.max(far + along, SMALLEST));
        } else {
            circuit.inductor(FAR_EARTH, FOOT, Circuit.REFERENCE, far + along, IMPEDANCE * delay);
        }
    }

    /** A screen whose far end is open leads no fault current and is no earth path, but a surge charges it. */
    void addOpen() throws MissingInput {
        HighVoltageCable cable = site.hvCable();
        boolean bonded = cable != null
                && cable.screenRemoteEarthResistance() == null
                && (cable.screenEarthedAt() == EquipmentEarth.TANK_EARTH_POINT
                        || cable.screenEarthedAt() == EquipmentEarth.MAIN_EARTH);
        if (!bonded || cable == null) {
            return;
        }
        if (cable.length() == null) {
            notes.add("the far end of the high-voltage cable's screen is open and its length is not given: what a surge"
                    + " charges it with is left out");
            return;
        }
        double delay = in.need(cable.length(), "hv-cable.length") / SPEED;
        riser(cable);
        // First the surge impedance, in the end the charge; without losses an open line would ring for ever.
        circuit.resistor(BURIED, FOOT, FAR_END, IMPEDANCE);
        circuit.capacitor("charge of the " + BURIED, FAR_END, Circuit.REFERENCE, delay / IMPEDANCE);
    }

    /** Down the pole on the side between main earth and stays, from the tank to the ground. */
    private void riser(HighVoltageCable cable) throws MissingInput {
        in.choice("hv-cable", "its screen answers a surge with 30 ohm at 150 m/us", WAVE);
        in.choice("hv-cable", "the riser stands at the pole's surface, 40 mm thick over its screen", USUAL);
        double perLength =
                cable.screenImpedance() == null ? 0 : in.need(cable.screenImpedance(), "hv-cable.screen-impedance");
        double y = geometry.leadX();
        pieces.add(new PoleCircuit.Piece(
                SCREEN,
                EarthPaths.TANK,
                FOOT,
                RoundConductor.between(new Point(0, y, geometry.tankHeight()), new Point(0, y, 0), RADIUS),
                perLength * geometry.tankHeight()));
    }
}
