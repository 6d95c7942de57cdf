package baymist.plan;

import baymist.access.Insertion;
import baymist.scene.PassSpec;
import baymist.scene.WandSpec;

/**
 * One wand in one entry at one clock angle, with the stations at which its dose is known.
 *
 * @param way index of wand in entry; lines of one way differ in their clock angle alone
 * @param pass names entry, wand and aim
 * @param open open share of each opening while it sprays, [openings]
 * @param clockRad clock angle, rad
 * @param spacingM length of way that a station stands for, m
 * @param depthsM middle of each station's stretch, m, deepest first
 */
public record DoseLine(
        int way,
        PassSpec pass,
        Insertion insertion,
        WandSpec wand,
        double[] open,
        double clockRad,
        double spacingM,
        double[] depthsM) {
    /** Number of stations. */
    public int stations() {
        return depthsM.length;
    }

    /** Depth at which the stretch of a station begins, m. */
    double startM(int station) {
        return depthsM[station] + 0.5 * spacingM;
    }

    /** Depth at which it ends, m. */
    double endM(int station) {
        return depthsM[station] - 0.5 * spacingM;
    }
}
