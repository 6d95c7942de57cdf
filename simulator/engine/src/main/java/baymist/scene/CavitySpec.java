package baymist.scene;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the cavity is made of: a tape-measure family or a mesh file. All lengths m, axes x aft, y right, z up. */
public sealed interface CavitySpec {
    /** Name of the structure, for reports. */
    String name();

    /** Where the model is stated, for messages. */
    SourcePlace place();

    /** Openings stated one by one, with their part and position. */
    default List<OpeningSpec> ports() {
        return List.of();
    }

    /**
     * Control surface (wedge): a channel spar at x = 0 facing aft, upper and lower skins that run straight to the trailing
     * edge, ribs across. Root at y = 0, tip at y = span; the hinge line is straight and square to y.
     *
     * @param rootChordM spar to trailing edge at the root; tipChordM likewise at the tip
     * @param rootDepthM inside depth at the spar at the root; tipDepthM at the tip
     * @param edgeDepthM inside depth left at the trailing edge (0 = the skins meet)
     * @param gaugeM sheet thickness
     * @param ribs at least the two end ribs, in order of y
     */
    record ControlSurface(
            String name,
            double spanM,
            double rootChordM,
            double tipChordM,
            double rootDepthM,
            double tipDepthM,
            double edgeDepthM,
            double gaugeM,
            List<Rib> ribs,
            List<OpeningSpec> ports,
            SourcePlace place,
            ControlSurfaceDetail detail)
            implements CavitySpec {
        /** A plain wedge. */
        public ControlSurface(
                String name,
                double spanM,
                double rootChordM,
                double tipChordM,
                double rootDepthM,
                double tipDepthM,
                double edgeDepthM,
                double gaugeM,
                List<Rib> ribs,
                List<OpeningSpec> ports,
                SourcePlace place) {
            this(
                    name,
                    spanM,
                    rootChordM,
                    tipChordM,
                    rootDepthM,
                    tipDepthM,
                    edgeDepthM,
                    gaugeM,
                    ribs,
                    ports,
                    place,
                    ControlSurfaceDetail.PLAIN);
        }
    }

    /**
     * Wing box between two spars: NACA 4-digit skins (NACA Report 460) or measured heights, ribs with lightening holes, blade
     * stringers, ports. Leading edge of the root section at the origin; x = chordwise aft, y = outboard, z up.
     *
     * @param naca four digits, e.g. "2412"; "" where the detail has measured heights
     * @param frontSpar, rearSpar chord fractions, 0 < front < rear < 1
     * @param sweepM aft offset of the tip section's leading edge
     * @param dihedralM upward offset of the tip section's chord line
     * @param stringersUpper, stringersLower number of blade stringers on each skin
     * @param stringerHeightM blade height
     * @param ribs in order of y; the first and last close the box
     * @param ports openings in skins or spars
     */
    record WingBox(
            String name,
            String naca,
            double spanM,
            double rootChordM,
            double tipChordM,
            double sweepM,
            double dihedralM,
            double frontSpar,
            double rearSpar,
            double gaugeM,
            int stringersUpper,
            int stringersLower,
            double stringerHeightM,
            List<Rib> ribs,
            List<OpeningSpec> ports,
            SourcePlace place,
            WingBoxDetail detail)
            implements CavitySpec {
        /** A NACA box with closed ends, without false spars and notches. */
        public WingBox(
                String name,
                String naca,
                double spanM,
                double rootChordM,
                double tipChordM,
                double sweepM,
                double dihedralM,
                double frontSpar,
                double rearSpar,
                double gaugeM,
                int stringersUpper,
                int stringersLower,
                double stringerHeightM,
                List<Rib> ribs,
                List<OpeningSpec> ports,
                SourcePlace place) {
            this(
                    name,
                    naca,
                    spanM,
                    rootChordM,
                    tipChordM,
                    sweepM,
                    dihedralM,
                    frontSpar,
                    rearSpar,
                    gaugeM,
                    stringersUpper,
                    stringersLower,
                    stringerHeightM,
                    ribs,
                    ports,
                    place,
                    WingBoxDetail.PLAIN);
        }
    }

    /**
     * A rib square to y.
     *
     * @param yM station
     * @param shortOfEdgeM how far its web stops ahead of the trailing edge (control surface; 0 = runs right to it)
     * @param holes lightening holes and wand holes
     * @param name part name, or null for "rib n"
     */
    record Rib(
            double yM,
            double shortOfEdgeM,
            List<RibHole> holes,
            @Nullable String name) {
        public Rib(double yM, double shortOfEdgeM, List<RibHole> holes) {
            this(yM, shortOfEdgeM, holes, null);
        }
    }

    /**
     * A hole in a rib.
     *
     * @param aftM chordwise distance of its centre aft of the (front) spar, m
     * @param upM height of its centre above the middle of the section there, m
     * @param flange lip round the hole; null = plain edge
     */
    record RibHole(
            @Nullable String name,
            Outline outline,
            double aftM,
            double upM,
            PhaseStates states,
            @Nullable Flange flange) {
        public RibHole(@Nullable String name, Outline outline, double aftM, double upM, PhaseStates states) {
            this(name, outline, aftM, upM, states, null);
        }
    }

    /**
     * A hole in a spar or another web that stands across the chord.
     *
     * @param name or null for "(part) hole n"
     * @param outline lengthwise = along the span, across = up
     * @param alongM y of its centre, m
     * @param upM height of its centre above the middle of the web there, m
     * @param flange lip round the hole; null = plain edge
     */
    record SparHole(
            @Nullable String name,
            Outline outline,
            double alongM,
            double upM,
            PhaseStates states,
            @Nullable Flange flange) {}

