package baymist.fog;

import baymist.problem.SimulationException;
import baymist.scene.Transport;
import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/**
 * The droplets of one bin: their mass in each cell, what they left on walls and carried out, and the stepping. Owned by
 * {@link FogStepper}; touched by one thread at a time.
 */
final class FogBin {
    /**
     * Share of a cell that may leave in one explicit step. What drifts with limited slopes counts {@link FogRates#SLOPED_WEIGHT} more: of a pure drift
     * 0.6 may leave.
     */
    static final double COURANT = 0.9;

    /** A split step must be this many times longer than an explicit one to be worth its cost. */
    static final double WORTHWHILE = 8;

    /**
     * Share of the bin that may change place or leave in one split step; of the geometric mean of the mass when the sources
     * stopped and the present mass, so that steps grow as the bin fades. ASSUMED: the first-order error stays near half of it; tested
     * against the explicit transport.
     */
    static final double SMOOTH_CHANGE = 0.004;

    /**
     * A bin with less than this share of all fog stays where it hangs until a jet adds to it: it would take the longest part of the steps (the largest
     * droplets, long fallen) for a film that no balance could weigh. It counts as airborne, so no mass is lost. Where transport is left to the program.
     */
    static final double SPENT_SHARE = 1e-9;

    /** ASSUMED: a bin that holds less than this share of all fog may take coarser split steps; its error cannot show. */
    private static final double FAINT_SHARE = 1e-3;

    /** Masses below are set to zero, kg, so that arithmetic never meets subnormal numbers. */
    static final double VANISHING_KG = 1e-250;

    /** More steps than this in one window are refused. */
    private static final double MOST_STEPS = 1e8;

    private final VoxelGrid grid;
    private final FogLinks links;
    private final int bin;
    private final int bins;
    private final double settlingMPerS;
    private final Transport transport;

    /** Whether slopes are used in the window that is under way. */
    private boolean limited;

    /** Suspended mass, kg, [cells]. */
    private double[] mass;

    /** Sum of {@link #mass}; NaN if it has to be added up anew, kg. */
    private double airborneKg = Double.NaN;

    /** What takes fog in this window and what comes in. */
    final FogSinks sinks;

    /** Mass at the start of the window and the limit below which a bin may be stepped coarsely, kg. */
    private double before;

    private double faintKg;

    /** Whether the bin went by split steps when it last moved. */
    private boolean splitLast;

    /** kg, [surfels]. */
    final double[] deposited;

    /** kg, [openings]. */
    final double[] overspray;

    double sourcedKg;

    /** Mass that audits of steps in single precision put right, of either sign, added up, kg. */
    double auditedKg;

    long explicitSteps;

    /** Cells and links touched by explicit steps. */
    long updates;

    long implicitSteps;
    double smallestStepS = Double.POSITIVE_INFINITY;
    int limitCell = -1;
    String reason = "nothing moved yet";

    /** Length of split step that the smoothness of the fog allows, s; 0 = not known. */
    private double smoothStepS;

    /** Largest rate of the operator for which {@link #smoothStepS} was found, 1/s. */
    private double smoothRate;

    /** Mass when the sources stopped, kg; the measure of changes does not depend on how time is cut into windows. */
    private double fullKg;

    /** Whether the next split step goes x, y, z or z, y, x. */
    private boolean backwards;

    FogBin(VoxelGrid grid, FogLinks links, int bin, int bins, double settlingMPerS, int openings, Transport transport) {
        this.grid = grid;
        this.sinks = new FogSinks(grid, bin, bins);
        this.bins = bins;
        this.links = links;
        this.bin = bin;
        this.settlingMPerS = settlingMPerS;
        this.transport = transport;
        this.mass = new double[grid.cellCount()];
        this.deposited = new double[grid.surfels().count()];
        this.overspray = new double[openings];
    }

    double mass(int cell) {
        return mass[cell];
    }

    void add(int cell, double massKg) {
        mass[cell] += massKg;
        changed();
    }

    double airborneKg() {
        if (Double.isNaN(airborneKg)) {
            airborneKg = sum(mass);
        }
        return airborneKg;
    }

