package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Bvh;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class BendSearchTest {
    private static FreeSpace empty() {
        return new FreeSpace(Bvh.of(new TriangleMesh(new double[0], new int[0])), t -> "none", 0.1);
    }

    private static Heading pose(double x, double y, double heading) {
        return new Heading(new Vec3(x, y, 0), new Vec3(Math.cos(heading), Math.sin(heading), 0));
    }

    // Dubins (1957): the shortest path is the least of six words.
    @Test
    void freePlaneGivesDubinsLengthsWithinOnePercent() {
        Random random = new Random(1957);
        Set<String> words = new HashSet<>();
        for (int i = 0; i < 60 || (words.size() < 6 && i < 400); i++) {
            double reach = i % 2 == 0 ? 2 : 6;
            double h0 = 2 * Math.PI * random.nextDouble();
            double h1 = 2 * Math.PI * random.nextDouble();
            double x = reach * (2 * random.nextDouble() - 1);
            double y = reach * (2 * random.nextDouble() - 1);
            Dubins.Word exact = Dubins.shortest(h0, x, y, h1);
            words.add(exact.word());
            SearchGrain grain = new SearchGrain(0.25, 0.25, 16, 2, new double[] {1}, 0);
            BendSearch search = new BendSearch(empty(), BendLimits.radiusOnly(0.01, 1), grain, Gates.NONE);
            Vec3 across = new Vec3(-Math.sin(h0), Math.cos(h0), 0);
            List<PathPiece> path = search.shortest(pose(0, 0, h0), across, pose(x, y, h1), 200_000);
            assertNotNull(path);
            double found = BendConnector.lengthM(path);
            assertTrue(found >= exact.length() - 1e-6, "shorter than Dubins: " + found + " < " + exact);
            assertTrue(found <= 1.01 * exact.length(), found + " m found, " + exact + " = " + exact.length());
        }
        assertEquals(6, words.size(), "all six words occur: " + words);
    }
}
