package baymist.study;

import baymist.geom.Vec3;
import java.util.Locale;

/**
 * A place where a hole could be drilled by the rules of {@link HoleRules}.
 *
 * @param inward unit normal of the sheet there, into the cavity
 * @param edgeM distance of the centre from the sheet's nearest free edge or opening, m
 * @param memberM distance of the centre from the nearest other part, m
 * @param member that part's name; "" where there is none
 */
public record HoleSite(
        String part, Vec3 centreM, Vec3 inward, DrillSize drill, double edgeM, double memberM, String member) {
    /** "#30 drill (3.26 mm) in lower skin at (100, 250, -30) mm". */
    public String words() {
        return String.format(
                Locale.ROOT,
                "#%d drill (%.2f mm) in %s at (%.0f, %.0f, %.0f) mm",
                drill.number(),
                1e3 * drill.diameterM(),
                part,
                1e3 * centreM.x(),
                1e3 * centreM.y(),
                1e3 * centreM.z());
    }
}
