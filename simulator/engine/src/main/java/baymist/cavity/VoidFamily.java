package baymist.cavity;

import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.scene.CavitySpec.StiffenedVoid;
import baymist.scene.CrossFrame;
import baymist.scene.PanelHole;
import baymist.scene.PhaseStates;
import baymist.scene.Stiffeners;
import java.util.ArrayList;
import java.util.List;

/**
 * Stiffened void: a box whose walls carry bars along x, divided by webs square to x, with beams along y under its ceiling. Bars
 * run through the webs; where a web has notches, air and liquid pass beside them.
 */
final class VoidFamily {
    private static final double SAME_M = 1e-7;
    /** Chords of a quarter-round mouse hole. */
    private static final int QUARTER = 24;

    private static final int MOST_BARS = 400;
    /** Number of the ceiling's part; walls come first. */
    private static final int CEILING = 5;

    private final StiffenedVoid spec;
    private final Vec3 size;
    private final SheetModel model = new SheetModel();
    private final PlateMesher mesher = new PlateMesher(SAME_M);
    private final List<Bar> bars = new ArrayList<>();

    /** One bar along x: its wall and its place on it. */
    private record Bar(Stiffeners kind, double atM) {
        double lowM() {
            return atM - (kind.flange() == Stiffeners.Side.ON ? 0 : backM());
        }

        double highM() {
            return atM + (kind.flange() == Stiffeners.Side.BACK ? 0 : onM());
        }

        private double backM() {
            return kind.flange() == Stiffeners.Side.BACK ? kind.flangeM() : 0.5 * kind.flangeM();
        }

        private double onM() {
            return kind.flange() == Stiffeners.Side.ON ? kind.flangeM() : 0.5 * kind.flangeM();
        }
    }

    private VoidFamily(StiffenedVoid spec) {
        this.spec = spec;
        this.size = spec.sizeM();
    }

    static SheetModel build(StiffenedVoid spec) {
        return new VoidFamily(spec).build();
    }

    private SheetModel build() {
        new VoidCheck(spec).orThrow();
        walls();
        for (Stiffeners s : spec.longitudinals()) {
            int number = (int)
                    bars.stream().filter(b -> b.kind().wall().equals(s.wall())).count();
            for (double at : places(s, across(s))) {
                Bar bar = new Bar(s, at);
                bars.add(bar);
                String wall = s.wall().replace(" wall", "");
                longitudinal(bar, model.part(wall + " longitudinal " + ++number, PartKind.STRINGER, s.gaugeM()));
            }
        }
        for (int i = 0; i < spec.frames().size(); i++) {
            frame(spec.frames().get(i), "frame " + (i + 1));
        }
        int number = 0;
        for (Stiffeners s : spec.deckBeams()) {
            for (double x : places(s, size.x())) {
                if (spec.frames().stream().noneMatch(f -> Math.abs(f.xM() - x) < 1e-3)) {
                    deckBeam(s, x, model.part("deck beam " + ++number, PartKind.STRINGER, s.gaugeM()));
                } else {
                    model.remarks.add("the deck beam at x = " + SpecCheck.mm(x) + " is left out: a frame stands there");
                }
            }
        }
        mesher.mesh(model);
        int manhole = 0;
        for (PanelHole h : spec.manholes()) {
            manhole(h, "manhole " + ++manhole);
        }
        return model;
    }

    private void manhole(PanelHole h, String fallback) {
        Vec3 centre = new Vec3(h.alongM(), h.acrossM(), size.z());
        PlacedOutline outline = DoorFamily.turned(h, centre, Vec3.X, Vec3.Z.negate());
        String name = h.name().isEmpty() ? fallback : h.name();
        model.placed.add(new SheetModel.Placed(name, CEILING, Opening.Kind.PORT, outline, h.states(), h.place()));
    }

    /** Width of the wall that bars along x stand on. */
    private double across(Stiffeners s) {
        return s.wall().endsWith("wall") ? size.z() : size.y();
    }

    static List<Double> places(Stiffeners s, double width) {
        List<Double> places = new ArrayList<>();
        for (int k = 0; k < MOST_BARS; k++) {
            double at = s.firstM() + k * s.spacingM();
            if (at > width - 1e-3) {
                break;
            }
            places.add(at);
        }
        return places;
    }

