package baymist.report;

import baymist.access.AccessFinder;
import baymist.access.SagResult;
import baymist.access.WandReach;
import baymist.access.WandStop;
import baymist.access.WandWay;
import baymist.run.ReachLine;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What a trainer could read out about one wand in one entry: how far, why it ends there, what to do. */
public final class ReachWords {
    /** A sag below this is not worth a hand's attention, m (ASSUMED: half the stand-off of the nose). */
    private static final double SLIGHT_M = 1e-3;
    /** Supports that are told of by name. */
    private static final int MOST_RESTS = 3;
    /** Other ways that are told of in words; the JSON has all. */
    private static final int MOST_WAYS = 2;

    /** Said where the budget ended a search, so that "as deep as it goes" is not read into it. */
    static final String UNFINISHED =
            "The search ran out of its budget before it had seen everything: a deeper way in may exist.";

    private ReachWords() {}

    /** One or more whole sentences. */
    public static String of(ReachLine line) {
        List<String> said = new ArrayList<>();
        if (line.opened()) {
            said.add("'" + line.entry().opening() + "' is shut in this scene and has to be opened first.");
        }
        if (line.reach().feasible()) {
            said.add(depth(line));
            if (line.wand().kind() == WandSpec.Kind.BENT) {
                said.add("Mark the clock angle of the bend on the handle: it can't be seen from outside.");
            }
            otherWays(said, line.reach().ways());
            if (!line.reach().complete()) {
                said.add(UNFINISHED);
            }
            SagResult sag = line.sag();
            if (sag != null) {
                sag(said, sag);
            }
        } else {
            said.add(refused(line));
            if (!line.reach().complete()) {
                said.add(UNFINISHED);
            }
        }
        return String.join(" ", said);
    }

    private static String refused(ReachLine line) {
        WandStop stop = line.reach().stop();
        String why = stop == null ? "nothing was tried" : stop.why();
        String remedy = why.contains("closed while spraying")
                ? "Open it for this pass, or choose another entry."
                : why.contains("bay to bay")
                        ? "Choose an opening that leads in from outside."
                        : "Take a thinner or shorter-bent wand, or a wider opening.";
        return String.format(
                Locale.ROOT,
                "%s does not go in at %s: %s. %s",
                capital(line.wand().name()),
                line.entry().name(),
                end(why),
                remedy);
    }

    private static String depth(ReachLine line) {
        WandReach r = line.reach();
        WandStop stop = r.stop();
        String start = String.format(
                Locale.ROOT,
                "%s goes in at %s to %.0f mm",
                capital(line.wand().name()),
                line.entry().name(),
                1e3 * r.maxDepthM());
        if (stop == null) {
            return start + ".";
        }
        if (stop.partName().equals(AccessFinder.WAND_LENGTH)) {
            return start + ", its whole length; nothing stops it, and a longer one would go farther.";
        }
        if (r.maxDepthM() > line.wand().lengthM() - 1e-3) {
            return start + ", just when it meets " + stop.partName() + ".";
        }
        String how = stop.why().isEmpty() || stop.why().equals(stop.partName())
                ? "it meets " + stop.partName()
                : end(stop.why());
        String then = how.contains("meets")
                ? ". Push until you feel it, then draw back a little before you spray."
                : ". You will not feel that end: mark the depth on the wand, and go no deeper.";
        return start + ", up to " + CheckReport.mm(stop.placeM()) + ": " + how + then;
    }

    /** By which openings the way that was told of leads, and the others. */
    private static void otherWays(List<String> said, List<WandWay> ways) {
        if (ways.isEmpty()) {
            return;
        }
        WandWay deepest = ways.get(0);
        if (!deepest.through().isEmpty()) {
            said.add(String.format(
                    Locale.ROOT,
                    "It passes %s, bends by %.0f degrees in all and takes a push of %.0f N.",
                    quoted(deepest.through()),
                    Math.toDegrees(deepest.bendRad()),
                    deepest.pushN()));
        }
        List<String> others = new ArrayList<>();
        for (WandWay way : ways.subList(1, Math.min(ways.size(), 1 + MOST_WAYS))) {
            others.add(String.format(
                    Locale.ROOT,
                    "%.0f mm %s",
                    1e3 * way.depthM(),
                    way.through().isEmpty() ? "within the first bay" : "through " + quoted(way.through())));
        }
        if (!others.isEmpty()) {
            said.add("Other ways: " + String.join("; ", others) + ".");
        }
    }

    private static String quoted(List<String> names) {
        return names.stream().map(n -> "'" + n + "'").collect(Collectors.joining(", "));
    }

    private static void sag(List<String> said, SagResult sag) {
        if (Math.abs(sag.dropM()) < SLIGHT_M && sag.rests().isEmpty()) {
            said.add("It hardly sags (" + mm(sag.dropM()) + " mm).");
        } else {
            said.add(String.format(
                    Locale.ROOT,
                    "Held in line at the entry, its tip hangs %s mm off that line, towards %s%s.",
                    mm(Math.abs(sag.dropM())),
                    clock(sag.dropClockRad()),
                    rests(sag)));
        }
        SagResult.Catch c = sag.catchesOn();
        if (c != null) {
            said.add(String.format(
                    Locale.ROOT,
                    "On the way in its nose comes %s mm too low for the %s at %.0f mm: lower your hand outside to lift it"
                            + " through.",
                    mm(c.liftM()),
                    c.on(),
                    1e3 * c.depthM()));
        }
        if (sag.yields()) {
            said.add("Its weight alone would bend it for good: support it, or take a stiffer wand.");
        }
    }

    private static String rests(SagResult sag) {
        List<String> on =
                sag.rests().stream().map(SagResult.Rest::on).distinct().toList();
        if (on.isEmpty()) {
            return "; it hangs free";
        }
        String told = String.join(", the ", on.subList(0, Math.min(MOST_RESTS, on.size())));
        return "; it rests on the " + told + (on.size() > MOST_RESTS ? " and more" : "");
    }

    /** "6 o'clock", to the nearest half hour. */
    static String clock(double clockRad) {
        long halves = Math.round(clockRad / (Math.PI / 12)) % 24;
        long hour = halves / 2 == 0 ? 12 : halves / 2;
        return halves % 2 == 0 ? hour + " o'clock" : "half past " + hour;
    }

    private static String mm(double lengthM) {
        return String.format(Locale.ROOT, Math.abs(lengthM) < 0.00995 ? "%.1f" : "%.0f", 1e3 * lengthM);
    }

    private static String capital(String name) {
        return name.isEmpty() ? name : name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    private static String end(String why) {
        return why.endsWith(".") ? why.substring(0, why.length() - 1) : why;
    }
}
