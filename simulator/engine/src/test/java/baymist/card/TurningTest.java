package baymist.card;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.TipSpec;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TurningTest {
    private static TipSpec ring(int jets) {
        return new TipSpec(
                "ring",
                IntStream.range(0, jets)
                        .mapToObj(k ->
                                new TipSpec.Jet(Math.PI / 2, 2 * Math.PI * k / jets, 0.4e-3, 1.0 / jets, 1.0 / jets))
                        .toList());
    }

    @Test
    void aRingOfFewJetsHasToBeTurnedRight() {
        assertTrue(Turning.matters(ring(1)));
        assertTrue(Turning.matters(ring(6)));
        assertTrue(Turning.matters(ring(8)));
    }

    @Test
    void manyJetsAllRoundOrOneAheadMayBeTurnedAnyWay() {
        assertFalse(Turning.matters(ring(16)));
        assertFalse(Turning.matters(new TipSpec("ahead", List.of(new TipSpec.Jet(0, 0, 0.8e-3, 1, 1)))));
    }
}
