package baymist.scene;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the tube of a wand is made of.
 *
 * <p>The table's values are from memory of the sources named, rounded; a wand file may state its own.
 *
 * @param densityKgPerM3 density, kg/m³
 * @param modulusPa Young's modulus, Pa
 * @param yieldPa stress at which it stays bent, Pa
 */
public record WandMaterial(String name, double densityKgPerM3, double modulusPa, double yieldPa) {
    /** 304, annealed: ASTM A269 (yield 205 MPa at least); density and modulus ASM Handbook vol. 1. */
    public static final WandMaterial STAINLESS = new WandMaterial("stainless", 8000, 193e9, 205e6);

    /** Hard-drawn low-carbon tube: ASM Handbook vol. 1; the yield is that of annealed stock, on the safe side (ASSUMED). */
    public static final WandMaterial STEEL = new WandMaterial("steel", 7850, 205e9, 205e6);

    /** C26000, half hard: ASM Handbook vol. 2. */
    public static final WandMaterial BRASS = new WandMaterial("brass", 8530, 110e9, 360e6);

    /** 6061-T6 drawn tube: MIL-HDBK-5J (35 ksi yield, 9.9 Msi). */
    public static final WandMaterial ALUMINIUM = new WandMaterial("aluminium", 2700, 68.3e9, 241e6);

    /** Polyamide 6/6 conditioned at 50 % humidity: typical makers' data (ASSUMED: grades spread by half). */
    public static final WandMaterial NYLON = new WandMaterial("nylon", 1140, 1.4e9, 45e6);

    /** Polytetrafluoroethylene: typical makers' data (ASSUMED as above). */
    public static final WandMaterial PTFE = new WandMaterial("ptfe", 2170, 0.5e9, 10e6);

    /** Polyether ether ketone, unfilled: typical makers' data. */
    public static final WandMaterial PEEK = new WandMaterial("peek", 1300, 3.6e9, 95e6);

    /** What a material's name ends with where the wand does not state it. */
    private static final String ASSUMED = " (assumed)";

    private static final List<WandMaterial> TABLE = List.of(STAINLESS, STEEL, BRASS, ALUMINIUM, NYLON, PTFE, PEEK);

    /** The materials that can be called by name. */
    public static List<WandMaterial> table() {
        return TABLE;
    }

    /** The material of this name in the table, or null. */
    public static @Nullable WandMaterial named(String name) {
        return TABLE.stream().filter(m -> m.name().equals(name)).findFirst().orElse(null);
    }

    /** The same material for a wand that states none. */
    public WandMaterial assumed() {
        return new WandMaterial(name + ASSUMED, densityKgPerM3, modulusPa, yieldPa);
    }

    /** Whether the wand does not state its material. */
    public boolean isAssumed() {
        return name.endsWith(ASSUMED);
    }
}
