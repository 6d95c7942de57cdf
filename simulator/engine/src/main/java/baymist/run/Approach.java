package baymist.run;

import baymist.access.AccessFinder;
import baymist.access.Insertion;
import baymist.access.ReachProblem;
import baymist.access.ReachSettings;
import baymist.access.Surroundings;
import baymist.cavity.Cavity;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;

/** Which wand goes into which entry, pass by pass. */
public final class Approach {
    private Approach() {}

    /**
     * The ways of a job's passes.
     *
     * @param insertions of each pass, in the order of the passes
     * @param findings what a hand has to look out for on these ways
     */
    public record Ways(List<Insertion> insertions, List<Finding> findings) {}

    /** The insertion of each pass; a wand that sags hangs on its way. */
    public static Ways ways(Scene scene, Cavity cavity) {
        Surroundings around = Surroundings.of(cavity, scene);
        List<Insertion> all = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (PassSpec pass : scene.passes()) {
            WandSpec wand = wand(scene, pass);
            ReachProblem problem = new ReachProblem(around, entry(scene, pass), wand, ReachSettings.DEFAULT);
            Insertion in = AccessFinder.find(problem, pass.aim(), pass.fromDepthM());
            all.add(PassSag.hang(scene, around, pass, wand, in, findings));
        }
        return new Ways(all, findings.stream().distinct().toList());
    }

    public static WandSpec wand(Scene scene, PassSpec pass) {
        WandSpec wand = scene.wands().get(pass.wand());
        if (wand == null) {
            throw new SceneException(
                    "RUN-001",
                    pass.place(),
                    "pass '" + pass.name() + "' uses the wand '" + pass.wand() + "', which is not defined; defined are "
                            + scene.wands().keySet().stream().sorted().toList());
        }
        return wand;
    }

    private static EntrySpec entry(Scene scene, PassSpec pass) {
        return scene.entries().stream()
                .filter(e -> e.name().equals(pass.entry()))
                .findFirst()
                .orElseThrow(() -> new SceneException(
                        "RUN-002",
                        pass.place(),
                        "pass '" + pass.name() + "' uses the entry '" + pass.entry()
                                + "', which is not defined; defined are "
                                + scene.entries().stream().map(EntrySpec::name).toList()));
    }
}