    /** To be called when masses have changed. */
    private void changed() {
        airborneKg = Double.NaN;
    }

    double settlingMPerS() {
        return settlingMPerS;
    }

    /** How a bin goes through a window. */
    enum Way {
        /** It stays where it is. */
        REST,

        /** By {@link #advance}. */
        ALONE,

        /** With others in {@link FogTogether}, unless split steps allow much longer ones. */
        TOGETHER
    }

    /**
     * Chooses the way through a window and fills in the sinks.
     *
     * @param allKg all fog that was put in so far, kg
     */
    Way begin(FogWindow window, WallSpeed walls, double allKg) {
        before = airborneKg();
        boolean frugal = transport == Transport.AUTO;
        SprayHits spray = window.spray;
        if (before <= (frugal ? SPENT_SHARE * allKg : 0)
                && (spray == null || FogSinks.sourceKgPerS(spray, bin, bins) == 0)) {
            return Way.REST;
        }
        faintKg = FAINT_SHARE * allKg;
        limited = transport.limited();
        sinks.fill(window, settlingMPerS, walls);
        return limited || frugal ? Way.TOGETHER : Way.ALONE;
    }

    /** Whether split steps are worth their cost, from the largest rates that pace a cell, 1/s. */
    boolean splits(double largestRate, double largestAirRate) {
        splitLast = links.chained && largestAirRate * WORTHWHILE < largestRate;
        return splitLast;
    }

    boolean splitLast() {
        return splitLast;
    }

    /** Rates for a bin that may go alone; {@link #advance} goes on from there. */
    void fill(FogWindow window, FogCommon common, FogRates rates) {
        rates.fill(window, common, sinks, bin, bins, settlingMPerS, limited);
    }

    /** Advances by itself over one window of constant rates, which are filled in. */
    void advance(FogWindow window, FogCommon common, FogRates rates, double durationS) {
        double limitS = noteLimit(window, common, rates.largestRate, rates.largestCell);
        sourcedKg += sinks.sourceKgPerS * durationS;
        rates.complete(common, limited);
        if (splits(rates.largestRate, rates.largestAirRate)) {
            rates.part(window, sinks, settlingMPerS, limited);
            fullKg = Math.max(sinks.sourceKgPerS > 0 ? 0 : fullKg, before + sinks.sourceKgPerS * durationS);
            advanceSmoothly(rates, durationS, limitS);
        } else {
            requireFeasible(Math.ceil(durationS / limitS));
            advanceExplicitly(rates, durationS, limitS);
        }
        changed();
        bookLosses(window, rates.exposure, rates);
    }

    /** Notes what limits the steps; returns the longest explicit one, s. */
    private double noteLimit(FogWindow window, FogCommon common, double largestRate, int largestCell) {
        double limitS = COURANT / largestRate;
        if (limitS < smallestStepS) {
            smallestStepS = limitS;
            limitCell = largestCell;
            reason = FogReason.of(grid, links, common, window, sinks, settlingMPerS, largestCell);
        }
        return limitS;
    }

    /** Begins steps together with others. */
    void join(FogWindow window, FogCommon common, double largestRate, int largestCell, double durationS) {
        double limitS = noteLimit(window, common, largestRate, largestCell);
        sourcedKg += sinks.sourceKgPerS * durationS;
        requireFeasible(Math.ceil(durationS / limitS));
    }

    /**
     * Books what joint steps took, whose masses are in place, after an audit: what was there and what came in must be what is there and what was taken. Steps in
     * single precision leave some 1e-8 of it open, which all shares make up for alike.
     *
     * @param exposure kg s, [cells]; changed
     */
    void finish(FogWindow window, RateLevels levels, double[] exposure, double durationS) {
        explicitSteps += levels.finestSteps();
        updates += levels.updates();
        double due = before + sinks.sourceKgPerS * durationS;
        changed();
        double found = airborneKg() + taken(window, exposure);
        if (found > 0 && due > 0) {
            double factor = due / found;
            for (int c = 0; c < mass.length; c++) {
                mass[c] *= factor;
                exposure[c] *= factor;
            }
            changed();
            auditedKg += Math.abs(due - found);
        }
        bookLosses(window, exposure, null);
    }

