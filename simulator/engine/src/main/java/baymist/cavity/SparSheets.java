package baymist.cavity;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.SparHole;
import java.util.ArrayList;
import java.util.List;

/** Upright webs along the span, ruled through the rows of the skins, with holes placed by their distance along the span. */
final class SparSheets {
    private final SheetModel model;
    private final double gaugeM;
    private final SourcePlace place;

    SparSheets(SheetModel model, double gaugeM, SourcePlace place) {
        this.model = model;
        this.gaugeM = gaugeM;
        this.place = place;
    }

    /**
     * Adds a web.
     *
     * @param low, high its edges, row by row from the root
     * @param bays row numbers at which ribs stand; a flanged hole stays between two of them
     */
    void web(int part, List<Vec3> low, List<Vec3> high, List<Integer> bays, List<SparHole> holes) {
        List<FlangedWeb.Hole> placed = new ArrayList<>();
        for (SparHole hole : holes) {
            placed.add(place(part, low, high, hole, placed.size() + 1));
        }
        FlangedWeb web = new FlangedWeb(model, gaugeM, place);
        for (int b = 0; b + 1 < bays.size(); b++) {
            int from = bays.get(b);
            int to = bays.get(b + 1);
            List<FlangedWeb.Hole> here = new ArrayList<>();
            for (FlangedWeb.Hole hole : placed) {
                double y = hole.inWeb().centreM().y();
                if (hole.flanged() && y >= low.get(from).y() && (y < low.get(to).y() || b + 2 == bays.size())) {
                    here.add(hole);
                }
            }
            if (here.isEmpty()) {
                for (int j = from; j < to; j++) {
                    model.quad(part, low.get(j), high.get(j), high.get(j + 1), low.get(j + 1));
                }
            } else {
                List<Vec3> rim = new ArrayList<>(low.subList(from, to + 1));
                rim.addAll(RibSheets.reversed(high.subList(from, to + 1)));
                web.web(part, rim, here);
            }
        }
        web.plain(part, placed);
    }

    private FlangedWeb.Hole place(int part, List<Vec3> low, List<Vec3> high, SparHole hole, int number) {
        int last = low.size() - 1;
        int row = 0;
        while (row + 2 < low.size() && hole.alongM() > low.get(row + 1).y()) {
            row++;
        }
        String partName = model.parts.get(part).name();
        String name = hole.name() == null ? partName + " hole " + number : hole.name();
        if (!(hole.alongM() >= low.get(0).y() && hole.alongM() <= low.get(last).y())) {
            SpecCheck check = new SpecCheck(place);
            check.error(
                    "CAV-035",
                    "hole '" + name + "' stands at y = " + SpecCheck.mm(hole.alongM()) + "; " + partName + " runs from "
                            + SpecCheck.mm(low.get(0).y()) + " to "
                            + SpecCheck.mm(low.get(last).y()));
            check.orThrow();
        }
        Vec3 a = middle(low.get(row), high.get(row));
        Vec3 b = middle(low.get(row + 1), high.get(row + 1));
        double share = (hole.alongM() - a.y()) / (b.y() - a.y());
        Vec3 centre = a.plus(share, b.minus(a)).plus(hole.upM(), Vec3.Z);
        // in plan: the web is upright, its middle may climb
        Vec3 along = new Vec3(
                low.get(last).x() - low.get(0).x(),
                low.get(last).y() - low.get(0).y(),
                0);
        Vec3 aft = along.cross(Vec3.Z).unit();
        Outline outline = hole.outline();
        return new FlangedWeb.Hole(
                name, PlacedOutline.of(outline, centre, along, aft), hole.states(), hole.flange(), aft);
    }

    private static Vec3 middle(Vec3 a, Vec3 b) {
        return a.plus(b).times(0.5);
    }
}
