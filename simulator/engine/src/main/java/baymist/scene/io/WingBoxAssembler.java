package baymist.scene.io;

import baymist.scene.CavitySpec;
import baymist.scene.WingBoxDetail;
import baymist.scene.io.Value.Fields;
import baymist.units.Dimension;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes wing boxes and checks what their numbers must satisfy together. */
final class WingBoxAssembler {
    private final Problems problems;
    private final OpeningAssembler openings;

    WingBoxAssembler(Problems problems, OpeningAssembler openings) {
        this.problems = problems;
        this.openings = openings;
    }

    CavitySpec wingBox(Fields f) {
        double front = f.si("front_spar");
        double rear = f.si("rear_spar");
        if (front >= rear) {
            problems.add(
                    SceneProblem.SPARS,
                    f.at("rear_spar"),
                    "the rear spar (" + f.written("rear_spar") + ") is not aft of the front spar ("
                            + f.written("front_spar") + "); wanted: 0 < front_spar < rear_spar < 1");
        }
        double rootChord = f.si("root_chord");
        double tipChord = f.si("tip_chord", rootChord);
        double span = f.si("span");
        String naca = f.text("naca");
        double thickness = naca.length() == 4 ? Integer.parseInt(naca.substring(2)) / 100.0 : Double.NaN;
        if (thickness == 0) {
            problems.add(
                    SceneProblem.SECTION,
                    f.at("naca"),
                    "`" + naca + "` has no thickness; its last two digits must not be 00");
        }
        Fields section = f.fields("section");
        List<WingBoxDetail.Station> root = stations(section, "root", rootChord, front, rear);
        List<WingBoxDetail.Station> tip = stations(section, "tip", tipChord, front, rear);
        double rootDeep = section == null ? thickness * rootChord : deepest(root);
        double tipDeep =
                section == null ? thickness * tipChord : tip.isEmpty() ? rootDeep * tipChord / rootChord : deepest(tip);
        Fields stringers = f.fields("stringers");
        double height = stringers == null ? 0 : stringers.si("height");
        double highest = 0.45 * Math.min(rootDeep, tipDeep);
        if (stringers != null && height > highest) {
            problems.add(
                    SceneProblem.STRINGERS,
                    stringers.at("height"),
                    "a stringer of " + stringers.written("height") + " is nearly as high as half of the box; at most "
                            + Quantities.length(highest) + " is wanted");
        }
        // The greatest depth of the section bounds every place of it; the builder of the geometry checks the place
        // itself. Between measured stations a curve may bulge by a little.
        double bulge = section == null ? 1 : 1.1;
        WebHoles webs =
                new WebHoles(problems, openings, f.place(), "upper skin", "lower skin", "front spar", "rear spar");
        List<CavitySpec.Rib> ribs = new Ribs(f, problems, openings, webs)
                .inSections(
                        (y, aft) -> bulge * (rootDeep + y / span * (tipDeep - rootDeep)),
                        y -> (front < rear ? rear - front : Double.NaN)
                                * (rootChord + y / span * (tipChord - rootChord)));
        openEnd(f, "root", f.list("ribs").stream().findFirst().orElse(null));
        openEnd(f, "tip", f.list("ribs").stream().reduce((a, b) -> b).orElse(null));
        WingBoxDetail detail = new WingBoxDetail(
                root,
                tip,
                section != null && section.text("between").equals("straight"),
                falseSpars(f, webs, ribs, front, rear, bulge * Math.max(rootDeep, tipDeep)),
                notch(stringers),
                f.text("root").equals("open"),
                f.text("tip").equals("open"));
        return new CavitySpec.WingBox(
                f.text("name"),
                naca,
                span,
                rootChord,
                tipChord,
                offset(f, "sweep", span),
                offset(f, "dihedral", span),
                front,
                rear,
                f.si("gauge"),
                stringers == null ? 0 : stringers.whole("upper"),
                stringers == null ? 0 : stringers.whole("lower"),
                height,
                ribs,
                openings.openings(new ArrayList<>(f.list("ports"))),
                f.place(),
                detail);
    }

    /** A length, or the length that an angle makes over the span. */
    private double offset(Fields f, String key, double spanM) {
        if (!(f.get(key) instanceof Value.Num n) || !n.unitOf().equals(Dimension.ANGLE.name())) {
            return f.si(key);
        }
        if (Math.abs(n.si()) > Math.toRadians(80)) {
            problems.add(
                    SceneProblem.SLOPE,
                    n.place(),
                    "`" + n.written() + "` is no angle of a wing; -80 to 80 degrees is wanted");
        }
        return spanM * Math.tan(n.si());
    }

