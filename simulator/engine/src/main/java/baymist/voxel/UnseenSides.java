package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import org.jspecify.annotations.Nullable;

/**
 * The sides of pieces that no voxel faces, in the order of the triangles: whether each is interior surface, and why it is
 * not resolved.
 */
final class UnseenSides {
    private static final int SIDES_PER_BLOCK = 32;

    static final byte EXTERIOR = 0;
    static final byte INTERIOR = 1;
    static final byte UNDECIDED = 2;

    private final IntList block = new IntList();
    private final IntList share = new IntList();
    private byte[] verdict = new byte[0];
    private SideProbe.@Nullable Reason[] reason = new SideProbe.Reason[0];

    private UnseenSides() {}

    static UnseenSides find(
            Cavity cavity,
            Lattice lattice,
            CavityCells cells,
            Aim aim,
            AreaShares[] blocks,
            Bvh tree,
            Workers workers) {
        UnseenSides unseen = new UnseenSides();
        for (int b = 0; b < blocks.length; b++) {
            for (int s = 0; s < blocks[b].shares(); s++) {
                int target = blocks[b].target.get(s);
                if (target == AreaShares.HIDDEN || target == AreaShares.UNKNOWN) {
                    unseen.block.add(b);
                    unseen.share.add(s);
                }
            }
        }
        if (unseen.count() > 0) {
            unseen.judge(cavity, lattice, cells, aim, blocks, tree, workers);
        }
        return unseen;
    }

    private void judge(
            Cavity cavity,
            Lattice lattice,
            CavityCells cells,
            Aim aim,
            AreaShares[] blocks,
            Bvh tree,
            Workers workers) {
        verdict = new byte[count()];
        reason = new SideProbe.Reason[count()];
        TriangleMesh mesh = cavity.cutSheets();
        boolean chosenOnly = cavity.inside() != null;
        double[][] extents = SideProbe.extents(cavity);
        workers.forBlocks(count(), SIDES_PER_BLOCK, (from, to) -> {
            SideProbe probe = new SideProbe(cavity, lattice, cells, aim, new Sight(tree), extents);
            for (int u = from; u < to; u++) {
                AreaShares shares = blocks[block.get(u)];
                int piece = shares.piece.get(share.get(u));
                int triangle = shares.triangle.get(piece);
                Vec3 n = mesh.normal(triangle);
                probe.look(
                        cavity.partOfCut(triangle),
                        new Vec3(shares.x.get(piece), shares.y.get(piece), shares.z.get(piece)),
                        shares.side.get(share.get(u)) == 0 ? n : n.negate());
                verdict[u] = INTERIOR;
                if (chosenOnly || shares.target.get(share.get(u)) == AreaShares.UNKNOWN) {
                    CavityCells.Kind facing = probe.facing();
                    verdict[u] = facing == null ? UNDECIDED : facing == CavityCells.Kind.OUTSIDE ? EXTERIOR : INTERIOR;
                }
                boolean held = verdict[u] == INTERIOR && shares.standIn.get(share.get(u)) >= 0;
                reason[u] = verdict[u] == EXTERIOR || held ? null : probe.reason();
            }
        });
    }

    int count() {
        return share.size();
    }

    int block(int u) {
        return block.get(u);
    }

    int share(int u) {
        return share.get(u);
    }

    byte verdict(int u) {
        return verdict[u];
    }

    /** Why the side is not resolved; null for an exterior one and for one that a stand-in takes. */
    SideProbe.@Nullable Reason reason(int u) {
        return reason[u];
    }
}
