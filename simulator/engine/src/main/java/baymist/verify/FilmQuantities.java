package baymist.verify;

import baymist.film.FilmFormulas;
import baymist.units.Dimension;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Thin liquid films. */
final class FilmQuantities {
    private FilmQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put(
                "drainedThickness",
                in -> FilmFormulas.jeffreysM(film(in), below(in), in.timeS("time"), nu(in), in.gravityMPerS2()));
        all.put("drainingOnset", in -> FilmFormulas.jeffreysOnsetS(film(in), below(in), nu(in), in.gravityMPerS2()));
        all.put("drainedMeanOverLocal", FilmQuantities::meanOverLocal);
        all.put("filmFlux", in -> FilmFormulas.nusseltFluxM2PerS(film(in), nu(in), in.gravityMPerS2()));
        all.put("filmMeanSpeed", in -> FilmFormulas.nusseltMeanSpeedMPerS(film(in), nu(in), in.gravityMPerS2()));
        all.put("filmSurfaceSpeed", in -> FilmFormulas.nusseltSurfaceSpeedMPerS(film(in), nu(in), in.gravityMPerS2()));
        all.put(
                "shearedSurfaceSpeed",
                in -> FilmFormulas.shearSurfaceSpeedMPerS(film(in), in.number("shearPa"), viscosity(in)));
        all.put("capillaryLength", in -> FilmFormulas.capillaryLengthM(tension(in), density(in), in.gravityMPerS2()));
        all.put("hangingDropSpacing", in -> FilmFormulas.fastestWaveM(tension(in), density(in), in.gravityMPerS2()));
        all.put(
                "hangingDropGrowthTime",
                in -> 1
                        / FilmFormulas.hangingGrowthPerS(
                                film(in), viscosity(in), tension(in), density(in), in.gravityMPerS2()));
        all.put(
                "seamCreep",
                in -> FilmFormulas.slotCreepM(in.lengthM("gap"), 0, in.timeS("time"), tension(in), viscosity(in)));
        all.put(
                "seamRise",
                in -> FilmFormulas.slotRiseM(in.lengthM("gap"), 0, tension(in), density(in), in.gravityMPerS2()));
        all.put(
                "dropSpread",
                in -> FilmFormulas.spreadRadiusM(
                        in.si("drop", Dimension.VOLUME), in.timeS("time"), nu(in), in.gravityMPerS2()));
        all.put("splatOverDrop", in -> FilmFormulas.splatRatio(in.si("contactAngle", Dimension.ANGLE)));
        all.put("productNeeded", in -> FilmFormulas.productKg(density(in), in.number("areaM2"), film(in)));
        all.put("notchGaugeStep", in -> FilmFormulas.notchGaugeStepM(film(in)));
        return all;
    }

    private static double film(Inputs in) {
        return in.lengthM("film");
    }

    private static double below(Inputs in) {
        return in.lengthM("below");
    }

    private static double density(Inputs in) {
        return in.si("density", Dimension.DENSITY);
    }

    private static double viscosity(Inputs in) {
        return in.si("viscosity", Dimension.DYNAMIC_VISCOSITY);
    }

    private static double nu(Inputs in) {
        return viscosity(in) / density(in);
    }

    private static double tension(Inputs in) {
        return in.si("tension", Dimension.SURFACE_TENSION);
    }

    private static double meanOverLocal(Inputs in) {
        double t = in.timeS("time");
        double mean = FilmFormulas.jeffreysMeanM(film(in), below(in), t, nu(in), in.gravityMPerS2());
        return mean / FilmFormulas.jeffreysM(film(in), below(in), t, nu(in), in.gravityMPerS2());
    }
}
