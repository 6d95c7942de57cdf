package baymist.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.PartKind;
import baymist.geom.Vec3;
import baymist.scene.TargetSpec;
import baymist.voxel.SurfelSet;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Each wording on a hand-made structure: x aft, y outboard, z up, cells of 10 mm. */
class RegionDescriberTest {
    private static final double H = 0.01;

    /** Picks surfels by part name and centre. */
    private interface Pick {
        boolean test(String part, Vec3 normal, Vec3 p);
    }

    private static LatticeCavity wedge() {
        return new LatticeCavity(20, 40, 6, new Vec3(H, H, H))
                .wedge()
                .wall(1, 10, "rib 2", PartKind.RIB, (i, k) -> i >= 8 && i < 10 && k >= 2 && k < 4)
                .wall(1, 20, "rib 3", PartKind.RIB, (i, k) -> i >= 8 && i < 10 && k >= 2 && k < 4)
                .wall(1, 30, "rib 4", PartKind.RIB, (i, k) -> i >= 8 && i < 10 && k >= 2 && k < 4);
    }

    private static LatticeCavity box() {
        return new LatticeCavity(20, 20, 10, new Vec3(H, H, H))
                .box()
                .wall(1, 10, "rib 2", PartKind.RIB, (i, k) -> i >= 8 && i < 12 && k >= 4 && k < 6);
    }

    private static List<String> where(LatticeCavity lattice, Pick bare) {
        LatticeCavity.Built b = lattice.build();
        SurfelSet s = b.grid().surfels();
        double[] film = new double[s.count()];
        for (int i = 0; i < film.length; i++) {
            Vec3 centre = new Vec3(s.centreX()[i], s.centreY()[i], s.centreZ()[i]);
            Vec3 normal = new Vec3(s.normalX()[i], s.normalY()[i], s.normalZ()[i]);
            film[i] = bare.test(b.cavity().parts().get(s.part()[i]).name(), normal, centre) ? 0 : 20e-6;
        }
        return CoverageAssessor.assess(b.cavity(), b.grid(), film, TargetSpec.DEFAULT).unreached().stream()
                .map(UnreachedRegion::where)
                .toList();
    }

    @Test
    void cornerIsNamedByItsSideAndTheRibAtIt() {
        assertEquals(
                List.of("upper skin, bay 2, aft corner at rib 3 (40 mm fore-aft x 30 mm across)"),
                where(
                        wedge(),
                        (part, n, p) -> part.equals("upper skin") && p.x() > 0.16 && p.y() > 0.17 && p.y() < 0.2));
    }

    @Test
    void stripAlongASparRunsFromRibToRib() {
        assertEquals(
                List.of("lower skin, bay 1, along the front spar from rib 1 to rib 2 (30 mm fore-aft x 100 mm across)"),
                where(
                        wedge(),
                        (part, n, p) -> part.equals("lower skin") && n.z() > 0.5 && p.x() < 0.03 && p.y() < 0.1));
    }

    @Test
    void halfOfARibFaceIsNamedByFaceAndHalf() {
        assertEquals(
                List.of("rib 3, inboard face, upper half (30 mm high x 200 mm fore-aft)"),
                where(wedge(), (part, n, p) -> part.equals("rib 3") && n.y() < -0.5 && p.z() > 0.03));
        assertTrue(where(wedge(), (part, n, p) -> part.equals("rib 3") && n.y() > 0.5 && p.z() < 0.03)
                .get(0)
                .startsWith("rib 3, outboard face, lower half"));
    }

    @Test
    void edgeWhereTwoSkinsMeetIsTheTrailingEdge() {
        // the ribs stop short of the edge, so that the strip is one region
        LatticeCavity shortRibs = new LatticeCavity(20, 40, 2, new Vec3(H, H, H))
                .wedge()
                .wall(1, 10, "rib 2", PartKind.RIB, (i, k) -> i >= 16)
                .wall(1, 20, "rib 3", PartKind.RIB, (i, k) -> i >= 16)
                .wall(1, 30, "rib 4", PartKind.RIB, (i, k) -> i >= 16);
        List<String> words = where(shortRibs, (part, n, p) -> part.endsWith("skin") && p.x() > 0.17);
        assertEquals(List.of("trailing edge, bays 1 to 4, whole length (30 mm fore-aft x 400 mm across)"), words);
        assertEquals(
                List.of("trailing edge, bays 2 and 3, from rib 2 to rib 4 (30 mm fore-aft x 200 mm across)"),
                where(shortRibs, (part, n, p) -> part.endsWith("skin") && p.x() > 0.17 && p.y() > 0.1 && p.y() < 0.3));
    }

