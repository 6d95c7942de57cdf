package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.cavity.Opening;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.VoxelSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One triangle is missing: a mesh reports it as a gap of its exact area; bare sheets without a cap let the flood in. */
class PinholeTest {
    @TempDir
    Path folder;

    private static String stl(TriangleMesh mesh, int missing) {
        StringBuilder s = new StringBuilder("solid shell\n");
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (t != missing) {
                s.append("facet normal 0 0 0\nouter loop\n");
                for (int k = 0; k < 3; k++) {
                    Vec3 p = mesh.point(t, k);
                    s.append(String.format(Locale.ROOT, "vertex %s %s %s%n", p.x(), p.y(), p.z()));
                }
                s.append("endloop\nendfacet\n");
            }
        }
        return s + "endsolid shell\n";
    }

    @Test
    void missingTriangleOfAMeshIsAVentOfItsExactAreaHoweverSmall() throws IOException {
        // a ball of 0.1 m radius; its triangles are 13 x 13 mm and smaller, the voxels 20 mm
        TriangleMesh ball = VoxelFixtures.sphere(0.1, new Vec3(0.2, 0.1, 0.3), 48)
                .cavity("ball")
                .sheets();
        for (int seed = 0; seed < 40; seed++) {
            int missing = new Random(seed).nextInt(ball.triangleCount());
            if (ball.areaM2(missing) == 0) {
                continue;
            }
            Path file = Files.writeString(folder.resolve("ball" + seed + ".stl"), stl(ball, missing));
            Cavity cavity = CavityBuilder.build(
                    new CavitySpec.Mesh("ball", file, 1, null, 0.001, List.of(), SourcePlace.of("test")),
                    List.of(),
                    Map.of(),
                    List.of());
            assertEquals(1, cavity.openings().size(), "seed " + seed);
            Opening gap = cavity.openings().get(0);
            assertEquals(Opening.Kind.GAP, gap.kind());
            assertTrue(gap.place().centreM().distance(ball.centroid(missing)) < 0.008, "seed " + seed);
            VoxelGrid grid = VoxelizerLawTest.voxels(cavity, 0.02);
            double vents = 0;
            for (double a : grid.faces().ventAreaM2()) {
                vents += a;
            }
            assertEquals(ball.areaM2(missing), vents, 1e-9 * ball.areaM2(missing), "seed " + seed);
        }
    }

    @Test
    void missingTriangleOfBareSheetsIsNamedWithItsPlaceAndTheWayOfTheAir() {
        Pattern place =
                Pattern.compile("comes in at \\((-?\\d+), (-?\\d+), (-?\\d+)\\) mm near (.*?) \\(its way: (.*?)\\)");
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            VoxelFixtures f = new VoxelFixtures();
            Vec3 high = new Vec3(0.3, 0.2, 0.15);
            int wall = random.nextInt(6);
            Vec3 a = Vec3.ZERO;
            Vec3 b = Vec3.ZERO;
            Vec3 c = Vec3.ZERO;
            for (int d = 0; d < 6; d++) {
                Vec3[] ring = VoxelFixtures.wallCorners(Vec3.ZERO, high, d);
                int part = f.part("wall " + d);
                int n = 4;
                int missing = d == wall ? random.nextInt(2 * n * n) : -1;
                for (int t = 0; t < 2 * n * n; t++) {
                    int i = t / 2 % n;
                    int j = t / 2 / n;
                    Vec3 p = at(ring, i, j, n);
                    Vec3 q = at(ring, i + 1, j + 1, n);
                    Vec3 r = t % 2 == 0 ? at(ring, i + 1, j, n) : q;
                    Vec3 s = t % 2 == 0 ? q : at(ring, i, j + 1, n);
                    if (t == missing) {
                        a = p;
                        b = r;
                        c = s;
                    } else {
                        f.triangle(part, p, r, s);
                    }
                }
            }
            Cavity cavity = f.cavity("holed");
            try (Workers workers = new Workers(1)) {
                SceneException e = assertThrows(
                        SceneException.class,
                        () -> Voxelizer.voxelize(cavity, new VoxelSpec(0.01, 0.01, 0.01), workers),
                        "seed " + seed);
                Matcher m = place.matcher(String.valueOf(e.getMessage()));
                assertTrue(m.find(), e.getMessage());
                Vec3 told = new Vec3(
                                Double.parseDouble(m.group(1)),
                                Double.parseDouble(m.group(2)),
                                Double.parseDouble(m.group(3)))
                        .times(1e-3);
                Vec3 middle = a.plus(b).plus(c).times(1.0 / 3);
                assertTrue(told.distance(middle) < 0.05, "seed " + seed + ": " + e.getMessage() + " for " + middle);
                assertTrue(m.group(4).contains("wall " + wall), e.getMessage());
                assertFalse(m.group(5).isEmpty());
            }
        }
    }

    private static Vec3 at(Vec3[] ring, int i, int j, int n) {
        return ring[0].plus((double) i / n, ring[1].minus(ring[0])).plus((double) j / n, ring[3].minus(ring[0]));
    }
}
