package baymist.cavity;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The sheet-metal body of a job, immutable.
 *
 * <p>It holds the sheets twice. {@code sheets} are whole: openings are not cut, their exact outlines decide where rays and
 * air pass; a sheet without cuts can't leak. {@code cutSheets} have every opening cut out by 2-D boolean (polygons matched
 * in area) for surface area, clearance of the wand and display. {@code closures} are the pieces cut out: they carry a
 * mask's or plug's product.
 */
public final class Cavity {
    private final String name;
    private final List<Part> parts;
    private final List<Opening> openings;
    private final TriangleMesh sheets;
    private final int[] partOfSheet;
    private final TriangleMesh cutSheets;
    private final int[] partOfCut;
    private final TriangleMesh closures;
    private final int[] openingOfClosure;
    private final @Nullable Vec3 inside;
    private final List<String> remarks;
    private final @Nullable MeshImport imported;
    /** Gap opening that a virtual cap of {@code sheets} belongs to, -1 for real sheet, [sheets]. */
    private final int[] gapOfSheet;

    /**
     * @param partOfSheet part index of each triangle of {@code sheets}; -1 = virtual cap of a GAP opening
     * @param openingOfClosure opening index of each triangle of {@code closures}
     * @param inside a point of the cavity, or null for everything enclosed
     * @param remarks findings about the geometry in words (closed gaps, duplicate triangles), each with a position
     */
    public Cavity(
            String name,
            List<Part> parts,
            List<Opening> openings,
            TriangleMesh sheets,
            int[] partOfSheet,
            TriangleMesh cutSheets,
            int[] partOfCut,
            TriangleMesh closures,
            int[] openingOfClosure,
            @Nullable Vec3 inside,
            List<String> remarks) {
        this(
                name,
                parts,
                openings,
                sheets,
                partOfSheet,
                cutSheets,
                partOfCut,
                closures,
                openingOfClosure,
                inside,
                remarks,
                null);
    }

    /** @param imported what was found on the way in if the sheets come from a mesh file, else null */
    Cavity(
            String name,
            List<Part> parts,
            List<Opening> openings,
            TriangleMesh sheets,
            int[] partOfSheet,
            TriangleMesh cutSheets,
            int[] partOfCut,
            TriangleMesh closures,
            int[] openingOfClosure,
            @Nullable Vec3 inside,
            List<String> remarks,
            @Nullable MeshImport imported) {
        this.name = name;
        this.imported = imported;
        this.parts = List.copyOf(parts);
        this.openings = List.copyOf(openings);
        this.sheets = sheets;
        this.partOfSheet = partOfSheet.clone();
        this.cutSheets = cutSheets;
        this.partOfCut = partOfCut.clone();
        this.closures = closures;
        this.openingOfClosure = openingOfClosure.clone();
        this.inside = inside;
        this.remarks = List.copyOf(remarks);
        this.gapOfSheet = gapsOfCaps();
    }

    /** A cap stands in the whole sheets and among the closures with the same corners: that tells its opening. */
    private int[] gapsOfCaps() {
        Map<List<Vec3>, Integer> caps = new HashMap<>();
        for (int t = 0; t < closures.triangleCount(); t++) {
            int opening = openingOfClosure[t];
            if (opening >= 0
                    && opening < openings.size()
                    && openings.get(opening).kind() == Opening.Kind.GAP) {
                caps.put(corners(closures, t), opening);
            }
        }
        int[] gap = new int[sheets.triangleCount()];
        for (int t = 0; t < gap.length; t++) {
            gap[t] = partOfSheet[t] < 0 ? caps.getOrDefault(corners(sheets, t), -1) : -1;
        }
        return gap;
    }

    private static List<Vec3> corners(TriangleMesh mesh, int t) {
        return List.of(mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2));
    }

    public String name() {
        return name;
    }

    public List<Part> parts() {
        return parts;
    }

    public List<Opening> openings() {
        return openings;
    }

    /** Whole sheets, openings not cut; virtual caps of gaps included (part -1). */
    public TriangleMesh sheets() {
        return sheets;
    }

    /** Part of a triangle of {@link #sheets()}; -1 = virtual cap of a gap. */
    public int partOfSheet(int triangle) {
        return partOfSheet[triangle];
    }

    /** Opening of kind GAP that a virtual cap of {@link #sheets()} closes; -1 for real sheet (or an unknown cap). */
    public int gapOfSheet(int triangle) {
        return gapOfSheet[triangle];
    }

    /** Sheets with the openings cut out; no caps. */
    public TriangleMesh cutSheets() {
        return cutSheets;
    }

    public int partOfCut(int triangle) {
        return partOfCut[triangle];
    }

    /** The pieces cut out of the sheets. */
    public TriangleMesh closures() {
        return closures;
    }

    public int openingOfClosure(int triangle) {
        return openingOfClosure[triangle];
    }

    public @Nullable Vec3 inside() {
        return inside;
    }

    public List<String> remarks() {
        return remarks;
    }

    /** What was found while a mesh file was brought in; null for other families. */
    public @Nullable MeshImport imported() {
        return imported;
    }

    /** Index of the part with this name, also as a mesh file may write it ("SKIN_A" for "skin a"), or -1. */
    public int partIndex(String partName) {
        return Names.find(partName, parts.stream().map(Part::name).toList());
    }

    /** Index of the opening with this name, or -1. */
    public int openingIndex(String openingName) {
        for (int i = 0; i < openings.size(); i++) {
            if (openings.get(i).name().equals(openingName)) {
                return i;
            }
        }
        return -1;
    }
}
