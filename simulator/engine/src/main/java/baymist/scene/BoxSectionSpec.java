package baymist.scene;

import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.ShellSpec.WebHole;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Measures of a box section: a rectangle or a hat on its closing plate, swept along a bent line. Lengths m, inside. A
 * hat's lips lie on the closing plate outside of the cavity and are left out.
 *
 * <p>The line runs through the middle of the width at half of the height. Up is {@code up} as near as the line allows; right
 * is up x along, the aircraft's own right for a line that runs aft.
 *
 * @param topM width of the top wall (the hat's crown)
 * @param bottomM width of the bottom wall (the hat's mouth); the same as {@code topM} for a rectangle
 * @param heightM bottom to top
 * @param line at least two points
 */
public record BoxSectionSpec(
        double topM,
        double bottomM,
        double heightM,
        List<Bend> line,
        Vec3 up,
        End start,
        End end,
        List<Baffle> baffles,
        List<Plate> plates,
        List<WallHole> holes) {
    public BoxSectionSpec {
        line = List.copyOf(line);
        baffles = List.copyOf(baffles);
        plates = List.copyOf(plates);
        holes = List.copyOf(holes);
    }

    /** The walls round the section. */
    public enum Wall {
        BOTTOM(0, "bottom"),
        RIGHT(1, "right wall"),
        TOP(2, "top"),
        LEFT(3, "left wall");

        private final int side;
        private final String partName;

        Wall(int side, String partName) {
            this.side = side;
            this.partName = partName;
        }

        /** Number of the side of the section, from the bottom, counter-clockwise with right and up: 0 to 3. */
        public int side() {
            return side;
        }

        public String partName() {
            return partName;
        }
    }

    /**
     * A corner of the line; radius and facets of its first and last point are not read.
     *
     * @param radiusM bend radius of the line; 0 = one mitre
     * @param facets mitres that make up the bend; 0 = as many as keep the walls within 0.5 mm
     */
    public record Bend(Vec3 atM, double radiusM, int facets, SourcePlace place) {}

    /** An end of the box: a cap with holes, or open. */
    public record End(boolean open, List<WebHole> holes) {
        public End {
            holes = List.copyOf(holes);
        }
    }

    /** A web square to the line at a distance along it; its holes lie right of and above the section's middle. */
    public record Baffle(double alongM, List<WebHole> holes, SourcePlace place) {
        public Baffle {
            holes = List.copyOf(holes);
        }
    }

    /**
     * A second sheet inside, parallel to a wall; its ends are open.
     *
     * @param gapM from the wall to the plate
     * @param widthM width, about its middle; 0 = from wall to wall
     */
    public record Plate(Wall wall, double fromM, double toM, double gapM, double widthM, SourcePlace place) {}

    /**
     * An opening in a wall.
     *
     * @param alongM distance of its centre along the line
     * @param acrossM from the middle of the wall: to the right on top and bottom, upwards on the side walls
     */
    public record WallHole(
            @Nullable String name,
            Wall wall,
            Outline outline,
            double alongM,
            double acrossM,
            PhaseStates states,
            SourcePlace place) {}
}
