package baymist.explain;

import baymist.access.ClockAngle;
import baymist.access.TipPose;
import baymist.cavity.PartKind;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.scene.OpeningSpec;
import baymist.scene.PhaseStates;
import baymist.scene.WandSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Where the outer sheets could take another hole. */
final class Holes {
    /** Outer places looked at. */
    private static final int PLACES = 60;
    /** Depths at which a tip would stand behind a new hole, m. */
    private static final double[] DEPTHS = {0.03, 0.06, 0.1, 0.15};
    /** Sheet left about a hole, m. */
    private static final double RIM_M = 0.008;

    private final Situation at;
    private final VoxelGrid grid;
    private final SurfelSet surfels;

    Holes(Situation at) {
        this.at = at;
        this.grid = at.base().grid();
        this.surfels = grid.surfels();
    }

    /** A hole for a wand and how it would stand there. */
    record Entry(OpeningSpec cut, WandSpec wand, JetGuess.Stand stand, double distanceM) {}

    /**
     * Outer places of the region's bays for holes of a radius, nearest to the region first: in the parts that the scene names for drilling, or
     * in any that it does not forbid where it names none there.
     */
    List<Integer> outer(double radiusM) {
        List<Integer> found = new ArrayList<>();
        int[] points = at.patch().sample(12);
        var bays = at.patch().byBay().keySet();
        for (int s = 0; s < surfels.count(); s++) {
            if (bays.contains(grid.bayOfCell(surfels.cell()[s])) && isOuter(s) && hasRoom(s, radiusM)) {
                found.add(s);
            }
        }
        found.removeIf(s -> Cautions.forbidden(at.base().scene(), at.patch().part(s)));
        List<Integer> named = found.stream()
                .filter(s -> Cautions.allowed(at.base().scene(), at.patch().part(s)))
                .toList();
        return (named.isEmpty() ? found : named)
                .stream()
                        .sorted(Comparator.comparingDouble(
                                s -> AccessFacts.distance(at.patch().point(s), at.patch(), points)))
                        .toList();
    }

    /** Whether nothing but outside air lies behind a surfel. */
    private boolean isOuter(int s) {
        if (!surfels.isStructure(s)) {
            return false;
        }
        PartKind kind = at.base().cavity().parts().get(surfels.part()[s]).kind();
        if (kind == PartKind.STRINGER || kind == PartKind.PROTECTED) {
            return false;
        }
        int c = surfels.cell()[s];
        int d = surfels.direction()[s];
        int step = d % 2 == 0 ? -1 : 1;
        int i = grid.i(c) + (d / 2 == 0 ? step : 0);
        int j = grid.j(c) + (d / 2 == 1 ? step : 0);
        int k = grid.k(c) + (d / 2 == 2 ? step : 0);
        return grid.cellAt(i, j, k) < 0;
    }

    /** Whether the sheet about a surfel belongs to its own part and nothing else stands on it there. */
    private boolean hasRoom(int s, double radiusM) {
        Vec3 p = at.patch().point(s);
        double need = radiusM + RIM_M;
        Vec3 size = grid.sizeM();
        double cell = Math.max(size.x(), Math.max(size.y(), size.z()));
        for (int n = 0; n < surfels.count(); n++) {
            double gap = at.patch().point(n).distance(p);
            boolean other = surfels.part()[n] != surfels.part()[s] || !surfels.isStructure(n);
            if (other && gap < need + 0.7 * cell) {
                return false;
            }
        }
        return at.base().cavity().openings().stream()
                .noneMatch(o ->
                        o.place().centreM().distance(p) < o.place().outline().reachM() + need);
    }

    OpeningSpec cut(String name, int surfel, double radiusM) {
        return new OpeningSpec(
                name,
                at.patch().part(surfel),
                new Outline.Circle(radiusM),
                at.patch().point(surfel),
                null,
                PhaseStates.ALWAYS_OPEN,
                Situation.place());
    }

    /** The best place for a wand's hole, or null if no outer sheet sees the region. */
    @Nullable
    Entry entry(double holdS) {
        List<WandSpec> wands = at.wands().stream()
                .filter(w -> w.kind() == WandSpec.Kind.STRAIGHT)
                .toList();
        Entry best = null;
        List<Integer> places = outer(0.01);
        int step = Math.max(1, places.size() / PLACES);
        for (int i = 0; i < places.size(); i += i < PLACES / 2 ? 1 : step) {
            int s = places.get(i);
            Vec3 normal = at.patch().normal(s);
            Vec3 from = at.patch().point(s).plus(3e-3, normal);
            for (double depth : DEPTHS) {
                Vec3 tip = at.patch().point(s).plus(depth, normal);
                if (!at.guess().free(from, tip.plus(0.01, normal))) {
                    break;
                }
                boolean[] clear = at.guess().seen(tip);
                for (WandSpec w : wands) {
                    for (double clock : JetGuess.clocks(w)) {
                        TipPose pose = new TipPose(tip, normal, ClockAngle.pin(normal, clock));
                        double fill = at.guess().fill(at.guess().rate(w, pose, clear), holdS);
                        if (fill > (best == null ? 0 : best.stand().fill() + 1e-9)) {
                            double radius = 0.5 * w.thickestM() + 1.5e-3;
                            best = new Entry(
                                    cut("new hole", s, radius),
                                    w,
                                    new JetGuess.Stand(depth, clock, fill, holdS),
                                    at.patch()
                                            .point(s)
                                            .distance(at.patch().region().centroidM()));
                        }
                    }
                }
            }
        }
        return best;
    }
}
