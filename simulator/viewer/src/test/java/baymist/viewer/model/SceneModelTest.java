package baymist.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.voxel.Bay;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Laws of what is shown: nothing is lost by cutting twice, bays drawn apart never meet. */
class SceneModelTest {
    private static final Box3 BOX = new Box3(new Vec3(0, -1, 0), new Vec3(0.5, 2, 0.2));
    private static final SceneModel MODEL = SceneModel.of(BOX, List.of(bay(1, 2), bay(-1, 0), bay(0, 1)));

    private static Bay bay(double fromY, double toY) {
        return new Bay("bay", 0.1, 1, new Box3(new Vec3(0, fromY, 0), new Vec3(0.5, toY, 0.2)), 10);
    }

    @Test
    void aPointStaysOnOneSideOfTheCutOrTheOther() {
        SceneModel low = MODEL.withCut(1, 0.25, true);
        SceneModel high = MODEL.withCut(1, 0.25, false);
        assertEquals(-0.25, low.cutM(), 1e-12);
        for (double y = -1; y <= 2; y += 0.11) {
            Vec3 p = new Vec3(0.1, y, 0.1);
            assertTrue(low.keeps(p) ^ high.keeps(p) || y == low.cutM());
            assertTrue(MODEL.keeps(p));
        }
    }

    @Test
    void partsHideAndComeBack() {
        SceneModel hidden = MODEL.withPart(3, false);
        assertFalse(hidden.shows(3));
        assertTrue(hidden.shows(2) && MODEL.shows(3) && hidden.withAllParts().shows(3));
    }

    @Test
    void baysDrawnApartKeepTheirOrderAndDoNotMeet() {
        SceneModel apart = MODEL.withExplode(0.5);
        assertEquals(Vec3.ZERO, MODEL.offsetM(0));
        // in a row along y: bay 1, bay 2, bay 0
        double end1 = 0 + apart.offsetM(1).y();
        double from2 = 0 + apart.offsetM(2).y();
        double end2 = 1 + apart.offsetM(2).y();
        double from0 = 1 + apart.offsetM(0).y();
        assertEquals(0.5 * 3 / 2, from2 - end1, 1e-12);
        assertEquals(0.5 * 3 / 2, from0 - end2, 1e-12);
        assertEquals(0, apart.offsetM(0).x() + apart.offsetM(0).z());
    }
}
