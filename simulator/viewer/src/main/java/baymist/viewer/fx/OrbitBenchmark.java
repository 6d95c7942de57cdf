package baymist.viewer.fx;

import baymist.run.CheckResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.surface.Surface;
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
 * OrbitBenchmark SCENE [TRIANGLES [PICTURES]]}. Needs a display.
 */
public final class OrbitBenchmark {
    /** Shorter than any that so many triangles can have, so that their number decides. */
    private static final double EDGE_M = 5e-4;

    private static final int WARM_UP = 20;
    private static final int PICTURES = 150;
    private static final double TURN_RAD = Math.toRadians(2);

    private OrbitBenchmark() {}

    /** Prints one line. */
    public static void main(String[] args) throws InterruptedException {
        Scene scene = SceneReader.read(Path.of(args[0]));
        int triangles = args.length > 1 ? Integer.parseInt(args[1]) : 200_000;
        CheckResult check = Simulation.check(scene, new RunOptions(2), RunObserver.NONE);
        int measured = args.length > 2 ? Integer.parseInt(args[2]) : PICTURES;
        int most = triangles;
        for (int count = 0; count < triangles; ) {
            count = surface(check, most).triangleCount();
            most = count < triangles ? (int) Math.ceil(1.03 * most * triangles / Math.max(1, count)) : most;
        }
        int asked = most;
        Toolkit.start();
        CountDownLatch done = new CountDownLatch(1);
        Platform.runLater(() -> turn(scene, check, asked, measured, line -> {
            System.out.println(line);
            done.countDown();
        }));
        done.await();
        System.exit(0);
    }

    private static Surface surface(CheckResult check, int most) {
        return Surface.of(check.cavity(), check.grid(), new SurfaceOptions(most, EDGE_M, 0));
    }

    private static void turn(Scene scene, CheckResult check, int triangles, int measured, Consumer<String> tell) {
        CavityPicture picture = new CavityPicture(
                check.cavity(),
                check.grid(),
                new FilmPlaces(scene.targets()),
                Theme.LIGHT,
                new EntryNames(scene),
                new SurfaceOptions(triangles, EDGE_M, 0));
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
            private long startAppNs;
            private long startDrawNs;

            @Override
            public void handle(long nowNs) {
                if (++pictures == WARM_UP) {
                    startNs = nowNs;
                    startCpuNs = cpuNs();
                    startAppNs = threadNs("JavaFX Application Thread");
                    startDrawNs = threadNs("QuantumRenderer-0");
                }
                view.look(View.ISO);
                Camera from = view.camera();
                view.set(from.turned(pictures * TURN_RAD, 0));
                if (pictures == WARM_UP + measured) {
                    stop();
                    double perPicture = 1e-6 / measured;
                    double all = (cpuNs() - startCpuNs) * perPicture;
                    double app = (threadNs("JavaFX Application Thread") - startAppNs) * perPicture;
                    double draw = (threadNs("QuantumRenderer-0") - startDrawNs) * perPicture;
                    tell.accept(String.format(
                            Locale.ROOT,
                            "%d triangles, none left out but those seen from behind, see-through sides sorted: %.1f pictures a second"
                                    + " at load %.1f; %.0f ms of processor time each: %.0f ms order and scene,"
                                    + " %.0f ms handing meshes over, %.0f ms rasteriser and the rest",
                            picture.structure().surface().triangleCount(),
                            measured / ((nowNs - startNs) * 1e-9),
                            ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
                            all,
                            app,
                            draw,
                            all - app - draw));
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

    /** Processor time of a thread, ns; 0 where there is none of that name. */
    private static long threadNs(String name) {
        var threads = ManagementFactory.getThreadMXBean();
        long sum = 0;
        for (long id : threads.getAllThreadIds()) {
            var info = threads.getThreadInfo(id);
            sum += info != null && info.getThreadName().equals(name) ? threads.getThreadCpuTime(id) : 0;
        }
        return sum;
    }

    private static long cpuNs() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
