package earthing.conductor;

import java.util.Arrays;
import java.util.Optional;

/** The metals of earthing conductors and electrodes, by the trade's names. */
public enum Metal {
    /** Copper, annealed soft-drawn. */
    COPPER("copper", "copper, annealed", Family.COPPER),
    /** Copper, commercial hard-drawn. */
    COPPER_HARD_DRAWN("copper-hard-drawn", "copper, hard-drawn", Family.COPPER),
    /** Copper-clad steel wire of 40 % conductivity. */
    COPPER_CLAD_STEEL_40("copper-clad-steel-40", "copper-clad steel wire, 40 %", Family.COPPER_CLAD_STEEL),
    /** Copper-clad steel wire of 30 % conductivity. */
    COPPER_CLAD_STEEL_30("copper-clad-steel-30", "copper-clad steel wire, 30 %", Family.COPPER_CLAD_STEEL),
    /** Copper-clad steel rod of 20 % conductivity. */
    COPPER_CLAD_STEEL_20("copper-clad-steel-20", "copper-clad steel rod, 20 %", Family.COPPER_CLAD_STEEL),
    /** Copper-clad steel rod of 17 % conductivity. */
    COPPER_CLAD_STEEL_17("copper-clad-steel-17", "copper-clad steel rod, 17 %", Family.COPPER_CLAD_STEEL),
    /** Aluminium of electrical grade. */
    ALUMINIUM("aluminium", "aluminium, electrical grade", Family.ALUMINIUM),
    /** Aluminium alloy 5005. */
    ALUMINIUM_5005("aluminium-5005", "aluminium alloy 5005", Family.ALUMINIUM),
    /** Aluminium alloy 6201. */
    ALUMINIUM_6201("aluminium-6201", "aluminium alloy 6201", Family.ALUMINIUM),
    /** Aluminium-clad steel wire. */
    ALUMINIUM_CLAD_STEEL("aluminium-clad-steel", "aluminium-clad steel wire", Family.ALUMINIUM_CLAD_STEEL),
    /** Plain carbon steel. */
    STEEL("steel", "steel", Family.STEEL),
    /** Zinc-coated steel. */
    STEEL_GALVANISED("steel-galvanised", "galvanised steel", Family.STEEL),
    /** Stainless-clad steel rod. */
    STAINLESS_CLAD_STEEL("stainless-clad-steel", "stainless-clad steel rod", Family.STAINLESS),
    /** Stainless steel 304. */
    STAINLESS_STEEL("stainless-steel", "stainless steel 304", Family.STAINLESS),
    /** Lead, as sheath or as screen. */
    LEAD("lead", "lead", Family.LEAD);

    /** Groups of metals that the tables of limits treat alike. */
    public enum Family {
        /** Copper. */
        COPPER,
        /** Steel with a copper skin. */
        COPPER_CLAD_STEEL,
        /** Aluminium and its alloys. */
        ALUMINIUM,
        /** Steel with an aluminium skin. */
        ALUMINIUM_CLAD_STEEL,
        /** Steel, bare or galvanised. */
        STEEL,
        /** Stainless steel, solid or as a skin. */
        STAINLESS,
        /** Lead. */
        LEAD
    }

    private final String key;
    private final String label;
    private final Family family;

    Metal(String key, String label, Family family) {
        this.key = key;
        this.label = label;
        this.family = family;
    }

    /**
     * The word of the site file.
     *
     * @return kebab-case key
     */
    public String key() {
        return key;
    }

    /**
     * The words of the report.
     *
     * @return readable name
     */
    public String label() {
        return label;
    }

    /**
     * The group in the tables of limits.
     *
     * @return the family
     */
    public Family family() {
        return family;
    }

    /**
     * Finds a metal by its word in the site file.
     *
     * @param key kebab-case key
     * @return the metal, empty if the word is unknown
     */
    public static Optional<Metal> find(String key) {
        return Arrays.stream(values()).filter(m -> m.key.equals(key)).findFirst();
    }
}
