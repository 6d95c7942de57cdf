package baymist.explain;

import baymist.access.Insertion;
import baymist.run.RunResult;
import java.util.ArrayList;
import java.util.List;

/** Puts what was found into a tree: could the tip get near, did jets see it, did drops and fog arrive, was there enough. */
final class FactTree {
    private FactTree() {}

    static List<Fact> of(Situation at) {
        List<Fact> ways = new ArrayList<>();
        for (Insertion in : at.base().insertions()) {
            add(
                    ways,
                    Fact.of(
                            "way",
                            Words.say(
                                    "'%s' by '%s' goes in %s, where %s.",
                                    in.wand(),
                                    in.entry(),
                                    Words.length(in.maxDepthM()),
                                    in.stoppedBy().equals(baymist.access.AccessFinder.WAND_LENGTH)
                                            ? "its length ends"
                                            : Words.the(in.stoppedBy()) + " stops it"),
                            Fact.Numbers.of("depthM", in.maxDepthM())));
        }
        return List.of(
                at.access().fact(ways),
                sight(at),
                drops(at),
                at.fog().arrived(),
                at.fog().stick(),
                at.supply().supply(at.fog().endShare()),
                at.supply().openings(at.fog().masked()));
    }

    /** Two passes by one way are told once. */
    private static void add(List<Fact> facts, Fact fact) {
        if (facts.stream().noneMatch(f -> f.says().equals(fact.says()))) {
            facts.add(fact);
        }
    }

    private static Fact sight(Situation at) {
        SightFacts s = at.sight();
        RunResult base = at.base();
        List<Fact> more = new ArrayList<>();
        if (s.seen() < 0.995 && !s.shade().isEmpty()) {
            more.add(Fact.of(
                    "shade",
                    s.facesAway()
                            ? Words.say(
                                    "For %s of what is not in view the nearest place of the tip lies behind its own sheet.",
                                    Words.share(s.shadeShare()))
                            : Words.say(
                                    "Of the lines from the nearest places of the tip to what is not in view, %s are ended by %s.",
                                    Words.allOr(s.shadeShare()), Words.the(s.shade())),
                    Fact.Numbers.of("shadeShare", s.shadeShare())));
        }
        for (int p = 0; p < s.clocks().length; p++) {
            if (!Double.isNaN(s.clocks()[p])) {
                more.add(Fact.of(
                        "clock",
                        Words.say(
                                "In pass '%s' it would be in the pattern with the pin at %s; it stands at %s.",
                                base.scene().passes().get(p).name(),
                                Words.clock(s.clocks()[p]),
                                Words.clock(base.scene().passes().get(p).clockRad())),
                        Fact.Numbers.of("clockDeg", Math.toDegrees(s.clocks()[p]))));
            }
        }
        String text = Words.say(
                "The tip sees %s on its way%s, and its jets point at %s.",
                Words.partOfIt(s.seen()),
                Double.isFinite(s.seenFromM()) ? ", half of that from within " + Words.length(s.seenFromM()) : "",
                Words.partOfIt(s.inside()));
        return new Fact(
                "sight",
                text,
                Fact.of(
                                "",
                                "",
                                Fact.Numbers.of("seenShare", s.seen())
                                        .and("inPatternShare", s.inside())
                                        .and("inPatternTurnedShare", s.turned())
                                        .and("seenFromM", s.seenFromM()))
                        .numbers(),
                more);
    }

    private static Fact drops(Situation at) {
        SightFacts s = at.sight();
        double dv50 = FogFacts.medianM(at.history().bins());
        Fact.Numbers numbers = Fact.Numbers.of("cutM", s.cutM())
                .and("medianDropM", dv50)
                .and("incidenceCosine", s.incidence())
                .and("landingShare", s.landing());
        if (!Double.isFinite(s.cutM())) {
            return Fact.of("drops", "No jet arrives there, so no drops are thrown at it.", numbers);
        }
        return Fact.of(
                "drops",
                Words.say(
                        "Where a jet meets it best, drops above %s land and smaller ones turn away with the air; the"
                                + " median drop has %s. The jet comes in at %.0f degrees from square.",
                        Words.drop(s.cutM()), Words.drop(dv50), Math.toDegrees(Math.acos(Math.min(1, s.incidence())))),
                numbers);
    }
}