    private List<WingBoxDetail.Station> stations(
            @Nullable Fields section, String end, double chordM, double front, double rear) {
        List<WingBoxDetail.Station> made = new ArrayList<>();
        if (section == null) {
            return made;
        }
        double before = Double.NEGATIVE_INFINITY;
        double first = Double.NaN;
        for (Fields f : section.list(end)) {
            boolean share = f.get("at") instanceof Value.Num n && n.unitOf().equals(Dimension.FRACTION.name());
            double aft = share ? f.si("at") * chordM : f.si("at");
            double upper = f.si("upper");
            double lower = f.si("lower");
            if (aft <= before) {
                problems.add(
                        SceneProblem.STATIONS,
                        f.at("at"),
                        "the station at " + f.written("at")
                                + " does not lie aft of the one before; list them from front to" + " rear");
            } else if (aft > chordM * (1 + 1e-9)) {
                problems.add(
                        SceneProblem.STATIONS,
                        f.at("at"),
                        "the station at " + f.written("at") + " lies beyond the chord of " + Quantities.length(chordM));
            }
            if (upper <= lower) {
                problems.add(
                        SceneProblem.STATIONS,
                        f.at("upper"),
                        "the upper skin (" + f.written("upper") + ") does not lie above the lower one ("
                                + f.written("lower") + "); heights below the chord line are negative");
            }
            first = made.isEmpty() ? aft : first;
            before = aft;
            made.add(new WingBoxDetail.Station(aft, upper, lower));
        }
        if (!made.isEmpty() && (first > (front + 1e-6) * chordM || before < (rear - 1e-6) * chordM)) {
            problems.add(
                    SceneProblem.STATIONS,
                    section.at(end),
                    "the stations reach from " + Quantities.length(first) + " to " + Quantities.length(before)
                            + ", the spars stand at " + Quantities.length(front * chordM) + " and "
                            + Quantities.length(rear * chordM) + "; measure at both spars, too");
        }
        return made;
    }

    private static double deepest(List<WingBoxDetail.Station> stations) {
        return stations.stream().mapToDouble(s -> s.upperM() - s.lowerM()).max().orElse(Double.NaN);
    }

    private void openEnd(Fields f, String end, @Nullable Fields rib) {
        if (f.text(end).equals("open") && rib != null && !rib.list("holes").isEmpty()) {
            problems.add(
                    SceneProblem.OPEN_END,
                    f.at(end),
                    "the " + end + " is open, but its rib has holes; close the " + end + " or leave the holes out");
        }
        if (f.text(end).equals("open")) {
            openings.claim("open " + end, f.at(end));
        }
    }

    private WingBoxDetail.@Nullable Notch notch(@Nullable Fields stringers) {
        Fields notch = stringers == null ? null : stringers.fields("notch");
        return notch == null
                ? null
                : new WingBoxDetail.Notch(notch.si("clearance"), openings.states(notch.get("state")));
    }

    private List<WingBoxDetail.FalseSpar> falseSpars(
            Fields f, WebHoles webs, List<CavitySpec.Rib> ribs, double front, double rear, double deepestM) {
        List<WingBoxDetail.FalseSpar> made = new ArrayList<>();
        for (Fields spar : f.list("false_spars")) {
            double at = spar.si("at");
            if (at <= front || at >= rear) {
                problems.add(
                        SceneProblem.FALSE_SPAR,
                        spar.at("at"),
                        "a false spar at " + spar.written("at") + " does not stand between the front spar ("
                                + f.written("front_spar") + ") and the rear spar (" + f.written("rear_spar") + ")");
            }
            int from = spar.whole("from_rib");
            int to = spar.has("to_rib") ? spar.whole("to_rib") : ribs.size();
            boolean runs = from >= 1 && from < to && to <= ribs.size();
            if (!runs && from > 0 && to > 0) {
                problems.add(
                        SceneProblem.FALSE_SPAR,
                        spar.at(spar.has("to_rib") ? "to_rib" : "from_rib"),
                        "the false spar runs from rib " + from + " to rib " + to + "; two of the ribs 1 to "
                                + ribs.size() + " are wanted, the inner one first");
            }
            String own = spar.has("name") ? spar.text("name") : null;
            String name = own == null ? "false spar " + (made.size() + 1) : own;
            webs.claim(name, spar.at("name"));
            made.add(new WingBoxDetail.FalseSpar(
                    own,
                    at,
                    from,
                    to,
                    webs.holes(
                            spar.list("holes"),
                            name,
                            runs ? ribs.get(from - 1).yM() : Double.NaN,
                            runs ? ribs.get(to - 1).yM() : Double.NaN,
                            deepestM)));
        }
        return made;
    }
}
