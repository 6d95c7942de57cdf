package baymist.access;

import baymist.scene.WandMaterial;
import baymist.scene.WandSpec;

/**
 * A tube full of oil as a beam.
 *
 * <p>Second moment of area of a ring {@code I = π (D⁴ - d⁴)/64}, section {@code A = π (D² - d²)/4} (Young and Budynas 2002, Roark's
 * Formulas for Stress and Strain, 7th edition, table A.1).
 *
 * @param outerM outside diameter D, m
 * @param boreM inside diameter d, m, 0 for a solid rod
 * @param modulusPa Young's modulus, Pa
 * @param densityKgPerM3 density of the tube's material, kg/m³
 * @param yieldPa stress from which it stays bent, Pa
 * @param fillKgPerM3 density of what fills the bore, kg/m³, 0 for air
 */
public record TubeSection(
        double outerM, double boreM, double modulusPa, double densityKgPerM3, double yieldPa, double fillKgPerM3) {
    public TubeSection {
        if (!(outerM > 0) || !(boreM >= 0) || !(boreM < outerM)) {
            throw new IllegalArgumentException("outside " + outerM + " m, bore " + boreM + " m: a tube expected");
        }
        if (!(modulusPa > 0) || !(densityKgPerM3 >= 0) || !(yieldPa > 0) || !(fillKgPerM3 >= 0)) {
            throw new IllegalArgumentException("modulus " + modulusPa + " Pa, density " + densityKgPerM3
                    + " kg/m3, yield " + yieldPa + " Pa, filling " + fillKgPerM3 + " kg/m3: positive values expected");
        }
    }

    /** A wand's tube full of oil of this density (kg/m³). */
    public static TubeSection of(WandSpec wand, double oilKgPerM3) {
        WandMaterial m = wand.material();
        return new TubeSection(wand.outerM(), wand.boreM(), m.modulusPa(), m.densityKgPerM3(), m.yieldPa(), oilKgPerM3);
    }

    /** Bending stiffness E I, N m². */
    public double stiffnessNm2() {
        return modulusPa * Math.PI / 64 * (Math.pow(outerM, 4) - Math.pow(boreM, 4));
    }

    /** Mass of tube and filling for each metre, kg/m. */
    public double massKgPerM() {
        double tube = Math.PI / 4 * (outerM * outerM - boreM * boreM) * densityKgPerM3;
        return tube + Math.PI / 4 * boreM * boreM * fillKgPerM3;
    }

    /** Stress in the outer fibre under a bending moment (N m), Pa: {@code M (D/2)/I}. */
    public double stressPa(double momentNm) {
        return Math.abs(momentNm) * 0.5 * outerM * modulusPa / stiffnessNm2();
    }
}
