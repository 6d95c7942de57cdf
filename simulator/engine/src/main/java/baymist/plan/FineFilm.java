package baymist.plan;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.voxel.SurfelLocator;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Film of a finer grid on the surfels of a coarser one of the same cavity: each coarse surfel gets the median by area of the fine ones that lie nearest to it, on its
 * side of its sheet. Half of its area is then at haze or above exactly when it counts as reached, so that shares of area stay.
 */
final class FineFilm {
    private FineFilm() {}

    private record Piece(double filmM, double areaM2) {}

    /**
     * Film of a run on another grid of the cavity.
     *
     * @param filmM on the fine surfels, m, [fine surfels]
     * @param otherwiseM on coarse surfels that no fine one lies at, m, [coarse surfels]
     * @return m, [coarse surfels]
     */
    static double[] on(VoxelGrid coarse, Cavity cavity, VoxelGrid fine, double[] filmM, double[] otherwiseM) {
        SurfelLocator locator = SurfelLocator.of(coarse, cavity);
        SurfelSet s = fine.surfels();
        List<List<Piece>> pieces = new ArrayList<>();
        for (int i = 0; i < coarse.surfels().count(); i++) {
            pieces.add(new ArrayList<>());
        }
        for (int i = 0; i < s.count(); i++) {
            if (s.isStructure(i)) {
                int there = locator.surfelNear(
                        new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]),
                        s.part()[i],
                        new Vec3(s.normalX()[i], s.normalY()[i], s.normalZ()[i]));
                if (there >= 0) {
                    pieces.get(there).add(new Piece(filmM[i], s.areaM2()[i]));
                }
            }
        }
        double[] on = otherwiseM.clone();
        for (int i = 0; i < on.length; i++) {
            on[i] = pieces.get(i).isEmpty() ? on[i] : median(pieces.get(i));
        }
        return on;
    }

    private static double median(List<Piece> pieces) {
        pieces.sort(Comparator.comparingDouble(Piece::filmM));
        double half = 0.5 * pieces.stream().mapToDouble(Piece::areaM2).sum();
        double sum = 0;
        for (Piece p : pieces) {
            sum += p.areaM2();
            if (sum >= half) {
                return p.filmM();
            }
        }
        return pieces.get(pieces.size() - 1).filmM();
    }
}
