package baymist.explain;

import baymist.access.AccessFinder;
import baymist.access.Insertion;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.run.ReachLine;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.WandAim;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Changes that bring jets to the region: pin, place, wand, entry, new hole. */
final class JetTrials {
    /** A guess below this fill is not worth a run. */
    private static final double WORTH = 0.05;
    /** Time to stand at a place, s. */
    private static final double STAND_S = 5;
    /** Time of a draw-back that is added, s. */
    private static final double STROKE_S = 15;
    /** Depth at which an added pass ends, m. */
    private static final double END_M = 0.03;

    private final Situation at;

    JetTrials(Situation at) {
        this.at = at;
    }

    List<Trial> all() {
        List<Trial> trials = new ArrayList<>();
        turns(trials);
        moves(trials);
        otherWand(trials);
        longerWand(trials);
        otherEntries(trials);
        drill(trials);
        return trials;
    }

    private void turns(List<Trial> trials) {
        double[] clocks = at.sight().clocks();
        List<PassSpec> passes = at.base().scene().passes();
        int best = -1;
        int turning = 0;
        for (int p = 0; p < clocks.length; p++) {
            if (!Double.isNaN(clocks[p])) {
                turning++;
                best = best < 0 || at.sight().clockGain()[p] > at.sight().clockGain()[best] ? p : best;
            }
        }
        if (best >= 0) {
            trials.add(turn(best, clocks[best]));
            trials.add(again(best, clocks[best]));
        } else {
            hookTurn(trials);
        }
        if (turning > 1) {
            List<String> lines = new ArrayList<>();
            for (int p = 0; p < clocks.length; p++) {
                if (!Double.isNaN(clocks[p])) {
                    lines.add("passes, '" + passes.get(p).name() + "': clock: " + Yaml.clock(clocks[p]));
                }
            }
            trials.add(new Trial(
                    ChangeKind.TURN_PIN,
                    "Turn the pin in " + turning + " passes to where the region lies",
                    lines,
                    d -> {
                        for (int p = 0; p < clocks.length; p++) {
                            if (!Double.isNaN(clocks[p])) {
                                PassEdit.of(d.passes.get(p)).clock(clocks[p]).into(d, p);
                            }
                        }
                    }));
        }
    }

    /** A hook moves when it is turned: the opposite side is worth a run of its own. */
    private void hookTurn(List<Trial> trials) {
        for (int p : at.passesByNearness()) {
            PassSpec pass = at.base().scene().passes().get(p);
            if (at.wand(pass).kind() == WandSpec.Kind.BENT) {
                trials.add(turn(p, (pass.clockRad() + Math.PI) % (2 * Math.PI)));
                return;
            }
        }
    }

    private Trial turn(int p, double clock) {
        PassSpec pass = at.base().scene().passes().get(p);
        return new Trial(
                ChangeKind.TURN_PIN,
                "Turn the pin to " + Words.clock(clock) + " in pass '" + pass.name() + "' instead of "
                        + Words.clock(pass.clockRad()),
                List.of("passes, '" + pass.name() + "': clock: " + Yaml.clock(clock)),
                d -> PassEdit.of(d.passes.get(p)).clock(clock).into(d, p));
    }

    /** The same pass once more with another pin: what it reached as it was stays reached. */
    private Trial again(int p, double clock) {
        PassSpec pass = at.base().scene().passes().get(p);
        PassSpec more = PassEdit.of(pass)
                .named(name(pass.name() + " again"))
                .clock(clock)
                .pass();
        return new Trial(
                ChangeKind.TURN_PIN,
                "Make pass '" + pass.name() + "' a second time with the pin at " + Words.clock(clock),
                List.of("passes: add " + PassEdit.yaml(more)),
                d -> d.passes.add(more));
    }

