package baymist.plan;

import baymist.access.Insertion;
import baymist.access.Stations;
import baymist.cavity.Opening;
import baymist.geom.Vec3;
import baymist.scene.OpeningState;
import baymist.scene.WandSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A bay that the wands at hand can't spray, whatever the passes.
 *
 * @param areaM2 structure in it, m²
 * @param share of the whole inside, 0..1
 * @param atMost share of its area that all wands in all entries at all angles, each drawn once at the slowest rate, would reach by the matrix
 * @param why what keeps wands and fog out, in sentences
 * @param needed what would have to be there, in sentences
 */
public record BlindBay(String bay, double areaM2, double share, double atMost, String why, String needed) {
    /** A bay counts as blind below this share of its area (ASSUMED: a twentieth gets there by chance). */
    private static final double BLIND = 0.05;

    /** Blind bays of a scene by its matrix. */
    static List<BlindBay> of(DoseMatrix matrix, PlanLimits limits) {
        List<Stroke> everything = new ArrayList<>();
        for (int l = 0; l < matrix.lines().size(); l++) {
            everything.add(new Stroke(l, 0, matrix.lines().get(l).stations() - 1, limits.slowestMPerS()));
        }
        double[] film = matrix.filmM(everything);
        VoxelGrid grid = matrix.grid();
        SurfelSet s = grid.surfels();
        double[] area = new double[grid.bays().size()];
        double[] reached = new double[area.length];
        double all = 0;
        for (int i = 0; i < s.count(); i++) {
            if (s.isStructure(i)) {
                int b = grid.bayOfCell(s.cell()[i]);
                area[b] += s.areaM2()[i];
                all += s.areaM2()[i];
                reached[b] += film[i] >= matrix.scene().targets().hazeM() ? s.areaM2()[i] : 0;
            }
        }
        List<BlindBay> blind = new ArrayList<>();
        for (int b = 0; b < area.length; b++) {
            if (area[b] > 0 && reached[b] < BLIND * area[b]) {
                String name = grid.bays().get(b).name();
                blind.add(new BlindBay(
                        name, area[b], area[b] / all, reached[b] / area[b], why(matrix, b), needed(matrix, b)));
            }
        }
        return blind;
    }

    private static String why(DoseMatrix matrix, int bay) {
        StringBuilder text = new StringBuilder("No tip gets into it. ");
        DoseLine nearest = null;
        double least = Double.POSITIVE_INFINITY;
        Vec3 middle = matrix.grid().bays().get(bay).bounds().centre();
        for (DoseLine line : matrix.lines()) {
            double deepest = Stations.deepestM(line.insertion());
            Vec3 tip = line.insertion().path().tipM(deepest);
            int cell = matrix.grid().cellHolding(tip);
            if (cell >= 0 && matrix.grid().bayOfCell(cell) == bay) {
                return "A tip gets into it, but sprays too little there: fewer than one in twenty places would be wetted at the"
                        + " slowest rate.";
            }
            if (tip.distance(middle) < least) {
                least = tip.distance(middle);
                nearest = line;
            }
        }
        if (nearest != null) {
            Insertion in = nearest.insertion();
            boolean length = in.stoppedBy().equals("wand length");
            text.append(String.format(
                    Locale.ROOT,
                    "The nearest is that of '%s' through '%s': it ends at %.0f mm, %s. ",
                    in.wand(),
                    in.entry(),
                    1e3 * Stations.deepestM(in),
                    length ? "where the wand is all in" : "stopped by " + in.stoppedBy()));
        }
        List<String> openings = openings(matrix, bay, thinnestM(matrix));
        text.append(openings.isEmpty() ? "No opening leads into it." : "Into it lead: " + String.join("; ", openings) + ".");
        return text.toString();
    }

    /** Openings that border on a bay, with their size and what is against them. */
    private static List<String> openings(DoseMatrix matrix, int bay, double thinnestM) {
        List<String> all = new ArrayList<>();
        VoxelGrid grid = matrix.grid();
        Vec3 size = grid.sizeM();
        double step = Math.max(size.x(), Math.max(size.y(), size.z()));
        for (Opening o : matrix.cavity().openings()) {
            if (borders(grid, bay, o.place().centreM(), o.place().normal(), step)) {
                double across = Math.sqrt(4 / Math.PI * o.areaM2());
                boolean shut = o.states().pass() != OpeningState.OPEN;
                String against = across < thinnestM
                        ? ", too small for the thinnest wand at hand (" + mm(thinnestM) + " mm)"
                        : shut ? ", shut while spraying" : ", not in line with an entry";
                all.add("'" + o.name() + "' of " + mm(across) + " mm" + against);
            }
        }
        return all;
    }

    private static boolean borders(VoxelGrid grid, int bay, Vec3 at, Vec3 normal, double stepM) {
        for (double d : new double[] {0.4, 0.8, 1.2}) {
            for (int side = -1; side <= 1; side += 2) {
                int cell = grid.cellHolding(at.plus(side * d * stepM, normal));
                if (cell >= 0 && grid.bayOfCell(cell) == bay) {
                    return true;
                }
            }
        }
        return false;
    }

    private static String needed(DoseMatrix matrix, int bay) {
        double thinnest = thinnestM(matrix);
        VoxelGrid grid = matrix.grid();
        double step = Math.max(grid.sizeM().x(), Math.max(grid.sizeM().y(), grid.sizeM().z()));
        String panel = "";
        for (Opening o : matrix.cavity().openings()) {
            boolean big = Math.sqrt(4 / Math.PI * o.areaM2()) > thinnest;
            boolean here = borders(grid, bay, o.place().centreM(), o.place().normal(), step);
            boolean entry = matrix.scene().entries().stream()
                    .anyMatch(e -> e.opening().equals(o.name()));
            if (panel.isEmpty() && big && here && o.exterior() && !entry) {
                panel = o.states().pass() == OpeningState.OPEN
                        ? "an entry through '" + o.name() + "' (`entries`), or "
                        : "'" + o.name() + "' opened while spraying (`plan: {panels: [" + o.name() + "]}`), or ";
            }
        }
        return "Needed: " + panel + "an opening of more than " + mm(thinnest)
                + " mm into this bay, or a wand that bends round to it. `baymist reach` shows how far each wand gets; where the scene"
                + " allows holes (`drilling`), `baymist plan --drill` proposes them (approved data, licensed person).";
    }

    private static double thinnestM(DoseMatrix matrix) {
        return matrix.scene().wands().values().stream()
                .mapToDouble(WandSpec::outerM)
                .min()
                .orElse(0);
    }

    private static String mm(double m) {
        return String.format(Locale.ROOT, "%.1f", 1e3 * m);
    }
}
