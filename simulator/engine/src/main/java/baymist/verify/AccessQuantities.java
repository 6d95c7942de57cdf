package baymist.verify;

import baymist.access.ClockAngle;
import baymist.airflow.OpenFractions;
import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.scene.PhaseStates;
import baymist.units.Dimension;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Clock angles and the gap that a wand leaves. */
final class AccessQuantities {
    private AccessQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put(
                "pinComponent",
                in -> ClockAngle.pin(in.vector("wand").unit(), in.si("clock", Dimension.ANGLE))
                        .dot(in.vector("along").unit()));
        all.put(
                "clockAngle",
                in -> ClockAngle.of(
                        in.vector("wand").unit(), in.vector("direction").unit()));
        all.put("gapShareRoundWand", AccessQuantities::gapShare);
        return all;
    }

    private static double gapShare(Inputs in) {
        Outline hole = new Outline.Circle(in.lengthM("hole") / 2);
        PlacedOutline place = PlacedOutline.of(hole, Vec3.ZERO, Vec3.X, Vec3.Z);
        Opening opening = new Opening("hole", 0, Opening.Kind.PORT, place, PhaseStates.ALWAYS_OPEN, true);
        return OpenFractions.pass(List.of(opening), 0, in.lengthM("rod"))[0];
    }
}
