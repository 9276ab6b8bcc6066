package earthing.report.figure;

import static earthing.report.figure.PoleElevation.nominal;
import static earthing.report.figure.PoleElevation.text;
import static earthing.report.figure.PoleElevation.word;

import earthing.report.markup.Markup;
import earthing.site.Antenna;
import earthing.site.HighVoltageCable;
import earthing.site.LowVoltageTransformer;
import earthing.site.Neighbour;
import earthing.site.ReturnWire;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.site.StayAnchor;
import earthing.site.YesNo;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What else hangs on the pole or stands near it and could lead a current or carry a potential. */
final class Attachments {

    private static final double FACE = 429;
    private static final double EARTH = 470;
    private static final double WEST = 370;

    private final Site site;
    private final Markup svg;
    private final double ground;
    private final double scale;
    private final LabelColumn left;
    private final LabelColumn right;

    Attachments(Site site, Markup svg, double ground, double scale, LabelColumn left, LabelColumn right) {
        this.site = site;
        this.svg = svg;
        this.ground = ground;
        this.scale = scale;
        this.left = left;
        this.right = right;
    }

    /** Draws them; equipment without a height of its own hangs below the tank. */
    void draw(double tankHeight, double cubicleHeight) {
        for (int i = 0; i < site.stays().size(); i++) {
            stay(site.stays().get(i), 330 - 8.0 * i);
        }
        if (site.antenna() != null) {
            antenna(site.antenna());
        }
        if (site.system().neutral().conductor() != null) {
            wire(site.system().neutral().conductor(), "neutral conductor", tankHeight * 0.88);
        }
        if (site.system().shieldWire() != null) {
            wire(site.system().shieldWire(), "shield wire", tankHeight * 1.1);
        }
        if (site.cubicle() != null && site.cubicle().operatorMat() != null) {
            right.add("operator's mat, bonded to the earth of the cubicle", 520, ground);
        }
        if (site.hvCable() != null) {
            cable(site.hvCable(), tankHeight * 0.94);
        }
        if (site.lvTransformer() != null) {
            transformer(site.lvTransformer(), tankHeight * 0.72);
        }
        if (site.auxiliarySupply() != null) {
            right.add(
                    "auxiliary supply: " + word(site.auxiliarySupply().kind()) + ", earth reference: "
                            + word(site.auxiliarySupply().earthReference()),
                    576,
                    y(cubicleHeight) - 12);
        }
        for (Neighbour neighbour : site.neighbours()) {
            right.add("neighbour: " + neighbour.name() + ", " + text(neighbour.distance()) + " away", 620, ground);
        }
        site.otherEquipment()
                .forEach(equipment -> right.add(
                        equipment.name() + ", " + ElevationWords.earthed(equipment.earthedAt()),
                        556,
                        y(tankHeight) - 6));
    }

    private double y(double metres) {
        return ground - metres * scale;
    }

    private static String anchor(Stay stay) {
        StayAnchor anchor = stay.anchor();
        if (anchor == null) {
            return stay.anchorResistance() == null ? "" : ", anchor of " + text(stay.anchorResistance());
        }
        return ", anchor rod " + text(anchor.rodLength())
                + (anchor.plateDiameter() == null ? "" : ", plate " + text(anchor.plateDiameter()));
    }

    private void stay(Stay stay, double foot) {
        if (!stay.topHeight().isKnown()) {
            left.add(stay.name() + ": height unknown", foot, ground);
            return;
        }
        double top = y(stay.topHeight().nominal());
        Draw.line(svg, FACE, top, foot, ground, 1.2, "6 2 1 2");
        left.add(
                stay.name() + ", insulator: " + word(stay.insulated()) + bonded(stay.bondedToMainEarth())
                        + anchor(stay),
                foot + (FACE - foot) * 0.25,
                ground + (top - ground) * 0.25);
    }

    private static String bonded(@Nullable YesNo answer) {
        return answer == null ? "" : ", bonded to the main earth: " + word(answer);
    }

    private void antenna(Antenna antenna) {
        if (!antenna.height().isKnown()) {
            return;
        }
        double tip = y(antenna.height().nominal());
        Draw.line(svg, 440, tip + 16, 440, tip, 1.5, "");
        Draw.path(svg, "M432 " + Draw.n(tip) + "L440 " + Draw.n(tip + 8) + "L448 " + Draw.n(tip), 1.5, "");
        left.add(
                "antenna at " + text(antenna.height()) + ", suppressor: " + word(antenna.suppressor())
                        + (antenna.feederSeparation() == null
                                ? ""
                                : ", feeder " + text(antenna.feederSeparation()) + " from the main earth"),
                440,
                tip + 8);
    }

    private void wire(ReturnWire neutral, String words, double otherwise) {
        double at = y(nominal(neutral.bondHeight(), otherwise));
        Draw.line(svg, WEST, at, FACE, at, 1.5, "16 5");
        if (neutral.bondedToMainEarth() == YesNo.YES) {
            Draw.line(svg, FACE, at, EARTH, at, 1.5, "16 5");
            svg.empty("circle", "cx", Draw.n(EARTH), "cy", Draw.n(at), "r", "4", "fill", "currentColor");
        }
        left.add(
                words
                        + (neutral.bondHeight() == null ? "" : " at " + text(neutral.bondHeight()))
                        + bonded(neutral.bondedToMainEarth()),
                WEST + 8,
                at);
    }

    private void cable(HighVoltageCable cable, double from) {
        Draw.path(svg, "M419 " + Draw.n(y(from)) + "V" + Draw.n(ground + 10) + "H320", 2, "8 3 2 3 2 3");
        left.add("high-voltage cable, screen " + ElevationWords.earthed(cable.screenEarthedAt()), 419, y(from * 0.5));
    }

    private void transformer(LowVoltageTransformer transformer, double at) {
        Draw.box(svg, 396, y(at) - 24, 33, 30, "0.1");
        left.add(
                "distribution transformer, low-voltage neutral joined to the main earth: "
                        + word(transformer.neutralJoinedToMainEarth()) + ", its electrode here: "
                        + Objects.requireNonNullElse(transformer.electrode(), "none"),
                398,
                y(at) - 9);
    }
}
