package baymist.access;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;

/** Which openings stand open while spraying: the scene's word before the model's. */
public final class OpenInPass {
    private OpenInPass() {}

    /** Whether each opening of the cavity is open while spraying, [openings]. */
    public static boolean[] of(Cavity cavity, Scene scene) {
        boolean[] open = new boolean[cavity.openings().size()];
        for (int i = 0; i < open.length; i++) {
            Opening opening = cavity.openings().get(i);
            PhaseStates states = scene.states().getOrDefault(opening.name(), opening.states());
            open[i] = states.pass() == OpeningState.OPEN;
        }
        return open;
    }
}
