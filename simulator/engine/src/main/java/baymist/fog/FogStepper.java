package baymist.fog;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SimulationException;
import baymist.scene.Transport;
import baymist.scene.WallFinish;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.concurrent.ConcurrentLinkedDeque;
import org.jspecify.annotations.Nullable;

/**
 * Carries, settles, spreads and deposits the suspended droplets; owns their state. See the package page for the transport and
 * docs/theory/fog.md for the equations.
 *
 * <p>Mutable, to be used by one thread; it spreads its own work over the given workers, a bin or four of them a piece, with the same bits
 * for any number of threads. Arrays that are handed out are copies; cell-bin arrays have the bin innermost.
 */
public final class FogStepper {
    private final VoxelGrid grid;
    private final SizeBins bins;
    private final Vec3 down;
    private final Workers workers;
    private final FogLinks links;
    private final WallSpeed walls;
    private final FogBin[] fog;
    private final double[] peak;
    private final int openings;
    private final ConcurrentLinkedDeque<FogRates> spareRates = new ConcurrentLinkedDeque<>();
    private final Transport transport;
    private final FogCommon common;
    private final FogTogether together;
    private double timeS;
    private double releasedKg;

    /** Low-order part of {@link #releasedKg} (Neumaier's sum): a fine grid adds a million equal parts. */
    private double releasedLostKg;

    private double airBudgetError;

    /** Air that left by each opening so far, m³, [openings]. */
    private final double[] ventedAirM3;

    /** Largest sum of u*² A over the jets' thrust met with the trigger held, m⁴/s²/N. */
    private double shearOverThrust;

    /**
     * @param bins droplet sizes; diameter 0 is a tracer
     * @param productDensityKgPerM3 density of the liquid, kg/m³
     * @param air properties of the air in the cavity
     * @param gravityMPerS2 gravity as a vector, m/s², any direction; zero = weightless
     */
    public FogStepper(
            VoxelGrid grid, SizeBins bins, double productDensityKgPerM3, Air air, Vec3 gravityMPerS2, Workers workers) {
        this(grid, bins, productDensityKgPerM3, air, gravityMPerS2, WallFinish.SMOOTH, workers);
    }

    /** The same with sheet of a finish. */
    public FogStepper(
            VoxelGrid grid,
            SizeBins bins,
            double productDensityKgPerM3,
            Air air,
            Vec3 gravityMPerS2,
            WallFinish finish,
            Workers workers) {
        this(grid, bins, productDensityKgPerM3, air, gravityMPerS2, finish, Transport.SECOND_ORDER, workers);
    }

    /** The same with transport of a stated order. */
    public FogStepper(
            VoxelGrid grid,
            SizeBins bins,
            double productDensityKgPerM3,
            Air air,
            Vec3 gravityMPerS2,
            WallFinish finish,
            Transport transport,
            Workers workers) {
        this(
                grid,
                bins,
                droplets(bins, productDensityKgPerM3, air, gravityMPerS2.length()),
                air,
                gravityMPerS2,
                finish,
                transport,
                workers);
    }

    FogStepper(VoxelGrid grid, SizeBins bins, FogDroplet[] droplets, Air air, Vec3 gravityMPerS2, Workers workers) {
        this(grid, bins, droplets, air, gravityMPerS2, WallFinish.SMOOTH, Transport.SECOND_ORDER, workers);
    }

    private FogStepper(
            VoxelGrid grid,
            SizeBins bins,
            FogDroplet[] droplets,
            Air air,
            Vec3 gravityMPerS2,
            WallFinish finish,
            Transport transport,
            Workers workers) {
        this(grid, bins, droplets, WallSpeed.of(droplets, air, finish), gravityMPerS2, transport, workers);
    }

    FogStepper(
            VoxelGrid grid,
            SizeBins bins,
            FogDroplet[] droplets,
            WallSpeed walls,
            Vec3 gravityMPerS2,
            Workers workers) {
        this(grid, bins, droplets, walls, gravityMPerS2, Transport.SECOND_ORDER, workers);
    }

