package baymist.picture;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.cavity.Part;
import baymist.coverage.Compass;
import baymist.geom.Vec3;
import baymist.run.RunResult;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Sorts the interior surfels of a result into panels. */
final class PanelFinder {
    /** A part is shown as two faces when this share of its area looks within 60 degrees of one line, else as six sides. */
    private static final double FLAT_SHARE = 0.8;

    private static final double LOOKS_ALONG = 0.5;
    /** A face with less than this share of its part's area is drawn with the other face. */
    private static final double SLIVER = 0.02;

    private final Cavity cavity;
    private final SurfelSet surfels;
    private final Vec3 voxel;
    private final Compass compass;

    PanelFinder(RunResult result) {
        this(result.cavity(), result.grid());
    }

    PanelFinder(Cavity cavity, VoxelGrid grid) {
        this.cavity = cavity;
        this.surfels = grid.surfels();
        this.voxel = grid.sizeM();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double y : surfels.centreY()) {
            low = Math.min(low, y);
            high = Math.max(high, y);
        }
        this.compass = Compass.of(cavity, low, high);
    }

    /** Panels in the order skins, spars, ribs, stringers, walls, others; every surfel of the structure is in one. */
    List<Panel> find() {
        Map<Integer, List<Integer>> byPart = new TreeMap<>();
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s) && surfels.areaM2()[s] > 0) {
                byPart.computeIfAbsent(surfels.part()[s], k -> new ArrayList<>())
                        .add(s);
            }
        }
        List<Map.Entry<Integer, List<Integer>>> parts = new ArrayList<>(byPart.entrySet());
        parts.sort(Comparator.comparing((Map.Entry<Integer, List<Integer>> e) ->
                        part(e.getKey()).kind())
                .thenComparing(Map.Entry::getKey));
        List<Panel> panels = new ArrayList<>();
        for (Map.Entry<Integer, List<Integer>> e : parts) {
            List<int[]> faces =
                    faces(e.getValue().stream().mapToInt(Integer::intValue).toArray());
            for (int[] face : faces) {
                panels.add(panel(e.getKey(), face, faces.size() > 1));
            }
        }
        return panels;
    }

    /** The faces of one part, larger coordinates first. */
    private List<int[]> faces(int[] all) {
        Vec3 line = mainLine(all);
        double area = 0;
        double along = 0;
        double up = 0;
        for (int s : all) {
            double a = surfels.areaM2()[s];
            double c = normal(s).dot(line);
            area += a;
            along += Math.abs(c) >= LOOKS_ALONG ? a : 0;
            up += c > 0 ? a : 0;
        }
        Map<Integer, List<Integer>> faces = new TreeMap<>();
        boolean flat = along >= FLAT_SHARE * area;
        boolean oneFace = Math.min(up, area - up) < SLIVER * area;
        for (int s : all) {
            int face = !flat ? side(normal(s)) : oneFace || normal(s).dot(line) > 0 ? 0 : 1;
            faces.computeIfAbsent(face, k -> new ArrayList<>()).add(s);
        }
        return faces.values().stream()
                .map(f -> f.stream().mapToInt(Integer::intValue).toArray())
                .toList();
    }

    /** The line that the normals follow best: main direction of the sum of a n n', by power iteration. */
    private Vec3 mainLine(int[] all) {
        double[] m = new double[6];
        for (int s : all) {
            Vec3 n = normal(s);
            double a = surfels.areaM2()[s];
            m[0] += a * n.x() * n.x();
            m[1] += a * n.y() * n.y();
            m[2] += a * n.z() * n.z();
            m[3] += a * n.x() * n.y();
            m[4] += a * n.y() * n.z();
            m[5] += a * n.z() * n.x();
        }
        Vec3 v = m[2] >= m[1] && m[2] >= m[0] ? Vec3.Z : m[1] >= m[0] ? Vec3.Y : Vec3.X;
        for (int i = 0; i < 60; i++) {
            v = new Vec3(
                            m[0] * v.x() + m[3] * v.y() + m[5] * v.z(),
                            m[3] * v.x() + m[1] * v.y() + m[4] * v.z(),
                            m[5] * v.x() + m[4] * v.y() + m[2] * v.z())
                    .unit();
        }
        return v;
    }

    private static int side(Vec3 n) {
        int axis = mainAxis(n);
        return 2 * (2 - axis) + (n.get(axis) > 0 ? 0 : 1);
    }

    private static int mainAxis(Vec3 n) {
        double x = Math.abs(n.x());
        double y = Math.abs(n.y());
        double z = Math.abs(n.z());
        return z >= x && z >= y ? 2 : x >= y ? 0 : 1;
    }

    private Panel panel(int part, int[] face, boolean nameFace) {
        Vec3 sum = Vec3.ZERO;
        for (int s : face) {
            sum = sum.plus(surfels.areaM2()[s], normal(s));
        }
        Vec3 n = sum.length() > 0 ? sum.unit() : normal(face[0]);
        int axis = mainAxis(n);
        boolean positive = n.get(axis) > 0;
        Vec3 wantedRight = axis == 1 ? Vec3.X : Vec3.Y;
        Vec3 right = wantedRight.plus(-wantedRight.dot(n), n).unit();
        Vec3 wantedUp = axis == 2 ? Vec3.X.negate() : Vec3.Z;
        Vec3 up = n.cross(right);
        up = up.dot(wantedUp) < 0 ? up.negate() : up;
        List<Opening> openings = openingsOn(part, face, n);
        Extent extent = new Extent(right, up);
        double cellU = spacing(right);
        double cellV = spacing(up);
        double offset = 0;
        double area = 0;
        for (int s : face) {
            extent.include(centre(s), cellU / 2, cellV / 2);
            offset += surfels.areaM2()[s] * centre(s).dot(n);
            area += surfels.areaM2()[s];
        }
        for (Opening o : openings) {
            for (double[] q : o.place().outline().polygon(32)) {
                extent.include(o.place().point(q[0], q[1]), 0, 0);
            }
        }
        String title = part(part).name() + (nameFace ? ", " + compass.word(axis, positive) + " face" : "");
        return new Panel(
                title,
                view(axis, positive),
                part,
                face,
                openings,
                right,
                up,
                n,
                extent.lowU,
                extent.highU,
                extent.lowV,
                extent.highV,
                cellU,
                cellV,
                offset / area);
    }

    /** Openings in a part that lie on one of its faces; on a curved part, those with surfels of the face round them. */
    private List<Opening> openingsOn(int part, int[] face, Vec3 normal) {
        List<Opening> found = new ArrayList<>();
        for (Opening o : cavity.openings()) {
            if (o.part() == part && Math.abs(o.place().normal().dot(normal)) >= LOOKS_ALONG) {
                double reach = o.place().outline().reachM() + 3 * voxel.length();
                Vec3 c = o.place().centreM();
                if (Arrays.stream(face).anyMatch(s -> c.distance(centre(s)) < reach)) {
                    found.add(o);
                }
            }
        }
        return List.copyOf(found);
    }

    /** Extent on the page, m. */
    private static final class Extent {
        private final Vec3 right;
        private final Vec3 up;
        private double lowU = Double.POSITIVE_INFINITY;
        private double highU = Double.NEGATIVE_INFINITY;
        private double lowV = Double.POSITIVE_INFINITY;
        private double highV = Double.NEGATIVE_INFINITY;

        Extent(Vec3 right, Vec3 up) {
            this.right = right;
            this.up = up;
        }

        void include(Vec3 p, double halfU, double halfV) {
            lowU = Math.min(lowU, p.dot(right) - halfU);
            highU = Math.max(highU, p.dot(right) + halfU);
            lowV = Math.min(lowV, p.dot(up) - halfV);
            highV = Math.max(highV, p.dot(up) + halfV);
        }
    }

    /** The page shows every z face from above, every x face from aft and every y face from the low side. */
    private String view(int axis, boolean positive) {
        boolean towardsUs = axis == 1 ? !positive : positive;
        String from = axis == 2 ? "above" : axis == 0 ? "aft" : compass.word(1, false);
        String arrows = switch (axis) {
            case 2 -> "forward \u2191  " + compass.word(1, true) + " \u2192";
            case 0 -> "up \u2191  " + compass.word(1, true) + " \u2192";
            default -> "up \u2191  aft \u2192";
        };
        String the = from.equals("left") ? "the left" : from;
        return "seen from " + the + (towardsUs ? "" : " through the sheet") + ";  " + arrows;
    }

    private double spacing(Vec3 along) {
        // the spacing of cell centres along a line of the plane: that of the axis it follows most
        return Math.max(
                Math.abs(along.x()) * voxel.x(),
                Math.max(Math.abs(along.y()) * voxel.y(), Math.abs(along.z()) * voxel.z()));
    }

    private Part part(int p) {
        return cavity.parts().get(p);
    }

    private Vec3 normal(int s) {
        return new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]);
    }

    private Vec3 centre(int s) {
        return new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
    }
}
