package baymist.report;

import baymist.cavity.MeshHealth;
import baymist.cavity.MeshImport;
import baymist.geom.Vec3;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The health of a mesh as text and as JSON. */
final class MeshReport {
    private static final int BODIES = 5;

    private MeshReport() {}

    static void text(Page page, MeshHealth h) {
        page.heading("Mesh");
        MeshImport in = h.imported();
        page.line("%s used.", count(in.triangles(), "triangle"));
        dropped(page, in.flat(), "without area left out");
        dropped(page, in.twice(), "given twice; one of each is kept");
        if (in.welded() + in.zipped() > 0) {
            page.wrapped(
                    "* ",
                    text(
                            "gaps closed: %d vertices joined and %d set into edges, up to %s mm apart; %.3f m of free edges"
                                    + " are whole now",
                            in.welded(), in.zipped(), distance(in.widestM()), in.closedM()));
        }
        page.wrapped(
                "* ",
                h.freeEdges() == 0
                        ? "no free edges: the sheets are closed"
                        : text("%s, %.3f m; ", count(h.freeEdges(), "free edge"), h.freeEdgeM())
                                + (h.gaps() == 0
                                        ? "they bound no gap: rims inside, or slits"
                                        : "their closed loops make " + count(h.gaps(), "gap")
                                                + " (see Openings), the rest are rims inside or slits"));
        spots(page, h.edgeJoints(), "end on another sheet's edge without sharing it (T-joints), off by up to", null);
        spots(
                page,
                h.nearJoints(),
                "lie next to another sheet's corner without sharing it, off by up to",
                "close_gaps joins them");
        spots(page, h.faceJoints(), "stand on another sheet's face (a frame on a skin), off by up to", null);
        if (h.branchEdges() > 0) {
            page.wrapped(
                    "* ", h.branchEdges() + " edges where three or more sheets meet, as ribs do on skins: no fault");
        }
        if (h.opposed().count() > 0) {
            page.wrapped(
                    "* ",
                    h.opposed().count()
                            + " edges where neighbours of one part face opposite ways: harmless, both sides of a sheet"
                            + " count");
        }
        bodies(page, h.bodies());
    }

    private static void dropped(Page page, MeshImport.Dropped d, String words) {
        if (d.count() > 0) {
            page.wrapped(
                    "* ",
                    count(d.count(), "triangle") + " " + words + ", the first at "
                            + CheckReport.mm(d.places().get(0)));
        }
    }

    private static void spots(Page page, MeshHealth.Spots s, String words, @Nullable String advice) {
        if (s.count() > 0) {
            page.wrapped(
                    "* ",
                    text("%d vertices of free edges %s %s mm, at ", s.count(), words, distance(s.widestM()))
                            + s.places().stream().map(CheckReport::mm).collect(Collectors.joining(", "))
                            + (s.count() > s.places().size() ? " and more" : "")
                            + (advice == null ? "" : "; " + advice));
        }
    }

    private static void bodies(Page page, List<MeshHealth.Body> bodies) {
        if (bodies.size() <= 1) {
            page.wrapped("* ", "one body: every sheet hangs on the others");
            return;
        }
        page.wrapped("* ", bodies.size() + " bodies that share no vertex, the largest:");
        for (MeshHealth.Body b : bodies.subList(0, Math.min(BODIES, bodies.size()))) {
            page.line(
                    "  %11s  %7d triangles  %s, about %s",
                    TextReport.area(b.areaM2()), b.triangles(), b.part(), CheckReport.mm(b.centreM()));
        }
    }

    static ObjectNode json(MeshHealth h) {
        ObjectNode o = Json.object();
        MeshImport in = h.imported();
        o.put("triangles", in.triangles());
        dropped(o.putObject("flat"), in.flat());
        dropped(o.putObject("twice"), in.twice());
        o.put("welded", in.welded());
        o.put("zipped", in.zipped());
        Json.number(o, "widestClosedM", in.widestM());
        Json.number(o, "closedM", in.closedM());
        o.put("freeEdges", h.freeEdges());
        Json.number(o, "freeEdgeM", h.freeEdgeM());
        o.put("gaps", h.gaps());
        o.put("branchEdges", h.branchEdges());
        Json.number(o, "toleranceM", h.toleranceM());
        spots(o.putObject("opposedEdges"), h.opposed());
        spots(o.putObject("edgeJoints"), h.edgeJoints());
        spots(o.putObject("faceJoints"), h.faceJoints());
        spots(o.putObject("nearJoints"), h.nearJoints());
        ArrayNode bodies = o.putArray("bodies");
        for (MeshHealth.Body b : h.bodies()) {
            ObjectNode node = bodies.addObject();
            node.put("triangles", b.triangles());
            Json.number(node, "areaM2", b.areaM2());
            node.set("centreM", Json.vector(b.centreM()));
            node.put("part", b.part());
        }
        return o;
    }

    private static void dropped(ObjectNode o, MeshImport.Dropped d) {
        o.put("count", d.count());
        places(o, d.places());
    }

    private static void spots(ObjectNode o, MeshHealth.Spots s) {
        o.put("count", s.count());
        Json.number(o, "widestM", s.widestM());
        places(o, s.places());
    }

    private static void places(ObjectNode o, List<Vec3> places) {
        ArrayNode a = o.putArray("placesM");
        places.forEach(p -> a.add(Json.vector(p)));
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    /** Millimetres to two digits; below a nanometre it is rounding. */
    private static String distance(double m) {
        return m < 1e-9
                ? "0"
                : BigDecimal.valueOf(1e3 * m)
                        .round(new MathContext(2))
                        .stripTrailingZeros()
                        .toPlainString();
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