    FogStepper(
            VoxelGrid grid,
            SizeBins bins,
            FogDroplet[] droplets,
            WallSpeed walls,
            Vec3 gravityMPerS2,
            Transport transport,
            Workers workers) {
        this.grid = grid;
        this.bins = bins;
        this.down = gravityMPerS2.length() > 0 ? gravityMPerS2.unit() : Vec3.ZERO;
        this.workers = workers;
        this.transport = transport;
        this.walls = walls;
        for (int c = 0; c < grid.cellCount(); c++) {
            if (!(grid.volumeM3(c) > 0)) {
                throw new IllegalArgumentException("cell " + c + " has a volume of " + grid.volumeM3(c) + " m³");
            }
        }
        this.links = new FogLinks(grid);
        this.openings = openings(grid);
        this.ventedAirM3 = new double[openings];
        this.fog = new FogBin[bins.count()];
        for (int b = 0; b < fog.length; b++) {
            fog[b] = new FogBin(grid, links, b, fog.length, droplets[b].settlingMPerS(), openings, transport);
        }
        this.common = new FogCommon(grid, links, down, transport.limited());
        this.together = new FogTogether(
                grid, links, common, transport == Transport.FIRST_ORDER ? new FogBin[0] : fog, transport.limited());
        this.peak = new double[grid.cellCount()];
    }

    /** Steps with plain loops from now on, whatever this Java offers: to compare. Results don't depend on it. */
    public void stepPlainly() {
        together.use(new PlainKernel());
    }

    /** Steps with a given kernel from now on. */
    void useKernel(FogKernel kernel) {
        together.use(kernel);
    }

    private static FogDroplet[] droplets(SizeBins bins, double density, Air air, double gravityMPerS2) {
        FogDroplet[] droplets = new FogDroplet[bins.count()];
        for (int b = 0; b < droplets.length; b++) {
            droplets[b] = FogDroplet.of(bins.diameterM()[b], density, air, gravityMPerS2);
        }
        return droplets;
    }

    private static int openings(VoxelGrid grid) {
        FaceSet faces = grid.faces();
        int most = -1;
        for (int[] list : new int[][] {
            faces.opening(), faces.ventOpening(), grid.surfels().closure()
        }) {
            for (int opening : list) {
                most = Math.max(most, opening);
            }
        }
        return most + 1;
    }

    /** Adds fog of one concentration everywhere, split over the bins by their shares, kg/m³ of air. */
    public void addUniform(double concentrationKgPerM3) {
        for (int c = 0; c < grid.cellCount(); c++) {
            put(c, concentrationKgPerM3 * grid.volumeM3(c));
        }
        notePeak();
    }

    /** Adds fog to one cell, split over the bins by their shares, kg. */
    public void release(int cell, double massKg) {
        put(cell, massKg);
        peak[cell] = Math.max(peak[cell], concentrationKgPerM3(cell));
    }

    private void put(int cell, double massKg) {
        if (!(massKg >= 0) || Double.isInfinite(massKg)) {
            throw new IllegalArgumentException("release of " + massKg + " kg");
        }
        double total = 0;
        for (double share : bins.share()) {
            total += share;
        }
        for (int b = 0; b < fog.length; b++) {
            double part = massKg * (bins.share()[b] / total);
            fog[b].add(cell, part);
            double t = releasedKg + part;
            releasedLostKg += releasedKg >= part ? releasedKg - t + part : part - t + releasedKg;
            releasedKg = t;
        }
    }

    /**
     * Advances the fog while one air field and one set of sources hold.
     *
     * @param sources what the jets do, or null while the trigger is off
     * @param durationS length of the window, s, 0 or more
     * @throws SimulationException if a mass turns out negative or not a number (says cell, bin and time), or if the field is
     *     not finite
     */
    public void advance(AirField field, @Nullable SprayHits sources, double durationS) {
        if (!(durationS >= 0) || Double.isInfinite(durationS)) {
            throw new IllegalArgumentException("window of " + durationS + " s");
        }
        if (field.openFraction().length < openings) {
            throw new IllegalArgumentException(
                    "openFraction has " + field.openFraction().length + " entries, the grid has " + openings);
        }
        if (durationS == 0) {
            return;
        }
        FogWindow window = new FogWindow(grid, field, sources, down, workers);
        common.fill(window, workers);
        airBudgetError = Math.max(airBudgetError, common.airBudgetError);
        double untilS = timeS + durationS;
        carry(window, transport.limited(), durationS);
        timeS = untilS;
        noteAir(field, sources, durationS);
        notePeak();
    }

