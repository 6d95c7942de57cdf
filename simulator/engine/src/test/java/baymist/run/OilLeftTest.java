package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.film.FilmRuns;
import baymist.film.FilmSettings;
import baymist.film.FilmState;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.HingeLine;
import baymist.scene.ProductSpec;
import baymist.scene.SceneFixtures;
import baymist.scene.VoxelSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Weight, centre and moment of oil in a box of 0.4 x 0.3 x 0.2 m against closed forms. */
class OilLeftTest {
    private static final double G = 9.80665;
    private static final ProductSpec OIL = new ProductSpec("oil", 880, 0.04, 0.03, 1, 293.15);
    private static final double H = 20e-6;
    private final VoxelGrid grid = grid();

    private static VoxelGrid grid() {
        Cavity cavity =
                CavityBuilder.build(SceneFixtures.block(new Vec3(0.4, 0.3, 0.2)), List.of(), Map.of(), List.of());
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(cavity, new VoxelSpec(0.02, 0.02, 0.02), workers);
        }
    }

    /** Film of one thickness on the surfels that look this way at least so squarely. */
    private FilmState film(Vec3 way) {
        SurfelSet q = grid.surfels();
        FilmState film = new FilmState(q, OIL);
        for (int s = 0; s < q.count(); s++) {
            double looks = q.normalX()[s] * way.x() + q.normalY()[s] * way.y() + q.normalZ()[s] * way.z();
            if (looks > 0.9) {
                film.addDirect(s, OIL.densityKgPerM3() * q.areaM2()[s] * H);
            }
        }
        return film;
    }

    @Test
    void anEvenFloorWeighsAreaTimesFilmAtItsMiddle() {
        List<Consequences.Oil> oil = OilLeft.of(grid, film(Vec3.Z), 50e-6);
        Consequences.Oil all = oil.get(oil.size() - 1);
        double mass = 880 * 0.4 * 0.3 * H;
        assertEquals(mass, all.massKg(), 1e-12);
        assertEquals(0, all.centreM().distance(new Vec3(0.2, 0.15, 0)), 1e-9);
        assertEquals(0, all.standingKg());
        assertEquals(H, all.deepestM(), 1e-15);
        assertEquals(
                all.massKg(),
                oil.subList(0, oil.size() - 1).stream()
                        .mapToDouble(Consequences.Oil::massKg)
                        .sum(),
                1e-15);
        // above a run limit of a quarter of the film, three quarters of it stand
        assertEquals(0.75 * mass, OilLeft.of(grid, film(Vec3.Z), H / 4).get(1).standingKg(), 1e-12);
    }

    @Test
    void aWeightAftOfTheHingeTurnsTheAftEdgeDown() {
        Consequences.Oil all = OilLeft.of(grid, film(Vec3.Z), 50e-6).get(1);
        double weight = all.massKg() * G;
        // weight times arm, the lever law (Archimedes, On the Equilibrium of Planes, I.6)
        HingeLine left = new HingeLine(new Vec3(0.05, 0, 0), new Vec3(0.05, 0.3, 0));
        Consequences.Hinge level = OilLeft.hinge(left, all, new Vec3(0, 0, -G));
        assertNotNull(level);
        assertEquals(0.15, level.armM(), 1e-9);
        assertEquals(weight * 0.15, level.momentNm(), 1e-12);
        // the same line told the other way round
        HingeLine right = new HingeLine(left.toM(), left.fromM());
        assertEquals(level, OilLeft.hinge(right, all, new Vec3(0, 0, -G)));
        // nose up by 60 degrees the arm is half as long; on its back it turns the other way; on its side not at all
        double s = Math.sin(Math.PI / 3);
        assertEquals(weight * 0.075, moment(left, all, new Vec3(G * s, 0, -G / 2)), 1e-12);
        assertEquals(-weight * 0.15, moment(left, all, new Vec3(0, 0, G)), 1e-12);
        assertEquals(0, moment(left, all, new Vec3(0, G, 0)), 1e-12);
        // a swept hinge: the arm is square to the line
        HingeLine swept = new HingeLine(new Vec3(0, 0, 0), new Vec3(0.3, 0.3, 0));
        assertEquals(weight * (0.2 - 0.15) / Math.sqrt(2), moment(swept, all, new Vec3(0, 0, -G)), 1e-12);
        assertNull(OilLeft.hinge(null, all, new Vec3(0, 0, -G)));
    }

    private static double moment(HingeLine line, Consequences.Oil oil, Vec3 gravity) {
        Consequences.Hinge h = OilLeft.hinge(line, oil, gravity);
        assertNotNull(h);
        return h.momentNm();
    }

    @Test
    void withItsDrainShutAllLooseOilStandsInTheLowCorner() {
        // a wall coated thickly drains towards its foot: mass stays, the centre sinks, oil stands where the wall ends
        FilmState film = film(new Vec3(1, 0, 0));
        double before = OilLeft.of(grid, film, 50e-6).get(1).massKg();
        SurfelSet q = grid.surfels();
        for (int s = 0; s < q.count(); s++) {
            if (q.normalX()[s] > 0.9) {
                film.addDirect(s, 880 * q.areaM2()[s] * 9 * H);
            }
        }
        // tilted nose down and left down: the low corner is at x = 0, y = 0, z = 0
        Vec3 gravity = new Vec3(-G * 0.3, -G * 0.3, -G * Math.sqrt(1 - 0.18));
        double residual = 5e-6;
        FilmRuns runs = new FilmRuns(grid, OIL, gravity, FilmSettings.of(OIL));
        for (int i = 0; i < 12; i++) {
            runs.advance(film, new double[0], 7200);
        }
        Consequences.Oil all = OilLeft.of(grid, film, 50e-6).get(1);
        assertEquals(10 * before, all.massKg(), 1e-9 * all.massKg());
        assertTrue(all.deepestAtM().length() < 0.03, "deepest at " + all.deepestAtM());
        double wall = 0.3 * 0.2;
        double stays = 880 * wall * residual;
        assertTrue(
                all.standingKg() > 0.6 * (all.massKg() - stays), "stands " + all.standingKg() + " of " + all.massKg());
        assertTrue(all.standingKg() < all.massKg() - stays * 0.9);
    }
}
