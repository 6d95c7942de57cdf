package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.scene.TargetSpec;
import baymist.voxel.SurfelEdge;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Coverage by length of seam: the lines where sheets of different parts meet, as seen from inside, where corrosion starts. A web that stands on a skin
 * has a seam on either side. Lengths are those of {@link SurfelEdge}: a staircase on oblique sheet.
 *
 * @param lengthM all seams, m
 * @param reached share of that length with at least haze on one side, 0..1
 * @param protectedShare share with the target build on both sides, 0..1
 * @param filmNearM2 loose film on half a surfel on either side of the seam over the length of the seam, volume on a length, mean over reached seams, m²
 * @param bySeam pairs of parts, longest bare length first
 */
public record SeamCoverage(
        double lengthM, double reached, double protectedShare, double filmNearM2, List<Seam> bySeam) {
    public SeamCoverage {
        bySeam = List.copyOf(bySeam);
    }

    /**
     * Seams of two parts.
     *
     * @param parts as in "rib 2 - upper skin"
     */
    public record Seam(String parts, double lengthM, double reached, double protectedShare) {
        /** Length without any film, m. */
        public double bareM() {
            return lengthM * (1 - reached);
        }
    }

    /**
     * Assesses the seams of a film.
     *
     * @param filmM film build on each surfel, m, [surfels]
     * @param looseM what of it may be drawn into a gap, m, [surfels]
     */
    public static SeamCoverage of(Cavity cavity, VoxelGrid grid, double[] filmM, double[] looseM, TargetSpec target) {
        SurfelSet surfels = grid.surfels();
        SurfelEdge edge = new SurfelEdge(grid);
        Map<String, double[]> sums = new TreeMap<>();
        double[] all = new double[3];
        double drawn = 0;
        for (int s = 0; s < surfels.count(); s++) {
            for (int n = surfels.neighbourStart()[s]; n < surfels.neighbourStart()[s + 1]; n++) {
                int o = surfels.neighbour()[n];
                if (o <= s || !surfels.isStructure(s) || !surfels.isStructure(o) || same(surfels, s, o)) {
                    continue;
                }
                double length = edge.lengthM(s, o);
                double most = Math.max(filmM[s], filmM[o]);
                double least = Math.min(filmM[s], filmM[o]);
                double[] sum = sums.computeIfAbsent(name(cavity, surfels, s, o), k -> new double[3]);
                for (double[] into : List.of(sum, all)) {
                    into[0] += length;
                    into[1] += most >= target.hazeM() ? length : 0;
                    into[2] += least >= target.buildM() ? length : 0;
                }
                if (most >= target.hazeM()) {
                    drawn += looseM[s] * edge.wayM(s, o) * 0.5 * length + looseM[o] * edge.wayM(o, s) * 0.5 * length;
                }
            }
        }
        List<Seam> seams = new ArrayList<>();
        sums.forEach((name, v) -> seams.add(new Seam(name, v[0], share(v[1], v[0]), share(v[2], v[0]))));
        seams.sort(Comparator.comparingDouble(Seam::bareM).reversed().thenComparing(Seam::parts));
        return new SeamCoverage(all[0], share(all[1], all[0]), share(all[2], all[0]), share(drawn, all[1]), seams);
    }

    private static boolean same(SurfelSet surfels, int s, int o) {
        return surfels.part()[s] == surfels.part()[o];
    }

    private static String name(Cavity cavity, SurfelSet surfels, int s, int o) {
        int low = Math.min(surfels.part()[s], surfels.part()[o]);
        int high = Math.max(surfels.part()[s], surfels.part()[o]);
        return cavity.parts().get(low).name() + " - " + cavity.parts().get(high).name();
    }

    private static double share(double part, double whole) {
        return whole > 0 ? part / whole : 0;
    }
}
