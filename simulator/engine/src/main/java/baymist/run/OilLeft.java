package baymist.run;

import baymist.film.FilmState;
import baymist.geom.Vec3;
import baymist.scene.HingeLine;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Weighs the oil that stays: by bay, its centre, and its moment about a hinge line (docs/theory/coverage.md, section 6). */
final class OilLeft {
    private OilLeft() {}

    /** Mass, first moment and deepest film of one bay, summed in surfel order. */
    private static final class Sum {
        private double mass;
        private double standing;
        private Vec3 moment = Vec3.ZERO;
        private double deepest;
        private Vec3 at = Vec3.ZERO;

        void add(double massKg, double buildM, double limitM, Vec3 centre) {
            mass += massKg;
            standing += buildM > limitM ? massKg * (1 - limitM / buildM) : 0;
            moment = moment.plus(massKg, centre);
            if (buildM > deepest) {
                deepest = buildM;
                at = centre;
            }
        }

        Consequences.Oil oil(String name) {
            return new Consequences.Oil(
                    name, mass, standing, mass > 0 ? moment.times(1 / mass) : Vec3.ZERO, deepest, at);
        }
    }

    /**
     * Oil in each bay that holds any, and in all.
     *
     * @param runLimitM film above which oil stands, m
     */
    static List<Consequences.Oil> of(VoxelGrid grid, FilmState film, double runLimitM) {
        SurfelSet surfels = grid.surfels();
        List<Sum> bays = new ArrayList<>();
        grid.bays().forEach(b -> bays.add(new Sum()));
        Sum all = new Sum();
        for (int s = 0; s < surfels.count(); s++) {
            if (!film.isMasked(s) && film.massKg(s) > 0) { // what lies on a mask leaves with it
                Vec3 centre = new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
                double build = film.wetBuildM(s);
                bays.get(grid.bayOfCell(surfels.cell()[s])).add(film.massKg(s), build, runLimitM, centre);
                all.add(film.massKg(s), build, runLimitM, centre);
            }
        }
        List<Consequences.Oil> oil = new ArrayList<>();
        for (int b = 0; b < bays.size(); b++) {
            if (bays.get(b).mass > 0) {
                oil.add(bays.get(b).oil(grid.bays().get(b).name()));
            }
        }
        oil.add(all.oil(Consequences.ALL));
        return oil;
    }

    /**
     * Moment of a weight about a hinge line: the component along the line of (c - p) × m g, the line taken with its right end as positive.
     *
     * @param gravity m/s², as a vector
     */
    static Consequences.@Nullable Hinge hinge(@Nullable HingeLine line, Consequences.Oil oil, Vec3 gravity) {
        if (line == null) {
            return null;
        }
        Vec3 along = line.toM().minus(line.fromM()).unit();
        Vec3 axis = along.y() < 0 ? along.negate() : along;
        Vec3 arm = oil.centreM().minus(line.fromM());
        Vec3 square = arm.plus(-arm.dot(axis), axis);
        double moment = axis.dot(arm.cross(gravity.times(oil.massKg())));
        return new Consequences.Hinge(oil.massKg(), square.x(), moment);
    }
}
