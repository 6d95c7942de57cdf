package baymist.fog;

/** The kernel in plain Java. */
final class PlainKernel implements FogKernel {
    private static final int W = FogGroup.LANES;

    // The lanes of what donor cells give are written out: then the compiler keeps them in registers. Lanes without a
    // bin hold zeros.

    @Override
    public void turn(FogGroup g, int[] cells, int from, int to, double stepS) {
        double[] mass = g.mass;
        double[] gathered = g.gathered;
        double[] held = g.held;
        double[] massSum = g.massSum;
        double[] source = g.source;
        double[] loss = g.loss;
        for (int i = from; i < to; i++) {
            int c = cells[i];
            double perM3 = g.perM3[c];
            int last = W * c + W;
            for (int p = W * c; p < last; p++) {
                double m = sound(mass[p] + gathered[p]);
                mass[p] = m;
                held[p] = m * perM3;
                massSum[p] += m;
                gathered[p] = stepS * (source[p] - loss[p] * m);
            }
        }
    }

    private static double sound(double m) {
        return m < FogBin.VANISHING_KG && m > -FogBin.VANISHING_KG ? 0 : m;
    }

    @Override
    public void give(FogGroup g, FogSides s, int from, int to, double stepS) {
        double[] held = g.held;
        double[] gathered = g.gathered;
        for (int i = from; i < to; i++) {
            double forth = stepS * g.up[s.link[i]];
            double back = stepS * g.down[s.link[i]];
            int a = W * s.first[i];
            int b = W * s.second[i];
            double m0 = forth * held[a] - back * held[b];
            double m1 = forth * held[a + 1] - back * held[b + 1];
            double m2 = forth * held[a + 2] - back * held[b + 2];
            double m3 = forth * held[a + 3] - back * held[b + 3];
            pass(gathered, a, b, m0, m1, m2, m3);
        }
    }

    private static void pass(double[] gathered, int a, int b, double m0, double m1, double m2, double m3) {
        gathered[a] -= m0;
        gathered[a + 1] -= m1;
        gathered[a + 2] -= m2;
        gathered[a + 3] -= m3;
        gathered[b] += m0;
        gathered[b + 1] += m1;
        gathered[b + 2] += m2;
        gathered[b + 3] += m3;
    }

    @Override
    public void giveFalling(FogGroup g, FogSides s, int from, int to, double stepS) {
        double[] held = g.held;
        double[] gathered = g.gathered;
        double[] up = g.upOf;
        double[] down = g.downOf;
        for (int i = from; i < to; i++) {
            int k = W * s.link[i];
            int a = W * s.first[i];
            int b = W * s.second[i];
            double m0 = stepS * (up[k] * held[a] - down[k] * held[b]);
            double m1 = stepS * (up[k + 1] * held[a + 1] - down[k + 1] * held[b + 1]);
            double m2 = stepS * (up[k + 2] * held[a + 2] - down[k + 2] * held[b + 2]);
            double m3 = stepS * (up[k + 3] * held[a + 3] - down[k + 3] * held[b + 3]);
            pass(gathered, a, b, m0, m1, m2, m3);
        }
    }

    @Override
    public void note(FogGroup g, int[] cells, int from, int to, boolean border) {
        int used = g.used;
        for (int i = from; i < to; i++) {
            int c = cells[i];
            double perM3 = g.perM3[c];
            for (int p = W * c; p < W * c + used; p++) {
                double all = border ? g.gathered[p] + g.missing[p] : g.gathered[p];
                g.change[p] = all * perM3;
            }
        }
    }

    @Override
    public void lean(FogGroup g, FogSides s, int from, int to, double stepS) {
        int used = g.used;
        for (int i = from; i < to; i++) {
            int a = W * s.first[i];
            int b = W * s.second[i];
            int f = W * s.behind[i];
            double along = stepS * Math.abs(g.drift[s.link[i]]) * g.perM3[s.first[i]];
            double volume = stepS * Math.abs(g.lean[s.link[i]]);
            for (int q = 0; q < used; q++) {
                double c = g.held[a + q];
                double back = c - g.held[f + q];
                double across = 0.5 * (g.change[a + q] + along * back);
                double moved = volume * LimitedSlope.beyond(c, back, g.held[b + q] - c, along, across, g.room[a + q]);
                g.gathered[a + q] -= moved;
                g.gathered[b + q] += moved;
            }
        }
    }

    @Override
    public void leanFalling(FogGroup g, FogSides s, int from, int to, double stepS) {
        int used = g.used;
        for (int i = from; i < to; i++) {
            int a = W * s.first[i];
            int b = W * s.second[i];
            int f = W * s.behind[i];
            int k = W * s.link[i];
            double sense = s.sense[i] * stepS;
            double perM3 = g.perM3[s.first[i]];
            for (int q = 0; q < used; q++) {
                double along = Math.max(0, sense * g.driftOf[k + q]) * perM3;
                double volume = Math.max(0, sense * g.leanOf[k + q]);
                double c = g.held[a + q];
                double back = c - g.held[f + q];
                double across = 0.5 * (g.change[a + q] + along * back);
                double moved = volume * LimitedSlope.beyond(c, back, g.held[b + q] - c, along, across, g.room[a + q]);
                g.gathered[a + q] -= moved;
                g.gathered[b + q] += moved;
            }
        }
    }

    @Override
    public void leanAcross(FogGroup g, FogSides s, int from, int to, double stepS, double[] elapsed, double[] share) {
        int used = g.used;
        for (int i = from; i < to; i++) {
            int a = W * s.first[i];
            int b = W * s.second[i];
            int f = W * s.behind[i];
            double sense = s.sense[i] * stepS;
            double perM3 = g.perM3[s.first[i]];
            double late = elapsed[s.firstLevel[i]];
            double lateB = elapsed[s.secondLevel[i]];
            double lateF = elapsed[s.behindLevel[i]];
            double part = share[s.firstLevel[i]];
            int place = g.falling[s.link[i]];
            for (int q = 0; q < used; q++) {
                double drift = place < 0 ? g.drift[s.link[i]] : g.driftOf[W * place + q];
                double lean = place < 0 ? g.lean[s.link[i]] : g.leanOf[W * place + q];
                double along = Math.max(0, sense * drift) * perM3;
                double volume = Math.max(0, sense * lean);
                double carried = late * g.change[a + q];
                double c = g.held[a + q] + carried;
                double back = c - (g.held[f + q] + lateF * g.change[f + q]);
                double ahead = g.held[b + q] + lateB * g.change[b + q] - c;
                double across = carried + 0.5 * (part * g.change[a + q] + along * back);
                double moved = volume * LimitedSlope.beyond(g.held[a + q], back, ahead, along, across, g.room[a + q]);
                g.gathered[a + q] -= moved;
                g.gathered[b + q] += moved;
            }
        }
    }
}
