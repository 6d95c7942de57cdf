package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.CavitySpec.Rib;
import java.util.List;

/** Checks that the families with ribs share. */
final class FamilyChecks {
    private static final double WARP_M = 5e-5;
    private static final int MOST_PIECES = 16;

    private FamilyChecks() {}

    /** At least two ribs, in order of y, the first at the root and the last at the tip (they close the box). */
    static void ribs(SpecCheck check, List<Rib> ribs, double spanM) {
        if (ribs.size() < 2) {
            check.error(
                    "CAV-007", ribs.size() + " rib(s) given; at least the two end ribs are needed to close the box");
            return;
        }
        if (ribs.size() > 1000) {
            check.error("CAV-007", ribs.size() + " ribs given; at most 1000 expected");
            return;
        }
        for (int i = 0; i < ribs.size(); i++) {
            Rib rib = ribs.get(i);
            if (!(rib.yM() >= 0 && rib.yM() <= spanM)) {
                check.error(
                        "CAV-008",
                        "rib " + (i + 1) + " stands at y = " + SpecCheck.mm(rib.yM()) + "; 0 to the span, "
                                + SpecCheck.mm(spanM) + ", expected");
            } else if (i > 0 && !(rib.yM() - ribs.get(i - 1).yM() >= 1e-4)) {
                check.error(
                        "CAV-008",
                        "rib " + (i + 1) + " stands at y = " + SpecCheck.mm(rib.yM())
                                + ", not beyond the rib before it; give ribs in order of y, 0.1 mm apart at least");
            }
            check.notNegative("rib " + (i + 1) + " short of edge", rib.shortOfEdgeM());
        }
    }

    /**
     * Pieces along which warped panels must be divided, so that no facet departs from the ruled surface by more than 0.05 mm.
     *
     * @param rows corners of the sheet's cross-section at consecutive ribs
     */
    static int warpPieces(List<List<Vec3>> rows) {
        double worst = 0;
        for (int i = 0; i + 1 < rows.size(); i++) {
            for (int k = 0; k + 1 < rows.get(i).size(); k++) {
                // distance of one corner of the panel from the plane of the other three
                Vec3 p = rows.get(i).get(k);
                Vec3 q = rows.get(i).get(k + 1);
                Vec3 r = rows.get(i + 1).get(k + 1);
                Vec3 n = q.minus(p).cross(r.minus(p));
                if (n.length() > 0) {
                    worst = Math.max(
                            worst, Math.abs(rows.get(i + 1).get(k).minus(p).dot(n.unit())));
                }
            }
        }
        // a diagonal misses the middle of a warped panel by a quarter of that at most; n pieces a side divide it by n
        // squared
        return (int) Math.min(MOST_PIECES, Math.max(1, Math.ceil(Math.sqrt(worst / 4 / WARP_M))));
    }

    /** Remarks where the end ribs leave part of the stated span out. */
    static void remarkSpan(SheetModel model, List<Rib> ribs, double spanM) {
        double first = ribs.get(0).yM();
        double last = ribs.get(ribs.size() - 1).yM();
        if (first > 0 || last < spanM) {
            model.remarks.add("the box is closed by its end ribs at y = " + SpecCheck.mm(first) + " and "
                    + SpecCheck.mm(last) + "; the span of " + SpecCheck.mm(spanM) + " beyond them is left out");
        }
    }
}
