package baymist.verify;

import baymist.coverage.Coverage;
import baymist.coverage.Fractions;
import baymist.coverage.UnreachedRegion;
import baymist.run.RunResult;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;

/** Shares of area at the end of a run: of the whole, or of one {@code part}. */
final class CoverageReadings {
    private CoverageReadings() {}

    static Map<String, ToDoubleBiFunction<RunResult, Inputs>> all() {
        Map<String, ToDoubleBiFunction<RunResult, Inputs>> all = new TreeMap<>();
        all.put("reachedShare", (r, in) -> fractions(r, in).reached());
        all.put("protectedShare", (r, in) -> fractions(r, in).protectedShare());
        all.put("thinShare", (r, in) -> fractions(r, in).thin());
        all.put("excessShare", (r, in) -> fractions(r, in).excess());
        all.put("meanFilm", (r, in) -> fractions(r, in).meanFilmM());
        all.put("judgedArea", (r, in) -> fractions(r, in).areaM2());
        all.put("facingShare", (r, in) -> facingShare(r.coverage(), in));
        all.put("unreachedArea", (r, in) -> unreachedArea(r.coverage()));
        all.put("unreachedRegions", (r, in) -> r.coverage().unreached().size());
        all.put(
                "unreachedCentroid",
                (r, in) -> r.coverage().unreached().get(0).centroidM().dot(in.vector("along")));
        return all;
    }

    private static Fractions fractions(RunResult r, Inputs in) {
        return in.has("part")
                ? named(r.coverage().byPart(), in.word("part"))
                : r.coverage().total();
    }

    private static Fractions named(List<Fractions> list, String name) {
        return list.stream()
                .filter(f -> f.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("\"" + name + "\" is not one of "
                        + list.stream().map(Fractions::name).toList()));
    }

    private static double facingShare(Coverage c, Inputs in) {
        return named(c.byFacing(), in.word("facing")).areaM2() / c.total().areaM2();
    }

    private static double unreachedArea(Coverage c) {
        return c.unreached().stream().mapToDouble(UnreachedRegion::areaM2).sum();
    }
}
