package baymist.explain;

import baymist.scene.PassSpec;
import baymist.scene.WandAim;

/** A pass with some of it changed. */
final class PassEdit {
    private final PassSpec from;
    private String name;
    private String wand;
    private double fromM;
    private double toM;
    private double speed;
    private double clock;
    private double hold;
    private double hang;

    private PassEdit(PassSpec p) {
        from = p;
        name = p.name();
        wand = p.wand();
        fromM = p.fromDepthM();
        toM = p.toDepthM();
        speed = p.drawBackMPerS();
        clock = p.clockRad();
        hold = p.holdS();
        hang = p.hangS();
    }

    static PassEdit of(PassSpec pass) {
        return new PassEdit(pass);
    }

    PassEdit named(String other) {
        name = other;
        return this;
    }

    PassEdit wand(String other) {
        wand = other;
        return this;
    }

    PassEdit clock(double rad) {
        clock = rad;
        return this;
    }

    PassEdit stroke(double fromDepthM, double toDepthM, double speedMPerS) {
        fromM = fromDepthM;
        toM = toDepthM;
        speed = speedMPerS;
        return this;
    }

    /** The same way, taking so many times as long. */
    PassEdit slower(double times) {
        speed /= times;
        hold *= times;
        return this;
    }

    PassSpec pass() {
        return new PassSpec(
                name, from.entry(), wand, fromM, toM, speed, clock, hold, hang, from.aim(), from.sag(), from.place());
    }

    void into(SceneDraft draft, int index) {
        draft.passes.set(index, pass());
    }

    /** A pass as a scene file writes it. */
    static String yaml(PassSpec p) {
        StringBuilder out = new StringBuilder("{name: " + p.name() + ", entry: " + p.entry() + ", wand: " + p.wand());
        out.append(", from: ").append(Double.isInfinite(p.fromDepthM()) ? "deepest" : Yaml.length(p.fromDepthM()));
        out.append(", to: ").append(Yaml.length(p.toDepthM()));
        if (p.drawBackMPerS() > 0) {
            out.append(", draw_back: ").append(Yaml.length(p.drawBackMPerS())).append("/s");
        }
        out.append(", clock: ").append(Yaml.clock(p.clockRad()));
        if (p.holdS() > 0) {
            out.append(", hold: ").append(Yaml.time(p.holdS()));
        }
        if (p.aim() instanceof WandAim.Near near) {
            out.append(", aim: {region: {low: ")
                    .append(Yaml.point(near.region().min()))
                    .append(", high: ")
                    .append(Yaml.point(near.region().max()))
                    .append("}}");
        }
        return out.append("}").toString();
    }
}