    private void walls() {
        String[] names = {"forward wall", "aft wall", "left wall", "right wall", "floor", "ceiling"};
        int[][] sides = {{0, 4, 6, 2}, {1, 3, 7, 5}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}};
        for (int s = 0; s < 6; s++) {
            List<Vec3> corners = new ArrayList<>();
            for (int c : sides[s]) {
                corners.add(new Vec3((c & 1) * size.x(), (c >> 1 & 1) * size.y(), (c >> 2 & 1) * size.z()));
            }
            mesher.plate(model.part(names[s], PartKind.WALL, spec.gaugeM()), corners);
        }
    }

    /** A point of the section of a wall's bar: place along the wall, height off the wall. */
    private Vec3 onWall(String wall, double x, double at, double off) {
        return switch (wall) {
            case "floor" -> new Vec3(x, at, off);
            case "ceiling" -> new Vec3(x, at, size.z() - off);
            case "left wall" -> new Vec3(x, off, at);
            case "right wall" -> new Vec3(x, size.y() - off, at);
            default -> throw new IllegalArgumentException("no wall " + wall);
        };
    }

    private void longitudinal(Bar bar, int part) {
        double web = bar.kind().webM();
        strip(part, bar, bar.atM(), 0, bar.atM(), web);
        if (bar.kind().flangeM() > 0) {
            strip(part, bar, bar.lowM(), web, bar.highM(), web);
        }
    }

    private void strip(int part, Bar bar, double at0, double off0, double at1, double off1) {
        String wall = bar.kind().wall();
        mesher.plate(
                part,
                onWall(wall, 0, at0, off0),
                onWall(wall, size.x(), at0, off0),
                onWall(wall, size.x(), at1, off1),
                onWall(wall, 0, at1, off1));
    }

    private void deckBeam(Stiffeners s, double x, int part) {
        Bar bar = new Bar(s, x);
        double z = size.z() - s.webM();
        double w = size.y();
        mesher.plate(part, new Vec3(x, 0, size.z()), new Vec3(x, w, size.z()), new Vec3(x, w, z), new Vec3(x, 0, z));
        if (s.flangeM() > 0) {
            mesher.plate(
                    part,
                    new Vec3(bar.lowM(), 0, z),
                    new Vec3(bar.highM(), 0, z),
                    new Vec3(bar.highM(), w, z),
                    new Vec3(bar.lowM(), w, z));
        }
    }

    private void frame(CrossFrame frame, String name) {
        int part = model.part(name, PartKind.RIB, frame.gaugeM());
        double x = frame.xM();
        mesher.plate(
                part,
                new Vec3(x, 0, 0),
                new Vec3(x, size.y(), 0),
                new Vec3(x, size.y(), size.z()),
                new Vec3(x, 0, size.z()));
        int number = 0;
        for (PanelHole h : frame.holes()) {
            number++;
            Vec3 centre = new Vec3(x, h.alongM(), h.acrossM());
            String holeName = h.name().isEmpty() ? name + " hole " + number : h.name();
            PlacedOutline outline = DoorFamily.turned(h, centre, Vec3.Y, Vec3.X);
            model.placed.add(new SheetModel.Placed(holeName, part, Opening.Kind.HOLE, outline, h.states(), h.place()));
        }
        corner(frame, part, name + " left drain", frame.drainRadiusM(), 0, 0);
        corner(frame, part, name + " right drain", frame.drainRadiusM(), 1, 0);
        corner(frame, part, name + " left air hole", frame.airRadiusM(), 0, 1);
        corner(frame, part, name + " right air hole", frame.airRadiusM(), 1, 1);
        if (frame.notchM() > 0) {
            int notch = 0;
            for (Bar bar : bars) {
                notch(frame, part, name + " notch " + ++notch, bar);
            }
        }
    }

    /** Quarter-round hole about a corner; the arc's radius is enlarged so that the polygon has the quarter disc's area. */
    private void corner(CrossFrame frame, int part, String name, double radiusM, int right, int up) {
        if (radiusM <= 0) {
            return;
        }
        double step = Math.PI / 2 / QUARTER;
        double r = radiusM * Math.sqrt(step / Math.sin(step));
        double y0 = right * size.y();
        double z0 = up * size.z();
        List<Vec3> loop = new ArrayList<>();
        loop.add(new Vec3(frame.xM(), y0, z0));
        for (int k = 0; k <= QUARTER; k++) {
            double c = k == QUARTER ? 0 : Math.cos(k * step);
            double s = k == 0 ? 0 : Math.sin(k * step);
            loop.add(new Vec3(frame.xM(), y0 + (right == 1 ? -r : r) * c, z0 + (up == 1 ? -r : r) * s));
        }
        hole(frame, part, name, loop);
    }

    private void notch(CrossFrame frame, int part, String name, Bar bar) {
        double low = bar.lowM() - frame.notchM();
        double high = bar.highM() + frame.notchM();
        double off = bar.kind().webM() + frame.notchM();
        String wall = bar.kind().wall();
        hole(
                frame,
                part,
                name,
                List.of(
                        onWall(wall, frame.xM(), low, 0),
                        onWall(wall, frame.xM(), high, 0),
                        onWall(wall, frame.xM(), high, off),
                        onWall(wall, frame.xM(), low, off)));
    }

    private void hole(CrossFrame frame, int part, String name, List<Vec3> loop) {
        model.placed.add(new SheetModel.Placed(
                name,
                part,
                Opening.Kind.HOLE,
                RibSheets.polygon(loop, Vec3.Y, Vec3.X),
                PhaseStates.ALWAYS_OPEN,
                frame.place()));
    }
}