    private void moves(List<Trial> trials) {
        for (int p : at.passesByNearness()) {
            PassSpec pass = at.base().scene().passes().get(p);
            Insertion in = at.insertion(pass);
            if (in == null) {
                continue;
            }
            WandSpec wand = at.wand(pass);
            if (pass.fromDepthM() < in.maxDepthM() - 0.02 || pass.toDepthM() > 0.06) {
                double to = Math.min(END_M, pass.toDepthM());
                double speed = pass.drawBackMPerS() > 0 ? pass.drawBackMPerS() : in.maxDepthM() / STROKE_S;
                trials.add(new Trial(
                        ChangeKind.MOVE,
                        "Start pass '" + pass.name() + "' as deep as the wand goes (" + Words.length(in.maxDepthM())
                                + ") and stop only at " + Words.length(to),
                        List.of("passes, '" + pass.name() + "': from: deepest, to: " + Yaml.length(to)
                                + (pass.drawBackMPerS() > 0 ? "" : ", draw_back: " + Yaml.length(speed) + "/s")),
                        d -> PassEdit.of(d.passes.get(p))
                                .stroke(Double.POSITIVE_INFINITY, to, speed)
                                .into(d, p)));
            }
            JetGuess.Stand stand = at.guess().best(wand, in, STAND_S);
            if (stand.fill() > WORTH) {
                trials.add(stand(pass, stand));
            }
            return;
        }
    }

    private Trial stand(PassSpec pass, JetGuess.Stand s) {
        boolean turns = JetGuess.clocks(at.wand(pass)).length > 1;
        PassSpec more = new PassSpec(
                name("stand"),
                pass.entry(),
                pass.wand(),
                s.depthM(),
                s.depthM(),
                0,
                s.clockRad(),
                s.holdS(),
                0,
                pass.aim(),
                pass.sag(),
                Situation.place());
        return new Trial(
                ChangeKind.MOVE,
                "Stand for " + Words.time(s.holdS()) + " more at a depth of " + Words.length(s.depthM()) + " by '"
                        + pass.entry() + "'" + (turns ? ", pin at " + Words.clock(s.clockRad()) : ""),
                List.of("passes: add " + PassEdit.yaml(more)),
                d -> d.passes.add(more));
    }

    private String name(String wanted) {
        String name = wanted;
        for (int i = 2; hasPass(name); i++) {
            name = wanted + " " + i;
        }
        return name;
    }

    private boolean hasPass(String name) {
        return at.base().scene().passes().stream().anyMatch(p -> p.name().equals(name));
    }

    private void otherWand(List<Trial> trials) {
        for (int p : at.passesByNearness()) {
            PassSpec pass = at.base().scene().passes().get(p);
            Situation.Way best = null;
            for (WandSpec w : at.wands()) {
                if (w.name().equals(pass.wand()) || w.kind() != WandSpec.Kind.STRAIGHT) {
                    continue;
                }
                Insertion in = at.way(at.entry(pass), w, null);
                if (in == null) {
                    continue;
                }
                double from = Math.min(pass.fromDepthM(), in.maxDepthM());
                double to = Math.min(pass.toDepthM(), from);
                JetGuess.Stand s = from > to
                        ? at.guess().drawn(w, in, from, to, pass.drawBackMPerS())
                        : at.guess().best(w, in, pass.holdS());
                if (s.fill() > WORTH && (best == null || s.fill() > best.stand().fill() + 1e-9)) {
                    best = new Situation.Way(at.entry(pass), w, in, s);
                }
            }
            if (best != null) {
                WandSpec w = best.wand();
                double clock = best.stand().clockRad();
                boolean turns = JetGuess.clocks(w).length > 1;
                trials.add(new Trial(
                        ChangeKind.OTHER_WAND,
                        "Take the wand '" + w.name() + "' in pass '" + pass.name() + "'"
                                + (turns ? ", pin at " + Words.clock(clock) : ""),
                        List.of(
                                "wands: add the file of '" + w.name() + "'",
                                "passes, '" + pass.name() + "': wand: " + w.name() + ", clock: " + Yaml.clock(clock)),
                        d -> {
                            d.wands.put(w.name(), w);
                            PassEdit.of(d.passes.get(p))
                                    .wand(w.name())
                                    .clock(clock)
                                    .into(d, p);
                        }));
            }
            return;
        }
    }

