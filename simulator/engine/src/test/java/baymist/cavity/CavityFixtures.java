package baymist.cavity;

import baymist.geom.Outline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.RibHole;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PhaseStates;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Ready-made cavities for tests of this and later stages. */
public final class CavityFixtures {
    public static final SourcePlace PLACE = SourcePlace.of("fixture.yaml");

    private CavityFixtures() {}

    /** Builds a model with openings of its own only. */
    public static Cavity build(CavitySpec spec) {
        return CavityBuilder.build(spec, List.of(), Map.of(), List.of());
    }

    public static OpeningSpec round(String name, String part, double diameterM, Vec3 centreM) {
        return opening(name, part, new Outline.Circle(diameterM / 2), centreM, null);
    }

    public static OpeningSpec opening(
            String name, String part, Outline outline, Vec3 centreM, @Nullable Vec3 lengthwise) {
        return new OpeningSpec(name, part, outline, centreM, lengthwise, PhaseStates.ALWAYS_OPEN, PLACE);
    }

    public static EntrySpec entry(String opening) {
        return new EntrySpec("entry", opening, null, PLACE);
    }

    /** Block of the given size, low corner at the origin. */
    public static CavitySpec.Block block(Vec3 sizeM, OpeningSpec... ports) {
        return new CavitySpec.Block("block", sizeM, Vec3.ZERO, Vec3.ZERO, 0.001, List.of(ports), PLACE);
    }

    /** Block 0.4 x 0.3 x 0.2 m with a round port of 30 mm in the middle of the ceiling. */
    public static Cavity blockWithHole() {
        return build(block(new Vec3(0.4, 0.3, 0.2), round("port", "ceiling", 0.03, new Vec3(0.2, 0.15, 0.2))));
    }

    /**
     * Two bays side by side along y, each 0.4 x 0.3 x 0.2 m (x, y, z), parted by rib 2 with a 60 mm hole in its middle; a
     * 30 mm port in the upper skin of the first bay. Spar at x = 0, z from -0.1 to 0.1.
     */
    public static Cavity twoBays() {
        RibHole hole = new RibHole(null, new Outline.Circle(0.03), 0.2, 0, PhaseStates.ALWAYS_OPEN);
        return build(new CavitySpec.ControlSurface(
                "two bays",
                0.6,
                0.4,
                0.4,
                0.2,
                0.2,
                0.2,
                0.001,
                List.of(new Rib(0, 0, List.of()), new Rib(0.3, 0, List.of(hole)), new Rib(0.6, 0, List.of())),
                List.of(round("port", "upper skin", 0.03, new Vec3(0.2, 0.15, 0.1))),
                PLACE));
    }

    /** Small tapered aileron: 1 m span, 0.3 to 0.2 m chord, 60 to 40 mm deep, middle rib 50 mm short of the edge. */
    public static CavitySpec.ControlSurface wedgeSpec(OpeningSpec... ports) {
        RibHole hole = new RibHole(null, new Outline.Circle(0.015), 0.06, 0, PhaseStates.ALWAYS_OPEN);
        return new CavitySpec.ControlSurface(
                "wedge",
                1,
                0.3,
                0.2,
                0.06,
                0.04,
                0,
                0.0006,
                List.of(new Rib(0, 0, List.of()), new Rib(0.5, 0.05, List.of(hole)), new Rib(1, 0, List.of())),
                List.of(ports),
                PLACE);
    }

    public static Cavity wedge() {
        return build(wedgeSpec(round("drain", "lower skin", 0.0064, new Vec3(0.1, 0.25, -0.02))));
    }

    /** Wing box with three ribs, two upper stringers and a lightening hole in the middle rib. */
    public static CavitySpec.WingBox wingBoxSpec(OpeningSpec... ports) {
        RibHole hole = new RibHole("lightening hole", new Outline.Circle(0.03), 0.25, 0, PhaseStates.ALWAYS_OPEN);
        return new CavitySpec.WingBox(
                "wing box",
                "2412",
                1.2,
                1.2,
                0.9,
                0.1,
                0.05,
                0.15,
                0.65,
                0.001,
                2,
                1,
                0.02,
                List.of(new Rib(0, 0, List.of()), new Rib(0.6, 0, List.of(hole)), new Rib(1.2, 0, List.of())),
                List.of(ports),
                PLACE);
    }

    /** Area of a mesh's triangles, m². */
    public static double area(TriangleMesh mesh) {
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            sum += mesh.areaM2(t);
        }
        return sum;
    }
}
