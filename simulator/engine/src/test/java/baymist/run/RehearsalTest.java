package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.AirSpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rehearsals against plain runs of the same jobs. */
class RehearsalTest {
    private static final TipSpec ONE_SIDED =
            new TipSpec("one-sided", List.of(new TipSpec.Jet(Math.PI / 2, 0, 0.8e-3, 1, 1)));

    private static PassSpec pass(double from, double to, double clock, double hang) {
        return new PassSpec("p", "aft", "rod", from, to, 0.1, clock, 0.5, hang, SceneFixtures.HERE);
    }

    private static Scene scene(PassSpec... passes) {
        Scene made = SceneFixtures.minimal()
                .withCavity(SceneFixtures.block(new Vec3(0.5, 0.2, 0.15)))
                .withCuts(SceneFixtures.round("hole", "aft wall", 0.03, new Vec3(0.5, 0.1, 0.075)))
                .withWands(new WandSpec("rod", 0.6, 0.00635, 0.002, ONE_SIDED))
                .withPasses(passes)
                .withVoxel(0.03, 0.03, 0.03)
                .withHangS(20)
                .build();
        return made.withAir(made.air().withMode(AirSpec.Mode.PROJECTED, 0));
    }

    @Test
    void aRehearsalIsARun() {
        // stations move by less than a nanometre: rays that graze an edge may end elsewhere, so a thousandth of the
        // area
        List<Scene> jobs = List.of(
                scene(pass(0.4, 0.06, 0, 0)),
                scene(pass(0.4, 0.06, 1, 5), pass(0.3, 0.1, 4, 0)),
                scene(pass(0.4, 0.06, 0, 0)));
        try (Workers one = new Workers(1)) {
            Rehearsal rehearsal = Rehearsal.of(jobs.get(0), Structures.fresh(), one);
            for (Scene job : jobs) {
                RunResult run = Simulation.run(job, new RunOptions(1), RunObserver.NONE);
                Rehearsal.Rehearsed film = rehearsal.run(job);
                double liquid = run.ledger().sprayedKg() / job.product().densityKgPerM3();
                assertEquals(liquid, film.productM3(), 1e-9 * liquid);
                double trigger =
                        run.stations().stream().mapToDouble(s -> s.durationS()).sum();
                assertEquals(trigger, film.triggerS(), 1e-9);
                double all = 0;
                double off = 0;
                double apart = 0;
                double mean = 0;
                for (int s = 0; s < run.filmM().length; s++) {
                    double area = run.grid().surfels().areaM2()[s];
                    all += area;
                    boolean same = Math.abs(run.filmM()[s] - film.filmM()[s]) <= 1e-4 * run.filmM()[s] + 1e-12;
                    off += same ? 0 : area;
                    apart += area * Math.abs(run.filmM()[s] - film.filmM()[s]);
                    mean += area * run.filmM()[s];
                }
                assertTrue(apart < 1e-5 * mean, apart / mean + " of the film lies elsewhere");
                assertTrue(off / all < 1e-3, off / all + " of the area differs");
            }
            assertTrue(rehearsal.run(jobs.get(0)).total().reached() > 0.02);
        }
    }

    @Test
    void resolvedAirIsNotRehearsed() {
        Scene job = scene(pass(0.4, 0.06, 0, 0));
        Scene resolved = job.withAir(job.air().withMode(AirSpec.Mode.RESOLVED, 0));
        try (Workers one = new Workers(1)) {
            assertThrows(IllegalArgumentException.class, () -> Rehearsal.of(resolved, Structures.fresh(), one));
        }
    }
}
