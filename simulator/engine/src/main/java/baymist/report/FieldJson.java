package baymist.report;

import baymist.field.Confirmation;
import baymist.field.PoseShare;
import baymist.field.ReachField;
import baymist.geom.Vec3;
import baymist.scene.PassSpec;
import baymist.scene.WandAim;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import org.jspecify.annotations.Nullable;

/** A reach field as JSON; keys in docs/formats/field.md. */
final class FieldJson {
    private FieldJson() {}

    static void write(ReachField f, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(f.scene()));
        ObjectNode region = root.putObject("region");
        region.put("where", f.region().where());
        Json.number(region, "areaM2", f.region().areaM2());
        region.set("centroidM", Json.vector(f.region().centroidM()));
        root.put("resolution", f.planning().words());
        root.put("air", ReachField.FROZEN);
        Json.number(root, "hangS", f.fog().hangS());
        root.put("jetOf", f.jet().wand());
        root.set("bestJet", place(f, f.jet().share(), true));
        root.set("bestFog", place(f, f.fog().share(), false));
        ArrayNode poses = root.putArray("poses");
        f.poses().forEach(p -> poses.add(pose(p)));
        root.set("confirmed", confirmed(f.confirmed()));
        if (f.pass() == null) {
            root.putNull("pass");
        } else {
            ObjectNode pass = root.putObject("pass");
            motion(pass, f.pass().pass());
            Json.number(pass, "wetted", f.pass().wetted());
            Json.number(pass, "fogM", f.pass().fogM());
        }
        root.set("confirmedPass", confirmed(f.confirmedPass()));
        root.set("cells", cells(f));
        Json.write(root, out);
    }

    private static ObjectNode place(ReachField f, double[] share, boolean withAim) {
        int c = FieldReport.best(share);
        ObjectNode o = Json.object();
        o.set("positionM", Json.vector(f.grid().centre(c)));
        o.put("bay", f.grid().bays().get(f.grid().bayOfCell(c)).name());
        Json.number(o, "share", share[c]);
        if (withAim) {
            double[] a = f.jet().aim();
            o.set("aim", Json.vector(new Vec3(a[3 * c], a[3 * c + 1], a[3 * c + 2])));
        }
        return o;
    }

    private static ObjectNode pose(PoseShare p) {
        PassSpec hold = p.hold();
        ObjectNode o = Json.object();
        o.put("entry", hold.entry());
        o.put("wand", hold.wand());
        o.put("aimed", hold.aim() instanceof WandAim.Near);
        Json.number(o, "depthM", hold.fromDepthM());
        Json.number(o, "clockRad", hold.clockRad());
        o.set("positionM", Json.vector(p.pose().positionM()));
        o.set("axis", Json.vector(p.pose().axis()));
        Json.number(o, "direct", p.direct());
        Json.number(o, "fog", p.fog());
        Json.number(o, "share", p.share());
        Json.number(o, "even", p.even());
        return o;
    }

    private static void motion(ObjectNode o, PassSpec p) {
        o.put("entry", p.entry());
        o.put("wand", p.wand());
        o.put("aimed", p.aim() instanceof WandAim.Near);
        Json.number(o, "fromM", p.fromDepthM());
        Json.number(o, "toM", p.toDepthM());
        Json.number(o, "drawBackMPerS", p.drawBackMPerS());
        Json.number(o, "clockRad", p.clockRad());
        Json.number(o, "holdS", p.holdS());
    }

    private static JsonNode confirmed(@Nullable Confirmation k) {
        if (k == null) {
            return NullNode.getInstance();
        }
        ObjectNode o = Json.object();
        motion(o.putObject("pass"), k.pass());
        Json.number(o, "predictedKg", k.predictedKg());
        Json.number(o, "gainedKg", k.gainedKg());
        Json.number(o, "filmBeforeM", k.filmBeforeM());
        Json.number(o, "filmAfterM", k.filmAfterM());
        Json.number(o, "reachedBefore", k.reachedBefore());
        Json.number(o, "reachedAfter", k.reachedAfter());
        Json.number(o, "allReachedBefore", k.allReachedBefore());
        Json.number(o, "allReachedAfter", k.allReachedAfter());
        return o;
    }

    private static ObjectNode cells(ReachField f) {
        ObjectNode o = Json.object();
        o.put("count", f.grid().cellCount());
        o.set("sizeM", Json.vector(f.grid().sizeM()));
        ArrayNode centre = o.putArray("centreM");
        ArrayNode jet = o.putArray("jet");
        ArrayNode fog = o.putArray("fog");
        for (int c = 0; c < f.grid().cellCount(); c++) {
            centre.add(Json.vector(f.grid().centre(c)));
            jet.add(rounded(f.jet().share()[c]));
            fog.add(rounded(f.fog().share()[c]));
        }
        return o;
    }

    /** Six digits are more than the model is good for. */
    private static double rounded(double share) {
        return share == 0
                ? 0
                : new java.math.BigDecimal(share)
                        .round(new java.math.MathContext(6))
                        .doubleValue();
    }
}
