package baymist.cavity;

import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.PhaseStates;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Sheets under construction: vertices welded where their coordinates agree to the bit, triangles with their part, and the
 * openings that the family itself knows. Belongs to one build and one thread.
 */
final class SheetModel {
    /** An opening that the family places by itself (holes in ribs, ends of short ribs). */
    record Placed(
            String name, int part, Opening.Kind kind, PlacedOutline place, PhaseStates states, SourcePlace source) {}

    /** A place where the sheets leave the cavity open, with the cap triangles that close it. */
    record Gap(String name, int part, PlacedOutline place, List<Vec3[]> cap) {}

    private final VertexTable vertices = new VertexTable();
    private int[] corners = new int[96];
    private int[] partOfTriangle = new int[32];
    private int triangles;

    final List<Part> parts = new ArrayList<>();
    final List<Placed> placed = new ArrayList<>();
    final List<Gap> gaps = new ArrayList<>();
    final List<String> remarks = new ArrayList<>();
    /** Set by meshes only. */
    @Nullable
    MeshImport imported;

    int part(String name, PartKind kind, double gaugeM) {
        parts.add(new Part(name, kind, gaugeM));
        return parts.size() - 1;
    }

    int vertex(Vec3 p) {
        return vertices.number(p.x(), p.y(), p.z());
    }

    Vec3 point(int vertex) {
        return new Vec3(vertices.coordinate(vertex, 0), vertices.coordinate(vertex, 1), vertices.coordinate(vertex, 2));
    }

    /** Adds a triangle unless two of its corners coincide. */
    void triangle(int part, Vec3 a, Vec3 b, Vec3 c) {
        triangle(part, vertex(a), vertex(b), vertex(c));
    }

    void triangle(int part, int a, int b, int c) {
        if (a == b || b == c || c == a) {
            return;
        }
        if (triangles == partOfTriangle.length) {
            partOfTriangle = Arrays.copyOf(partOfTriangle, 2 * triangles);
            corners = Arrays.copyOf(corners, 6 * triangles);
        }
        corners[3 * triangles] = a;
        corners[3 * triangles + 1] = b;
        corners[3 * triangles + 2] = c;
        partOfTriangle[triangles++] = part;
    }

    /** Adds a quadrilateral a, b, c, d (in turn), split along its shorter diagonal; a side may have no length. */
    void quad(int part, Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
        if (a.distance(c) <= b.distance(d)) {
            triangle(part, a, b, c);
            triangle(part, a, c, d);
        } else {
            triangle(part, a, b, d);
            triangle(part, b, c, d);
        }
    }

    int partOf(int triangle) {
        return partOfTriangle[triangle];
    }

    int triangleCount() {
        return triangles;
    }

    TriangleMesh mesh() {
        return new TriangleMesh(vertices.toArray(), Arrays.copyOf(corners, 3 * triangles));
    }

    int[] partOfTriangle() {
        return Arrays.copyOf(partOfTriangle, triangles);
    }
}
