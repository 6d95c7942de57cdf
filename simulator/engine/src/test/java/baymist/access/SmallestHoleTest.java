package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.TipSpec;
import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

class SmallestHoleTest {
    private static final TipSpec TIP = new TipSpec("t", List.of());

    private static WandSpec bent(double outerM, double radiusM, double angleRad) {
        List<WandPiece> pieces = List.of(
                new WandPiece.Straight(0.2), new WandPiece.Bend(radiusM, angleRad, 0), new WandPiece.Straight(0.05));
        double length = 0.25 + radiusM * angleRad;
        return new WandSpec(
                "hook", length, outerM, outerM / 2, TIP, pieces, WandMaterial.STEEL, null, List.of(), outerM, 0);
    }

    @Test
    void aStraightRodSquareToThePlateNeedsItsOwnDiameter() {
        WandSpec rod = new WandSpec("rod", 1, 0.008, 0.004, TIP);
        assertEquals(0.008, SmallestHole.diameterM(rod, 0.002, 0), 1e-15);
    }

    @Test
    void aTiltedRodNeedsItsEllipseAndTheShiftThroughTheGauge() {
        // Elementary: a cylinder cut at an angle is an ellipse d / cos θ long; between the faces it moves by t tan θ.
        WandSpec rod = new WandSpec("rod", 1, 0.008, 0.004, TIP);
        double tilt = Math.toRadians(30);
        double needs = 0.008 / Math.cos(tilt) + 0.0016 * Math.tan(tilt);
        assertEquals(needs, SmallestHole.diameterM(rod, 0.0016, tilt), 1e-15);
        // a rod of that tilt just fits into the hole, and into none smaller
        assertEquals(0, PlateHole.largestOffsetM(needs, 0.008, 0.0016, tilt), 1e-12);
    }

    @Test
    void aLongBendNeedsWhatItsRadiusAndTheGaugeAsk() {
        // Own derivation, docs/theory/access-flexible.md (9): D = ρ + d/2 - sqrt((ρ - d/2)² - t²/4).
        double rho = 0.025;
        double d = 0.00635;
        for (double t : new double[] {0.001, 0.003, 0.006}) {
            double inner = rho - d / 2;
            double needs = rho + d / 2 - Math.sqrt(inner * inner - t * t / 4);
            assertEquals(needs, SmallestHole.diameterM(bent(d, rho, Math.PI / 2), t, 0), 2e-6, "gauge " + t);
        }
    }

    @Test
    void aSharperBendAndAThickerPlateNeedMore() {
        double before = 0;
        for (double gauge : new double[] {0, 0.001, 0.002, 0.004}) {
            double needs = SmallestHole.diameterM(bent(0.006, 0.02, 1.2), gauge, 0);
            assertTrue(needs >= Math.max(0.006, before) - 1e-9);
            before = needs;
        }
        assertTrue(SmallestHole.diameterM(bent(0.006, 0.012, 1.2), 0.004, 0) > before);
    }

    @Test
    void aThickTipCounts() {
        WandSpec w = new WandSpec(
                "w",
                1,
                0.006,
                0.003,
                TIP,
                List.of(new WandPiece.Straight(1)),
                WandMaterial.STEEL,
                null,
                List.of(),
                0.009,
                0.02);
        assertEquals(0.009, SmallestHole.diameterM(w, 0.001, 0), 1e-15);
    }
}
