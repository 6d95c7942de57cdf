package baymist.cavity;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PhaseStates;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Builds the sheet-metal body of a job: sheets, openings, cut sheets. See the package description. */
public final class CavityBuilder {
    private CavityBuilder() {}

    /**
     * Builds the cavity of a scene.
     *
     * @throws baymist.problem.SceneException if the model, a cut, a state or an entry can't be carried out; all such problems
     *     of one stage are told at once
     */
    public static Cavity build(Scene scene) {
        return build(
                scene.cavity(),
                scene.cuts(),
                scene.states(),
                scene.entries(),
                new SourcePlace(scene.file(), 0, "states"),
                scene.protectedItems());
    }

    /** As {@link #build(Scene)} from the parts of a scene that matter here. */
    public static Cavity build(
            CavitySpec spec, List<OpeningSpec> cuts, Map<String, PhaseStates> states, List<EntrySpec> entries) {
        return build(spec, cuts, states, entries, spec.place(), List.of());
    }

    private static Cavity build(
            CavitySpec spec,
            List<OpeningSpec> cuts,
            Map<String, PhaseStates> states,
            List<EntrySpec> entries,
            SourcePlace statesPlace,
            List<ProtectedItem> items) {
        if (spec instanceof CavitySpec.Bodies bodies) {
            return new BodiesBuilder(bodies, items).build(cuts, states, entries, statesPlace);
        }
        SheetModel model = sheets(spec);
        ItemSheets.add(model, items, inside(spec));
        TriangleMesh open = model.mesh();
        int[] partOfOpen = model.partOfTriangle();
        capGaps(model);
        TriangleMesh whole = model.mesh();
        int[] partOfWhole = model.partOfTriangle();

        OpeningPlan plan = new OpeningPlan(spec, model, open, partOfOpen, whole);
        List<OpeningPlan.Planned> planned = plan.place(cuts, states, entries, statesPlace);
        return cut(spec, model, open, partOfOpen, whole, partOfWhole, plan, planned);
    }

    /** Cuts the openings out and hands everything over. */
    static Cavity cut(
            CavitySpec spec,
            SheetModel model,
            TriangleMesh open,
            int[] partOfOpen,
            TriangleMesh whole,
            int[] partOfWhole,
            OpeningPlan plan,
            List<OpeningPlan.Planned> planned) {
        SheetCutter cutter = new SheetCutter(open, partOfOpen);
        plan.cut(planned, cutter);
        List<Opening> openings =
                planned.stream().map(OpeningPlan.Planned::opening).toList();
        addCaps(model, openings, cutter);
        return new Cavity(
                spec.name(),
                model.parts,
                openings,
                whole,
                partOfWhole,
                cutter.cutSheets(),
                cutter.partOfCut(),
                cutter.closures(),
                cutter.openingOfClosure(),
                inside(spec),
                model.remarks,
                model.imported);
    }

    private static @Nullable Vec3 inside(CavitySpec spec) {
        if (spec instanceof CavitySpec.Mesh mesh) {
            return mesh.inside();
        }
        if (spec instanceof CavitySpec.Plates plates) {
            return plates.inside();
        }
        return spec instanceof CavitySpec.Bodies bodies ? bodies.inside() : null;
    }

    static SheetModel sheets(CavitySpec spec) {
        if (spec instanceof CavitySpec.Shell shell) {
            return ShellFamily.build(shell);
        }
        if (spec instanceof CavitySpec.BoxSection box) {
            return BoxSectionFamily.build(box);
        }
        if (spec instanceof CavitySpec.TubeFrame frame) {
            return TubeFrameFamily.build(frame);
        }
        if (spec instanceof CavitySpec.ControlSurface surface) {
            return ControlSurfaceFamily.build(surface);
        }
        if (spec instanceof CavitySpec.WingBox box) {
            return WingBoxFamily.build(box);
        }
        if (spec instanceof CavitySpec.Block block) {
            return SolidFamilies.block(block);
        }
        if (spec instanceof CavitySpec.Round round) {
            return SolidFamilies.round(round);
        }
        if (spec instanceof CavitySpec.Mesh mesh) {
            return MeshFamily.build(mesh);
        }
        if (spec instanceof CavitySpec.Door door) {
            return DoorFamily.build(door);
        }
        if (spec instanceof CavitySpec.StiffenedVoid space) {
            return VoidFamily.build(space);
        }
        if (spec instanceof CavitySpec.Plates plates) {
            return PlatesFamily.build(plates);
        }
        throw new IllegalArgumentException("no builder for " + spec.getClass());
    }

    static void capGaps(SheetModel model) {
        for (SheetModel.Gap gap : model.gaps) {
            for (Vec3[] t : gap.cap()) {
                model.triangle(-1, t[0], t[1], t[2]);
            }
        }
    }

    private static void addCaps(SheetModel model, List<Opening> openings, SheetCutter cutter) {
        List<String> names = openings.stream().map(Opening::name).toList();
        for (SheetModel.Gap gap : model.gaps) {
            int index = names.indexOf(gap.name());
            gap.cap().forEach(t -> cutter.addClosure(index, Arrays.asList(t)));
        }
    }
}
