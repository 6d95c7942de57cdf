package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.TriangleDistance;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Looks a mesh over: free and branching edges, joints that don't share vertices, opposed neighbours, loose bodies. */
final class MeshExaminer {
    /** How near a vertex must be to count as on a triangle, m. ASSUMED: a third of the thinnest sheet in use. */
    private static final double TOLERANCE_M = 0.1e-3;

    private static final int MOST_PLACES = 5;

    private final Cavity cavity;
    private final TriangleMesh mesh;
    /** The file's own triangles; protected items and caps of gaps come after them. */
    private final int triangles;

    private final EdgeTable edges;
    private final boolean[] free;

    private MeshExaminer(Cavity cavity, MeshImport imported) {
        this.cavity = cavity;
        this.mesh = cavity.sheets();
        this.triangles = imported.triangles();
        this.edges = new EdgeTable(mesh, triangles);
        this.free = new boolean[mesh.vertexCount()];
    }

    static MeshHealth examine(Cavity cavity, MeshImport imported) {
        return new MeshExaminer(cavity, imported).health(imported);
    }

    private MeshHealth health(MeshImport imported) {
        int freeEdges = 0;
        int branches = 0;
        double freeM = 0;
        for (int e = 0; e < edges.count(); e++) {
            if (edges.uses(e) == 1) {
                freeEdges++;
                freeM += mesh.vertex(edges.low(e)).distance(mesh.vertex(edges.high(e)));
                free[edges.low(e)] = true;
                free[edges.high(e)] = true;
            }
            branches += edges.uses(e) > 2 ? 1 : 0;
        }
        int gaps = (int) cavity.openings().stream()
                .filter(o -> o.kind() == Opening.Kind.GAP)
                .count();
        Collector edge = new Collector();
        Collector face = new Collector();
        Collector near = new Collector();
        joints(edge, face, near);
        return new MeshHealth(
                imported,
                freeEdges,
                freeM,
                gaps,
                branches,
                opposed().done(),
                edge.done(),
                face.done(),
                near.done(),
                TOLERANCE_M,
                bodies());
    }

    private static final class Collector {
        private int count;
        private double widestM;
        private final List<Vec3> places = new ArrayList<>();

        void add(Vec3 p, double distanceM) {
            count++;
            widestM = Math.max(widestM, distanceM);
            if (places.size() < MOST_PLACES) {
                places.add(p);
            }
        }

        MeshHealth.Spots done() {
            return new MeshHealth.Spots(count, places, widestM);
        }
    }

    /** The closest touch of one vertex: 0 none, 1 face, 2 edge, 3 corner. */
    private static final class Touch {
        int sort;
        double distanceM;
    }

    private void joints(Collector edge, Collector face, Collector near) {
        Bvh bvh = Bvh.of(mesh);
        for (int v = 0; v < free.length; v++) {
            if (!free[v]) {
                continue;
            }
            int vertex = v;
            Vec3 p = mesh.vertex(v);
            Touch touch = new Touch();
            bvh.forEachNear(new Box3(p, p).grown(TOLERANCE_M), t -> touch(vertex, p, t, touch));
            if (touch.sort > 0) {
                (touch.sort == 3 ? near : touch.sort == 2 ? edge : face).add(p, touch.distanceM);
            }
        }
    }

    private void touch(int v, Vec3 p, int t, Touch touch) {
        if (t >= triangles || mesh.corner(t, 0) == v || mesh.corner(t, 1) == v || mesh.corner(t, 2) == v) {
            return;
        }
        Vec3[] c = {mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2)};
        double toFace = TriangleDistance.closestPoint(p, c[0], c[1], c[2]).distance(p);
        if (toFace > TOLERANCE_M) {
            return;
        }
        int sort = 1;
        double distance = toFace;
        for (int k = 0; k < 3; k++) {
            double toEdge =
                    TriangleDistance.closestOnSegment(p, c[k], c[(k + 1) % 3]).distance(p);
            boolean neighbour = edges.usesBetween(v, mesh.corner(t, k)) > 0;
            if (c[k].distance(p) <= TOLERANCE_M && !neighbour) {
                sort = 3;
                distance = c[k].distance(p);
                break;
            }
            if (toEdge <= TOLERANCE_M) {
                sort = 2;
                distance = toEdge;
            }
        }
        if (sort > touch.sort) {
            touch.sort = sort;
            touch.distanceM = distance;
        }
    }

    /** Edges of exactly two triangles of one part that run along it the same way. */
    private Collector opposed() {
        Collector opposed = new Collector();
        int[] firstAt = new int[edges.count()];
        Arrays.fill(firstAt, -1);
        for (int t = 0; t < triangles; t++) {
            for (int k = 0; k < 3; k++) {
                int a = mesh.corner(t, k);
                int b = mesh.corner(t, (k + 1) % 3);
                int e = edges.indexOf(a, b);
                if (edges.uses(e) != 2) {
                    continue;
                }
                // the triangle, with the sense in which it runs along the edge in the lowest bit
                int entry = 2 * t + (a < b ? 1 : 0);
                if (firstAt[e] < 0) {
                    firstAt[e] = entry;
                } else if ((firstAt[e] & 1) == (entry & 1)
                        && cavity.partOfSheet(firstAt[e] >> 1) == cavity.partOfSheet(t)) {
                    opposed.add(mesh.vertex(a).plus(mesh.vertex(b)).times(0.5), 0);
                }
            }
        }
        return opposed;
    }

    private List<MeshHealth.Body> bodies() {
        int[] parent = new int[mesh.vertexCount()];
        for (int v = 0; v < parent.length; v++) {
            parent[v] = v;
        }
        for (int t = 0; t < triangles; t++) {
            join(parent, mesh.corner(t, 0), mesh.corner(t, 1));
            join(parent, mesh.corner(t, 0), mesh.corner(t, 2));
        }
        int[] count = new int[parent.length];
        double[] area = new double[parent.length];
        double[] moment = new double[3 * parent.length];
        int[] largest = new int[parent.length];
        for (int t = 0; t < triangles; t++) {
            int root = root(parent, mesh.corner(t, 0));
            double a = mesh.areaM2(t);
            Vec3 c = mesh.centroid(t);
            if (count[root] == 0 || a > mesh.areaM2(largest[root])) {
                largest[root] = t;
            }
            count[root]++;
            area[root] += a;
            for (int axis = 0; axis < 3; axis++) {
                moment[3 * root + axis] += a * c.get(axis);
            }
        }
        List<MeshHealth.Body> bodies = new ArrayList<>();
        for (int v = 0; v < parent.length; v++) {
            if (count[v] > 0) {
                Vec3 centre = new Vec3(moment[3 * v], moment[3 * v + 1], moment[3 * v + 2]).times(1 / area[v]);
                String part = cavity.parts().get(cavity.partOfSheet(largest[v])).name();
                bodies.add(new MeshHealth.Body(count[v], area[v], centre, part));
            }
        }
        bodies.sort(Comparator.comparingDouble((MeshHealth.Body b) -> -b.areaM2()));
        return bodies;
    }

    private static int root(int[] parent, int v) {
        int at = v;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    private static void join(int[] parent, int a, int b) {
        int ra = root(parent, a);
        int rb = root(parent, b);
        parent[Math.max(ra, rb)] = Math.min(ra, rb);
    }
}
