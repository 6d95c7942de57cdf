package baymist.scene.io;

import baymist.geom.Outline;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.WandAim;
import baymist.units.Dimension;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writes passes, entries and openings: what {@link PassAssembler} and {@link OpeningAssembler} read, the other way round. */
final class JobWriting {
    private JobWriting() {}

    static Object pass(PassSpec p) {
        boolean deepest = Double.isInfinite(p.fromDepthM());
        return Written.group()
                .put("name", p.name())
                .put("entry", p.entry())
                .put("wand", p.wand())
                .put("from", deepest ? "deepest" : Written.length(p.fromDepthM()))
                .put("to", Written.length(p.toDepthM()))
                .put("draw_back", Written.of(p.drawBackMPerS(), Dimension.SPEED), p.drawBackMPerS() > 0)
                .put("clock", Written.angle(p.clockRad()), p.clockRad() != 0)
                .put("hold", Written.time(p.holdS()), p.holdS() != 0)
                .put("hang", Written.time(p.hangS()), p.hangS() != 0)
                .put("sag", p.sag() == null ? null : p.sag() ? "on" : "off")
                .put("aim", aim(p.aim()))
                .map();
    }

    private static @Nullable Object aim(@Nullable WandAim aim) {
        if (aim instanceof WandAim.Deepest) {
            return "deepest";
        }
        if (aim instanceof WandAim.Central) {
            return "central";
        }
        if (!(aim instanceof WandAim.Near near)) {
            return null;
        }
        Object low = Written.point(near.region().min());
        return near.region().min().equals(near.region().max())
                ? Map.of("near", low)
                : Map.of(
                        "region",
                        Written.group()
                                .put("low", low)
                                .put("high", Written.point(near.region().max()))
                                .map());
    }

    static Object entry(EntrySpec e) {
        EntrySpec.Grommet g = e.grommet();
        EntrySpec.SecondPlate s = e.secondPlate();
        return Written.group()
                .put("name", e.name())
                .put("opening", e.opening())
                .put("direction", e.direction() == null ? null : Written.direction(e.direction()))
                .put(
                        "grommet",
                        g == null
                                ? null
                                : Written.group()
                                        .put("bore", Written.length(g.boreM()))
                                        .put("thickness", Written.length(g.thicknessM()))
                                        .map())
                .put(
                        "second_plate",
                        s == null
                                ? null
                                : Written.group()
                                        .put("distance", Written.length(s.distanceM()))
                                        .put("shape", outline(s.outline()))
                                        .put("gauge", Written.length(s.gaugeM()))
                                        .map())
                .map();
    }

    static Object opening(OpeningSpec o) {
        return Written.group()
                .put("name", o.name())
                .put("part", o.part())
                .put("shape", outline(o.outline()))
                .put("at", Written.point(o.centreM()))
                .put("lengthwise", o.lengthwise() == null ? null : Written.direction(o.lengthwise()))
                .put("state", states(o.states()), !o.states().equals(PhaseStates.ALWAYS_OPEN))
                .map();
    }

    static Object openings(Map<String, PhaseStates> states) {
        Map<String, Object> all = new LinkedHashMap<>();
        states.keySet().stream().sorted().forEach(name -> all.put(name, states(states.get(name))));
        return all;
    }

    private static Object states(@Nullable PhaseStates s) {
        if (s == null) {
            return "open";
        }
        return s.pass() == s.hang() && s.hang() == s.after()
                ? word(s.pass())
                : Written.group()
                        .put("pass", word(s.pass()))
                        .put("hang", word(s.hang()))
                        .put("after", word(s.after()))
                        .map();
    }

    private static String word(OpeningState state) {
        return state.name().toLowerCase(Locale.ROOT);
    }

    private static Object outline(Outline o) {
        if (o instanceof Outline.Circle c) {
            return Map.of("circle", Written.length(2 * c.radiusM()));
        }
        if (o instanceof Outline.Slot s) {
            return Map.of("slot", size(s.lengthM(), s.widthM()).map());
        }
        if (o instanceof Outline.RoundedRectangle r) {
            return Map.of(
                    "rectangle",
                    size(r.lengthM(), r.widthM())
                            .put("corner_radius", Written.length(r.cornerRadiusM()), r.cornerRadiusM() > 0)
                            .map());
        }
        List<Object> corners = new ArrayList<>();
        for (double[] p : ((Outline.Polygon) o).points()) {
            corners.add(List.of(Written.length(p[0]), Written.length(p[1])));
        }
        return Map.of("polygon", corners);
    }

    private static Written.Group size(double lengthM, double widthM) {
        return Written.group().put("length", Written.length(lengthM)).put("width", Written.length(widthM));
    }
}
