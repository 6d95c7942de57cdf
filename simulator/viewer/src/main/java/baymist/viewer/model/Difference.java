package baymist.viewer.model;

import baymist.geom.Vec3;
import baymist.recording.Recording;
import baymist.run.RunResult;
import baymist.voxel.SurfelLocator;
import baymist.voxel.SurfelSet;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * What another set-up does to the film, on the surfels of the second run. Arrays are shared and must not be written to.
 *
 * @param filmM film of the second less film of the first, m, [surfels of the second]; NaN where the first has no such place
 * @param gainedM2 structure that the second reaches and the first does not, m²
 * @param lostM2 structure that the first reaches and the second does not, m²
 * @param unmatchedM2 structure of the second that the first has no place for, m²
 * @param sameGrid whether both have the same surfels
 * @param sentences the same for reading
 */
public record Difference(
        float[] filmM, double gainedM2, double lostM2, double unmatchedM2, boolean sameGrid, List<String> sentences) {
    public Difference {
        sentences = List.copyOf(sentences);
    }

    public static Difference of(Recording first, Recording second) {
        return of(first.result(), second.result());
    }

    static Difference of(RunResult first, RunResult second) {
        SurfelSet a = first.grid().surfels();
        SurfelSet b = second.grid().surfels();
        boolean same =
                same(a, b) && first.cavity().parts().equals(second.cavity().parts());
        SurfelLocator locator = same ? null : SurfelLocator.of(first.grid(), first.cavity());
        double hazeA = first.scene().targets().hazeM();
        double hazeB = second.scene().targets().hazeM();
        float[] film = new float[b.count()];
        double gained = 0;
        double lost = 0;
        double unmatched = 0;
        for (int s = 0; s < film.length; s++) {
            int match = locator == null ? s : match(first, second, locator, s);
            film[s] = match < 0 ? Float.NaN : (float) (second.filmM()[s] - first.filmM()[match]);
            if (b.isStructure(s)) {
                boolean was = match >= 0 && first.filmM()[match] >= hazeA;
                boolean is = second.filmM()[s] >= hazeB;
                unmatched += match < 0 ? b.areaM2()[s] : 0;
                gained += match >= 0 && is && !was ? b.areaM2()[s] : 0;
                lost += match >= 0 && was && !is ? b.areaM2()[s] : 0;
            }
        }
        return new Difference(film, gained, lost, unmatched, same, sentences(first, second, gained, lost, unmatched));
    }

    private static boolean same(SurfelSet a, SurfelSet b) {
        return a.count() == b.count()
                && Arrays.equals(a.centreX(), b.centreX())
                && Arrays.equals(a.centreY(), b.centreY())
                && Arrays.equals(a.centreZ(), b.centreZ())
                && Arrays.equals(a.part(), b.part());
    }

    private static int match(RunResult first, RunResult second, SurfelLocator locator, int s) {
        SurfelSet b = second.grid().surfels();
        int part = first.cavity()
                .partIndex(second.cavity().parts().get(b.part()[s]).name());
        if (part < 0 || b.closure()[s] >= 0) {
            return -1;
        }
        Vec3 at = new Vec3(b.centreX()[s], b.centreY()[s], b.centreZ()[s]);
        return locator.surfelNear(at, part, new Vec3(b.normalX()[s], b.normalY()[s], b.normalZ()[s]));
    }

    private static List<String> sentences(
            RunResult first, RunResult second, double gained, double lost, double unmatched) {
        double was = 100 * first.coverage().total().reached();
        double is = 100 * second.coverage().total().reached();
        String total =
                String.format(Locale.ROOT, "The second reaches %.1f %% of the structure, the first %.1f %%.", is, was);
        String places = String.format(
                Locale.ROOT,
                "It reaches %.0f cm\u00b2 that the first leaves bare and leaves bare %.0f cm\u00b2 that the first"
                        + " reaches.",
                1e4 * gained,
                1e4 * lost);
        String used = String.format(
                Locale.ROOT,
                "It sprays %.1f g, the first %.1f g.",
                1e3 * second.ledger().sprayedKg(),
                1e3 * first.ledger().sprayedKg());
        return unmatched > 0
                ? List.of(
                        total,
                        places,
                        used,
                        String.format(
                                Locale.ROOT,
                                "%.0f cm\u00b2 of the second have no counterpart in the first and are not compared.",
                                1e4 * unmatched))
                : List.of(total, places, used);
    }
}
