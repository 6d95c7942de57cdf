package baymist.run;

import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** A wing box of equal bays in a row for tests: one hole a rib, the end ribs too, one port a bay. Of our own invention. */
public final class BoxOfBays {
    private static final double BAY_MM = 300;

    private BoxOfBays() {}

    /** A needle goes up through the port of one bay and sprays the upper skin. */
    public static Scene upwards(int bays, int bay) {
        return scene(
                bays,
                String.format(
                        Locale.ROOT,
                        "entries:%n  - {name: in, opening: bay %1$d port}%npasses:%n  - {name: up, entry: in,"
                                + " wand: needle 1/8 in x 2 ft, from: 60 mm, to: 40 mm, draw_back: 20 mm/s, hang: 0.5 s}%n",
                        bay));
    }

    /** A needle goes in along the row through the hole of the first rib and sprays down the line of holes. */
    public static Scene alongHoles(int bays) {
        return scene(
                bays,
                "entries:\n  - {name: in, opening: rib 1 hole, direction: [0, 1, 0]}\npasses:\n  - {name: along, entry: in,"
                        + " wand: needle 1/8 in x 2 ft, from: 200 mm, to: 160 mm, draw_back: 40 mm/s}\n");
    }

    /** Sprayed upwards in the first bay, with the ports and the end hole of all bays from one on shut while spraying. */
    static Scene shutFrom(int bays, int first) {
        StringBuilder shut = new StringBuilder("openings:\n");
        for (int b = first; b <= bays; b++) {
            line(shut, "  bay %d port: {pass: closed, hang: open, after: open}", b);
        }
        line(shut, "  rib %d hole: {pass: closed, hang: open, after: open}", bays + 1);
        return scene(
                bays,
                shut + "entries:\n  - {name: in, opening: bay 1 port}\npasses:\n  - {name: up, entry: in,"
                        + " wand: needle 1/8 in x 2 ft, from: 60 mm, to: 40 mm, draw_back: 20 mm/s}\n");
    }

    private static Scene scene(int bays, String passes) {
        try {
            Path folder = Files.createTempDirectory("box-of-bays");
            Path cavity = folder.resolve("cavity.yaml");
            Path scene = folder.resolve("scene.yaml");
            Files.writeString(cavity, cavity(bays));
            Path models = TestScenes.root().resolve("models");
            Files.writeString(
                    scene,
                    "baymist: 1\ntitle: box of bays\ncavity: cavity.yaml\nwands: [" + models
                            + "/wands/needle-1-8-2ft.yaml]\nproduct: " + models
                            + "/products/ambergale-40.yaml\nsupply:\n  pressure: 80 psi\n  liquid: 60 mL/min\n"
                            + "  droplets: {rosin_rammler: {dv50: 12 um, spread: 2}}\n" + passes
                            + "voxel: 25 mm\nhang: 1 s\nair: projected\n");
            Scene read = SceneReader.read(scene).withNumerics(4, 32);
            Files.delete(scene);
            Files.delete(cavity);
            Files.delete(folder);
            return read;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String cavity(int bays) {
        StringBuilder s = new StringBuilder("baymist: 1\nfamily: wing_box\nname: box of bays\nnaca: 2415\n");
        line(s, "span: %.0f mm", bays * BAY_MM);
        s.append("root_chord: 800 mm\nfront_spar: 20 %\nrear_spar: 60 %\ngauge: 0.8 mm\nribs:\n");
        for (int r = 0; r <= bays; r++) {
            line(
                    s,
                    "  - {at: %.0f mm, holes: [{name: rib %d hole, shape: {circle: 70 mm}, aft: 160 mm}]}",
                    r * BAY_MM,
                    r + 1);
        }
        s.append("ports:\n");
        for (int b = 1; b <= bays; b++) {
            line(
                    s,
                    "  - {name: bay %d port, part: lower skin, shape: {circle: 60 mm}, at: [320 mm, %.0f mm, -40 mm]}",
                    b,
                    (b - 0.5) * BAY_MM);
        }
        return s.toString();
    }

    private static void line(StringBuilder s, String format, Object... values) {
        s.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
