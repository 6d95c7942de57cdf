package baymist.bench;

import baymist.cavity.CavityBuilder;
import baymist.recording.LiveFilm;
import baymist.recording.Preview;
import baymist.run.RunMoment;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.surface.Surface;
import baymist.surface.SurfaceOptions;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * How soon a changed job shows film: time to the first film on any surface, to the end of the preview, and of its surface as triangles. The first
 * round is that of a cold program. Run from the project's folder with scene files and, first, the number of threads as arguments.
 */
public final class PreviewRate {
    private static final int ROUNDS = 3;

    private PreviewRate() {}

    public static void main(String[] args) {
        int threads = args.length > 0 ? Integer.parseInt(args[0]) : 2;
        List<String> files = args.length > 1
                ? List.of(args).subList(1, args.length)
                : List.of("scenes/control-surface-pin-forward.yaml", "scenes/wing-box.yaml", "scenes/tail-cone.yaml");
        for (String file : files) {
            Scene scene = SceneReader.read(Path.of(file));
            double volumeM3 = Simulation.check(scene, new RunOptions(threads), RunObserver.NONE)
                    .grid()
                    .totalVolumeM3();
            for (int round = 1; round <= ROUNDS; round++) {
                round(file, scene, volumeM3, threads, round);
            }
        }
    }

    private static void round(String file, Scene scene, double volumeM3, int threads, int round) {
        Begun begun = new Begun();
        Preview preview = Preview.of(scene, CavityBuilder.build(scene), volumeM3);
        RunResult result =
                preview.run(new RunOptions(threads), begun, LiveFilm.NONE).result();
        double run = begun.elapsedS();
        double cpu = begun.cpuS();
        Surface surface = Surface.of(result.cavity(), result.grid(), SurfaceOptions.DEFAULT.withMaxTriangles(60_000));
        double all = begun.elapsedS();
        System.out.println(String.format(
                Locale.ROOT,
                "%s round %d: first film %.2f s (processor time %.2f s), whole preview %.2f s (%.2f s), surface of %,d"
                        + " triangles %.2f s; %,d cells, %,d surfels, reached %.1f %%",
                file,
                round,
                begun.filmS,
                begun.filmCpuS,
                run,
                cpu,
                surface.triangleCount(),
                all - run,
                result.grid().cellCount(),
                result.grid().surfels().count(),
                100 * result.coverage().total().reached()));
        System.out.println("  "
                + result.record().secondsByStage().entrySet().stream()
                        .map(e -> String.format(Locale.ROOT, "%s %.2f s", e.getKey(), e.getValue()))
                        .collect(Collectors.joining(", ")));
        System.out.println("  " + preview.sentence());
    }

    /** Notes when the first film is there. */
    private static final class Begun implements RunObserver {
        private final long began = System.nanoTime();
        private final long beganCpu = cpuNs();
        private double filmS = Double.NaN;
        private double filmCpuS = Double.NaN;

        private static long cpuNs() {
            return ManagementFactory.getOperatingSystemMXBean() instanceof com.sun.management.OperatingSystemMXBean os
                    ? os.getProcessCpuTime()
                    : 0;
        }

        double cpuS() {
            return 1e-9 * (cpuNs() - beganCpu);
        }

        double elapsedS() {
            return 1e-9 * (System.nanoTime() - began);
        }

        @Override
        public void stage(String name) {}

        @Override
        public void progress(double done, double jobTimeS) {}

        @Override
        public void moment(RunMoment now) {
            if (Double.isNaN(filmS) && now.sprayedKg() > 0) {
                filmS = elapsedS();
                filmCpuS = cpuS();
            }
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    }
}
