package baymist.explain;

import baymist.geom.Vec3;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Boxes of plates whose bare corner is bare for one reason by construction; dimensions vary by seed. Invented, as are their products: nothing
 * here is data. A box runs along x from the front, where the wand goes in; y is to the right, z up.
 */
final class KnownCavities {
    /** A job, the place that is asked about, and why it stays bare. */
    record Known(String name, Scene scene, Vec3 atM, Cause cause) {}

    private final Random random;
    private final Path folder;
    private final List<String> plates = new ArrayList<>();
    private final List<String> ports = new ArrayList<>();
    private final List<String> extra = new ArrayList<>();
    private double length;
    private double width;
    private double height;

    private KnownCavities(long seed, Path folder) {
        this.random = new Random(seed);
        this.folder = folder;
    }

    static Known of(Cause cause, String which, long seed, Path folder) {
        return switch (which) {
            case "shade" -> new KnownCavities(seed, folder).shade();
            case "short rod" -> new KnownCavities(seed, folder).shortRod();
            case "pattern" -> new KnownCavities(seed, folder).pattern();
            case "ceiling" -> new KnownCavities(seed, folder).ceiling();
            case "dead end" -> new KnownCavities(seed, folder).deadEnd();
            case "starved" -> new KnownCavities(seed, folder).starved();
            case "closed early" -> new KnownCavities(seed, folder).closedEarly();
            case "small hole" -> new KnownCavities(seed, folder).smallHole();
            case "sump" -> new KnownCavities(seed, folder).sump();
            case "mask" -> new KnownCavities(seed, folder).mask();
            default -> throw new IllegalArgumentException(which);
        };
    }

    /** Somewhere between two values. */
    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private void box(double lengthM, double widthM, double heightM) {
        length = lengthM;
        width = widthM;
        height = heightM;
    }

    private static String mm(double m) {
        return String.format(Locale.ROOT, "%.1f mm", 1e3 * m);
    }

    /** A plate across the box at x with a round hole; a diameter of 0 = none. */
    private void across(String name, double x, String hole, double diameter, double y, double z, String state) {
        String holes = diameter > 0
                ? String.format(
                        Locale.ROOT,
                        ", holes: [{name: %s, along: %s, across: %s, shape: {circle: %s}, state: %s}]",
                        hole,
                        mm(y),
                        mm(z),
                        mm(diameter),
                        state)
                : "";
        plates.add(String.format(
                Locale.ROOT,
                "{name: %s, origin: [%s, 0, 0], along: [0, 1, 0], across: [0, 0, 1], length: %s, width: %s%s}",
                name,
                mm(x),
                mm(width),
                mm(height),
                holes));
    }

    private void port(String name, String part, double diameter, double x, double y, double z, String state) {
        ports.add(String.format(
                Locale.ROOT,
                "{name: %s, part: %s, shape: {circle: %s}, at: [%s, %s, %s], state: %s}",
                name,
                part,
                mm(diameter),
                mm(x),
                mm(y),
                mm(z),
                state));
    }

