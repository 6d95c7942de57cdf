package baymist.explain;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * From facts and runs to one cause: docs/theory/explain.md, section 4.
 *
 * <p>Each cause has a fact that must hold before it may be named and kinds of change that prove it. Among the causes whose fact holds the
 * one wins whose own changes bring most of the wanted film. If none of them brings anything, the kind of the best change decides; if
 * no change holds at all, the first fact that holds does, and the cause counts as not proved.
 */
final class CauseRule {
    /** In view or in the pattern: at least this share of the region. ASSUMED. */
    static final double MOST = 0.5;
    /** The tip is near within this distance, m; the same as for {@code reach}. */
    static final double NEAR_M = baymist.run.ReachOptions.WITHIN_M;
    /** Fog at the region over fog in the whole cavity below which little came. ASSUMED. */
    static final double LITTLE_FOG = 0.5;
    /** Fog left at the end over its peak from which time was too short. ASSUMED. */
    static final double LEFT = 0.2;
    /** A wand that could stand nearer by this factor was not brought near. ASSUMED. */
    static final double NEARER = 0.7;

    /** Fog at the region over fog in the whole cavity below which it sinks before it gets there. ASSUMED. */
    static final double SUNK = 0.75;

    /** A hole that is less of its sheet than this lets little fog through by itself. ASSUMED. */
    static final double SMALL_HOLE = 0.02;

    /** Causes that only film thrown by jets can prove. */
    private static final Set<Cause> OF_JETS = Set.of(Cause.ACCESS, Cause.PATTERN, Cause.SHADOW, Cause.DISTANCE);

    private final Situation at;

    /** Whether what longer hanging brought is oil that jets threw and that ran or crept on: it proves nothing about fog. */
    private static boolean ranOn(Remedy r) {
        return r.kind() == ChangeKind.MORE_HANG && r.before().byJets(r.after());
    }

    CauseRule(Situation at) {
        this.at = at;
    }

    /** A cause that may be named. */
    private record Case(Cause cause, Set<ChangeKind> proofs, String fact) {}

    /**
     * The verdict.
     *
     * @param fact what speaks for the cause, a clause
     * @param by the change whose run proves it, or null if none does
     */
    record Verdict(Cause cause, String fact, @Nullable Remedy by) {
        boolean proved() {
            return by != null;
        }
    }

    /** Kinds of change that could prove one of the causes whose fact holds. */
    Set<ChangeKind> suspects() {
        Set<ChangeKind> kinds = EnumSet.noneOf(ChangeKind.class);
        cases().forEach(c -> kinds.addAll(c.proofs()));
        return kinds;
    }

    Verdict judge(List<Remedy> remedies) {
        List<Case> cases = cases();
        Case best = null;
        Remedy by = null;
        for (Case c : cases) {
            for (Remedy r : remedies) {
                boolean own = c.proofs().contains(r.kind())
                        && !ranOn(r)
                        && (!OF_JETS.contains(c.cause()) || r.before().byJets(r.after()));
                if (r.speaks() && own && r.gain() > (by == null ? 0 : by.gain() + 1e-12)) {
                    best = c;
                    by = r;
                }
            }
        }
        if (best != null && by != null) {
            return new Verdict(best.cause(), best.fact(), by);
        }
        Remedy winner = remedies.stream()
                .filter(r -> r.speaks() && !ranOn(r))
                .findFirst()
                .orElse(null);
        if (winner != null) {
            // a hole drilled where it is wanted helps against nearly anything: it proves the first fact alone
            boolean anything = winner.kind() == ChangeKind.DRILL_ENTRY && !cases.isEmpty();
            return anything
                    ? new Verdict(cases.get(0).cause(), cases.get(0).fact(), winner)
                    : new Verdict(usual(winner), "no single fact stands out, so what helps most decides", winner);
        }
        return cases.isEmpty()
                ? new Verdict(fallback(), "no single fact stands out", null)
                : new Verdict(cases.get(0).cause(), cases.get(0).fact(), null);
    }

    private Cause usual(Remedy winner) {
        boolean entry = winner.kind() == ChangeKind.OTHER_ENTRY || winner.kind() == ChangeKind.DRILL_ENTRY;
        if (entry && at.sight().seen() >= MOST) {
            return Cause.DISTANCE;
        }
        return entry && near() ? Cause.SHADOW : winner.kind().usual();
    }

    private Cause fallback() {
        return at.sight().seen() < MOST ? (near() ? Cause.SHADOW : Cause.ACCESS) : Cause.DISTANCE;
    }

    private boolean near() {
        return at.access().stationM() <= NEAR_M || at.access().sameBay() >= MOST;
    }

