package earthing.study;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.ControlCable;
import earthing.site.Cubicle;
import earthing.site.Electrode;
import earthing.site.ElectrodeModel;
import earthing.site.MainEarth;
import earthing.site.Pole;
import earthing.site.Screen;
import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.Surges;
import earthing.site.Tank;
import earthing.site.TestedArrangement;
import earthing.site.YesNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The site with one thing changed, so that every arrangement runs through the same code. */
final class SiteVariant {

    private SiteVariant() {}

    /** The site with the cubicle earthed otherwise; an own electrode is assumed where none is described. */
    static Site arranged(Site site, Arrangement arrangement, Inputs inputs) throws MissingInput {
        Cubicle cubicle = site.cubicle();
        if (cubicle == null) {
            throw new MissingInput("the file describes no cubicle", "cubicle");
        }
        boolean own = arrangement == Arrangement.SEPARATE || arrangement == Arrangement.BOTH;
        List<Electrode> electrodes = site.electrodes();
        String electrode = cubicle.electrode();
        if (own && electrode == null) {
            if (cubicle.earth() == arrangement.earth()) {
                throw new MissingInput("the cubicle's own electrode is not named", "cubicle.electrode");
            }
            Electrode main = electrode(site, EarthPaths.mainElectrode(site).orElse(""))
                    .orElseThrow(() -> new MissingInput("the file describes no electrode", "electrodes"));
            Electrode assumed = OwnElectrode.assumed(site, main, inputs);
            electrodes = new ArrayList<>(electrodes);
            electrodes.add(assumed);
            electrode = assumed.name();
        }
        return with(
                site,
                site.tank(),
                site.mainEarth(),
                new Cubicle(
                        cubicle.height(),
                        arrangement.earth(),
                        cubicle.teeLength(),
                        cubicle.tee(),
                        own ? electrode : null,
                        cubicle.ownLead(),
                        cubicle.ownLeadOffset(),
                        cubicle.capacitanceToEarth(),
                        cubicle.capacitanceToCable(),
                        cubicle.reach(),
                        cubicle.operatorMat(),
                        cubicle.otherPaths()),
                site.controlCable(),
                electrodes);
    }

    /** The site with the screen of the control cable bonded otherwise; a screen is assumed where there is none. */
    static Site screened(Site site, ScreenBond bond, Inputs inputs) throws MissingInput {
        ControlCable cable = site.controlCable();
        if (cable == null) {
            throw new MissingInput("the file describes no control cable", "control-cable");
        }
        Screen screen = cable.screen();
        Screen changed = screen == null
                ? new Screen(bond, null, null, null, null)
                : new Screen(bond, screen.area(), screen.material(), screen.tankBondLead(), screen.cubicleBondLead());
        if (screen == null || screen.bond() == ScreenBond.ABSENT) {
            inputs.choice(
                    "control-cable.screen",
                    "for the comparison of screen bonds: a copper screen of 4 mm2, all-round glands",
                    Source.tool("shows what a screen would do"));
        }
        return with(
                site,
                site.tank(),
                site.mainEarth(),
                site.cubicle(),
                new ControlCable(
                        cable.separation(),
                        cable.length(),
                        cable.routeLength(),
                        cable.dripLoop(),
                        cable.entryCurve(),
                        cable.coiled(),
                        cable.diameter(),
                        cable.cores(),
                        cable.coreDiameter(),
                        changed,
                        cable.insulationLevel()),
                site.electrodes());
    }

    /**
     * The site's own model in the declared tested arrangement: shared single earth, tested separation, and a run between
     * tank and cubicle that uses up the tested length as the site's run uses up its own.
     */
    static Site asTested(Site site, TestedArrangement tested, Inputs in) throws MissingInput {
        Site shared = screened(arranged(site, Arrangement.SHARED, in), ScreenBond.NONE, in);
        ControlCable cable = shared.controlCable();
        Tank tank = site.tank();
        Cubicle cubicle = site.cubicle();
        MainEarth main = site.mainEarth();
        if (cable == null || tank == null || cubicle == null || main == null) {
            throw new MissingInput("tank, cubicle, control cable and main earth have to be described", "tank");
        }
        double foot = in.need(cubicle.height(), "cubicle.height");
        double run = in.need(tank.height(), "tank.height") - foot;
        Measure own = cable.length();
        double surplus = own != null && own.isKnown() ? Math.max(0, own.nominal() - run) : 0;
        double testedRun = in.need(tested.cableLength(), "tested-arrangement.cable-length") - surplus;
        if (!(testedRun > 0)) {
            throw new MissingInput(
                    "the tested cable is shorter than what this site's cable spends on loops and curves",
                    "tested-arrangement.cable-length");
        }
        Tank raised = new Tank(
                Measure.of(Dimension.LENGTH, foot + testedRun),
                tank.impulseLevel(),
                tank.choppedWaveLevel(),
                tank.handleHeight(),
                tank.handleBonded(),
                tank.switchState());
        ControlCable spaced = spaced(cable, tested.separation());
        MainEarth plain = new MainEarth(
                main.conductor(),
                main.offset(),
                List.of(),
                main.joint(),
                main.guardHeight(),
                main.guardVoltage(),
                main.electrode(),
                null);
        return with(shared, raised, plain, shared.cubicle(), spaced, shared.electrodes());
    }

