package baymist.scene.io;

import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes wands, and spreads the patterns of tips out into lists of jets. */
final class WandAssembler {
    /** How far stated shares may miss 1; what is left is rounding such as 0.33 + 0.33 + 0.33. */
    private static final double SHARE_SLACK = 0.015;

    private final Problems problems;

    WandAssembler(Problems problems) {
        this.problems = problems;
    }

    WandSpec wand(Fields f) {
        double outer = f.si("outer_diameter");
        double bore = f.si("bore");
        if (bore >= outer) {
            problems.add(
                    SceneProblem.BORE,
                    f.at("bore"),
                    "the bore " + f.written("bore") + " is not smaller than the outside, " + f.written("outer_diameter")
                            + "; it leaves no wall");
        }
        double length = f.si("length");
        WandBody body = new WandBody(problems);
        Fields tipFields = f.fields("tip");
        double[] tipSize = body.tip(tipFields, length, outer, bore);
        return new WandSpec(
                f.text("name"),
                length,
                outer,
                bore,
                tip(tipFields),
                body.pieces(f, length, outer),
                body.material(f),
                body.flexibility(f.fields("flexible"), outer),
                body.couplings(f, length, outer),
                tipSize[0],
                tipSize[1]);
    }

    private TipSpec tip(@Nullable Fields f) {
        if (f == null) {
            return new TipSpec("", List.of());
        }
        Fields ring = f.fields("ring");
        Fields oneSided = f.fields("one_sided");
        Fields forward = f.fields("forward");
        String pattern;
        List<double[]> jets; // {off axis, clock, orifice}
        if (ring != null) {
            pattern = "ring";
            int n = ring.whole("jets");
            jets = round(n, ring.si("off_axis"), ring.si("clock"), ring.si("orifice"));
        } else if (oneSided != null) {
            pattern = "one-sided";
            jets = fan(oneSided.whole("jets"), oneSided.si("arc"), oneSided.si("off_axis"), oneSided.si("orifice"));
        } else if (forward != null) {
            pattern = "forward";
            int n = forward.whole("jets");
            jets = round(n, n == 1 ? 0 : forward.si("cone") / 2, 0, forward.si("orifice"));
        } else {
            return new TipSpec(f.has("name") ? f.text("name") : "jets", listed(f));
        }
        String name = f.has("name") ? f.text("name") : pattern;
        double share = 1.0 / Math.max(1, jets.size());
        return new TipSpec(
                name,
                jets.stream()
                        .map(j -> new TipSpec.Jet(j[0], j[1], j[2], share, share))
                        .toList());
    }

    /** Jets evenly round the wand, the first at a clock angle from the pin. */
    private static List<double[]> round(int n, double offAxis, double clock, double orifice) {
        List<double[]> jets = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            jets.add(new double[] {offAxis, clock + 2 * Math.PI * i / n, orifice});
        }
        return jets;
    }

    /** Jets across an arc that is centred on the pin, the outer ones at its ends. */
    private static List<double[]> fan(int n, double arc, double offAxis, double orifice) {
        List<double[]> jets = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double clock = n == 1 ? 0 : arc * ((double) i / (n - 1) - 0.5);
            jets.add(new double[] {offAxis, clock, orifice});
        }
        return jets;
    }

    private List<TipSpec.Jet> listed(Fields tip) {
        List<Fields> list = tip.list("jets");
        double[] air = shares(tip, list, "air_share");
        double[] liquid = shares(tip, list, "liquid_share");
        List<TipSpec.Jet> jets = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            Fields j = list.get(i);
            jets.add(new TipSpec.Jet(j.si("off_axis"), j.si("clock"), j.si("orifice"), air[i], liquid[i]));
        }
        return jets;
    }

    /** Stated shares, or those of the orifice areas where no jet states one; they sum to 1. */
    private double[] shares(Fields tip, List<Fields> list, String key) {
        double[] shares = new double[list.size()];
        long stated = list.stream().filter(j -> j.has(key)).count();
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            double orifice = list.get(i).si("orifice");
            shares[i] = stated == 0 ? orifice * orifice : list.get(i).si(key);
            sum += shares[i];
        }
        if (stated != 0 && stated != list.size()) {
            problems.add(
                    SceneProblem.SHARES,
                    tip.at("jets"),
                    "`" + key + "` stands at " + stated + " of " + list.size()
                            + " jets; state it for all of them or for none");
        } else if (stated != 0 && Math.abs(sum - 1) > SHARE_SLACK) {
            problems.add(
                    SceneProblem.SHARES,
                    tip.at("jets"),
                    "the `" + key + "` of all jets sum to " + Quantities.number(sum, 4) + "; they must sum to 1");
        }
        for (int i = 0; i < shares.length; i++) {
            shares[i] = shares[i] / sum;
        }
        return shares;
    }
}
