package baymist.spray;

import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.scene.SupplySpec;
import baymist.scene.TipSpec;
import baymist.units.Air;
import java.util.ArrayList;
import java.util.List;

/**
 * The jets of a tip in structure axes with their flows.
 *
 * <p>Under a regulated pressure each jet passes what its own orifice lets through ({@link ChokedOrifice}); the stated share of
 * air tells only whether it has air at all. Under a stated exit speed a jet carries {@code ρ A U} at ambient density and the
 * thrust {@code ρ A U²}. Liquid goes by the stated shares. The speed that caps the centre of the jet is thrust over mass flow:
 * that of the jet expanded to ambient pressure. All jets leave from the wand's axis at the tip.
 */
public final class TipJets {
    private TipJets() {}

    /** The jets of a tip in the order of the tip. */
    public static List<JetSource> of(TipSpec tip, TipPose pose, SupplySpec supply, Air air) {
        List<JetSource> jets = new ArrayList<>();
        for (TipSpec.Jet jet : tip.jets()) {
            Vec3 direction = direction(jet, pose);
            double liquid = supply.liquidKgPerS() * jet.liquidShare();
            double mass = 0;
            double thrust = 0;
            double speed = 0;
            if (jet.airShare() > 0 && supply instanceof SupplySpec.Pressure p) {
                ChokedOrifice o = ChokedOrifice.of(
                        jet.orificeM(), p.dischargeCoefficient(), p.gaugePa(), air.temperatureK(), air.pressurePa());
                mass = o.massKgPerS();
                thrust = o.thrustN();
                speed = o.effectiveSpeedMPerS();
            } else if (jet.airShare() > 0 && supply instanceof SupplySpec.ExitSpeed e) {
                speed = e.speedMPerS();
                mass = air.densityKgPerM3() * Math.PI / 4 * jet.orificeM() * jet.orificeM() * speed;
                thrust = mass * speed;
            }
            jets.add(new JetSource(pose.positionM(), direction, thrust, mass, liquid, speed));
        }
        return List.copyOf(jets);
    }

    /** Off-axis angle from the wand's axis, clock angle from the pin, clockwise seen looking forward along the wand. */
    static Vec3 direction(TipSpec.Jet jet, TipPose pose) {
        Vec3 right = pose.axis().cross(pose.pin());
        double sin = Math.sin(jet.offAxisRad());
        return pose.axis()
                .times(Math.cos(jet.offAxisRad()))
                .plus(sin * Math.cos(jet.clockRad()), pose.pin())
                .plus(sin * Math.sin(jet.clockRad()), right)
                .unit();
    }
}
