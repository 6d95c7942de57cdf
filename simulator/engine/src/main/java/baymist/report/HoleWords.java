package baymist.report;

import baymist.study.HoleStudy;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;

/** What is told of a proposed hole, alike wherever one is proposed. */
final class HoleWords {
    private HoleWords() {}

    /** What it is for and what it gains, in a comparison of holes with the job's own passes. */
    static String gains(HoleStudy.Chosen c) {
        return String.format(
                Locale.ROOT,
                "Adds %.1f %% of the surface alone, %.1f %% after those before it; then %.1f %% is reached.",
                100 * c.aloneGain(),
                100 * c.gain(),
                100 * c.after().reached());
    }

    /** Distances with the rule that each keeps, and what closes the hole. */
    static String keeps(HoleStudy.Chosen c, List<HoleStudy.Chosen> all) {
        double d = c.site().drill().diameterM();
        double pitch = pitchM(c, all);
        return String.format(
                Locale.ROOT,
                "%.1f mm from the nearest edge or opening (2 D = %.1f mm)%s%s. Closed by %s.",
                1e3 * c.site().edgeM(),
                2e3 * d,
                Double.isInfinite(pitch)
                        ? ""
                        : String.format(
                                Locale.ROOT, ", %.1f mm from the next hole (3 D = %.1f mm)", 1e3 * pitch, 3e3 * d),
                c.site().member().isEmpty()
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                ", %.1f mm from %s",
                                1e3 * c.site().memberM(),
                                c.site().member()),
                c.site().drill().rivet());
    }

    /** Distance to the nearest of the other holes, m; infinite where there is none. */
    static double pitchM(HoleStudy.Chosen c, List<HoleStudy.Chosen> all) {
        return all.stream()
                .filter(o -> !o.name().equals(c.name()))
                .mapToDouble(o -> o.site().centreM().distance(c.site().centreM()))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** The same for machines: keys in docs/formats/compare.md. */
    static void json(ObjectNode o, HoleStudy.Chosen c, List<HoleStudy.Chosen> all) {
        o.put("name", c.name());
        o.put("part", c.site().part());
        o.set("atM", Json.vector(c.site().centreM()));
        o.put("drill", c.site().drill().number());
        Json.number(o, "diameterM", c.site().drill().diameterM());
        o.put("closedBy", c.site().drill().rivet());
        Json.number(o, "edgeM", c.site().edgeM());
        Json.number(o, "pitchM", pitchM(c, all));
        Json.number(o, "memberM", c.site().memberM());
        o.put("member", c.site().member());
        o.put("wand", c.wand());
        Json.number(o, "aloneGain", c.aloneGain());
        Json.number(o, "gain", c.gain());
        Json.number(o, "reachedAfter", c.after().reached());
    }
}
