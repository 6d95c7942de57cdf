package baymist.bench;

import baymist.cavity.Cavity;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.TriangleMesh;
import java.util.List;

/** A round shell of 4 m by 2 m with ten bulkheads, about a million triangles: what a detailed mesh asks of the voxels. */
final class RibbedShell {
    private static final double LENGTH_M = 4;
    private static final double RADIUS_M = 1;
    private static final int AROUND = 720;
    private static final int ALONG = 540;
    private static final int BULKHEADS = 10;
    private static final int RINGS = 16;

    private final double[] xyz;
    private final int[] corners;
    private final int[] part;
    private int vertices;
    private int triangles;

    private RibbedShell() {
        int skin = 2 * AROUND * ALONG;
        int walls = BULKHEADS * AROUND * (2 * RINGS - 1);
        xyz = new double[3 * (AROUND * (ALONG + 1) + BULKHEADS * (AROUND * RINGS + 1))];
        corners = new int[3 * (skin + walls)];
        part = new int[skin + walls];
    }

    static Cavity cavity() {
        RibbedShell s = new RibbedShell();
        s.skin();
        for (int b = 0; b < BULKHEADS; b++) {
            s.bulkhead(b);
        }
        TriangleMesh mesh = new TriangleMesh(s.xyz, s.corners);
        TriangleMesh none = new TriangleMesh(new double[0], new int[0]);
        List<Part> parts = List.of(new Part("skin", PartKind.SKIN, 1e-3), new Part("bulkheads", PartKind.RIB, 1e-3));
        return new Cavity("shell", parts, List.of(), mesh, s.part, mesh, s.part, none, new int[0], null, List.of());
    }

    private int vertex(double x, double radius, int step) {
        double angle = 2 * Math.PI * step / AROUND;
        xyz[3 * vertices] = x;
        xyz[3 * vertices + 1] = radius * Math.cos(angle);
        xyz[3 * vertices + 2] = radius * Math.sin(angle);
        return vertices++;
    }

    private void triangle(int of, int a, int b, int c) {
        corners[3 * triangles] = a;
        corners[3 * triangles + 1] = b;
        corners[3 * triangles + 2] = c;
        part[triangles++] = of;
    }

    private void skin() {
        int first = vertices;
        for (int i = 0; i <= ALONG; i++) {
            for (int k = 0; k < AROUND; k++) {
                vertex(LENGTH_M * i / ALONG, RADIUS_M, k);
            }
        }
        for (int i = 0; i < ALONG; i++) {
            for (int k = 0; k < AROUND; k++) {
                int a = first + i * AROUND + k;
                int b = first + i * AROUND + (k + 1) % AROUND;
                triangle(0, a, b, b + AROUND);
                triangle(0, a, b + AROUND, a + AROUND);
            }
        }
    }

    private void bulkhead(int number) {
        // on a ring of the skin, so that the two meet edge to edge
        double x = LENGTH_M * (number * (ALONG / (BULKHEADS - 1))) / ALONG;
        int hub = vertex(x, 0, 0);
        int inner = -1;
        for (int r = 1; r <= RINGS; r++) {
            int ring = vertices;
            for (int k = 0; k < AROUND; k++) {
                vertex(x, RADIUS_M * r / RINGS, k);
            }
            for (int k = 0; k < AROUND; k++) {
                int next = (k + 1) % AROUND;
                if (r == 1) {
                    triangle(1, hub, ring + k, ring + next);
                } else {
                    triangle(1, inner + k, ring + k, ring + next);
                    triangle(1, inner + k, ring + next, inner + next);
                }
            }
            inner = ring;
        }
    }
}
