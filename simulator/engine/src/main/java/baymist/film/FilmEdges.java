package baymist.film;

import baymist.geom.Vec3;
import baymist.voxel.FaceSet;
import baymist.voxel.PartOfWhole;
import baymist.voxel.SurfelEdge;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Where film can run: from each surfel downhill to its neighbours, and over the rim of openings to the outside. Depends on
 * geometry and gravity alone. Immutable once built; sorted by giving surfel.
 */
final class FilmEdges {
    /** Giving surfel, [edges]. */
    private int[] from = new int[64];

    /** Taking surfel, or -1 for out through {@link #opening}, [edges]. */
    private int[] to = new int[64];

    /** Opening that the film leaves by, or -1, [edges]. */
    private int[] opening = new int[64];

    /** Gravity along the sheet towards the edge times the edge's length, m²/s², [edges]. */
    private double[] pull = new double[64];

    private int count;
    private final VoxelGrid grid;
    private final Vec3 gravity;
    private final boolean[] vented;

    private final SurfelEdge shared;

    FilmEdges(VoxelGrid grid, Vec3 gravity) {
        this.grid = grid;
        this.gravity = gravity;
        this.vented = vented(grid);
        SurfelSet surfels = grid.surfels();
        this.shared = new SurfelEdge(grid);
        double strength = gravity.length();
        int[] closureOfSide = strength > 0 ? closureOfSide(surfels, grid.cellCount()) : new int[0];
        for (int s = 0; s < surfels.count() && strength > 0; s++) {
            if (surfels.closure()[s] >= 0) {
                continue;
            }
            boolean floor = -normal(s).dot(gravity) > FilmRuns.LEVEL * strength;
            for (int n = surfels.neighbourStart()[s]; n < surfels.neighbourStart()[s + 1]; n++) {
                addNeighbour(s, surfels.neighbour()[n], floor, strength);
            }
            int hole = closureOfSide[side(s)];
            if (floor && hole >= 0 && vented[surfels.closure()[hole]]) {
                // A hole smaller than the face: its rim is the circle of its area.
                add(s, -1, surfels.closure()[hole], strength * 2 * Math.sqrt(Math.PI * surfels.areaM2()[hole]));
            }
        }
    }

    int count() {
        return count;
    }

    int from(int edge) {
        return from[edge];
    }

    int to(int edge) {
        return to[edge];
    }

    int opening(int edge) {
        return opening[edge];
    }

    double pull(int edge) {
        return pull[edge];
    }

    /** Whether an opening leads outside. */
    boolean vented(int openingIndex) {
        return vented[openingIndex];
    }

    private void addNeighbour(int s, int other, boolean floor, double strength) {
        SurfelSet surfels = grid.surfels();
        Vec3 n = normal(s);
        Vec3 towards = centre(other).minus(centre(s));
        Vec3 along = towards.plus(-towards.dot(n), n);
        double length = along.length();
        if (!(length > 1e-9)) {
            return;
        }
        double width = shared.lengthM(s, other);
        double pullHere = gravity.dot(along) / length * width;
        int closure = surfels.closure()[other];
        if (closure < 0) {
            if (pullHere > 1e-12 * strength * width) {
                add(s, other, -1, pullHere);
            }
        } else if (vented[closure] && (floor || pullHere > 0)) {
            // On a floor the film at the rim hangs over it and is drawn down with all of gravity.
            add(s, -1, closure, floor ? strength * width : pullHere);
        }
    }

    private void add(int giving, int taking, int byOpening, double pullHere) {
        if (count == from.length) {
            from = Arrays.copyOf(from, 2 * count);
            to = Arrays.copyOf(to, 2 * count);
            opening = Arrays.copyOf(opening, 2 * count);
            pull = Arrays.copyOf(pull, 2 * count);
        }
        from[count] = giving;
        to[count] = taking;
        opening[count] = byOpening;
        pull[count++] = pullHere;
    }

    private int side(int s) {
        return 6 * grid.surfels().cell()[s] + grid.surfels().direction()[s];
    }

    private Vec3 normal(int s) {
        SurfelSet f = grid.surfels();
        return new Vec3(f.normalX()[s], f.normalY()[s], f.normalZ()[s]);
    }

    private Vec3 centre(int s) {
        SurfelSet f = grid.surfels();
        return new Vec3(f.centreX()[s], f.centreY()[s], f.centreZ()[s]);
    }

    private static boolean[] vented(VoxelGrid grid) {
        FaceSet faces = grid.faces();
        int most = -1;
        for (int[] list : new int[][] {
            faces.opening(), faces.ventOpening(), grid.surfels().closure()
        }) {
            for (int o : list) {
                most = Math.max(most, o);
            }
        }
        boolean[] vented = new boolean[most + 1];
        PartOfWhole part = grid.part();
        for (int o : faces.ventOpening()) {
            // film stops at the rim of an inner hole, also where the bay beyond it is left out
            vented[o] = part == null || !part.isCut(o);
        }
        return vented;
    }

    /** Closure on each side of each cell, or -1, [6 * cells]. */
    private static int[] closureOfSide(SurfelSet surfels, int cells) {
        int[] of = new int[6 * cells];
        Arrays.fill(of, -1);
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.closure()[s] >= 0) {
                of[6 * surfels.cell()[s] + surfels.direction()[s]] = s;
            }
        }
        return of;
    }
}
