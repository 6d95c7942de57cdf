package baymist.field;

import baymist.cavity.Cavity;
import baymist.coverage.RegionWords;
import baymist.coverage.UnreachedRegion;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.RunResult;
import baymist.scene.Scene;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Finds the surfels of a {@link RegionChoice}. */
final class Regions {
    private Regions() {}

    /** @param run the scene's own run, or null if it has no passes */
    static FieldRegion find(RegionChoice choice, Scene scene, Cavity cavity, VoxelGrid grid, @Nullable RunResult run) {
        if (choice instanceof RegionChoice.Bare bare) {
            return bare(bare.name(), scene, grid, run);
        }
        int[] members = choice instanceof RegionChoice.At at
                ? round(at, scene, grid)
                : ofPart(((RegionChoice.OfPart) choice).name(), scene, cavity, grid);
        return FieldRegion.of(RegionWords.of(cavity, grid, members), members, grid.surfels());
    }

    private static FieldRegion bare(String name, Scene scene, VoxelGrid grid, @Nullable RunResult run) {
        if (run == null) {
            throw new SceneException(
                    "FLD-001",
                    SourcePlace.of(scene.file()),
                    "bare region " + name
                            + " is asked for, but the scene has no passes, so nothing is sprayed; name a point or a part"
                            + " instead");
        }
        for (UnreachedRegion r : run.coverage().unreached()) {
            if (String.valueOf(r.id()).equals(name) || r.label().equals(name)) {
                return FieldRegion.of(r.where(), r.surfels(), grid.surfels());
            }
        }
        String known = run.coverage().unreached().isEmpty()
                ? "it leaves nothing bare"
                : "it has "
                        + run.coverage().unreached().stream()
                                .map(r -> r.id() + " (" + r.label() + ")")
                                .collect(Collectors.joining(", "));
        throw new SceneException(
                "FLD-001",
                SourcePlace.of(scene.file()),
                "the run of the scene has no bare region " + name + "; " + known);
    }

    private static int[] ofPart(String name, Scene scene, Cavity cavity, VoxelGrid grid) {
        SurfelSet s = grid.surfels();
        int[] members = IntStream.range(0, s.count())
                .filter(i -> s.isStructure(i)
                        && cavity.parts().get(s.part()[i]).name().equals(name))
                .toArray();
        if (members.length == 0) {
            throw new SceneException(
                    "FLD-002",
                    SourcePlace.of(scene.file()),
                    "no inside surface belongs to a part '" + name + "'; there are "
                            + cavity.parts().stream().map(p -> p.name()).collect(Collectors.joining(", ")));
        }
        return members;
    }

    /** Surfels joined to the nearest one along its part, within the distance and facing the same half-space. */
    private static int[] round(RegionChoice.At at, Scene scene, VoxelGrid grid) {
        SurfelSet s = grid.surfels();
        int first = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < s.count(); i++) {
            double d = centre(s, i).distance(at.pointM());
            if (s.isStructure(i) && d < least) {
                least = d;
                first = i;
            }
        }
        if (first < 0 || least > Math.max(at.withinM(), grid.sizeM().length())) {
            throw new SceneException(
                    "FLD-003",
                    SourcePlace.of(scene.file()),
                    String.format(
                            Locale.ROOT,
                            "the point (%.4g, %.4g, %.4g) m lies %.0f mm from the nearest inside surface; name one on the sheet",
                            at.pointM().x(),
                            at.pointM().y(),
                            at.pointM().z(),
                            1e3 * least));
        }
        Vec3 middle = centre(s, first);
        boolean[] taken = new boolean[s.count()];
        ArrayDeque<Integer> queue = new ArrayDeque<>();
        taken[first] = true;
        queue.add(first);
        while (!queue.isEmpty()) {
            int i = queue.remove();
            for (int e = s.neighbourStart()[i]; e < s.neighbourStart()[i + 1]; e++) {
                int n = s.neighbour()[e];
                boolean joins = !taken[n]
                        && s.isStructure(n)
                        && s.part()[n] == s.part()[first]
                        && centre(s, n).distance(middle) <= at.withinM()
                        && normal(s, n).dot(normal(s, first)) > 0;
                if (joins) {
                    taken[n] = true;
                    queue.add(n);
                }
            }
        }
        return IntStream.range(0, taken.length).filter(i -> taken[i]).toArray();
    }

    static Vec3 centre(SurfelSet s, int i) {
        return new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]);
    }

    static Vec3 normal(SurfelSet s, int i) {
        return new Vec3(s.normalX()[i], s.normalY()[i], s.normalZ()[i]);
    }

    static boolean[] marked(int[] members, int count) {
        boolean[] marked = new boolean[count];
        Arrays.stream(members).forEach(i -> marked[i] = true);
        return marked;
    }
}
