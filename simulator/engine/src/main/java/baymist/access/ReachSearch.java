package baymist.access;

/** A way of finding where a kind of wand can get to. Deterministic; holds no state between calls. */
@FunctionalInterface
public interface ReachSearch {
    /**
     * Searches.
     *
     * @throws baymist.problem.SceneException if the entry names no opening or does not lead in
     */
    WandReach search(ReachProblem problem);
}
