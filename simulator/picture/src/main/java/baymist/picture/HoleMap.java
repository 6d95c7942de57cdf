package baymist.picture;

import baymist.report.CompareReport;
import baymist.study.HoleStudy;
import baymist.study.StudyShape;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What access holes would add to a job: reached before, reached with them, still bare; each hole ringed. */
public final class HoleMap {
    private HoleMap() {}

    /** Draws it as a PNG, written whole or not at all. */
    public static void write(HoleStudy.Holes holes, Path png) throws IOException {
        StudyShape drilled = StudyShape.of(holes.job(), holes.planning());
        StudyShape stated = StudyShape.of(holes.scene(), holes.planning());
        TwoFilmMap map = new TwoFilmMap(
                holes.scene(),
                drilled,
                drilled.filmOf(stated, holes.before().filmM()),
                holes.after().filmM(),
                List.of(
                        "reached as the job stands",
                        "reached as the job stands, no more with the holes",
                        "added by the holes",
                        "bare all the same"));
        List<String> foot = new ArrayList<>();
        foot.add("Planning resolution: " + holes.planning().words() + ". A computed prediction, not an approval.");
        foot.add(CompareReport.DRILLING);
        map.write(foot, holes.chosen().stream().map(HoleStudy.Chosen::name).toList(), png);
    }
}
