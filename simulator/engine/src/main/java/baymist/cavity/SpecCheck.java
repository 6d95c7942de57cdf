package baymist.cavity;

import baymist.geom.Vec3;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Collects what is wrong with a cavity, so that all of it is told at once. */
final class SpecCheck {
    /** No structure that a technician feeds a wand into is larger; a size above it is a slip of units. */
    static final double LARGEST_M = 1000;

    private final List<Finding> findings = new ArrayList<>();
    private final SourcePlace place;

    SpecCheck(SourcePlace place) {
        this.place = place;
    }

    void error(String id, String text) {
        error(id, place, text);
    }

    void error(String id, SourcePlace where, String text) {
        findings.add(new Finding(id, Severity.ERROR, where, text));
    }

    boolean positive(String what, double valueM) {
        boolean good = valueM > 0 && valueM <= LARGEST_M;
        if (!good) {
            error("CAV-001", what + " is " + mm(valueM) + "; more than 0 and at most 1000 m expected");
        }
        return good;
    }

    void notNegative(String what, double valueM) {
        if (!(valueM >= 0 && valueM <= LARGEST_M)) {
            error("CAV-001", what + " is " + mm(valueM) + "; 0 to 1000 m expected");
        }
    }

    void finite(String what, double value) {
        if (!(Math.abs(value) <= LARGEST_M)) {
            error("CAV-001", what + " is " + value + "; a number within 1000 m expected");
        }
    }

    boolean clean() {
        return findings.isEmpty();
    }

    void orThrow() {
        if (!findings.isEmpty()) {
            throw new SceneException(findings);
        }
    }

    static String mm(double valueM) {
        return String.format(Locale.ROOT, "%.4g mm", valueM * 1000);
    }

    static String at(Vec3 p) {
        return String.format(Locale.ROOT, "(%.1f, %.1f, %.1f) mm", 1000 * p.x(), 1000 * p.y(), 1000 * p.z());
    }
}
