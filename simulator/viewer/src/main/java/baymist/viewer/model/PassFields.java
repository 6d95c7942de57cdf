package baymist.viewer.model;

import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import java.util.List;

/** The fields of a job as they stand. */
final class PassFields {
    static final String MM = "mm";
    static final String MM_PER_S = "mm/s";
    static final String DEG = "deg";
    static final String SECONDS = "s";
    static final String ML_PER_MIN = "mL/min";

    /** Bounds of sliders; what people do with a hand-held wand, wide of it (ASSUMED). */
    private static final double FASTEST_MM_PER_S = 500;

    private static final double LONGEST_HOLD_S = 60;
    private static final double LONGEST_HANG_S = 1800;

    private PassFields() {}

    static List<Field> of(Scene scene, PassSpec pass) {
        String p = pass.name();
        WandSpec wand = scene.wands().get(pass.wand());
        double length = wand == null ? 3000 : 1e3 * wand.lengthM();
        List<String> entries = scene.entries().stream().map(EntrySpec::name).toList();
        List<String> wands = scene.wands().keySet().stream().sorted().toList();
        return List.of(
                Field.choice("entry:" + p, "entry", p, pass.entry(), entries, "Opening that the wand goes through."),
                Field.choice("wand:" + p, "wand", p, pass.wand(), wands, "Wand of this pass, one of those at hand."),
                Field.number(
                        "from:" + p,
                        "from depth",
                        p,
                        1e3 * pass.fromDepthM(),
                        1,
                        length,
                        MM,
                        "Length of wand inside when the trigger is pressed, in mm; '" + WhatIf.DEEPEST
                                + "' is as deep as the wand goes."),
                Field.number(
                        "to:" + p,
                        "to depth",
                        p,
                        1e3 * pass.toDepthM(),
                        0,
                        Double.isInfinite(pass.fromDepthM()) ? length : 1e3 * pass.fromDepthM(),
                        MM,
                        "Length of wand inside when the trigger is let go, in mm."),
                Field.number(
                        "clock:" + p,
                        "clock angle",
                        p,
                        Math.toDegrees(pass.clockRad()),
                        0,
                        360,
                        DEG,
                        "Where the pin points, in degrees clockwise as seen looking in; 0 is up."),
                Field.number(
                        "rate:" + p,
                        "draw-back",
                        p,
                        1e3 * pass.drawBackMPerS(),
                        1,
                        FASTEST_MM_PER_S,
                        MM_PER_S,
                        "How fast the wand is drawn back, in mm/s."),
                Field.number(
                        "hold:" + p,
                        "hold",
                        p,
                        pass.holdS(),
                        0,
                        LONGEST_HOLD_S,
                        SECONDS,
                        "How long the trigger is held at the first depth before drawing back, in s."),
                Field.number(
                        "hang:" + p,
                        "hang after",
                        p,
                        pass.hangS(),
                        0,
                        LONGEST_HANG_S,
                        SECONDS,
                        "How long the fog hangs before the next pass, in s."));
    }

    static List<Field> ofJob(Scene scene) {
        double mlPerMin = scene.supply().liquidKgPerS() / scene.product().densityKgPerM3() * 60e6;
        return List.of(
                Field.number(
                        "liquid",
                        "liquid",
                        null,
                        mlPerMin,
                        1,
                        Math.max(300, 3 * mlPerMin),
                        ML_PER_MIN,
                        "Product that leaves the tip, in mL/min."),
                Field.number(
                        "hang",
                        "hang at the end",
                        null,
                        scene.hangS(),
                        0,
                        Math.max(LONGEST_HANG_S, scene.hangS()),
                        SECONDS,
                        "How long the fog hangs after the last pass, in s."));
    }
}