    /** Causes whose fact holds, in the order of the published list. */
    private List<Case> cases() {
        List<Case> cases = new ArrayList<>();
        covered(cases);
        SightFacts sight = at.sight();
        AccessFacts access = at.access();
        FogFacts fog = at.fog();
        boolean seen = sight.seen() >= MOST;
        boolean could = access.reachM() <= NEARER * access.stationM();
        boolean neverIn = !seen && access.sameBay() < MOST;
        boolean tooShort = access.endedByLength() && !could;
        if (access.stationM() > NEAR_M && (neverIn || tooShort)) {
            cases.add(new Case(
                    Cause.ACCESS,
                    Set.of(ChangeKind.LONGER_WAND, ChangeKind.OTHER_WAND, ChangeKind.OTHER_ENTRY),
                    "the tip comes no nearer than " + Words.length(access.stationM())
                            + (access.endedByLength() ? ", because the wand is no longer" : "")));
        }
        if (seen && sight.inside() < MOST) {
            cases.add(new Case(
                    Cause.PATTERN,
                    Set.of(ChangeKind.TURN_PIN, ChangeKind.OTHER_WAND, ChangeKind.MOVE, ChangeKind.OTHER_ENTRY),
                    "the tip sees " + Words.partOfIt(sight.seen()) + " but its jets point at "
                            + Words.partOfIt(sight.inside())));
        }
        if (!seen && access.sameBay() >= MOST) {
            cases.add(new Case(
                    Cause.SHADOW,
                    Set.of(ChangeKind.OTHER_ENTRY, ChangeKind.OTHER_WAND, ChangeKind.MOVE),
                    "the tip stands in the same bay but sees " + Words.partOfIt(sight.seen())
                            + (sight.shade().isEmpty()
                                    ? ""
                                    : sight.facesAway()
                                            ? ", because it faces away from there"
                                            : ", with " + Words.the(sight.shade()) + " between")));
        }
        if (seen
                && sight.inside() >= MOST
                && sight.cutM() > FogFacts.medianM(at.history().bins())) {
            cases.add(new Case(
                    Cause.DISTANCE,
                    Set.of(ChangeKind.MOVE, ChangeKind.COARSER, ChangeKind.OTHER_ENTRY),
                    "the jets see it from " + Words.length(sight.seenFromM())
                            + (Double.isFinite(sight.cutM())
                                    ? ", where only drops above " + Words.drop(sight.cutM()) + " land"
                                    : ", too far or too far aside for drops to land")));
        }
        fogCases(cases, seen, fog);
        return cases;
    }

    private void covered(List<Case> cases) {
        if (at.fog().masked() >= MOST || !at.supply().covered().isEmpty() || at.maskShades()) {
            cases.add(new Case(
                    Cause.MASKED,
                    Set.of(ChangeKind.MASK_OFF),
                    at.fog().masked() >= MOST
                            ? "it lies under a mask"
                            : at.maskShades()
                                    ? "the masked " + at.sight().shade() + " stands before it"
                                    : "'" + at.supply().covered().get(0) + "' is covered while spraying"));
        }
        if (!at.supply().shutInHang().isEmpty() || at.hasShutInside()) {
            cases.add(new Case(
                    Cause.CLOSED_EARLY, Set.of(ChangeKind.KEEP_OPEN), "a panel is shut while fog would still pass"));
        }
    }

    private void fogCases(List<Case> cases, boolean seen, FogFacts fog) {
        boolean little = fog.exposure() < LITTLE_FOG;
        @Nullable String gate = at.fog().through().isEmpty() ? null : at.fog().through();
        if (!seen && little && gate != null && fog.throughOfSheet() < SMALL_HOLE) {
            cases.add(new Case(
                    Cause.HOLE_TOO_SMALL,
                    Set.of(ChangeKind.WIDER_HOLE),
                    "fog has to come through '" + gate + "', which is less than " + Words.share(SMALL_HOLE)
                            + " of its sheet, and little does"));
        }
        if (!seen && little) {
            cases.add(new Case(
                    Cause.DEAD_END,
                    Set.of(ChangeKind.OPEN_VENT, ChangeKind.DRILL_VENT),
                    "its bay lets " + (at.fog().ventM2() > 0 ? "little air" : "no air")
                            + " out, so little fog flows in"));
        }
        if ((fog.facing() < 0.7 || fog.exposure() < SUNK)
                && at.supply().evenM() >= at.supply().targetM()) {
            cases.add(new Case(
                    Cause.SETTLING,
                    Set.of(ChangeKind.FINER),
                    "it " + fog.facingWords() + " and the fog sinks at "
                            + Words.say("%.1f mm/s", 1e3 * fog.settlingMPerS())));
        }
        if (fog.endShare() > LEFT) {
            cases.add(new Case(
                    Cause.TIME,
                    Set.of(ChangeKind.MORE_HANG),
                    "at the end the fog there still has " + Words.share(fog.endShare()) + " of its peak"));
        }
        if (at.supply().evenM() < at.supply().targetM()) {
            cases.add(new Case(
                    Cause.QUANTITY,
                    Set.of(ChangeKind.MORE_PRODUCT, ChangeKind.SLOWER),
                    "all product spread evenly would make only "
                            + Words.film(at.supply().evenM())));
        }
    }
}