    @Test
    void stripOnOneSkinAloneIsAlongTheTrailingEdge() {
        LatticeCavity sharp = new LatticeCavity(20, 10, 4, new Vec3(H, H, H))
                .wedge()
                .bent(p -> new Vec3(p.x(), p.y(), p.z() * (1 - p.x() / 0.2)));
        assertEquals(
                List.of("upper skin, along the trailing edge from rib 1 to rib 9 (30 mm fore-aft x 100 mm across)"),
                where(sharp, (part, n, p) -> part.equals("upper skin") && p.x() > 0.17));
    }

    @Test
    void bluntEdgeThatASkinClosesIsStillTheTrailingEdge() {
        LatticeCavity blunt = new LatticeCavity(20, 10, 2, new Vec3(H, H, H)).wedge();
        String words = where(blunt, (part, n, p) -> part.equals("upper skin") && p.x() > 0.17)
                .get(0);
        assertTrue(words.startsWith("upper skin, along the trailing edge from rib 1 to rib 9"), words);
    }

    @Test
    void stripAtASparOfABoxIsNotAnEdge() {
        String words = where(box(), (part, n, p) -> part.endsWith("skin") && p.x() > 0.17 && p.y() < 0.1)
                .get(0);
        assertTrue(words.contains("along the rear spar from rib 1 to rib 2"), words);
        assertFalse(words.contains("trailing"), words);
    }

    @Test
    void bayWithoutFilmIsToldAsTheBay() {
        assertEquals(
                List.of("bay 2, nearly all surfaces"),
                where(box(), (part, n, p) -> p.y() > 0.1 + 1e-9 || (part.equals("rib 2") && n.y() > 0)));
    }

    @Test
    void middleIsToldAsMidwayBetweenTheRibs() {
        assertEquals(
                List.of("lower skin, bay 1, middle, midway between rib 1 and rib 2 (40 mm fore-aft x 40 mm across)"),
                where(
                        box(),
                        (part, n, p) -> part.equals("lower skin")
                                && p.x() > 0.08
                                && p.x() < 0.12
                                && p.y() > 0.03
                                && p.y() < 0.07));
    }

    @Test
    void spotBesideAStringerNamesTheStringer() {
        LatticeCavity withStringer = box().blade(0, 10, "lower stringer 1", (j, k) -> k < 2);
        String words = where(
                        withStringer,
                        (part, n, p) -> part.equals("lower skin")
                                && p.x() > 0.1
                                && p.x() < 0.13
                                && p.y() > 0.03
                                && p.y() < 0.07)
                .get(0);
        assertTrue(words.contains(", beside lower stringer 1"), words);
    }

    @Test
    void stringersOfTheOtherSkinAreNotNamedAndThoseCrossedAre() {
        LatticeCavity two = box().blade(0, 10, "lower stringer 1", (j, k) -> k < 2)
                .blade(0, 15, "lower stringer 2", (j, k) -> k < 2);
        LatticeCavity upper = box().blade(0, 10, "upper stringer 1", (j, k) -> k >= 8);
        Pick patch = (part, n, p) ->
                part.equals("lower skin") && p.x() > 0.1 && p.x() < 0.15 && p.y() > 0.03 && p.y() < 0.07;
        Pick wide = (part, n, p) -> part.equals("lower skin") && p.x() > 0.05 && p.x() < 0.15 && p.y() < 0.1;
        assertTrue(where(two, patch).get(0).contains(", between lower stringer 1 and lower stringer 2"));
        assertFalse(where(upper, patch).get(0).contains("stringer"));
        LatticeCavity open = box().blade(0, 10, "lower stringer 1", (j, k) -> k < 2 && j > 3);
        assertTrue(
                where(open, wide).get(0).contains(", across lower stringer 1"),
                where(open, wide).get(0));
    }

