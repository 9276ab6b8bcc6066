package earthing.report.figure;

import earthing.quantity.Measure;
import earthing.report.document.Amount;
import earthing.report.markup.Markup;
import earthing.site.ArresterEarth;
import earthing.site.ArresterSide;
import earthing.site.Arresters;
import earthing.site.Conductor;
import earthing.site.Cubicle;
import earthing.site.CubicleEarth;
import earthing.site.EarthSegment;
import earthing.site.Electrode;
import earthing.site.MainEarth;
import earthing.site.Pole;
import earthing.site.Screen;
import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.site.Tank;
import earthing.site.YesNo;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The elevation of the pole with its earth paths. Heights and depths are to scale; distances to the side are not, they
 * are written.
 */
public final class PoleElevation {

    private static final double WIDTH = 940;
    private static final double POLE = 440;
    private static final double POLE_HALF = 11;
    private static final double EARTH = 470;
    private static final double SECOND = 412;
    private static final double CABLE = 540;
    private static final double OWN = 600;
    private static final double TOP = 30;

    private final Site site;
    private final Pole pole;
    private final Tank tank;
    private final double scale;
    private final double ground;
    private final double height;
    private final LabelColumn left = new LabelColumn(296, true, 40);
    private final LabelColumn right = new LabelColumn(654, false, 38);
    private final Ground soil;

    private PoleElevation(Site site, Pole pole, Tank tank) {
        this.site = site;
        this.pole = pole;
        this.tank = tank;
        this.soil = new Ground(site);
        double top = pole.height().nominal();
        if (site.line() != null) {
            top = Math.max(top, nominal(site.line().height(), top));
        }
        if (site.antenna() != null) {
            top = Math.max(top, nominal(site.antenna().height(), top));
        }
        top += 0.6;
        double depth = soil.deepest();
        this.scale = 640 / (top + depth);
        this.ground = TOP + top * scale;
        this.height = ground + depth * scale + 16;
    }

    /**
     * Draws the elevation.
     *
     * @param site the site; its pole and tank must be described with known heights
     * @param id anchor of the figure, prefix of the anchors inside
     * @return the drawing
     * @throws IllegalArgumentException if pole or tank are absent or their heights are unknown
     */
    public static String of(Site site, String id) {
        Pole pole = site.pole();
        Tank tank = site.tank();
        if (pole == null
                || tank == null
                || !pole.height().isKnown()
                || !tank.height().isKnown()) {
            throw new IllegalArgumentException("the elevation needs the heights of pole and tank");
        }
        return new PoleElevation(site, pole, tank).draw(id);
    }

    private String draw(String id) {
        Markup svg =
                Draw.begin(id, "Elevation of the pole with its earth paths", ElevationWords.of(site), WIDTH, height);
        soil.draw(svg, ground, scale, height - 16, left);
        pole(svg);
        line(svg);
        tank(svg);
        mainEarth(svg);
        cubicle(svg);
        new Attachments(site, svg, ground, scale, left, right)
                .draw(
                        tank.height().nominal(),
                        nominal(site.cubicle() == null ? null : site.cubicle().height(), 2));
        for (Electrode electrode : site.electrodes()) {
            soil.electrode(svg, electrode, slot(electrode.name()), ground, scale, right);
        }
        Draw.line(svg, 300, ground, 650, ground, 2, "");
        left.draw(svg, TOP - 14, height);
        right.draw(svg, TOP - 14, height);
        return svg.end();
    }

    private double y(double metres) {
        return ground - metres * scale;
    }

    private double slot(String electrode) {
        Cubicle cubicle = site.cubicle();
        MainEarth main = site.mainEarth();
        if (main != null && electrode.equals(main.electrode())) {
            return EARTH;
        }
        if (cubicle != null && electrode.equals(cubicle.electrode())) {
            return OWN;
        }
        if (main != null && electrode.equals(main.secondLeadElectrode())) {
            return SECOND;
        }
        if (site.electrodes().size() == 1 || (main != null && main.electrode() == null && isFirst(electrode))) {
            return EARTH;
        }
        return 345;
    }

