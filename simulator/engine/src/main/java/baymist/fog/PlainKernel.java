package baymist.fog;

/** The kernel in plain Java. */
final class PlainKernel implements FogKernel {
    private static final int W = FogGroup.LANES;

    @Override
    public void turn(FogGroup g, int[] cells, int from, int to, double stepS) {
        int used = g.used;
        for (int i = from; i < to; i++) {
            int c = cells[i];
            double perM3 = g.perM3[c];
            for (int p = W * c; p < W * c + used; p++) {
                double m = g.mass[p] + g.gathered[p];
                if (m < FogBin.VANISHING_KG && m > -FogBin.VANISHING_KG) {
                    m = 0;
                }
                g.mass[p] = m;
                g.held[p] = m * perM3;
                g.massSum[p] += m;
                g.gathered[p] = stepS * (g.source[p] - g.loss[p] * m);
            }
        }
    }

    @Override
    public void give(FogGroup g, FogSides s, int from, int to, double stepS) {
        int used = g.used;
        for (int i = from; i < to; i++) {
            double forth = stepS * g.up[s.link[i]];
            double back = stepS * g.down[s.link[i]];
            int a = W * s.first[i];
            int b = W * s.second[i];
            for (int q = 0; q < used; q++) {
                double moved = forth * g.held[a + q] - back * g.held[b + q];
                g.gathered[a + q] -= moved;
                g.gathered[b + q] += moved;
            }
        }
    }

    @Override
    public void giveFalling(FogGroup g, FogSides s, int from, int to, double stepS) {
        int used = g.used;
        for (int i = from; i < to; i++) {
            int k = W * s.link[i];
            int a = W * s.first[i];
            int b = W * s.second[i];
            for (int q = 0; q < used; q++) {
                double moved = stepS * (g.upOf[k + q] * g.held[a + q] - g.downOf[k + q] * g.held[b + q]);
                g.gathered[a + q] -= moved;
                g.gathered[b + q] += moved;
            }
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
