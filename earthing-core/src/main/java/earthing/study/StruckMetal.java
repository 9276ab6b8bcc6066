package earthing.study;

import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
import earthing.network.Circuit;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.Antenna;
import earthing.site.AntennaSuppressor;
import earthing.site.Pole;
import earthing.site.PoleMaterial;
import earthing.site.Site;
import earthing.site.Stay;
import java.util.List;

/**
 * What stands above the tank and is struck: the metal of a conducting pole up to its top, the head of an antenna with its
 * feeder. It is joined to the members that are there already.
 */
final class StruckMetal {

    /** Top of a conducting pole's metal. */
    static final String POLE_HEAD = "top of the pole";
    /** Head of an antenna whose bracket is not bonded. */
    static final String ANTENNA_HEAD = "antenna head";
    /** Branch of the feeder of an antenna. */
    static final String FEEDER = "antenna feeder screen";
    /** Branch of the lead of a suppressor that is not in the cubicle's wall. */
    static final String SUPPRESSOR_LEAD = "suppressor lead";

    private static final Source LEAD = Source.commonPractice(
            "1 uH/m of a single lead; half a metre from a loose suppressor to the cubicle's wall");
    private static final double LOOSE_LEAD = 0.5e-6;

    private final Site site;
    private final PoleGeometry geometry;
    private final Inputs in;
    private final List<PoleCircuit.Piece> pieces;
    private final Circuit.Builder circuit;
    private final List<String> notes;

    StruckMetal(
            Site site,
            PoleGeometry geometry,
            Inputs in,
            List<PoleCircuit.Piece> pieces,
            Circuit.Builder circuit,
            List<String> notes) {
        this.site = site;
        this.geometry = geometry;
        this.in = in;
        this.pieces = pieces;
        this.circuit = circuit;
        this.notes = notes;
    }

    /** The node that the stroke hits. */
    String node(PoleCircuit.Strike strike) throws MissingInput {
        String poleHead = poleHead();
        if (strike == PoleCircuit.Strike.ANTENNA) {
            return antenna(poleHead);
        }
        return poleHead.isEmpty() ? highestEarthed() : poleHead;
    }

    /** The top of the pole's metal, joined to what of it is in the circuit; empty where nothing of it is. */
    private String poleHead() throws MissingInput {
        Pole pole = site.pole();
        if (pole == null || !pole.conducts()) {
            return "";
        }
        List<PoleCircuit.Piece> wall = pieces.stream()
                .filter(p -> p.to().equals(SecondPaths.POLE_AT_CUBICLE))
                .toList();
        if (wall.isEmpty()) {
            notes.add(
                    "the pole's metal has no contact with the soil at this bound: a stroke to its top enters at the tank");
            return "";
        }
        String below = wall.get(0).from();
        double top = in.need(pole.height(), "pole.height");
        double rise = top - geometry.tankHeight();
        if (!(rise > wall.get(0).axis().radius())) {
            return below;
        }
        int number = 0;
        for (PoleCircuit.Piece wire : wall) {
            Point foot = wire.axis().axis().start();
            number++;
            String name = wall.size() == 1
                    ? SecondPaths.POLE + "metal above tank"
                    : wire.name().substring(0, wire.name().lastIndexOf(' ')) + " above tank " + number;
            pieces.add(new PoleCircuit.Piece(
                    name,
                    POLE_HEAD,
                    below,
                    RoundConductor.between(
                            new Point(foot.x(), foot.y(), top),
                            foot,
                            wire.axis().radius()),
                    0));
        }
        return POLE_HEAD;
    }

    /** On a pole that does not conduct: the highest of tank, heads of bonded stays and bracket of a bonded antenna. */
    private String highestEarthed() throws MissingInput {
        String highest = EarthPaths.TANK;
        double height = geometry.tankHeight();
        for (PoleCircuit.Piece piece : pieces) {
            double top = piece.axis().axis().start().z();
            boolean above = piece.from().startsWith("head of ") || piece.name().equals(FEEDER);
            if (above && top > height) {
                highest = piece.from();
                height = top;
            }
        }
        return highest;
    }

    /**
     * Wood between the top of the pole and the metal that the current reaches through it [m]; 0 where there is none.
     *
     * @param struck node that the current enters
     */
    static double wood(Site site, String struck, PoleGeometry geometry, Inputs in) throws MissingInput {
        Pole pole = site.pole();
        if (pole == null || pole.material() != PoleMaterial.WOOD) {
            return 0;
        }
        double metal = geometry.tankHeight();
        for (Stay stay : site.stays()) {
            if (struck.equals("head of " + stay.name())) {
                metal = in.need(stay.topHeight(), "stays.top-height");
            }
        }
        if (struck.equals(SecondPaths.BRACKET) && site.antenna() != null) {
            metal = in.need(site.antenna().height(), "antenna.height");
        }
        return Math.max(0, in.need(pole.height(), "pole.height") - metal);
    }

    /** A bonded antenna is in the circuit already; else its feeder leads from the head to the cubicle alone. */
    private String antenna(String poleHead) throws MissingInput {
        Antenna antenna = site.antenna();
        if (antenna == null) {
            throw new MissingInput("the file describes no antenna", "antenna");
        }
        for (PoleCircuit.Piece piece : pieces) {
            if (piece.name().equals(FEEDER)) {
                return piece.from();
            }
        }
        if (antenna.suppressor() == AntennaSuppressor.NONE || antenna.suppressor() == AntennaSuppressor.UNKNOWN) {
            notes.add("no suppressor of the antenna is known: counted is the feeder's screen joined to the cubicle, and"
                    + " what the inner conductor carries breaks down in the radio");
        }
        double height = in.need(antenna.height(), "antenna.height");
        if (!(height > geometry.cubicleHeight())) {
            throw new MissingInput(
                    "the antenna stands no higher than the cubicle; its feeder has no run", "antenna.height");
        }
        boolean bolted = !poleHead.isEmpty()
                && site.pole() != null
                && site.pole().mountingClearance() == null
                && site.pole().material() == PoleMaterial.STEEL;
        String head = bolted ? poleHead : ANTENNA_HEAD;
        Measure distance = antenna.feederSeparation();
        double x = geometry.leadX() - in.need(distance, "antenna.feeder-separation");
        pieces.add(new PoleCircuit.Piece(
                FEEDER,
                head,
                antenna.suppressor() == AntennaSuppressor.LOOSE ? "end of the feeder" : EarthPaths.CUBICLE,
                RoundConductor.between(
                        new Point(x, 0, height), new Point(x, 0, geometry.cubicleHeight()), SecondPaths.FEEDER_RADIUS),
                0));
        if (antenna.suppressor() == AntennaSuppressor.LOOSE) {
            in.choice("antenna.suppressor", "lead of a loose suppressor 0.5 m, 0.5 uH", LEAD);
            circuit.inductor(SUPPRESSOR_LEAD, "end of the feeder", EarthPaths.CUBICLE, 0, LOOSE_LEAD);
        }
        return head;
    }
}
