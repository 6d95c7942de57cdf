package baymist.run;

import baymist.spray.JetPush;
import baymist.spray.SprayCast;
import baymist.spray.SprayDetail;
import baymist.spray.SprayHits;
import baymist.voxel.GridPart;
import java.util.Arrays;
import java.util.function.IntUnaryOperator;

/** What jets do in the cells and on the surfels of a part, from what they do in the whole; what arrives elsewhere is added up. */
record PartSpray(SprayCast cast, double beyondKgPerS) {
    /** Places in a list whose cell or surfel the part holds, and their numbers in the part. */
    private record Kept(int[] place, int[] number) {
        static Kept of(int[] whole, IntUnaryOperator inPart) {
            return both(whole, inPart, whole, w -> 0);
        }

        /** Those whose second number is in the part, too. */
        static Kept both(int[] whole, IntUnaryOperator inPart, int[] second, IntUnaryOperator secondInPart) {
            int[] place = new int[whole.length];
            int[] number = new int[whole.length];
            int count = 0;
            for (int i = 0; i < whole.length; i++) {
                int n = inPart.applyAsInt(whole[i]);
                if (n >= 0 && secondInPart.applyAsInt(second[i]) >= 0) {
                    place[count] = i;
                    number[count++] = n;
                }
            }
            return new Kept(Arrays.copyOf(place, count), Arrays.copyOf(number, count));
        }

        double[] of(double[] values) {
            return of(values, 1);
        }

        double[] of(double[] values, int each) {
            double[] some = new double[place.length * each];
            for (int i = 0; i < some.length; i++) {
                some[i] = values[place[i / each] * each + i % each];
            }
            return some;
        }

        /** Sum of the values left out. */
        double rest(double[] values, int each) {
            boolean[] mine = new boolean[values.length / each];
            for (int p : place) {
                mine[p] = true;
            }
            double sum = 0;
            for (int i = 0; i < values.length; i++) {
                sum += mine[i / each] ? 0 : values[i];
            }
            return sum;
        }
    }

    static PartSpray of(SprayCast whole, GridPart part, int bins) {
        SprayHits h = whole.hits();
        Kept hit = Kept.of(h.hitSurfel(), part::surfel);
        Kept fog = Kept.of(h.fogCell(), part::cell);
        Kept stream = Kept.of(h.streamCell(), part::cell);
        Kept scour = Kept.both(h.scourCell(), part::cell, h.scourSurfel(), part::surfel);
        int[] scourSurfel = new int[scour.place().length];
        for (int i = 0; i < scourSurfel.length; i++) {
            scourSurfel[i] = part.surfel(h.scourSurfel()[scour.place()[i]]);
        }
        int bay = part.bay(h.powerBay());
        SprayHits hits = new SprayHits(
                hit.number(),
                hit.of(h.hitKgPerS()),
                fog.number(),
                fog.of(h.fogKgPerS(), bins),
                h.escapedKgPerS(),
                stream.number(),
                stream.of(h.streamX()),
                stream.of(h.streamY()),
                stream.of(h.streamZ()),
                scour.number(),
                scourSurfel,
                scour.of(h.scourM3PerS()),
                scour.of(h.scourEfficiency(), bins),
                h.airM3PerS(),
                part.cell(h.airCell()),
                h.thrustN(),
                bay < 0 ? 0 : h.turbulentPowerW(),
                Math.max(0, bay),
                h.beyondFreeJetKgPerS(),
                h.sprayedKgPerS(),
                push(h.push(), part));
        double beyond = hit.rest(h.hitKgPerS(), 1) + fog.rest(h.fogKgPerS(), bins);
        return new PartSpray(new SprayCast(hits, detail(whole.detail(), hit, part, bins)), beyond);
    }

    private static JetPush push(JetPush p, GridPart part) {
        Kept kept = Kept.of(p.cell(), part::cell);
        return new JetPush(
                kept.number(),
                kept.of(p.x()),
                kept.of(p.y()),
                kept.of(p.z()),
                kept.of(p.flowKgPerS()),
                kept.of(p.powerW()));
    }

    private static SprayDetail detail(SprayDetail d, Kept hit, GridPart part, int bins) {
        Kept shear = Kept.of(d.shearSurfel(), part::surfel);
        return new SprayDetail(
                hit.of(d.halfKgPerS()),
                hit.of(d.byBinKgPerS(), bins),
                d.splashKgPerS(),
                shear.number(),
                shear.of(d.shearPaPerM()),
                shear.of(d.shearRadiusM()));
    }
}
