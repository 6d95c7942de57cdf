package baymist.study;

import baymist.scene.OpeningSpec;
import baymist.scene.Scene;
import java.util.List;

/**
 * One way to do the job: one wand through one entry at one clock angle.
 *
 * @param number in the order of the list of candidates, from 1
 * @param holes openings that it needs cut
 * @param panels openings that are shut while spraying in the scene and have to come off for it, by name
 * @param scene the job done this way
 */
public record Candidate(
        int number,
        String entry,
        String wand,
        double clockRad,
        List<OpeningSpec> holes,
        List<String> panels,
        Scene scene) {
    public Candidate {
        holes = List.copyOf(holes);
        panels = List.copyOf(panels);
    }

    /** "ring 5/16 in x 8 ft at 'root rear hole', clock 90 deg". */
    public String words() {
        return wand + " at '" + entry + "', clock " + ChangeWords.clock(clockRad);
    }
}
