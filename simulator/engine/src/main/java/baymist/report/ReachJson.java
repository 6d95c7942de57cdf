package baymist.report;

import baymist.access.ReachShare;
import baymist.access.SagResult;
import baymist.access.WandPose;
import baymist.access.WandStop;
import baymist.access.WandWay;
import baymist.geom.Vec3;
import baymist.run.ReachLine;
import baymist.run.ReachResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;

/** A study of reach as JSON; keys in docs/formats/reach.md. */
final class ReachJson {
    private ReachJson() {}

    static void write(ReachResult r, Writer out) throws IOException {
        ObjectNode root = Json.object();
        root.put("baymist", ResultJson.FORMAT);
        root.set("scene", ResultJson.scene(r.scene()));
        Json.number(root, "withinM", r.withinM());
        root.set("together", share(r.together()));
        ArrayNode insertions = root.putArray("insertions");
        for (ReachLine l : r.lines()) {
            insertions.add(insertion(r, l));
        }
        root.set("findings", ResultJson.findings(r.findings()));
        Json.write(root, out);
    }

    private static ObjectNode insertion(ReachResult r, ReachLine l) {
        ObjectNode o = Json.object();
        o.put("entry", l.entry().name());
        o.put("wand", l.wand().name());
        o.put("kind", l.wand().kind().name().toLowerCase(Locale.ROOT));
        o.put("opening", r.cavity().openings().get(l.openingIndex()).name());
        o.put("opened", l.opened());
        o.put("feasible", l.reach().feasible());
        ObjectNode depth = o.putObject("depthM");
        Json.number(depth, "min", l.reach().minDepthM());
        Json.number(depth, "max", l.reach().maxDepthM());
        o.put("stoppedBy", ReachReport.stoppedBy(l));
        WandStop stop = l.reach().stop();
        if (stop == null) {
            o.putNull("stop");
        } else {
            ObjectNode s = o.putObject("stop");
            s.put("part", stop.partName());
            s.set("placeM", Json.vector(stop.placeM()));
            Json.number(s, "clearanceM", stop.clearanceM());
            s.put("why", stop.why());
        }
        Json.number(o, "resolutionM", l.reach().resolutionM());
        o.put("complete", l.reach().complete());
        o.set("share", share(l.share()));
        ArrayNode bays = o.putArray("bays");
        l.bays().forEach(bays::add);
        SagResult sag = l.sag();
        if (sag == null) {
            o.putNull("sag");
        } else {
            o.set("sag", sag(sag));
        }
        ArrayNode tips = o.putArray("tips");
        l.reach().tips().forEach(p -> tips.add(tip(p)));
        ArrayNode ways = o.putArray("ways");
        l.reach().ways().forEach(w -> ways.add(way(w)));
        o.put("explanation", ReachWords.of(l));
        return o;
    }

    private static ObjectNode way(WandWay w) {
        ObjectNode o = Json.object();
        ArrayNode through = o.putArray("through");
        w.through().forEach(through::add);
        Json.number(o, "depthM", w.depthM());
        Json.number(o, "bendRad", w.bendRad());
        Json.number(o, "pushN", w.pushN());
        return o;
    }

    private static ObjectNode share(ReachShare s) {
        ObjectNode o = Json.object();
        Json.number(o, "surface", s.surface());
        Json.number(o, "volume", s.volume());
        return o;
    }

    private static ObjectNode tip(WandPose p) {
        ObjectNode o = Json.object();
        Json.number(o, "depthM", p.depthM());
        o.set("positionM", Json.vector(p.tipM()));
        o.set("axis", Json.vector(p.tipAxis()));
        o.set("bodyM", line(p.centrelineM()));
        return o;
    }

    private static ArrayNode line(List<Vec3> points) {
        ArrayNode a = Json.array();
        points.forEach(p -> a.add(Json.vector(p)));
        return a;
    }

    private static ObjectNode sag(SagResult s) {
        ObjectNode o = Json.object();
        Json.number(o, "depthM", s.depthM());
        Json.number(o, "dropM", s.dropM());
        Json.number(o, "clockRad", s.dropClockRad());
        o.set("straightTipM", Json.vector(s.straightTipM()));
        o.set("tipM", Json.vector(s.tipM()));
        o.set("tipAxis", Json.vector(s.tipAxis()));
        Json.number(o, "stressPa", s.stressPa());
        Json.number(o, "stressAtM", s.stressAtM());
        Json.number(o, "yieldPa", s.yieldPa());
        o.put("yields", s.yields());
        ArrayNode rests = o.putArray("rests");
        for (SagResult.Rest rest : s.rests()) {
            ObjectNode x = rests.addObject();
            x.put("on", rest.on());
            Json.number(x, "depthM", rest.depthM());
            x.set("placeM", Json.vector(rest.placeM()));
            Json.number(x, "forceN", rest.forceN());
        }
        SagResult.Catch c = s.catchesOn();
        if (c == null) {
            o.putNull("catchesOn");
        } else {
            ObjectNode x = o.putObject("catchesOn");
            x.put("on", c.on());
            Json.number(x, "depthM", c.depthM());
            Json.number(x, "liftM", c.liftM());
        }
        return o;
    }
}
