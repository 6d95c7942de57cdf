package baymist.scene.io;

import baymist.scene.Flexibility;
import baymist.scene.TipSpec;
import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import baymist.units.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writes wands with their tips: what {@link WandAssembler} reads, the other way round. */
final class WandWriting {
    private WandWriting() {}

    static Map<String, Object> wand(WandSpec w) {
        boolean bent = w.kind() == WandSpec.Kind.BENT;
        return Written.group()
                .put("name", w.name())
                .put("length", Written.length(w.lengthM()))
                .put("outer_diameter", Written.length(w.outerM()))
                .put("bore", Written.length(w.boreM()))
                .put("material", material(w.material()))
                .put("bends", bent ? bends(w.pieces()) : null)
                .put("flexible", flexible(w.flexibility()))
                .put(
                        "couplings",
                        Written.list(
                                w.couplings(),
                                c -> Written.group()
                                        .put("from_tip", Written.length(c.fromTipM()))
                                        .put("outer_diameter", Written.length(c.outerM()))
                                        .put("length", Written.length(c.lengthM()))
                                        .map()),
                        !w.couplings().isEmpty())
                .put("tip", tip(w))
                .map();
    }

    private static @Nullable Object material(WandMaterial m) {
        if (m.isAssumed()) {
            return null;
        }
        if (m.equals(WandMaterial.named(m.name()))) {
            return m.name();
        }
        return Written.group()
                .put("name", m.name())
                .put("density", Written.of(m.densityKgPerM3(), Dimension.DENSITY))
                .put("modulus", Written.of(m.modulusPa(), Dimension.PRESSURE))
                .put("yield", Written.of(m.yieldPa(), Dimension.PRESSURE))
                .map();
    }

    private static List<Object> bends(List<WandPiece> pieces) {
        List<Object> bends = new ArrayList<>();
        double fromTip = 0;
        for (int i = pieces.size() - 1; i >= 0; i--) {
            if (pieces.get(i) instanceof WandPiece.Bend b) {
                bends.add(Written.group()
                        .put("from_tip", Written.length(fromTip))
                        .put("radius", Written.length(b.radiusM()))
                        .put("angle", Written.angle(b.angleRad()))
                        .put("roll", Written.angle(b.rollRad()), b.rollRad() != 0)
                        .map());
            }
            fromTip += pieces.get(i).lengthM();
        }
        return bends;
    }

    private static @Nullable Object flexible(@Nullable Flexibility f) {
        return f == null
                ? null
                : Written.group()
                        .put("bend_radius", Written.length(f.minBendRadiusM()))
                        .put("total_bend", Written.angle(f.maxTotalBendRad()))
                        .put("push", Written.of(f.pushLimitN(), Dimension.FORCE), Double.isFinite(f.pushLimitN()))
                        .put("friction", f.friction())
                        .map();
    }

    private static Object tip(WandSpec w) {
        Written.Group tip = Written.group().put("name", w.tip().name());
        pattern(tip, w.tip().jets());
        return tip.put("outer_diameter", Written.length(w.tipOuterM()), w.tipOuterM() != w.outerM())
                .put("length", Written.length(w.tipLengthM()), w.tipLengthM() > 0)
                .map();
    }

    /** A ring or fan where the jets are one, else jet by jet. */
    private static void pattern(Written.Group tip, List<TipSpec.Jet> jets) {
        int n = jets.size();
        double share = 1.0 / n;
        boolean alike = jets.stream()
                .allMatch(j -> j.offAxisRad() == jets.get(0).offAxisRad()
                        && j.orificeM() == jets.get(0).orificeM()
                        && j.airShare() == share
                        && j.liquidShare() == share);
        if (alike && n > 1 && isRing(jets)) {
            tip.put(
                    "ring",
                    like(jets)
                            .put("clock", Written.angle(jets.get(0).clockRad()))
                            .map());
        } else if (alike && isFan(jets)) {
            double arc = n == 1 ? 0 : 2 * jets.get(n - 1).clockRad();
            tip.put("one_sided", like(jets).put("arc", Written.angle(arc)).map());
        } else {
            tip.put("jets", Written.list(jets, WandWriting::jet));
        }
    }

    private static Written.Group like(List<TipSpec.Jet> jets) {
        return Written.group()
                .put("jets", jets.size())
                .put("orifice", Written.length(jets.get(0).orificeM()))
                .put("off_axis", Written.angle(jets.get(0).offAxisRad()));
    }

    private static boolean isRing(List<TipSpec.Jet> jets) {
        for (int i = 0; i < jets.size(); i++) {
            double clock = jets.get(0).clockRad() + 2 * Math.PI * i / jets.size();
            if (Math.abs(jets.get(i).clockRad() - clock) > 1e-13) {
                return false;
            }
        }
        return true;
    }

    private static boolean isFan(List<TipSpec.Jet> jets) {
        int n = jets.size();
        double arc = 2 * jets.get(n - 1).clockRad();
        for (int i = 0; i < n; i++) {
            double clock = n == 1 ? 0 : arc * ((double) i / (n - 1) - 0.5);
            if (Math.abs(jets.get(i).clockRad() - clock) > 1e-13) {
                return false;
            }
        }
        return arc >= 0 && arc < 2 * Math.PI;
    }

    private static Object jet(TipSpec.Jet j) {
        return Written.group()
                .put("off_axis", Written.angle(j.offAxisRad()))
                .put("clock", Written.angle(j.clockRad()), j.clockRad() != 0)
                .put("orifice", Written.length(j.orificeM()))
                .put("air_share", j.airShare())
                .put("liquid_share", j.liquidShare())
                .map();
    }
}
