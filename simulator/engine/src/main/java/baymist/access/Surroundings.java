package baymist.access;

import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;

/**
 * Everything that a wand may touch, in one mesh with one tree: the sheets with their openings cut out, the cut-out pieces of
 * openings that are shut while spraying, and obstacles outside. Built once for all entries and wands of a scene; immutable.
 */
public final class Surroundings {
    private final Cavity cavity;
    private final boolean[] open;
    private final TriangleMesh mesh;
    private final Bvh bvh;
    /** Name of what each triangle belongs to, by {@link #owner}. */
    private final List<String> names;
    /** Index into names, [triangles]: parts first, then openings, then obstacles. */
    private final int[] owner;

    private final SheetSides sides;
    /** Bodies outside, in the way of the part of a wand that is not in yet. */
    private final List<baymist.scene.Obstacle> outside;

    /**
     * An obstacle outside the cavity.
     *
     * @param mesh its surface, m
     */
    public record Obstacle(String name, TriangleMesh mesh) {}

    /**
     * Gathers what stands in the way.
     *
     * @param openInPass whether each opening stands open while spraying, [openings]
     */
    public static Surroundings of(Cavity cavity, boolean[] openInPass, List<Obstacle> obstacles) {
        return new Surroundings(cavity, openInPass.clone(), obstacles, List.of());
    }

    /** What stands in the way in a scene. */
    public static Surroundings of(Cavity cavity, Scene scene) {
        return of(cavity, scene, OpenInPass.of(cavity, scene));
    }

    /** What stands in the way in a scene with other openings open, [openings]. */
    public static Surroundings of(Cavity cavity, Scene scene, boolean[] open) {
        return new Surroundings(cavity, open.clone(), List.of(), scene.obstacles());
    }

    private Surroundings(
            Cavity cavity, boolean[] open, List<Obstacle> obstacles, List<baymist.scene.Obstacle> outside) {
        this.outside = List.copyOf(outside);
        this.cavity = cavity;
        this.open = open;
        List<String> named = new ArrayList<>();
        cavity.parts().forEach(p -> named.add(p.name()));
        cavity.openings().forEach(o -> named.add("closed opening '" + o.name() + "'"));
        Soup soup = new Soup();
        for (int t = 0; t < cavity.cutSheets().triangleCount(); t++) {
            soup.add(cavity.cutSheets(), t, cavity.partOfCut(t));
        }
        for (int t = 0; t < cavity.closures().triangleCount(); t++) {
            int opening = cavity.openingOfClosure(t);
            if (opening >= 0 && !open[opening]) {
                soup.add(cavity.closures(), t, cavity.parts().size() + opening);
            }
        }
        for (Obstacle o : obstacles) {
            for (int t = 0; t < o.mesh().triangleCount(); t++) {
                soup.add(o.mesh(), t, named.size());
            }
            named.add(o.name());
        }
        this.names = List.copyOf(named);
        this.mesh = soup.mesh();
        this.owner = soup.owners.stream().mapToInt(Integer::intValue).toArray();
        this.bvh = Bvh.of(mesh);
        this.sides = SheetSides.of(cavity);
    }

    public Cavity cavity() {
        return cavity;
    }

    /** Whether an opening stands open while spraying. */
    public boolean open(int opening) {
        return open[opening];
    }

    /** All sheets, closures and obstacles. */
    public TriangleMesh mesh() {
        return mesh;
    }

    /** The tree over {@link #mesh}. */
    public Bvh bvh() {
        return bvh;
    }

    /** Bodies that the scene states outside the cavity. */
    public List<baymist.scene.Obstacle> outside() {
        return outside;
    }

    /** The sides of the whole sheets and how they join. */
    SheetSides sides() {
        return sides;
    }

    /** What a triangle of {@link #mesh} belongs to, as a report says it. */
    public String name(int triangle) {
        return names.get(owner[triangle]);
    }

    /** Part of the cavity that a triangle of {@link #mesh} belongs to; -1 for a closed opening or an obstacle. */
    public int part(int triangle) {
        return owner[triangle] < cavity.parts().size() ? owner[triangle] : -1;
    }

    private static final class Soup {
        final List<Vec3> points = new ArrayList<>();
        final List<Integer> owners = new ArrayList<>();

        void add(TriangleMesh from, int t, int owner) {
            for (int k = 0; k < 3; k++) {
                points.add(from.point(t, k));
            }
            owners.add(owner);
        }

        TriangleMesh mesh() {
            double[] xyz = new double[3 * points.size()];
            int[] corners = new int[points.size()];
            for (int i = 0; i < corners.length; i++) {
                Vec3 p = points.get(i);
                xyz[3 * i] = p.x();
                xyz[3 * i + 1] = p.y();
                xyz[3 * i + 2] = p.z();
                corners[i] = i;
            }
            return new TriangleMesh(xyz, corners);
        }
    }
}
