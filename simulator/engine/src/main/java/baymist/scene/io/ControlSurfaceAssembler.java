package baymist.scene.io;

import baymist.scene.CavitySpec;
import baymist.scene.ControlSurfaceDetail;
import baymist.scene.ControlSurfaceDetail.Form;
import baymist.scene.ControlSurfaceDetail.Run;
import baymist.scene.io.Value.Fields;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes control surfaces and checks what their numbers must satisfy together. */
final class ControlSurfaceAssembler {
    private static final String[] PARTS = {
        "upper skin",
        "lower skin",
        "spar",
        "trailing edge",
        "nose skin",
        "nose root rib",
        "nose tip rib",
        "horn upper skin",
        "horn lower skin",
        "horn front",
        "horn bulkhead",
        "horn inner rib",
        "horn outer rib"
    };

    private final Problems problems;
    private final OpeningAssembler openings;

    ControlSurfaceAssembler(Problems problems, OpeningAssembler openings) {
        this.problems = problems;
        this.openings = openings;
    }

    CavitySpec controlSurface(Fields f) {
        double rootChord = f.si("root_chord");
        double rootDepth = f.si("root_depth");
        double tipChord = f.si("tip_chord", rootChord);
        double tipDepth = f.si("tip_depth", rootDepth);
        double edge = f.si("edge_depth");
        if (edge > Math.min(rootDepth, tipDepth)) {
            problems.add(
                    SceneProblem.SECTION,
                    f.at("edge_depth"),
                    "the trailing edge is deeper (" + f.written("edge_depth") + ") than the spar; at most "
                            + Quantities.length(Math.min(rootDepth, tipDepth)) + " is wanted");
        }
        WebHoles webs = new WebHoles(problems, openings, f.place(), PARTS);
        Ribs ribs = new Ribs(f, problems, openings, webs);
        double span = f.si("span");
        ControlSurfaceDetail.@Nullable Beads upper = beads(f.fields("upper_beads"), rootChord);
        ControlSurfaceDetail.@Nullable Beads lower = beads(f.fields("lower_beads"), rootChord);
        double beadsOut = out(upper) + out(lower);
        List<CavitySpec.Rib> made = ribs.inSections(
                (y, aft) -> {
                    double t = y / span;
                    double chord = rootChord + t * (tipChord - rootChord);
                    double spar = rootDepth + t * (tipDepth - rootDepth);
                    return spar + aft / chord * (edge - spar) + beadsOut;
                },
                y -> rootChord + y / span * (tipChord - rootChord));
        ControlSurfaceDetail detail = new ControlSurfaceDetail(
                upper,
                lower,
                nose(f, ribs, rootDepth, tipDepth),
                horn(f, webs, Math.min(rootDepth, tipDepth), Math.max(rootDepth, tipDepth)),
                webs.holes(f.list("spar_holes"), "spar", 0, span, Math.max(rootDepth, tipDepth)));
        return new CavitySpec.ControlSurface(
                f.text("name"),
                span,
                rootChord,
                tipChord,
                rootDepth,
                tipDepth,
                edge,
                f.si("gauge"),
                made,
                openings.openings(new ArrayList<>(f.list("ports"))),
                f.place(),
                detail);
    }

    private static double out(ControlSurfaceDetail.@Nullable Beads beads) {
        return beads == null ? 0 : Math.max(0, beads.depthM());
    }

    private ControlSurfaceDetail.@Nullable Beads beads(@Nullable Fields b, double rootChordM) {
        if (b == null) {
            return null;
        }
        double pitch = b.si("pitch");
        double width = b.si("width", pitch);
        double depth = b.si("depth");
        Form form = b.text("form").equals("sine") ? Form.SINE : Form.TRAPEZOID;
        double flank = form == Form.SINE ? 0 : b.si("flank", depth);
        double from = b.si("from");
        double to = b.si("to", rootChordM);
        double runOut = b.si("run_out", 2 * depth);
        double clear = b.si("clear_of_ribs");
        Run run = b.text("run").equals("chordwise") ? Run.CHORDWISE : Run.SPANWISE;
        if (width > pitch) {
            wrong(b, "width", "the beads are wider than their pitch of " + b.written("pitch"));
        }
        if (2 * flank > width * (1 + 1e-9)) {
            wrong(
                    b,
                    b.has("flank") ? "flank" : "depth",
                    "both flanks of " + Quantities.length(flank) + " do not fit into a width of "
                            + Quantities.length(width) + "; state a smaller `flank`");
        }
        if (from >= to || to > rootChordM * (1 + 1e-9)) {
            wrong(
                    b,
                    "to",
                    "the beads reach from " + Quantities.length(from) + " to " + Quantities.length(to)
                            + " aft of the spar; an end aft of their beginning and within the root chord of "
                            + Quantities.length(rootChordM) + " is wanted");
        } else if (run == Run.CHORDWISE && 2 * runOut > to - from) {
            wrong(b, "run_out", "the beads fade out before they have begun; at most half of their length is wanted");
        }
        boolean toEdges = from <= 0 && to >= rootChordM * (1 - 1e-9);
        if (runOut == 0 && !(run == Run.CHORDWISE ? toEdges : clear == 0)) {
            wrong(
                    b,
                    "run_out",
                    "beads that end within the sheet need a run-out above 0 mm; only those from spar to trailing edge or"
                            + " through all ribs do without");
        }
        return new ControlSurfaceDetail.Beads(
                run,
                form,
                pitch,
                width,
                b.text("press").equals("in") ? -depth : depth,
                flank,
                from,
                Math.min(to, rootChordM),
                runOut,
                clear);
    }