    /** What walls, vents and beams took, kg. */
    private double taken(FogWindow window, double[] exposure) {
        double sum = 0;
        int[] cellOf = grid.surfels().cell();
        for (int s = 0; s < deposited.length; s++) {
            sum += sinks.wallRate[s] * exposure[cellOf[s]];
        }
        for (int v = 0; v < sinks.ventRate.length; v++) {
            sum += sinks.ventRate[v] * exposure[grid.faces().ventCell()[v]];
        }
        SprayHits spray = window.spray;
        for (int i = 0; spray != null && i < sinks.scourRate.length; i++) {
            sum += sinks.scourRate[i] * exposure[spray.scourCell()[i]];
        }
        return sum;
    }

    double[] massKg() {
        return mass;
    }

    /** With one step for all cells, or with levels of steps where a few fast cells would hold up the others. */
    private void advanceExplicitly(FogRates rates, double durationS, double limitS) {
        long count = (long) Math.max(1, Math.ceil(durationS / limitS));
        RateLevels levels = rates.multirate.levels;
        if (!limited && levels.choose(rates.paceRate, rates.largestRate, durationS, count, RateLevels.LATE_S)) {
            rates.multirate.advance(mass, rates);
            explicitSteps += levels.finestSteps();
            updates += levels.updates();
            return;
        }
        for (long i = 0; i < count; i++) {
            explicitStep(rates, durationS / count);
        }
    }

    private void requireFeasible(double needed) {
        if (!(needed <= MOST_STEPS)) {
            throw new SimulationException(
                    "fog: bin " + bin + " would need " + needed + " steps in one window; limit: " + reason);
        }
    }

    /** Explicit steps while the fog changes fast, split steps as soon as they may be much longer. */
    private void advanceSmoothly(FogRates rates, double durationS, double limitS) {
        double airLimitS = rates.largestAirRate > 0 ? COURANT / rates.largestAirRate : Double.POSITIVE_INFINITY;
        requireFeasible(durationS / airLimitS);
        if (rates.largestRate != smoothRate) {
            smoothRate = rates.largestRate;
            smoothStepS = 0;
        }
        double left = durationS;
        while (left > 0) {
            double wanted = Math.min(smoothStepS, airLimitS);
            boolean split = Math.min(wanted, left) > WORTHWHILE * limitS;
            double stepS = shareOf(left, split ? wanted : limitS);
            double changed;
            if (split) {
                changed = splitStep(rates, stepS);
                left -= stepS;
            } else {
                // The change is measured once for a handful of steps: measuring costs as much as a step.
                double count = Math.max(1, Math.min(WORTHWHILE, Math.floor(left / stepS * (1 + 1e-12))));
                for (int i = 0; i < count; i++) {
                    explicitStep(rates, stepS);
                }
                changed = changeFromNext(rates);
                left -= count * stepS;
            }
            left = left <= 1e-12 * durationS ? 0 : left;
            double judgedKg = SMOOTH_CHANGE * Math.max(faintKg, Math.sqrt(fullKg * sum(mass)));
            double allowed = stepS * judgedKg / Math.max(changed, 1e-3 * judgedKg);
            smoothStepS = split ? Math.min(Math.max(allowed, 0.2 * stepS), 1.5 * stepS) : allowed;
        }
    }

    /** The step, or an equal part of what is left so that no sliver remains. */
    private static double shareOf(double left, double stepS) {
        double count = Math.ceil(left / stepS * (1 - 1e-12));
        return count <= 4 ? left / Math.max(count, 1) : stepS;
    }

    /** Explicit step of the whole operator. Afterwards {@code rates.next} holds the state before the step. */
    private void explicitStep(FogRates rates, double stepS) {
        double[] old = mass;
        double[] next = rates.next;
        double[] loss = rates.loss;
        double[] source = rates.source;
        double[] exposure = rates.exposure;
        for (int c = 0; c < old.length; c++) {
            double m = old[c];
            if (m < VANISHING_KG && m > -VANISHING_KG) {
                m = 0;
                old[c] = 0;
            }
            exposure[c] += stepS * m;
            next[c] = m + stepS * (source[c] - loss[c] * m);
        }
        exchange(old, next, rates.up, rates.down, stepS);
        if (limited) {
            rates.exchange.add(old, next, rates.lean, rates.drift, rates.outRate, rates.slopedRate, stepS);
        }
        mass = next;
        rates.swapNext(old);
        explicitSteps++;
        updates += mass.length + links.count();
    }

