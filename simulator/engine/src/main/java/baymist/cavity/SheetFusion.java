package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Makes one sheet of two that lie on each other where bodies adjoin: what both have in common becomes a part of its own, which
 * both bodies see from their side, and all sheets at the seam get common vertices.
 *
 * <p>Two sheets in one place would be told apart by rounding only: which of the two a cell sees, and so whose area it carries,
 * would be chance. One sheet between the two airs is what the voxels can hold exactly; and since it is its own part, none of its
 * area is mixed up with that of the sheet beside it, behind which lies the open air.
 */
final class SheetFusion {
    /** Sine of the angle up to which two sheets count as parallel. */
    private static final double PARALLEL = 1e-3;
    /** Places in one plane that should agree do so to rounding, m. Wider, crossing edges that nearly meet would fold over. */
    private static final double SAME_M = 1e-9;

    private final double toleranceM;
    private final int[] bodyOfPart;
    private List<Triangle> sheets;
    private final List<Contact> contacts = new ArrayList<>();

    /** A triangle of a part. */
    record Triangle(int part, List<Vec3> corners, Vec3 normal, Box3 box) {
        static Triangle of(int part, Vec3 a, Vec3 b, Vec3 c) {
            Vec3 area = SheetCutter.areaVector(List.of(a, b, c));
            return new Triangle(
                    part,
                    List.of(a, b, c),
                    area.length() > 0 ? area.unit() : Vec3.ZERO,
                    Box3.EMPTY.including(a).including(b).including(c));
        }
    }

    /**
     * A place where two parts lie on each other.
     *
     * @param kept part of the body listed first; lost that of the other one
     * @param shared part that the common area becomes
     * @param keptSheet, lostSheet their triangles in the plane, before the cut
     */
    record Contact(
            int kept,
            int lost,
            int shared,
            Vec3 onPlane,
            Vec3 normal,
            List<Triangle> keptSheet,
            List<Triangle> lostSheet) {
        double heightM(Vec3 p) {
            return p.minus(onPlane).dot(normal);
        }

        /** Whether a point of the plane lies in both sheets. */
        boolean covers(Vec3 p) {
            return in(keptSheet, p, normal) && in(lostSheet, p, normal);
        }

        static boolean in(List<Triangle> sheet, Vec3 p, Vec3 normal) {
            for (Triangle t : sheet) {
                double least = Double.POSITIVE_INFINITY;
                double most = Double.NEGATIVE_INFINITY;
                for (int k = 0; k < 3; k++) {
                    Vec3 a = t.corners().get(k);
                    Vec3 b = t.corners().get((k + 1) % 3);
                    double side = b.minus(a).cross(p.minus(a)).dot(normal) / b.distance(a);
                    least = Math.min(least, side);
                    most = Math.max(most, side);
                }
                // a hair's breadth of slack, so that no point falls between two triangles
                if (least >= -1e-9 || most <= 1e-9) {
                    return true;
                }
            }
            return false;
        }
    }

