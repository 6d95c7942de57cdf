package baymist.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.run.RunCancelledException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Laws of background work: one at a time, newest wins, every end is told once. */
@Timeout(30)
class JobRunnerTest {
    private static <T> Job<T> done(JobRunner runner, Work<T> work) throws InterruptedException {
        CountDownLatch ended = new CountDownLatch(1);
        Job<T> job = runner.start("test", work, j -> {
            if (j.ended()) {
                ended.countDown();
            }
        });
        assertTrue(ended.await(20, TimeUnit.SECONDS));
        return job;
    }

    @Test
    void aJobTellsItsProgressInOrderAndItsResult() throws Exception {
        List<String> heard = Collections.synchronizedList(new ArrayList<>());
        try (JobRunner runner = new JobRunner()) {
            CountDownLatch ended = new CountDownLatch(1);
            runner.start(
                    "count",
                    observer -> {
                        observer.stage("counting");
                        observer.progress(0.5, 3);
                        observer.progress(0.25, 4); // never falls
                        return 42;
                    },
                    j -> {
                        heard.add(j.state() + " " + j.stage() + " " + j.done());
                        if (j.ended()) {
                            assertEquals(42, j.result());
                            ended.countDown();
                        }
                    });
            assertTrue(ended.await(20, TimeUnit.SECONDS));
        }
        assertEquals(
                List.of(
                        "RUNNING  0.0",
                        "RUNNING counting 0.0",
                        "RUNNING counting 0.5",
                        "RUNNING counting 0.5",
                        "DONE counting 1.0"),
                heard);
    }

    @Test
    void aNewJobCancelsTheOneBefore() throws Exception {
        try (JobRunner runner = new JobRunner()) {
            CountDownLatch began = new CountDownLatch(1);
            Job<Integer> old = runner.start(
                    "long",
                    observer -> {
                        began.countDown();
                        while (!observer.cancelled()) {
                            Thread.onSpinWait();
                        }
                        throw new RunCancelledException();
                    },
                    j -> {});
            assertTrue(began.await(20, TimeUnit.SECONDS));
            Job<Integer> next = done(runner, observer -> 7);
            assertEquals(Job.State.CANCELLED, old.state());
            assertNull(old.result());
            assertEquals(7, next.result());
            assertTrue(!runner.busy());
        }
    }

    @Test
    void closingEndsARunInItsMiddle() throws Exception {
        CountDownLatch began = new CountDownLatch(1);
        JobRunner runner = new JobRunner();
        Job<?> job = runner.start(
                "a real run", Runs.whole(Fixture.SCENE, Fixture.TWO, (c, g, t, f) -> began.countDown()), j -> {});
        assertTrue(began.await(25, TimeUnit.SECONDS));
        runner.close();
        assertEquals(Job.State.CANCELLED, job.state());
        assertThrows(IllegalStateException.class, () -> runner.start("late", o -> 1, j -> {}));
    }

    @Test
    void whatGoesWrongBecomesASentence() throws Exception {
        try (JobRunner runner = new JobRunner()) {
            Job<?> broken = done(runner, Runs.open(Fixture.root().resolve("pom.xml"), Fixture.TWO));
            assertEquals(Job.State.FAILED, broken.state());
            assertTrue(broken.sentence().contains("pom.xml"), broken.sentence());
            Job<?> missing = done(runner, Runs.open(Fixture.root().resolve("no-such-scene.yaml"), Fixture.TWO));
            assertTrue(missing.sentence().contains("no-such-scene.yaml"), missing.sentence());
            Job<?> wrong = done(runner, o -> {
                throw new IllegalStateException("odd");
            });
            assertTrue(wrong.sentence().contains("odd") && wrong.sentence().contains("program itself"));
            Job<?> full = done(runner, o -> {
                throw new OutOfMemoryError();
            });
            assertTrue(full.sentence().contains("memory"), full.sentence());
        }
        assertTrue(Sentences.of(new IOException("disk full")).contains("disk full"));
        assertThrows(
                SceneException.class,
                () -> Runs.open(Fixture.root().resolve("pom.xml"), Fixture.TWO).run(baymist.run.RunObserver.NONE));
    }

    @Test
    void filmComesLongBeforeTheEnd() throws Exception {
        List<Double> wet = new ArrayList<>();
        Runs.Previewed p = Runs.preview(
                        Fixture.SCENE,
                        new Runs.Opened(Fixture.SCENE, Fixture.CHECK),
                        Fixture.TWO,
                        (cavity, grid, timeS, film) -> {
                            double sum = 0;
                            for (float f : film) {
                                sum += f;
                            }
                            wet.add(sum);
                        })
                .run(baymist.run.RunObserver.NONE);
        assertTrue(wet.get(0) > 0, "the first moment already shows film");
        assertEquals(p.recording().curves().count() - 1, wet.size());
        assertTrue(p.sentence().startsWith("Preview:"), p.sentence());
    }
}
