package baymist.size;

import baymist.access.AccessFinder;
import baymist.access.SagResult;
import baymist.access.Surroundings;
import baymist.access.TubeSection;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.study.StudyResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** One design on its way through the study: what cuts it before any run, its search over lengths, and what came out. */
final class Sweep {
    private final Scene scene;
    private final Surroundings around;
    private final Design design;
    private final SizeRequest request;
    private final @Nullable Way way;
    /** Why no run is made, or null. */
    private final @Nullable String cut;
    /** What keeps the design from being longer, in words; empty where nothing but the way in does. */
    private final String limit;

    private final @Nullable LengthSearch search;
    private final int most;
    private @Nullable DesignResult result;

    private Sweep(
            Scene scene,
            Surroundings around,
            Design design,
            SizeRequest request,
            @Nullable Way way,
            @Nullable String cut,
            String limit,
            int least,
            int most) {
        this.scene = scene;
        this.around = around;
        this.design = design;
        this.request = request;
        this.way = way;
        this.cut = cut;
        this.limit = limit;
        this.most = most;
        this.search = cut == null ? new LengthSearch(least, most, request) : null;
    }

    static Sweep begin(Scene scene, Surroundings around, Design design, SizeRequest request) {
        String unmakeable = design.unmakeable();
        if (unmakeable != null) {
            return new Sweep(scene, around, design, request, null, unmakeable, "", 0, 0);
        }
        Way way = Way.of(scene, around, design, request);
        if (way.refusal() != null) {
            return new Sweep(scene, around, design, request, way, way.refusal(), "", 0, 0);
        }
        int least = 1;
        while (least < way.depthM().length && !(way.depthM()[least - 1] > 0)) {
            least++;
        }
        if (!(way.depthM()[least - 1] > design.leastDepthM())) {
            String why = "it goes in only " + mm(way.depthM()[way.depthM().length - 1]) + ", where " + way.endedBy()
                    + " ends it";
            return new Sweep(scene, around, design, request, way, why, "", 0, 0);
        }
        int most = way.depthM().length;
        String limit = "";
        for (; most >= least; most--) {
            String why = unfit(scene, around, design, way, most, request);
            if (why == null) {
                break;
            }
            limit = why;
        }
        return most < least
                ? new Sweep(scene, around, design, request, way, limit, "", 0, 0)
                : new Sweep(scene, around, design, request, way, null, limit, least, most);
    }

    /** Why a wand of this length can't do it whatever it reaches, or null. */
    private static @Nullable String unfit(
            Scene scene, Surroundings around, Design design, Way way, int marks, SizeRequest request) {
        double length = marks * request.markM();
        try {
            Bore bore = Bore.of(scene, design.wand(length));
            if (!bore.carries()) {
                return String.format(
                        Locale.ROOT,
                        "at %s its %s mm bore alone would take %.0f kPa of the %.0f kPa that drive the liquid",
                        mm(length),
                        Tube.mm(design.tube().boreM()),
                        1e-3 * bore.liquidLossPa(),
                        1e-3 * bore.supplyPa());
            }
        } catch (IllegalArgumentException e) {
            return "with its bore " + e.getMessage();
        }
        SagResult sag = way.sag(scene, around, design, way.depthM()[marks - 1]);
        return sag != null && sag.yields()
                ? String.format(
                        Locale.ROOT,
                        "at %s its own weight would bend it for good (%.0f of %.0f MPa)",
                        mm(length),
                        1e-6 * sag.stressPa(),
                        1e-6 * sag.yieldPa())
                : null;
    }

    List<Integer> wanted() {
        return search == null ? List.of() : search.wanted();
    }

    Scene job(int marks) {
        return Trial.job(scene, design, marks * request.markM());
    }

    void learn(int marks, StudyResult r) {
        if (search != null) {
            search.learn(marks, r);
            result = null;
        }
    }

    /** Longest length that is worth a run, marks. */
    int most() {
        return most;
    }

    DesignResult result() {
        DesignResult known = result;
        if (known == null) {
            known = make();
            result = known;
        }
        return known;
    }

    private DesignResult make() {
        Way w = way;
        double deepest = 0;
        if (w != null) {
            for (double d : w.depthM()) {
                deepest = Math.max(deepest, d);
            }
        }
        String by = w == null ? "" : w.endedBy();
        double hole = w == null ? design.thickestM() : w.holeM();
        if (search == null || cut != null) {
            return new DesignResult(design, deepest, by, hole, List.of(), null, String.valueOf(cut), true);
        }
        List<Candidate> sweep = new ArrayList<>();
        Candidate shortest = null;
        Integer first = search.shortest();
        for (int k : search.lengths()) {
            Candidate c = candidate(k);
            sweep.add(c);
            shortest = first != null && k == first ? c : shortest;
        }
        return new DesignResult(design, deepest, by, hole, sweep, shortest, verdict(sweep, shortest), false);
    }

    Candidate candidate(int marks) {
        Way w = java.util.Objects.requireNonNull(way);
        LengthSearch s = java.util.Objects.requireNonNull(search);
        int stop = s.bestStop(marks);
        double length = marks * request.markM();
        double stopM = w.depthM()[stop - 1];
        WandSpec wand = design.wand(length);
        SagResult sag = w.sag(scene, around, design, stopM);
        TubeSection empty = TubeSection.of(wand, 0);
        TubeSection full = TubeSection.of(wand, scene.product().densityKgPerM3());
        StudyResult at = s.result(stop);
        return new Candidate(
                design,
                marks,
                length,
                w.depthM()[marks - 1],
                stopM,
                at,
                sag == null ? Double.NaN : sag.dropM(),
                w.holeM(),
                Bore.of(scene, wand),
                empty.massKgPerM() * length,
                full.massKgPerM() * length,
                LengthSearch.score(at, request) >= 1);
    }

    private String verdict(List<Candidate> sweep, @Nullable Candidate shortest) {
        if (shortest != null) {
            return "meets the goal from " + mm(shortest.lengthM()) + " on";
        }
        LengthSearch s = java.util.Objects.requireNonNull(search);
        Candidate last = sweep.get(sweep.size() - 1);
        if (!last.at().done()) {
            return "its job can't be done: " + last.at().refused();
        }
        Candidate best = last;
        for (Candidate c : sweep) {
            best = c.at().reached() > best.at().reached() ? c : best;
        }
        StringBuilder why = new StringBuilder(String.format(
                Locale.ROOT, "reaches %.1f %% at most, %s deep", 100 * best.at().reached(), mm(best.stopM())));
        Way w = java.util.Objects.requireNonNull(way);
        if (!limit.isEmpty()) {
            why.append("; ").append(limit);
        } else if (!w.endedBy().equals(AccessFinder.WAND_LENGTH)) {
            why.append(", ended by ").append(w.endedBy());
        }
        if (!best.at().bare().isEmpty()) {
            why.append("; bare: ").append(best.at().bare().get(0).where());
        }
        return why + (s.hopeless() ? " (given up after its deepest run)" : "");
    }

    static String mm(double m) {
        return Tube.mm(m) + " mm";
    }
}
