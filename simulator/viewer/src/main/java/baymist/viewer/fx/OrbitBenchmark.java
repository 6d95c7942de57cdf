package baymist.viewer.fx;

import baymist.run.CheckResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.surface.SurfaceOptions;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.View;
import baymist.voxel.SurfelSet;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * How many pictures a second the viewer draws while a cavity of 200,000 triangles is turned with its see-through sheets on: {@code
 * OrbitBenchmark SCENE [TRIANGLES]}. Needs a display.
 */
public final class OrbitBenchmark {
    private static final int WARM_UP = 25;
    private static final int MEASURED = 150;
    private static final double TURN_RAD = Math.toRadians(2);

    private OrbitBenchmark() {}

    /** Prints one line. */
    public static void main(String[] args) throws InterruptedException {
        Scene scene = SceneReader.read(Path.of(args[0]));
        int triangles = args.length > 1 ? Integer.parseInt(args[1]) : 200_000;
        CheckResult check = Simulation.check(scene, new RunOptions(2), RunObserver.NONE);
        Toolkit.start();
        CountDownLatch done = new CountDownLatch(1);
        Platform.runLater(() -> turn(scene, check, triangles, line -> {
            System.out.println(line);
            done.countDown();
        }));
        done.await();
        System.exit(0);
    }

    private static void turn(Scene scene, CheckResult check, int triangles, Consumer<String> tell) {
        CavityPicture picture = new CavityPicture(
                check.cavity(),
                check.grid(),
                new FilmPlaces(scene.targets()),
                Theme.LIGHT,
                new EntryNames(scene),
                new SurfaceOptions(triangles, 5e-4, 0));
        picture.structure().film(film(check.grid().surfels()));
        BayView view = new BayView(Theme.LIGHT, false);
        Stage stage = new Stage();
        stage.setScene(new javafx.scene.Scene(view, 1100, 760));
        Styles.dress(view, false, 1);
        stage.show();
        view.show(picture);
        new AnimationTimer() {
            private int pictures;
            private long startNs;
            private long startCpuNs;

            @Override
            public void handle(long nowNs) {
                if (++pictures == WARM_UP) {
                    startNs = nowNs;
                    startCpuNs = cpuNs();
                }
                view.look(View.ISO);
                Camera from = view.camera();
                view.set(from.turned(pictures * TURN_RAD, 0));
                if (pictures == WARM_UP + MEASURED) {
                    stop();
                    tell.accept(String.format(
                            Locale.ROOT,
                            "%d triangles, see-through sides sorted: %.1f pictures a second, %.0f ms of processor time each, load %.1f",
                            picture.structure().surface().triangleCount(),
                            MEASURED / ((nowNs - startNs) * 1e-9),
                            (cpuNs() - startCpuNs) * 1e-6 / MEASURED,
                            ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage()));
                }
            }
        }.start();
    }

    private static float[] film(SurfelSet surfels) {
        float[] film = new float[surfels.count()];
        for (int s = 0; s < film.length; s++) {
            double wave = Math.sin(9 * surfels.centreX()[s]) * Math.cos(7 * surfels.centreY()[s]);
            film[s] = (float) (1e-5 * Math.exp(3 * wave));
        }
        return film;
    }

    private static long cpuNs() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
