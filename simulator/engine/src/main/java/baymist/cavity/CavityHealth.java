package baymist.cavity;

import baymist.geom.TriangleMesh;
import java.util.ArrayList;
import java.util.List;

/**
 * Facts about a cavity's sheets, to be shown before anything is computed.
 *
 * @param parts by part: areas and triangles
 * @param closuresM2 area of all pieces cut out and of all gap caps, in the sheets, m²
 * @param freeEdges edges of exactly one triangle of the whole sheets, caps included
 * @param freeEdgeM their length, m
 * @param branchEdges edges of more than two triangles (ribs on skins and the like)
 * @param gaps places where a mesh is open
 */
public record CavityHealth(
        List<PartArea> parts, double closuresM2, int freeEdges, double freeEdgeM, int branchEdges, int gaps) {
    /**
     * Area of a part, one side.
     *
     * @param wholeM2 openings not cut, m²
     * @param cutM2 openings cut out, m²
     */
    public record PartArea(String part, double gaugeM, double wholeM2, double cutM2, int triangles) {}

    public CavityHealth {
        parts = List.copyOf(parts);
    }

    public static CavityHealth of(Cavity cavity) {
        int n = cavity.parts().size();
        double[] whole = new double[n];
        double[] cut = new double[n];
        int[] triangles = new int[n];
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            int part = cavity.partOfSheet(t);
            if (part >= 0) {
                whole[part] += cavity.sheets().areaM2(t);
                triangles[part]++;
            }
        }
        for (int t = 0; t < cavity.cutSheets().triangleCount(); t++) {
            cut[cavity.partOfCut(t)] += cavity.cutSheets().areaM2(t);
        }
        List<PartArea> parts = new ArrayList<>();
        for (int p = 0; p < n; p++) {
            Part part = cavity.parts().get(p);
            parts.add(new PartArea(part.name(), part.gaugeM(), whole[p], cut[p], triangles[p]));
        }
        return withEdges(cavity, parts);
    }

    private static CavityHealth withEdges(Cavity cavity, List<PartArea> parts) {
        TriangleMesh mesh = cavity.sheets();
        EdgeTable edges = new EdgeTable(mesh);
        int free = 0;
        int branch = 0;
        double freeM = 0;
        for (int e = 0; e < edges.count(); e++) {
            if (edges.uses(e) == 1) {
                free++;
                freeM += mesh.vertex(edges.low(e)).distance(mesh.vertex(edges.high(e)));
            }
            branch += edges.uses(e) > 2 ? 1 : 0;
        }
        double closures = 0;
        for (int t = 0; t < cavity.closures().triangleCount(); t++) {
            closures += cavity.closures().areaM2(t);
        }
        int gaps = (int) cavity.openings().stream()
                .filter(o -> o.kind() == Opening.Kind.GAP)
                .count();
        return new CavityHealth(parts, closures, free, freeM, branch, gaps);
    }
}
