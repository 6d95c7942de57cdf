package baymist.access;

import baymist.geom.RodClearance.Contact;
import baymist.geom.Vec3;
import baymist.scene.Obstacle;
import baymist.scene.WandAim;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Where a straight rigid wand gets to through an entry: over all offsets and tilts that the hole allows, through whatever holes lie
 * beyond. Complete to the stated resolution, see {@link RigidSearch}; every line it returns has been tried exactly
 * ({@link LineProbe}).
 */
public final class RigidReach implements ReachSearch {
    /** Share of the budget that goes into spreading lines before the search for the best one. */
    private static final int SPREAD_SHARE = 4;

    /** How far a line for the aim "central" may end short of the deepest one, m. */
    private static final double SHORT_OF_DEEPEST_M = 0.010;

    /** Rooms that differ by less are alike, m. */
    private static final double ROOM_TOLERANCE_M = 0.0005;

    /**
     * A line chosen for an aim.
     *
     * @param resolutionM as in {@link WandReach#resolutionM}
     * @param linesTried how many lines were tried for it
     */
    public record Choice(Insertion insertion, WandStop stop, double resolutionM, int linesTried) {}

    @Override
    public WandReach search(ReachProblem p) {
        refuseOthers(p);
        p.axis();
        String shut = p.shut();
        if (shut != null) {
            return WandReach.none(p, keptOut(p, shut, 0));
        }
        RigidSearch search = begin(p);
        RigidSearch.Find find = search.best(LineGoals.deepest(p.settings().resolutionM()));
        if (!find.line().passes()) {
            double lacks = roomiest(search.probe()).clearanceM();
            return WandReach.none(p, keptOut(p, whyOut(p, find.line(), lacks), lacks));
        }
        return new WandReach(
                p.entry().name(),
                p.wand().name(),
                true,
                0,
                find.line().depthM(),
                stop(p, find.line()),
                tips(p, search, find.line()),
                find.resolutionM(),
                find.resolutionM() <= p.settings().resolutionM());
    }

    /**
     * The best line for an aim.
     *
     * @param depthM depth that the pass wants, m; infinite = as deep as it goes
     */
    public Choice best(ReachProblem p, WandAim aim, double depthM) {
        refuseOthers(p);
        Vec3 stated = p.axis();
        String shut = p.shut();
        int index = p.openingIndex();
        if (shut != null) {
            return new Choice(
                    AccessFinder.refused(p, index, p.opening().place().centreM(), stated, shut, 0),
                    keptOut(p, shut, 0),
                    p.settings().resolutionM(),
                    0);
        }
        RigidSearch search = begin(p);
        RigidSearch.Find find = choose(p, search, aim, depthM);
        RodLine line = find.line();
        if (!line.passes()) {
            double lacks = roomiest(search.probe()).clearanceM();
            String why = whyOut(p, line, lacks);
            return new Choice(
                    AccessFinder.refused(p, index, line.originM(), stated, why, lacks),
                    keptOut(p, why, lacks),
                    find.resolutionM(),
                    search.tried());
        }
        WandStop stop = stop(p, line);
        double play = search.probe()
                .room()
                .clearanceM(line.u(), line.v(), line.tu(), line.tv(), p.wand().thickestM());
        return new Choice(
                AccessFinder.going(p, index, line.originM(), line.axis(), line.depthM(), stop.partName(), play)
                        .within(find.resolutionM()),
                stop,
                find.resolutionM(),
                search.tried());
    }

    private static RigidSearch.Find choose(ReachProblem p, RigidSearch search, WandAim aim, double depthM) {
        double fine = p.settings().resolutionM();
        if (aim instanceof WandAim.Near near) {
            return search.best(LineGoals.near(near.region(), fine));
        }
        RigidSearch.Find deepest = search.best(LineGoals.deepest(fine));
        if (aim instanceof WandAim.Deepest || !deepest.line().passes()) {
            return deepest;
        }
        double wanted = Math.min(depthM, deepest.line().depthM() - SHORT_OF_DEEPEST_M);
        return search.best(LineGoals.central(search.probe(), Math.max(0, wanted), ROOM_TOLERANCE_M));
    }

    private static RigidSearch begin(ReachProblem p) {
        RigidSearch search = new RigidSearch(p);
        Vec3 axis = p.axis();
        Vec3 normal = p.opening().place().normal();
        double tu = axis.dot(p.opening().place().uAxis()) / axis.dot(normal);
        double tv = axis.dot(p.opening().place().vAxis()) / axis.dot(normal);
        HoleFit fit = HoleFit.of(search.probe().room(), tu, tv, p.wand().thickestM());
        search.attempt(fit.u(), fit.v(), tu, tv);
        search.spread(Math.max(1, p.settings().budget() / SPREAD_SHARE));
        return search;
    }

