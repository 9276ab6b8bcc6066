package earthing.study;

import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.site.Antenna;
import earthing.site.AuxiliaryReference;
import earthing.site.AuxiliarySupply;
import earthing.site.Conductor;
import earthing.site.ControlCable;
import earthing.site.Cubicle;
import earthing.site.CubicleEarth;
import earthing.site.EarthSegment;
import earthing.site.Electrode;
import earthing.site.EquipmentEarth;
import earthing.site.HighVoltageCable;
import earthing.site.HighVoltageEquipment;
import earthing.site.Joint;
import earthing.site.LowVoltageTransformer;
import earthing.site.MainEarth;
import earthing.site.Pole;
import earthing.site.PoleMaterial;
import earthing.site.ReturnWire;
import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.site.Stay;
import earthing.site.YesNo;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads the members of the earth-path graph off a site. */
final class EarthPathReader {

    private final Site site;
    private final double tankHeight;
    private final double cubicleHeight;
    private final List<Member> members = new ArrayList<>();

    EarthPathReader(Site site) {
        this.site = site;
        this.tankHeight = site.tank() == null ? 0 : metres(site.tank().height());
        this.cubicleHeight = site.cubicle() == null ? 0 : metres(site.cubicle().height());
    }

    List<Member> read() {
        mainEarth();
        cubicle();
        cableScreen();
        pole();
        stays();
        neutral();
        otherNetworks();
        otherEquipment();
        hiddenPaths();
        for (Electrode electrode : site.electrodes()) {
            String node = EarthPaths.electrodeNode(electrode.name());
            member(node, node, EarthPaths.EARTH, 0, 0, Role.ELECTRODE, null, null, true);
        }
        return members;
    }

    private static double metres(@Nullable Measure measure) {
        return measure != null && measure.isKnown() ? measure.nominal() : 0;
    }

    private void member(
            String name,
            String from,
            String to,
            double fromHeight,
            double toHeight,
            Role role,
            @Nullable Conductor conductor,
            @Nullable Joint joint,
            boolean intact) {
        members.add(new Member(
                name,
                from,
                to,
                fromHeight,
                toHeight,
                role,
                Optional.ofNullable(conductor),
                Optional.ofNullable(joint),
                intact));
    }

    private boolean hasTee() {
        Cubicle cubicle = site.cubicle();
        return cubicle != null && (cubicle.earth() == CubicleEarth.SHARED || cubicle.earth() == CubicleEarth.BOTH);
    }

    private String mainElectrodeNode() {
        return EarthPaths.mainElectrode(site).map(EarthPaths::electrodeNode).orElse("main earth's lower end");
    }

    private void mainEarth() {
        MainEarth main = site.mainEarth();
        if (main == null) {
            return;
        }
        // The lead is cut at every declared joint and at the tee; the pieces between the cuts are the members.
        List<EarthSegment> declared = main.segments();
        if (declared.isEmpty()) {
            leadPiece("lead", tankHeight, 0, main.conductor(), main.joint(), true);
        }
        for (EarthSegment segment : declared) {
            Conductor conductor = segment.conductor() == null ? main.conductor() : segment.conductor();
            double foot = metres(segment.toHeight());
            Joint joint = foot > 0 ? segment.joint() : segment.joint() == null ? main.joint() : segment.joint();
            leadPiece(
                    segment.name(), metres(segment.fromHeight()), foot, conductor, joint, segment.intact() != YesNo.NO);
        }
        if (main.secondLeadElectrode() != null) {
            member(
                    "second lead",
                    EarthPaths.TANK,
                    EarthPaths.electrodeNode(main.secondLeadElectrode()),
                    tankHeight,
                    0,
                    Role.PARALLEL,
                    main.conductor(),
                    null,
                    true);
        }
    }

    private void leadPiece(
            String name, double top, double foot, Conductor conductor, @Nullable Joint joint, boolean intact) {
        if (hasTee() && foot < cubicleHeight && cubicleHeight < top) {
            String upper = name.equals("lead") ? "upper lead" : name + " above the tee";
            String lower = name.equals("lead") ? "lower lead" : name + " below the tee";
            member(upper, leadNode(top), EarthPaths.TEE, top, cubicleHeight, Role.MAIN_EARTH, conductor, null, intact);
            member(
                    lower,
                    EarthPaths.TEE,
                    leadNode(foot),
                    cubicleHeight,
                    foot,
                    Role.MAIN_EARTH,
                    conductor,
                    joint,
                    intact);
        } else {
            member(name, leadNode(top), leadNode(foot), top, foot, Role.MAIN_EARTH, conductor, joint, intact);
        }
    }

    private String leadNode(double height) {
        if (height >= tankHeight) {
            return EarthPaths.TANK;
        }
        if (height <= 0) {
            return mainElectrodeNode();
        }
        if (hasTee() && height == cubicleHeight) {
            return EarthPaths.TEE;
        }
        return leadNodeAt(height);
    }

    /** Node of a joint of the main earth where no tee leaves it. */
    static String leadNodeAt(double height) {
        return "main earth at " + Numbers.full(height) + " m";
    }