    private void exchange(double[] old, double[] next, double[] up, double[] down, double stepS) {
        int[] low = links.low;
        int[] high = links.high;
        for (int l = 0; l < low.length; l++) {
            int a = low[l];
            int b = high[l];
            double moved = stepS * (up[l] * old[a] - down[l] * old[b]);
            next[a] -= moved;
            next[b] += moved;
        }
    }

    /** Air explicitly (skipped if still), then settling, eddies and walls implicitly along lines. Returns the change, kg. */
    private double splitStep(FogRates rates, double stepS) {
        double[] before = mass;
        double[] next = rates.next;
        double[] airLoss = rates.airLoss;
        for (int c = 0; c < before.length; c++) {
            double m = before[c];
            rates.airExposure[c] += stepS * m;
            next[c] = m + stepS * (rates.source[c] - airLoss[c] * m);
        }
        if (rates.airMoves) {
            exchange(before, next, rates.airUp, rates.airDown, stepS);
            if (limited) {
                double[] air = rates.airLean;
                rates.exchange.add(before, next, air, air, rates.airOutRate, rates.airSlopedRate, stepS);
            }
        }
        for (int i = 0; i < 3; i++) {
            int a = backwards ? 2 - i : i;
            links.lines[a].step(
                    stepS, next, rates.axisExposure[a], rates.ownUp, rates.ownDown, rates.axisWallRate[a], rates.work);
        }
        backwards = !backwards;
        mass = next;
        rates.swapNext(before);
        implicitSteps++;
        return changeFromNext(rates);
    }

    /** Mass that moved or left or came in the last step, kg (half the L1 change plus half the net change at most). */
    private double changeFromNext(FogRates rates) {
        double[] before = rates.next;
        double sum = 0;
        for (int c = 0; c < before.length; c++) {
            sum += Math.abs(mass[c] - before[c]);
        }
        return sum;
    }

    /** Rates are constant in the window, so each sink's share is its rate times the cell's time integral of mass. */
    private void bookLosses(FogWindow window, double[] exposure, @Nullable FogRates split) {
        int[] cellOf = grid.surfels().cell();
        byte[] direction = grid.surfels().direction();
        for (int s = 0; s < deposited.length; s++) {
            int c = cellOf[s];
            double along = split == null ? 0 : split.axisExposure[direction[s] / 2][c];
            deposited[s] += sinks.wallRate[s] * (exposure[c] + along);
        }
        FaceSet faces = grid.faces();
        for (int v = 0; v < sinks.ventRate.length; v++) {
            int c = faces.ventCell()[v];
            double air = split == null ? 0 : split.airExposure[c];
            overspray[faces.ventOpening()[v]] += sinks.ventRate[v] * (exposure[c] + air);
        }
        SprayHits spray = window.spray;
        if (spray != null) {
            for (int i = 0; i < sinks.scourRate.length; i++) {
                int c = spray.scourCell()[i];
                double air = split == null ? 0 : split.airExposure[c];
                deposited[spray.scourSurfel()[i]] += sinks.scourRate[i] * (exposure[c] + air);
            }
        }
    }

    void requireSound(double fromS, double toS, double diameterM) {
        for (int c = 0; c < mass.length; c++) {
            if (!(mass[c] >= 0 && mass[c] <= Double.MAX_VALUE)) {
                throw new SimulationException("fog: mass " + mass[c] + " kg in cell " + c + " at " + grid.centre(c)
                        + " m, bin " + bin + " (" + diameterM * 1e6 + " µm), between " + fromS + " and " + toS + " s");
            }
        }
    }

    static double sum(double[] values) {
        double sum = 0;
        double lost = 0;
        for (double v : values) {
            double t = sum + v;
            lost += Math.abs(sum) >= Math.abs(v) ? sum - t + v : v - t + sum;
            sum = t;
        }
        return sum + lost;
    }
}