    private static HoleFit roomiest(LineProbe probe) {
        return HoleFit.of(probe.room(), 0, 0, probe.rodM());
    }

    private static void refuseOthers(ReachProblem p) {
        if (p.wand().kind() != WandSpec.Kind.STRAIGHT) {
            throw new IllegalArgumentException("'" + p.wand().name() + "' is no straight rigid wand");
        }
    }

    /** Why no line goes in, told by the middle one. */
    private static String whyOut(ReachProblem p, RodLine line, double lacksM) {
        Obstacle kept = line.kept();
        if (kept != null) {
            return "'" + kept.name() + "' outside leaves no room to feed the wand in";
        }
        if (lacksM >= 0 && line.contact() != null) {
            return "'" + p.surroundings().name(line.contact().triangle()) + "' stands right behind '"
                    + p.opening().name() + "'";
        }
        return String.format(
                Locale.ROOT,
                "'%s' is too small: a rod of %.3f mm lacks %.3f mm across",
                p.opening().name(),
                1e3 * p.wand().thickestM(),
                Math.max(0, -2e3 * lacksM));
    }

    private static WandStop keptOut(ReachProblem p, String why, double clearanceM) {
        String part = p.cavity().parts().get(p.opening().part()).name();
        return new WandStop(part, p.opening().place().centreM(), clearanceM, why);
    }

    /** What ends a line, in words. */
    static WandStop stop(ReachProblem p, RodLine line) {
        Contact contact = line.contact();
        Vec3 tip = line.originM().plus(line.depthM(), line.axis());
        String who = line.coupling() ? "a coupling" : "the nose";
        if (contact != null) {
            String name = p.surroundings().name(contact.triangle());
            return new WandStop(name, contact.placeM(), 0, who + " meets " + name);
        }
        Obstacle kept = line.kept();
        if (kept != null) {
            String why = "'" + kept.name() + "' outside leaves no room to feed in more";
            return new WandStop(kept.name(), line.originM(), 0, why);
        }
        if (line.exit() >= 0) {
            String port = p.cavity().openings().get(line.exit()).name();
            return new WandStop("open opening '" + port + "'", tip, 0, "the nose comes out of '" + port + "'");
        }
        if (line.coupling()) {
            String part = p.cavity().parts().get(p.opening().part()).name();
            return new WandStop(
                    part,
                    line.originM(),
                    0,
                    "a coupling does not pass '" + p.opening().name() + "'");
        }
        return new WandStop(AccessFinder.WAND_LENGTH, tip, 0, "the whole wand is in");
    }

    /** The deepest line and others whose tips end elsewhere: at most one to a cell of a lattice that is refined until enough are found. */
    private static List<WandPose> tips(ReachProblem p, RigidSearch search, RodLine deepest) {
        List<RodLine> sorted = new ArrayList<>(search.lines());
        sorted.sort(Comparator.comparingDouble((RodLine l) -> -l.depthM()));
        int most = p.settings().tips();
        List<RodLine> chosen = List.of(deepest);
        for (double cell = 0.256; cell >= p.settings().resolutionM(); cell /= 2) {
            List<RodLine> finer = onePerCell(sorted, deepest, cell);
            if (finer.size() > most) {
                break;
            }
            chosen = finer;
        }
        double radius = 0.5 * p.wand().thickestM();
        return chosen.stream().map(l -> l.pose(radius)).toList();
    }

    private record Place(long x, long y, long z) {}

    private static List<RodLine> onePerCell(List<RodLine> lines, RodLine first, double cellM) {
        List<RodLine> chosen = new ArrayList<>();
        Set<Place> taken = new HashSet<>();
        chosen.add(first);
        taken.add(place(first, cellM));
        for (RodLine line : lines) {
            if (line.depthM() > 0 && taken.add(place(line, cellM))) {
                chosen.add(line);
            }
        }
        return chosen;
    }

    private static Place place(RodLine line, double cellM) {
        Vec3 tip = line.originM().plus(line.depthM(), line.axis());
        return new Place((long) Math.floor(tip.x() / cellM), (long) Math.floor(tip.y() / cellM), (long)
                Math.floor(tip.z() / cellM));
    }
}
