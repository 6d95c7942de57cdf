package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * Finds where a mesh is open and closes it with virtual triangles.
 *
 * <ol>
 *   <li>Free edges are those of exactly one triangle of the whole welded mesh.
 *   <li>Chains of free edges with a loose end (the rim of a frame that stands on a skin, the top of a blade) bound no
 *       opening; they are peeled off edge by edge until only closed loops are left, and remarked as one total length.
 *   <li>Each connected net of loops (an open end with a floor across it is a net of several) is laid into its best-fit plane
 *       and cut into its faces there, by turning as sharply as possible at each vertex.
 *   <li>A face becomes a gap: a polygon outline in the best-fit plane, and a fan of triangles about the middle of its
 *       corners that closes the sheet in space. The rim of a plain flat sheet (all triangles along the loop lie inside it, in
 *       its plane) is no gap.
 * </ol>
 */
final class GapFinder {
    private static final double FLAT = 1e-6;

    private final SheetModel model;
    private final TriangleMesh mesh;
    /** Free neighbours of a vertex, with the triangle at the edge. */
    private final Map<Integer, NavigableMap<Integer, Integer>> free = new TreeMap<>();

    private double smallestAreaM2;

    GapFinder(SheetModel model) {
        this.model = model;
        this.mesh = model.mesh();
    }

    /** A closed loop with its plane and area. */
    private record Loop(List<Integer> vertices, PlacedOutline place, double areaM2) {}

    void find() {
        Box3 box = mesh.bounds();
        double size = box.size().length();
        smallestAreaM2 = 1e-12 * size * size;
        collect();
        double loose = peel();
        if (loose > 0) {
            model.remarks.add(String.format(
                    Locale.ROOT,
                    "%.3f m of free edges are rims inside or end on other sheets; they bound no opening",
                    loose));
        }
        List<Loop> loops = new ArrayList<>();
        for (List<Integer> net : nets()) {
            loops.addAll(faces(net));
        }
        loops.sort(Comparator.comparingDouble((Loop l) -> -l.areaM2())
                .thenComparing(l -> l.vertices().get(0)));
        int number = 0;
        for (Loop loop : loops) {
            if (loop.areaM2() < smallestAreaM2) {
                model.remarks.add("a slit without width runs along free edges at "
                        + SpecCheck.at(loop.place().centreM()));
            } else if (isRimOfFlatSheet(loop)) {
                model.remarks.add(String.format(
                        Locale.ROOT,
                        "a flat sheet of %s stands free with its whole rim at %s",
                        area(loop.areaM2()),
                        SpecCheck.at(loop.place().centreM())));
            } else {
                gap(loop, ++number, box);
            }
        }
    }

