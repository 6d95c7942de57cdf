package baymist.scene.io;

import static baymist.scene.io.Shape.Field.may;
import static baymist.scene.io.Shape.Field.need;

import baymist.problem.SourcePlace;
import baymist.scene.BodyJoint;
import baymist.scene.CavitySpec;
import baymist.scene.PlacedBody;
import baymist.scene.io.Shape.Family;
import baymist.scene.io.Shape.FileOr;
import baymist.scene.io.Shape.Group;
import baymist.scene.io.Shape.ListOf;
import baymist.scene.io.Shape.Text;
import baymist.scene.io.Value.Fields;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Format and assembly of cavities that are made of several bodies. */
final class BodiesFormat {
    private static final Text BODY_NAME =
            new Text("[^\\s:](?:[^\\n:]{0,28}[^\\s:])?", "a name of 1 to 30 characters without a colon");
    private static final Text OPENING =
            new Text("[^\\s:][^\\n:]*: \\S[^\\n]*", "an opening such as `left float: aft hole`");

    private final SourceFiles files;
    private final Problems problems;

    BodiesFormat(SourceFiles files, Problems problems) {
        this.files = files;
        this.problems = problems;
    }

    /** The families of single bodies and their combination. */
    static Family with(Family single) {
        Group body = Group.of(
                "placed_body",
                "a structure in its place among others",
                need("name", BODY_NAME, "stands before the names of its parts and openings: `left float: rib 2`"),
                need("model", new FileOr(single), "the structure"),
                may("at", CavityFormat.POINT, "", "where its origin goes; left out = `[0, 0, 0]`"),
                may(
                        "rotate",
                        new ListOf(CavityFormat.TURN, 3, 3),
                        "",
                        "turns about x, y and z, in that order, before it is moved; left out = none"));
        Group join = Group.of(
                "join",
                "two openings that lie on each other and become one",
                need("a", OPENING, "an opening of one body"),
                need("b", OPENING, "the opening of the other body; it takes the states of `a`"),
                may("name", Text.NAME, "", "name of the joint opening; left out = `a`"));
        List<Group> groups = new ArrayList<>(single.members().values());
        groups.add(Group.of(
                "bodies",
                "several bodies, each in its place",
                ModelFormat.VERSION,
                CavityFormat.NAME,
                need("bodies", new ListOf(body, 1, 50), "the bodies"),
                may("join", new ListOf(join, 0, 200), "", "openings that lead from body to body"),
                may(
                        "tolerance",
                        PlatesFormat.TOLERANCE,
                        "0.1 mm",
                        "how far sheets that lie on each other may be apart"),
                may("inside", CavityFormat.POINT, "", "a point in the cavity; left out = everything enclosed")));
        return Family.of("cavity", single.key(), "a structure of one of the families", groups.toArray(new Group[0]));
    }

    CavitySpec bodies(Fields f) {
        List<PlacedBody> bodies = new ArrayList<>();
        Map<String, SourcePlace> names = new HashMap<>();
        for (Fields b : f.list("bodies")) {
            String name = b.text("name");
            SourcePlace before = name.isEmpty() ? null : names.putIfAbsent(name, b.at("name"));
            if (before != null) {
                problems.add(
                        SceneProblem.BODY_NAME,
                        b.at("name"),
                        "the body name `" + name + "` is used twice, first at " + before + "; give each its own name");
            }
            Fields model = b.fields("model");
            if (model != null) {
                // names of openings count within their body
                OpeningAssembler own = new OpeningAssembler(problems);
                bodies.add(new PlacedBody(
                        name,
                        new CavityAssembler(files, problems, own).cavity(model),
                        CavityAssembler.rotationDeg(b, "rotate"),
                        CavityAssembler.vector(b, "at"),
                        b.place()));
            }
        }
        List<BodyJoint> joints = new ArrayList<>();
        for (Fields j : f.list("join")) {
            for (String side : List.of("a", "b")) {
                checkBody(j, side, names.keySet());
            }
            String name = j.text("name").isEmpty() ? j.text("a") : j.text("name");
            joints.add(new BodyJoint(j.text("a"), j.text("b"), name, j.place()));
        }
        return new CavitySpec.Bodies(
                f.text("name"),
                List.copyOf(bodies),
                List.copyOf(joints),
                f.si("tolerance"),
                f.vector("inside"),
                f.place());
    }

    private void checkBody(Fields join, String side, Set<String> names) {
        String text = join.text(side);
        int colon = text.indexOf(": ");
        if (colon > 0 && !names.contains(text.substring(0, colon))) {
            List<String> known = names.stream().sorted().toList();
            problems.add(
                    SceneProblem.JOIN,
                    join.at(side),
                    "there is no body `" + text.substring(0, colon) + "`"
                            + Suggestion.of(text.substring(0, colon), known));
        }
    }
}
