package baymist.field;

import baymist.scene.TipSpec;
import java.util.List;

/** The clock angles at which a tip does different things. */
final class TipSymmetry {
    /** Angles (rad) and shares that differ by less are alike. */
    private static final double ALIKE = 1e-6;

    /** Most-fold symmetry that is looked for. */
    private static final int MOST = 24;

    private TipSymmetry() {}

    /**
     * Angle after which the tip's pattern repeats, rad: 2 pi for a one-sided tip, pi/4 for a ring of eight, 0 where the clock angle does not matter.
     */
    static double periodRad(TipSpec tip) {
        List<TipSpec.Jet> jets = tip.jets();
        if (jets.stream().allMatch(j -> Math.abs(Math.sin(j.offAxisRad())) < ALIKE)) {
            return 0;
        }
        for (int n = MOST; n > 1; n--) {
            double turn = 2 * Math.PI / n;
            if (jets.stream().allMatch(j -> jets.stream().anyMatch(k -> same(j, turn, k)))) {
                return turn;
            }
        }
        return 2 * Math.PI;
    }

    private static boolean same(TipSpec.Jet a, double turn, TipSpec.Jet b) {
        double off = Math.abs(Math.sin(a.offAxisRad())) < ALIKE
                ? 0
                : Math.abs(Math.IEEEremainder(a.clockRad() + turn - b.clockRad(), 2 * Math.PI));
        return off < ALIKE
                && Math.abs(a.offAxisRad() - b.offAxisRad()) < ALIKE
                && Math.abs(a.orificeM() - b.orificeM()) < ALIKE * b.orificeM()
                && Math.abs(a.liquidShare() - b.liquidShare()) < ALIKE
                && Math.abs(a.airShare() - b.airShare()) < ALIKE;
    }
}
