package baymist.cavity;

import baymist.geom.Outline;
import baymist.problem.SourcePlace;

/** Whether an outline's measures make sense. */
final class OutlineCheck {
    private OutlineCheck() {}

    static boolean good(String name, Outline outline, SourcePlace place, SpecCheck check) {
        String wrong = "";
        if (outline instanceof Outline.Circle c && !(c.radiusM() > 0)) {
            wrong = "has a diameter of " + SpecCheck.mm(2 * c.radiusM()) + "; more than 0 expected";
        } else if (outline instanceof Outline.Slot s && !(s.widthM() > 0 && s.lengthM() >= s.widthM())) {
            wrong = "is a slot of " + SpecCheck.mm(s.lengthM()) + " by " + SpecCheck.mm(s.widthM())
                    + "; a length of at least the width, more than 0, expected";
        } else if (outline instanceof Outline.RoundedRectangle r
                && !(r.lengthM() > 0
                        && r.widthM() > 0
                        && r.cornerRadiusM() >= 0
                        && 2 * r.cornerRadiusM() <= Math.min(r.lengthM(), r.widthM()))) {
            wrong = "is a rectangle of " + SpecCheck.mm(r.lengthM()) + " by " + SpecCheck.mm(r.widthM())
                    + " with corners of " + SpecCheck.mm(r.cornerRadiusM())
                    + "; sides above 0 and corners of at most half the shorter side expected";
        } else if (outline instanceof Outline.Polygon p && p.points().size() < 3) {
            wrong = "has " + p.points().size() + " corners; at least three expected";
        } else if (!(outline.areaM2() > 0 && outline.reachM() <= SpecCheck.LARGEST_M)) {
            wrong = "has an area of " + outline.areaM2() + " m²; a real outline expected";
        }
        if (!wrong.isEmpty()) {
            check.error("CAV-030", place, "opening '" + name + "' " + wrong);
        }
        return wrong.isEmpty();
    }
}
