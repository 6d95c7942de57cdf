package baymist.viewer.model;

import baymist.access.Station;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.Vec3;
import baymist.run.Approach;
import baymist.run.BvhTracer;
import baymist.run.Nozzles;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.spray.DropletBins;
import baymist.spray.SprayView;
import baymist.voxel.SurfelSet;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * What stands between the tip and a place: straight lines from every station of the job to points spread over the place.
 *
 * @param seen share of the points that some station sees, 0..1
 * @param part index of the part that ends most lines from the nearest station to points that none sees; -1 = none
 * @param share share of those lines that it ends, 0..1
 * @param sentence the same for reading
 */
public record Shade(double seen, int part, double share, String sentence) {
    private static final int POINTS = 40;

    public static Shade of(RunResult result, int[] surfels) {
        Cavity cavity = result.cavity();
        Scene scene = result.scene();
        List<Station> stations = result.stations();
        if (stations.isEmpty() || surfels.length == 0) {
            return new Shade(0, -1, 0, "No pass is sprayed, so nothing was looked at.");
        }
        SprayView view = new SprayView(
                cavity,
                new BvhTracer(Bvh.of(cavity.sheets())),
                scene.supply(),
                scene.product(),
                scene.ambient(),
                DropletBins.of(Nozzles.sizes(scene), scene.sizeBins()));
        int step = Math.max(1, surfels.length / POINTS);
        int[] ended = new int[cavity.parts().size()];
        int points = 0;
        int seen = 0;
        for (int n = step / 2; n < surfels.length; n += step) {
            points++;
            SprayView.Line nearest = look(result, view, stations, surfels[n]);
            seen += nearest.clear() ? 1 : 0;
            if (!nearest.clear() && nearest.part() >= 0) {
                ended[nearest.part()]++;
            }
        }
        return told(cavity, points, seen, ended);
    }

    /** A clear line from any station to a surfel, else the line from the nearest station. */
    private static SprayView.Line look(RunResult result, SprayView view, List<Station> stations, int s) {
        SurfelSet surfels = result.grid().surfels();
        Vec3 point = new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
        Vec3 normal = new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]);
        SprayView.Line nearest = new SprayView.Line(false, -1, -1);
        double least = Double.POSITIVE_INFINITY;
        for (Station station : stations) {
            Vec3 tip = station.pose().positionM();
            // a sheet that turns its back to the tip shades itself
            boolean faces = tip.minus(point).dot(normal) > 0;
            SprayView.Line line = faces
                    ? view.look(tip, point, open(result, station))
                    : new SprayView.Line(false, surfels.part()[s], -1);
            if (line.clear()) {
                return line;
            }
            if (tip.distance(point) < least) {
                least = tip.distance(point);
                nearest = line;
            }
        }
        return nearest;
    }

    private static double[] open(RunResult result, Station station) {
        PassSpec pass = result.scene().passes().get(station.pass());
        int entry = result.insertions().stream()
                .filter(i -> i.entry().equals(pass.entry()))
                .mapToInt(i -> i.openingIndex())
                .findFirst()
                .orElse(-1);
        double rod = Approach.wand(result.scene(), pass).outerM();
        return OpenFractions.pass(result.cavity().openings(), entry, rod);
    }

    private static Shade told(Cavity cavity, int points, int seen, int[] ended) {
        int most = 0;
        for (int p = 1; p < ended.length; p++) {
            most = ended[p] > ended[most] ? p : most;
        }
        int unseen = points - seen;
        boolean any = unseen > 0 && ended.length > 0 && Arrays.stream(ended).sum() > 0;
        String view = String.format(Locale.ROOT, "The tip sees %.0f %% of this place.", 100.0 * seen / points);
        if (!any) {
            return new Shade((double) seen / points, -1, 0, view);
        }
        double share = (double) ended[most] / unseen;
        String shade = String.format(
                Locale.ROOT,
                " Of the lines that do not get there, %.0f %% end on %s.",
                100 * share,
                cavity.parts().get(most).name());
        return new Shade((double) seen / points, most, share, view + shade);
    }
}