    private void carry(FogWindow window, boolean slopes, double durationS) {
        double allKg = releasedKg() + sourcedKg();
        FogBin.Way[] way = new FogBin.Way[fog.length];
        boolean[] joint = new boolean[fog.length];
        workers.forEach(fog.length, b -> {
            way[b] = fog[b].begin(window, walls, allKg);
            joint[b] = way[b] == FogBin.Way.TOGETHER && !fog[b].splitLast();
            if (way[b] == FogBin.Way.TOGETHER && fog[b].splitLast()) {
                // Bins that were split mostly are split again: then there is no need to work out the rates of a group.
                FogRates rates = borrow();
                fog[b].fill(window, common, rates);
                joint[b] = !fog[b].splits(rates.largestRate, rates.largestAirRate);
                spareRates.push(rates);
            }
        });
        together.prepare(joint, slopes, window, durationS, workers);
        together.arrange(slopes, window.spray, durationS, workers);
        workers.forEach(together.busy() + fog.length, i -> {
            int b = i - together.busy();
            if (b < 0) {
                together.step(i, slopes);
            } else if (way[b] != FogBin.Way.REST && !joint[b]) {
                FogRates rates = borrow();
                fog[b].fill(window, common, rates);
                fog[b].advance(window, common, rates, durationS);
                spareRates.push(rates);
            }
        });
        workers.forBlocks(grid.cellCount(), FogLinks.BLOCK, together::give);
        workers.forEach(fog.length, b -> {
            if (joint[b]) {
                together.book(b, window, durationS);
            }
            fog[b].requireSound(timeS, timeS + durationS, bins.diameterM()[b]);
        });
    }

    private FogRates borrow() {
        FogRates spare = spareRates.poll();
        return spare == null ? new FogRates(grid, links) : spare;
    }

