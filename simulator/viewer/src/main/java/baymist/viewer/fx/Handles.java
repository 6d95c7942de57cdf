package baymist.viewer.fx;

import baymist.access.Insertion;
import baymist.recording.Recording;
import baymist.scene.PassSpec;
import baymist.viewer.draw.PassHandle;
import baymist.viewer.model.WhatIf;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Ties the handles in the picture to the fields of the job that is tried: both change the same. */
final class Handles {
    /** Radius of the ring round the tip as a share of the structure's diagonal. */
    private static final double RING = 0.045;

    private final Desk desk;
    private boolean out;
    private String pass = "";

    Handles(Desk desk) {
        this.desk = desk;
    }

    /** Brings the handles out, or puts them away. */
    void out(boolean shown) {
        out = shown;
        update();
    }

    /** Takes the handles of this pass. */
    void pass(String name) {
        pass = name;
        update();
    }

    /** Follows the fields. */
    void update() {
        desk.view().handles().show(out ? handle() : null);
        desk.view().handles().onDragged(this::dragged, this::enter);
        desk.view().changed();
    }

    private @Nullable PassSpec spec(WhatIf now) {
        List<PassSpec> all = now.scene().passes();
        return all.stream().filter(p -> p.name().equals(pass)).findFirst().orElse(all.isEmpty() ? null : all.get(0));
    }

    private @Nullable PassHandle handle() {
        WhatIf now = desk.whatIf().now();
        PassSpec spec = now == null ? null : spec(now);
        CavityPicture picture = desk.view().picture();
        if (spec == null || picture == null) {
            return null;
        }
        Insertion way = way(spec);
        if (way == null || !way.feasible() || !(way.maxDepthM() > 1e-3)) {
            return null;
        }
        // whole millimetres, so that the deepest that can be dragged to is one that the wand reaches
        double deepest = Math.max(1e-3, Math.floor(1e3 * way.maxDepthM()) / 1e3);
        return new PassHandle(
                way.path(),
                deepest,
                spec.fromDepthM(),
                spec.toDepthM(),
                spec.clockRad(),
                RING * picture.bounds().size().length());
    }

    /** The way of a pass's wand through its entry as a run found it, or null where no run has. */
    private @Nullable Insertion way(PassSpec spec) {
        for (Recording r :
                java.util.Arrays.asList(desk.recording(), desk.beside().recording())) {
            if (r != null) {
                for (Insertion i : r.result().insertions()) {
                    if (i.entry().equals(spec.entry()) && i.wand().equals(spec.wand())) {
                        return i;
                    }
                }
            }
        }
        return null;
    }

    private void dragged(PassHandle.Grip grip, PassHandle h) {
        WhatIf now = desk.whatIf().now();
        PassSpec spec = now == null ? null : spec(now);
        if (spec != null) {
            String field = switch (grip) {
                case FROM -> "from:";
                case TO -> "to:";
                case CLOCK -> "clock:";
            };
            double value = switch (grip) {
                case FROM -> 1e3 * h.fromM();
                case TO -> 1e3 * h.toM();
                case CLOCK -> Math.toDegrees(h.clockRad());
            };
            desk.whatIf().set(field + spec.name(), String.format(Locale.ROOT, "%.0f", value));
        }
        update();
    }

    private void enter(String opening) {
        WhatIf now = desk.whatIf().now();
        PassSpec spec = now == null ? null : spec(now);
        if (now == null || spec == null) {
            return;
        }
        desk.whatIf().take(now.throughOpening(spec.name(), opening));
        if (handle() == null && Objects.equals(desk.whatIf().now(), now)) {
            return;
        }
        update();
        if (handle() == null) {
            desk.whatIf().say(desk.whatIf().told() + ". Preview finds the wand's way there, and then its handles.");
        }
    }
}
