package baymist.recording;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.access.TipPose;
import baymist.access.WandPose;
import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.RayHit;
import baymist.geom.TriangleFilter;
import baymist.run.Approach;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import baymist.spray.JetSource;
import baymist.spray.RoundJet;
import baymist.spray.TipFlow;
import baymist.spray.TipJets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Where the wand is at any time: between stations it is drawn evenly along its way, as the hand does. Immutable. */
final class WandTrack {
    /** A jet that strikes nothing is not drawn beyond this, m. */
    private static final double FARTHEST_M = 10;

    private static final TriangleFilter ANY = (triangle, t, x, y, z) -> true;

    private final Scene scene;
    private final List<Stretch> stretches;
    private final double[] startS;
    private final Bvh tree;

    /** A station and the way that it is on. */
    record Stretch(Station station, Insertion insertion) {}

    /** @param stretches in order of time */
    WandTrack(Scene scene, Cavity cavity, List<Stretch> stretches) {
        this.scene = scene;
        this.stretches = List.copyOf(stretches);
        startS = stretches.stream().mapToDouble(s -> s.station().startS()).toArray();
        tree = Bvh.of(cavity.cutSheets());
    }

    WandMoment at(double timeS) {
        Stretch here = stretch(timeS);
        if (here == null) {
            return WandMoment.OUT;
        }
        Station station = here.station();
        PassSpec pass = scene.passes().get(station.pass());
        WandSpec wand = Approach.wand(scene, pass);
        double share = Math.max(0, Math.min(1, (timeS - station.startS()) / station.durationS()));
        double depth =
                Math.min(here.insertion().path().maxDepthM(), station.depthM() + station.travelM() * (0.5 - share));
        TipPose tip = here.insertion().path().tip(depth, pass.clockRad());
        WandPose body = here.insertion().path().body(Math.max(depth, 1e-6));
        return new WandMoment(true, station.pass(), depth, tip, body.centrelineM(), body.radiusM(), jets(wand, tip));
    }

    private @Nullable Stretch stretch(double timeS) {
        if (startS.length == 0 || timeS < startS[0]) {
            return null;
        }
        Stretch here = stretches.get(Times.at(startS, timeS));
        return timeS <= here.station().startS() + here.station().durationS() ? here : null;
    }

    private List<Jet> jets(WandSpec wand, TipPose tip) {
        List<Jet> jets = new ArrayList<>();
        double density = scene.ambient().densityKgPerM3();
        SupplySpec atTip = TipFlow.of(scene.supply(), wand, scene.product(), scene.ambient())
                .supply();
        for (JetSource source : TipJets.of(wand.tip(), tip, atTip, scene.ambient())) {
            double reach = FARTHEST_M;
            if (source.momentumN() > 0) {
                RoundJet free = new RoundJet(source.momentumN(), source.exitSpeedMPerS(), density);
                reach = Math.min(reach, RoundJet.DECAY * free.strengthM2PerS() / Jet.SLOW_M_PER_S);
            }
            RayHit hit = tree.closestHit(source.originM(), source.direction(), 0, reach, ANY);
            reach = hit == null ? reach : hit.t();
            jets.add(new Jet(
                    source.originM(),
                    source.direction(),
                    Math.atan(RoundJet.SPREAD * RoundJet.FOG_WIDTH),
                    reach,
                    source.liquidKgPerS()));
        }
        return jets;
    }
}
