package baymist.scene;

import baymist.geom.Outline;
import baymist.problem.SourcePlace;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Measures of a shell: a tail cone or a stretch of fuselage, symmetric about the plane y = 0, its length along x. Lengths m.
 *
 * @param stations at least two, from the front aft; the skin runs straight from each to the next
 * @param segments flats round the girth of a lofted section; 0 = as many as keep the skin within 0.5 mm and 0.5 %
 * @param stringers number of stringers, evenly round the girth of the largest station; 0 = none
 * @param stringerHeightM height of their blades
 * @param frames ring frames and closed webs between the ends, in order of x
 * @param forwardEnd, aftEnd webs that close the first and last station ({@code xM} is not read)
 */
public record ShellSpec(
        List<Station> stations,
        int segments,
        int stringers,
        double stringerHeightM,
        List<Frame> frames,
        Frame forwardEnd,
        Frame aftEnd,
        List<Floor> floors) {
    public ShellSpec {
        stations = List.copyOf(stations);
        frames = List.copyOf(frames);
        floors = List.copyOf(floors);
    }

    /** Shape of the shell at one x. */
    public sealed interface Station {
        double xM();

        SourcePlace place();
    }

    /**
     * A superellipse |y / halfWidth|^roundness + |z / height|^roundness = 1 about (0, centreUp), with heights of its own above
     * and below; roundness 2 is an ellipse.
     */
    public record Oval(
            double xM,
            double halfWidthM,
            double aboveM,
            double belowM,
            double centreUpM,
            double roundness,
            SourcePlace place)
            implements Station {}

    /** Half-breadths measured from the middle plane at heights, from the keel up; straight between them. */
    public record Measured(double xM, List<HalfBreadth> breadths, SourcePlace place) implements Station {
        public Measured {
            breadths = List.copyOf(breadths);
        }
    }

    /**
     * Distance of the skin from the middle plane at a height.
     *
     * @param halfM 0 is allowed at the lowest and the highest point only
     */
    public record HalfBreadth(double upM, double halfM) {}

    /**
     * A web across the shell, square to x.
     *
     * @param name its name as a part; null = "frame 2" or "bulkhead 1" and so on
     * @param depthM how far a ring frame stands in from the skin; 0 = a closed web (a bulkhead)
     */
    public record Frame(@Nullable String name, double xM, double depthM, List<WebHole> holes, SourcePlace place) {
        public Frame {
            holes = List.copyOf(holes);
        }
    }

    /**
     * A hole in a web.
     *
     * @param name null = named after the web, "frame 2 hole 1" and so on
     * @param rightM, upM its centre
     */
    public record WebHole(
            @Nullable String name, Outline outline, double rightM, double upM, PhaseStates states, SourcePlace place) {}

    /** A hole in a floor, named like a {@link WebHole}; {@code aftM} is its x. */
    public record FloorHole(
            @Nullable String name,
            Outline outline,
            double aftM,
            double rightM,
            PhaseStates states,
            SourcePlace place) {}

    /** A level sheet from skin to skin. */
    public record Floor(
            @Nullable String name, double upM, double fromM, double toM, List<FloorHole> holes, SourcePlace place) {
        public Floor {
            holes = List.copyOf(holes);
        }
    }
}
