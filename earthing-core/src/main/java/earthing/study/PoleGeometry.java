package earthing.study;

import earthing.conductor.Metal;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.Conductor;
import earthing.site.ConductorMaterial;
import earthing.site.ControlCable;
import earthing.site.Cubicle;
import earthing.site.MainEarth;
import earthing.site.Pole;
import earthing.site.Screen;
import earthing.site.Site;
import earthing.site.Tank;
import org.jspecify.annotations.Nullable;

/**
 * Where the conductors of a pole are. The main earth runs vertically at a distance from the pole's axis, the control
 * cable beside it on its outer side, a lead to an electrode of the cubicle's own at right angles to both.
 *
 * @param tankHeight height of the tank's earth terminal [m]
 * @param cubicleHeight height of the cubicle's earth terminal [m]
 * @param leadX distance of the main earth from the pole's axis [m]
 * @param separation distance of the control cable from the main earth, axis to axis [m]
 * @param ownLeadOffset distance of the cubicle's own lead from the main earth [m]
 * @param teeLength length of the tee [m]
 * @param cableRadius radius of the screen [m]
 * @param coreRadius radius of a core [m]
 * @param screenArea cross-section of the screen [m²]
 * @param screenMetal material of the screen
 * @param tankBondLead length of the screen's bond lead at the tank [m], 0 for an all-round gland
 * @param cubicleBondLead length of the screen's bond lead at the cubicle [m]
 */
record PoleGeometry(
        double tankHeight,
        double cubicleHeight,
        double leadX,
        double separation,
        double ownLeadOffset,
        double teeLength,
        double cableRadius,
        double coreRadius,
        double screenArea,
        Metal screenMetal,
        double tankBondLead,
        double cubicleBondLead) {

    private static final Source FIXING = Source.tool("a lead fixed to the pole's surface, 20 mm clear");
    private static final Source TYPICAL = Source.tool("a usual control cable; little influence");
    private static final Source TEE = Source.tool("a short tee; no current flows in it while the cores are open");
    private static final Source GLAND = Source.tool("the screen's bonds are not described");

    static PoleGeometry of(Site site, Inputs in) throws MissingInput {
        Tank tank = site.tank();
        Cubicle cubicle = site.cubicle();
        ControlCable cable = site.controlCable();
        MainEarth main = site.mainEarth();
        if (tank == null) {
            throw new MissingInput("the file describes no tank", "tank");
        }
        if (cubicle == null) {
            throw new MissingInput("the file describes no cubicle", "cubicle");
        }
        if (cable == null) {
            throw new MissingInput("the file describes no control cable", "control-cable");
        }
        if (main == null) {
            throw new MissingInput("the file describes no main earth", "main-earth");
        }
        Screen screen = cable.screen();
        double cableRadius =
                in.orElse(cable.diameter(), "control-cable.diameter", 0.018, Dimension.LENGTH, TYPICAL) / 2;
        return new PoleGeometry(
                in.need(tank.height(), "tank.height"),
                in.need(cubicle.height(), "cubicle.height"),
                in.orElse(
                        main.offset(), "main-earth.offset", surface(site.pole(), in) + 0.02, Dimension.LENGTH, FIXING),
                in.need(cable.separation(), "control-cable.separation"),
                in.orElse(cubicle.ownLeadOffset(), "cubicle.own-lead-offset", 0.3, Dimension.LENGTH, FIXING),
                in.orElse(cubicle.teeLength(), "cubicle.tee-length", 0.3, Dimension.LENGTH, TEE),
                cableRadius,
                in.orElse(cable.coreDiameter(), "control-cable.core-diameter", 0.0015, Dimension.LENGTH, TYPICAL) / 2,
                in.orElse(
                        screen == null ? null : screen.area(),
                        "control-cable.screen.area",
                        4e-6,
                        Dimension.AREA,
                        TYPICAL),
                screen == null || screen.material() == null ? Metal.COPPER : metal(screen.material()),
                bondLead(screen == null ? null : screen.tankBondLead(), "control-cable.screen.tank-bond-lead", in),
                bondLead(
                        screen == null ? null : screen.cubicleBondLead(),
                        "control-cable.screen.cubicle-bond-lead",
                        in));
    }

    private static double bondLead(@Nullable Measure lead, String key, Inputs in) throws MissingInput {
        return in.orElse(lead, key, 0, Dimension.LENGTH, GLAND);
    }

    private static double surface(@Nullable Pole pole, Inputs in) throws MissingInput {
        return pole == null
                ? 0.13
                : in.orElse(pole.diameter(), "pole.diameter", 0.26, Dimension.LENGTH, Source.tool("a usual pole")) / 2;
    }

    /** The metal that stands for a material of the site file. */
    static Metal metal(ConductorMaterial material) {
        return switch (material) {
            case COPPER, UNKNOWN -> Metal.COPPER;
            case ALUMINIUM -> Metal.ALUMINIUM;
            case STEEL -> Metal.STEEL;
            case GALVANISED_STEEL -> Metal.STEEL_GALVANISED;
            case STAINLESS_STEEL -> Metal.STAINLESS_STEEL;
            case COPPER_CLAD_STEEL -> Metal.COPPER_CLAD_STEEL_30;
        };
    }

    /** Direct-current resistance per length of a conductor at 20 °C [Ω/m]. */
    static double resistancePerLength(Metal metal, double area) {
        return ThermalTable.require(metal, ThermalEdition.IEEE_80_2013).resistivity(20) / area;
    }

    /** Cross-section of a conductor [m²]. */
    static double area(Conductor conductor, String key, Inputs in) throws MissingInput {
        if (conductor.material() == ConductorMaterial.UNKNOWN) {
            throw new MissingInput("the material is declared unknown", key + ".material");
        }
        return in.need(conductor.area(), key + ".area");
    }

    /** Radius of the solid round conductor of the same cross-section [m]. */
    static double radius(double area) {
        return Math.sqrt(area / Math.PI);
    }

    double cableX() {
        return leadX + separation;
    }
}
