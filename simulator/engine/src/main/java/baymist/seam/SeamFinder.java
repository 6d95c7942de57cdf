package baymist.seam;

import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Finds the seams of a cavity on its sheets. See the package description. */
public final class SeamFinder {
    /** An edge lies on a sheet within this, m, or within {@link #SHARE} of the structure's size. */
    private static final double EXACT_M = 2e-6;

    private static final double SHARE = 1e-7;
    /** ASSUMED: room between sheets that touch, beside half of both gauges, m. */
    private static final double ROOM_M = 0.1e-3;
    /** How far off the line the air of a wedge is looked at, m; where sheets stand apart, beyond the room between them. */
    private static final double OFF_M = 0.2e-3;

    private final Cavity cavity;
    private final LineContacts contacts;
    private final OpenAir air;
    private final double exactM;
    private final KnownLines known;
    private final List<SeamSegment> found = new ArrayList<>();
    /** Edges at which one sheet ends and nothing meets it. */
    private final List<Loose> loose = new ArrayList<>();

    private record Loose(int part, Vec3 from, Vec3 to) {}

    private SeamFinder(Cavity cavity, Bvh tree, double sizeM, double binM) {
        this.cavity = cavity;
        this.contacts = new LineContacts(cavity, tree);
        this.air = new OpenAir(cavity.sheets());
        this.exactM = Math.max(EXACT_M, SHARE * sizeM);
        this.known = new KnownLines(binM);
    }

    /** All seams that cavity air looks into, piece by piece, in a fixed order. */
    public static List<SeamSegment> find(Cavity cavity) {
        double size = cavity.cutSheets().triangleCount() == 0
                ? 0
                : cavity.cutSheets().bounds().size().length();
        if (!(size > 0)) {
            return List.of();
        }
        Bvh tree = Bvh.of(cavity.cutSheets());
        List<MeshEdges.Edge> edges = MeshEdges.of(cavity);
        double mean = edges.stream()
                .mapToDouble(e -> e.from().distance(e.to()))
                .average()
                .orElse(size);
        // as wide as an edge, however long the structure: what is near is few
        SeamFinder finder = new SeamFinder(cavity, tree, size, Math.min(size / 40, mean));
        for (MeshEdges.Edge e : edges) {
            finder.take(e.from(), e.to(), e.shared(), e.rim());
        }
        for (Vec3[] line : new CrossingLines(cavity, tree, finder.exactM).find()) {
            finder.take(line[0], line[1], false, false);
        }
        finder.takeNear();
        return List.copyOf(SeamChains.withoutSplinters(finder.found));
    }

    private void take(Vec3 from, Vec3 to, boolean shared, boolean rim) {
        for (LineContacts.Piece p : contacts.along(from, to, exactM, rim)) {
            List<Integer> parts = p.fan().parts();
            if (parts.size() > 1) {
                add(p, !shared, 2 * exactM, -1);
            } else if (parts.size() == 1 && p.fan().count(parts.get(0)) == 1) {
                loose.add(new Loose(parts.get(0), p.from(), p.to()));
            }
        }
    }

    /** Edges that touch nothing exactly, against sheets within half of both gauges. */
    private void takeNear() {
        double thickest =
                cavity.parts().stream().mapToDouble(p -> p.gaugeM()).max().orElse(0);
        for (Loose edge : loose) {
            double own = cavity.parts().get(edge.part).gaugeM();
            double near = 0.5 * (own + thickest) + ROOM_M;
            for (LineContacts.Piece p : contacts.along(edge.from, edge.to, near, false)) {
                if (p.fan().parts().size() > 1) {
                    add(p, true, 2 * near, edge.part);
                }
            }
        }
    }

    /** @param only the part that one of the two must be, or -1 */
    private void add(LineContacts.Piece p, boolean check, double nearM, int only) {
        Map<List<Integer>, List<SeamWedge>> wedges = new LinkedHashMap<>();
        Vec3 unit = p.fan().along();
        Vec3 middle = p.from().plus(p.to()).times(0.5);
        for (SheetFan.Sector s : p.fan().sectors()) {
            boolean wanted = only < 0 || s.partA() == only || s.partB() == only;
            if (wanted
                    && p.fan().kind(s.partA(), s.partB()) != null
                    && !air.isOutside(middle, unit, s.wedge(), OFF_M + (only < 0 ? 0 : nearM / 2))) {
                wedges.computeIfAbsent(List.of(s.partA(), s.partB()), k -> new ArrayList<>())
                        .add(s.wedge());
            }
        }
        wedges.forEach((parts, sides) -> {
            int a = parts.get(0);
            int b = parts.get(1);
            SeamKind kind = p.fan().kind(a, b);
            if (kind == null) {
                return;
            }
            List<double[]> spans = check
                    ? known.fresh(a, b, p.from(), p.to(), nearM)
                    : List.of(new double[] {0, p.from().distance(p.to())});
            double length = p.from().distance(p.to());
            for (double[] span : spans) {
                Vec3 from = span[0] <= 0 ? p.from() : p.from().plus(span[0], unit);
                Vec3 to = span[1] >= length ? p.to() : p.from().plus(span[1], unit);
                SeamSegment segment = new SeamSegment(a, b, kind, from, to, sides);
                known.add(segment);
                found.add(segment);
            }
        });
    }
}