    private boolean isFirst(String electrode) {
        return site.electrodes().get(0).name().equals(electrode);
    }

    private void pole(Markup svg) {
        double top = y(pole.height().nominal());
        Draw.box(svg, POLE - POLE_HALF, top, 2 * POLE_HALF, y(-nominal(pole.burial(), 0)) - top, "0.08");
        left.add(
                "pole, " + word(pole.material()) + ", " + text(pole.height()) + " above ground"
                        + (pole.burial() == null ? "" : ", " + text(pole.burial()) + " buried")
                        + (pole.foundation() == null
                                ? ""
                                : ", in concrete " + text(pole.foundation().diameter()) + " thick")
                        + (pole.bondedToMainEarth() == null
                                ? ""
                                : ", bonded to the main earth: " + word(pole.bondedToMainEarth())),
                POLE - POLE_HALF,
                y(pole.height().nominal() * 0.36));
    }

    private void line(Markup svg) {
        if (site.line() != null
                && site.line().height() != null
                && site.line().height().isKnown()) {
            double wire = y(site.line().height().nominal());
            Draw.line(svg, 370, wire, 580, wire, 1.5, "");
            left.add("line conductors at " + text(site.line().height()), 378, wire);
        }
    }

    private void tank(Markup svg) {
        double terminal = y(tank.height().nominal());
        double box = Math.max(26, 0.7 * scale);
        Draw.box(svg, EARTH - 8, terminal - box, 92, box, "0.18");
        right.add("tank, earth terminal at " + text(tank.height()), EARTH + 84, terminal - box / 2);
        if (site.arresters() == null) {
            return;
        }
        arresters(svg, site.arresters(), terminal, terminal - box);
    }

    private void arresters(Markup svg, Arresters arresters, double terminal, double box) {
        boolean apart = arresters.earthedAt() == ArresterEarth.OWN_LEAD
                || arresters.earthedAt() == ArresterEarth.MAIN_EARTH
                || arresters.earthedAt() == ArresterEarth.UNKNOWN;
        double foot = apart ? box - 9 : box;
        double wire = site.line() == null
                ? foot - 26
                : Math.min(foot - 26, y(nominal(site.line().height(), 0)));
        for (int i = 0; i < 3; i++) {
            double x = EARTH + 10 + i * 28;
            Draw.line(svg, x, wire, x, foot, 1.2, "");
            Draw.box(svg, x - 4, foot - 20, 8, 14, "0.45");
        }
        if (apart) {
            Draw.line(svg, EARTH + 10, foot, EARTH + 66, foot, 1.2, "");
        }
        if (arresters.earthedAt() == ArresterEarth.OWN_LEAD) {
            Draw.path(
                    svg,
                    "M" + Draw.n(EARTH + 66) + " " + Draw.n(foot) + "H626V" + Draw.n(ground + 16),
                    2.2,
                    "12 4 3 4");
        } else if (arresters.earthedAt() == ArresterEarth.MAIN_EARTH) {
            Draw.path(
                    svg,
                    "M" + Draw.n(EARTH + 10) + " " + Draw.n(foot) + "H" + Draw.n(EARTH - 14) + "V"
                            + Draw.n(terminal + 12) + "H" + Draw.n(EARTH),
                    2.2,
                    "");
        }
        right.add(
                "surge arresters, " + side(arresters.side()) + ", " + ElevationWords.earthed(arresters.earthedAt())
                        + lead("line lead", arresters.lineLead()) + lead("earth lead", arresters.earthLead()),
                EARTH + 66,
                foot - 13);
    }

