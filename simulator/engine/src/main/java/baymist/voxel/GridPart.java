package baymist.voxel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Some bays of a grid as a grid of their own: the same cells, faces, volumes and surfels, numbered anew in the same order, on the same lattice. An
 * opening between a bay that is kept and one that isn't becomes a vent. Every bay kept gives the same grid again, to the bit. Immutable.
 */
public final class GridPart {
    private final VoxelGrid whole;
    private final VoxelGrid grid;
    private final int[] cellOf;
    private final int[] surfelOf;
    private final int[] bayOf;

    private GridPart(VoxelGrid whole, boolean[] kept) {
        this.whole = whole;
        bayOf = numbered(kept);
        boolean[] cell = new boolean[whole.cellCount()];
        for (int c = 0; c < cell.length; c++) {
            cell[c] = kept[whole.bayOfCell(c)];
        }
        cellOf = numbered(cell);
        SurfelSet s = whole.surfels();
        boolean[] surfel = new boolean[s.count()];
        for (int i = 0; i < surfel.length; i++) {
            surfel[i] = cell[s.cell()[i]];
        }
        surfelOf = numbered(surfel);
        grid = build(kept);
    }

    /**
     * Takes bays out of a grid.
     *
     * @param kept which, [bays], at least one
     */
    public static GridPart of(VoxelGrid whole, boolean[] kept) {
        if (kept.length != whole.bays().size()) {
            throw new IllegalArgumentException(
                    kept.length + " bays given, " + whole.bays().size() + " there");
        }
        return new GridPart(whole, kept);
    }

    /** The kept bays. Its {@link VoxelGrid#part()} says what was left out; null if nothing was. */
    public VoxelGrid grid() {
        return grid;
    }

    /** The part's cell for one of the whole, or -1. */
    public int cell(int ofWhole) {
        return cellOf[ofWhole];
    }

    /** The part's surfel for one of the whole, or -1. */
    public int surfel(int ofWhole) {
        return surfelOf[ofWhole];
    }

    /** The part's bay for one of the whole, or -1. */
    public int bay(int ofWhole) {
        return bayOf[ofWhole];
    }

    private static int[] numbered(boolean[] kept) {
        int[] number = new int[kept.length];
        int count = 0;
        for (int i = 0; i < number.length; i++) {
            number[i] = kept[i] ? count++ : -1;
        }
        return number;
    }

    private VoxelGrid build(boolean[] kept) {
        int cells = count(cellOf);
        int[] lattice = new int[cells];
        int[] ofLattice = new int[whole.nx() * whole.ny() * whole.nz()];
        Arrays.fill(ofLattice, -1);
        double[] volume = new double[cells];
        int[] neighbour = new int[6 * cells];
        int[] bay = new int[cells];
        for (int c = 0; c < cellOf.length; c++) {
            int mine = cellOf[c];
            if (mine < 0) {
                continue;
            }
            lattice[mine] = whole.latticeOfCell(c);
            ofLattice[lattice[mine]] = mine;
            volume[mine] = whole.volumeM3(c);
            bay[mine] = bayOf[whole.bayOfCell(c)];
            for (int d = 0; d < 6; d++) {
                int next = whole.neighbour(c, d);
                neighbour[6 * mine + d] = next < 0 ? -1 : cellOf[next];
            }
        }
        FaceCut cut = FaceCut.of(whole.faces(), cellOf);
        return new VoxelGrid(
                whole.nx(),
                whole.ny(),
                whole.nz(),
                whole.origin(),
                whole.sizeM(),
                lattice,
                ofLattice,
                volume,
                neighbour,
                bay,
                cut.faces(),
                surfels(),
                bays(kept),
                whole.leaks(),
                unresolved(kept),
                part(kept, cut.openings()));
    }

    private static int count(int[] numbers) {
        int count = 0;
        for (int n : numbers) {
            count += n < 0 ? 0 : 1;
        }
        return count;
    }

    private @Nullable PartOfWhole part(boolean[] kept, List<Integer> cut) {
        List<Integer> computed = new ArrayList<>();
        for (int b = 0; b < kept.length; b++) {
            if (kept[b]) {
                computed.add(b);
            }
        }
        return computed.size() == kept.length ? null : new PartOfWhole(whole.bays(), computed, cut, whole.cellCount());
    }

    private List<Bay> bays(boolean[] kept) {
        List<Bay> bays = new ArrayList<>();
        for (int b = 0; b < kept.length; b++) {
            if (kept[b]) {
                bays.add(whole.bays().get(b));
            }
        }
        return bays;
    }

    private SurfelSet surfels() {
        SurfelSet s = whole.surfels();
        int[] from = new int[count(surfelOf)];
        for (int i = 0; i < surfelOf.length; i++) {
            if (surfelOf[i] >= 0) {
                from[surfelOf[i]] = i;
            }
        }
        int[] cell = ints(s.cell(), from);
        for (int i = 0; i < cell.length; i++) {
            cell[i] = cellOf[cell[i]];
        }
        int[] start = new int[from.length + 1];
        IntList beside = new IntList();
        for (int i = 0; i < from.length; i++) {
            for (int n = s.neighbourStart()[from[i]]; n < s.neighbourStart()[from[i] + 1]; n++) {
                int other = surfelOf[s.neighbour()[n]];
                if (other >= 0) {
                    beside.add(other);
                }
            }
            start[i + 1] = beside.size();
        }
        byte[] direction = new byte[from.length];
        for (int i = 0; i < from.length; i++) {
            direction[i] = s.direction()[from[i]];
        }
        return new SurfelSet(
                cell,
                direction,
                ints(s.part(), from),
                ints(s.closure(), from),
                reals(s.areaM2(), from),
                reals(s.normalX(), from),
                reals(s.normalY(), from),
                reals(s.normalZ(), from),
                reals(s.centreX(), from),
                reals(s.centreY(), from),
                reals(s.centreZ(), from),
                start,
                beside.toArray());
    }

    private static int[] ints(int[] all, int[] from) {
        int[] some = new int[from.length];
        for (int i = 0; i < some.length; i++) {
            some[i] = all[from[i]];
        }
        return some;
    }

    private static double[] reals(double[] all, int[] from) {
        double[] some = new double[from.length];
        for (int i = 0; i < some.length; i++) {
            some[i] = all[from[i]];
        }
        return some;
    }

    /** Unresolved places that lie nearer to a kept bay than to any other; a tie, such as on a rib, counts as kept. */
    private List<UnresolvedArea> unresolved(boolean[] kept) {
        return whole.unresolved().stream()
                .filter(u -> PartOfWhole.near(whole.bays(), b -> kept[b], u.centroidM()))
                .toList();
    }
}