    private void collect() {
        EdgeTable edges = new EdgeTable(mesh);
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                int a = mesh.corner(t, k);
                int b = mesh.corner(t, (k + 1) % 3);
                if (edges.usesBetween(a, b) == 1) {
                    free.computeIfAbsent(a, v -> new TreeMap<>()).put(b, t);
                    free.computeIfAbsent(b, v -> new TreeMap<>()).put(a, t);
                }
            }
        }
    }

    /** Removes edges that hang on a vertex with one free edge; returns their length, m. */
    private double peel() {
        double length = 0;
        List<Integer> ends = new ArrayList<>(free.keySet());
        for (int start : ends) {
            int at = start;
            while (free.containsKey(at) && neighbours(at).size() == 1) {
                int next = neighbours(at).firstKey();
                length += mesh.vertex(at).distance(mesh.vertex(next));
                free.remove(at);
                neighbours(next).remove(at);
                at = next;
            }
        }
        free.values().removeIf(NavigableMap::isEmpty);
        return length;
    }

    private NavigableMap<Integer, Integer> neighbours(int vertex) {
        return free.getOrDefault(vertex, new TreeMap<>());
    }

    private List<List<Integer>> nets() {
        List<List<Integer>> nets = new ArrayList<>();
        Map<Integer, Boolean> seen = new HashMap<>();
        for (int start : free.keySet()) {
            if (seen.putIfAbsent(start, true) != null) {
                continue;
            }
            List<Integer> net = new ArrayList<>(List.of(start));
            for (int i = 0; i < net.size(); i++) {
                for (int next : neighbours(net.get(i)).keySet()) {
                    if (seen.putIfAbsent(next, true) == null) {
                        net.add(next);
                    }
                }
            }
            nets.add(net);
        }
        return nets;
    }

    /** Faces of one net of loops in its best-fit plane, the unbounded one left out. */
    private List<Loop> faces(List<Integer> net) {
        Vec3 normal = planeNormal(net);
        PlacedOutline frame =
                PlacedOutline.of(new Outline.Circle(1), mesh.vertex(net.get(0)), normal.anyPerpendicular(), normal);
        Map<Integer, List<Integer>> turning = new HashMap<>();
        for (int v : net) {
            List<Integer> around = new ArrayList<>(neighbours(v).keySet());
            around.sort(Comparator.comparingDouble(w -> angle(frame, v, w)));
            turning.put(v, around);
        }
        List<Loop> loops = new ArrayList<>();
        Map<Long, Boolean> walked = new HashMap<>();
        for (int from : net) {
            for (int to : neighbours(from).keySet()) {
                List<Integer> loop = walk(from, to, turning, walked);
                if (loop.size() >= 3) {
                    Loop face = loop(loop, normal);
                    // walked with the face on the left: bounded faces turn counter-clockwise about the normal
                    if (face.areaM2() > 0) {
                        loops.add(face);
                    }
                }
            }
        }
        return loops;
    }

    private double angle(PlacedOutline frame, int from, int to) {
        Vec3 d = mesh.vertex(to).minus(mesh.vertex(from));
        return Math.atan2(d.dot(frame.vAxis()), d.dot(frame.uAxis()));
    }

    private static List<Integer> walk(
            int from, int to, Map<Integer, List<Integer>> turning, Map<Long, Boolean> walked) {
        List<Integer> loop = new ArrayList<>();
        int a = from;
        int b = to;
        while (walked.putIfAbsent(((long) a << 32) | b, true) == null) {
            loop.add(a);
            List<Integer> around = turning.getOrDefault(b, List.of(a));
            int back = around.indexOf(a);
            int next = around.get((back + around.size() - 1) % around.size());
            a = b;
            b = next;
        }
        return loop;
    }

    /** Normal of the plane that fits the net: from the loop's own area vector if it is one loop, else by least squares. */
    private Vec3 planeNormal(List<Integer> net) {
        List<Vec3> points = net.stream().map(mesh::vertex).toList();
        boolean oneLoop = net.stream().allMatch(v -> neighbours(v).size() == 2);
        if (oneLoop) {
            Vec3 area = areaVector(ordered(net.get(0)));
            if (area.length() > smallestAreaM2) {
                return area.unit();
            }
        }
        return PlaneFit.normal(points);
    }

    private List<Integer> ordered(int start) {
        List<Integer> loop = new ArrayList<>();
        int before = -1;
        int at = start;
        do {
            loop.add(at);
            int next = neighbours(at).firstKey() == before
                    ? neighbours(at).lastKey()
                    : neighbours(at).firstKey();
            before = at;
            at = next;
        } while (at != start);
        return loop;
    }

    private Vec3 areaVector(List<Integer> loop) {
        Vec3 origin = mesh.vertex(loop.get(0));
        Vec3 sum = Vec3.ZERO;
        for (int k = 1; k + 1 < loop.size(); k++) {
            Vec3 a = mesh.vertex(loop.get(k)).minus(origin);
            Vec3 b = mesh.vertex(loop.get(k + 1)).minus(origin);
            sum = sum.plus(a.cross(b));
        }
        return sum.times(0.5);
    }

    private Loop loop(List<Integer> vertices, Vec3 netNormal) {
        Vec3 area = areaVector(vertices);
        double signed = area.dot(netNormal);
        Vec3 normal = area.length() > smallestAreaM2 ? area.unit() : netNormal;
        List<Vec3> points = vertices.stream().map(mesh::vertex).toList();
        PlacedOutline place = RibSheets.polygon(points, normal.anyPerpendicular(), normal);
        return new Loop(vertices, place, Math.signum(signed) * area.length());
    }

    private boolean isRimOfFlatSheet(Loop loop) {
        double reach = loop.place().outline().reachM();
        List<Integer> v = loop.vertices();
        for (int k = 0; k < v.size(); k++) {
            Integer t = neighbours(v.get(k)).get(v.get((k + 1) % v.size()));
            if (t == null) {
                return false;
            }
            Vec3 middle = mesh.centroid(t);
            PlacedOutline place = loop.place();
            if (Math.abs(place.heightM(middle)) > FLAT * reach
                    || !place.outline().contains(place.u(middle), place.v(middle))) {
                return false;
            }
        }
        return true;
    }

    private void gap(Loop loop, int number, Box3 box) {
        List<Vec3> points = loop.vertices().stream().map(mesh::vertex).toList();
        Vec3 middle = loop.place().centreM();
        List<Vec3[]> cap = new ArrayList<>();
        for (int k = 0; k < points.size(); k++) {
            cap.add(new Vec3[] {middle, points.get(k), points.get((k + 1) % points.size())});
        }
        // the sheet that most of the rim belongs to
        Map<Integer, Integer> votes = new TreeMap<>();
        List<Integer> v = loop.vertices();
        for (int k = 0; k < v.size(); k++) {
            Integer t = neighbours(v.get(k)).get(v.get((k + 1) % v.size()));
            if (t != null) {
                votes.merge(model.partOf(t), 1, Integer::sum);
            }
        }
        int part = votes.entrySet().stream()
                .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(e -> -e.getKey()))
                .map(Map.Entry::getKey)
                .orElse(0);
        String name = "gap " + number + " (" + side(loop.place(), box) + ")";
        // towards the middle of the mesh: the cavity's side of the gap, if the gap leads outside
        Vec3 normal = loop.place().normal();
        boolean outward = normal.dot(box.centre().minus(middle)) < 0;
        PlacedOutline place = outward ? RibSheets.polygon(points, loop.place().uAxis(), normal.negate()) : loop.place();
        model.gaps.add(new SheetModel.Gap(name, part, place, cap));
        model.remarks.add(String.format(
                Locale.ROOT,
                "%s: the mesh is open over %s, %.3f m across, at %s; it is treated as an opening without a cover",
                name,
                area(loop.areaM2()),
                2 * place.outline().reachM(),
                SpecCheck.at(middle)));
    }

    private static String area(double areaM2) {
        return areaM2 >= 0.1
                ? String.format(Locale.ROOT, "%.3f m²", areaM2)
                : String.format(Locale.ROOT, "%.1f cm²", 1e4 * areaM2);
    }

    /** Where a gap is, in words: the side of the mesh that it faces if it lies there, else "within". */
    private static String side(PlacedOutline place, Box3 box) {
        String[][] words = {{"forward end", "aft end"}, {"left end", "right end"}, {"bottom", "top"}};
        Vec3 n = place.normal();
        int axis = Math.abs(n.x()) >= Math.abs(n.y()) && Math.abs(n.x()) >= Math.abs(n.z())
                ? 0
                : Math.abs(n.y()) >= Math.abs(n.z()) ? 1 : 2;
        double size = Math.max(box.size().get(axis), 1e-9);
        double s = (place.centreM().get(axis) - box.min().get(axis)) / size;
        return s < 0.1 ? words[axis][0] : s > 0.9 ? words[axis][1] : "within";
    }
}