    private void mainEarth(Markup svg) {
        MainEarth main = site.mainEarth();
        if (main == null) {
            return;
        }
        double upper = tank.height().nominal();
        if (main.segments().isEmpty()) {
            Draw.line(svg, EARTH, y(upper), EARTH, soil.topOf(main.electrode(), ground, scale), 3, "");
            left.add(
                    "main earth, one unbroken conductor, " + conductor(main.conductor()) + ", "
                            + Amount.text(upper, "m") + joint(main.joint()),
                    EARTH,
                    y(upper * 0.62));
        } else {
            for (EarthSegment segment : main.segments()) {
                segment(svg, main, segment);
            }
            Draw.line(svg, EARTH, ground, EARTH, soil.topOf(main.electrode(), ground, scale), 3, "");
        }
        if (main.guardHeight() != null && nominal(main.guardHeight(), 0) > 0) {
            double guard = y(main.guardHeight().nominal());
            svg.empty(
                    "rect",
                    "x",
                    Draw.n(EARTH - 5),
                    "y",
                    Draw.n(guard),
                    "width",
                    "10",
                    "height",
                    Draw.n(ground - guard),
                    "fill",
                    "none",
                    "stroke",
                    "currentColor",
                    "stroke-dasharray",
                    "2 2");
            left.add("guard to " + text(main.guardHeight()), EARTH - 5, (guard + ground) / 2);
        }
        if (main.secondLeadElectrode() != null) {
            double terminal = y(upper);
            Draw.path(
                    svg,
                    "M" + Draw.n(EARTH - 8) + " " + Draw.n(terminal) + "H" + Draw.n(SECOND) + "V"
                            + Draw.n(soil.topOf(main.secondLeadElectrode(), ground, scale)),
                    2.2,
                    "12 4 3 4");
            left.add("SECOND LEAD to electrode " + main.secondLeadElectrode(), SECOND, y(upper * 0.8));
        }
    }

    private void segment(Markup svg, MainEarth main, EarthSegment segment) {
        if (!segment.fromHeight().isKnown() || !segment.toHeight().isKnown()) {
            left.add("main earth " + segment.name() + ": heights unknown", EARTH, y(0.2));
            return;
        }
        double from = segment.fromHeight().nominal();
        double to = segment.toHeight().nominal();
        boolean broken = segment.intact() == YesNo.NO;
        Draw.line(svg, EARTH, y(from), EARTH, y(to), broken ? 1.5 : 3, broken ? "2 6" : "");
        Conductor conductor = Objects.requireNonNullElse(segment.conductor(), main.conductor());
        if (segment.joint() != null) {
            svg.empty(
                    "circle",
                    "cx",
                    Draw.n(EARTH),
                    "cy",
                    Draw.n(y(to)),
                    "r",
                    "4.5",
                    "fill",
                    "none",
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    "1.5");
        }
        left.add(
                (broken ? "BROKEN OR MISSING: " : "") + "main earth " + segment.name() + ", " + conductor(conductor)
                        + ", " + Amount.text(from - to, "m")
                        + joint(segment.joint()),
                EARTH,
                (y(from) + y(to)) / 2);
    }

    private void cubicle(Markup svg) {
        Cubicle cubicle = site.cubicle();
        if (cubicle == null || !cubicle.height().isKnown()) {
            return;
        }
        double terminal = y(cubicle.height().nominal());
        double box = Math.max(34, 0.8 * scale);
        Draw.box(svg, CABLE - 26, terminal - box, 62, box, "0.18");
        right.add(
                "control cubicle, earth terminal at " + text(cubicle.height()) + ", earth: " + word(cubicle.earth()),
                CABLE + 36,
                terminal - box * 0.7);
        if (cubicle.earth() == CubicleEarth.SHARED || cubicle.earth() == CubicleEarth.BOTH) {
            Draw.line(svg, EARTH, terminal - 3, CABLE - 26, terminal - 3, 3, "");
            svg.empty("circle", "cx", Draw.n(EARTH), "cy", Draw.n(terminal - 3), "r", "4", "fill", "currentColor");
            right.add(
                    "tee to the main earth" + (cubicle.teeLength() == null ? "" : ", " + text(cubicle.teeLength()))
                            + (cubicle.tee() == null ? "" : ", " + conductor(cubicle.tee())),
                    CABLE - 33,
                    terminal - 3);
        }
        if (cubicle.earth() == CubicleEarth.SEPARATE || cubicle.earth() == CubicleEarth.BOTH) {
            double start = terminal;
            Draw.path(
                    svg,
                    "M" + Draw.n(CABLE + 28) + " " + Draw.n(start) + "V" + Draw.n(ground + 8) + "H" + Draw.n(OWN) + "V"
                            + Draw.n(soil.topOf(cubicle.electrode(), ground, scale)),
                    2.2,
                    "9 4");
            right.add(
                    "own lead to electrode " + Objects.requireNonNullElse(cubicle.electrode(), "(not named)")
                            + (cubicle.ownLead() == null ? "" : ", " + conductor(cubicle.ownLead())),
                    CABLE + 28,
                    (start + ground) / 2);
        }
        for (String path : cubicle.otherPaths()) {
            right.add("OTHER PATH TO EARTH: " + path, CABLE + 36, terminal - 6);
        }
        cable(svg, terminal - box);
    }

