package baymist.run;

import baymist.geom.Vec3;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the job leaves behind beside a film where it is wanted: on protected items, and as weight in the structure.
 *
 * @param arrivals what arrived on protected items, by pass
 * @param oil what stays in each bay a day after close-up, then in all
 * @param hinge moment of all of it about the hinge line, or null where none is stated
 */
public record Consequences(
        List<Arrival> arrivals, List<Oil> oil, @Nullable Hinge hinge) {
    /** Nothing. */
    public static final Consequences NONE = new Consequences(List.of(), List.of(), null);

    /** Name of the entry of {@code oil} for the whole structure. */
    public static final String ALL = "all";

    public Consequences {
        arrivals = List.copyOf(arrivals);
        oil = List.copyOf(oil);
    }

    /**
     * Product that arrived on an item, or on its mask.
     *
     * @param pass name of the pass in or after which it arrived
     * @param jetKg thrown there by jets, kg
     * @param fogKg settled there from fog, kg
     */
    public record Arrival(String item, String pass, double jetKg, double fogKg) {}

    /**
     * Oil left in a bay.
     *
     * @param bay its name, or {@link #ALL}
     * @param massKg film on structure and items, standing oil included, kg
     * @param standingKg what of it stands above the run limit: behind blocked drains, in low corners, kg
     * @param centreM centre of gravity, m
     * @param deepestM thickest film, m
     * @param deepestAtM where that is, m
     */
    public record Oil(String bay, double massKg, double standingKg, Vec3 centreM, double deepestM, Vec3 deepestAtM) {}

    /**
     * Weight about the hinge line.
     *
     * @param massKg oil, kg
     * @param armM distance of its centre aft of the hinge line, m; negative = ahead of it
     * @param momentNm weight times arm about the line in the scene's attitude, N·m; positive = aft edge down
     */
    public record Hinge(double massKg, double armM, double momentNm) {}
}
