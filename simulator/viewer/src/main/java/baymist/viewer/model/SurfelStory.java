package baymist.viewer.model;

import baymist.coverage.Verdict;
import baymist.recording.Recording;
import baymist.run.RunResult;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * How a place got its film.
 *
 * @param filmM wet film at the end, m
 * @param directKg what jets threw there, kg
 * @param fogKg what fog left there, kg
 * @param movedKg what ran, dripped or crept there less what ran away, kg; below 0 where more ran away
 * @param part name of the part
 * @param bay name of the bay whose air it faces
 * @param verdict by the job's targets; null on a closed opening or a protected item
 * @param firstWetS first time kept at which the film is at least haze, s; NaN if never
 * @param sentences the same for reading
 */
public record SurfelStory(
        double filmM,
        double directKg,
        double fogKg,
        double movedKg,
        String part,
        String bay,
        @Nullable Verdict verdict,
        double firstWetS,
        List<String> sentences) {
    /** Product that moved is told from this share of what arrived. */
    private static final double WORTH_TELLING = 0.02;

    public SurfelStory {
        sentences = List.copyOf(sentences);
    }

    public static SurfelStory of(Recording recording, int surfel, FilmUnit unit) {
        RunResult result = recording.result();
        SurfelSet surfels = result.grid().surfels();
        double hazeM = result.scene().targets().hazeM();
        int first = recording.firstFrameWith(surfel, hazeM);
        SurfelStory told = new SurfelStory(
                result.filmM()[surfel],
                recording.arrivedDirectKg()[surfel],
                recording.arrivedFogKg()[surfel],
                recording.movedKg(surfel),
                result.cavity().parts().get(surfels.part()[surfel]).name(),
                result.grid()
                        .bays()
                        .get(result.grid().bayOfCell(surfels.cell()[surfel]))
                        .name(),
                result.coverage().verdict()[surfel],
                first < 0 ? Double.NaN : recording.timesS()[first],
                List.of());
        return told.withSentences(unit, hazeM, surfels.isProtected(surfel));
    }

    private SurfelStory withSentences(FilmUnit unit, double hazeM, boolean item) {
        List<String> says = new ArrayList<>();
        String what = item
                ? "a protected item, film here is dose"
                : verdict == null
                        ? "a closed opening"
                        : switch (verdict) {
                            case UNREACHED -> "not reached";
                            case THIN -> "reached, but thinner than the target";
                            case PROTECTED -> "protected";
                            case EXCESS -> "more than the run limit";
                        };
        says.add(String.format(Locale.ROOT, "%s, %s: %s of wet film, %s.", part, bay, unit.text(filmM), what));
        double arrived = directKg + fogKg;
        if (arrived > 0) {
            says.add(String.format(
                    Locale.ROOT,
                    "Of what arrived, jets threw %.0f %% and fog left %.0f %%.",
                    100 * directKg / arrived,
                    100 * fogKg / arrived));
        } else {
            says.add("Neither jets nor fog brought anything here.");
        }
        double least = WORTH_TELLING * Math.max(arrived, 1e-15);
        if (movedKg > least) {
            says.add(
                    arrived > 0
                            ? String.format(
                                    Locale.ROOT,
                                    "As much as %.0f %% of that ran, dripped or crept here besides.",
                                    100 * movedKg / arrived)
                            : "All of it ran, dripped or crept here.");
        } else if (movedKg < -least) {
            says.add(String.format(
                    Locale.ROOT, "Of that, %.0f %% ran, dripped or crept away again.", -100 * movedKg / arrived));
        }
        says.add(
                Double.isNaN(firstWetS)
                        ? "The film never came to the haze of " + unit.text(hazeM) + "."
                        : String.format(
                                Locale.ROOT,
                                "It had the haze of %s by %.1f s into the job.",
                                unit.text(hazeM),
                                firstWetS));
        return new SurfelStory(filmM, directKg, fogKg, movedKg, part, bay, verdict, firstWetS, says);
    }
}