    private void noteAir(AirField field, @Nullable SprayHits sources, double durationS) {
        FaceSet faces = grid.faces();
        for (int v = 0; v < faces.vents(); v++) {
            ventedAirM3[faces.ventOpening()[v]] += Math.max(0, field.ventFluxM3PerS()[v]) * durationS;
        }
        if (sources == null || !(sources.thrustN() > 0)) {
            return;
        }
        double sum = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            double speed = field.frictionSpeedMPerS()[s];
            sum += speed * speed * grid.surfels().areaM2()[s];
        }
        shearOverThrust = Math.max(shearOverThrust, sum / sources.thrustN());
    }

    private void notePeak() {
        workers.forBlocks(peak.length, FogLinks.BLOCK, (from, to) -> {
            for (int c = from; c < to; c++) {
                peak[c] = Math.max(peak[c], concentrationKgPerM3(c));
            }
        });
    }

    /** Time advanced so far, s. */
    public double timeS() {
        return timeS;
    }

    public int bins() {
        return fog.length;
    }

    /** Fog put in by {@link #addUniform} and {@link #release}, kg. */
    public double releasedKg() {
        return releasedKg + releasedLostKg;
    }

    /** Fog put in by sprays, kg. */
    public double sourcedKg() {
        double sum = 0;
        for (FogBin f : fog) {
            sum += f.sourcedKg;
        }
        return sum;
    }

    /**
     * Mass that audits of steps in single precision put right, of either sign, added up over sizes and windows, kg. It is in no other figure: it says how far these
     * could be off.
     */
    public double auditedKg() {
        double sum = 0;
        for (FogBin f : fog) {
            sum += f.auditedKg;
        }
        return sum;
    }

    /** Suspended mass, summed from the field, kg. */
    public double airborneKg() {
        double sum = 0;
        for (FogBin f : fog) {
            sum += f.airborneKg();
        }
        return sum;
    }

    public double airborneKg(int bin) {
        return fog[bin].airborneKg();
    }

    /** Fog carried out through all openings, kg. */
    public double oversprayKg() {
        double sum = 0;
        for (int o = 0; o < openings; o++) {
            sum += oversprayKg(o);
        }
        return sum;
    }

    /** Fog carried out through one opening, kg; 0 for an opening without a vent face. */
    public double oversprayKg(int opening) {
        double sum = 0;
        for (int b = 0; b < fog.length; b++) {
            sum += oversprayKg(opening, b);
        }
        return sum;
    }

    public double oversprayKg(int opening, int bin) {
        return opening < openings ? fog[bin].overspray[opening] : 0;
    }

    /** Air that went out through one opening so far, m³. */
    public double ventedAirM3(int opening) {
        return opening < openings ? ventedAirM3[opening] : 0;
    }

    /**
     * Largest force of the air along all walls over the jets' thrust, at an air density in kg/m³, with the trigger held: above 1 the friction
     * speeds can't be right, since walls can't take more momentum than the jets bring.
     */
    public double wallForceOverThrust(double airDensityKgPerM3) {
        return airDensityKgPerM3 * shearOverThrust;
    }

    /** Fog deposited on one surfel so far, closures included, kg. */
    public double depositedKg(int surfel) {
        double sum = 0;
        for (FogBin f : fog) {
            sum += f.deposited[surfel];
        }
        return sum;
    }

    public double depositedKg(int surfel, int bin) {
        return fog[bin].deposited[surfel];
    }

    /** Fog deposited on each surfel so far, kg, [surfels]; a copy. */
    public double[] depositedKg() {
        double[] sum = new double[grid.surfels().count()];
        for (int s = 0; s < sum.length; s++) {
            sum[s] = depositedKg(s);
        }
        return sum;
    }

    /** The same by bin, kg, [surfels * bins], bin innermost; a copy. */
    public double[] depositedByBinKg() {
        int n = fog.length;
        double[] all = new double[grid.surfels().count() * n];
        for (int i = 0; i < all.length; i++) {
            all[i] = fog[i % n].deposited[i / n];
        }
        return all;
    }

    /** Concentration, kg/m³, [cells * bins], bin innermost; a copy. */
    public double[] concentrationKgPerM3() {
        int n = fog.length;
        double[] all = new double[grid.cellCount() * n];
        for (int i = 0; i < all.length; i++) {
            all[i] = fog[i % n].mass(i / n) / grid.volumeM3(i / n);
        }
        return all;
    }

    public double concentrationKgPerM3(int cell, int bin) {
        return fog[bin].mass(cell) / grid.volumeM3(cell);
    }

    /** Concentration of all bins together, kg/m³, [cells]; a copy. */
    public double[] concentrationOfAllKgPerM3() {
        double[] all = new double[grid.cellCount()];
        workers.forBlocks(all.length, FogLinks.BLOCK, (from, to) -> {
            for (int c = from; c < to; c++) {
                all[c] = concentrationKgPerM3(c);
            }
        });
        return all;
    }

    /** Concentration of all bins together, kg/m³. */
    public double concentrationKgPerM3(int cell) {
        double sum = 0;
        for (FogBin f : fog) {
            sum += f.mass(cell);
        }
        return sum / grid.volumeM3(cell);
    }

    /** Suspended mass over air volume of a bay, kg/m³; 0 for a bay without cells. */
    public double meanConcentrationKgPerM3(int bay) {
        double massKg = 0;
        double volumeM3 = 0;
        for (int c = 0; c < grid.cellCount(); c++) {
            if (grid.bayOfCell(c) == bay) {
                volumeM3 += grid.volumeM3(c);
                massKg += concentrationKgPerM3(c) * grid.volumeM3(c);
            }
        }
        return volumeM3 > 0 ? massKg / volumeM3 : 0;
    }

    /** The same for every bay, [bays]. */
    public double[] meanConcentrationKgPerM3() {
        double[] massKg = new double[grid.bays().size()];
        double[] volumeM3 = new double[massKg.length];
        for (int c = 0; c < grid.cellCount(); c++) {
            volumeM3[grid.bayOfCell(c)] += grid.volumeM3(c);
            for (FogBin f : fog) {
                massKg[grid.bayOfCell(c)] += f.mass(c);
            }
        }
        for (int b = 0; b < massKg.length; b++) {
            massKg[b] = volumeM3[b] > 0 ? massKg[b] / volumeM3[b] : 0;
        }
        return massKg;
    }

    /** Largest concentration met in each cell at the ends of windows, kg/m³, [cells]; a copy. */
    public double[] peakConcentrationKgPerM3() {
        return peak.clone();
    }

    public FogStats stats() {
        long explicit = 0;
        long updates = 0;
        long implicit = 0;
        int limiting = 0;
        for (int b = 0; b < fog.length; b++) {
            explicit += fog[b].explicitSteps;
            updates += fog[b].updates;
            implicit += fog[b].implicitSteps;
            limiting = fog[b].smallestStepS < fog[limiting].smallestStepS ? b : limiting;
        }
        FogBin f = fog[limiting];
        return new FogStats(
                explicit,
                updates,
                implicit,
                f.smallestStepS,
                f.limitCell,
                f.limitCell < 0 ? -1 : limiting,
                f.reason,
                airBudgetError);
    }
}