    /** The site with the control cable at another distance from the main earth. */
    static Site separated(Site site, double separation) throws MissingInput {
        ControlCable cable = site.controlCable();
        if (cable == null) {
            throw new MissingInput("the file describes no control cable", "control-cable");
        }
        return with(
                site,
                site.tank(),
                site.mainEarth(),
                site.cubicle(),
                spaced(cable, Measure.of(Dimension.LENGTH, separation)),
                site.electrodes());
    }

    private static ControlCable spaced(ControlCable cable, Measure separation) {
        return new ControlCable(
                separation,
                cable.length(),
                cable.routeLength(),
                cable.dripLoop(),
                cable.entryCurve(),
                cable.coiled(),
                cable.diameter(),
                cable.cores(),
                cable.coreDiameter(),
                cable.screen(),
                cable.insulationLevel());
    }

    /** The site with a tee of another length. */
    static Site teed(Site site, double length) throws MissingInput {
        Cubicle cubicle = site.cubicle();
        if (cubicle == null) {
            throw new MissingInput("the file describes no cubicle", "cubicle");
        }
        Cubicle changed = new Cubicle(
                cubicle.height(),
                cubicle.earth(),
                Measure.of(Dimension.LENGTH, length),
                cubicle.tee(),
                cubicle.electrode(),
                cubicle.ownLead(),
                cubicle.ownLeadOffset(),
                cubicle.capacitanceToEarth(),
                cubicle.capacitanceToCable(),
                cubicle.reach(),
                cubicle.operatorMat(),
                cubicle.otherPaths());
        return with(site, site.tank(), site.mainEarth(), changed, site.controlCable(), site.electrodes());
    }

    /** The site with a conducting pole bonded to the main earth or not. */
    static Site poleBonded(Site site, YesNo bonded) throws MissingInput {
        Pole pole = site.pole();
        if (pole == null) {
            throw new MissingInput("the file describes no pole", "pole");
        }
        Pole changed = new Pole(
                pole.material(),
                pole.height(),
                pole.burial(),
                pole.diameter(),
                pole.buttContact(),
                pole.foundation(),
                bonded,
                pole.mountingClearance());
        return with(
                site,
                site.soil(),
                changed,
                site.surges(),
                site.tank(),
                site.mainEarth(),
                site.cubicle(),
                site.controlCable(),
                site.electrodes());
    }

    /** The site with the inductances counted with their images in the earth or without. */
    static Site imaged(Site site, YesNo images) {
        Surges surges = site.surges();
        Surges changed = surges == null
                ? new Surges(null, List.of(), null, null, null, null, images, null, null, null)
                : new Surges(
                        surges.current(),
                        surges.waves(),
                        surges.groundFlashDensity(),
                        surges.exposedLineLength(),
                        surges.shieldingFactor(),
                        surges.inducedDistance(),
                        images,
                        surges.ownWave(),
                        surges.percentile(),
                        surges.electrodeModel());
        return surged(site, changed);
    }

    /** The site with another model of the electrodes in the surge circuit. */
    static Site modelled(Site site, ElectrodeModel model) {
        Surges surges = site.surges();
        return surged(
                site,
                surges == null
                        ? new Surges(null, List.of(), null, null, null, null, null, null, null, model)
                        : new Surges(
                                surges.current(),
                                surges.waves(),
                                surges.groundFlashDensity(),
                                surges.exposedLineLength(),
                                surges.shieldingFactor(),
                                surges.inducedDistance(),
                                surges.earthImages(),
                                surges.ownWave(),
                                surges.percentile(),
                                model));
    }

    private static Site surged(Site site, Surges surges) {
        return with(
                site,
                site.soil(),
                site.pole(),
                surges,
                site.tank(),
                site.mainEarth(),
                site.cubicle(),
                site.controlCable(),
                site.electrodes());
    }

    static Optional<Electrode> electrode(Site site, String name) {
        return site.electrodes().stream().filter(e -> e.name().equals(name)).findFirst();
    }

    /** The site with another description of its ground. */
    static Site grounded(Site site, Soil soil) {
        return with(
                site,
                soil,
                site.pole(),
                site.surges(),
                site.tank(),
                site.mainEarth(),
                site.cubicle(),
                site.controlCable(),
                site.electrodes());
    }

    private static Site with(
            Site site,
            @Nullable Tank tank,
            @Nullable MainEarth main,
            @Nullable Cubicle cubicle,
            @Nullable ControlCable cable,
            List<Electrode> electrodes) {
        return with(site, site.soil(), site.pole(), site.surges(), tank, main, cubicle, cable, electrodes);
    }

    private static Site with(
            Site site,
            @Nullable Soil soil,
            @Nullable Pole pole,
            @Nullable Surges surges,
            @Nullable Tank tank,
            @Nullable MainEarth main,
            @Nullable Cubicle cubicle,
            @Nullable ControlCable cable,
            List<Electrode> electrodes) {
        return new Site(
                site.fileVersion(),
                site.site(),
                site.system(),
                site.protection(),
                soil,
                pole,
                tank,
                site.line(),
                site.arresters(),
                site.otherEquipment(),
                main,
                electrodes,
                cubicle,
                cable,
                site.testedArrangement(),
                site.stays(),
                site.hvCable(),
                site.lvTransformer(),
                site.auxiliarySupply(),
                site.antenna(),
                site.neighbours(),
                surges,
                site.criteria(),
                site.measurements(),
                site.expect(),
                site.uncertainty());
    }
}