    @Test
    void edgeThatAStripClosesIsToldByItsName() {
        LatticeCavity strip = new LatticeCavity(20, 10, 2, new Vec3(H, H, H))
                .outer(
                        new String[] {"spar", "trailing edge", "rib 1", "rib 2", "lower skin", "upper skin"},
                        new PartKind[] {
                            PartKind.SPAR, PartKind.OTHER, PartKind.RIB, PartKind.RIB, PartKind.SKIN, PartKind.SKIN
                        });
        assertEquals(
                List.of("trailing edge, whole length (30 mm fore-aft x 100 mm across)"),
                where(strip, (part, n, p) -> p.x() > 0.17 && !part.startsWith("rib")));
    }

    @Test
    void sidesTurnRoundOnALeftWing() {
        LatticeCavity left = box().at(new Vec3(0, -0.3, 0));
        String words = where(left, (part, n, p) -> part.equals("rib 2") && n.y() > 0 && p.z() > 0.05)
                .get(0);
        assertTrue(words.startsWith("rib 2, inboard face, upper half"), words);
    }

    @Test
    void tankWithoutRibsHasLeftAndRight() {
        LatticeCavity tank = new LatticeCavity(10, 10, 10, new Vec3(H, H, H)).tank();
        assertEquals(
                List.of("ceiling, aft corner at the right wall (30 mm fore-aft x 30 mm across)"),
                where(tank, (part, n, p) -> part.equals("ceiling") && p.x() > 0.07 && p.y() > 0.07));
        assertTrue(where(tank, (part, n, p) -> part.equals("right wall") && p.z() < 0.03)
                .get(0)
                .startsWith("right wall, along the floor from the forward wall to the aft wall"));
    }

    @Test
    void regionOverACornerSaysWhereItRunsOn() {
        String words = where(
                        box(),
                        (part, n, p) ->
                                (part.equals("front spar") && p.z() > 0.08 || part.equals("upper skin") && p.x() < 0.05)
                                        && p.y() < 0.1)
                .get(0);
        assertEquals(
                "upper skin, bay 1, along the front spar from rib 1 to rib 2 (50 mm fore-aft x 100 mm across)"
                        + "; runs on to the front spar",
                words);
    }

    @Test
    void wholeSurfaceAndPatchesAreToldApart() {
        assertTrue(where(box(), (part, n, p) -> part.equals("upper skin") && p.y() < 0.1)
                .get(0)
                .startsWith("upper skin, bay 1, whole surface"));
        String ring = where(
                        box(),
                        (part, n, p) -> part.equals("upper skin")
                                && p.y() < 0.1
                                && (p.x() < 0.02 || p.x() > 0.18 || p.y() < 0.02))
                .get(0);
        assertTrue(ring.startsWith("upper skin, bay 1, in patches from end to end"), ring);
    }

    @Test
    void smallSpotsAreGatheredAndTheirAreaIsKept() {
        LatticeCavity.Built b = box().build();
        SurfelSet s = b.grid().surfels();
        double[] film = new double[s.count()];
        double bare = 0;
        for (int i = 0; i < film.length; i++) {
            boolean spot = i % 97 == 0;
            film[i] = spot ? 0 : 5e-6;
            bare += spot ? s.areaM2()[i] : 0;
        }
        List<UnreachedRegion> regions = CoverageAssessor.assess(b.cavity(), b.grid(), film, TargetSpec.DEFAULT)
                .unreached();
        assertEquals(1, regions.size());
        assertTrue(
                regions.get(0).where().startsWith("scattered small spots in "),
                regions.get(0).where());
        assertEquals(bare, regions.get(0).areaM2(), 1e-15);
    }

    @Test
    void baysAreListedTheShortWay() {
        assertEquals("bay 2", BayNames.join(List.of("bay 2")));
        assertEquals("bays 1 and 2", BayNames.join(List.of("bay 2", "bay 1")));
        assertEquals("bays 1 to 4", BayNames.join(List.of("bay 1", "bay 2", "bay 3", "bay 4")));
        assertEquals("bays 1, 3 and 4", BayNames.join(List.of("bay 1", "bay 3", "bay 4")));
        assertEquals("nose and tail", BayNames.join(List.of("nose", "tail")));
    }
}
