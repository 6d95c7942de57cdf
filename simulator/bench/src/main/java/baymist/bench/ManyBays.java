package baymist.bench;

import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A wing box as long as is asked for: bays of 400 mm between ribs with three holes, two stringers a skin, a port and a drain a bay. A needle goes up through the ports of
 * the first bays, one after the other. Of our own invention, like the demonstration's box that it continues. Reads models of the project's folder.
 */
final class ManyBays {
    private static final double BAY_MM = 400;

    /** Air of one bay, m³, about. */
    static final double BAY_M3 = 0.02186;

    private ManyBays() {}

    /** Edge of a cubic voxel that gives about a number of cells, m. */
    static double voxelM(int bays, double cells) {
        return Math.cbrt(bays * BAY_M3 / cells);
    }

    /**
     * @param bays in all
     * @param sprayed from the first bay on
     * @param voxelM edge of the voxels
     * @param more lines of the scene file, such as hang and air
     */
    static Scene scene(int bays, int sprayed, double voxelM, String more) {
        return made(bays, 1, sprayed, 20, voxelM, more);
    }

    /** The same with one bay sprayed, any of them, the needle drawn back at a speed of its own. */
    static Scene one(int bays, int bay, double drawMmPerS, double voxelM, String more) {
        return made(bays, bay, bay, drawMmPerS, voxelM, more);
    }

    private static Scene made(int bays, int from, int to, double drawMmPerS, double voxelM, String more) {
        try {
            Path folder = Files.createTempDirectory("many-bays");
            Path cavity = folder.resolve("cavity.yaml");
            Path scene = folder.resolve("scene.yaml");
            Files.writeString(cavity, cavity(bays));
            Files.writeString(scene, job(from, to, drawMmPerS, voxelM, more));
            Scene read = SceneReader.read(scene);
            Files.delete(scene);
            Files.delete(cavity);
            Files.delete(folder);
            return read;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String cavity(int bays) {
        StringBuilder s = new StringBuilder();
        s.append("baymist: 1\nfamily: wing_box\nname: many bays\nnaca: 2412\n");
        line(s, "span: %.0f mm", bays * BAY_MM);
        s.append("root_chord: 1 m\nfront_spar: 15 %\nrear_spar: 65 %\ngauge: 0.8 mm\n");
        s.append("stringers: {upper: 2, lower: 2, height: 20 mm}\nribs:\n");
        for (int r = 0; r <= bays; r++) {
            line(s, "  - at: %.0f mm", r * BAY_MM);
            if (r > 0 && r < bays) {
                s.append("    holes:\n");
                s.append("      - {shape: {circle: 60 mm}, aft: 80 mm}\n");
                s.append("      - {shape: {circle: 80 mm}, aft: 250 mm}\n");
                s.append("      - {shape: {circle: 60 mm}, aft: 415 mm}\n");
            }
        }
        s.append("ports:\n");
        for (int b = 1; b <= bays; b++) {
            double middle = (b - 0.5) * BAY_MM;
            line(
                    s,
                    "  - {name: bay %d port, part: lower skin, shape: {circle: 100 mm}, at: [400 mm, %.0f mm, -40 mm]}",
                    b,
                    middle);
            line(
                    s,
                    "  - {name: bay %d drain, part: lower skin, shape: {circle: 5 mm}, at: [630 mm, %.0f mm, -25 mm]}",
                    b,
                    middle + 180);
        }
        return s.toString();
    }

    private static String job(int from, int to, double drawMmPerS, double voxelM, String more) {
        StringBuilder s = new StringBuilder();
        Path models = Path.of("models").toAbsolutePath();
        s.append("baymist: 1\ntitle: many bays\ncavity: cavity.yaml\n");
        line(s, "wands: [%s/wands/needle-1-8-2ft.yaml]", models);
        line(s, "product: %s/products/ambergale-40.yaml", models);
        s.append("supply:\n  pressure: 80 psi\n  liquid: 60 mL/min\n");
        s.append("  droplets: {rosin_rammler: {dv50: 30 um, spread: 2}}\nentries:\n");
        for (int b = from; b <= to; b++) {
            line(s, "  - {name: bay %d port, opening: bay %d port}", b, b);
        }
        s.append("passes:\n");
        for (int b = from; b <= to; b++) {
            line(
                    s,
                    "  - {name: bay %d, entry: bay %d port, wand: needle 1/8 in x 2 ft, from: 75 mm, to: 40 mm, draw_back: %.0f mm/s, hang: 1 s}",
                    b,
                    b,
                    drawMmPerS);
        }
        line(s, "voxel: %.4f mm", 1e3 * voxelM);
        s.append(more).append('\n');
        return s.toString();
    }

    private static void line(StringBuilder s, String format, Object... values) {
        s.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
