package baymist.explain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.scene.WandSpec;
import baymist.scene.io.SceneReader;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class JetGuessTest {
    private static double[] clocksDeg(String scene) {
        WandSpec wand = SceneReader.read(Path.of("../../scenes", scene))
                .wands()
                .values()
                .iterator()
                .next();
        double[] clocks = JetGuess.clocks(wand);
        for (int c = 0; c < clocks.length; c++) {
            clocks[c] = Math.toDegrees(clocks[c]);
        }
        return clocks;
    }

    @Test
    void aRingOfSixIsTriedBetweenItsJets() {
        assertArrayEquals(new double[] {0, 15, 30, 45}, clocksDeg("first-job.yaml"), 1e-9);
    }

    @Test
    void aOneSidedTipIsTriedAllRound() {
        assertEquals(JetGuess.CLOCKS, clocksDeg("control-surface-pin-aft.yaml").length);
    }
}