    private void cable(Markup svg, double cubicleTop) {
        if (site.controlCable() == null) {
            return;
        }
        double from = y(tank.height().nominal());
        Draw.line(svg, CABLE, from, CABLE, cubicleTop, 1.6, "");
        Draw.line(svg, CABLE + 3.5, from, CABLE + 3.5, cubicleTop, 1.6, "");
        screen(svg, from, cubicleTop);
        double middle = from + (cubicleTop - from) * 0.3;
        right.add(
                "control cable"
                        + (site.controlCable().length() == null
                                ? ""
                                : ", " + text(site.controlCable().length()))
                        + (site.controlCable().screen() == null
                                ? ", screen not described"
                                : ", screen "
                                        + ElevationWords.bond(word(
                                                site.controlCable().screen().bond()))),
                CABLE + 3.5,
                middle);
        if (site.controlCable().separation() != null) {
            double gap = from + (cubicleTop - from) * 0.62;
            Draw.line(svg, EARTH + 3, gap, CABLE - 2, gap, 0.9, "");
            Draw.line(svg, EARTH + 3, gap - 4, EARTH + 3, gap + 4, 0.9, "");
            Draw.line(svg, CABLE - 2, gap - 4, CABLE - 2, gap + 4, 0.9, "");
            right.add("separation " + text(site.controlCable().separation()) + " (cable to main earth)", 520, gap);
        }
    }

    /** A full dot where the screen is bonded, an open one where it is not. */
    private void screen(Markup svg, double tankEnd, double cubicleEnd) {
        Screen screen = site.controlCable() == null ? null : site.controlCable().screen();
        if (screen == null || screen.bond() == ScreenBond.UNKNOWN || screen.bond() == ScreenBond.ABSENT) {
            return;
        }
        boolean tankBond = screen.bond() == ScreenBond.TANK || screen.bond() == ScreenBond.BOTH;
        boolean cubicleBond = screen.bond() == ScreenBond.CUBICLE || screen.bond() == ScreenBond.BOTH;
        dot(svg, tankEnd + 7, tankBond);
        dot(svg, cubicleEnd - 7, cubicleBond);
    }

    private static void dot(Markup svg, double y, boolean full) {
        svg.empty(
                "circle",
                "cx",
                Draw.n(CABLE + 1.8),
                "cy",
                Draw.n(y),
                "r",
                "4",
                "fill",
                full ? "currentColor" : "none",
                "stroke",
                "currentColor",
                "stroke-width",
                "1.2");
    }

    private static String lead(String name, @Nullable Measure length) {
        return length == null ? "" : ", " + name + " " + text(length);
    }

    private static String joint(@Nullable Enum<?> joint) {
        return joint == null ? "" : ", joint " + word(joint);
    }

    private static String side(ArresterSide side) {
        return switch (side) {
            case BOTH -> "on both sides";
            case SOURCE, LOAD -> "on the " + word(side) + " side";
            default -> "side " + word(side);
        };
    }

    static String conductor(Conductor conductor) {
        return word(conductor.material()) + " " + text(conductor.area());
    }

    static String word(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String text(Measure measure) {
        return measure.bounds()
                .map(b -> Amount.withSymbols(b.nominal().text()).replace(" ", Amount.NO_BREAK))
                .orElse("unknown");
    }

    static double nominal(@Nullable Measure measure, double otherwise) {
        return measure != null && measure.isKnown() ? measure.nominal() : otherwise;
    }
}
