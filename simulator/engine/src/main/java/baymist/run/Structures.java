package baymist.run;

import baymist.cavity.Cavity;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * Structures of the jobs of one study, found by content: jobs that differ in passes, wands, supply or air alone get the same sheets, voxels, ray tree
 * and seams, which are made once. Results are the same as without. The few that were asked for last are kept; threads may ask at once.
 */
public final class Structures {
    /** Most structures that are held. */
    private static final int MOST = 8;

    /** Most cells that are held in all, so that a study needs little more memory than its runs (some 150 B a cell). */
    private static final long MOST_CELLS = 2_000_000;

    private final boolean keeps;
    private final Map<String, Kept> kept = new LinkedHashMap<>(16, 0.75f, true);
    private final AtomicInteger made = new AtomicInteger();

    private Structures(boolean keeps) {
        this.keeps = keeps;
    }

    /** Makes each structure anew: for a run that stands alone. */
    public static Structures fresh() {
        return new Structures(false);
    }

    /** Keeps what was made for the next job. */
    public static Structures shared() {
        return new Structures(true);
    }

    /** A place for a structure; the first thread that asks fills it. */
    private static final class Kept {
        private volatile @Nullable Structure structure;

        synchronized Structure get(Structures owner, Scene scene, @Nullable Cavity cavity) {
            Structure s = structure;
            if (s == null) {
                s = cavity == null ? Structure.of(scene) : Structure.of(scene, cavity);
                structure = s;
                owner.made.incrementAndGet();
            }
            return s;
        }

        @Nullable
        Structure known() {
            return structure;
        }
    }

    /** Sheets and openings of a scene, errors as {@link baymist.cavity.CavityBuilder#build(Scene)}. */
    public Cavity cavity(Scene scene) {
        return keeps
                ? kept("sheets " + sheetsKey(scene)).get(this, scene, null).cavity()
                : Structure.of(scene).cavity();
    }

    /** The structure of a scene; scenes of the same sheets and voxels get the same one. */
    public Structure of(Scene scene) {
        if (!keeps) {
            made.incrementAndGet();
            return Structure.of(scene);
        }
        String voxels = SceneContent.hashOf(List.of(scene.voxel(), scene.bayLabels(), scene.targets()));
        Structure s = kept("voxels " + sheetsKey(scene) + voxels).get(this, scene, cavity(scene));
        trim(s);
        return s;
    }

    /** How many structures were made, sheets alone included. */
    public int made() {
        return made.get();
    }

    private synchronized Kept kept(String key) {
        return kept.computeIfAbsent(key, k -> new Kept());
    }

    /** Lets go of those asked for longest ago, never of the one just asked for. */
    private synchronized void trim(Structure last) {
        long cells = 0;
        for (Kept k : kept.values()) {
            Structure s = k.known();
            cells += s == null ? 0 : s.cells();
        }
        Iterator<Kept> eldest = kept.values().iterator();
        while (eldest.hasNext() && (kept.size() > 2 * MOST || cells > MOST_CELLS)) {
            Structure s = eldest.next().known();
            if (s != null && s != last) {
                cells -= s.cells();
                eldest.remove();
            }
        }
    }

    /** What sheets and openings depend on. */
    private static String sheetsKey(Scene scene) {
        return SceneContent.hashOf(List.of(
                scene.cavity(), scene.cuts(), scene.states(), scene.entries(), scene.protectedItems(), scene.file()));
    }
}