    /** A wand that ends because it is no longer: what it lacks to get past the region. */
    private void longerWand(List<Trial> trials) {
        for (int p : at.passesByNearness()) {
            PassSpec pass = at.base().scene().passes().get(p);
            Insertion in = at.insertion(pass);
            WandSpec wand = at.wand(pass);
            if (in == null || !in.stoppedBy().equals(AccessFinder.WAND_LENGTH) || wand.kind() == WandSpec.Kind.BENT) {
                continue;
            }
            Vec3 tip = in.path().tipM(in.maxDepthM());
            Vec3 axis = in.path().tipAxis(in.maxDepthM());
            double ahead = 0;
            for (int s : at.patch().sample(SightFacts.POINTS)) {
                ahead = Math.max(ahead, at.patch().point(s).minus(tip).dot(axis));
            }
            if (ahead < 0.02) {
                continue;
            }
            double more = Math.ceil(ahead / 0.05) * 0.05;
            WandSpec longer = lengthened(wand, more);
            trials.add(new Trial(
                    ChangeKind.LONGER_WAND,
                    "Take a wand like '" + wand.name() + "' but " + Words.length(more) + " longer ("
                            + Words.length(longer.lengthM()) + ") in pass '" + pass.name() + "', in as deep as it goes",
                    List.of(
                            "wands, '" + wand.name() + "': length: " + Yaml.length(longer.lengthM()),
                            "passes, '" + pass.name() + "': from: deepest"),
                    d -> {
                        d.wands.put(longer.name(), longer);
                        double speed = pass.drawBackMPerS() > 0 ? pass.drawBackMPerS() : in.maxDepthM() / STROKE_S;
                        PassEdit.of(d.passes.get(p))
                                .wand(longer.name())
                                .stroke(Double.POSITIVE_INFINITY, pass.toDepthM(), speed)
                                .into(d, p);
                    }));
            return;
        }
    }

    private static WandSpec lengthened(WandSpec w, double moreM) {
        List<WandPiece> pieces = new ArrayList<>(w.pieces());
        WandPiece first = pieces.get(0);
        if (first instanceof WandPiece.Straight s) {
            pieces.set(0, new WandPiece.Straight(s.lengthM() + moreM));
        } else {
            pieces.add(0, new WandPiece.Straight(moreM));
        }
        return new WandSpec(
                w.name() + ", longer",
                w.lengthM() + moreM,
                w.outerM(),
                w.boreM(),
                w.tip(),
                pieces,
                w.material(),
                w.flexibility(),
                w.couplings(),
                w.tipOuterM(),
                w.tipLengthM());
    }

    private void otherEntries(List<Trial> trials) {
        int[] points = at.patch().sample(SightFacts.POINTS);
        List<ReachLine> lines = at.reach().lines().stream()
                .filter(l -> l.reach().feasible() && !used(l))
                .sorted(Comparator.comparingDouble(l -> AccessFacts.nearest(l, at.patch(), points)))
                .limit(4)
                .toList();
        List<Situation.Way> ways = new ArrayList<>();
        for (ReachLine line : lines) {
            Box3 box = at.patch().box();
            WandAim aim = line.wand().kind() == WandSpec.Kind.STRAIGHT ? new WandAim.Near(box) : null;
            Insertion in = at.way(line.entry(), line.wand(), aim);
            if (in != null) {
                double to = Math.min(END_M, 0.5 * in.maxDepthM());
                JetGuess.Stand s =
                        at.guess().drawn(line.wand(), in, in.maxDepthM(), to, (in.maxDepthM() - to) / STROKE_S);
                ways.add(new Situation.Way(line.entry(), line.wand(), in, s));
            }
        }
        ways.stream()
                .filter(w -> w.stand().fill() > 0)
                .sorted(Comparator.comparingDouble(w -> -w.stand().fill()))
                .limit(2)
                .forEach(w -> trials.add(entry(w)));
    }