    /**
     * A lip that is turned out of the web round a hole. The hole's outline is that at the lip's free edge, where calliper and
     * wand meet it; at an angle below 90 degrees the web is cut back by depth / tan(angle) round it.
     *
     * @param depthM how far the free edge stands off the web
     * @param angleRad between the lip and the web's plane: pi/2 = straight out, pi/4 = a 45 degree cone
     * @param forward whether the lip stands on the web's +y side (rib) or +x side (spar); false = on the other
     */
    record Flange(double depthM, double angleRad, boolean forward) {}

    /** Closed rectangular box; walls "floor", "ceiling", "forward wall", "aft wall", "left wall", "right wall". */
    record Block(
            String name,
            Vec3 sizeM,
            Vec3 rotationDeg,
            Vec3 originM,
            double gaugeM,
            List<OpeningSpec> ports,
            SourcePlace place)
            implements CavitySpec {}

    /**
     * Closed circular cylinder about its own x axis (length &gt; 0; parts "shell", "left end"...: see the family's docs) or sphere (length 0; part
     * "shell"), turned about x, y, z in turn.
     */
    record Round(
            String name,
            double lengthM,
            double radiusM,
            int segments,
            Vec3 rotationDeg,
            Vec3 originM,
            double gaugeM,
            List<OpeningSpec> ports,
            SourcePlace place)
            implements CavitySpec {}

    /**
     * Triangles or shell elements from a file.
     *
     * @param file STL (ASCII or binary), OBJ or shell bulk data (.bdf, .dat, .nas, .blk)
     * @param unitM length of one file unit, m; NaN = not stated, then the builder asks for it
     * @param inside a point in the cavity, structure axes, if the file leaves that open; null = everything enclosed
     * @param gaugeM sheet thickness where the file states none
     * @param pose how the file's axes lie in those of the structure
     * @param closeGapsM facing free edges up to this far apart are joined, m; 0 = none
     */
    record Mesh(
            String name,
            Path file,
            double unitM,
            @Nullable Vec3 inside,
            double gaugeM,
            List<OpeningSpec> ports,
            SourcePlace place,
            MeshPose pose,
            double closeGapsM)
            implements CavitySpec {
        /** A mesh in structure axes, taken as it is. */
        public Mesh(
                String name,
                Path file,
                double unitM,
                @Nullable Vec3 inside,
                double gaugeM,
                List<OpeningSpec> ports,
                SourcePlace place) {
            this(name, file, unitM, inside, gaugeM, ports, place, MeshPose.AS_IS, 0);
        }
    }

    /** A tail cone or stretch of fuselage; measures in {@link ShellSpec}, gauge m. */
    record Shell(String name, ShellSpec shape, double gaugeM, List<OpeningSpec> ports, SourcePlace place)
            implements CavitySpec {}

    /** A box or hat section along a bent line; measures in {@link BoxSectionSpec}, gauge m. */
    record BoxSection(String name, BoxSectionSpec shape, double gaugeM, List<OpeningSpec> ports, SourcePlace place)
            implements CavitySpec {}

    /** A frame of round tubes; measures in {@link TubeFrameSpec}. */
    record TubeFrame(String name, TubeFrameSpec shape, List<OpeningSpec> ports, SourcePlace place)
            implements CavitySpec {}

    /**
     * Door: outer panel at y = 0 (outside is +y), inner panel on its -y side, x aft from the front edge, z up from the lower edge.
     *
     * @param heightM lower edge to waist
     * @param depthM inside depth of the lower part; upperDepthM that above the step
     * @param stepM height of the step in the inner panel; without meaning where both depths are equal
     * @param crownM how far the outer panel bulges in the middle of its height
     * @param slots openings in the waist edge; drains in the lower edge: along = x, across = inboard of the outer panel
     * @param innerHoles openings in the inner panel: along = x, across = z
     */
    record Door(
            String name,
            double lengthM,
            double heightM,
            double depthM,
            double upperDepthM,
            double stepM,
            double crownM,
            double gaugeM,
            List<DoorBeam> beams,
            List<PanelHole> slots,
            List<PanelHole> drains,
            List<PanelHole> innerHoles,
            List<OpeningSpec> ports,
            SourcePlace place)
            implements CavitySpec {}

    /**
     * Tank, double-bottom cell or void space: a box with bars and webs, low forward left corner at the origin.
     *
     * @param sizeM inside length (x), width (y), height (z)
     * @param longitudinals bars along x on floor, ceiling and side walls
     * @param frames webs square to x, in order of x
     * @param deckBeams bars along y under the ceiling
     * @param manholes in the ceiling: along = x, across = y
     */
    record StiffenedVoid(
            String name,
            Vec3 sizeM,
            double gaugeM,
            List<Stiffeners> longitudinals,
            List<CrossFrame> frames,
            List<Stiffeners> deckBeams,
            List<PanelHole> manholes,
            List<OpeningSpec> ports,
            SourcePlace place)
            implements CavitySpec {}

    /**
     * Free flat plates that together enclose something.
     *
     * @param toleranceM how far corners that should meet may lie apart, and how far corners may leave their plane
     * @param openGaps whether places that no plate closes become openings; otherwise they are refused
     */
    record Plates(
            String name,
            List<FlatPlate> plates,
            double toleranceM,
            boolean openGaps,
            @Nullable Vec3 inside,
            List<OpeningSpec> ports,
            SourcePlace place)
            implements CavitySpec {}

    /**
     * Several bodies in common axes.
     *
     * @param joints pairs of openings of adjoining bodies that are one
     * @param toleranceM how far sheets that lie on each other may be apart
     */
    record Bodies(
            String name,
            List<PlacedBody> bodies,
            List<BodyJoint> joints,
            double toleranceM,
            @Nullable Vec3 inside,
            SourcePlace place)
            implements CavitySpec {}
}
