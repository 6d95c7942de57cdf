package baymist.study;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.DropletSpec;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One named edit of a job: what a technician could do otherwise. Scenes are immutable; {@link #apply} gives a new one.
 *
 * <p>Edits of passes name the pass, or null for every pass of the job.
 */
public sealed interface Change {
    /**
     * The job with this change.
     *
     * @throws IllegalArgumentException if it names a pass, wand, entry, opening or item that the scene does not have
     */
    Scene apply(Scene scene);

    /** The change as a technician would say it, without a full stop: "turn the pin to 90 deg in pass 'rear line'". */
    String words();

    /** The direction pin at another clock angle, rad; 0 = up. */
    record Clock(@Nullable String pass, double clockRad) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return ChangeWords.onPasses(scene, pass, p -> p.withClockRad(ChangeWords.turned(clockRad)));
        }

        @Override
        public String words() {
            return "turn the pin to " + ChangeWords.clock(clockRad) + ChangeWords.in(pass);
        }
    }

    /**
     * The pass over another stretch.
     *
     * @param fromDepthM insertion depth at the start, m; infinite = as deep as the wand goes
     * @param toDepthM insertion depth at the end, m, not deeper
     */
    record Depth(@Nullable String pass, double fromDepthM, double toDepthM) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return ChangeWords.onPasses(scene, pass, p -> p.withDepthsM(fromDepthM, Math.min(fromDepthM, toDepthM)));
        }

        @Override
        public String words() {
            String start = Double.isInfinite(fromDepthM) ? "as deep as the wand goes" : ChangeWords.length(fromDepthM);
            return "spray from " + start + " back to " + ChangeWords.length(toDepthM) + ChangeWords.in(pass);
        }
    }

    /** Another draw-back rate, m/s. */
    record DrawBack(@Nullable String pass, double drawBackMPerS) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return ChangeWords.onPasses(scene, pass, p -> p.withDrawBackMPerS(drawBackMPerS));
        }

        @Override
        public String words() {
            return "draw back at " + ChangeWords.round(1e3 * drawBackMPerS) + " mm/s" + ChangeWords.in(pass);
        }
    }

    /** Another trigger time at the start depth before drawing back, s. */
    record Hold(@Nullable String pass, double holdS) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return ChangeWords.onPasses(scene, pass, p -> p.withHoldS(holdS));
        }

        @Override
        public String words() {
            return holdS > 0
                    ? "hold the trigger for " + ChangeWords.time(holdS) + " before drawing back" + ChangeWords.in(pass)
                    : "draw back at once" + ChangeWords.in(pass);
        }
    }

    /** The trigger pressed this many times as long: holds last longer and the wand is drawn back slower, or shorter and faster. */
    record TriggerTime(@Nullable String pass, double factor) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return ChangeWords.onPasses(
                    scene, pass, p -> p.withHoldS(factor * p.holdS()).withDrawBackMPerS(p.drawBackMPerS() / factor));
        }

        @Override
        public String words() {
            return "spray " + ChangeWords.round(factor) + " times as long, by drawing back "
                    + (factor > 1 ? "slower" : "faster") + ChangeWords.in(pass);
        }
    }

    /** This many times the liquid in the same time. */
    record Liquid(double factor) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return SceneEdit.of(scene)
                    .supply(scene.supply().withLiquidTimes(factor))
                    .done();
        }

        @Override
        public String words() {
            return "set the liquid to " + ChangeWords.round(factor) + " times its rate";
        }
    }

    /** Another of the wands at hand. */
    record Wand(@Nullable String pass, String wand) implements Change {
        @Override
        public Scene apply(Scene scene) {
            ChangeWords.require(scene.wands().containsKey(wand), "wand", wand);
            return ChangeWords.onPasses(scene, pass, p -> p.withWand(wand));
        }

        @Override
        public String words() {
            return "use the wand '" + wand + "'" + ChangeWords.in(pass);
        }
    }

    /** Another entry. */
    record Entry(@Nullable String pass, String entry) implements Change {
        @Override
        public Scene apply(Scene scene) {
            ChangeWords.require(scene.entries().stream().anyMatch(e -> e.name().equals(entry)), "entry", entry);
            return ChangeWords.onPasses(scene, pass, p -> p.withEntry(entry));
        }

        @Override
        public String words() {
            return "go in at '" + entry + "'" + ChangeWords.in(pass);
        }
    }

    /** Another wait after a pass, s; a null pass is the last wait, at the end of the job. */
    record Hang(@Nullable String pass, double hangS) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return pass == null ? scene.withHangS(hangS) : ChangeWords.onPasses(scene, pass, p -> p.withHangS(hangS));
        }

        @Override
        public String words() {
            return "let the fog hang for " + ChangeWords.time(hangS)
                    + (pass == null ? " at the end" : " after pass '" + pass + "'");
        }
    }

    /** Every droplet diameter by this factor, beyond the setting that the scene has: below 1 = finer. */
    record Nozzle(double factor) implements Change {
        /** One click finer, the square root of one half as scenes take it. */
        public static final Nozzle FINER = new Nozzle(Math.sqrt(0.5));

        /** One click coarser. */
        public static final Nozzle COARSER = new Nozzle(Math.sqrt(2));

        @Override
        public Scene apply(Scene scene) {
            DropletSpec now = scene.supply().droplets();
            DropletSpec.Adjusted other = now instanceof DropletSpec.Adjusted a
                    ? new DropletSpec.Adjusted(a.sizes(), factor * a.setting(), a.dv50Factor())
                    : new DropletSpec.Adjusted(
                            now, factor, now instanceof DropletSpec.Correlation ? 0 : now.dv50Factor());
            return SceneEdit.of(scene)
                    .supply(scene.supply().withDroplets(other))
                    .done();
        }

        @Override
        public String words() {
            return "set the nozzle " + (factor < 1 ? "finer" : "coarser") + " (droplets " + ChangeWords.round(factor)
                    + " times the diameter)";
        }
    }

    /** An opening of the model or of a cut in another state during one phase. */
    record Vent(String opening, PhaseStates.Phase phase, OpeningState state) implements Change {
        @Override
        public Scene apply(Scene scene) {
            PhaseStates now = states(scene);
            return SceneEdit.of(scene).state(opening, now.with(phase, state)).done();
        }

        private PhaseStates states(Scene scene) {
            PhaseStates stated = scene.states().get(opening);
            if (stated != null) {
                return stated;
            }
            Cavity cavity = CavityBuilder.build(scene);
            int index = cavity.openingIndex(opening);
            ChangeWords.require(index >= 0, "opening", opening);
            return cavity.openings().get(index).states();
        }

        @Override
        public String words() {
            String when = switch (phase) {
                case PASS -> "while spraying";
                case HANG -> "while the fog hangs";
                case AFTER -> "at close-up";
            };
            String what = switch (state) {
                case OPEN -> "open";
                case CLOSED -> "close";
                case TAPED -> "tape over";
                case PLUGGED -> "plug";
            };
            return what + " '" + opening + "' " + when;
        }
    }

    /**
     * A new round hole, open in every phase, and an entry of the same name through it. Drilling structure needs approved data and
     * a licensed
     * person.
     *
     * @param centreM moved onto the nearest point of the part, m
     * @param diameterM of the hole, m
     */
    record RoundHole(String name, String part, Vec3 centreM, double diameterM) implements Change {
        @Override
        public Scene apply(Scene scene) {
            SourcePlace place = new SourcePlace(scene.file(), 0, "cut");
            OpeningSpec hole = new OpeningSpec(
                    name, part, new Outline.Circle(diameterM / 2), centreM, null, PhaseStates.ALWAYS_OPEN, place);
            return SceneEdit.of(scene)
                    .cut(hole)
                    .entry(new EntrySpec(name, name, null, place))
                    .done();
        }

        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "drill a hole of %s in %s at (%.0f, %.0f, %.0f) mm (needs approved data and a licensed person)",
                    ChangeWords.length(diameterM),
                    part,
                    1e3 * centreM.x(),
                    1e3 * centreM.y(),
                    1e3 * centreM.z());
        }
    }

    /** A protected item without its mask. */
    record Unmask(String item) implements Change {
        @Override
        public Scene apply(Scene scene) {
            ChangeWords.require(
                    scene.protectedItems().stream().anyMatch(i -> i.name().equals(item)), "protected item", item);
            return SceneEdit.of(scene)
                    .protectedItems(scene.protectedItems().stream()
                            .map(i -> i.name().equals(item) ? i.withMask(ProtectedItem.Mask.NONE) : i)
                            .toList())
                    .done();
        }

        @Override
        public String words() {
            return "take the mask off '" + item + "'";
        }
    }

    /** Several changes, one after the other. */
    record All(List<Change> changes) implements Change {
        public All {
            changes = List.copyOf(changes);
        }

        @Override
        public Scene apply(Scene scene) {
            Scene now = scene;
            for (Change c : changes) {
                now = c.apply(now);
            }
            return now;
        }

        @Override
        public String words() {
            return changes.stream().map(Change::words).collect(Collectors.joining("; "));
        }
    }

    /** Any other edit of passes, with its own words. */
    record Passes(@Nullable String pass, UnaryOperator<PassSpec> edit, String words) implements Change {
        @Override
        public Scene apply(Scene scene) {
            return ChangeWords.onPasses(scene, pass, edit);
        }
    }
}