    private Scene scene(String tip, double wandM, String pass, double mlPerMin, double dv50Um, String hang) {
        List<String> all = new ArrayList<>();
        all.add(flat("floor", 0));
        all.add(flat("ceiling", height));
        all.add(side("left wall", 0));
        all.add(side("right wall", width));
        plates.forEach(p -> all.add(p));
        StringBuilder y = new StringBuilder("baymist: 1\ntitle: constructed\ncavity:\n  family: plates\n  name: box\n  plates:\n");
        all.forEach(p -> y.append("    - ").append(p).append('\n'));
        if (!ports.isEmpty()) {
            y.append("  ports:\n");
            ports.forEach(p -> y.append("    - ").append(p).append('\n'));
        }
        y.append("  inside: [").append(mm(0.5 * between(0.99, 1) * 0.1)).append(", ").append(mm(0.5 * width)).append(", ").append(mm(0.9 * height)).append("]\n");
        y.append("wands:\n  - {name: rod, length: ").append(mm(wandM)).append(", outer_diameter: 8 mm, bore: 2 mm, tip: {name: t, ").append(tip).append("}}\n");
        y.append("product: {name: oil, density: 870 kg/m3, viscosity: 40 mPa s, surface_tension: 30 mN/m, non_volatile: 98 %}\n");
        y.append(String.format(
                Locale.ROOT,
                "supply: {pressure: 60 psi, liquid: %.3f mL/min, droplets: {rosin_rammler: {dv50: %.1f um, spread: 2.5}}}\n",
                mlPerMin,
                dv50Um));
        y.append("entries: [{name: front, opening: wand hole, direction: [1, 0, 0]}]\npasses:\n  - {name: line, entry: front, wand: rod, ")
                .append(pass)
                .append("}\nhang: ")
                .append(hang)
                .append("\nvoxel: 25 mm\nnumerics: {rays_per_jet: 64, size_bins: 4}\n");
        extra.forEach(e -> y.append(e).append('\n'));
        try {
            Path file = Files.createTempFile(folder, "known", ".yaml");
            Files.writeString(file, y);
            return SceneReader.read(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String flat(String name, double z) {
        return String.format(
                Locale.ROOT,
                "{name: %s, origin: [0, 0, %s], along: [1, 0, 0], across: [0, 1, 0], length: %s, width: %s}",
                name,
                mm(z),
                mm(length),
                mm(width));
    }

    private String side(String name, double y) {
        return String.format(
                Locale.ROOT,
                "{name: %s, origin: [0, %s, 0], along: [1, 0, 0], across: [0, 0, 1], length: %s, width: %s}",
                name,
                mm(y),
                mm(length),
                mm(height));
    }

    private static final String RING = "ring: {jets: 8, orifice: 0.4 mm}";
    private static final String FAN = "one_sided: {jets: 5, arc: 60 deg, orifice: 0.5 mm}";

    /** Behind a lengthwise stringer on the floor; another port beyond it is shut. */
    private Known shade() {
        box(between(0.5, 0.65), between(0.3, 0.36), between(0.2, 0.24));
        double y = between(0.62, 0.68) * width;
        double top = between(0.66, 0.72) * height;
        plates.add(String.format(
                Locale.ROOT,
                "{name: stringer, origin: [%s, %s, 0], along: [1, 0, 0], across: [0, 0, 1], length: %s, width: %s}",
                mm(0.02),
                mm(y),
                mm(length - 0.04),
                mm(top)));
        across("front", 0, "wand hole", 0.02, 0.3 * width, 0.3 * height, "open");
        across("aft", length, "far port", 0.02, 0.5 * (y + width), 0.35 * height, "closed");
        port("vent", "ceiling", 0.025, 0.5 * length, 0.2 * width, height, "open");
        Scene s = scene(RING, 0.9 * length, "from: deepest, to: 40 mm, draw_back: 60 mm/s", 40, 60, "20 s");
        return new Known("shade", s, new Vec3(0.5 * length, width, 0.2 * height), Cause.SHADOW);
    }

    /** A box twice as long as the rod. */
    private Known shortRod() {
        box(between(0.9, 1.1), between(0.2, 0.26), between(0.18, 0.22));
        across("front", 0, "wand hole", 0.02, 0.5 * width, 0.5 * height, "open");
        across("aft", length, "", 0, 0, 0, "");
        port("vent", "ceiling", 0.025, 0.1, 0.2 * width, height, "open");
        Scene s = scene(RING, between(0.4, 0.48), "from: deepest, to: 40 mm, draw_back: 60 mm/s", 40, 60, "20 s");
        return new Known("short rod", s, new Vec3(0.9 * length, width, 0.5 * height), Cause.ACCESS);
    }

    /** A fan to the left, asked about the right. */
    private Known pattern() {
        box(between(0.5, 0.65), between(0.24, 0.3), between(0.18, 0.24));
        across("front", 0, "wand hole", 0.02, 0.5 * width, 0.5 * height, "open");
        across("aft", length, "", 0, 0, 0, "");
        port("vent", "ceiling", 0.025, 0.5 * length, 0.2 * width, height, "open");
        Scene s = scene(FAN, 0.9 * length, "from: deepest, to: 40 mm, draw_back: 60 mm/s, clock: 90 deg", 40, 60, "20 s");
        return new Known("pattern", s, new Vec3(0.5 * length, width, 0.5 * height), Cause.PATTERN);
    }

    /** A fan down, asked about the ceiling. */
    private Known ceiling() {
        box(between(0.5, 0.65), between(0.24, 0.3), between(0.18, 0.24));
        across("front", 0, "wand hole", 0.02, 0.5 * width, 0.5 * height, "open");
        across("aft", length, "vent", 0.025, 0.3 * width, 0.7 * height, "open");
        Scene s = scene(FAN, 0.9 * length, "from: deepest, to: 40 mm, draw_back: 60 mm/s, clock: 180 deg", 40, 60, "20 s");
        return new Known("ceiling", s, new Vec3(0.5 * length, 0.5 * width, height), Cause.PATTERN);
    }

    /** A pocket behind a wide hole, with no way out for its air. */
    private Known deadEnd() {
        box(between(0.6, 0.7), between(0.24, 0.28), between(0.18, 0.22));
        double x = between(0.5, 0.58) * length;
        across("front", 0, "wand hole", 0.02, 0.2 * width, 0.25 * height, "open");
        across("web", x, "web hole", between(0.05, 0.06), 0.7 * width, 0.7 * height, "open");
        across("aft", length, "", 0, 0, 0, "");
        port("vent", "ceiling", 0.02, 0.3 * x, 0.8 * width, height, "open");
        Scene s = scene(RING, 0.4, "from: deepest, to: 60 mm, draw_back: 20 mm/s", 40, 20, "20 s");
        return new Known("dead end", s, new Vec3(0.5 * (x + length), 0.5 * width, 0), Cause.DEAD_END);
    }

    /** Jets all round, hardly any product. */
    private Known starved() {
        box(between(0.5, 0.65), between(0.24, 0.3), between(0.18, 0.24));
        across("front", 0, "wand hole", 0.02, 0.5 * width, 0.5 * height, "open");
        across("aft", length, "vent", 0.025, 0.3 * width, 0.7 * height, "open");
        Scene s = scene(
                "ring: {jets: 12, orifice: 0.4 mm}",
                0.9 * length,
                "from: deepest, to: 40 mm, draw_back: 60 mm/s",
                between(2, 3),
                60,
                "20 s");
        return new Known("starved", s, new Vec3(0.5 * length, width, 0.5 * height), Cause.QUANTITY);
    }

    /** Fog must drift through a hatch that is shut as soon as the wand is out. */
    private Known closedEarly() {
        box(between(0.55, 0.65), between(0.24, 0.28), between(0.18, 0.22));
        double x = between(0.5, 0.55) * length;
        across("front", 0, "wand hole", 0.02, 0.2 * width, 0.25 * height, "open");
        across("web", x, "hatch", between(0.08, 0.1), 0.6 * width, 0.5 * height, "{pass: open, hang: closed, after: closed}");
        across("aft", length, "", 0, 0, 0, "");
        Scene s = scene(RING, 0.4, "from: 100 mm, to: 100 mm, hold: 1.5 s", 120, 10, "5 min");
        return new Known("closed early", s, new Vec3(0.5 * (x + length), 0.5 * width, 0), Cause.CLOSED_EARLY);
    }

    /** A bay that breathes out well but in through a pin hole. */
    private Known smallHole() {
        box(between(0.6, 0.7), between(0.24, 0.28), between(0.18, 0.22));
        double x = between(0.5, 0.58) * length;
        across("front", 0, "wand hole", 0.02, 0.2 * width, 0.25 * height, "open");
        across("web", x, "web hole", between(0.005, 0.006), 0.7 * width, 0.7 * height, "open");
        across("aft", length, "", 0, 0, 0, "");
        port("left drain", "floor", 0.0075, 0.9 * length, 0.2 * width, 0, "open");
        port("right drain", "floor", 0.0075, 0.9 * length, 0.8 * width, 0, "open");
        port("front vent", "ceiling", 0.03, 0.3 * x, 0.8 * width, height, "open");
        Scene s = scene(RING, 0.4, "from: deepest, to: 60 mm, draw_back: 20 mm/s", 40, 20, "20 s");
        return new Known("small hole", s, new Vec3(0.5 * (x + length), 0.5 * width, 0), Cause.HOLE_TOO_SMALL);
    }

    /** Coarse fog that lies in the low half; the shelf above gets none of it. */
    private Known sump() {
        box(between(0.5, 0.6), between(0.24, 0.28), between(0.4, 0.48));
        double z = between(0.45, 0.52) * height;
        plates.add(String.format(
                Locale.ROOT,
                "{name: shelf, origin: [%s, 0, %s], along: [1, 0, 0], across: [0, 1, 0], length: %s, width: %s}",
                mm(0.25 * length),
                mm(z),
                mm(0.75 * length),
                mm(width)));
        across("front", 0, "wand hole", 0.02, 0.5 * width, 0.2 * height, "open");
        across("aft", length, "vent", 0.03, 0.5 * width, 0.9 * height, "open");
        Scene s = scene(RING, 0.9 * length, "from: deepest, to: 0.5 m, hold: 1 s, draw_back: 20 mm/s".replace("0.5 m", mm(0.35 * length)), 60, 60, "60 s");
        return new Known("sump", s, new Vec3(0.6 * length, 0.5 * width, z + 0.01), Cause.SETTLING);
    }

    /** A bag over a box on the floor, or tape over the hole to the next bay. */
    private Known mask() {
        box(between(0.5, 0.65), between(0.24, 0.3), between(0.2, 0.24));
        across("front", 0, "wand hole", 0.02, 0.5 * width, 0.6 * height, "open");
        across("aft", length, "vent", 0.025, 0.3 * width, 0.7 * height, "open");
        double size = between(0.07, 0.09);
        double x = between(0.5, 0.6) * length;
        extra.add(String.format(
                Locale.ROOT,
                "protected: [{name: clutch, box: {at: [%s, %s, %s], size: [%s, %s, %s]}, mask: bag, limit: 0 um}]",
                mm(x),
                mm(0.5 * width),
                mm(0.55 * size),
                mm(size),
                mm(size),
                mm(size)));
        Scene s = scene(RING, 0.9 * length, "from: deepest, to: 40 mm, draw_back: 60 mm/s", 40, 60, "20 s");
        return new Known("mask", s, new Vec3(x, 0.5 * width, 1.05 * size), Cause.MASKED);
    }
}
