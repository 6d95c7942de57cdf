package baymist.access;

import baymist.problem.Finding;
import java.util.ArrayList;
import java.util.List;

/**
 * All passes of a job in time.
 *
 * @param stations in order of time
 * @param findings what had to be changed: depths that the wand does not reach
 * @param triggerOnS job time at which each pass begins, s, [passes]
 * @param triggerOffS job time at which each pass ends, s, [passes]
 * @param endS job time at which the last hang is over, s
 */
public record PassPlan(
        List<Station> stations, List<Finding> findings, double[] triggerOnS, double[] triggerOffS, double endS) {
    public PassPlan {
        stations = List.copyOf(stations);
        findings = List.copyOf(findings);
    }

    /** The same with more to say. */
    public PassPlan with(List<Finding> more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(more);
        return new PassPlan(stations, all, triggerOnS, triggerOffS, endS);
    }
}
