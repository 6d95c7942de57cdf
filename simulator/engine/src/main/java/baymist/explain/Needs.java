package baymist.explain;

import baymist.access.ClockAngle;
import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.scene.WandSpec;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Where no change that was run is enough: what would have to be true for the place to be reached. */
final class Needs {
    /** Places inside that are looked at for a tip that no known way leads to. */
    private static final int PLACES = 150;
    /** Time that a tip would stand there, s. */
    private static final double STAND_S = 5;
    /** A place that fills less than this is none. */
    private static final double WORTH = 0.2;

    private static final List<Vec3> AXES = List.of(
            new Vec3(1, 0, 0),
            new Vec3(-1, 0, 0),
            new Vec3(0, 1, 0),
            new Vec3(0, -1, 0),
            new Vec3(0, 0, 1),
            new Vec3(0, 0, -1));

    private Needs() {}

    /** Whole sentences; at least one. */
    static List<String> of(Situation at, List<Remedy> ranked) {
        List<String> said = new ArrayList<>();
        if (!ranked.isEmpty() && ranked.get(0).gain() > 0) {
            said.add("The best of them falls short: " + Account.outcome(ranked.get(0)) + ".");
        }
        SupplyFacts supply = at.supply();
        if (supply.evenM() > 0 && supply.evenM() < supply.targetM()) {
            said.add(Words.say(
                    "For the wanted film everywhere at least %.0f times the product would have to be sprayed, even if"
                            + " all of it were spread evenly.",
                    Math.ceil(supply.targetM() / supply.evenM())));
        }
        Place place = best(at);
        said.add(
                place == null
                        ? "No place for a tip in its bay was found from which the jets of the wands at hand would do;"
                                + " what reaches it would have to come as fog, or from another tip."
                        : Words.say(
                                "A tip of '%s' would have to stand near %s, pointing %s: by the free jet's law it would"
                                        + " bring %s of the wanted film there in %s. None of the ways in that were tried"
                                        + " leads a wand there.",
                                place.wand.name(),
                                Yaml.point(place.tipM),
                                compass(place.axis),
                                Words.share(place.fill),
                                Words.time(STAND_S)));
        return said;
    }

    private record Place(Vec3 tipM, Vec3 axis, WandSpec wand, double fill) {}

    private static @org.jspecify.annotations.Nullable Place best(Situation at) {
        VoxelGrid grid = at.base().grid();
        Set<Integer> bays = at.patch().byBay().keySet();
        List<Integer> cells = new ArrayList<>();
        for (int c = 0; c < grid.cellCount(); c++) {
            if (bays.contains(grid.bayOfCell(c))) {
                cells.add(c);
            }
        }
        List<WandSpec> wands = at.wands().stream()
                .filter(w -> w.kind() == WandSpec.Kind.STRAIGHT)
                .toList();
        int step = Math.max(1, cells.size() / PLACES);
        Place best = null;
        for (int i = step / 2; i < cells.size(); i += step) {
            Vec3 tip = grid.centre(cells.get(i));
            boolean[] clear = at.guess().seen(tip);
            for (Vec3 axis : AXES) {
                for (WandSpec w : wands) {
                    for (double clock : JetGuess.clocks(w)) {
                        TipPose pose = new TipPose(tip, axis, ClockAngle.pin(axis, clock));
                        double fill = at.guess().fill(at.guess().rate(w, pose, clear), STAND_S);
                        if (fill > Math.max(WORTH, best == null ? 0 : best.fill + 1e-9)) {
                            best = new Place(tip, axis, w, fill);
                        }
                    }
                }
            }
        }
        return best;
    }

    private static String compass(Vec3 axis) {
        if (axis.x() != 0) {
            return axis.x() > 0 ? "aft" : "forward";
        }
        if (axis.y() != 0) {
            return axis.y() > 0 ? "to the right" : "to the left";
        }
        return axis.z() > 0 ? "up" : "down";
    }
}