    private boolean used(ReachLine line) {
        return at.base().scene().passes().stream()
                .anyMatch(p -> p.wand().equals(line.wand().name())
                        && at.entry(p).opening().equals(line.entry().opening()));
    }

    private Trial entry(Situation.Way w) {
        Box3 box = at.patch().box();
        boolean aims = w.wand().kind() == WandSpec.Kind.STRAIGHT;
        double to = Math.min(END_M, 0.5 * w.insertion().maxDepthM());
        PassSpec pass = new PassSpec(
                name("by " + w.entry().name()),
                w.entry().name(),
                w.wand().name(),
                Double.POSITIVE_INFINITY,
                to,
                (w.insertion().maxDepthM() - to) / STROKE_S,
                w.stand().clockRad(),
                0,
                0,
                aims ? new WandAim.Near(box) : null,
                null,
                Situation.place());
        List<String> lines = new ArrayList<>();
        boolean known = at.base().scene().entries().contains(w.entry());
        PhaseStates states = statesOf(w.entry());
        if (states.pass() != OpeningState.OPEN) {
            lines.add("openings: '" + w.entry().opening() + "': {pass: open}");
        }
        if (!known) {
            lines.add("entries: add {name: " + w.entry().name() + ", opening: "
                    + w.entry().opening() + "}");
        }
        lines.add("passes: add " + PassEdit.yaml(pass));
        return new Trial(
                ChangeKind.OTHER_ENTRY,
                "Go in by '" + w.entry().opening() + "' as well with the wand '"
                        + w.wand().name() + "', " + Words.length(w.insertion().maxDepthM()) + " deep, and draw it back",
                lines,
                d -> {
                    if (!known) {
                        d.entries.add(w.entry());
                    }
                    d.states.put(
                            w.entry().opening(), new PhaseStates(OpeningState.OPEN, states.hang(), states.after()));
                    d.wands.putIfAbsent(w.wand().name(), w.wand());
                    d.passes.add(0, pass);
                });
    }

    private PhaseStates statesOf(EntrySpec entry) {
        int o = at.base().cavity().openingIndex(entry.opening());
        return at.base().cavity().openings().get(o).states();
    }

    private void drill(List<Trial> trials) {
        Holes.@Nullable Entry hole = new Holes(at).entry(STAND_S);
        if (hole == null || hole.stand().fill() < WORTH) {
            return;
        }
        JetGuess.Stand s = hole.stand();
        double radius = hole.cut().outline().reachM();
        EntrySpec entry = new EntrySpec("new hole", hole.cut().name(), null, Situation.place());
        PassSpec pass = new PassSpec(
                name("by the new hole"),
                entry.name(),
                hole.wand().name(),
                s.depthM(),
                s.depthM(),
                0,
                s.clockRad(),
                s.holdS(),
                0,
                Situation.place());
        boolean turns = JetGuess.clocks(hole.wand()).length > 1;
        trials.add(new Trial(
                ChangeKind.DRILL_ENTRY,
                Words.say(
                        "Drill a hole of %.1f mm in the %s at %s and stand there for %s with the wand '%s', %s deep%s",
                        2e3 * radius,
                        hole.cut().part(),
                        Yaml.point(hole.cut().centreM()),
                        Words.time(s.holdS()),
                        hole.wand().name(),
                        Words.length(s.depthM()),
                        turns ? ", pin at " + Words.clock(s.clockRad()) : ""),
                List.of(
                        HoleTrials.yaml(hole.cut()),
                        "entries: add {name: new hole, opening: new hole}",
                        "passes: add " + PassEdit.yaml(pass)),
                d -> {
                    d.cuts.add(hole.cut());
                    d.entries.add(entry);
                    d.wands.putIfAbsent(hole.wand().name(), hole.wand());
                    d.passes.add(0, pass);
                }));
    }
}
