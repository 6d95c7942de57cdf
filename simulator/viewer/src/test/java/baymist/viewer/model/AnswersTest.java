package baymist.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.PartKind;
import baymist.coverage.UnreachedRegion;
import baymist.coverage.Verdict;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.recording.Recording;
import baymist.run.RunObserver;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.scene.SceneEdit;
import baymist.voxel.SurfelSet;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the window says about places, held against the run's own account. */
class AnswersTest {
    private static final Recording R = Fixture.RECORDING;
    private static final RunResult RESULT = R.result();

    /** Conservation: film is what jets threw, what fog left and what moved. */
    @Test
    void aPlacesStoryAddsUp() {
        SurfelSet s = RESULT.grid().surfels();
        double density = RESULT.scene().product().densityKgPerM3();
        int wet = 0;
        for (int n = 0; n < s.count(); n += 7) {
            SurfelStory story = SurfelStory.of(R, n, FilmUnit.MICROMETRE);
            double film = story.filmM() * density * s.areaM2()[n];
            assertEquals(film, story.directKg() + story.fogKg() + story.movedKg(), 1e-12 * Math.max(film, 1e-6));
            boolean reached = story.verdict() != null && story.verdict() != Verdict.UNREACHED;
            if (story.verdict() != null) {
                // film may have run away again, so a place that is bare at the end may have been wet
                assertTrue(!reached || !Double.isNaN(story.firstWetS()));
            }
            wet += reached ? 1 : 0;
            assertTrue(story.sentences().size() >= 3);
            story.sentences().forEach(t -> assertTrue(t.endsWith("."), t));
        }
        assertTrue(wet > 100, wet + " wet places");
    }

    @Test
    void aStoryTellsFilmInTheUnitAskedFor() {
        int most = 0;
        for (int n = 1; n < RESULT.filmM().length; n++) {
            most = RESULT.filmM()[n] > RESULT.filmM()[most] ? n : most;
        }
        String um = SurfelStory.of(R, most, FilmUnit.MICROMETRE).sentences().get(0);
        String mil = SurfelStory.of(R, most, FilmUnit.MIL).sentences().get(0);
        assertTrue(um.contains("µm") && !um.contains("mil"), um);
        assertTrue(mil.contains(" mil"), mil);
    }

    /** 1 mil = 25.4 µm exactly (NIST SP 811 (2008), appendix B: 1 in = 25.4 mm). */
    @Test
    void filmUnitsConvertExactly() {
        assertEquals(1, FilmUnit.MIL.of(25.4e-6), 1e-12);
        assertEquals(25.4e-6, FilmUnit.MIL.toM(1), 1e-18);
        assertEquals("0.394 mil", FilmUnit.MIL.text(10e-6));
        assertEquals("10.0 µm", FilmUnit.MICROMETRE.text(10e-6));
        assertEquals("0 µm", FilmUnit.MICROMETRE.text(0));
        assertEquals("1234 µm", FilmUnit.MICROMETRE.text(1.234e-3));
    }

    @Test
    void theListOfBarePlacesIsTheRunsOwn() {
        RegionList list = RegionList.of(RESULT);
        List<UnreachedRegion> own = RESULT.coverage().unreached();
        assertFalse(own.isEmpty());
        assertEquals(own.size(), list.rows().size());
        for (int n = 0; n < own.size(); n++) {
            RegionList.Row row = list.rows().get(n);
            assertEquals(own.get(n).where(), row.where());
            assertEquals(1, row.facing().length(), 1e-9);
            Box3 box = own.get(n).extentM();
            assertTrue(row.viewM() >= box.size().length());
        }
    }

    /** Geometry: a tip that stays in the first bay sees the last one through lightening holes alone; the rest ends on ribs. */
    @Test
    void whatStandsBetweenTipAndPlaceIsNamed() {
        PassSpec shallow = Fixture.SCENE.passes().get(0).withDepthsM(0.06, 0.04).withHangS(0);
        RunResult near = Fixture.run(SceneEdit.of(Fixture.SCENE)
                        .passes(List.of(shallow))
                        .hangS(0)
                        .done())
                .result();
        Vec3 tip = near.stations().get(0).pose().positionM();
        SurfelSet s = near.grid().surfels();
        int farthest = 0;
        for (int n = 1; n < s.count(); n++) {
            boolean farther = Math.abs(s.centreY()[n] - tip.y()) > Math.abs(s.centreY()[farthest] - tip.y());
            farthest = s.isStructure(n) && farther ? n : farthest;
        }
        int bay = near.grid().bayOfCell(s.cell()[farthest]);
        int[] last = java.util.stream.IntStream.range(0, s.count())
                .filter(n -> s.isStructure(n) && near.grid().bayOfCell(s.cell()[n]) == bay)
                .toArray();
        Shade shade = Shade.of(near, last);
        assertTrue(shade.seen() < 0.3, shade.sentence());
        assertEquals(PartKind.RIB, near.cavity().parts().get(shade.part()).kind(), shade.sentence());
        assertTrue(shade.share() > 0.3 && shade.share() <= 1, shade.sentence());
        int hit = 0;
        for (int n = 1; n < RESULT.grid().surfels().count(); n++) {
            hit = R.arrivedDirectKg()[n] > R.arrivedDirectKg()[hit] ? n : hit;
        }
        // what jets wet most lies in plain view
        assertEquals(1, Shade.of(RESULT, new int[] {hit}).seen());
    }

