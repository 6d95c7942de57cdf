package baymist.spray;

import baymist.access.Station;
import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.problem.SimulationException;
import baymist.scene.ProductSpec;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * Casts the jets of a station: what lands where, what becomes fog, what leaves, which air moves.
 *
 * <p>A cast is a pure function of its arguments; one caster may be used by several threads at once.
 */
public final class SprayCaster {
    /** Speed at which a jet hands its turbulence to the bay, m/s (docs/theory/spray.md, 8). */
    static final double CAP_M_PER_S = 5;

    private final SprayContext context;
    private final SupplySpec supply;

    /**
     * @param tracer exact crossings with {@code cavity.sheets()}
     * @param finder voxel elements at a point
     * @param supply as the scene states it; what is lost along a wand's bores is taken off here
     * @param settings how jets are sampled, and what pulls at the drops
     */
    public SprayCaster(
            Cavity cavity,
            VoxelGrid grid,
            SheetTracer tracer,
            SurfelFinder finder,
            SupplySpec supply,
            SizeBins bins,
            ProductSpec product,
            Air air,
            CastSettings settings) {
        double[] relaxation = new double[bins.count()];
        for (int b = 0; b < relaxation.length; b++) {
            relaxation[b] = Droplet.relaxationTimeS(bins.diameterM()[b], product.densityKgPerM3(), air);
        }
        double range = 2 * cavity.sheets().bounds().size().length();
        this.context = new SprayContext(
                grid,
                new SheetRays(cavity, tracer),
                finder,
                bins,
                relaxation,
                product,
                air,
                settings,
                RaySet.ofAir(settings.raysPerJet(), 0, settings.seed()),
                RaySet.ofLiquid(settings.raysPerJet(), 0, settings.seed()),
                range);
        this.supply = supply;
    }

    /**
     * What the tip does while it stands for this station, as rates.
     *
     * @param openFraction open share of each opening, [openings]; above 0 an opening lets rays pass
     * @throws SimulationException if the tip lies outside the cavity's cells
     */
    public SprayHits cast(Station station, WandSpec wand, double[] openFraction) {
        return castWithDetail(station, wand, openFraction).hits();
    }

    /** The same with what tells how sure it is. */
    public SprayCast castWithDetail(Station station, WandSpec wand, double[] openFraction) {
        Vec3 tip = station.pose().positionM();
        int tipCell = tipCell(station, openFraction);
        if (tipCell < 0) {
            throw new SimulationException(String.format(
                    java.util.Locale.ROOT,
                    "spray: the tip at (%.4f, %.4f, %.4f) m, depth %.4f m, time %.2f s lies outside the cavity",
                    tip.x(),
                    tip.y(),
                    tip.z(),
                    station.depthM(),
                    station.startS()));
        }
        SupplySpec atTip =
                TipFlow.of(supply, wand, context.product(), context.air()).supply();
        List<JetSource> jets = TipJets.of(wand.tip(), station.pose(), atTip, context.air());
        SprayTally tally = new SprayTally(
                context.bins().count(),
                Math.max(1, context.grid().surfels().count()),
                context.grid().bays().size());
        SprayContext here = context.at(number(station));
        JetFlight flight = new JetFlight(here, tally, tipCell, openFraction);
        for (int j = 0; j < jets.size(); j++) {
            JetFlight.Merging merging = JetFlight.Merging.of(jets, j, here);
            flight.cast(jets.get(j), station.pose().axis(), station.travelM(), merging);
        }
        return new SprayCast(tally.close(tipCell, context.air().densityKgPerM3()), tally.detail());
    }

    /** Number of a station along its draw-back, by its place alone; 0 while the wand is held. */
    private static long number(Station station) {
        return station.travelM() > 0 ? Math.round(station.depthM() / station.travelM()) : 0;
    }

    /**
     * Cell at the tip: the one that holds it, if no sheet lies between tip and centre. Otherwise a sheet is close by, behind the tip
     * just after the entry and ahead of it at the end of the way, and the cell on the tip's side of it counts.
     */
    private int tipCell(Station station, double[] openFraction) {
        Vec3 tip = station.pose().positionM();
        int holding = context.grid().cellHolding(tip);
        if (holding >= 0) {
            Vec3 way = context.grid().centre(holding).minus(tip);
            double length = way.length();
            if (length == 0) {
                return holding;
            }
            SheetRays.Followed seen = context.rays().follow(tip, way.times(1 / length), length, openFraction);
            if (seen.end() == SheetRays.End.NOTHING && seen.passedM().length == 0) {
                return holding;
            }
        }
        Vec3 axis = station.pose().axis();
        double ahead = context.rays().clearM(tip, axis, context.rangeM(), openFraction);
        Vec3 likely = station.depthM() < ahead ? axis : axis.negate();
        int cell = context.finder().cellNear(tip, likely);
        // just behind a hole between bays the sheet lies behind the tip however deep it is
        return cell >= 0 ? cell : context.finder().cellNear(tip, likely.negate());
    }
}