    private void wrong(Fields b, String key, String text) {
        problems.add(SceneProblem.BEADS, b.at(key), text);
    }

    private ControlSurfaceDetail.@Nullable Nose nose(Fields f, Ribs ribs, double rootDepth, double tipDepth) {
        Fields nose = f.fields("nose");
        if (nose == null) {
            return null;
        }
        double root = nose.si("length");
        double tip = nose.si("tip_length", root);
        double radius = nose.has("radius") ? nose.si("radius") : 0;
        double most = Math.min(rootDepth / 2, Math.min(root, tip * rootDepth / tipDepth));
        if (radius > most * (1 + 1e-9)) {
            problems.add(
                    SceneProblem.NOSE,
                    nose.at("radius"),
                    "a leading edge of radius " + nose.written("radius") + " does not fit into the nose; at most "
                            + Quantities.length(most) + " is wanted");
        }
        double span = f.si("span");
        Fields horn = f.fields("horn");
        double end = horn == null ? span : span - horn.si("width");
        double before = 0;
        for (Fields rib : nose.list("ribs")) {
            double y = rib.si("at");
            if (y <= before || y >= end) {
                problems.add(
                        SceneProblem.NOSE,
                        rib.at("at"),
                        "the nose rib at " + rib.written("at")
                                + " does not stand outboard of the one before and inside of the nose's end at "
                                + Quantities.length(end) + "; the ends are closed anyway");
            }
            before = y;
        }
        List<CavitySpec.Rib> made = ribs.ofNose(
                nose.list("ribs"),
                (y, aft) -> rootDepth + y / span * (tipDepth - rootDepth),
                y -> root + y / span * (tip - root));
        return new ControlSurfaceDetail.Nose(root, tip, radius, made);
    }

    private ControlSurfaceDetail.@Nullable Horn horn(Fields f, WebHoles webs, double shallowest, double deepest) {
        Fields horn = f.fields("horn");
        if (horn == null) {
            return null;
        }
        double span = f.si("span");
        double width = horn.si("width");
        double length = horn.si("length");
        double front = horn.si("front_depth");
        double bulkhead = horn.has("bulkhead") ? horn.si("bulkhead") : 0;
        if (width >= span) {
            problems.add(
                    SceneProblem.HORN,
                    horn.at("width"),
                    "the horn is as wide (" + horn.written("width") + ") as the span of " + f.written("span")
                            + "; less is wanted");
        }
        if (front > shallowest) {
            problems.add(
                    SceneProblem.HORN,
                    horn.at("front_depth"),
                    "the horn's front is deeper (" + horn.written("front_depth") + ") than the spar; at most "
                            + Quantities.length(shallowest) + " is wanted");
        }
        if (bulkhead >= length) {
            problems.add(
                    SceneProblem.HORN,
                    horn.at("bulkhead"),
                    "the bulkhead stands " + horn.written("bulkhead")
                            + " ahead of the spar; less than the horn's length of " + horn.written("length")
                            + " is wanted");
        }
        List<Fields> holes = horn.list("bulkhead_holes");
        if (!holes.isEmpty() && !horn.has("bulkhead")) {
            problems.add(
                    SceneProblem.HORN,
                    horn.at("bulkhead_holes"),
                    "holes are given, but no `bulkhead`; state how far ahead of the spar it stands");
        }
        return new ControlSurfaceDetail.Horn(
                width, length, front, bulkhead, webs.holes(holes, "horn bulkhead", span - width, span, deepest));
    }
}