    private void cubicle() {
        Cubicle cubicle = site.cubicle();
        if (cubicle == null) {
            return;
        }
        if (hasTee()) {
            Conductor conductor = cubicle.tee() != null || site.mainEarth() == null
                    ? cubicle.tee()
                    : site.mainEarth().conductor();
            member(
                    "tee",
                    EarthPaths.TEE,
                    EarthPaths.CUBICLE,
                    cubicleHeight,
                    cubicleHeight,
                    Role.TEE,
                    conductor,
                    null,
                    true);
        }
        boolean own = cubicle.earth() == CubicleEarth.SEPARATE || cubicle.earth() == CubicleEarth.BOTH;
        if (own && cubicle.electrode() != null) {
            member(
                    "cubicle's own lead",
                    EarthPaths.CUBICLE,
                    EarthPaths.electrodeNode(cubicle.electrode()),
                    cubicleHeight,
                    0,
                    Role.OWN_LEAD,
                    cubicle.ownLead(),
                    null,
                    true);
        }
        for (String other : cubicle.otherPaths()) {
            unintended(other, EarthPaths.CUBICLE, EarthPaths.EARTH, cubicleHeight, 0);
        }
    }

    private void cableScreen() {
        ControlCable cable = site.controlCable();
        if (cable != null && cable.screen() != null && cable.screen().bond() == ScreenBond.BOTH) {
            member(
                    "cable screen",
                    EarthPaths.TANK,
                    EarthPaths.CUBICLE,
                    tankHeight,
                    cubicleHeight,
                    Role.SCREEN,
                    null,
                    null,
                    true);
        }
    }

    private void pole() {
        Pole pole = site.pole();
        if (pole != null
                && (pole.material() == PoleMaterial.STEEL || pole.material() == PoleMaterial.CONCRETE)
                && pole.bondedToMainEarth() == YesNo.YES) {
            parallel("pole " + word(pole.material()), EarthPaths.TANK, EarthPaths.EARTH, tankHeight);
        }
    }

    private void stays() {
        for (Stay stay : StayAnchors.bonded(site)) {
            member(
                    stay.name(),
                    EarthPaths.TANK,
                    EarthPaths.EARTH,
                    metres(stay.topHeight()),
                    0,
                    Role.PARALLEL,
                    stay.conductor(),
                    null,
                    true);
        }
    }

    private void neutral() {
        ReturnWire neutral = site.system().neutral().conductor();
        if (neutral != null && neutral.bondedToMainEarth() == YesNo.YES) {
            parallel("line neutral", EarthPaths.TANK, EarthPaths.EARTH, metres(neutral.bondHeight()));
        }
        ReturnWire shield = site.system().shieldWire();
        if (shield != null && shield.bondedToMainEarth() == YesNo.YES) {
            parallel("shield wire", EarthPaths.TANK, EarthPaths.EARTH, metres(shield.bondHeight()));
        }
    }

    private void otherNetworks() {
        LowVoltageTransformer transformer = site.lvTransformer();
        if (transformer != null && transformer.neutralJoinedToMainEarth() == YesNo.YES) {
            parallel("low-voltage neutral", EarthPaths.TANK, EarthPaths.EARTH, tankHeight);
        }
        HighVoltageCable cable = site.hvCable();
        if (cable != null && cable.screenRemoteEarthResistance() != null) {
            equipment(CableRiser.SCREEN, cable.screenEarthedAt());
        }
    }

    private void otherEquipment() {
        for (HighVoltageEquipment equipment : site.otherEquipment()) {
            if (equipment.earthedAt() == EquipmentEarth.OWN_ELECTRODE) {
                unintended(equipment.name() + " own earth", EarthPaths.TANK, EarthPaths.EARTH, tankHeight, 0);
            }
        }
    }

    private void equipment(String name, EquipmentEarth earthedAt) {
        if (earthedAt == EquipmentEarth.TANK_EARTH_POINT || earthedAt == EquipmentEarth.MAIN_EARTH) {
            parallel(name, EarthPaths.TANK, EarthPaths.EARTH, tankHeight);
        }
    }

    private void hiddenPaths() {
        AuxiliarySupply supply = site.auxiliarySupply();
        if (supply != null && supply.earthReference() == AuxiliaryReference.LV_NETWORK) {
            unintended(
                    "auxiliary supply to the low-voltage earth",
                    EarthPaths.CUBICLE,
                    EarthPaths.EARTH,
                    cubicleHeight,
                    0);
        }
        Antenna antenna = site.antenna();
        if (antenna != null && antenna.bracketBondedToMainEarth() == YesNo.YES) {
            unintended(
                    "antenna feeder screen",
                    EarthPaths.TANK,
                    EarthPaths.CUBICLE,
                    metres(antenna.height()),
                    cubicleHeight);
        }
    }

    private void parallel(String name, String from, String to, double height) {
        member(name, from, to, height, 0, Role.PARALLEL, null, null, true);
    }

    private void unintended(String name, String from, String to, double fromHeight, double toHeight) {
        member(name, from, to, fromHeight, toHeight, Role.UNINTENDED, null, null, true);
    }

    private static String word(PoleMaterial material) {
        return material == PoleMaterial.STEEL ? "steel" : "reinforcement";
    }
}
