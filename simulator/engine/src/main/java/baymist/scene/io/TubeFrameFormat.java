package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.TubeFrameSpec;
import baymist.scene.TubeFrameSpec.Gusset;
import baymist.scene.TubeFrameSpec.Node;
import baymist.scene.TubeFrameSpec.Tube;
import baymist.scene.io.Shape.Count;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Measure;
import baymist.scene.io.Shape.Text;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import java.util.ArrayList;
import java.util.List;

/** The format of tube frames, and how they are made of it. */
final class TubeFrameFormat {
    private static final Measure BORE = Measure.of(Dimension.LENGTH, "(0 mm .. 1 m]");
    private static final Measure HOLE = Measure.of(Dimension.LENGTH, "[0 mm .. 1 m]");

    private final Problems problems;
    private final OpeningAssembler openings;

    TubeFrameFormat(Problems problems, OpeningAssembler openings) {
        this.problems = problems;
        this.openings = openings;
    }

    static Group group(Shape.Field... common) {
        Group node = Group.of(
                "tube_node",
                "a point where the axes of tubes meet or end",
                need("name", Text.NAME, "name by which tubes call it"),
                need("at", CavityFormat.POINT, "its place"));
        Group tube = Group.of(
                "tube",
                "a straight round tube; cut to fit those listed before it",
                may("name", Text.NAME, "", "name; left out = `tube 1` and so on"),
                need("from", Text.NAME, "node at its first end"),
                need("to", Text.NAME, "node at its last end"),
                need("outer", BORE, "outside diameter"),
                need("wall", BORE, "thickness of its wall"),
                may("from_hole", HOLE, "0 mm", "joint hole at its first end, in the tube that it lands on; 0 = none"),
                may("to_hole", HOLE, "0 mm", "the same at its last end"));
        Group gusset = Group.of(
                "tube_gusset",
                "a flat plate let into two tubes at a node, in the plane of their axes; it stands across both bores",
                may("name", Text.NAME, "", "name; left out = `gusset 1` and so on"),
                need("node", Text.NAME, "the node"),
                need("tubes", new ListOf(Text.NAME, 2, 2), "names of the two tubes (`tube 2` where one has no name)"),
                need("reach", BORE, "how far it runs along each tube, from the node"),
                may("gauge", CavityFormat.GAUGE, "1 mm", "its thickness"));
        List<Shape.Field> fields = new ArrayList<>(List.of(common));
        fields.add(need("nodes", new ListOf(node, 2, 500), "nodes"));
        fields.add(need("tubes", new ListOf(tube, 1, 500), "tubes; those that run through come first"));
        fields.add(may("segments", new Count(8, 180), "24", "flats round each tube"));
        fields.add(may("gussets", new ListOf(gusset, 0, 500), "", "plates let into the tubes"));
        return Group.of("tube_frame", "frame of round tubes", fields.toArray(Shape.Field[]::new));
    }

    CavitySpec frame(Fields f, List<OpeningSpec> ports) {
        List<Node> nodes = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Fields n : f.list("nodes")) {
            String name = n.text("name");
            if (!name.isEmpty() && names.contains(name)) {
                problems.add(
                        SceneProblem.NAME_TWICE,
                        n.at("name"),
                        "the node name `" + name + "` is used twice; give each its own name");
            }
            names.add(name);
            Vec3 at = n.vector("at");
            nodes.add(new Node(name, at == null ? Vec3.ZERO : at));
        }
        List<Tube> tubes = new ArrayList<>();
        for (Fields t : f.list("tubes")) {
            String own = t.has("name") ? t.text("name") : null;
            int from = node(t, "from", names);
            int to = node(t, "to", names);
            if (from >= 0 && from == to) {
                problems.add(
                        SceneProblem.NODE,
                        t.at("to"),
                        "the tube runs from node `" + t.text("from") + "` to itself; two nodes are wanted");
            }
            String part = own == null ? "tube " + (tubes.size() + 1) : own;
            claimJoint(t, "from", part);
            claimJoint(t, "to", part);
            tubes.add(new Tube(
                    own,
                    Math.max(0, from),
                    Math.max(0, to),
                    t.si("outer"),
                    t.si("wall"),
                    t.si("from_hole"),
                    t.si("to_hole"),
                    t.place()));
        }
        TubeFrameSpec shape = new TubeFrameSpec(nodes, tubes, f.whole("segments"), gussets(f, names, tubes));
        return new CavitySpec.TubeFrame(f.text("name"), shape, ports, f.place());
    }

    private List<Gusset> gussets(Fields f, List<String> nodes, List<Tube> tubes) {
        List<String> names = new ArrayList<>();
        for (Tube t : tubes) {
            names.add(t.name() == null ? "tube " + (names.size() + 1) : t.name());
        }
        List<Gusset> gussets = new ArrayList<>();
        for (Fields g : f.list("gussets")) {
            int[] pair = {-1, -1};
            List<String> wanted = g.texts("tubes");
            for (int i = 0; i < Math.min(2, wanted.size()); i++) {
                pair[i] = names.indexOf(wanted.get(i));
                if (pair[i] < 0) {
                    problems.add(
                            SceneProblem.NODE,
                            g.at("tubes"),
                            "there is no tube `" + wanted.get(i) + "`" + Suggestion.of(wanted.get(i), names));
                }
            }
            int node = node(g, "node", nodes);
            gussets.add(new Gusset(
                    g.has("name") ? g.text("name") : null,
                    Math.max(0, node),
                    Math.max(0, pair[0]),
                    Math.max(0, pair[1]),
                    g.si("reach"),
                    g.si("gauge"),
                    g.place()));
        }
        return gussets;
    }

    private void claimJoint(Fields t, String end, String part) {
        if (t.si(end + "_hole") > 0) {
            openings.claim("joint of " + part + " at " + t.text(end), t.at(end + "_hole"));
        }
    }

    private int node(Fields t, String key, List<String> names) {
        String name = t.text(key);
        int index = names.indexOf(name);
        if (index < 0 && !name.isEmpty()) {
            problems.add(SceneProblem.NODE, t.at(key), "there is no node `" + name + "`" + Suggestion.of(name, names));
        }
        return index;
    }
}
