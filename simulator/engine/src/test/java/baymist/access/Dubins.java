package baymist.access;

/**
 * Shortest path of bounded curvature in the plane between two poses: the least of the six words of Dubins (1957), On curves of minimal
 * length with a constraint on average curvature, Amer. J. Math. 79. Formulas of the words: Shkel & Lumelsky (2001), Classification of the Dubins
 * set, Robotics and Autonomous Systems 34 (from memory); each word is driven here and counts only if it ends at the goal.
 */
final class Dubins {
    private Dubins() {}

    private static final String[] WORDS = {"LSL", "RSR", "LSR", "RSL", "RLR", "LRL"};

    /** A word with the lengths of its three pieces, in radii. */
    record Word(String word, double t, double p, double q) {
        double length() {
            return t + p + q;
        }
    }

    /** Shortest word from the origin with heading h0 to (x, y) with heading h1 for radius 1. */
    static Word shortest(double h0, double x, double y, double h1) {
        Word best = null;
        for (String name : WORDS) {
            Word w = word(name, h0, x, y, h1);
            if (w != null && (best == null || w.length() < best.length())) {
                best = w;
            }
        }
        if (best == null) {
            throw new AssertionError("LSL and RSR always exist");
        }
        return best;
    }

    private static Word word(String name, double h0, double x, double y, double h1) {
        double d = Math.hypot(x, y);
        double theta = Math.atan2(y, x);
        double a = h0 - theta;
        double b = h1 - theta;
        double sa = Math.sin(a);
        double sb = Math.sin(b);
        double ca = Math.cos(a);
        double cb = Math.cos(b);
        double cab = Math.cos(a - b);
        double t;
        double p;
        double q;
        switch (name) {
            case "LSL" -> {
                double tmp = Math.atan2(cb - ca, d + sa - sb);
                p = Math.sqrt(Math.max(0, 2 + d * d - 2 * cab + 2 * d * (sa - sb)));
                t = -a + tmp;
                q = b - tmp;
            }
            case "RSR" -> {
                double tmp = Math.atan2(ca - cb, d - sa + sb);
                p = Math.sqrt(Math.max(0, 2 + d * d - 2 * cab + 2 * d * (sb - sa)));
                t = a - tmp;
                q = -b + tmp;
            }
            case "LSR" -> {
                p = Math.sqrt(-2 + d * d + 2 * cab + 2 * d * (sa + sb));
                double tmp = Math.atan2(-ca - cb, d + sa + sb) - Math.atan2(-2, p);
                t = -a + tmp;
                q = -b + tmp;
            }
            case "RSL" -> {
                p = Math.sqrt(-2 + d * d + 2 * cab - 2 * d * (sa + sb));
                double tmp = Math.atan2(ca + cb, d - sa - sb) - Math.atan2(2, p);
                t = a - tmp;
                q = b - tmp;
            }
            case "RLR" -> {
                p = 2 * Math.PI - Math.acos((6 - d * d + 2 * cab + 2 * d * (sa - sb)) / 8);
                t = a - Math.atan2(ca - cb, d - sa + sb) + p / 2;
                q = a - b - t + p;
            }
            default -> {
                p = 2 * Math.PI - Math.acos((6 - d * d + 2 * cab + 2 * d * (sb - sa)) / 8);
                t = -a + Math.atan2(-ca + cb, d + sa - sb) + p / 2;
                q = b - a - t + p;
            }
        }
        if (!Double.isFinite(t + p + q)) {
            return null;
        }
        Word word = new Word(name, turn(t), p, turn(q));
        double[] end = drive(word, h0);
        double miss = Math.hypot(end[0] - x, end[1] - y)
                + Math.hypot(Math.cos(end[2]) - Math.cos(h1), Math.sin(end[2]) - Math.sin(h1));
        return miss < 1e-7 ? word : null;
    }

    private static double turn(double angle) {
        double t = angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
        return t > 2 * Math.PI - 1e-12 ? 0 : t;
    }

    /** Where a word leads, {x, y, heading}. */
    static double[] drive(Word w, double h0) {
        double[] s = {0, 0, h0};
        double[] lengths = {w.t, w.p, w.q};
        for (int i = 0; i < 3; i++) {
            double l = lengths[i];
            double h = s[2];
            switch (w.word.charAt(i)) {
                case 'S' -> {
                    s[0] += l * Math.cos(h);
                    s[1] += l * Math.sin(h);
                }
                case 'L' -> {
                    s[0] += Math.sin(h + l) - Math.sin(h);
                    s[1] += Math.cos(h) - Math.cos(h + l);
                    s[2] += l;
                }
                default -> {
                    s[0] += Math.sin(h) - Math.sin(h - l);
                    s[1] += Math.cos(h - l) - Math.cos(h);
                    s[2] -= l;
                }
            }
        }
        return s;
    }
}
