package baymist.voxel;

import baymist.geom.Vec3;
import baymist.scene.VoxelSpec;
import baymist.voxel.UnresolvedArea.Cause;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A voxel size that would hold what the present one can't.
 *
 * <p>A pitch up to the free way between two sheets puts a cell's centre between them wherever the lattice lies. So each axis
 * gets the largest pitch that reaches the wanted share of the area that is unresolved because of that axis; axes that hide
 * nothing keep theirs (docs/theory/voxels.md, section 10).
 *
 * @param size pitch along x, y, z, m; whole cells span the lattice's box with it
 * @param share of the unresolved area that it is expected to resolve, 0..1; laps stay hidden at any size
 * @param cells cavity cells that it would take, about
 */
public record FinerVoxels(VoxelSpec size, double share, long cells) {
    /**
     * The size for a wanted share, 0..1, of the unresolved area that any size can show.
     *
     * @return the present size with share 0 where nothing can be gained
     */
    public static FinerVoxels of(VoxelGrid grid, double wantedShare) {
        double[] pitch = new double[3];
        double gained = 0;
        double factor = 1;
        for (int a = 0; a < 3; a++) {
            double now = grid.sizeM().get(a);
            List<UnresolvedArea> because = becauseOf(grid, a);
            pitch[a] = because.isEmpty() ? now : whole(grid, a, largestPitch(because, wantedShare, now));
            factor *= now / pitch[a];
            for (UnresolvedArea u : because) {
                gained += u.spanM() >= pitch[a] * (1 - 1e-9) ? u.areaM2() : 0;
            }
        }
        double hidden = grid.unresolvedAreaM2();
        return new FinerVoxels(
                new VoxelSpec(pitch[0], pitch[1], pitch[2]),
                hidden > 0 ? gained / hidden : 0,
                Math.round(factor * grid.cellCount()));
    }

    /** Area that no size shows, m². */
    public static double lapsM2(VoxelGrid grid) {
        return grid.unresolved().stream()
                .filter(u -> u.cause() == Cause.LAP)
                .mapToDouble(UnresolvedArea::areaM2)
                .sum();
    }

    private static List<UnresolvedArea> becauseOf(VoxelGrid grid, int axis) {
        List<UnresolvedArea> because = new ArrayList<>();
        for (UnresolvedArea u : grid.unresolved()) {
            if (u.axis() == axis && u.spanM() > 0) {
                because.add(u);
            }
        }
        because.sort(Comparator.comparingDouble(UnresolvedArea::spanM).reversed());
        return because;
    }

    /** The largest pitch at which places with the wanted share of the area have room for a centre. */
    private static double largestPitch(List<UnresolvedArea> widestFirst, double wantedShare, double nowM) {
        double total = widestFirst.stream().mapToDouble(UnresolvedArea::areaM2).sum();
        double sum = 0;
        for (UnresolvedArea u : widestFirst) {
            sum += u.areaM2();
            if (sum >= wantedShare * total * (1 - 1e-9)) {
                return Math.min(nowM, u.spanM());
            }
        }
        return nowM;
    }

    /** The pitch of which a whole number spans the box, not above the wanted one. */
    private static double whole(VoxelGrid grid, int axis, double pitchM) {
        Vec3 now = grid.sizeM();
        int inner = (axis == 0 ? grid.nx() : axis == 1 ? grid.ny() : grid.nz()) - 2;
        double box = inner * now.get(axis);
        return box / Math.ceil(box / pitchM * (1 - 1e-9));
    }
}
