package baymist.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.voxel.SurfelSet;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Laws of the drawn surface; the references are the surfels' exact areas and closed forms. */
class SurfaceLawTest {
    private static final SurfaceScenes BOX = SurfaceScenes.of("wing-box.yaml", 0.012);
    private static final SurfaceScenes ELEVATOR = SurfaceScenes.of("control-surface-pin-forward.yaml", 0.012);
    private static final SurfaceScenes TAIL = SurfaceScenes.of("tail-cone.yaml", 0.03);

    @Test
    void sidesThatFaceTheCavityHaveTheAreaOfTheirSurfels() {
        for (SurfaceScenes s : new SurfaceScenes[] {BOX, ELEVATOR, TAIL}) {
            Surface surface = s.surface(SurfaceOptions.DEFAULT);
            double[] drawn = new double[s.cavity().parts().size()];
            for (Patch p : surface.patches()) {
                drawn[p.part()] += p.side() == Patch.Side.CAVITY ? surface.areaM2(p) : 0;
            }
            double[] exact = new double[drawn.length];
            SurfelSet surfels = s.grid().surfels();
            for (int i = 0; i < surfels.count(); i++) {
                exact[surfels.part()[i]] += surfels.closure()[i] < 0 ? surfels.areaM2()[i] : 0;
            }
            double total = Arrays.stream(exact).sum();
            double off = 0;
            for (int p = 0; p < exact.length; p++) {
                off += Math.abs(drawn[p] - exact[p]);
            }
            System.out.printf("%s: exact %.4f drawn %.4f off %.4f unresolved %.4f %s%n", s.cavity().name(), total, Arrays.stream(drawn).sum(), off/total, s.grid().unresolvedAreaM2(), surface.detail().sentence());
            for (int p = 0; p < exact.length; p++) System.out.printf("   %s %.4f %.4f%n", s.cavity().parts().get(p).name(), exact[p], drawn[p]);
        }
    }
}
