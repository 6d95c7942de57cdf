package baymist.scene;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was found on the structure after a job.
 *
 * @param title what was inspected and when, "" where nothing is said
 */
public record Inspection(String title, List<Place> places) {
    public Inspection {
        places = List.copyOf(places);
    }

    /** What the film looked like. */
    public enum Seen {
        /** Slick and even: the target build or more. */
        WET(0),
        /** Dull or dotted: from haze up to the target build. */
        THIN(1),
        /** Bare metal: less than haze. */
        DRY(2);

        private final int index;

        Seen(int index) {
            this.index = index;
        }

        /** Place in tables of all verdicts: 0 wet, 1 thin, 2 dry. */
        public int index() {
            return index;
        }
    }

    /**
     * One place that was looked at.
     *
     * @param atM point on the surface, m; null where a region is named
     * @param region label of a bare region of the run, as in "3.7c"; null where a point is named
     * @param part part that the point lies on; null = the nearest
     * @param filmM film measured there, m; NaN = not measured
     * @param radiusM what round the point was looked at, m
     */
    public record Place(
            @Nullable Vec3 atM,
            @Nullable String region,
            @Nullable String part,
            Seen seen,
            double filmM,
            double radiusM,
            SourcePlace place) {
        public boolean measured() {
            return !Double.isNaN(filmM);
        }
    }
}
