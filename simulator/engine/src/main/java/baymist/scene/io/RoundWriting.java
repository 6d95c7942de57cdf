package baymist.scene.io;

import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.scene.BodySpec;
import baymist.scene.InitialFog;
import baymist.scene.Scene;
import baymist.scene.TargetSpec;
import baymist.scene.Transport;
import baymist.scene.VoxelSpec;
import baymist.units.Air;
import baymist.units.Dimension;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writes what stands round a job: items, attitude, air, numerics. */
final class RoundWriting {
    private RoundWriting() {}

    static Object protectedItems(Scene scene) {
        return Written.list(scene.protectedItems(), i -> {
            Written.Group g = Written.group().put("name", i.name());
            BodySpec body = i.body();
            if (body == null) {
                g.put("part", i.part());
            } else {
                body(g, body);
            }
            return g.put("limit", Written.length(i.limitM()))
                    .put("mask", i.mask().name().toLowerCase(Locale.ROOT), i.masked())
                    .map();
        });
    }

    static Object obstacles(Scene scene) {
        return Written.list(scene.obstacles(), o -> {
            Written.Group g = Written.group().put("name", o.name());
            body(g, o.body());
            return g.map();
        });
    }

    static Object bays(Scene scene) {
        return Written.list(
                scene.bayLabels(),
                b -> Written.group()
                        .put("name", b.name())
                        .put("at", Written.point(b.atM()))
                        .map());
    }

    private static void body(Written.Group into, BodySpec body) {
        Written.Group g = Written.group();
        if (body instanceof BodySpec.Sphere s) {
            g.put("at", Written.point(s.centreM())).put("diameter", Written.length(2 * s.radiusM()));
            into.put("sphere", g.map());
        } else if (body instanceof BodySpec.Cylinder c) {
            g.put("from", Written.point(c.fromM()))
                    .put("to", Written.point(c.toM()))
                    .put("diameter", Written.length(2 * c.radiusM()));
            into.put("cylinder", g.map());
        } else if (body instanceof BodySpec.Cuboid c) {
            g.put("at", Written.point(c.centreM()))
                    .put("size", Written.point(c.sizeM()))
                    .put("rotate", turns(c.xAxis(), c.yAxis(), c.zAxis()));
            into.put("box", g.map());
        }
    }

    /**
     * Turns about x, y and z, in that order, that bring the axes here. With columns x, y, z of Rz Ry Rx: x = (cz cy, sz cy, -sy),
     * and the last
     * components of y and z are cy sx and cy cx.
     */
    private static List<Object> turns(Vec3 x, Vec3 y, Vec3 z) {
        double cosY = Math.hypot(x.x(), x.y());
        double aboutY = Math.atan2(-x.z(), cosY);
        boolean upright = cosY < 1e-9; // then only the sum of the two other turns counts
        double aboutZ = upright ? 0 : Math.atan2(x.y(), x.x());
        double aboutX = upright ? Math.atan2(-z.y(), y.y()) : Math.atan2(y.z(), z.z());
        return List.of(Written.angle(aboutX), Written.angle(aboutY), Written.angle(aboutZ));
    }

    static Object targets(TargetSpec t) {
        return Written.group()
                .put("haze", Written.length(t.hazeM()))
                .put("build", Written.length(t.buildM()))
                .put("excess", Written.length(t.excessM()))
                .map();
    }

    /** Roll and pitch from the unit vector, see {@link SceneAssembler#gravity}. */
    static Object gravity(Scene scene) {
        Vec3 g = scene.gravity();
        double pitch = Math.atan2(g.x(), Math.hypot(g.y(), g.z()));
        double roll = Math.atan2(g.y(), -g.z());
        return Written.group()
                .put("roll", Written.angle(roll))
                .put("pitch", Written.angle(pitch))
                .put("g", Written.of(scene.gravityMPerS2(), Dimension.ACCELERATION))
                .map();
    }

    static Object voxel(VoxelSpec v) {
        if (v.xM() == 0 && v.yM() == 0 && v.zM() == 0) {
            return "auto";
        }
        return v.xM() == v.yM() && v.yM() == v.zM()
                ? Written.length(v.xM())
                : List.of(Written.length(v.xM()), Written.length(v.yM()), Written.length(v.zM()));
    }

    static Object air(AirSpec a) {
        String mode = a.mode().name().toLowerCase(Locale.ROOT);
        if (a.equals(AirSpec.DEFAULT.withMode(a.mode(), 0))) {
            return mode;
        }
        double quiet = a.quietDiffusivityM2PerS();
        double spray = a.sprayDiffusivityM2PerS();
        return Written.group()
                .put("mode", mode)
                .put("block", a.blockCells(), a.blockCells() > 0)
                .put("quiet_diffusivity", Written.of(quiet, Dimension.DIFFUSIVITY), quiet >= 0)
                .put("spray_diffusivity", Written.of(spray, Dimension.DIFFUSIVITY), spray >= 0)
                .put("pressure_limit", Written.of(a.pressureLimitPa(), Dimension.PRESSURE))
                .map();
    }

    static Object ambient(Air a) {
        return Written.group()
                .put("temperature", Written.of(a.temperatureK(), Dimension.TEMPERATURE))
                .put("pressure", Written.of(a.pressurePa() - Air.STANDARD.pressurePa(), Dimension.PRESSURE))
                .put("density", Written.of(a.densityKgPerM3(), Dimension.DENSITY))
                .put("viscosity", Written.of(a.viscosityPaS(), Dimension.DYNAMIC_VISCOSITY))
                .put("mean_free_path", Written.length(a.meanFreePathM()))
                .map();
    }

    static @Nullable Object fog(@Nullable InitialFog f) {
        if (f == null) {
            return null;
        }
        Vec3 point = f.pointM();
        return point == null
                ? Map.of("concentration", Written.of(f.concentrationKgPerM3(), Dimension.CONCENTRATION))
                : Written.group()
                        .put("point", Written.point(point))
                        .put("mass", Written.of(f.pointMassKg(), Dimension.MASS))
                        .map();
    }

    static Object numerics(Scene s) {
        return Written.group()
                .put("size_bins", s.sizeBins())
                .put("rays_per_jet", s.raysPerJet())
                .put("station_spacing", Written.length(s.stationSpacingM()), s.stationSpacingM() > 0)
                .put("fog", s.transport().name().toLowerCase(java.util.Locale.ROOT), s.transport() != Transport.AUTO)
                .put("ray_seed", s.raySeed(), s.raySeed() != 0)
                .map();
    }
}