    @Test
    void theBestPoseIsInTheCavityAndBringsSomething() {
        RegionList.Row largest = RegionList.of(RESULT).rows().get(0);
        RegionAnswer.GhostPose pose = RegionAnswer.bestPose(RESULT, largest, Fixture.TWO, RunObserver.NONE);
        assertNotNull(pose);
        assertTrue(pose.share().share() > 0 && pose.share().share() <= 1);
        assertTrue(RESULT.grid().cellHolding(pose.tip().positionM()) >= 0, "the tip is in the air of the cavity");
        Vec3 end = pose.bodyM().get(pose.bodyM().size() - 1);
        assertEquals(0, end.distance(pose.tip().positionM()), 1e-6);
        assertTrue(pose.sentence().contains("mm deep"), pose.sentence());
    }

    @Test
    void aPlaceIsExplainedInWholeSentences() {
        RegionList.Row largest = RegionList.of(RESULT).rows().get(0);
        RegionAnswer.Why why = RegionAnswer.why(Fixture.SCENE, largest, 0.001, Fixture.TWO, RunObserver.NONE);
        assertTrue(why.sentences().size() >= 3, why.sentences().toString());
        for (String says : why.sentences()) {
            assertTrue(says.matches("(?s)[^\\p{Ll}\\s].*[.]"), says);
        }
        // it is about the place that was asked for
        double apart = why.explanation().region().centroidM().distance(largest.centreM());
        assertTrue(
                apart < 0.5 * largest.region().extentM().size().length() + 0.05,
                "explains a place " + apart + " m off");
    }

    @Test
    void aRunDiffersFromItselfInNothing() {
        Difference none = Difference.of(R, R);
        assertTrue(none.sameGrid());
        assertEquals(0, none.gainedM2() + none.lostM2() + none.unmatchedM2());
        for (float f : none.filmM()) {
            assertEquals(0, f);
        }
    }

    @Test
    void aDifferenceIsTheDifferenceOfCoverage() {
        Recording twice = Fixture.run(SceneEdit.of(Fixture.SCENE)
                .supply(Fixture.SCENE.supply().withLiquidTimes(3))
                .done());
        Difference d = Difference.of(R, twice);
        double area = 0;
        SurfelSet s = RESULT.grid().surfels();
        for (int n = 0; n < s.count(); n++) {
            area += s.isStructure(n) ? s.areaM2()[n] : 0;
        }
        double reached = twice.result().coverage().total().reached()
                - RESULT.coverage().total().reached();
        assertTrue(d.gainedM2() > 0, d.sentences().toString());
        assertEquals(reached * area, d.gainedM2() - d.lostM2(), 1e-9);
        CompareModel compare = CompareModel.of("as it is", R).with("three times", twice);
        assertTrue(compare.largestM() > 0 && compare.linked());
    }

    @Test
    void setUpsWithOtherVoxelsAreComparedPlaceByPlace() {
        Recording finer = Fixture.run(SceneEdit.of(Fixture.SCENE)
                .voxel(new baymist.scene.VoxelSpec(0.02, 0.02, 0.02))
                .done());
        Difference d = Difference.of(R, finer);
        double area = finer.result().grid().surfels().areaM2().length;
        assertTrue(area > 0 && !d.sameGrid());
        double structure = 0;
        SurfelSet s = finer.result().grid().surfels();
        for (int n = 0; n < s.count(); n++) {
            structure += s.isStructure(n) ? s.areaM2()[n] : 0;
        }
        assertTrue(d.unmatchedM2() < 0.02 * structure, d.unmatchedM2() + " of " + structure + " m2 unmatched");
    }

    @Test
    void chartsFollowTheCursor() {
        ChartModel chart = ChartModel.of(R);
        assertEquals(3, chart.series().size());
        ChartModel.Series cover = chart.series().get(1);
        assertEquals(100 * RESULT.coverage().total().reached(), cover.at(1e9), 1e-9);
        assertEquals(0, cover.at(-1));
        ChartModel.Series used = chart.series().get(2);
        assertEquals(1e3 * RESULT.ledger().sprayedKg(), used.at(chart.endS()), 1e-9);
        assertTrue(used.top() >= used.at(chart.endS()));
        assertTrue(used.text(chart.endS()).endsWith(" g"), used.text(chart.endS()));
        assertEquals(50, ChartModel.roundUp(23.4));
        assertEquals(0.2, ChartModel.roundUp(0.2), 1e-15);
    }
}