    /** @param bodyOfPart body of each part; parts of one body are left as they are */
    SheetFusion(SheetModel model, int[] bodyOfPart, double toleranceM) {
        this.toleranceM = toleranceM;
        this.bodyOfPart = bodyOfPart.clone();
        this.sheets = new ArrayList<>();
        TriangleMesh mesh = model.mesh();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            sheets.add(Triangle.of(model.partOf(t), mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2)));
        }
    }

    List<Contact> contacts() {
        return contacts;
    }

    /** Fuses all contacts and writes the sheets into a model. */
    void fuse(SheetModel into) {
        find();
        for (Contact contact : contacts) {
            fuse(contact);
        }
        for (Triangle t : sheets) {
            into.triangle(
                    t.part(),
                    t.corners().get(0),
                    t.corners().get(1),
                    t.corners().get(2));
        }
    }

    private void find() {
        Map<Integer, Box3> boxes = new LinkedHashMap<>();
        for (Triangle t : sheets) {
            boxes.merge(bodyOfPart[t.part()], t.box(), Box3::including);
        }
        for (int i : boxes.keySet()) {
            for (int j : boxes.keySet()) {
                if (i < j && touch(boxes.getOrDefault(i, Box3.EMPTY), boxes.getOrDefault(j, Box3.EMPTY))) {
                    find(near(i, boxes.getOrDefault(j, Box3.EMPTY)), near(j, boxes.getOrDefault(i, Box3.EMPTY)));
                }
            }
        }
    }

    private List<Triangle> near(int body, Box3 box) {
        return sheets.stream()
                .filter(t -> bodyOfPart[t.part()] == body && touch(t.box(), box))
                .toList();
    }

    private boolean touch(Box3 a, Box3 b) {
        for (int axis = 0; axis < 3; axis++) {
            if (a.min().get(axis) > b.max().get(axis) + toleranceM
                    || b.min().get(axis) > a.max().get(axis) + toleranceM) {
                return false;
            }
        }
        return true;
    }

    private void find(List<Triangle> first, List<Triangle> second) {
        for (Triangle a : first) {
            for (Triangle b : second) {
                if (touch(a.box(), b.box()) && lieTogether(a, b) && !known(a, b) && overlap(a, b)) {
                    Vec3 on = a.corners().get(0);
                    contacts.add(new Contact(
                            a.part(),
                            b.part(),
                            bodyOfPart.length + contacts.size(),
                            on,
                            a.normal(),
                            inPlane(a.part(), on, a.normal()),
                            inPlane(b.part(), on, a.normal())));
                }
            }
        }
    }

    private boolean lieTogether(Triangle a, Triangle b) {
        return inPlane(b, a.corners().get(0), a.normal());
    }

    private boolean inPlane(Triangle t, Vec3 on, Vec3 normal) {
        return Math.abs(t.normal().dot(normal)) > 0.5
                && t.normal().cross(normal).length() <= PARALLEL
                && t.corners().stream().allMatch(p -> Math.abs(p.minus(on).dot(normal)) <= toleranceM);
    }

    private List<Triangle> inPlane(int part, Vec3 on, Vec3 normal) {
        return sheets.stream()
                .filter(t -> t.part() == part && inPlane(t, on, normal))
                .toList();
    }

    private boolean known(Triangle a, Triangle b) {
        return contacts.stream()
                .anyMatch(c -> c.kept() == a.part()
                        && c.lost() == b.part()
                        && inPlane(a, c.onPlane(), c.normal())
                        && inPlane(b, c.onPlane(), c.normal()));
    }

    /** Whether two triangles of one plane share more than an edge: one cut by the sides of the other leaves an area. */
    private boolean overlap(Triangle a, Triangle b) {
        List<Vec3> rest = b.corners();
        for (int k = 0; k < 3 && rest.size() >= 3; k++) {
            Vec3 p = a.corners().get(k);
            Vec3 inward =
                    a.normal().cross(a.corners().get((k + 1) % 3).minus(p)).unit();
            List<Vec3> kept = new ArrayList<>();
            for (int i = 0; i < rest.size(); i++) {
                Vec3 u = rest.get(i);
                Vec3 v = rest.get((i + 1) % rest.size());
                double du = u.minus(p).dot(inward);
                double dv = v.minus(p).dot(inward);
                if (du >= 0) {
                    kept.add(u);
                }
                if (du * dv < 0) {
                    kept.add(u.plus(du / (du - dv), v.minus(u)));
                }
            }
            rest = kept;
        }
        double size = Math.min(a.box().size().length(), b.box().size().length());
        return rest.size() >= 3 && SheetCutter.area(rest) > toleranceM * size;
    }

    /** Lays the vertices of both sheets into the common plane, in all sheets that have them. */
    private void flatten(Contact c) {
        Map<Vec3, Vec3> moved = new HashMap<>();
        for (Triangle t : sheets) {
            if ((t.part() == c.kept() || t.part() == c.lost()) && inPlane(t, c.onPlane(), c.normal())) {
                for (Vec3 p : t.corners()) {
                    double h = c.heightM(p);
                    moved.put(p, Math.abs(h) > 1e-3 * SAME_M ? p.plus(-h, c.normal()) : p);
                }
            }
        }
        List<Triangle> flat = new ArrayList<>();
        for (Triangle t : sheets) {
            List<Vec3> p = t.corners();
            List<Vec3> q = p.stream().map(v -> moved.getOrDefault(v, v)).toList();
            flat.add(q.equals(p) ? t : Triangle.of(t.part(), q.get(0), q.get(1), q.get(2)));
        }
        sheets = flat;
    }

    private void fuse(Contact c) {
        flatten(c);
        List<Triangle> kept = inPlane(c.kept(), c.onPlane(), c.normal());
        List<Triangle> lost = inPlane(c.lost(), c.onPlane(), c.normal());
        Predicate<Vec3> atSeam = p -> Math.abs(c.heightM(p)) <= SAME_M;
        PlateMesher mesher = new PlateMesher(SAME_M, atSeam);
        List<Integer> numbersOfLost = new ArrayList<>();
        kept.forEach(t -> mesher.plate(t.part(), t.corners()));
        lost.forEach(t -> numbersOfLost.add(mesher.plate(t.part(), t.corners())));
        cutters(mesher, kept, c.normal(), true);
        // all edges, since webs of the other body may stand on them
        cutters(mesher, lost, c.normal(), false);
        Set<Triangle> flat = new HashSet<>(kept);
        flat.addAll(lost);
        List<Triangle> rest = new ArrayList<>();
        for (Triangle t : sheets) {
            if (flat.contains(t)) {
                continue;
            }
            if (t.corners().stream().anyMatch(atSeam)) {
                mesher.follower(t.part(), t.corners());
            } else {
                rest.add(t);
            }
        }
        SheetModel meshed = new SheetModel();
        int from = numbersOfLost.isEmpty() ? 0 : numbersOfLost.get(0);
        int to = from + numbersOfLost.size();
        mesher.mesh(meshed, (plate, ownPart, middle) -> {
            boolean ofLost = plate >= from && plate < to;
            if (ofLost) {
                return Contact.in(kept, middle, c.normal()) ? -1 : ownPart;
            }
            return plate < from && Contact.in(lost, middle, c.normal()) ? c.shared() : ownPart;
        });
        TriangleMesh mesh = meshed.mesh();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            rest.add(Triangle.of(meshed.partOf(t), mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2)));
        }
        sheets = rest;
    }

    /** Upright strips through the rim of a flat sheet, or through all its edges. */
    private void cutters(PlateMesher mesher, List<Triangle> sheet, Vec3 normal, boolean rimOnly) {
        Map<List<Vec3>, Integer> uses = new HashMap<>();
        for (Triangle t : sheet) {
            for (int k = 0; k < 3; k++) {
                Vec3 a = t.corners().get(k);
                Vec3 b = t.corners().get((k + 1) % 3);
                uses.merge(List.of(a, b), 1, Integer::sum);
                uses.merge(List.of(b, a), 1, Integer::sum);
            }
        }
        double high = 0.01;
        for (Triangle t : sheet) {
            for (int k = 0; k < 3; k++) {
                Vec3 a = t.corners().get(k);
                Vec3 b = t.corners().get((k + 1) % 3);
                if (!rimOnly || uses.getOrDefault(List.of(a, b), 0) == 1) {
                    mesher.cutter(List.of(
                            a.plus(-high, normal), b.plus(-high, normal), b.plus(high, normal), a.plus(high, normal)));
                }
            }
        }
    }
}
